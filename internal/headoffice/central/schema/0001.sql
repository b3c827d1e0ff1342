-- The head office: the chains of its sites, copied and never edited.
--
-- Three kinds of people come here. A site has a role of its own, which reads its own chain and sends
-- to it by one function, receive. Readers see every site. Keepers see every site, take what comes on
-- a stick, add sites and give letters. Rows are parted by site for every role, also for the one that
-- receive runs as: a mistake in it could not write into the chain of another site.

CREATE TABLE sites (
    site  text PRIMARY KEY CHECK (site ~ '^[A-Z][A-Z0-9]{0,7}$'), -- its letters
    name  text NOT NULL CHECK (name <> ''),
    role  name NOT NULL UNIQUE,
    added timestamptz NOT NULL DEFAULT now()
);

-- A chain is a branch of what a site wrote. A site has one, the first; a second begins where the
-- site sent another fact in a place that was taken already.
CREATE TABLE chains (
    site       text NOT NULL REFERENCES sites,
    branch     int NOT NULL,
    letters    text UNIQUE, -- under which a person said it goes on; none while nobody did
    parent     int,         -- the branch it shares its beginning with
    parent_seq bigint NOT NULL DEFAULT 0, -- the last fact they share
    seq        bigint NOT NULL,
    hash       bytea NOT NULL,
    came       timestamptz, -- when the last fact came
    PRIMARY KEY (site, branch)
);

CREATE TABLE facts (
    site    text NOT NULL,
    season  int NOT NULL, -- the year of the fact
    branch  int NOT NULL,
    seq     bigint NOT NULL CHECK (seq >= 1),
    at      text NOT NULL,
    who     text NOT NULL,
    desk    text NOT NULL,
    kind    text NOT NULL,
    subject text NOT NULL,
    body    text NOT NULL,
    prev    bytea NOT NULL,
    hash    bytea NOT NULL,
    PRIMARY KEY (site, seq, branch, season)
) PARTITION BY RANGE (season);

CREATE TABLE facts_other PARTITION OF facts DEFAULT;

-- Editions, charts and rules of law that tickets were settled by, known by the hash of their text.
CREATE TABLE texts (
    site   text NOT NULL REFERENCES sites,
    sha256 bytea NOT NULL,
    id     text NOT NULL,
    text   text NOT NULL,
    PRIMARY KEY (site, sha256)
);

-- The head that a site last said its book has.
CREATE TABLE contacts (
    site text PRIMARY KEY REFERENCES sites,
    at   timestamptz NOT NULL,
    seq  bigint NOT NULL,
    hash bytea NOT NULL
);

-- What was wrong with what a site sent, once each.
CREATE TABLE faults (
    site   text NOT NULL REFERENCES sites,
    fault  text NOT NULL,
    seq    bigint NOT NULL,
    about  text NOT NULL, -- what else names it: a branch, the letters of another site
    at     timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (site, fault, seq, about)
);

CREATE FUNCTION never() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'what a site sent is never changed' USING ERRCODE = 'restrict_violation';
END $$;
CREATE TRIGGER facts_stay BEFORE UPDATE OR DELETE ON facts FOR EACH ROW EXECUTE FUNCTION never();
CREATE TRIGGER facts_stay_whole BEFORE TRUNCATE ON facts EXECUTE FUNCTION never();
CREATE TRIGGER texts_stay BEFORE UPDATE OR DELETE ON texts FOR EACH ROW EXECUTE FUNCTION never();
CREATE TRIGGER faults_stay BEFORE UPDATE OR DELETE ON faults FOR EACH ROW EXECUTE FUNCTION never();

-- Who asks. It is the role that signed in, whatever role a function runs as.
CREATE FUNCTION my_site() RETURNS text LANGUAGE sql STABLE SET search_path FROM CURRENT AS
    $$ SELECT site FROM sites WHERE role = session_user $$;
CREATE FUNCTION of_office() RETURNS boolean LANGUAGE sql STABLE AS
    $$ SELECT pg_has_role(session_user, {{keeper:text}}, 'MEMBER') OR pg_has_role(session_user, {{reader:text}}, 'MEMBER') $$;
