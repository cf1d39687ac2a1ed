-- Signing in: links that set a password, tries that are slowed down, passkeys; and the first walls within the database.

-- Sessions now name a person by id alone, so those of before cannot be read: everybody signs in once more.
delete from spring_session;
comment on column spring_session.principal_name is 'Id of the person who is signed in; null before sign-in';

-- Names are folded by the application: NFKC, then lower case. Where two accounts would become one, both stay as they are.
alter table account drop constraint account_username_check;
update account a set username = lower(normalize(a.username, NFKC))
	where a.username <> lower(normalize(a.username, NFKC)) and not exists (select 1 from account b
		where b.person_id <> a.person_id and lower(normalize(b.username, NFKC)) = lower(normalize(a.username, NFKC)));
alter table account add constraint account_username_check check (username <> '');
alter table account drop column one_time;
comment on column account.username is 'E-mail address or other sign-in name, folded to NFKC and lower case';

create table password_link (
	person_id uuid primary key references person,
	token_hash text not null check (length(token_hash) = 64),
	issued_at timestamptz not null,
	expires_at timestamptz not null,
	used_at timestamptz,
	constraint password_link_token_unique unique (token_hash),
	constraint password_link_used check (used_at is null or used_at < expires_at)
);
comment on table password_link is 'The newest link by which a person may set a password; issuing another replaces it';
comment on column password_link.person_id is 'Whose password; the primary key serves as its index';
comment on column password_link.token_hash is 'SHA-256 of the link''s 256 random bits, 64 hexadecimal digits; the link itself is not kept';
comment on column password_link.issued_at is 'When, by the clock of the node that issued it';
comment on column password_link.expires_at is 'First moment it no longer works; alone decides, so that clocks may differ';
comment on column password_link.used_at is 'When it was used; null while it was not';

create table sign_in_tries (
	key_hash text primary key check (length(key_hash) = 64),
	failures integer not null check (failures >= 0),
	last_failure_at timestamptz not null,
	blocked_until timestamptz not null
);
create index sign_in_tries_last on sign_in_tries (last_failure_at);
comment on table sign_in_tries is 'Failed tries to sign in, by name and by network address; gone a day after the last';
comment on column sign_in_tries.key_hash is 'SHA-256 of the kind and the folded name or the network, 64 hexadecimal digits';
comment on column sign_in_tries.failures is 'Failures in a row; one under way counts until it has succeeded';
comment on column sign_in_tries.last_failure_at is 'When the last one began';
comment on column sign_in_tries.blocked_until is 'Until when, exclusive, no further try is looked at; 1970 when one is';

-- Passkeys, as Spring Security 7.0 lays them out for PostgreSQL, but instants have a time zone, so that nodes in
-- different zones agree, and both tables know their person.
create table user_entities (
	id text primary key,
	name text not null,
	display_name text,
	person_id uuid not null generated always as (name::uuid) stored references person,
	constraint user_entities_name_unique unique (name),
	constraint user_entities_display_name check (display_name = name)
);
create unique index user_entities_person on user_entities (person_id);
comment on table user_entities is 'That a person has, or began to make, passkeys';
comment on column user_entities.id is 'Random handle that authenticators keep instead of the person''s id; Base64url';
comment on column user_entities.name is 'The person''s id as text: the library asks by name';
comment on column user_entities.display_name is 'The same; pages put in the person''s name, it is not kept here';
comment on column user_entities.person_id is 'Who; drawn from the name, user_entities_person serves as its index';

create table user_credentials (
	credential_id text primary key,
	user_entity_user_id text not null references user_entities,
	public_key bytea not null,
	signature_count bigint,
	uv_initialized boolean,
	backup_eligible boolean not null,
	authenticator_transports text,
	public_key_credential_type text,
	backup_state boolean not null,
	attestation_object bytea,
	attestation_client_data_json bytea check (attestation_client_data_json is null),
	created timestamptz,
	last_used timestamptz,
	label text not null check (length(label) between 1 and 60)
);
create index user_credentials_user on user_credentials (user_entity_user_id);
comment on table user_credentials is 'A passkey: the public half only, the secret never leaves the person''s device';
comment on column user_credentials.credential_id is 'Drawn by the authenticator; Base64url';
comment on column user_credentials.user_entity_user_id is 'Whose; user_credentials_user serves as its index';
comment on column user_credentials.public_key is 'COSE key that signatures are checked with';
comment on column user_credentials.signature_count is 'What the authenticator last counted; 0 where it does not count';
comment on column user_credentials.uv_initialized is 'Whether it asked for a finger, a face or a code when it was made';
comment on column user_credentials.backup_eligible is 'Whether it may be copied to other devices of the person';
comment on column user_credentials.authenticator_transports is 'How it can be reached, such as internal,hybrid';
comment on column user_credentials.public_key_credential_type is 'public-key';
comment on column user_credentials.backup_state is 'Whether it was copied when it was made';
comment on column user_credentials.attestation_object is 'What the authenticator sent when it was made; the library reads the key from it';
comment on column user_credentials.attestation_client_data_json is 'Not kept: nothing reads it';
comment on column user_credentials.created is 'When it was made';
comment on column user_credentials.last_used is 'When somebody last signed in with it';
comment on column user_credentials.label is 'What the person calls it';

-- Walls. A person sees the own rows; SIGN_IN is the work that finds out who somebody is, OPERATION set-up and tests.
-- spring_session, its attributes and sign_in_tries have none: sessions are read before anybody is known, by a key only
-- the browser has, in transactions of the session library that no person is told to; tries belong to no person.
alter table account enable row level security;
create policy account_own on account
	using (person_id = fallow_person() or fallow_purpose() in ('SIGN_IN', 'OPERATION'));
alter table password_link enable row level security;
create policy password_link_own on password_link
	using (person_id = fallow_person() or fallow_purpose() in ('SIGN_IN', 'OPERATION'));
alter table user_entities enable row level security;
create policy user_entities_own on user_entities
	using (person_id = fallow_person() or fallow_purpose() in ('SIGN_IN', 'OPERATION'));
alter table user_credentials enable row level security;
create policy user_credentials_own on user_credentials
	using (fallow_purpose() in ('SIGN_IN', 'OPERATION') or exists (select 1 from user_entities e
		where e.id = user_entity_user_id and e.person_id = fallow_person()));

-- Head coaches read the sign-in names of their athletes, and nothing else of the accounts.
create function squad_usernames(moment timestamptz) returns table (person_id uuid, username text)
	language sql stable security definer set search_path = pg_catalog, public, pg_temp
	begin atomic
		select a.person_id, a.username from account a
		where exists (select 1 from membership m join post c on c.team_id = m.team_id
			where m.person_id = a.person_id and m.left_at is null
			and c.person_id = fallow_person() and c.kind = 'HEAD_COACH'
			and c.ended_at is null and (c.until_at is null or c.until_at > moment));
	end;
comment on function squad_usernames(timestamptz) is 'Sign-in names of the athletes in the teams the present person leads';
revoke execute on function squad_usernames(timestamptz) from public;
grant execute on function squad_usernames(timestamptz) to fallow_app;

grant select, insert, update on password_link to fallow_app;
grant select, insert, update, delete on sign_in_tries, user_credentials to fallow_app;
grant select, insert, update on user_entities to fallow_app;
