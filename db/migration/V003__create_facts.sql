-- The facts of athletes' days. Facts are only ever added: the application may select and insert.

create table morning_entry (
	athlete_id uuid not null references person,
	day date not null,
	revision integer not null check (revision > 0),
	method text check (method in ('COUNT_30', 'COUNT_60', 'TAP', 'STRAP', 'WORN', 'OTHER')),
	posture text check (posture in ('LYING', 'SITTING', 'STANDING')),
	rhr_bpm numeric(4,1) check (rhr_bpm between 20 and 220),
	rmssd_ms numeric(7,3) check (rmssd_ms > 0 and rmssd_ms <= 300),
	rr_ms integer[] not null,
	unsure boolean not null,
	temperature_c numeric(3,1) check (temperature_c between 30 and 45),
	fever_last_24h boolean not null,
	fever_medicine text not null check (fever_medicine in ('NONE', 'ILLNESS', 'OTHER')),
	eating_normally boolean,
	feels text check (feels in ('WELL', 'ABLE', 'UNWELL')),
	soreness text check (soreness in ('MILD', 'MODERATE', 'SEVERE')),
	tags text[] not null,
	note text,
	zone_id text not null,
	recorded_at timestamptz not null,
	recorded_on date not null,
	written_at timestamptz not null,
	actor_id uuid not null references person,
	role text not null check (role in ('COACH', 'ATHLETE')),
	source text not null check (source in ('PAGE', 'IMPORT')),
	request_id uuid not null,
	primary key (athlete_id, day, revision),
	constraint morning_entry_sent_once unique (athlete_id, request_id),
	constraint morning_entry_measured check
		((rhr_bpm is null and rmssd_ms is null) or (method is not null and posture is not null))
);
create index morning_entry_actor on morning_entry (actor_id);
comment on table morning_entry is 'What was entered for a morning; the last revision of a day is the effective one';
comment on column morning_entry.athlete_id is 'Whose; the primary key serves as its index';
comment on column morning_entry.day is 'Civil day of the morning in zone_id';
comment on column morning_entry.revision is 'Counting from 1 for each day';
comment on column morning_entry.method is 'How the heart rate was taken; null without a measurement';
comment on column morning_entry.posture is 'How the athlete was placed; null without a measurement';
comment on column morning_entry.rhr_bpm is 'Resting heart rate, beats per minute; null when not measured';
comment on column morning_entry.rmssd_ms is 'RMSSD, milliseconds; null when not measured';
comment on column morning_entry.rr_ms is 'RR intervals the two were computed from, milliseconds; empty when none';
comment on column morning_entry.unsure is 'Low quality: kept, shown, never used';
comment on column morning_entry.temperature_c is 'Body temperature, degrees Celsius; null when not taken';
comment on column morning_entry.fever_last_24h is 'Fever, shivering or feeling feverish in the last 24 hours';
comment on column morning_entry.fever_medicine is 'Medicine that lowers fever in the last 24 hours, and why';
comment on column morning_entry.eating_normally is 'Eating and drinking normally; null when not asked';
comment on column morning_entry.feels is 'How the athlete feels; null when not asked';
comment on column morning_entry.soreness is 'Soreness from training; null when none';
comment on column morning_entry.tags is 'What else may explain the reading';
comment on column morning_entry.note is 'The athlete''s words; null when none';
comment on column morning_entry.zone_id is 'IANA zone id the civil days are counted in';
comment on column morning_entry.recorded_at is 'When it counts as having become known; orders facts';
comment on column morning_entry.recorded_on is 'Civil day of recorded_at; it changes no decision before';
comment on column morning_entry.written_at is 'When this row was stored';
comment on column morning_entry.actor_id is 'Who entered it';
comment on column morning_entry.role is 'In which role: COACH or ATHLETE';
comment on column morning_entry.source is 'By which way: PAGE or IMPORT';
comment on column morning_entry.request_id is 'Names the sending: sent twice is stored once';

create table morning_symptom (
	athlete_id uuid not null,
	day date not null,
	revision integer not null,
	position integer not null check (position >= 0),
	symptom text not null,
	severity text not null check (severity in ('MILD', 'MODERATE', 'SEVERE')),
	words text,
	primary key (athlete_id, day, revision, position),
	constraint morning_symptom_entry foreign key (athlete_id, day, revision) references morning_entry,
	constraint morning_symptom_once unique (athlete_id, day, revision, symptom)
);
comment on table morning_symptom is 'What was felt on a morning';
comment on column morning_symptom.athlete_id is 'Whose; the primary key serves as index of the entry';
comment on column morning_symptom.day is 'The morning';
comment on column morning_symptom.revision is 'Of which revision of the entry';
comment on column morning_symptom.position is 'Place in the entry, counting from 0';
comment on column morning_symptom.symptom is 'Code of the symptom';
comment on column morning_symptom.severity is 'MILD, MODERATE or SEVERE, in the athlete''s judgement';
comment on column morning_symptom.words is 'The athlete''s words, for OTHER; null else';

