-- Two entries of one person can be made one. No fact is copied, changed or deleted: while a merge stands, whatever reads the
-- facts of the entry that is kept reads those of the other one, too; undone, it does not. What was stricter in one of them on
-- the day of the merge is carried over by rows of its own.

create table person_merge (
	id uuid primary key,
	kept_id uuid not null references person,
	other_id uuid not null references person,
	actor_id uuid not null references person,
	merged_at timestamptz not null,
	merged_on date not null,
	reason text not null check (reason <> ''),
	constraint person_merge_two check (kept_id <> other_id)
);
create index person_merge_kept on person_merge (kept_id);
create index person_merge_other on person_merge (other_id);
create index person_merge_actor on person_merge (actor_id);
comment on table person_merge is 'That two entries are one person; it stands unless person_merge_undone names it';
comment on column person_merge.id is 'UUID version 7, drawn by the application';
comment on column person_merge.kept_id is 'The entry that stays and whose days are decided from the facts of both';
comment on column person_merge.other_id is 'The entry that leaves lists and groups; its facts stay where they are';
comment on column person_merge.actor_id is 'The coach who said so';
comment on column person_merge.merged_at is 'When';
comment on column person_merge.merged_on is 'Civil day of it in the zone of the entry kept';
comment on column person_merge.reason is 'Why, in the coach''s words';

create table person_merge_undone (
	merge_id uuid primary key references person_merge,
	actor_id uuid not null references person,
	undone_at timestamptz not null,
	undone_on date not null
);
create index person_merge_undone_actor on person_merge_undone (actor_id);
comment on table person_merge_undone is 'That a merge was taken back';
comment on column person_merge_undone.merge_id is 'Which merge';
comment on column person_merge_undone.actor_id is 'The coach who took it back';
comment on column person_merge_undone.undone_at is 'When';
comment on column person_merge_undone.undone_on is 'Civil day of it in the zone of the entry kept';

create table person_merge_read (
	merge_id uuid not null references person_merge,
	undone boolean not null,
	person_id uuid not null references person,
	read_at timestamptz not null,
	primary key (merge_id, undone, person_id)
);
create index person_merge_read_person on person_merge_read (person_id);
comment on table person_merge_read is 'That an athlete has read of a merge, or of its end, on Today: told once';
comment on column person_merge_read.merge_id is 'Which merge';
comment on column person_merge_read.undone is 'Whether of its end';
comment on column person_merge_read.person_id is 'Who read it';
comment on column person_merge_read.read_at is 'When';

create table carried_state (
	id uuid primary key,
	athlete_id uuid not null references person,
	merge_id uuid not null references person_merge,
	undone boolean not null,
	carried_at timestamptz not null,
	carried_on date not null,
	kind text not null check (kind in ('HOLD', 'EPISODE', 'DAY_CEILING', 'CLINICIAN_CEILING')),
	ceiling text check (ceiling in ('REFER', 'REST', 'EASY_ONLY')),
	until_day date check (until_day >= carried_on),
	cause text,
	state text,
	constraint carried_state_hold check (kind <> 'HOLD' or cause is not null),
	constraint carried_state_episode check (kind <> 'EPISODE' or state is not null),
	constraint carried_state_ceiling check (kind not in ('DAY_CEILING', 'CLINICIAN_CEILING')
		or (ceiling is not null and until_day is not null))
);
create index carried_state_athlete on carried_state (athlete_id);
create index carried_state_merge on carried_state (merge_id);
comment on table carried_state is 'What was stricter in one of two entries when they were merged, or in their union when that was undone';
comment on column carried_state.id is 'UUID version 7, drawn by the application';
comment on column carried_state.athlete_id is 'For whom it counts';
comment on column carried_state.merge_id is 'By which merge; what a merge carried counts while it stands';
comment on column carried_state.undone is 'Whether it was carried when the merge was undone; then it stays';
comment on column carried_state.carried_at is 'When; orders it among the facts';
comment on column carried_state.carried_on is 'Civil day from which it counts';
comment on column carried_state.kind is 'A hold, an open episode, a ceiling for the day, or a ceiling until a clinician''s next word';
comment on column carried_state.ceiling is 'The most allowed; null for holds and episodes';
comment on column carried_state.until_day is 'Last day of a ceiling, inclusive; null for holds and episodes';
comment on column carried_state.cause is 'Cause of a hold; null for others';
comment on column carried_state.state is 'The fold''s state whose episode it is; null for others';

