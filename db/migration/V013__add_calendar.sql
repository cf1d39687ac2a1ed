-- The calendar of an athlete: the address that calendar programs ask, and what was sent to it, so that a change is told as
-- a change and a session that is gone as cancelled. Nothing about health is in either table.

create table calendar_feed (
	person_id uuid primary key references person,
	token_hash text not null check (length(token_hash) = 64),
	made_at timestamptz not null,
	revoked_at timestamptz,
	constraint calendar_feed_token_unique unique (token_hash)
);
comment on table calendar_feed is 'The newest address of a person''s calendar; making another replaces it';
comment on column calendar_feed.person_id is 'Whose calendar; the primary key serves as its index';
comment on column calendar_feed.token_hash is 'SHA-256 of the address''s 256 random bits, 64 hexadecimal digits; the address itself is not kept';
comment on column calendar_feed.made_at is 'When it was made';
comment on column calendar_feed.revoked_at is 'When the person ended it; null while it works';

create table calendar_event (
	athlete_id uuid not null references person,
	uid text not null,
	sequence integer not null check (sequence >= 0),
	cancelled boolean not null,
	content_hash text not null check (length(content_hash) = 64),
	changed_at timestamptz not null,
	day date not null,
	at_time time,
	minutes integer not null check (minutes between 0 and 1440),
	summary text not null,
	place text not null,
	primary key (athlete_id, uid),
	constraint calendar_event_lasts check (at_time is null or minutes > 0)
);
comment on table calendar_event is 'Events of calendars as they were last sent; gone two months after their day';
comment on column calendar_event.athlete_id is 'Whose calendar; the primary key serves as its index';
comment on column calendar_event.uid is 'Names the event in calendars for good (RFC 5545): SHA-256 of athlete and session, shortened';
comment on column calendar_event.sequence is 'How often its content changed (RFC 5545), counting from 0';
comment on column calendar_event.cancelled is 'Whether it is gone from the programme';
comment on column calendar_event.content_hash is 'SHA-256 of what was sent, 64 hexadecimal digits: tells a change';
comment on column calendar_event.changed_at is 'When its content changed last';
comment on column calendar_event.day is 'Civil day, where the athlete is';
comment on column calendar_event.at_time is 'When it begins, local time; null for the whole day';
comment on column calendar_event.minutes is 'How long it lasts, minutes; 0 where nothing is run';
comment on column calendar_event.summary is 'Its title, which a cancelled one keeps';
comment on column calendar_event.place is 'Where, which a cancelled one keeps; may be empty';

comment on function fallow_purpose() is 'SIGN_IN, CALENDAR or OPERATION for work done before or without a person; empty else';

grant select, insert, update on calendar_feed to fallow_app;
grant select, insert, update, delete on calendar_event to fallow_app;

-- Coaches have nothing to look for in either. CALENDAR finds out whose an address is; the calendar is then made as that person.
alter table calendar_feed enable row level security;
create policy own on calendar_feed using (person_id = (select fallow_person()));
create policy found on calendar_feed for select using ((select fallow_purpose()) = 'CALENDAR');
alter table calendar_event enable row level security;
create policy own on calendar_event using (athlete_id = (select fallow_person()));
