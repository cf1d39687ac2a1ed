-- The second rule text: a line that follows an athlete's own higher mornings instead of tolerance, raised for action and
-- sustained rise. What was decided under the first text stays decided: its days keep clearance, reasons and evidence as
-- they are. Of its numbers the tolerance stands where the line stands now, and what was raised for action or rising
-- stands as above the line.

alter table assessment rename column rhr_tolerance to rhr_line;
alter table assessment rename column raised_for_action to above_line;
update assessment set above_line = true where rise_signal and not above_line;
alter table assessment drop column rise_sum, drop column rise_signal;

comment on column assessment.rhr_line is 'L, beats per minute above the baseline; null without a baseline; the tolerance on days decided under the first rule text';
comment on column assessment.rhr_flag is 'Flag of the day; null without reading or baseline, unless the reading is too fast for anybody at rest';
comment on column assessment.above_line is 'Whether it stands above the line after the day';
