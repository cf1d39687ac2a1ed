-- Rule sets move from the club to the team, whose rules decide for its athletes; drafts of rule sets.

alter table rule_set rename to club_rule_set;
alter table club_rule_set rename constraint rule_set_pkey to club_rule_set_pkey;

create table rule_set (
	team_id uuid not null references team,
	version integer not null check (version > 0),
	hash text not null check (length(hash) = 64),
	canonical text not null,
	effective_from date not null,
	written_at timestamptz not null,
	written_by uuid references person,
	reason text check (reason <> ''),
	primary key (team_id, version),
	constraint rule_set_written_with_reason check ((written_by is null) = (reason is null))
);
create index rule_set_written_by on rule_set (written_by);
comment on table rule_set is 'Every number a team''s decisions depend on; only ever added';
comment on column rule_set.team_id is 'Whose rules; the primary key serves as its index';
comment on column rule_set.version is 'Counting from 1 in each team';
comment on column rule_set.hash is 'SHA-256 of the canonical text, 64 hexadecimal digits';
comment on column rule_set.canonical is 'Canonical JSON in the manner of RFC 8785, decimals as text';
comment on column rule_set.effective_from is 'First civil day decided by it, in each athlete''s own zone';
comment on column rule_set.written_at is 'When it was stored';
comment on column rule_set.written_by is 'The coach who adopted it; null for the set a team begins with';
comment on column rule_set.reason is 'Why, in the coach''s words; null for the set a team begins with';

insert into rule_set (team_id, version, hash, canonical, effective_from, written_at)
	select t.id, r.version, r.hash, r.canonical, r.effective_from, r.written_at
	from club_rule_set r join team t on t.club_id = r.club_id;

drop table club_rule_set;

create table rule_draft (
	id uuid primary key,
	team_id uuid not null,
	based_on integer not null,
	canonical text not null,
	state text not null check (state in ('OPEN', 'ADOPTED', 'DISCARDED')),
	started_by uuid not null references person,
	started_at timestamptz not null,
	changed_at timestamptz not null,
	changes integer not null check (changes >= 0),
	constraint rule_draft_based_on foreign key (team_id, based_on) references rule_set (team_id, version)
);
create index rule_draft_team on rule_draft (team_id, based_on);
create index rule_draft_started_by on rule_draft (started_by);
comment on table rule_draft is 'A copy of a rule set that a coach changes and tries before it is adopted';
comment on column rule_draft.id is 'UUID version 7, drawn by the application';
comment on column rule_draft.team_id is 'Whose rules; rule_draft_team serves as its index';
comment on column rule_draft.based_on is 'Version it was copied from';
comment on column rule_draft.canonical is 'Canonical JSON as in rule_set, always within the safe bounds';
comment on column rule_draft.state is 'OPEN, ADOPTED or DISCARDED';
comment on column rule_draft.started_by is 'The coach who began it';
comment on column rule_draft.started_at is 'When it was begun';
comment on column rule_draft.changed_at is 'When it was last changed';
comment on column rule_draft.changes is 'How often it was changed; a form sent from an older one is refused';

grant select, insert on rule_set to fallow_app;
grant select, insert, update on rule_draft to fallow_app;
