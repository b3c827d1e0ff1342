-- The position, a row for each day on which grain of a commodity moved into or
-- out of a bin: what came in, what went out, what tickets of earlier days
-- brought back or took away when they were voided or corrected, and what is
-- there in the evening. The program fills it from the loads in this same step
-- and keeps it in the transaction of each ticket.
--
-- Amounts are text with their unit, "52300 lb", as everywhere.

CREATE TABLE stock (
    commodity TEXT NOT NULL,
    bin       TEXT NOT NULL,
    unit      TEXT NOT NULL,
    day       TEXT NOT NULL,
    inward    TEXT NOT NULL,
    outward   TEXT NOT NULL,
    back      TEXT NOT NULL, -- below nought for what outbound tickets had taken
    balance   TEXT NOT NULL, -- of the row before + inward - outward - back
    PRIMARY KEY (commodity, bin, unit, day)
) STRICT, WITHOUT ROWID;

-- Who weighed stays on the row when somebody else voids the ticket.
ALTER TABLE loads ADD COLUMN weigher TEXT NOT NULL DEFAULT '';

UPDATE loads SET weigher = coalesce((
    SELECT json_extract(body, '$.weigher') FROM facts
    WHERE subject = 'load ' || loads.id AND kind = 'ticket.issued'), '')
WHERE ticket IS NOT NULL;
