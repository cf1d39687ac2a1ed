-- The number to tap where somebody ticks a red flag: that of the place a club trains at.

alter table club add column emergency_number text
	constraint club_emergency_number check (emergency_number ~ '^\+?[0-9]{2,15}$');
comment on column club.emergency_number is 'Emergency number of the place, digits as they are dialled; null where none was chosen: 112 is shown, and that another number may be right';
