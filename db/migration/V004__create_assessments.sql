-- What follows from the facts. These tables can be computed again from the facts, so they may be rewritten.

create table assessment (
	athlete_id uuid not null references person,
	day date not null,
	rule_hash text not null,
	clearance text not null check (clearance in ('REFER', 'REST', 'NOT_ASSESSED', 'EASY_ONLY', 'FULL_TRAINING')),
	reasons text not null,
	notices text not null,
	holding boolean not null,
	stage integer,
	day_in_stage integer,
	path text check (path in ('SHORT', 'STOMACH', 'THREE_WEEK', 'LONG')),
	mark text not null check (mark in ('GOOD', 'BAD', 'NEITHER', 'NONE')),
	rhr_bpm numeric(4,1),
	rhr_n integer not null,
	rhr_baseline numeric(9,6),
	rhr_spread numeric(9,6),
	rhr_dev numeric(9,6),
	rhr_tolerance numeric(9,6),
	rhr_flag text check (rhr_flag in ('LOW', 'WITHIN', 'RAISED', 'HIGH', 'VERY_HIGH')),
	raised_for_action boolean not null,
	rise_sum numeric(9,6) not null,
	rise_signal boolean not null,
	hrv_n integer not null,
	hrv_mean numeric(9,6),
	hrv_sd numeric(9,6),
	hrv_recent numeric(9,6),
	hrv_flag text check (hrv_flag in ('SUPPRESSED', 'NORMAL')),
	next_gate integer,
	next_gate_earliest date,
	state text,
	primary key (athlete_id, day)
);
create index assessment_state on assessment (athlete_id, day) where state is not null;
comment on table assessment is 'What was decided for a day, known then, in short';
comment on column assessment.athlete_id is 'Whose; the primary key serves as its index';
comment on column assessment.day is 'Civil day in the athlete''s zone';
comment on column assessment.rule_hash is 'Hash of the rule set it was decided under';
comment on column assessment.clearance is 'What the athlete may do';
comment on column assessment.reasons is 'Why, strictest first: JSON list of lists, code first, arguments after';
comment on column assessment.notices is 'What people should be told besides, in the same form';
comment on column assessment.holding is 'Whether a clinician hold stands';
comment on column assessment.stage is '0 while ill, else the stage''s number; null without an episode';
comment on column assessment.day_in_stage is 'Counting from 1; null without an episode';
comment on column assessment.path is 'The return path; null without an episode';
comment on column assessment.mark is 'What the morning was for the return';
comment on column assessment.rhr_bpm is 'Usable resting heart rate of the day, beats per minute; null if none';
comment on column assessment.rhr_n is 'Eligible readings of the baseline, count';
comment on column assessment.rhr_baseline is 'Median, beats per minute; null without a baseline';
comment on column assessment.rhr_spread is 'Spread, beats per minute; null without a baseline';
comment on column assessment.rhr_dev is 'Reading minus baseline, beats per minute; null without either';
comment on column assessment.rhr_tolerance is 'T, beats per minute; null likewise';
comment on column assessment.rhr_flag is 'Flag of the day; null likewise';
comment on column assessment.raised_for_action is 'Whether it is raised for action';
comment on column assessment.rise_sum is 'S of the sustained rise after the day, beats per minute';
comment on column assessment.rise_signal is 'Whether the signal of the sustained rise stands';
comment on column assessment.hrv_n is 'Eligible readings of the baseline, count';
comment on column assessment.hrv_mean is 'Baseline mean of ln RMSSD, RMSSD in milliseconds; null without a baseline';
comment on column assessment.hrv_sd is 'Baseline SD of ln RMSSD; null without a baseline';
comment on column assessment.hrv_recent is 'Mean ln RMSSD of the last mornings; null if there are too few';
comment on column assessment.hrv_flag is 'SUPPRESSED or NORMAL; null if it cannot be told';
comment on column assessment.next_gate is 'Stage after the next gate, one more than there are stages for the close; null without an episode';
comment on column assessment.next_gate_earliest is 'Earliest civil day it could open; null where no good morning alone can open it';
comment on column assessment.state is 'JSON of what the fold carries on; null on days between two stored states';

create table athlete_status (
	athlete_id uuid primary key references person,
	version bigint not null default 0,
	latest_day date,
	last_entry date,
	constraint athlete_status_assessment foreign key (athlete_id, latest_day) references assessment (athlete_id, day)
);
create index athlete_status_latest on athlete_status (athlete_id, latest_day);
comment on table athlete_status is 'How an athlete stands now: one row each, locked by whoever adds a fact';
comment on column athlete_status.athlete_id is 'Whose';
comment on column athlete_status.version is 'Counted up by every assessment: lock and ETag';
comment on column athlete_status.latest_day is 'Latest civil day decided; null before the first fact';
comment on column athlete_status.last_entry is 'Civil day of the latest morning entered; null before the first';

create table stage_decision (
	athlete_id uuid not null references person,
	day date not null,
	number integer not null check (number > 0),
	kind text not null,
	from_stage integer not null,
	to_stage integer not null,
	rule_hash text not null,
	evidence text not null,
	primary key (athlete_id, day, number)
);
comment on table stage_decision is 'What changed in an episode, with the evidence it was computed from';
comment on column stage_decision.athlete_id is 'Whose; the primary key serves as its index';
comment on column stage_decision.day is 'Civil day of the change';
comment on column stage_decision.number is 'Counting from 1 on each day';
comment on column stage_decision.kind is 'What happened';
comment on column stage_decision.from_stage is 'Stage before: 0 ill, -1 no episode';
comment on column stage_decision.to_stage is 'Stage after: 0 ill, -1 no episode';
comment on column stage_decision.rule_hash is 'Hash of the rule set it was decided under';
comment on column stage_decision.evidence is 'The whole assessment of the day: JSON, members by name, decimals with six places';

grant select, insert, update on assessment, athlete_status to fallow_app;
grant select, insert, delete on stage_decision to fallow_app;
