-- After mornings without an entry the next one is asked whether the athlete was ill meanwhile. Rows stored before there was
-- the question could not answer it and are taken as no, as a file is that cannot tell.

alter table morning_entry add column ill_meanwhile boolean default false;
alter table morning_entry alter column ill_meanwhile drop default;
alter table morning_entry add column ill_since date;
alter table morning_entry add constraint morning_entry_ill_since check (ill_since is null or ill_meanwhile is true);
comment on column morning_entry.ill_meanwhile is 'Whether ill during the mornings without an entry before; null when not asked or not answered';
comment on column morning_entry.ill_since is 'First civil day of that illness; null without one or when not told';
comment on column morning_symptom.words is 'The athlete''s words, for OTHER and OTHER_COMPLAINT; null else';

-- Why a symptom is known to be no illness decides what may be noted, and on whose word.
alter table known_symptom add column cause text;
alter table known_symptom add column word text;
update known_symptom set cause = case when symptom = 'WHEEZE' then 'ASTHMA'
	when symptom = 'COUGH' and severity <> 'MILD' then 'LINGERING_COUGH'
	when symptom in ('ABDOMINAL_PAIN', 'FATIGUE', 'SEVERE_HEADACHE') then 'CYCLE' else 'ALLERGY' end;
alter table known_symptom alter column cause set not null;
alter table known_symptom add constraint known_symptom_cause
	check (cause in ('ALLERGY', 'ASTHMA', 'LINGERING_COUGH', 'PREGNANCY', 'CYCLE'));
comment on column known_symptom.cause is 'Why it is no illness: ALLERGY, ASTHMA, LINGERING_COUGH, PREGNANCY or CYCLE';
comment on column known_symptom.word is 'Whose word it rests on, a clinician''s or a midwife''s; null where none was needed';

-- A path of its own after a vaccination.
alter table assessment drop constraint assessment_path_check;
alter table assessment add constraint assessment_path_check
	check (path in ('VACCINATION', 'SHORT', 'STOMACH', 'THREE_WEEK', 'LONG'));
