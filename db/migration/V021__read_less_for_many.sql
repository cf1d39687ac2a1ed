-- Whether a post covers an athlete was asked by a call of fallow_covers for each row. The same question as a subquery is
-- cheaper: the posts of the present person are read once a statement, and each row is one look into membership's key.
-- It is asked as a value, not as "exists" or "in": the database would turn those into one list of all athletes of the
-- person where it expects many rows, which is dear for one row of a coach of ten thousand.

create function fallow_teams_covered() returns uuid[] language sql stable security definer parallel safe
	set search_path = public, pg_temp as $$
	select coalesce(array_agg(c.team_id), '{}') from post c where c.whole_team
		and c.person_id = fallow_person() and c.ended_at is null and (c.until_at is null or c.until_at > now())
$$;
comment on function fallow_teams_covered() is 'Teams whose athletes are all covered by a post of the present person';

create function fallow_groups_covered() returns uuid[] language sql stable security definer parallel safe
	set search_path = public, pg_temp as $$
	select coalesce(array_agg(g.group_id), '{}') from post c join post_group g on g.post_id = c.id
		where c.person_id = fallow_person() and c.ended_at is null and (c.until_at is null or c.until_at > now())
$$;
comment on function fallow_groups_covered() is 'Groups that a post of the present person covers; each is of one team';

-- Read with its owner's rights, so that the policies of membership do not apply once more; it shows the present person no
-- athlete whom fallow_covers does not confirm.
create view fallow_covered with (security_barrier) as
	select m.person_id, true as covered from membership m where m.shares and m.left_at is null
		and (m.team_id = any ((select fallow_teams_covered())::uuid[])
			or m.group_id = any ((select fallow_groups_covered())::uuid[]));
comment on view fallow_covered is 'Athletes who share and whom a post of the present person covers: what fallow_covers says, for many';
comment on column fallow_covered.person_id is 'The athlete';
comment on column fallow_covered.covered is 'True: there is a row';
grant select on fallow_covered to fallow_app;

do $$
declare
	name text;
begin
	foreach name in array array['morning_entry', 'session_log', 'absence', 'medicine_change', 'known_symptom',
		'health_condition', 'illness_event', 'morning_symptom', 'assessment', 'athlete_status', 'stage_decision',
		'training_statement', 'race_word', 'contact_message']
	loop
		execute format('alter policy seen on %I using (athlete_id = (select fallow_person()) '
			|| 'or (select c.covered from fallow_covered c where c.person_id = athlete_id limit 1))', name);
	end loop;
end $$;

alter policy seen on contact_mark using (case when athlete_id = (select fallow_person()) then shared
	else (select c.covered from fallow_covered c where c.person_id = athlete_id limit 1) end);

alter policy seen on person using (id = (select fallow_person())
	or (select fallow_purpose()) in ('SIGN_IN', 'OPERATION')
	or (select c.covered from fallow_covered c where c.person_id = id limit 1) or fallow_knows(id));

-- The last day ill of somebody well again, for plans: one look instead of eight weeks of rows.
create index assessment_ill on assessment (athlete_id, day) where stage = 0;
