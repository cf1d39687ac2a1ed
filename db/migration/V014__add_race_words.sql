-- A coach's word for a race so soon after an illness that the plan would leave it easy.

create table race_word (
	athlete_id uuid not null references person,
	id uuid not null,
	race_on date not null,
	agreed boolean not null,
	reason text not null check (length(reason) between 1 and 2000),
	recorded_at timestamptz not null,
	recorded_on date not null,
	actor_id uuid not null references person,
	request_id uuid not null,
	primary key (athlete_id, id),
	constraint race_word_sent_once unique (athlete_id, request_id)
);
create index race_word_actor on race_word (actor_id);
comment on table race_word is 'Coaches'' words for races soon after an illness; the last one of a day counts';
comment on column race_word.athlete_id is 'Who races; the primary key serves as its index';
comment on column race_word.id is 'Names the word, rising with time';
comment on column race_word.race_on is 'Civil day of the race';
comment on column race_word.agreed is 'False takes an earlier word back';
comment on column race_word.reason is 'Why; the athlete reads it';
comment on column race_word.recorded_at is 'When it was said';
comment on column race_word.recorded_on is 'Civil day of that in the athlete''s zone';
comment on column race_word.actor_id is 'The coach who said it';
comment on column race_word.request_id is 'Names the sending: sent twice is stored once';

grant select, insert on race_word to fallow_app;

alter table race_word enable row level security;
create policy seen on race_word for select
	using (athlete_id = (select fallow_person()) or fallow_covers(athlete_id));
create policy added on race_word for insert
	with check (actor_id = (select fallow_person()) and athlete_id <> actor_id and fallow_covers(athlete_id));
