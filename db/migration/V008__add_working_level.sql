-- A coach's working level: an event of its own, with the clinician's word, and a decision that shows for ever.
alter table illness_event drop constraint illness_event_event_check;
alter table illness_event add constraint illness_event_event_check
	check (event in ('REPORT', 'HOLD', 'CLEARED', 'WITHDRAWAL', 'STRICTER', 'SYMPTOMS_ONLY', 'WORKING_LEVEL'));
alter table illness_event add column clinician_words text;
alter table illness_event add constraint illness_event_working_level
	check (event <> 'WORKING_LEVEL' or (clinician is not null and clinician_role is not null and clinician_words is not null));
comment on column illness_event.clinician is 'Name of the clinician who cleared or spoke for a working level; null for other events';
comment on column illness_event.clinician_words is 'What the clinician said for a working level; null for other events';
