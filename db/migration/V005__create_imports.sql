-- Imports of files: the job, its rows as read, and what was wrong with them.

create table import_job (
	id uuid primary key,
	team_id uuid not null references team,
	actor_id uuid not null references person,
	file_name text not null,
	state text not null check (state in ('MAPPING', 'RUNNING', 'DONE', 'FAILED')),
	headers text[] not null,
	mapping text not null default '{}',
	started_at timestamptz not null,
	finished_at timestamptz,
	rows_total integer not null default 0 check (rows_total >= 0),
	rows_read integer not null default 0 check (rows_read >= 0),
	stored integer not null default 0 check (stored >= 0),
	unchanged integer not null default 0 check (unchanged >= 0),
	corrected integer not null default 0 check (corrected >= 0),
	rejected integer not null default 0 check (rejected >= 0),
	people_created integer not null default 0 check (people_created >= 0),
	people_matched integer not null default 0 check (people_matched >= 0),
	first_day date,
	last_day date,
	problem text
);
create index import_job_team on import_job (team_id, started_at);
create index import_job_actor on import_job (actor_id);
comment on table import_job is 'The import of one file: progress while it runs, summary at the end';
comment on column import_job.id is 'UUID version 7, drawn by the application';
comment on column import_job.team_id is 'Into which team';
comment on column import_job.actor_id is 'The coach who sent the file';
comment on column import_job.file_name is 'As the browser told it';
comment on column import_job.state is 'MAPPING, RUNNING, DONE or FAILED';
comment on column import_job.headers is 'Column names in the order of the file';
comment on column import_job.mapping is 'JSON of what each column means';
comment on column import_job.started_at is 'When the file came';
comment on column import_job.finished_at is 'When it was done or failed; null before';
comment on column import_job.rows_total is 'Rows in the file, count';
comment on column import_job.rows_read is 'Rows dealt with so far, count';
comment on column import_job.stored is 'Mornings stored, count';
comment on column import_job.unchanged is 'Mornings that were there already, count';
comment on column import_job.corrected is 'Mornings that corrected an earlier import, count';
comment on column import_job.rejected is 'Rows refused, count';
comment on column import_job.people_created is 'People added, count';
comment on column import_job.people_matched is 'People found, count';
comment on column import_job.first_day is 'Earliest civil day taken in; null before the first';
comment on column import_job.last_day is 'Latest civil day taken in; null before the first';
comment on column import_job.problem is 'JSON of the message why it failed; null else';

create unlogged table import_row (
	job_id uuid not null references import_job on delete cascade,
	line integer not null check (line > 0),
	cells text[] not null,
	done boolean not null default false,
	primary key (job_id, line)
);
comment on table import_row is 'Rows of a file as read, until they are taken in; unlogged, so a crash of the database loses them';
comment on column import_row.job_id is 'The import; the primary key serves as its index';
comment on column import_row.line is 'Line of the file the row begins on, counting from 1';
comment on column import_row.cells is 'The row''s cells in the order of the file';
comment on column import_row.done is 'Whether it was dealt with';

create table import_problem (
	job_id uuid not null references import_job on delete cascade,
	number integer not null check (number > 0),
	line integer not null check (line > 0),
	column_name text,
	value text not null,
	reason text not null,
	primary key (job_id, number)
);
comment on table import_problem is 'A row that was refused, and why';
comment on column import_problem.job_id is 'The import; the primary key serves as its index';
comment on column import_problem.number is 'Counting from 1 in each import';
comment on column import_problem.line is 'Line of the file the row begins on, counting from 1';
comment on column import_problem.column_name is 'Which column; null where it is the row';
comment on column import_problem.value is 'The cell as read, shortened';
comment on column import_problem.reason is 'JSON of the message';

grant select, insert, update, delete on import_job, import_row, import_problem to fallow_app;
