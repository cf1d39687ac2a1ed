-- What a clearance says besides its ceiling and whose word it is; ceilings of coaches that can be lifted by name; a coach's
-- word of what the athlete said today. All are events like the others: only ever added.
alter table illness_event drop constraint illness_event_event_check;
alter table illness_event add constraint illness_event_event_check check (event in ('REPORT', 'HOLD', 'CLEARED', 'WITHDRAWAL',
	'STRICTER', 'SYMPTOMS_ONLY', 'WORKING_LEVEL', 'SLIP', 'SLIP_ACCEPTED', 'ASKED', 'LIFTED', 'SAID_TODAY'));
alter table illness_event
	add column word_by text check (word_by in ('PHYSICIAN', 'CLINICIAN', 'GUARDIAN', 'ATHLETE')),
	add column examined_on date,
	add column no_illness boolean,
	add column examined text[],
	add column names_key text,
	add column says_able boolean,
	add column says_eating boolean;
update illness_event set word_by = 'CLINICIAN', no_illness = false, examined = '{}' where event = 'CLEARED';

alter table illness_event add constraint illness_event_word check (event <> 'CLEARED'
	or (word_by in ('PHYSICIAN', 'CLINICIAN', 'ATHLETE') and no_illness is not null and examined is not null));
alter table illness_event add constraint illness_event_examined check (event <> 'CLEARED'
	or ((not no_illness and examined = '{}') or (word_by = 'PHYSICIAN' and examined_on <= recorded_on)));
alter table illness_event add constraint illness_event_no_illness check (event <> 'CLEARED' or not no_illness
	or (ceiling = 'FULL_TRAINING' and until_day is null));
alter table illness_event add constraint illness_event_told check (event <> 'CLEARED' or word_by <> 'ATHLETE'
	or (ceiling <> 'FULL_TRAINING' and until_day is not null and until_day <= day + 13));
alter table illness_event add constraint illness_event_spoken check (event not in ('STRICTER', 'LIFTED')
	or ((word_by is null) = (clinician is null) and coalesce(word_by, 'CLINICIAN') in ('CLINICIAN', 'GUARDIAN')));
alter table illness_event add constraint illness_event_lifted check ((event = 'LIFTED') = (names_key is not null));
alter table illness_event add constraint illness_event_said check (event <> 'SAID_TODAY'
	or (says_able is not null and says_eating is not null and (says_able or says_eating) and day = recorded_on));

comment on column illness_event.event is 'Which kind of event; LIFTED ends the ceiling it names, SAID_TODAY is what an athlete said to a coach';
comment on column illness_event.word_by is 'Whose word: of a clearance, or the word that a ceiling or its lifting names; null where it is the coach''s own';
comment on column illness_event.examined_on is 'Civil day a physician examined the athlete; null where none did';
comment on column illness_event.no_illness is 'Of a clearance: whether a physician says that it was no illness; null for other events';
comment on column illness_event.examined is 'Of a clearance: red flags a physician examined, each as CODE:SEVERITY; null for other events';
comment on column illness_event.names_key is 'Key of the ceiling that is lifted; null for other events';
comment on column illness_event.says_able is 'Whether the athlete said to feel able to train that day; null for other events';
comment on column illness_event.says_eating is 'Whether the athlete said to eat and drink normally that day; null for other events';
comment on column illness_event.clinician is 'Name of the clinician who cleared, or of whoever''s word the event names; null else';

-- Athletes never lift their own hold, coaches who train themselves included: what they record of a clearance is what they tell.
create policy own_word on illness_event as restrictive for insert
	with check (event <> 'CLEARED' or (athlete_id = actor_id) = (word_by = 'ATHLETE'));

-- Under a hold nothing is counted in a stage, so these columns are empty then.
comment on column assessment.stage is '0 while ill, else the stage''s number; null without an episode and under a hold';
comment on column assessment.day_in_stage is 'Counting from 1; null without an episode and under a hold';
update assessment set stage = null, day_in_stage = null where holding;
drop index assessment_ill;
create index assessment_ill on assessment (athlete_id, day) where stage = 0 or holding;
