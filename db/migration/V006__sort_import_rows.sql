-- Imports go athlete by athlete, so the rows of one must be found without reading them all.

alter table import_row add column person text;
create index import_row_person on import_row (job_id, person, line);
comment on column import_row.person is 'Whom the row is about, as the file has it; null until the columns are known';

alter table import_problem add column notice boolean not null default false;
comment on column import_problem.notice is 'Whether the row was taken in all the same';

alter table import_job alter column mapping set default '';
comment on column import_job.mapping is 'What each column means, as NAME=index pairs; empty until chosen';
