-- The second wall: the database itself shows a person's data only to that person and to the coaches whose posts cover them,
-- whatever the application asks. fallow_app owns nothing and cannot bypass it. The functions below read people's posts for
-- the policies; they belong to fallow_owner, so the policies of the tables they read do not apply to them again.

create function fallow_covers(athlete uuid) returns boolean language plpgsql stable security definer parallel safe
	set search_path = public, pg_temp as $$
begin
	return exists (select 1 from membership m join post c on c.team_id = m.team_id
		where m.person_id = athlete and m.shares and m.left_at is null
			and c.person_id = fallow_person() and c.ended_at is null and (c.until_at is null or c.until_at > now())
			and (c.whole_team or exists
				(select 1 from post_group g where g.post_id = c.id and g.group_id = m.group_id)));
end $$;
comment on function fallow_covers(uuid) is 'Whether a post of the present person covers an athlete who shares';

create function fallow_teams_led() returns setof uuid language sql stable security definer parallel safe
	set search_path = public, pg_temp as $$
	select c.team_id from post c where c.kind = 'HEAD_COACH'
		and c.person_id = fallow_person() and c.ended_at is null and (c.until_at is null or c.until_at > now())
$$;
comment on function fallow_teams_led() is 'Teams whose head coach the present person is';

create function fallow_teams_coached() returns setof uuid language sql stable security definer parallel safe
	set search_path = public, pg_temp as $$
	select c.team_id from post c where c.team_id is not null
		and c.person_id = fallow_person() and c.ended_at is null and (c.until_at is null or c.until_at > now())
$$;
comment on function fallow_teams_coached() is 'Teams in which the present person has any post';

create function fallow_clubs_owned() returns setof uuid language sql stable security definer parallel safe
	set search_path = public, pg_temp as $$
	select c.club_id from post c where c.kind = 'OWNER' and c.person_id = fallow_person() and c.ended_at is null
$$;
comment on function fallow_clubs_owned() is 'Clubs that the present person owns';

create function fallow_belongs(club uuid, team uuid) returns boolean language sql stable security definer parallel safe
	set search_path = public, pg_temp as $$
	select exists (select 1 from membership m where m.person_id = fallow_person() and m.team_id = team)
		or exists (select 1 from post c where c.person_id = fallow_person() and c.ended_at is null
			and (c.team_id = team or (c.kind = 'OWNER' and c.club_id = club) or (team is null and c.club_id = club)))
		or (team is null and exists (select 1 from membership m join team t on t.id = m.team_id
			where m.person_id = fallow_person() and t.club_id = club))
$$;
comment on function fallow_belongs(uuid, uuid) is 'Whether the present person is in a team, or has a club: sees who holds its posts';

create function fallow_knows(person uuid) returns boolean language plpgsql stable security definer parallel safe
	set search_path = public, pg_temp as $$
begin
	return exists (select 1 from membership m where m.person_id = person and m.left_at is null
			and m.team_id in (select fallow_teams_led()))
		or exists (select 1 from post p where p.person_id = person and fallow_belongs(p.club_id, p.team_id));
end $$;
comment on function fallow_knows(uuid) is 'Whether the present person may read somebody''s name: athletes of teams led, holders of posts around';

create function fallow_has_more(person uuid) returns boolean language sql stable security definer parallel safe
	set search_path = public, pg_temp as $$
	select exists (select 1 from post c where c.person_id = person and c.ended_at is null
			and (c.team_id is null or c.team_id not in (select fallow_teams_led())))
		or exists (select 1 from membership m where m.person_id = person and m.left_at is null
			and m.team_id not in (select fallow_teams_led()))
$$;
comment on function fallow_has_more(uuid) is 'Whether somebody is charged with, or trains in, more than the teams the present person leads';

create function fallow_invited(club uuid, team uuid, wanted text) returns boolean language sql stable security definer
	parallel safe set search_path = public, pg_temp as $$
	select exists (select 1 from invitation i where i.accepted_by = fallow_person() and i.kind = wanted
		and i.club_id = club and i.team_id is not distinct from team)
$$;
comment on function fallow_invited(uuid, uuid, text) is 'Whether the present person has accepted an invitation to this';

do $$
declare
	name text;