create table session_log (
	athlete_id uuid not null references person,
	key text not null,
	revision integer not null check (revision > 0),
	day date not null,
	activity text not null check (activity in ('RUN', 'OTHER')),
	minutes integer check (minutes between 0 and 1440),
	rpe numeric(3,1) check (rpe between 0 and 10),
	intensity text,
	after_session text[] not null,
	removed boolean not null,
	note text,
	zone_id text not null,
	recorded_at timestamptz not null,
	recorded_on date not null,
	written_at timestamptz not null,
	actor_id uuid not null references person,
	role text not null check (role in ('COACH', 'ATHLETE')),
	source text not null check (source in ('PAGE', 'IMPORT')),
	request_id uuid not null,
	primary key (athlete_id, key, revision),
	constraint session_log_sent_once unique (athlete_id, request_id)
);
create index session_log_day on session_log (athlete_id, day);
create index session_log_actor on session_log (actor_id);
comment on table session_log is 'A training session as done';
comment on column session_log.athlete_id is 'Whose; the primary key serves as its index';
comment on column session_log.key is 'Names the fact among the athlete''s; stable over corrections';
comment on column session_log.revision is 'Counting from 1 for each key; the last one is effective';
comment on column session_log.day is 'Civil day of the session';
comment on column session_log.activity is 'RUN or OTHER';
comment on column session_log.minutes is 'Duration, minutes; null when not stated';
comment on column session_log.rpe is 'Session RPE, CR-10 scale; null when not stated';
comment on column session_log.intensity is 'Highest intensity done; null when not stated';
comment on column session_log.after_session is 'What was noticed in or after the session';
comment on column session_log.removed is 'Entered by mistake: no longer counts';
comment on column session_log.note is 'The athlete''s words; null when none';
comment on column session_log.zone_id is 'IANA zone id the civil days are counted in';
comment on column session_log.recorded_at is 'When it counts as having become known; orders facts';
comment on column session_log.recorded_on is 'Civil day of recorded_at; it changes no decision before';
comment on column session_log.written_at is 'When this row was stored';
comment on column session_log.actor_id is 'Who entered it';
comment on column session_log.role is 'In which role: COACH or ATHLETE';
comment on column session_log.source is 'By which way: PAGE or IMPORT';
comment on column session_log.request_id is 'Names the sending: sent twice is stored once';

create table absence (
	athlete_id uuid not null references person,
	key text not null,
	revision integer not null check (revision > 0),
	day date not null,
	until_day date check (until_day >= day),
	kind text not null check (kind in ('INJURY', 'HOLIDAY', 'OTHER')),
	note text,
	zone_id text not null,
	recorded_at timestamptz not null,
	recorded_on date not null,
	written_at timestamptz not null,
	actor_id uuid not null references person,
	role text not null check (role in ('COACH', 'ATHLETE')),
	source text not null check (source in ('PAGE', 'IMPORT')),
	request_id uuid not null,
	primary key (athlete_id, key, revision),
	constraint absence_sent_once unique (athlete_id, request_id)
);
create index absence_day on absence (athlete_id, day);
create index absence_actor on absence (actor_id);
comment on table absence is 'Days away for another reason than illness';
comment on column absence.athlete_id is 'Whose; the primary key serves as its index';
comment on column absence.key is 'Names the fact among the athlete''s; stable over corrections';
comment on column absence.revision is 'Counting from 1 for each key; the last one is effective';
comment on column absence.day is 'First day away';
comment on column absence.until_day is 'Last day away, inclusive; null while open';
comment on column absence.kind is 'INJURY, HOLIDAY or OTHER';
comment on column absence.note is 'Words; null when none';
comment on column absence.zone_id is 'IANA zone id the civil days are counted in';
comment on column absence.recorded_at is 'When it counts as having become known; orders facts';
comment on column absence.recorded_on is 'Civil day of recorded_at; it changes no decision before';
comment on column absence.written_at is 'When this row was stored';
comment on column absence.actor_id is 'Who entered it';
comment on column absence.role is 'In which role: COACH or ATHLETE';
comment on column absence.source is 'By which way: PAGE or IMPORT';
comment on column absence.request_id is 'Names the sending: sent twice is stored once';

