-- An import goes through the people of a file in the order of their names and notes how far it is in its own row, instead of
-- marking each row of the file: so the rows are written once, and the next people are found by the index alone.

alter table import_job add column done_to text collate "C";
comment on column import_job.done_to is 'The last person dealt with, as the file has it, in the order of bytes; null before the first and after the end';
update import_job j set done_to = (select max(r.person collate "C") from import_row r where r.job_id = j.id and r.done)
	where j.state = 'RUNNING';

alter table import_row drop column done;
alter table import_row alter column person type text collate "C";
comment on column import_row.person is 'Whom the row is about, as the file has it, in the order of bytes; null where no column was guessed';
