-- What the desk asks before every ticket, without walking the tickets of the season: the last loads
-- into a bin. And the tickets whose grain nobody has decided about, which are few: those without a
-- word, with an object that has none, or with owners of whom each has terms of their own.

CREATE INDEX loads_bin ON loads (bin, ticket) WHERE ticket IS NOT NULL;

CREATE INDEX loads_undecided ON loads (phase, issued_day)
    WHERE (disposition = '' OR substr(disposition, 1, 10) = '{"load":""' OR instr(disposition, '"owners"') > 0);
