-- Clubs, teams, groups, people, their memberships and accounts; rule sets; who looked at whose data.

create table club (
	id uuid primary key,
	name text not null check (name <> ''),
	created_at timestamptz not null
);
comment on table club is 'A club: teams under one set of return rules';
comment on column club.id is 'UUID version 7, drawn by the application';
comment on column club.name is 'As its people write it';
comment on column club.created_at is 'When it was made';

create table team (
	id uuid primary key,
	club_id uuid not null references club,
	name text not null check (name <> ''),
	zone_id text not null,
	constraint team_name_unique unique (club_id, name)
);
comment on table team is 'A team of a club';
comment on column team.id is 'UUID version 7, drawn by the application';
comment on column team.club_id is 'The club; team_name_unique serves as its index';
comment on column team.name is 'Unique in the club';
comment on column team.zone_id is 'IANA zone id that new athletes of the team get';

create table training_group (
	id uuid primary key,
	team_id uuid not null references team,
	name text not null check (name <> ''),
	constraint training_group_name_unique unique (team_id, name),
	constraint training_group_of_team unique (team_id, id)
);
comment on table training_group is 'A group of a team that trains together';
comment on column training_group.id is 'UUID version 7, drawn by the application';
comment on column training_group.team_id is 'The team; training_group_name_unique serves as its index';
comment on column training_group.name is 'Unique in the team';

create table person (
	id uuid primary key,
	name text not null check (name <> ''),
	zone_id text not null,
	birth_date date,
	since_day date not null,
	created_at timestamptz not null
);
comment on table person is 'A human being Fallow knows';
comment on column person.id is 'UUID version 7, drawn by the application';
comment on column person.name is 'As the coach writes it';
comment on column person.zone_id is 'IANA zone id in which this person''s civil days are counted';
comment on column person.birth_date is 'Null where not told, which counts as under 18';
comment on column person.since_day is 'Civil day, in zone_id, the person was created here';
comment on column person.created_at is 'When the person was created here';

create table membership (
	person_id uuid not null references person,
	team_id uuid not null references team,
	role text not null check (role in ('COACH', 'ATHLETE')),
	group_id uuid,
	external_code text,
	primary key (person_id, team_id, role),
	constraint membership_group foreign key (team_id, group_id) references training_group (team_id, id)
);
create unique index membership_one_home_team on membership (person_id) where role = 'ATHLETE';
create unique index membership_external_code on membership (team_id, external_code) where external_code is not null;
create index membership_team on membership (team_id, group_id);
comment on table membership is 'That a person is a coach or an athlete of a team';
comment on column membership.person_id is 'Who; the primary key serves as its index';
comment on column membership.team_id is 'The team; an athlete has one only, the home team';
comment on column membership.role is 'COACH or ATHLETE';
comment on column membership.group_id is 'The group in the same team; null if none';
comment on column membership.external_code is 'What imported files call the athlete, unique in the team; null if none';

create table account (
	person_id uuid primary key references person,
	username text not null check (username = lower(username) and username <> ''),
	password_hash text not null,
	one_time boolean not null,
	created_at timestamptz not null,
	constraint account_username_unique unique (username)
);
comment on table account is 'How a person signs in';
comment on column account.person_id is 'Who';
comment on column account.username is 'E-mail address or other sign-in name, in lower case';
comment on column account.password_hash is 'Argon2id, with its parameters and salt';
comment on column account.one_time is 'Whether the password was issued and not chosen';
comment on column account.created_at is 'When the account was opened';

create table rule_set (
	club_id uuid not null references club,
	version integer not null check (version > 0),
	hash text not null check (length(hash) = 64),
	canonical text not null,
	effective_from date not null,
	written_at timestamptz not null,
	primary key (club_id, version)
);
comment on table rule_set is 'Every number decisions depend on; only ever added';
comment on column rule_set.club_id is 'Whose rules; the primary key serves as its index';
comment on column rule_set.version is 'Counting from 1 in each club';
comment on column rule_set.hash is 'SHA-256 of the canonical text, 64 hexadecimal digits';
comment on column rule_set.canonical is 'Canonical JSON in the manner of RFC 8785, decimals as text';
comment on column rule_set.effective_from is 'First civil day decided by it';
comment on column rule_set.written_at is 'When it was stored';

create table access_trace (
	athlete_id uuid not null references person,
	id uuid not null,
	at timestamptz not null,
	actor_id uuid not null references person,
	role text not null check (role in ('COACH', 'ATHLETE')),
	action text not null check (action in ('LOOKED', 'CHANGED')),
	what text not null,
	primary key (athlete_id, id)
);
create index access_trace_actor on access_trace (actor_id);
comment on table access_trace is 'Who looked at or changed whose data; only ever added';
comment on column access_trace.athlete_id is 'Whose data; the primary key serves as its index';
comment on column access_trace.id is 'UUID version 7, drawn by the application';
comment on column access_trace.at is 'When';
comment on column access_trace.actor_id is 'Who';
comment on column access_trace.role is 'In which role';
comment on column access_trace.action is 'LOOKED or CHANGED';
comment on column access_trace.what is 'Which page or fact';

grant select, insert, update on club, team, training_group, person, membership, account to fallow_app;
grant select, insert on rule_set, access_trace to fallow_app;
