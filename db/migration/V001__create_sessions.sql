-- Sign-in sessions, as Spring Session JDBC 4.0 lays them out for PostgreSQL.

create table spring_session (
	primary_id char(36) not null,
	session_id char(36) not null,
	creation_time bigint not null,
	last_access_time bigint not null,
	max_inactive_interval int not null,
	expiry_time bigint not null,
	principal_name varchar(100),
	constraint spring_session_pk primary key (primary_id)
);

create unique index spring_session_ix1 on spring_session (session_id);
create index spring_session_ix2 on spring_session (expiry_time);
create index spring_session_ix3 on spring_session (principal_name);

create table spring_session_attributes (
	session_primary_id char(36) not null,
	attribute_name varchar(200) not null,
	attribute_bytes bytea not null,
	constraint spring_session_attributes_pk primary key (session_primary_id, attribute_name),
	constraint spring_session_attributes_fk foreign key (session_primary_id)
		references spring_session (primary_id) on delete cascade
);

comment on table spring_session is 'One browser session';
comment on column spring_session.primary_id is 'Stays the same when the session id changes at sign-in';
comment on column spring_session.session_id is 'What the cookie carries';
comment on column spring_session.creation_time is 'Milliseconds since 1970-01-01T00:00Z';
comment on column spring_session.last_access_time is 'Milliseconds since 1970-01-01T00:00Z';
comment on column spring_session.max_inactive_interval is 'Seconds without a request after which it ends';
comment on column spring_session.expiry_time is 'Milliseconds since 1970-01-01T00:00Z';
comment on column spring_session.principal_name is 'Who is signed in; null before sign-in';
comment on table spring_session_attributes is 'What a session remembers';
comment on column spring_session_attributes.session_primary_id is 'The session';
comment on column spring_session_attributes.attribute_name is 'The name it is remembered under';
comment on column spring_session_attributes.attribute_bytes is 'The value, serialized by Java';

grant select, insert, update, delete on spring_session, spring_session_attributes to fallow_app;
