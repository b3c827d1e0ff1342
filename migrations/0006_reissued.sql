-- A void ticket's grain may have another ticket: its load names the void one,
-- and the void one's row names the other and the business day it counts in.

ALTER TABLE loads ADD COLUMN reissues INTEGER;     -- the void ticket
ALTER TABLE loads ADD COLUMN reissued_by INTEGER;  -- the ticket now in its place
ALTER TABLE loads ADD COLUMN reissued_day TEXT NOT NULL DEFAULT '';
