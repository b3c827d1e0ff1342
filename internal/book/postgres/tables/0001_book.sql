-- A book in one schema of a database: the journal, the numbers given out, the editions, what the
-- desk reads, and the one function by which anything gets in. Facts are only appended and numbers
-- only move on by 1; triggers say so to whoever asks, and privileges leave a desk no other way
-- than the function.
--
-- Amounts are text with their unit, "52300 lb": never numbers of SQL. Bodies are text and not
-- jsonb, which would write them anew and break every hash. Texts compare by their bytes.

CREATE TABLE facts (
    seq     bigint PRIMARY KEY CHECK (seq >= 1),
    at      text COLLATE "C" NOT NULL, -- UTC, whole seconds: 2025-10-04T14:12:09Z
    who     text COLLATE "C" NOT NULL,
    desk    text COLLATE "C" NOT NULL,
    kind    text COLLATE "C" NOT NULL,
    subject text COLLATE "C" NOT NULL,
    body    text COLLATE "C" NOT NULL, -- canonical JSON, figures as text
    prev    text COLLATE "C" NOT NULL, -- the hash of the fact before
    hash    text COLLATE "C" NOT NULL,
    desk_at text COLLATE "C" NOT NULL DEFAULT '' -- the desk's own clock, where it was another; not hashed
);

CREATE INDEX facts_subject ON facts (subject, seq);
CREATE INDEX facts_kind ON facts (kind, seq) WHERE substr(kind, 1, 5) <> 'load.';
CREATE INDEX facts_code ON facts (hash) WHERE kind = 'ticket.issued';

CREATE TABLE editions (
    sha256 text COLLATE "C" PRIMARY KEY,
    id     text COLLATE "C" NOT NULL,
    text   text COLLATE "C" NOT NULL
);

CREATE TABLE series (
    name text COLLATE "C" PRIMARY KEY,
    last bigint NOT NULL CHECK (last >= 1)
);

-- The one row that writers wait for. Its number tells a writer that nobody wrote since it looked.
CREATE TABLE head (
    one    boolean PRIMARY KEY DEFAULT true CHECK (one),
    writes bigint NOT NULL
);
INSERT INTO head (writes) VALUES (0);

-- What the desk reads: made again from the facts in the write that appends them.

CREATE TABLE loads (
    id           text COLLATE "C" PRIMARY KEY,
    phase        text COLLATE "C" NOT NULL,
    direction    text COLLATE "C" NOT NULL,
    day          text COLLATE "C" NOT NULL,
    opened_at    text COLLATE "C" NOT NULL,
    commodity    text COLLATE "C" NOT NULL,
    grower       text COLLATE "C" NOT NULL,
    grower_name  text COLLATE "C" NOT NULL,
    truck        text COLLATE "C" NOT NULL,
    bin          text COLLATE "C" NOT NULL,
    disposition  text COLLATE "C" NOT NULL,
    contract     text COLLATE "C" NOT NULL,
    ticket       bigint UNIQUE,
    issued_at    text COLLATE "C" NOT NULL,
    issued_day   text COLLATE "C" NOT NULL,
    ended_at     text COLLATE "C" NOT NULL,
    ended_day    text COLLATE "C" NOT NULL,
    ended_by     bigint,
    corrects     bigint,
    reason       text COLLATE "C" NOT NULL,
    who          text COLLATE "C" NOT NULL,
    manual       text COLLATE "C" NOT NULL,
    accepted     text COLLATE "C" NOT NULL,
    flags        text COLLATE "C" NOT NULL,
    sample       text COLLATE "C" NOT NULL,
    kept         text COLLATE "C" NOT NULL,
    keep_until   text COLLATE "C" NOT NULL,
    edition      text COLLATE "C" NOT NULL,
    edition_hash text COLLATE "C" NOT NULL,
    figures      text COLLATE "C" NOT NULL,
    weigher      text COLLATE "C" NOT NULL,
    reissues     bigint,
    reissued_by  bigint,
    reissued_day text COLLATE "C" NOT NULL
);

CREATE INDEX loads_phase     ON loads (phase);
CREATE INDEX loads_issued    ON loads (issued_day, ticket);
CREATE INDEX loads_ended_day ON loads (ended_day);
CREATE INDEX loads_grower    ON loads (grower, day);
CREATE INDEX loads_truck     ON loads (truck, issued_day);
CREATE INDEX loads_sample    ON loads (sample);
CREATE INDEX loads_kept      ON loads (keep_until) WHERE kept <> '';
CREATE INDEX loads_in_place  ON loads (coalesce(corrects, reissues)) WHERE coalesce(corrects, reissues) IS NOT NULL;

CREATE TABLE owners (
    load   text COLLATE "C" NOT NULL,
    place  bigint NOT NULL, -- from 1, as on the ticket
    grower text COLLATE "C" NOT NULL,
    PRIMARY KEY (load, place)
);
CREATE INDEX owners_grower ON owners (grower);

