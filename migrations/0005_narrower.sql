-- A fact is appended while a truck stands on the scale, and every index is a
-- page more to write before the driver gets a light. Nothing is looked up by
-- its moment, and what happens to a load before its ticket is looked up by the
-- load; such facts are by far the most.

DROP INDEX facts_at;
DROP INDEX facts_kind;
CREATE INDEX facts_kind ON facts (kind) WHERE substr(kind, 1, 5) <> 'load.';
