-- No unseen hands: who made and used a link to somebody's account, what was entered after it, who got and lost a post over
-- whom, and when an address of a calendar was made or ended, stands in the athlete's trace.

alter table access_trace add column about_name text check (about_name <> '');
alter table access_trace add column about_post text check (about_post in ('HEAD_COACH', 'GROUP_COACH', 'DEPUTY'));
alter table access_trace add column link_by text check (link_by <> '');
alter table access_trace drop constraint access_trace_post_check;
alter table access_trace add constraint access_trace_post_check
	check (post in ('SELF', 'OWNER', 'HEAD_COACH', 'GROUP_COACH', 'DEPUTY'));
comment on column access_trace.about_name is 'Whom else it is about, as named at the time: who holds the post, or made the link that was used; null for most';
comment on column access_trace.about_post is 'The post given or ended; null for what is about none';
comment on column access_trace.link_by is 'Who had made the link by which the password of the actor''s sign-in had been set, as named at the time; null for a password of the actor''s own';

alter table password_link add column made_by text check (made_by <> '');
comment on column password_link.made_by is 'Who made it for somebody else, as named at the time; null where it was mailed to the person';

alter table account add column link_by text check (link_by <> '');
alter table account add column link_used_at timestamptz;
alter table account add column signed_in_at timestamptz;
alter table account add constraint account_link check ((link_by is null) = (link_used_at is null));
comment on column account.link_by is 'Who made the link by which the present password was set, as named at the time; null for one the person chose without';
comment on column account.link_used_at is 'When that was; null likewise';
comment on column account.signed_in_at is 'When somebody last signed in to it; null before that was noted';

-- A head coach makes links for coaches of the team as well, whom no post covers. Whoever uses a link is not known yet: the
-- line is the account''s own.
alter policy added on access_trace with check (
	(actor_id = (select fallow_person()) and (athlete_id = actor_id or fallow_covers(athlete_id)
		or (what = 'LINK_MADE' and fallow_knows(athlete_id))))
	or ((select fallow_purpose()) = 'SIGN_IN' and actor_id = athlete_id and what = 'LINK_USED'));

-- Everybody whom a post covers, sharing or not: whoever ends it may not see them, so it runs with its owner's rights. The
-- ids are UUIDs of version 7 as the application draws them, microseconds in the bits that may hold them (RFC 9562, 6.2), so
-- that lines sort by time.
create function fallow_trace_post(changed uuid, subject text, actor uuid, moment timestamptz, from_address text)
	returns void language sql volatile security definer set search_path = public, pg_temp as $$
	insert into access_trace (athlete_id, id, at, actor_id, action, what, actor_name, post, address, day, about_name, about_post)
	select m.person_id, (lpad(to_hex(t.us / 1000), 12, '0') || '7' || lpad(to_hex(t.us % 1000 * 4096 / 1000), 3, '0')
			|| substr(replace(gen_random_uuid()::text, '-', ''), 17))::uuid,
		moment, actor, 'CHANGED', subject, a.name,
		case when c.person_id = actor then c.kind
			when exists (select 1 from post h where h.person_id = actor and h.team_id = c.team_id
				and h.kind = 'HEAD_COACH' and (h.ended_at is null or h.id = changed)) then 'HEAD_COACH'
			else 'OWNER' end,
		from_address, (moment at time zone p.zone_id)::date, holder.name, c.kind
	from post c join membership m on m.team_id = c.team_id and m.left_at is null
		and (c.whole_team or exists (select 1 from post_group g where g.post_id = c.id and g.group_id = m.group_id))
		join person p on p.id = m.person_id join person holder on holder.id = c.person_id join person a on a.id = actor,
		(select floor(extract(epoch from clock_timestamp()) * 1000000)::bigint as us) t
	where c.id = changed and subject in ('POST_GIVEN', 'POST_ENDED') and actor = fallow_person()
		and actor in (c.person_id, c.given_by, c.ended_by)
$$;
comment on function fallow_trace_post(uuid, text, uuid, timestamptz, text) is 'Notes that a post was given or ended in the trace of everybody it covers';
revoke execute on function fallow_trace_post(uuid, text, uuid, timestamptz, text) from public;
grant execute on function fallow_trace_post(uuid, text, uuid, timestamptz, text) to fallow_app;
