-- What is entered after a sign-in by a password that somebody else's link had set says so itself, so that whoever reads the
-- fact sees it, not the athlete's trace alone (V029). The application tells each transaction who made such a link, as it
-- tells it the person (V011); the default takes it in, so that no statement can forget it.

do $$
declare
	name text;
begin
	foreach name in array array['morning_entry', 'session_log', 'absence', 'medicine_change', 'known_symptom',
		'health_condition', 'vaccination', 'device_change', 'illness_event']
	loop
		execute format('alter table %I add column link_by text check (link_by <> %L)', name, '');
		execute format('alter table %I alter column link_by set default nullif(current_setting(%L, true), %L)', name,
			'fallow.link_by', '');
		execute format('comment on column %I.link_by is %L', name, 'Who had made the link by which the password of the '
			|| 'sign-in it was entered in had been set, as named at the time; null for a password of the person''s own, for '
			|| 'work without a sign-in, and for what was entered before this was kept');
		execute format('create index %I on %I (athlete_id, recorded_on) where link_by is not null', name || '_link', name);
	end loop;
end $$;
