-- A red flag that a physician has examined was ticked: a coach should ask.
alter table contact_mark drop constraint contact_mark_matter_check;
alter table contact_mark add constraint contact_mark_matter_check
	check (matter in ('REFER', 'NEW_ILLNESS', 'SLIP', 'STEP_BACK', 'EXAMINED', 'STALLED', 'QUIET', 'DRIFT'));
