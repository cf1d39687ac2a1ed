-- What coaches note of words they had with athletes, and the messages between the two. Nothing is overwritten or taken back.

create table contact_mark (
	athlete_id uuid not null references person,
	id uuid not null,
	matter text not null check (matter in ('REFER', 'NEW_ILLNESS', 'STEP_BACK', 'STALLED', 'QUIET', 'DRIFT')),
	arose_on date not null,
	state text not null check (state in ('CONTACTED', 'AGREED', 'DONE')),
	note text not null check (length(note) between 1 and 1000),
	shared boolean not null,
	recorded_at timestamptz not null,
	recorded_on date not null,
	actor_id uuid not null references person,
	request_id uuid not null,
	primary key (athlete_id, id),
	constraint contact_mark_sent_once unique (athlete_id, request_id)
);
create index contact_mark_actor on contact_mark (actor_id);
comment on table contact_mark is 'Coaches'' marks on what needs a word; the last one of an athlete, matter and day counts';
comment on column contact_mark.athlete_id is 'With whom the word is had; the primary key serves as its index';
comment on column contact_mark.id is 'Names the mark, rising with time';
comment on column contact_mark.matter is 'What the word is about';
comment on column contact_mark.arose_on is 'Civil day in the athlete''s zone on which the matter arose';
comment on column contact_mark.state is 'CONTACTED, AGREED or DONE';
comment on column contact_mark.note is 'What was said, 1 to 1000 characters';
comment on column contact_mark.shared is 'Whether the athlete may read the note';
comment on column contact_mark.recorded_at is 'When it was marked';
comment on column contact_mark.recorded_on is 'Civil day of that in the athlete''s zone';
comment on column contact_mark.actor_id is 'The coach who marked it';
comment on column contact_mark.request_id is 'Names the sending: sent twice is stored once';

create table contact_message (
	athlete_id uuid not null references person,
	id uuid not null,
	about_on date not null,
	body text not null check (length(body) between 1 and 1000),
	recorded_at timestamptz not null,
	recorded_on date not null,
	actor_id uuid not null references person,
	actor_name text not null,
	role text not null check ((role = 'ATHLETE') = (athlete_id = actor_id) and role in ('COACH', 'ATHLETE')),
	request_id uuid not null,
	primary key (athlete_id, id),
	constraint contact_message_sent_once unique (athlete_id, request_id)
);
create index contact_message_actor on contact_message (actor_id);
comment on table contact_message is 'Messages between an athlete and the coaches who cover the athlete';
comment on column contact_message.athlete_id is 'Whose thread; the primary key serves as its index';
comment on column contact_message.id is 'Names the message, rising with time';
comment on column contact_message.about_on is 'Civil day, in the athlete''s zone, of the decision it is about';
comment on column contact_message.body is 'Plain text, 1 to 1000 characters, lines ended by a line feed';
comment on column contact_message.recorded_at is 'When it was sent';
comment on column contact_message.recorded_on is 'Civil day of that in the athlete''s zone';
comment on column contact_message.actor_id is 'Who sent it';
comment on column contact_message.actor_name is 'Who, as named at the time, kept because people leave';
comment on column contact_message.role is 'In which role: COACH or ATHLETE';
comment on column contact_message.request_id is 'Names the sending: sent twice is stored once';

grant select, insert on contact_mark, contact_message to fallow_app;

-- Who coaches and trains in one team sees of the marks about themselves the shared ones only.
alter table contact_mark enable row level security;
create policy seen on contact_mark for select using (case when athlete_id = (select fallow_person()) then shared
	else fallow_covers(athlete_id) end);
create policy added on contact_mark for insert
	with check (actor_id = (select fallow_person()) and athlete_id <> actor_id and fallow_covers(athlete_id));

alter table contact_message enable row level security;
create policy seen on contact_message for select
	using (athlete_id = (select fallow_person()) or fallow_covers(athlete_id));
create policy added on contact_message for insert with check (actor_id = (select fallow_person())
	and (athlete_id = actor_id or fallow_covers(athlete_id)));