CREATE FUNCTION keeps() RETURNS boolean LANGUAGE sql STABLE AS
    $$ SELECT pg_has_role(session_user, {{keeper:text}}, 'MEMBER') $$;

ALTER TABLE sites ENABLE ROW LEVEL SECURITY;
ALTER TABLE sites FORCE ROW LEVEL SECURITY;
CREATE POLICY own ON sites FOR SELECT USING (role = session_user);
CREATE POLICY office_reads ON sites FOR SELECT USING ((SELECT of_office()));
CREATE POLICY office_adds ON sites FOR ALL USING ((SELECT keeps())) WITH CHECK ((SELECT keeps()));

DO $$
DECLARE one text;
BEGIN
    FOREACH one IN ARRAY ARRAY['chains', 'facts', 'texts', 'contacts', 'faults'] LOOP
        EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', one);
        EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', one);
        EXECUTE format('CREATE POLICY own ON %I USING (site = (SELECT my_site())) WITH CHECK (site = (SELECT my_site()))', one);
        EXECUTE format('CREATE POLICY office_reads ON %I FOR SELECT USING ((SELECT of_office()))', one);
        EXECUTE format('CREATE POLICY office_takes ON %I USING ((SELECT keeps())) WITH CHECK ((SELECT keeps()))', one);
    END LOOP;
END $$;

-- The hash of a fact, spelled as the journal spells it: each part after its length in eight bytes.
CREATE FUNCTION part(t text) RETURNS bytea LANGUAGE sql IMMUTABLE PARALLEL SAFE AS
    $$ SELECT int8send(octet_length(convert_to(t, 'UTF8'))) || convert_to(t, 'UTF8') $$;
CREATE FUNCTION fact_hash(prev bytea, seq bigint, at text, who text, desk text, kind text, subject text, body text)
RETURNS bytea LANGUAGE sql IMMUTABLE PARALLEL SAFE SET search_path FROM CURRENT AS $$
    SELECT sha256(part('tenthpoint fact, form 1') || part(encode(prev, 'hex')) || int8send(8) || int8send(seq)
        || part(at) || part(who) || part(desk) || part(kind) || part(subject) || part(body))
$$;

-- What the first fact of a chain follows.
CREATE FUNCTION genesis() RETURNS bytea LANGUAGE sql IMMUTABLE AS
    $$ SELECT sha256('tenthpoint journal, before the first fact') $$;

-- The partition of a season is made when its first fact comes. A year that cannot be is kept with
-- the others, so that nobody fills the catalog.
CREATE FUNCTION open_season(year int) RETURNS void LANGUAGE plpgsql SECURITY DEFINER SET search_path FROM CURRENT AS $$
DECLARE
    name text := 'facts_' || year;
BEGIN
    IF year < 2000 OR year > extract(year FROM now()) + 1 OR to_regclass(name) IS NOT NULL THEN
        RETURN;
    END IF;
    PERFORM pg_advisory_xact_lock(hashtext('season'), hashtext(current_schema()));
    IF to_regclass(name) IS NOT NULL OR EXISTS (SELECT FROM facts_other WHERE season = year) THEN
        RETURN;
    END IF;
    EXECUTE format('CREATE TABLE %I PARTITION OF facts FOR VALUES FROM (%s) TO (%s) PARTITION BY HASH (site)', name, year, year + 1);
    FOR n IN 0..7 LOOP
        EXECUTE format('CREATE TABLE %I PARTITION OF %I FOR VALUES WITH (MODULUS 8, REMAINDER %s)', name || '_' || n, name, n);
    END LOOP;
END $$;

CREATE TYPE sent_fact AS (
    seq bigint, at text, who text, desk text, kind text, subject text, body text, prev bytea, hash bytea);

-- What became of lines that were received.
CREATE TYPE receipt AS (
    outcome text,   -- kept, forked, gap, apart, broken, refused
    seq     bigint, -- the head of the chain they are in; of broken, the fact; of gap, the one due
    hash    text,
    branch  int);

CREATE FUNCTION note_fault(of_site text, what text, n bigint, more text) RETURNS void LANGUAGE sql SET search_path FROM CURRENT AS
    $$ INSERT INTO faults (site, fault, seq, about) VALUES (of_site, what, n, more) ON CONFLICT DO NOTHING $$;

