-- The journal, the numbers given out, and the position. Facts are only appended
-- and numbers only move on by 1: the database says so to whoever asks.
--
-- Amounts are text with their unit, "52300 lb": never numbers of SQL. Bodies are
-- text and not jsonb, which would write them anew and break every hash.

CREATE TABLE facts (
    seq     bigint PRIMARY KEY CHECK (seq >= 1),
    at      text NOT NULL,
    who     text NOT NULL,
    desk    text NOT NULL,
    kind    text NOT NULL,
    subject text NOT NULL,
    body    text NOT NULL,
    prev    text NOT NULL,
    hash    text NOT NULL
);
CREATE INDEX facts_subject ON facts (subject, seq);

CREATE FUNCTION refuse() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION '% is only appended to', TG_TABLE_NAME;
END $$;

CREATE FUNCTION follow() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    last record;
BEGIN
    SELECT seq, hash INTO last FROM facts ORDER BY seq DESC LIMIT 1;
    IF NEW.seq IS DISTINCT FROM coalesce(last.seq, 0) + 1
        OR NEW.prev IS DISTINCT FROM coalesce(last.hash, '1a9d9c9e64725dd4b59caf18053b9577f3cb026414ec96d083d5d6917776ee8f') THEN
        RAISE EXCEPTION 'a fact only follows the last one';
    END IF;
    RETURN NEW;
END $$;

CREATE TRIGGER facts_only_follow BEFORE INSERT ON facts FOR EACH ROW EXECUTE FUNCTION follow();
CREATE TRIGGER facts_never_change BEFORE UPDATE OR DELETE OR TRUNCATE ON facts EXECUTE FUNCTION refuse();

CREATE TABLE series (
    name text PRIMARY KEY,
    last bigint NOT NULL
);

CREATE FUNCTION move_on() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF TG_OP = 'INSERT' AND NEW.last = 1 OR TG_OP = 'UPDATE' AND NEW.name = OLD.name AND NEW.last = OLD.last + 1 THEN
        RETURN NEW;
    END IF;
    RAISE EXCEPTION 'a series starts at 1 and only moves on by 1';
END $$;

CREATE TRIGGER series_move_on BEFORE INSERT OR UPDATE ON series FOR EACH ROW EXECUTE FUNCTION move_on();
CREATE TRIGGER series_never_go BEFORE DELETE OR TRUNCATE ON series EXECUTE FUNCTION refuse();

-- Of a load's row, what the position follows from.
CREATE TABLE loads (
    id         text PRIMARY KEY,
    ticket     bigint NOT NULL,
    direction  text NOT NULL,
    commodity  text NOT NULL,
    bin        text NOT NULL,
    issued_day text NOT NULL,
    ended_day  text NOT NULL,
    figures    text NOT NULL
);

CREATE TABLE stock (
    commodity text COLLATE "C" NOT NULL,
    bin       text COLLATE "C" NOT NULL,
    unit      text COLLATE "C" NOT NULL,
    day       text COLLATE "C" NOT NULL,
    inward    text NOT NULL,
    outward   text NOT NULL,
    back      text NOT NULL,
    balance   text NOT NULL,
    PRIMARY KEY (commodity, bin, unit, day)
);