create table replaced_day (
	merge_id uuid not null references person_merge,
	undone boolean not null,
	athlete_id uuid not null references person,
	day date not null,
	clearance text not null,
	stage integer,
	holding boolean not null,
	reasons text not null,
	rule_hash text not null,
	primary key (merge_id, undone, athlete_id, day)
);
create index replaced_day_athlete on replaced_day (athlete_id);
comment on table replaced_day is 'A day as it had been decided before a merge, or its end, decided it anew';
comment on column replaced_day.merge_id is 'By which merge';
comment on column replaced_day.undone is 'Whether by its end';
comment on column replaced_day.athlete_id is 'Whose';
comment on column replaced_day.day is 'The day';
comment on column replaced_day.clearance is 'The clearance decided before';
comment on column replaced_day.stage is 'The stage then; null outside an episode';
comment on column replaced_day.holding is 'Whether a hold stood then';
comment on column replaced_day.reasons is 'The reasons then, as JSON';
comment on column replaced_day.rule_hash is 'The rule set then';

grant select, insert on person_merge, person_merge_undone, person_merge_read, carried_state, replaced_day to fallow_app;
-- Days of an entry before its own first fact were decided from the other's facts only; they go when a merge is undone.
grant delete on assessment to fallow_app;

create function fallow_set_aside(person uuid) returns boolean language plpgsql stable security definer parallel safe
	set search_path = public, pg_temp as $$
begin
	return exists (select 1 from person_merge m where m.other_id = person
		and not exists (select 1 from person_merge_undone u where u.merge_id = m.id));
end $$;
comment on function fallow_set_aside(uuid) is 'Whether a standing merge put an entry aside: nobody signs in as it or adds to it';

create function fallow_entries(athlete uuid) returns uuid[] language plpgsql stable security definer parallel safe
	set search_path = public, pg_temp as $$
declare
	found uuid[] := array[athlete];
	fresh uuid[] := found;
begin
	loop
		select array_agg(m.other_id order by m.id) into fresh from person_merge m where m.kept_id = any (fresh)
			and not exists (select 1 from person_merge_undone u where u.merge_id = m.id);
		exit when fresh is null;
		found := found || fresh;
	end loop;
	return found;
end $$;
comment on function fallow_entries(uuid) is 'An athlete and the entries that standing merges made part of it, the athlete first';

-- An entry and all into which standing merges made it, one of which is the present person or covered by one of their posts.
create function fallow_sees_merged(athlete uuid) returns boolean language plpgsql stable security definer parallel safe
	set search_path = public, pg_temp as $$
declare
	kept uuid := athlete;
begin
	loop
		select m.kept_id into kept from person_merge m where m.other_id = kept
			and not exists (select 1 from person_merge_undone u where u.merge_id = m.id);
		exit when kept is null;
		if kept = fallow_person() or fallow_covers(kept) then
			return true;
		end if;
	end loop;
	return false;
end $$;
comment on function fallow_sees_merged(uuid) is 'Whether an entry is part of one that the present person is or covers';

create function fallow_covers_fully(athlete uuid, left_at_most timestamptz) returns boolean language plpgsql stable
	security definer parallel safe set search_path = public, pg_temp as $$
begin
	return exists (select 1 from membership m join post c on c.team_id = m.team_id
		where m.person_id = athlete and m.left_at is not distinct from left_at_most and (m.shares or m.left_at is not null)
			and c.person_id = fallow_person() and c.ended_at is null and c.kind in ('HEAD_COACH', 'GROUP_COACH')
			and (c.until_at is null or c.until_at > now())
			and (c.whole_team or exists
				(select 1 from post_group g where g.post_id = c.id and g.group_id = m.group_id)));
end $$;
comment on function fallow_covers_fully(uuid, timestamptz)
	is 'Whether the present person is head coach or coach of the group of an athlete who trains here, or left at an instant';

alter table person_merge enable row level security;
create policy seen on person_merge for select using (kept_id = (select fallow_person())
	or other_id = (select fallow_person()) or fallow_covers(kept_id) or fallow_covers_fully(other_id, merged_at)
	or fallow_sees_merged(kept_id));
create policy added on person_merge for insert with check (actor_id = (select fallow_person())
	and fallow_covers_fully(kept_id, null) and fallow_covers_fully(other_id, null));

create function fallow_sees_merge(merge uuid) returns boolean language sql stable parallel safe
	return exists (select 1 from person_merge m where m.id = merge);
comment on function fallow_sees_merge(uuid) is 'Whether the present person may read of a merge';

alter table person_merge_undone enable row level security;
create policy seen on person_merge_undone for select using (fallow_sees_merge(merge_id));
create policy added on person_merge_undone for insert with check (actor_id = (select fallow_person())
	and exists (select 1 from person_merge m where m.id = merge_id and fallow_covers_fully(m.kept_id, null)
		and fallow_covers_fully(m.other_id, m.merged_at)));

alter table person_merge_read enable row level security;
create policy own on person_merge_read for select using (person_id = (select fallow_person()));
create policy added on person_merge_read for insert with check (person_id = (select fallow_person())
	and fallow_sees_merge(merge_id));

do $$
declare
	name text;
