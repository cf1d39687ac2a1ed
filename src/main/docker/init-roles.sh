#!/bin/bash
# Runs once, on the empty volume: makes the database "fallow", its owner (Flyway) and the
# application's role, with the passwords of the environment.
set -euo pipefail
: "${FALLOW_OWNER_PASSWORD:?must be set}" "${FALLOW_APP_PASSWORD:?must be set}"

psql --set ON_ERROR_STOP=1 --username "$POSTGRES_USER" --dbname postgres \
	--set owner_password="$FALLOW_OWNER_PASSWORD" --set app_password="$FALLOW_APP_PASSWORD" <<'SQL'
create role fallow_owner login password :'owner_password'
	nosuperuser nocreatedb nocreaterole noreplication nobypassrls;
create role fallow_app login password :'app_password'
	nosuperuser nocreatedb nocreaterole noreplication nobypassrls;
create database fallow owner fallow_owner template template0 encoding 'UTF8'
	locale 'C' locale_provider builtin builtin_locale 'C.UTF-8';
revoke all on database fallow from public;
grant connect on database fallow to fallow_app;
\connect fallow
alter schema public owner to fallow_owner;
revoke all on schema public from public;
grant usage on schema public to fallow_app;
SQL
