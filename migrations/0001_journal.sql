-- The journal, the editions its settlements used, and the numbers it gave
-- out. Nothing here is ever changed or deleted. The triggers say so to every
-- program that opens the file, and the ones before INSERT also stop REPLACE,
-- which on a connection without recursive_triggers would delete unnoticed.

CREATE TABLE facts (
    seq     INTEGER PRIMARY KEY CHECK (seq >= 1),
    at      TEXT NOT NULL,  -- UTC, whole seconds: 2025-10-04T14:12:09Z
    who     TEXT NOT NULL,
    desk    TEXT NOT NULL,
    kind    TEXT NOT NULL,
    subject TEXT NOT NULL,
    body    TEXT NOT NULL,  -- canonical JSON, figures as text
    prev    TEXT NOT NULL,  -- the hash of the fact before
    hash    TEXT NOT NULL
) STRICT;

-- Each index ends in seq by itself, so one subject or kind reads in order.
CREATE INDEX facts_subject ON facts (subject);
CREATE INDEX facts_kind ON facts (kind);
CREATE INDEX facts_at ON facts (at);

CREATE TRIGGER facts_only_follow BEFORE INSERT ON facts
WHEN new.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM facts)
  OR new.prev IS NOT coalesce(
        (SELECT hash FROM facts WHERE seq = new.seq - 1),
        -- what the first fact follows
        '1a9d9c9e64725dd4b59caf18053b9577f3cb026414ec96d083d5d6917776ee8f')
BEGIN
    SELECT raise(ABORT, 'a fact only follows the last one');
END;

CREATE TRIGGER facts_never_change BEFORE UPDATE ON facts
BEGIN
    SELECT raise(ABORT, 'a fact is never changed');
END;

CREATE TRIGGER facts_never_go BEFORE DELETE ON facts
BEGIN
    SELECT raise(ABORT, 'a fact is never deleted');
END;

-- An edition is known by the hash of its text: one id may have had several
-- texts, each with the tickets that used it.
CREATE TABLE editions (
    sha256 TEXT NOT NULL PRIMARY KEY,
    id     TEXT NOT NULL,
    text   TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TRIGGER editions_only_new BEFORE INSERT ON editions
WHEN EXISTS (SELECT 1 FROM editions WHERE sha256 = new.sha256)
BEGIN
    SELECT raise(ABORT, 'this edition is already in the book');
END;

CREATE TRIGGER editions_never_change BEFORE UPDATE ON editions
BEGIN
    SELECT raise(ABORT, 'an edition is never changed');
END;

CREATE TRIGGER editions_never_go BEFORE DELETE ON editions
BEGIN
    SELECT raise(ABORT, 'an edition is never deleted');
END;

-- The last number given out of each series. A series starts at 1 and moves on
-- by 1, together with the fact that used the number or not at all.
CREATE TABLE series (
    name TEXT NOT NULL PRIMARY KEY,
    last INTEGER NOT NULL CHECK (last >= 1)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER series_start_at_1 BEFORE INSERT ON series
WHEN new.last <> 1 OR EXISTS (SELECT 1 FROM series WHERE name = new.name)
BEGIN
    SELECT raise(ABORT, 'a series starts once, at 1');
END;

CREATE TRIGGER series_count_by_1 BEFORE UPDATE ON series
WHEN new.name <> old.name OR new.last <> old.last + 1
BEGIN
    SELECT raise(ABORT, 'a series only moves on by 1');
END;

CREATE TRIGGER series_never_go BEFORE DELETE ON series
BEGIN
    SELECT raise(ABORT, 'a series is never deleted');
END;