begin
	foreach name in array array['carried_state', 'replaced_day']
	loop
		execute format('alter table %I enable row level security', name);
		execute format('create policy seen on %I for select using (athlete_id = (select fallow_person()) '
			|| 'or (select c.covered from fallow_covered c where c.person_id = athlete_id limit 1) '
			|| 'or fallow_sees_merged(athlete_id))', name);
		execute format('create policy added on %I for insert with check (athlete_id <> (select fallow_person()) '
			|| 'and fallow_covers_fully(athlete_id, null) and fallow_sees_merge(merge_id))', name);
	end loop;
	-- Asked last: only of rows that nothing before it shows.
	foreach name in array array['morning_entry', 'session_log', 'absence', 'medicine_change', 'known_symptom',
		'health_condition', 'illness_event']
	loop
		execute format('alter policy seen on %I using (athlete_id = (select fallow_person()) '
			|| 'or athlete_id = (select fallow_athlete()) '
			|| 'or (select c.covered from fallow_covered c where c.person_id = athlete_id limit 1) '
			|| 'or fallow_sees_merged(athlete_id))', name);
	end loop;
	-- Nobody adds a fact to an entry that was put aside, whatever session is still open somewhere.
	foreach name in array array['morning_entry', 'session_log', 'absence', 'medicine_change', 'known_symptom',
		'health_condition', 'illness_event']
	loop
		execute format('create policy not_set_aside on %I as restrictive for insert '
			|| 'with check (not fallow_set_aside(athlete_id))', name);
	end loop;
end $$;

-- A symptom is only ever added with its morning, whose policy asks who adds it; seen and added were one policy.
alter policy seen on morning_symptom using (athlete_id = (select fallow_person())
	or athlete_id = (select fallow_athlete())
	or (select c.covered from fallow_covered c where c.person_id = athlete_id limit 1)
	or fallow_sees_merged(athlete_id)) with check ((athlete_id = (select fallow_person())
	or athlete_id = (select fallow_athlete())
	or (select c.covered from fallow_covered c where c.person_id = athlete_id limit 1))
	and not fallow_set_aside(athlete_id));

alter policy seen on person using (id = (select fallow_person())
	or (select fallow_purpose()) in ('SIGN_IN', 'OPERATION')
	or (select c.covered from fallow_covered c where c.person_id = id limit 1) or fallow_knows(id)
	or fallow_sees_merged(id));

-- Both change the membership of somebody else, which no policy allows; they do so only for a merge of the present person.

create function fallow_leave_by_merge(merge uuid) returns void language plpgsql security definer
	set search_path = public, pg_temp as $$
begin
	update membership m set shares = false, left_at = p.merged_at from person_merge p
		where p.id = merge and p.actor_id = fallow_person() and m.person_id = p.other_id and m.left_at is null
			and m.shares and not exists (select 1 from person_merge_undone u where u.merge_id = p.id);
	update invitation i set revoked_at = p.merged_at from person_merge p
		where p.id = merge and p.actor_id = fallow_person() and i.person_id = p.other_id and i.revoked_at is null
			and i.accepted_at is null;
	update calendar_feed f set revoked_at = p.merged_at from person_merge p
		where p.id = merge and p.actor_id = fallow_person() and f.person_id = p.other_id and f.revoked_at is null;
end $$;
comment on function fallow_leave_by_merge(uuid)
	is 'Takes the other entry out of its team, its open invitations and calendar address back, by a merge just made';

create function fallow_return_by_undo(merge uuid) returns void language plpgsql security definer
	set search_path = public, pg_temp as $$
begin
	update membership m set shares = true, left_at = null from person_merge p join person_merge_undone u on u.merge_id = p.id
		where p.id = merge and u.actor_id = fallow_person() and m.person_id = p.other_id and m.left_at = p.merged_at
			and not exists (select 1 from membership n where n.person_id = p.other_id and n.left_at is null);
end $$;
comment on function fallow_return_by_undo(uuid) is 'Puts the other entry back into its team when its merge was undone';

create function fallow_has_account(person uuid) returns boolean language plpgsql stable security definer parallel safe
	set search_path = public, pg_temp as $$
begin
	return fallow_covers_fully(person, null) and exists (select 1 from account a where a.person_id = person);
end $$;
comment on function fallow_has_account(uuid) is 'Whether an athlete whom the present person covers more than as a deputy has a sign-in';

create or replace function fallow_behind(zones text[], days date[], without uuid[], most integer)
	returns table (athlete_id uuid, today date) language sql stable security definer
	set search_path = public, pg_temp as $$
	select b.athlete_id, z.today from unnest(zones, days) as z (id, today)
		cross join lateral (select s.athlete_id from athlete_status s
			where s.zone_id = z.id and s.latest_day < z.today and s.athlete_id <> all (without)
				and exists (select 1 from membership m where m.person_id = s.athlete_id)
				and not exists (select 1 from person_merge p where p.other_id = s.athlete_id
					and not exists (select 1 from person_merge_undone u where u.merge_id = p.id))
			order by s.latest_day limit most) b
		where (select fallow_purpose()) = 'OPERATION' limit most
$$;