CREATE TABLE standing (
    kind text COLLATE "C" NOT NULL,
    id   text COLLATE "C" NOT NULL,
    seq  bigint NOT NULL, -- the fact it was said in
    body text COLLATE "C" NOT NULL,
    PRIMARY KEY (kind, id)
);

CREATE TABLE stock (
    commodity text COLLATE "C" NOT NULL,
    bin       text COLLATE "C" NOT NULL,
    unit      text COLLATE "C" NOT NULL,
    day       text COLLATE "C" NOT NULL,
    inward    text COLLATE "C" NOT NULL,
    outward   text COLLATE "C" NOT NULL,
    back      text COLLATE "C" NOT NULL,
    balance   text COLLATE "C" NOT NULL,
    PRIMARY KEY (commodity, bin, unit, day)
);

CREATE TABLE owned (
    commodity text COLLATE "C" NOT NULL,
    line      text COLLATE "C" NOT NULL,
    unit      text COLLATE "C" NOT NULL,
    day       text COLLATE "C" NOT NULL,
    inward    text COLLATE "C" NOT NULL,
    outward   text COLLATE "C" NOT NULL,
    back      text COLLATE "C" NOT NULL,
    balance   text COLLATE "C" NOT NULL,
    PRIMARY KEY (commodity, line, unit, day)
);

CREATE TABLE bin_days (
    bin       text COLLATE "C" NOT NULL,
    commodity text COLLATE "C" NOT NULL,
    unit      text COLLATE "C" NOT NULL,
    day       text COLLATE "C" NOT NULL,
    body      text COLLATE "C" NOT NULL,
    PRIMARY KEY (bin, commodity, unit, day)
);
CREATE INDEX bin_days_day ON bin_days (day);

-- What is typed and no fact yet.
CREATE TABLE drafts (
    place text COLLATE "C" NOT NULL,
    id    text COLLATE "C" NOT NULL,
    at    text COLLATE "C" NOT NULL,
    who   text COLLATE "C" NOT NULL,
    texts text COLLATE "C" NOT NULL,
    PRIMARY KEY (place, id)
);

-- The hash a fact ought to carry: every part as eight bytes of length and then its bytes.

CREATE FUNCTION part(text) RETURNS bytea LANGUAGE sql IMMUTABLE STRICT AS $$
    SELECT int8send(octet_length(convert_to($1, 'UTF8'))::bigint) || convert_to($1, 'UTF8')
$$;

CREATE FUNCTION hash_of(facts) RETURNS text LANGUAGE sql IMMUTABLE SET search_path FROM CURRENT AS $$
    SELECT encode(sha256(part('tenthpoint fact, form 1') || part($1.prev) || int8send(8) || int8send($1.seq)
        || part($1.at) || part($1.who) || part($1.desk) || part($1.kind) || part($1.subject) || part($1.body)), 'hex')
$$;

CREATE FUNCTION follow() RETURNS trigger LANGUAGE plpgsql SET search_path FROM CURRENT AS $$
DECLARE
    last record;
BEGIN
    SELECT seq, hash INTO last FROM facts ORDER BY seq DESC LIMIT 1;
    IF NEW.seq IS DISTINCT FROM coalesce(last.seq, 0) + 1
        -- what the first fact follows
        OR NEW.prev IS DISTINCT FROM coalesce(last.hash, '1a9d9c9e64725dd4b59caf18053b9577f3cb026414ec96d083d5d6917776ee8f') THEN
        RAISE EXCEPTION 'a fact only follows the last one';
    END IF;
    IF NEW.hash IS DISTINCT FROM hash_of(NEW) THEN
        RAISE EXCEPTION 'a fact carries the hash of what it says';
    END IF;
    RETURN NEW;
END $$;

CREATE FUNCTION refuse() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION '% is only appended to', TG_TABLE_NAME;
END $$;

CREATE FUNCTION move_on() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF TG_OP = 'INSERT' AND NEW.last = 1 OR TG_OP = 'UPDATE' AND NEW.name = OLD.name AND NEW.last = OLD.last + 1 THEN
        RETURN NEW;
    END IF;
    RAISE EXCEPTION 'a series starts at 1 and only moves on by 1';
END $$;

CREATE TRIGGER facts_only_follow BEFORE INSERT ON facts FOR EACH ROW EXECUTE FUNCTION follow();
CREATE TRIGGER facts_never_change BEFORE UPDATE OR DELETE OR TRUNCATE ON facts EXECUTE FUNCTION refuse();
CREATE TRIGGER editions_never_change BEFORE UPDATE OR DELETE OR TRUNCATE ON editions EXECUTE FUNCTION refuse();
CREATE TRIGGER series_move_on BEFORE INSERT OR UPDATE ON series FOR EACH ROW EXECUTE FUNCTION move_on();
CREATE TRIGGER series_never_go BEFORE DELETE OR TRUNCATE ON series EXECUTE FUNCTION refuse();

