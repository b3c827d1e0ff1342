-- One of the sites may be the office's own book, whose publications every site takes over.
ALTER TABLE sites ADD COLUMN publishes boolean NOT NULL DEFAULT false;
CREATE UNIQUE INDEX one_publishes ON sites (publishes) WHERE publishes;
GRANT UPDATE (publishes) ON sites TO {{keeper}};

CREATE FUNCTION publisher() RETURNS text LANGUAGE sql STABLE SET search_path FROM CURRENT AS
    $$ SELECT site FROM sites WHERE publishes $$;

-- Its rows are open to the functions below and to nobody else: they tell sites what is published, and
-- of every other fact no more than its place in the chain.
CREATE POLICY publisher ON sites FOR SELECT TO {{receiver}} USING (publishes);
DO $$
DECLARE one text;
BEGIN
    FOREACH one IN ARRAY ARRAY['chains', 'facts', 'texts'] LOOP
        EXECUTE format('CREATE POLICY published ON %I FOR SELECT TO {{receiver}} USING (site = (SELECT publisher()))', one);
    END LOOP;
END $$;

-- published is a page of the first branch of the publisher's chain, behind a fact.
CREATE FUNCTION published(behind bigint, most int) RETURNS TABLE (
    letters text, seq bigint, prev text, hash text, told boolean, at text, who text, desk text, kind text, subject text, body text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path FROM CURRENT AS $$
    SELECT f.site, f.seq, encode(f.prev, 'hex'), encode(f.hash, 'hex'), t.told,
        CASE WHEN t.told THEN f.at END, CASE WHEN t.told THEN f.who END, CASE WHEN t.told THEN f.desk END,
        CASE WHEN t.told THEN f.kind END, CASE WHEN t.told THEN f.subject END, CASE WHEN t.told THEN f.body END
    FROM facts f, LATERAL (SELECT f.kind = 'office.publication' OR f.subject IN ('keys', 'signatures') AS told) AS t
    WHERE f.site = publisher() AND f.branch = 1 AND f.seq > behind
    ORDER BY f.seq LIMIT most
$$;

-- published_text is the text of an edition that was published.
CREATE FUNCTION published_text(wanted text) RETURNS text LANGUAGE sql STABLE SECURITY DEFINER SET search_path FROM CURRENT AS $$
    SELECT t.text FROM texts t WHERE t.site = publisher() AND t.sha256 = decode(wanted, 'hex')
        AND EXISTS (SELECT FROM facts f WHERE f.site = publisher() AND f.kind = 'office.publication'
            AND f.body::json -> 'edition' ->> 'edition_hash' = wanted)
$$;

-- lays_down has a site publish for all, or none.
CREATE FUNCTION lays_down(whose text) RETURNS boolean LANGUAGE plpgsql SET search_path FROM CURRENT AS $$
BEGIN
    UPDATE sites SET publishes = false WHERE publishes AND site <> whose;
    UPDATE sites SET publishes = true WHERE site = whose;
    RETURN FOUND;
END $$;

REVOKE ALL ON FUNCTION publisher(), published(bigint, int), published_text(text), lays_down(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION publisher() TO {{receiver}};
GRANT EXECUTE ON FUNCTION published(bigint, int), published_text(text) TO {{sites}}, {{keeper}};
GRANT EXECUTE ON FUNCTION lays_down(text) TO {{keeper}};
ALTER FUNCTION published(bigint, int) OWNER TO {{receiver}};
ALTER FUNCTION published_text(text) OWNER TO {{receiver}};