create table medicine_change (
	athlete_id uuid not null references person,
	key text not null,
	revision integer not null check (revision > 0),
	day date not null,
	begun boolean not null,
	zone_id text not null,
	recorded_at timestamptz not null,
	recorded_on date not null,
	written_at timestamptz not null,
	actor_id uuid not null references person,
	role text not null check (role in ('COACH', 'ATHLETE')),
	source text not null check (source in ('PAGE', 'IMPORT')),
	request_id uuid not null,
	primary key (athlete_id, key, revision),
	constraint medicine_change_sent_once unique (athlete_id, request_id)
);
create index medicine_change_day on medicine_change (athlete_id, day);
create index medicine_change_actor on medicine_change (actor_id);
comment on table medicine_change is 'A medicine that lowers the heart rate, begun or stopped';
comment on column medicine_change.athlete_id is 'Whose; the primary key serves as its index';
comment on column medicine_change.key is 'Names the fact among the athlete''s; stable over corrections';
comment on column medicine_change.revision is 'Counting from 1 for each key; the last one is effective';
comment on column medicine_change.day is 'First day with, or without, it';
comment on column medicine_change.begun is 'True when begun, false when stopped';
comment on column medicine_change.zone_id is 'IANA zone id the civil days are counted in';
comment on column medicine_change.recorded_at is 'When it counts as having become known; orders facts';
comment on column medicine_change.recorded_on is 'Civil day of recorded_at; it changes no decision before';
comment on column medicine_change.written_at is 'When this row was stored';
comment on column medicine_change.actor_id is 'Who entered it';
comment on column medicine_change.role is 'In which role: COACH or ATHLETE';
comment on column medicine_change.source is 'By which way: PAGE or IMPORT';
comment on column medicine_change.request_id is 'Names the sending: sent twice is stored once';

create table known_symptom (
	athlete_id uuid not null references person,
	key text not null,
	revision integer not null check (revision > 0),
	day date not null,
	until_day date not null check (until_day >= day),
	symptom text not null,
	severity text not null check (severity in ('MILD', 'MODERATE', 'SEVERE')),
	zone_id text not null,
	recorded_at timestamptz not null,
	recorded_on date not null,
	written_at timestamptz not null,
	actor_id uuid not null references person,
	role text not null check (role in ('COACH', 'ATHLETE')),
	source text not null check (source in ('PAGE', 'IMPORT')),
	request_id uuid not null,
	primary key (athlete_id, key, revision),
	constraint known_symptom_sent_once unique (athlete_id, request_id)
);
create index known_symptom_day on known_symptom (athlete_id, day);
create index known_symptom_actor on known_symptom (actor_id);
comment on table known_symptom is 'A symptom known to be no illness, up to a severity';
comment on column known_symptom.athlete_id is 'Whose; the primary key serves as its index';
comment on column known_symptom.key is 'Names the fact among the athlete''s; stable over corrections';
comment on column known_symptom.revision is 'Counting from 1 for each key; the last one is effective';
comment on column known_symptom.day is 'First day it holds';
comment on column known_symptom.until_day is 'Last day it holds, inclusive';
comment on column known_symptom.symptom is 'Code of the symptom';
comment on column known_symptom.severity is 'Up to which severity it is known';
comment on column known_symptom.zone_id is 'IANA zone id the civil days are counted in';
comment on column known_symptom.recorded_at is 'When it counts as having become known; orders facts';
comment on column known_symptom.recorded_on is 'Civil day of recorded_at; it changes no decision before';
comment on column known_symptom.written_at is 'When this row was stored';
comment on column known_symptom.actor_id is 'Who entered it';
comment on column known_symptom.role is 'In which role: COACH or ATHLETE';
comment on column known_symptom.source is 'By which way: PAGE or IMPORT';
comment on column known_symptom.request_id is 'Names the sending: sent twice is stored once';