-- Everything a write does, in one call: all of it or nothing. Expected is the number of writes that
-- there were when the writer looked; where there are more by now, it has decided by what is no longer
-- so, and has to look again. Locks are taken in one order, series before head, so that no two writers
-- wait for each other.
CREATE FUNCTION append(expected bigint, act json) RETURNS void
LANGUAGE plpgsql SECURITY DEFINER SET search_path FROM CURRENT AS $$
DECLARE
    found bigint;
    taken record;
BEGIN
    PERFORM 1 FROM series WHERE name IN (SELECT t.name FROM json_populate_recordset(NULL::series, act->'series') t) ORDER BY name FOR UPDATE;
    SELECT writes INTO found FROM head FOR UPDATE;
    IF found <> expected THEN
        RAISE EXCEPTION 'another desk has written' USING ERRCODE = 'serialization_failure';
    END IF;
    UPDATE head SET writes = writes + 1;

    INSERT INTO facts SELECT * FROM json_populate_recordset(NULL::facts, act->'facts');
    INSERT INTO editions SELECT * FROM json_populate_recordset(NULL::editions, act->'editions');
    FOR taken IN SELECT * FROM json_populate_recordset(NULL::series, act->'series') LOOP
        SELECT last INTO found FROM series WHERE name = taken.name;
        FOR n IN coalesce(found, 0) + 1 .. taken.last LOOP
            INSERT INTO series AS s VALUES (taken.name, 1) ON CONFLICT (name) DO UPDATE SET last = s.last + 1;
        END LOOP;
    END LOOP;

    DELETE FROM owners o USING json_populate_recordset(NULL::loads, act->'loads') l WHERE o.load = l.id;
    DELETE FROM loads o USING json_populate_recordset(NULL::loads, act->'loads') l WHERE o.id = l.id;
    INSERT INTO loads SELECT * FROM json_populate_recordset(NULL::loads, act->'loads');
    INSERT INTO owners SELECT * FROM json_populate_recordset(NULL::owners, act->'owners');

    DELETE FROM standing o USING json_populate_recordset(NULL::standing, act->'standing') s WHERE o.kind = s.kind AND o.id = s.id;
    INSERT INTO standing SELECT * FROM json_populate_recordset(NULL::standing, act->'standing');

    DELETE FROM stock o USING json_populate_recordset(NULL::stock, act->'stock_was') s
        WHERE o.commodity = s.commodity AND o.bin = s.bin AND o.unit = s.unit AND o.day = s.day;
    INSERT INTO stock SELECT * FROM json_populate_recordset(NULL::stock, act->'stock');
    DELETE FROM owned o USING json_populate_recordset(NULL::owned, act->'owned_was') s
        WHERE o.commodity = s.commodity AND o.line = s.line AND o.unit = s.unit AND o.day = s.day;
    INSERT INTO owned SELECT * FROM json_populate_recordset(NULL::owned, act->'owned');
    DELETE FROM bin_days o USING json_populate_recordset(NULL::bin_days, act->'bin_days_was') s
        WHERE o.bin = s.bin AND o.commodity = s.commodity AND o.unit = s.unit AND o.day = s.day;
    INSERT INTO bin_days SELECT * FROM json_populate_recordset(NULL::bin_days, act->'bin_days');

    DELETE FROM drafts o USING json_populate_recordset(NULL::drafts, act->'drafts_of') d WHERE o.id = d.id;
    DELETE FROM drafts o USING json_populate_recordset(NULL::drafts, act->'drafts_was') d WHERE o.place = d.place AND o.id = d.id;
    INSERT INTO drafts SELECT * FROM json_populate_recordset(NULL::drafts, act->'drafts');

    PERFORM pg_notify(current_schema(), (expected + 1)::text);
END $$;

-- Whether a fact is in the book, once every write under way has ended: what a desk asks that lost
-- its line while it wrote.
CREATE FUNCTION was_kept(fact bigint, hash_of_it text) RETURNS boolean
LANGUAGE plpgsql SECURITY DEFINER SET search_path FROM CURRENT AS $$
BEGIN
    PERFORM 1 FROM head FOR UPDATE;
    RETURN EXISTS (SELECT 1 FROM facts WHERE seq = fact AND hash = hash_of_it);
END $$;

-- Two roles, made by who administers the server: one appends and reads, one only reads.
CREATE FUNCTION let_in(role_name name, appends boolean) RETURNS void
LANGUAGE plpgsql SET search_path FROM CURRENT AS $$
BEGIN
    EXECUTE format('GRANT USAGE ON SCHEMA %I TO %I', current_schema(), role_name);
    EXECUTE format('GRANT SELECT ON ALL TABLES IN SCHEMA %I TO %I', current_schema(), role_name);
    IF appends THEN
        EXECUTE format('GRANT INSERT, UPDATE, DELETE ON drafts TO %I', role_name);
        EXECUTE format('GRANT EXECUTE ON FUNCTION append(bigint, json), was_kept(bigint, text) TO %I', role_name);
    END IF;
END $$;

REVOKE ALL ON FUNCTION append(bigint, json), was_kept(bigint, text), let_in(name, boolean) FROM PUBLIC;
