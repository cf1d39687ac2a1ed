-- Who looks after whom, and by whose leave: posts in a team or club, the groups they cover, invitations, consent.

create table post (
	id uuid primary key,
	person_id uuid not null references person,
	club_id uuid not null references club,
	team_id uuid references team,
	kind text not null check (kind in ('OWNER', 'HEAD_COACH', 'GROUP_COACH', 'DEPUTY')),
	whole_team boolean not null,
	begun_at timestamptz not null,
	until_at timestamptz,
	given_by uuid references person,
	ended_at timestamptz,
	ended_by uuid references person,
	constraint post_of_team unique (team_id, id),
	constraint post_owner check ((kind = 'OWNER') = (team_id is null)),
	constraint post_deputy check (kind <> 'DEPUTY' or until_at is not null),
	constraint post_whole_team check (case kind when 'OWNER' then not whole_team when 'HEAD_COACH' then whole_team
		when 'GROUP_COACH' then not whole_team else true end)
);
create index post_person on post (person_id, team_id);
create index post_club on post (club_id);
create index post_given_by on post (given_by);
create index post_ended_by on post (ended_by);
comment on table post is 'What a person is charged with in a club or team; ended, never deleted';
comment on column post.id is 'UUID version 7, drawn by the application';
comment on column post.person_id is 'Who; post_person serves as its index';
comment on column post.club_id is 'The club';
comment on column post.team_id is 'The team, post_of_team serves as its index; null for an owner, who has the club';
comment on column post.kind is 'OWNER, HEAD_COACH, GROUP_COACH or DEPUTY';
comment on column post.whole_team is 'Whether all athletes of the team are covered, or those of post_group only';
comment on column post.begun_at is 'Since when';
comment on column post.until_at is 'Until when, exclusive; null for an open end; a deputy has one';
comment on column post.given_by is 'Who gave it; null at set-up';
comment on column post.ended_at is 'When it was ended; null while it holds';
comment on column post.ended_by is 'Who ended it; null while it holds';

create table post_group (
	post_id uuid not null,
	team_id uuid not null,
	group_id uuid not null,
	primary key (post_id, group_id),
	constraint post_group_post foreign key (team_id, post_id) references post (team_id, id),
	constraint post_group_group foreign key (team_id, group_id) references training_group (team_id, id)
);
create index post_group_of_post on post_group (team_id, post_id);
create index post_group_of_group on post_group (team_id, group_id);
comment on table post_group is 'Groups that a coach of groups, or a deputy, covers';
comment on column post_group.post_id is 'The post; the primary key serves as its index';
comment on column post_group.team_id is 'The team of both';
comment on column post_group.group_id is 'The group';

insert into post (id, person_id, club_id, team_id, kind, whole_team, begun_at)
	select gen_random_uuid(), m.person_id, t.club_id, m.team_id, 'HEAD_COACH', true, p.created_at
	from membership m join team t on t.id = m.team_id join person p on p.id = m.person_id where m.role = 'COACH';
insert into post (id, person_id, club_id, team_id, kind, whole_team, begun_at)
	select gen_random_uuid(), first.person_id, first.club_id, null, 'OWNER', false, first.begun_at
	from (select distinct on (club_id) club_id, person_id, begun_at from post order by club_id, begun_at, person_id) first;

delete from membership where role = 'COACH';
drop index membership_one_home_team;
alter table membership drop constraint membership_pkey;
alter table membership drop column role;
alter table membership add constraint membership_pkey primary key (person_id, team_id);
alter table membership add column shares boolean not null default true;
alter table membership alter column shares drop default;
alter table membership add column joined_at timestamptz;
update membership set joined_at = (select created_at from person where id = person_id);
alter table membership alter column joined_at set not null;
alter table membership add column left_at timestamptz;
alter table membership add constraint membership_left check (left_at is null or not shares);
create unique index membership_one_home_team on membership (person_id) where left_at is null;
comment on table membership is 'That a person is an athlete of a team';
comment on column membership.person_id is 'Who; the primary key serves as its index';
comment on column membership.team_id is 'The team; an athlete has one at a time, the home team';
comment on column membership.shares is 'Whether the coaches see the athlete''s data: what the latest consent says';
comment on column membership.joined_at is 'Since when';
comment on column membership.left_at is 'When the athlete left; null while in the team';

