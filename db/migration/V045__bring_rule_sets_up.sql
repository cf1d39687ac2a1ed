-- A rule set of the first rule text goes on as a new version under the present one, from a day to come. Nobody adopts that
-- version and nobody gives a reason: it says which one it came of.

alter table rule_set add column became_of integer;
alter table rule_set add constraint rule_set_became_of foreign key (team_id, became_of) references rule_set (team_id, version);
alter table rule_set add constraint rule_set_became_of_earlier check (became_of < version);
alter table rule_set add constraint rule_set_became_of_itself check (became_of is null or written_by is null);
create unique index rule_set_becomes_once on rule_set (team_id, became_of);
comment on column rule_set.became_of is 'Version of the team, of the first rule text, that goes on as this one; null for all others';
