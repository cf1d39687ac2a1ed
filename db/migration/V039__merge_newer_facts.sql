-- Vaccinations and changes of a device belong to the facts that merged entries share (V026), and nobody adds one to an
-- entry that was put aside.

do $$
declare
	name text;
begin
	foreach name in array array['vaccination', 'device_change']
	loop
		execute format('alter policy seen on %I using (athlete_id = (select fallow_person()) '
			|| 'or athlete_id = (select fallow_athlete()) '
			|| 'or (select c.covered from fallow_covered c where c.person_id = athlete_id limit 1) '
			|| 'or fallow_sees_merged(athlete_id))', name);
		execute format('create policy not_set_aside on %I as restrictive for insert '
			|| 'with check (not fallow_set_aside(athlete_id))', name);
	end loop;
end $$;

-- Two more that an entry can owe when it is made part of another: a coach's question about a slip of a red flag, and a
-- report of illness that was promised.

alter table carried_state add column of_day date;
alter table carried_state drop constraint carried_state_kind_check;
alter table carried_state add constraint carried_state_kind_check
	check (kind in ('HOLD', 'EPISODE', 'DAY_CEILING', 'CLINICIAN_CEILING', 'SLIP', 'REPORT'));
alter table carried_state add constraint carried_state_slip check (kind <> 'SLIP' or of_day is not null);
comment on column carried_state.kind is 'A hold, an open episode, a ceiling for the day or until a clinician''s next word, a slip nobody asked about, or a report still owed';
comment on column carried_state.of_day is 'Civil day of a slip nobody asked about yet; null for others';

-- What was said of usual training, and with coaches, is read of both entries too. Of marks the athlete sees the shared ones.

alter policy seen on training_statement using (athlete_id = (select fallow_person()) or fallow_covers(athlete_id)
	or fallow_sees_merged(athlete_id));
alter policy seen on contact_message using (athlete_id = (select fallow_person()) or fallow_covers(athlete_id)
	or fallow_sees_merged(athlete_id));
alter policy seen on contact_mark using (case when athlete_id = any (select unnest(fallow_entries((select fallow_person()))))
	then shared else fallow_covers(athlete_id) or fallow_sees_merged(athlete_id) end);

do $$
declare
	name text;
begin
	foreach name in array array['training_statement', 'contact_message', 'contact_mark', 'race_word']
	loop
		execute format('create policy not_set_aside on %I as restrictive for insert '
			|| 'with check (not fallow_set_aside(athlete_id))', name);
	end loop;
end $$;
