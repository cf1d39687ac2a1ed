-- A vaccination with its day, and changes about the measuring after which readings are another series.

create table vaccination (
	athlete_id uuid not null references person,
	key text not null,
	revision integer not null check (revision > 0),
	day date not null,
	zone_id text not null,
	recorded_at timestamptz not null,
	recorded_on date not null,
	written_at timestamptz not null,
	actor_id uuid not null references person,
	role text not null check (role in ('COACH', 'ATHLETE')),
	source text not null check (source in ('PAGE', 'IMPORT')),
	request_id uuid not null,
	primary key (athlete_id, key, revision),
	constraint vaccination_sent_once unique (athlete_id, request_id)
);
create index vaccination_day on vaccination (athlete_id, day);
create index vaccination_actor on vaccination (actor_id);
comment on table vaccination is 'A vaccination, noted with its day';
comment on column vaccination.athlete_id is 'Whose; the primary key serves as its index';
comment on column vaccination.key is 'Names the fact among the athlete''s; stable over corrections';
comment on column vaccination.revision is 'Counting from 1 for each key; the last one is effective';
comment on column vaccination.day is 'Civil day of the vaccination';
comment on column vaccination.zone_id is 'IANA zone id the civil days are counted in';
comment on column vaccination.recorded_at is 'When it counts as having become known; orders facts';
comment on column vaccination.recorded_on is 'Civil day of recorded_at; it changes no decision before';
comment on column vaccination.written_at is 'When this row was stored';
comment on column vaccination.actor_id is 'Who entered it';
comment on column vaccination.role is 'In which role: COACH or ATHLETE';
comment on column vaccination.source is 'By which way: PAGE or IMPORT';
comment on column vaccination.request_id is 'Names the sending: sent twice is stored once';

create table device_change (
	athlete_id uuid not null references person,
	key text not null,
	revision integer not null check (revision > 0),
	day date not null,
	what text not null check (what in ('DEVICE', 'SOFTWARE', 'PLACE')),
	method text,
	zone_id text not null,
	recorded_at timestamptz not null,
	recorded_on date not null,
	written_at timestamptz not null,
	actor_id uuid not null references person,
	role text not null check (role in ('COACH', 'ATHLETE')),
	source text not null check (source in ('PAGE', 'IMPORT')),
	request_id uuid not null,
	primary key (athlete_id, key, revision),
	constraint device_change_sent_once unique (athlete_id, request_id)
);
create index device_change_day on device_change (athlete_id, day);
create index device_change_actor on device_change (actor_id);
comment on table device_change is 'A change of the device that measures, of its software or its place';
comment on column device_change.athlete_id is 'Whose; the primary key serves as its index';
comment on column device_change.key is 'Names the fact among the athlete''s; stable over corrections';
comment on column device_change.revision is 'Counting from 1 for each key; the last one is effective';
comment on column device_change.day is 'First morning after the change';
comment on column device_change.what is 'What changed: DEVICE, SOFTWARE or PLACE';
comment on column device_change.method is 'The way of measuring it is about; null for all of them';
comment on column device_change.zone_id is 'IANA zone id the civil days are counted in';
comment on column device_change.recorded_at is 'When it counts as having become known; orders facts';
comment on column device_change.recorded_on is 'Civil day of recorded_at; it changes no decision before';
comment on column device_change.written_at is 'When this row was stored';
comment on column device_change.actor_id is 'Who entered it';
comment on column device_change.role is 'In which role: COACH or ATHLETE';
comment on column device_change.source is 'By which way: PAGE or IMPORT';
comment on column device_change.request_id is 'Names the sending: sent twice is stored once';

grant select, insert on vaccination, device_change to fallow_app;

do $$
declare
	name text;
begin
	foreach name in array array['vaccination', 'device_change']
	loop
		execute format('alter table %I enable row level security', name);
		execute format('create policy seen on %I for select using (athlete_id = (select fallow_person()) '
			|| 'or athlete_id = (select fallow_athlete()) '
			|| 'or (select c.covered from fallow_covered c where c.person_id = athlete_id limit 1))', name);
		execute format('create policy added on %I for insert with check (actor_id = (select fallow_person()) '
			|| 'and (athlete_id = actor_id or athlete_id = (select fallow_athlete()) or fallow_covers(athlete_id)))', name);
	end loop;
end $$;
