-- A clinician's own figure for a person: from which resting heart rate on readings taken in one way are too fast at rest,
-- instead of the rules' figure. It works from its recording on until a further event ends it.

alter table illness_event drop constraint illness_event_event_check;
alter table illness_event add constraint illness_event_event_check check (event in ('REPORT', 'HOLD', 'CLEARED', 'WITHDRAWAL',
	'STRICTER', 'SYMPTOMS_ONLY', 'WORKING_LEVEL', 'SLIP', 'SLIP_ACCEPTED', 'ASKED', 'LIFTED', 'SAID_TODAY', 'OWN_FIGURE',
	'OWN_FIGURE_ENDED'));
alter table illness_event drop constraint illness_event_reason;
alter table illness_event add constraint illness_event_reason
	check (event in ('REPORT', 'CLEARED', 'SLIP', 'OWN_FIGURE') or words is not null);
alter table illness_event
	add column figure_method text,
	add column figure_posture text check (figure_posture in ('LYING', 'SITTING', 'STANDING')),
	add column figure_bpm numeric(4, 1),
	add column spoken_on date;
alter table illness_event add constraint illness_event_figure check (
	(event in ('OWN_FIGURE', 'OWN_FIGURE_ENDED')) = (figure_method is not null)
	and (event in ('OWN_FIGURE', 'OWN_FIGURE_ENDED')) = (figure_posture is not null)
	and (event = 'OWN_FIGURE') = (figure_bpm is not null)
	and (event = 'OWN_FIGURE') = (spoken_on is not null)
	and (event <> 'OWN_FIGURE' or (clinician is not null and clinician_role is not null and spoken_on <= day
		and figure_bpm > 0 and figure_bpm <= case figure_posture when 'STANDING' then 139 else 119 end))
	and (event not in ('OWN_FIGURE', 'OWN_FIGURE_ENDED') or (day = recorded_on and athlete_id <> actor_id)));
comment on column illness_event.figure_method is 'How the readings are taken that an own figure is for; null for other events';
comment on column illness_event.figure_posture is 'How the athlete is placed for them; null for other events';
comment on column illness_event.figure_bpm is 'From here on such a reading is too fast at rest, bpm; null for other events';
comment on column illness_event.spoken_on is 'Civil day a clinician gave the figure; null for other events';
