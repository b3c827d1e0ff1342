-- What the desk reads: one row for each load and one for each standing thing,
-- made again from the facts in the transaction that appends them. Unlike the
-- journal these rows may change; whatever is in them can be worked out anew.
--
-- Amounts are text with their unit, "52300 lb": never numbers of SQL.

CREATE TABLE loads (
    id           TEXT NOT NULL PRIMARY KEY,
    phase        TEXT NOT NULL,
    direction    TEXT NOT NULL,
    day          TEXT NOT NULL, -- business day of delivery
    opened_at    TEXT NOT NULL,
    commodity    TEXT NOT NULL,
    grower       TEXT NOT NULL,
    grower_name  TEXT NOT NULL,
    truck        TEXT NOT NULL,
    bin          TEXT NOT NULL,
    disposition  TEXT NOT NULL,
    contract     TEXT NOT NULL,
    ticket       INTEGER UNIQUE,
    issued_at    TEXT NOT NULL,
    issued_day   TEXT NOT NULL,
    ended_at     TEXT NOT NULL, -- refused, voided or corrected
    ended_day    TEXT NOT NULL,
    ended_by     INTEGER,       -- the correcting ticket
    corrects     INTEGER,       -- the corrected ticket
    reason       TEXT NOT NULL,
    who          TEXT NOT NULL, -- weigher, or who ended it
    manual       TEXT NOT NULL, -- drafts and sides typed by hand
    accepted     TEXT NOT NULL, -- limits accepted by a manager
    flags        TEXT NOT NULL,
    sample       TEXT NOT NULL,
    kept         TEXT NOT NULL,
    keep_until   TEXT NOT NULL,
    edition      TEXT NOT NULL,
    edition_hash TEXT NOT NULL,
    figures      TEXT NOT NULL  -- JSON object of step id to amount text
) STRICT, WITHOUT ROWID;

CREATE INDEX loads_phase      ON loads (phase);
CREATE INDEX loads_issued_day ON loads (issued_day);
CREATE INDEX loads_ended_day  ON loads (ended_day);
CREATE INDEX loads_grower     ON loads (grower, day);
CREATE INDEX loads_truck      ON loads (truck, ticket);
CREATE INDEX loads_keep_until ON loads (keep_until);

-- Growers named as sharers of a load, so that a landlord's account finds it.
CREATE TABLE owners (
    load   TEXT NOT NULL,
    place  INTEGER NOT NULL, -- from 1, as on the ticket
    grower TEXT NOT NULL,
    PRIMARY KEY (load, place)
) STRICT, WITHOUT ROWID;

CREATE INDEX owners_grower ON owners (grower);

-- The last word on each standing thing: the elevator, a grower, a truck.
CREATE TABLE standing (
    kind TEXT NOT NULL,
    id   TEXT NOT NULL,
    seq  INTEGER NOT NULL, -- the fact it was said in
    body TEXT NOT NULL,
    PRIMARY KEY (kind, id)
) STRICT, WITHOUT ROWID;
