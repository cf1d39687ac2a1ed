-- The programme of a group, week by week. A week is one document: it is edited, copied and taken back as a whole, and nothing
-- asks the database for a single session. Each change is a new revision, so taking back is one more, and nothing is lost.

create table programme_week (
	group_id uuid not null references training_group,
	monday date not null check (extract(isodow from monday) = 1),
	revision integer not null check (revision > 0),
	kind text not null check (kind in ('LOADING', 'UNLOADING', 'TEST', 'RACE')),
	sessions text not null,
	content_of integer not null check (content_of between 0 and revision),
	before_it integer not null check (before_it between 0 and revision),
	made_by uuid not null references person,
	made_at timestamptz not null,
	primary key (group_id, monday, revision)
);
create index programme_week_made_by on programme_week (made_by);
comment on table programme_week is 'Weeks of groups'' programmes, each change a revision; the last one counts';
comment on column programme_week.group_id is 'Whose programme; the primary key serves as its index';
comment on column programme_week.monday is 'First day of the week';
comment on column programme_week.revision is 'Counting from 1 for each week';
comment on column programme_week.kind is 'What the week is for';
comment on column programme_week.sessions is 'Its sessions as JSON, in order of their days; times in seconds, distances in metres';
comment on column programme_week.content_of is 'The revision that first held this content: itself, or an earlier one taken back to; 0 for the empty week before the first';
comment on column programme_week.before_it is 'The revision that a step back leads to; 0 for the empty week before the first';
comment on column programme_week.made_by is 'Who changed it';
comment on column programme_week.made_at is 'When';

create table training_statement (
	athlete_id uuid not null references person,
	id uuid not null,
	week_minutes integer check (week_minutes between 0 and 10080),
	long_minutes integer check (long_minutes between 0 and week_minutes),
	maximum_bpm integer check (maximum_bpm between 100 and 240),
	recorded_at timestamptz not null,
	recorded_on date not null,
	actor_id uuid not null references person,
	role text not null check (role in ('COACH', 'ATHLETE')),
	request_id uuid not null,
	primary key (athlete_id, id),
	constraint training_statement_sent_once unique (athlete_id, request_id),
	constraint training_statement_volume check ((week_minutes is null) = (long_minutes is null)),
	constraint training_statement_something check (week_minutes is not null or maximum_bpm is not null)
);
create index training_statement_actor on training_statement (actor_id);
comment on table training_statement is 'What athletes or coaches say of usual volume and tested maximum heart rate; the last one of each counts';
comment on column training_statement.athlete_id is 'Whose; the primary key serves as its index';
comment on column training_statement.id is 'Names the statement, rising with time';
comment on column training_statement.week_minutes is 'Minutes usually run in a week; null when not said';
comment on column training_statement.long_minutes is 'Minutes of the usual long run; null likewise';
comment on column training_statement.maximum_bpm is 'Heart rate reached in a test or race, beats a minute; null when not said';
comment on column training_statement.recorded_at is 'When it was said';
comment on column training_statement.recorded_on is 'Civil day of that in the athlete''s zone';
comment on column training_statement.actor_id is 'Who said it';
comment on column training_statement.role is 'In which role: COACH or ATHLETE';
comment on column training_statement.request_id is 'Names the sending: sent twice is stored once';

grant select, insert on programme_week, training_statement to fallow_app;

create function fallow_programmes(wanted uuid) returns boolean language sql stable security definer parallel safe
	set search_path = public, pg_temp as $$
	select exists (select 1 from training_group g join post c on c.team_id = g.team_id
		where g.id = wanted and c.kind in ('HEAD_COACH', 'GROUP_COACH')
			and c.person_id = fallow_person() and c.ended_at is null and (c.until_at is null or c.until_at > now())
			and (c.whole_team or exists (select 1 from post_group p where p.post_id = c.id and p.group_id = g.id)))
$$;
comment on function fallow_programmes(uuid) is 'Whether the present person may change a group''s programme';

alter table programme_week enable row level security;
create policy seen on programme_week for select using (exists (select 1 from training_group g join team t on t.id = g.team_id
	where g.id = group_id and fallow_belongs(t.club_id, t.id)));
create policy made on programme_week for insert with check (made_by = (select fallow_person()) and fallow_programmes(group_id));

alter table training_statement enable row level security;
create policy seen on training_statement for select
	using (athlete_id = (select fallow_person()) or fallow_covers(athlete_id));
create policy added on training_statement for insert with check (actor_id = (select fallow_person())
	and (athlete_id = actor_id or fallow_covers(athlete_id)));