-- first_break is the first fact that is not what its hash says, or does not follow the one before
-- it; none where all is well.
CREATE FUNCTION first_break(sent sent_fact[]) RETURNS bigint LANGUAGE sql IMMUTABLE SET search_path FROM CURRENT AS $$
    SELECT seq FROM (
        SELECT n, f.seq,
            f.hash <> fact_hash(f.prev, f.seq, f.at, f.who, f.desk, f.kind, f.subject, f.body)
            OR f.seq < 1 OR f.at !~ '^[0-9]{4}-'
            OR n > 1 AND (f.prev <> lag(f.hash) OVER w OR f.seq <> lag(f.seq) OVER w + 1) AS bad
        FROM unnest(sent) WITH ORDINALITY AS f(seq, at, who, desk, kind, subject, body, prev, hash, n)
        WINDOW w AS (ORDER BY n)) AS checked
    WHERE bad IS NOT FALSE ORDER BY n LIMIT 1
$$;

-- receive takes lines of a chain: texts first, then facts in order. All of a call is kept or
-- nothing. What is there already is passed over, so anything may be sent again.
CREATE FUNCTION receive(whose text, lines text) RETURNS receipt LANGUAGE plpgsql SECURITY DEFINER SET search_path FROM CURRENT AS $$
DECLARE
    r      receipt;
    sent   sent_fact[];
    bad    bigint;
    home   int;
    due    bigint;
    first  sent_fact;
    last   sent_fact;
    forked boolean := false;
BEGIN
    IF whose IS DISTINCT FROM my_site() AND NOT keeps() THEN
        PERFORM note_fault(my_site(), 'foreign', 0, left(whose, 40)) WHERE my_site() IS NOT NULL;
        r.outcome := 'refused';
        RETURN r;
    END IF;
    PERFORM FROM chains c WHERE c.site = whose AND c.branch = 1 FOR UPDATE; -- one at a time for a site
    IF NOT FOUND THEN
        r.outcome := 'refused';
        RETURN r;
    END IF;

    INSERT INTO texts (site, sha256, id, text)
        SELECT whose, sha256(convert_to(j->>'text', 'UTF8')), j->>'id', j->>'text'
        FROM (SELECT line::json AS j FROM regexp_split_to_table(lines, E'\n') AS line WHERE line <> '') AS read
        WHERE j->>'text' IS NOT NULL
        ON CONFLICT DO NOTHING;
    SELECT array_agg(((j->>'seq')::bigint, j->>'at', j->>'who', j->>'desk', j->>'kind', j->>'subject', j->>'body',
            decode(j->>'prev', 'hex'), decode(j->>'hash', 'hex'))::sent_fact ORDER BY n)
        INTO sent
        FROM (SELECT line::json AS j, n FROM regexp_split_to_table(lines, E'\n') WITH ORDINALITY AS split(line, n) WHERE line <> '') AS read
        WHERE j->>'seq' IS NOT NULL;

    bad := first_break(sent);
    IF bad IS NOT NULL THEN
        PERFORM note_fault(whose, 'broken', bad, '');
        r := ('broken', bad, NULL, NULL);
        RETURN r;
    END IF;

    -- Before anything else is read of facts: a new partition waits for whoever reads them.
    PERFORM open_season(year) FROM (SELECT DISTINCT left(u.at, 4)::int AS year FROM unnest(sent) AS u) AS years;

    -- Past what is kept already, in whichever branch it is.
    WHILE sent IS NOT NULL LOOP
        first := sent[1];
        SELECT f.branch INTO home FROM facts f WHERE f.site = whose AND f.seq = first.seq AND f.hash = first.hash;
        EXIT WHEN NOT FOUND;
        SELECT array_agg(u::sent_fact ORDER BY u.seq) INTO sent FROM unnest(sent) AS u
            LEFT JOIN facts f ON f.site = whose AND f.branch = home AND f.seq = u.seq AND f.hash = u.hash
            WHERE f.seq IS NULL;
    END LOOP;

    IF sent IS NOT NULL THEN
        SELECT c.branch INTO home FROM chains c
            WHERE c.site = whose AND c.seq = first.seq - 1 AND c.hash = first.prev ORDER BY c.branch LIMIT 1;
        IF NOT FOUND THEN
            -- The place is taken: another branch begins, if what it follows is here.
            SELECT f.branch INTO home FROM facts f WHERE f.site = whose AND f.seq = first.seq - 1 AND f.hash = first.prev;
            IF NOT FOUND AND first.seq = 1 AND first.prev = genesis() THEN
                home := 1;
            ELSIF NOT FOUND THEN
                SELECT max(c.seq) + 1 INTO due FROM chains c WHERE c.site = whose;
                r := (CASE WHEN first.seq > due THEN 'gap' ELSE 'apart' END, due, NULL, NULL);
                RETURN r;
            END IF;
            INSERT INTO chains (site, branch, parent, parent_seq, seq, hash)
                SELECT whose, max(c.branch) + 1, home, first.seq - 1, first.seq - 1, first.prev FROM chains c WHERE c.site = whose
                RETURNING branch INTO home;
            PERFORM note_fault(whose, 'fork', first.seq, home::text);
            forked := true;
        END IF;
        INSERT INTO facts (site, season, branch, seq, at, who, desk, kind, subject, body, prev, hash)
            SELECT whose, left(u.at, 4)::int, home, u.seq, u.at, u.who, u.desk, u.kind, u.subject, u.body, u.prev, u.hash
            FROM unnest(sent) AS u;
        last := sent[array_length(sent, 1)];
        UPDATE chains c SET seq = last.seq, hash = last.hash, came = now() WHERE c.site = whose AND c.branch = home;
    END IF;
    SELECT CASE WHEN forked THEN 'forked' ELSE 'kept' END, c.seq, encode(c.hash, 'hex'), c.branch INTO r
        FROM chains c WHERE c.site = whose AND c.branch = coalesce(home, 1);
    RETURN r;
