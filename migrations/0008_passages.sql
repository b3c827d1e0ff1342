-- Before a ticket is issued, the other tickets of its truck today and yesterday are
-- looked up. The index that led through all the truck ever brought was used for
-- nothing else.

DROP INDEX loads_truck;
CREATE INDEX loads_truck ON loads (truck, issued_day);