create table health_condition (
	athlete_id uuid not null references person,
	key text not null,
	revision integer not null check (revision > 0),
	day date not null,
	kind text not null,
	present boolean not null,
	zone_id text not null,
	recorded_at timestamptz not null,
	recorded_on date not null,
	written_at timestamptz not null,
	actor_id uuid not null references person,
	role text not null check (role in ('COACH', 'ATHLETE')),
	source text not null check (source in ('PAGE', 'IMPORT')),
	request_id uuid not null,
	primary key (athlete_id, key, revision),
	constraint health_condition_sent_once unique (athlete_id, request_id)
);
create index health_condition_day on health_condition (athlete_id, day);
create index health_condition_actor on health_condition (actor_id);
comment on table health_condition is 'A condition that makes any illness a clinician''s matter, begun or ended';
comment on column health_condition.athlete_id is 'Whose; the primary key serves as its index';
comment on column health_condition.key is 'Names the fact among the athlete''s; stable over corrections';
comment on column health_condition.revision is 'Counting from 1 for each key; the last one is effective';
comment on column health_condition.day is 'First day with, or without, it';
comment on column health_condition.kind is 'Code of the condition';
comment on column health_condition.present is 'True from this day on, false when it ended';
comment on column health_condition.zone_id is 'IANA zone id the civil days are counted in';
comment on column health_condition.recorded_at is 'When it counts as having become known; orders facts';
comment on column health_condition.recorded_on is 'Civil day of recorded_at; it changes no decision before';
comment on column health_condition.written_at is 'When this row was stored';
comment on column health_condition.actor_id is 'Who entered it';
comment on column health_condition.role is 'In which role: COACH or ATHLETE';
comment on column health_condition.source is 'By which way: PAGE or IMPORT';
comment on column health_condition.request_id is 'Names the sending: sent twice is stored once';

create table illness_event (
	athlete_id uuid not null references person,
	key text not null,
	revision integer not null check (revision > 0),
	day date not null,
	event text not null check (event in ('REPORT', 'HOLD', 'CLEARED', 'WITHDRAWAL', 'STRICTER', 'SYMPTOMS_ONLY')),
	until_day date check (until_day >= day),
	report_kind text,
	worst integer check (worst between 0 and 10),
	ceiling text check (ceiling in ('REST', 'EASY_ONLY', 'FULL_TRAINING')),
	clinician text,
	clinician_role text,
	words text,
	constraint illness_event_report check (event <> 'REPORT' or report_kind is not null),
	constraint illness_event_cleared check (event <> 'CLEARED' or (ceiling is not null and clinician is not null
		and clinician_role is not null and day >= recorded_on)),
	constraint illness_event_stricter check (event <> 'STRICTER' or (ceiling is not null and until_day is not null)),
	constraint illness_event_reason check (event in ('REPORT', 'CLEARED') or words is not null),
	zone_id text not null,
	recorded_at timestamptz not null,
	recorded_on date not null,
	written_at timestamptz not null,
	actor_id uuid not null references person,
	role text not null check (role in ('COACH', 'ATHLETE')),
	source text not null check (source in ('PAGE', 'IMPORT')),
	request_id uuid not null,
	primary key (athlete_id, key, revision),
	constraint illness_event_sent_once unique (athlete_id, request_id)
);
create index illness_event_day on illness_event (athlete_id, day);
create index illness_event_actor on illness_event (actor_id);
comment on table illness_event is 'What people said or decided about an illness';
comment on column illness_event.athlete_id is 'Whose; the primary key serves as its index';
comment on column illness_event.key is 'Names the fact among the athlete''s; stable over corrections';
comment on column illness_event.revision is 'Counting from 1 for each key; the last one is effective';
comment on column illness_event.day is 'Civil day it speaks of: onset, first day covered';
comment on column illness_event.event is 'Which kind of event';
comment on column illness_event.until_day is 'Last day covered, inclusive; null when open or not asked';
comment on column illness_event.report_kind is 'Kind of illness reported; null for other events';
comment on column illness_event.worst is 'Worst severity so far, 0 to 10; null when not stated';
comment on column illness_event.ceiling is 'The most allowed by a clearance or coach; null for other events';
comment on column illness_event.clinician is 'Name of the clinician who cleared; null for other events';
comment on column illness_event.clinician_role is 'Role of the clinician; null for other events';
comment on column illness_event.words is 'Reason or note; null when none';
comment on column illness_event.zone_id is 'IANA zone id the civil days are counted in';
comment on column illness_event.recorded_at is 'When it counts as having become known; orders facts';
comment on column illness_event.recorded_on is 'Civil day of recorded_at; it changes no decision before';
comment on column illness_event.written_at is 'When this row was stored';
comment on column illness_event.actor_id is 'Who entered it';
comment on column illness_event.role is 'In which role: COACH or ATHLETE';
comment on column illness_event.source is 'By which way: PAGE or IMPORT';
comment on column illness_event.request_id is 'Names the sending: sent twice is stored once';

grant select, insert on morning_entry, morning_symptom, session_log, absence, medicine_change, known_symptom,
	health_condition, illness_event to fallow_app;
