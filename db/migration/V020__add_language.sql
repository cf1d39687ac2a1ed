-- Everybody's own choice of language. Nothing is moved: null is what all had so far, the browser's wish.

alter table account add column language text constraint account_language_known check (language in ('en', 'de'));
comment on column account.language is 'Language of pages, mails and the calendar, BCP 47; null: as the browser says, English in mails and calendars';

-- A column of its own right needs no policy and no grant: account_own guards its row, and V002 granted the table.
