-- Rows of loads are long, and a table without rowids keeps long rows in half empty
-- pages: with rowids the same rows take half the room.

CREATE TABLE loads_compact (
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
    figures      TEXT NOT NULL, -- JSON object of step id to amount text
    weigher      TEXT NOT NULL DEFAULT '',
    reissues     INTEGER,       -- the void ticket
    reissued_by  INTEGER,       -- the ticket now in its place
    reissued_day TEXT NOT NULL DEFAULT ''
) STRICT;

INSERT INTO loads_compact (id, phase, direction, day, opened_at, commodity, grower, grower_name, truck, bin,
    disposition, contract, ticket, issued_at, issued_day, ended_at, ended_day, ended_by, corrects, reason, who,
    manual, accepted, flags, sample, kept, keep_until, edition, edition_hash, figures, weigher, reissues,
    reissued_by, reissued_day)
SELECT id, phase, direction, day, opened_at, commodity, grower, grower_name, truck, bin,
    disposition, contract, ticket, issued_at, issued_day, ended_at, ended_day, ended_by, corrects, reason, who,
    manual, accepted, flags, sample, kept, keep_until, edition, edition_hash, figures, weigher, reissues,
    reissued_by, reissued_day
FROM loads ORDER BY length(id), id;

DROP TABLE loads;
ALTER TABLE loads_compact RENAME TO loads;

CREATE INDEX loads_phase     ON loads (phase);
CREATE INDEX loads_issued    ON loads (issued_day, ticket);
CREATE INDEX loads_ended_day ON loads (ended_day);
CREATE INDEX loads_grower    ON loads (grower, day);
CREATE INDEX loads_truck     ON loads (truck, issued_day);

CREATE INDEX loads_sample    ON loads (sample);

-- Few loads keep a part of their sample for long, and few take the place of a ticket.
CREATE INDEX loads_kept     ON loads (keep_until) WHERE kept <> '';
CREATE INDEX loads_in_place ON loads (coalesce(corrects, reissues)) WHERE coalesce(corrects, reissues) IS NOT NULL;

-- A slip carries the beginning of the hash of the fact that issued it.
CREATE INDEX facts_code ON facts (hash) WHERE kind = 'ticket.issued';
