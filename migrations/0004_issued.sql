-- A day's tickets in the order of their numbers, and the last number before a
-- day, without looking at more than the day.

DROP INDEX loads_issued_day;
CREATE INDEX loads_issued ON loads (issued_day, ticket);