create table consent (
	athlete_id uuid not null references person,
	id uuid not null,
	team_id uuid not null references team,
	kind text not null check (kind in ('GIVEN', 'STATED', 'WITHDRAWN', 'LEFT')),
	at timestamptz not null,
	actor_id uuid not null references person,
	words_version text not null,
	guardian text,
	guardian_role text,
	primary key (athlete_id, id),
	constraint consent_guardian check ((guardian is null) = (guardian_role is null))
);
create index consent_team on consent (team_id);
create index consent_actor on consent (actor_id);
comment on table consent is 'What an athlete agreed to, and took back; only ever added';
comment on column consent.athlete_id is 'Whose data; the primary key serves as its index';
comment on column consent.id is 'UUID version 7, drawn by the application';
comment on column consent.team_id is 'Whose coaches may look';
comment on column consent.kind is 'GIVEN by the athlete, STATED by a coach who asked them, WITHDRAWN, LEFT the team';
comment on column consent.at is 'When';
comment on column consent.actor_id is 'Who said so';
comment on column consent.words_version is 'Which words were read';
comment on column consent.guardian is 'Name of the guardian who agreed, for an athlete under 18; null else';
comment on column consent.guardian_role is 'What the guardian is to the athlete; null without one';

insert into consent (athlete_id, id, team_id, kind, at, actor_id, words_version)
	select person_id, gen_random_uuid(), team_id, 'STATED', joined_at, person_id, 'before-consent' from membership;

create table invitation (
	id uuid primary key,
	team_id uuid references team,
	club_id uuid not null references club,
	kind text not null check (kind in ('ATHLETE', 'OWNER', 'HEAD_COACH', 'GROUP_COACH', 'DEPUTY')),
	name text not null check (name <> ''),
	person_id uuid references person,
	group_ids uuid[] not null,
	whole_team boolean not null,
	until_at timestamptz,
	token_hash text not null check (length(token_hash) = 64),
	made_by uuid not null references person,
	made_at timestamptz not null,
	expires_at timestamptz not null,
	revoked_at timestamptz,
	accepted_at timestamptz,
	accepted_by uuid references person,
	constraint invitation_token unique (token_hash),
	constraint invitation_owner check ((kind = 'OWNER') = (team_id is null)),
	constraint invitation_accepted check ((accepted_at is null) = (accepted_by is null))
);
create index invitation_team on invitation (team_id);
create index invitation_club on invitation (club_id);
create index invitation_person on invitation (person_id);
create index invitation_made_by on invitation (made_by);
create index invitation_accepted_by on invitation (accepted_by);
comment on table invitation is 'An invitation into a team or club, by a link that works once';
comment on column invitation.id is 'UUID version 7, drawn by the application';
comment on column invitation.team_id is 'Into which team; null for an owner';
comment on column invitation.club_id is 'Into which club';
comment on column invitation.kind is 'ATHLETE, or the post offered';
comment on column invitation.name is 'Whom the inviter means';
comment on column invitation.person_id is 'The athlete on file whom it is for; null where accepting makes a person';
comment on column invitation.group_ids is 'Groups: of an athlete one at most, of a coach of groups or deputy those covered';
comment on column invitation.whole_team is 'Whether a deputy covers the whole team';
comment on column invitation.until_at is 'End of a deputy''s post, exclusive; null for others';
comment on column invitation.token_hash is 'SHA-256 of the link''s secret, 64 hexadecimal digits';
comment on column invitation.made_by is 'Who invites';
comment on column invitation.made_at is 'When it was made';
comment on column invitation.expires_at is 'From when on it no longer works';
comment on column invitation.revoked_at is 'When it was taken back; null if it was not';
comment on column invitation.accepted_at is 'When it was accepted; null if it was not';
comment on column invitation.accepted_by is 'Who accepted it; null if nobody did';

-- The trace says who in words that stay true when people leave, and from where.
alter table access_trace drop constraint access_trace_role_check;
alter table access_trace drop column role;
alter table access_trace add column actor_name text not null;
alter table access_trace add column post text not null
	check (post in ('SELF', 'HEAD_COACH', 'GROUP_COACH', 'DEPUTY'));
alter table access_trace add column address text;
alter table access_trace add column day date not null;
create unique index access_trace_board on access_trace (athlete_id, actor_id, day) where what = 'BOARD';
comment on column access_trace.actor_name is 'Who, as named at the time';
comment on column access_trace.post is 'SELF, or the post by which the person could';
comment on column access_trace.address is 'Network address the request came from; null for work without a request';
comment on column access_trace.day is 'Civil day of it in the athlete''s zone; the board is noted once a day';

create function fallow_person() returns uuid language sql stable parallel safe
	return nullif(current_setting('fallow.person', true), '')::uuid;
comment on function fallow_person() is 'Who the transaction works for; null for nobody';

create function fallow_purpose() returns text language sql stable parallel safe
	return coalesce(current_setting('fallow.purpose', true), '');
comment on function fallow_purpose() is 'SIGN_IN or OPERATION for work done before or without a person; empty else';

grant select, insert, update on post, invitation to fallow_app;
grant select, insert on post_group, consent to fallow_app;
