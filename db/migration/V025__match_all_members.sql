-- A file, or a coach who keeps somebody on file, must not add anew who withdrew consent or left. Whether a name is theirs is asked
-- of the database, which answers with the name that was asked and nothing else: not who it is, nor which of the two it was.

-- Letters and digits of a name in lower case without accents. It compares names with one another here, and may take more of them
-- for the same than the application does; a collation that knows all letters is taken where there is one (PostgreSQL 15 to 18).
do $$
declare
	knows text;
begin
	select quote_ident(c.collname) into knows from pg_collation c
		where c.collnamespace = 'pg_catalog'::regnamespace and c.collname in ('pg_c_utf8', 'und-x-icu')
			and c.collencoding in (-1, 6)
		order by c.collname limit 1;
	execute format($f$
		create function fallow_bare_name(name text) returns text language sql immutable parallel safe
			set search_path = pg_catalog, pg_temp return
			translate(replace(replace(replace(replace(replace(lower(regexp_replace(normalize(name, NFKD),
				'[\u0001-\u002f\u003a-\u0040\u005b-\u0060\u007b-\u00a9\u00ab-\u00b4\u00b6-\u00b9\u00bb-\u00bf'
				|| '\u02b0-\u036f\u061c\u064b-\u065f\u115f\u1160\u1680\u17b4\u17b5\u180b-\u180f\u1ab0-\u1aff\u1dc0-\u1dff'
				|| '\u2000-\u206f\u20d0-\u20ff\u2800\u3000-\u3002\u3164\ufe00-\ufe0f\ufe20-\ufe2f\ufeff\uffa0'
				|| '\U000e0000-\U000e01ef]', '', 'g') collate %s),
				'ß', 'ss'), 'æ', 'ae'), 'œ', 'oe'), 'þ', 'th'), 'ς', 'σ'), 'øłđðħıŧ', 'olddhit')$f$,
		coalesce(knows, '"default"'));
end $$;
comment on function fallow_bare_name(text) is 'A name without white space, punctuation, invisible characters, accents and capitals';

create function fallow_closed_names(team uuid, names text[]) returns setof text language sql stable security definer
	set search_path = public, pg_temp as $$
	select n.name from unnest(names) as n (name)
		where (team in (select fallow_teams_led()) or fallow_purpose() = 'OPERATION')
			and fallow_bare_name(n.name) <> ''
			and fallow_bare_name(n.name) in (select fallow_bare_name(p.name) from membership m join person p on p.id = m.person_id
				where m.team_id = team and (m.left_at is not null or not m.shares))
$$;
comment on function fallow_closed_names(uuid, text[])
	is 'Which of some names are those of members who share nothing or left, in a team the present person leads';

-- Data of an athlete are taken in only while the athlete shares. Held until the transaction ends: whoever takes consent back
-- meanwhile waits, and whatever begins after that finds it taken back.
create function fallow_hold_sharing(athlete uuid, team uuid) returns boolean language plpgsql volatile security definer
	set search_path = public, pg_temp as $$
begin
	if not (fallow_purpose() = 'OPERATION' or team in (select fallow_teams_led())) then
		return false;
	end if;
	perform 1 from membership m where m.person_id = athlete and m.team_id = team and m.shares and m.left_at is null for share;
	return found;
end $$;
comment on function fallow_hold_sharing(uuid, uuid)
	is 'Whether an athlete of a team the present person leads shares now, kept so until the transaction ends';
