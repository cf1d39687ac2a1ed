-- An import goes through the people of a file in the order of their names and notes how far it is in its own row, instead of
-- marking each row of the file: so the rows are written once, and the next people are found by the index alone.

alter table import_job add column done_to text collate "C";
comment on column import_job.done_to is 'The last person dealt with, as the file has it, in the order of bytes; null before the first and after the end';
update import_job j set done_to = (select max(r.person collate "C") from import_row r where r.job_id = j.id and r.done)
	where j.state = 'RUNNING';

alter table import_row drop column done;
alter table import_row alter column person type text collate "C";
comment on column import_row.person is 'Whom the row is about, as the file has it, in the order of bytes; null where no column was guessed';

-- Whether a person covers an athlete is asked of each row, which costs more than the row. Work on many rows of one athlete
-- says whom it is about; the database then asks once for each statement, by the same function, and falls back to asking for
-- each row. The wall is the same: a named athlete who is not covered counts as nobody.
create function fallow_athlete() returns uuid language plpgsql stable security definer parallel safe
	set search_path = public, pg_temp as $$
declare
	athlete uuid := nullif(current_setting('fallow.athlete', true), '')::uuid;
begin
	if athlete is not null and fallow_covers(athlete) then
		return athlete;
	end if;
	return null;
end $$;
comment on function fallow_athlete() is 'Whom the transaction says it is about, if the present person covers that athlete; else null';

do $$
declare
	name text;
begin
	foreach name in array array['morning_entry', 'session_log', 'absence', 'medicine_change', 'known_symptom',
		'health_condition', 'illness_event', 'morning_symptom', 'assessment', 'athlete_status', 'stage_decision']
	loop
		execute format('alter policy seen on %I using (athlete_id = (select fallow_person()) '
			|| 'or athlete_id = (select fallow_athlete()) '
			|| 'or (select c.covered from fallow_covered c where c.person_id = athlete_id limit 1))', name);
	end loop;
	foreach name in array array['morning_entry', 'session_log', 'absence', 'medicine_change', 'known_symptom',
		'health_condition', 'illness_event']
	loop
		execute format('alter policy added on %I with check (actor_id = (select fallow_person()) and (athlete_id = actor_id '
			|| 'or athlete_id = (select fallow_athlete()) or fallow_covers(athlete_id)))', name);
	end loop;
end $$;
