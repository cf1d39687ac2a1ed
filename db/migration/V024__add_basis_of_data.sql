-- On whose word data of somebody are kept who has not agreed here themselves. Being added never counts as having agreed: rows of
-- the kind STATED, which say that a coach had asked, stay as they were and are no longer written.

alter table consent add column basis text constraint consent_basis_known
	check (basis in ('OWN_WORD', 'GUARDIAN_WORD', 'CLUB_RECORD'));
alter table consent drop constraint consent_kind_check;
alter table consent add constraint consent_kind_check check (kind in ('GIVEN', 'STATED', 'KEPT', 'WITHDRAWN', 'LEFT'));
alter table consent add constraint consent_kept check ((kind = 'KEPT') = (basis is not null));
comment on column consent.kind is 'GIVEN by the athlete, KEPT on a word the coach tells, STATED by a coach until KEPT came, WITHDRAWN, LEFT the team';
comment on column consent.basis is 'On whose word data are KEPT: OWN_WORD to the coach, GUARDIAN_WORD to the coach, CLUB_RECORD without a word; null else';

alter policy said on consent with check (
	(athlete_id = (select fallow_person()) and actor_id = athlete_id and kind <> 'KEPT')
	or (kind = 'KEPT' and actor_id = (select fallow_person()) and team_id in (select fallow_teams_led()))
	or (kind = 'KEPT' and (select fallow_purpose()) = 'OPERATION'));

-- What the coach decided of a name in a file that is nearly somebody's in the team, before the import runs.
create table import_person (
	job_id uuid not null references import_job on delete cascade,
	person text collate "C" not null,
	decision text not null check (decision in ('SAME', 'NEW', 'LEAVE')),
	same_as uuid,
	primary key (job_id, person),
	constraint import_person_same check ((decision = 'SAME') = (same_as is not null))
);
comment on table import_person is 'Decisions about names in a file that are nearly somebody''s; deleted when the job ends';
comment on column import_person.job_id is 'The import; the primary key serves as its index';
comment on column import_person.person is 'The name as the file has it';
comment on column import_person.decision is 'SAME person as one in the team, a NEW person, or LEAVE out';
comment on column import_person.same_as is 'Which athlete, looked for anew when the lines are taken in; null unless SAME';
grant select, insert, delete on import_person to fallow_app;
alter table import_person enable row level security;
create policy own on import_person using (exists (select 1 from import_job j where j.id = job_id));