END $$;

-- greet notes the head of a site's book, at each contact.
CREATE FUNCTION greet(whose text, head_seq bigint, head_hash text) RETURNS void LANGUAGE plpgsql SECURITY DEFINER SET search_path FROM CURRENT AS $$
BEGIN
    IF whose IS DISTINCT FROM my_site() AND NOT keeps() THEN
        RAISE EXCEPTION 'the letters are those of another site' USING ERRCODE = 'insufficient_privilege';
    END IF;
    INSERT INTO contacts AS c (site, at, seq, hash) VALUES (whose, now(), head_seq, decode(head_hash, 'hex'))
        ON CONFLICT (site) DO UPDATE SET at = excluded.at, seq = excluded.seq, hash = excluded.hash;
END $$;

-- behind names a site whose book is an older copy of what the office has.
CREATE FUNCTION behind(whose text, head_seq bigint) RETURNS void LANGUAGE plpgsql SECURITY DEFINER SET search_path FROM CURRENT AS $$
BEGIN
    IF whose IS NOT DISTINCT FROM my_site() OR keeps() THEN
        PERFORM note_fault(whose, 'behind', head_seq, '');
    END IF;
END $$;

GRANT SELECT ON sites, chains, facts, texts, contacts, faults TO {{sites}}, {{reader}}, {{keeper}}, {{receiver}};
GRANT INSERT ON facts, texts, faults TO {{receiver}};
GRANT INSERT, UPDATE ON chains, contacts TO {{receiver}};
GRANT INSERT ON sites, chains TO {{keeper}};
GRANT UPDATE (letters) ON chains TO {{keeper}};
REVOKE ALL ON FUNCTION open_season(int) FROM PUBLIC;
REVOKE ALL ON FUNCTION receive(text, text), greet(text, bigint, text), behind(text, bigint) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION open_season(int) TO {{receiver}};
GRANT EXECUTE ON FUNCTION receive(text, text), greet(text, bigint, text), behind(text, bigint) TO {{sites}}, {{keeper}};
ALTER FUNCTION receive(text, text) OWNER TO {{receiver}};
ALTER FUNCTION greet(text, bigint, text) OWNER TO {{receiver}};
ALTER FUNCTION behind(text, bigint) OWNER TO {{receiver}};
