-- What lies in the bins, and whose it is. The program fills both tables from the
-- loads in this same step and keeps them in the transaction of each ticket and
-- each movement.

-- A row for each day on which anything happened at a place: what trucks and
-- movements brought and took, as weighed, and the layers in the evening.
CREATE TABLE bin_days (
    bin       TEXT NOT NULL,
    commodity TEXT NOT NULL,
    unit      TEXT NOT NULL,
    day       TEXT NOT NULL,
    body      TEXT NOT NULL, -- JSON object
    PRIMARY KEY (bin, commodity, unit, day)
) STRICT;

CREATE INDEX bin_days_day ON bin_days (day);

-- The lines of who owns the grain, as settled, with what was settled off: a row
-- for each day on which a line changed.
CREATE TABLE owned (
    commodity TEXT NOT NULL,
    line      TEXT NOT NULL,
    unit      TEXT NOT NULL,
    day       TEXT NOT NULL,
    inward    TEXT NOT NULL,
    outward   TEXT NOT NULL,
    back      TEXT NOT NULL,
    balance   TEXT NOT NULL, -- of the row before + inward - outward - back
    PRIMARY KEY (commodity, line, unit, day)
) STRICT, WITHOUT ROWID;