begin
	foreach name in array array['morning_entry', 'session_log', 'absence', 'medicine_change', 'known_symptom',
		'health_condition', 'illness_event']
	loop
		execute format('alter table %I enable row level security', name);
		execute format('create policy seen on %I for select '
			|| 'using (athlete_id = (select fallow_person()) or fallow_covers(athlete_id))', name);
		execute format('create policy added on %I for insert with check (actor_id = (select fallow_person()) '
			|| 'and (athlete_id = actor_id or fallow_covers(athlete_id)))', name);
	end loop;
	foreach name in array array['morning_symptom', 'assessment', 'athlete_status', 'stage_decision']
	loop
		execute format('alter table %I enable row level security', name);
		execute format('create policy seen on %I '
			|| 'using (athlete_id = (select fallow_person()) or fallow_covers(athlete_id))', name);
	end loop;
end $$;

alter table access_trace enable row level security;
create policy own on access_trace for select using (athlete_id = (select fallow_person()));
create policy added on access_trace for insert
	with check (actor_id = (select fallow_person()) and (athlete_id = actor_id or fallow_covers(athlete_id)));

alter table consent enable row level security;
create policy own on consent for select using (athlete_id = (select fallow_person()) or team_id in (select fallow_teams_led()));
create policy said on consent for insert with check (
	(athlete_id = (select fallow_person()) and actor_id = athlete_id)
	or (kind = 'STATED' and actor_id = (select fallow_person()) and team_id in (select fallow_teams_led()))
	or (kind = 'STATED' and (select fallow_purpose()) = 'OPERATION'));

alter table person enable row level security;
create policy seen on person for select using (id = (select fallow_person())
	or (select fallow_purpose()) in ('SIGN_IN', 'OPERATION') or fallow_covers(id) or fallow_knows(id));
create policy added on person for insert with check (id = (select fallow_person())
	or (select fallow_purpose()) = 'OPERATION'
	or exists (select 1 from post c where c.person_id = (select fallow_person()) and c.ended_at is null
		and c.kind in ('OWNER', 'HEAD_COACH')));
create policy changed on person for update using (id = (select fallow_person()));

alter table membership enable row level security;
create policy seen on membership for select using (person_id = (select fallow_person())
	or (select fallow_purpose()) = 'OPERATION' or team_id in (select fallow_teams_coached()));
create policy added on membership for insert with check ((select fallow_purpose()) = 'OPERATION' or team_id in (select fallow_teams_led())
	or (person_id = (select fallow_person()) and fallow_invited((select t.club_id from team t where t.id = team_id),
		team_id, 'ATHLETE')));
create policy changed on membership for update using (person_id = (select fallow_person()));

alter table post enable row level security;
create policy seen on post for select using (person_id = (select fallow_person())
	or (select fallow_purpose()) = 'OPERATION' or fallow_belongs(club_id, team_id));
create policy given on post for insert with check ((select fallow_purpose()) = 'OPERATION' or club_id in (select fallow_clubs_owned())
	or team_id in (select fallow_teams_led())
	or (person_id = (select fallow_person()) and fallow_invited(club_id, team_id, kind)));
create policy ended on post for update using (person_id = (select fallow_person()) or club_id in (select fallow_clubs_owned())
	or team_id in (select fallow_teams_led()));

alter table post_group enable row level security;
create policy seen on post_group for select using (exists (select 1 from post p where p.id = post_id));
create policy given on post_group for insert with check (exists (select 1 from post p where p.id = post_id));

alter table invitation enable row level security;
create policy seen on invitation for select using ((select fallow_purpose()) = 'SIGN_IN' or club_id in (select fallow_clubs_owned())
	or team_id in (select fallow_teams_led()));
create policy made on invitation for insert with check (made_by = (select fallow_person())
	and (club_id in (select fallow_clubs_owned()) or team_id in (select fallow_teams_led())));
create policy changed on invitation for update using ((select fallow_purpose()) = 'SIGN_IN' or club_id in (select fallow_clubs_owned())
	or team_id in (select fallow_teams_led()));

alter table import_job enable row level security;
create policy own on import_job using (actor_id = (select fallow_person()) or team_id in (select fallow_teams_led()));
create policy unfinished on import_job for select using ((select fallow_purpose()) = 'OPERATION');
alter table import_problem enable row level security;
create policy own on import_problem using (exists (select 1 from import_job j where j.id = job_id));
comment on table import_row is 'Rows of a file on their way in, deleted when the job ends; filled by COPY, which a table with policies refuses';
