-- An act is read once, and only the tables that it is about are looked at: most acts are a fact or two.

CREATE OR REPLACE FUNCTION append(expected bigint, act json) RETURNS void
LANGUAGE plpgsql SECURITY DEFINER SET search_path FROM CURRENT AS $$
DECLARE
    found bigint;
    taken record;
    doc jsonb := act;
BEGIN
    PERFORM 1 FROM series WHERE name IN (SELECT t.name FROM jsonb_populate_recordset(NULL::series, doc->'series') t) ORDER BY name FOR UPDATE;
    SELECT writes INTO found FROM head FOR UPDATE;
    IF found <> expected THEN
        RAISE EXCEPTION 'another desk has written' USING ERRCODE = 'serialization_failure';
    END IF;
    UPDATE head SET writes = writes + 1;

    IF doc ? 'facts' THEN
        INSERT INTO facts SELECT * FROM jsonb_populate_recordset(NULL::facts, doc->'facts');
    END IF;
    IF doc ? 'editions' THEN
        INSERT INTO editions SELECT * FROM jsonb_populate_recordset(NULL::editions, doc->'editions');
    END IF;
    FOR taken IN SELECT * FROM jsonb_populate_recordset(NULL::series, doc->'series') LOOP
        SELECT last INTO found FROM series WHERE name = taken.name;
        FOR n IN coalesce(found, 0) + 1 .. taken.last LOOP
            INSERT INTO series AS s VALUES (taken.name, 1) ON CONFLICT (name) DO UPDATE SET last = s.last + 1;
        END LOOP;
    END LOOP;

    IF doc ? 'loads' THEN
        DELETE FROM owners o USING jsonb_populate_recordset(NULL::loads, doc->'loads') l WHERE o.load = l.id;
        DELETE FROM loads o USING jsonb_populate_recordset(NULL::loads, doc->'loads') l WHERE o.id = l.id;
        INSERT INTO loads SELECT * FROM jsonb_populate_recordset(NULL::loads, doc->'loads');
        INSERT INTO owners SELECT * FROM jsonb_populate_recordset(NULL::owners, doc->'owners');
    END IF;

    IF doc ? 'standing' THEN
        DELETE FROM standing o USING jsonb_populate_recordset(NULL::standing, doc->'standing') s WHERE o.kind = s.kind AND o.id = s.id;
        INSERT INTO standing SELECT * FROM jsonb_populate_recordset(NULL::standing, doc->'standing');
    END IF;

    IF doc ? 'stock_was' THEN
        DELETE FROM stock o USING jsonb_populate_recordset(NULL::stock, doc->'stock_was') s
            WHERE o.commodity = s.commodity AND o.bin = s.bin AND o.unit = s.unit AND o.day = s.day;
        INSERT INTO stock SELECT * FROM jsonb_populate_recordset(NULL::stock, doc->'stock');
    END IF;
    IF doc ? 'owned_was' THEN
        DELETE FROM owned o USING jsonb_populate_recordset(NULL::owned, doc->'owned_was') s
            WHERE o.commodity = s.commodity AND o.line = s.line AND o.unit = s.unit AND o.day = s.day;
        INSERT INTO owned SELECT * FROM jsonb_populate_recordset(NULL::owned, doc->'owned');
    END IF;
    IF doc ? 'bin_days_was' THEN
        DELETE FROM bin_days o USING jsonb_populate_recordset(NULL::bin_days, doc->'bin_days_was') s
            WHERE o.bin = s.bin AND o.commodity = s.commodity AND o.unit = s.unit AND o.day = s.day;
        INSERT INTO bin_days SELECT * FROM jsonb_populate_recordset(NULL::bin_days, doc->'bin_days');
    END IF;

    IF doc ? 'drafts_of' THEN
        DELETE FROM drafts o USING jsonb_populate_recordset(NULL::drafts, doc->'drafts_of') d WHERE o.id = d.id;
    END IF;
    IF doc ? 'drafts_was' THEN
        DELETE FROM drafts o USING jsonb_populate_recordset(NULL::drafts, doc->'drafts_was') d WHERE o.place = d.place AND o.id = d.id;
        INSERT INTO drafts SELECT * FROM jsonb_populate_recordset(NULL::drafts, doc->'drafts');
    END IF;

    PERFORM pg_notify(current_schema(), (expected + 1)::text);
END $$;
