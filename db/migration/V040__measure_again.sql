-- A resting heart rate measured again on the same morning: after lying some minutes longer, or counted by finger at once.
-- It is kept beside the entry's reading and corrects nothing.

create table measured_again (
	athlete_id uuid not null references person,
	key text not null,
	revision integer not null check (revision > 0),
	day date not null,
	kind text not null check (kind in ('RESTED', 'COUNTED')),
	method text not null,
	posture text not null check (posture in ('LYING', 'SITTING', 'STANDING')),
	rhr_bpm numeric(4, 1) not null check (rhr_bpm between 20 and 220),
	zone_id text not null,
	recorded_at timestamptz not null,
	recorded_on date not null,
	written_at timestamptz not null,
	actor_id uuid not null references person,
	role text not null check (role in ('COACH', 'ATHLETE')),
	source text not null check (source in ('PAGE', 'IMPORT')),
	request_id uuid not null,
	primary key (athlete_id, key, revision),
	constraint measured_again_sent_once unique (athlete_id, request_id),
	constraint measured_again_own_day check (day = recorded_on),
	constraint measured_again_how check (case kind when 'RESTED' then posture = 'LYING'
		else method in ('COUNT_30', 'COUNT_60') end)
);
create index measured_again_day on measured_again (athlete_id, day);
create index measured_again_actor on measured_again (actor_id);
comment on table measured_again is 'A resting heart rate measured again on the same morning, kept beside the entry''s';
comment on column measured_again.athlete_id is 'Whose; the primary key serves as its index';
comment on column measured_again.key is 'Names the fact among the athlete''s';
comment on column measured_again.revision is 'Counting from 1 for each key';
comment on column measured_again.day is 'Civil day of the morning, that of the recording';
comment on column measured_again.kind is 'RESTED: after lying some minutes longer; COUNTED: by finger, at once';
comment on column measured_again.method is 'How it was taken; a pulse counted for COUNTED';
comment on column measured_again.posture is 'How the athlete was placed; lying for RESTED';
comment on column measured_again.rhr_bpm is 'Resting heart rate, bpm, one decimal';
comment on column measured_again.zone_id is 'IANA zone id the civil days are counted in';
comment on column measured_again.recorded_at is 'When it counts as having become known; orders facts';
comment on column measured_again.recorded_on is 'Civil day of recorded_at; it changes no decision before';
comment on column measured_again.written_at is 'When this row was stored';
comment on column measured_again.actor_id is 'Who entered it';
comment on column measured_again.role is 'In which role: COACH or ATHLETE';
comment on column measured_again.source is 'By which way: PAGE or IMPORT';
comment on column measured_again.request_id is 'Names the sending: sent twice is stored once';

grant select, insert on measured_again to fallow_app;

alter table measured_again enable row level security;
create policy seen on measured_again for select using (athlete_id = (select fallow_person())
	or athlete_id = (select fallow_athlete())
	or (select c.covered from fallow_covered c where c.person_id = athlete_id limit 1)
	or fallow_sees_merged(athlete_id));
create policy added on measured_again for insert with check (actor_id = (select fallow_person())
	and (athlete_id = actor_id or athlete_id = (select fallow_athlete()) or fallow_covers(athlete_id)));
create policy not_set_aside on measured_again as restrictive for insert with check (not fallow_set_aside(athlete_id));
