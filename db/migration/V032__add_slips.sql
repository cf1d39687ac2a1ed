-- Ticks that were slips of the finger: three kinds of events of their own, and what a coach was told. Both facts stay,
-- the tick and the slip; events are only added, as before, and the policies of illness_event are those of the slips too.

alter table illness_event drop constraint illness_event_event_check;
alter table illness_event add constraint illness_event_event_check
	check (event in ('REPORT', 'HOLD', 'CLEARED', 'WITHDRAWAL', 'STRICTER', 'SYMPTOMS_ONLY', 'WORKING_LEVEL', 'SLIP',
		'SLIP_ACCEPTED', 'ASKED'));
alter table illness_event drop constraint illness_event_reason;
alter table illness_event add constraint illness_event_reason
	check (event in ('REPORT', 'CLEARED', 'SLIP') or words is not null);
alter table illness_event add column slip_session text;
alter table illness_event add column slip_tick text;
alter table illness_event add column slip_terms text
	constraint illness_event_slip_terms check (slip_terms in ('AT_ONCE', 'IF_ACCEPTED', 'UNTIL_ASKED', 'UNTIL_ENTRIES'));
alter table illness_event add constraint illness_event_slip check ((event = 'SLIP') = (slip_tick is not null)
	and (event = 'SLIP') = (slip_terms is not null) and (event = 'SLIP' or slip_session is null));
alter table illness_event add constraint illness_event_slip_day
	check (event not in ('SLIP', 'SLIP_ACCEPTED', 'ASKED') or day = recorded_on);
comment on column illness_event.slip_session is 'Key of the session whose after-session list had the tick; null for a morning entry''s and for other events';
comment on column illness_event.slip_tick is 'Code of the symptom or of what was noticed after the session; null for other events';
comment on column illness_event.slip_terms is 'AT_ONCE, IF_ACCEPTED by a coach that day, UNTIL_ASKED by a covering coach, UNTIL_ENTRIES: three more; null for other events';

alter table contact_mark drop constraint contact_mark_matter_check;
alter table contact_mark add constraint contact_mark_matter_check
	check (matter in ('REFER', 'NEW_ILLNESS', 'SLIP', 'STEP_BACK', 'STALLED', 'QUIET', 'DRIFT'));
