-- Days on which nobody enters anything are decided by a job. It looked at every athlete each time; now it asks who is behind,
-- zone by zone, for each zone has its own today. So the status knows the zone, and keeps it as the person does.

alter table athlete_status add column zone_id text;
update athlete_status s set zone_id = p.zone_id from person p where p.id = s.athlete_id;
alter table athlete_status alter column zone_id set not null;
comment on column athlete_status.zone_id is 'The zone of the person, kept equal to it by the database: whose today the latest day is compared with';
create index athlete_status_behind on athlete_status (zone_id, latest_day, athlete_id);

create function fallow_zone_of_status() returns trigger language plpgsql security definer
	set search_path = public, pg_temp as $$
begin
	-- locked, so that a change of zone at the same time waits and finds this row
	select p.zone_id into new.zone_id from person p where p.id = new.athlete_id for share;
	return new;
end $$;
comment on function fallow_zone_of_status() is 'Gives a new status the zone of its person';
create trigger zone_of_status before insert on athlete_status
	for each row execute function fallow_zone_of_status();

create function fallow_zone_changed() returns trigger language plpgsql security definer
	set search_path = public, pg_temp as $$
begin
	update athlete_status set zone_id = new.zone_id where athlete_id = new.id;
	return null;
end $$;
comment on function fallow_zone_changed() is 'Carries a new zone of a person over to the status';
create trigger zone_changed after update of zone_id on person
	for each row when (old.zone_id is distinct from new.zone_id) execute function fallow_zone_changed();

-- Both answer the purpose OPERATION only, which nobody signed in ever has; they tell ids and days, nothing of health.

create function fallow_zones() returns setof text language sql stable security definer
	set search_path = public, pg_temp as $$
	with recursive zone (id) as (
		(select s.zone_id from athlete_status s where fallow_purpose() = 'OPERATION' order by s.zone_id limit 1)
		union all
		select (select s.zone_id from athlete_status s where s.zone_id > z.id order by s.zone_id limit 1)
			from zone z where z.id is not null)
	select z.id from zone z where z.id is not null
$$;
comment on function fallow_zones() is 'Zones in which any athlete with a fact lives, from the index, one look each; for OPERATION only';

create function fallow_behind(zones text[], days date[], without uuid[], most integer)
	returns table (athlete_id uuid, today date) language sql stable security definer
	set search_path = public, pg_temp as $$
	select b.athlete_id, z.today from unnest(zones, days) as z (id, today)
		cross join lateral (select s.athlete_id from athlete_status s
			where s.zone_id = z.id and s.latest_day < z.today and s.athlete_id <> all (without)
				and exists (select 1 from membership m where m.person_id = s.athlete_id)
			order by s.latest_day limit most) b
		where (select fallow_purpose()) = 'OPERATION' limit most
$$;
comment on function fallow_behind(text[], date[], uuid[], integer)
	is 'Athletes of some zones whose latest day decided is before today there, which is given; for OPERATION only';
