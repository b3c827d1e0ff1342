-- Two sites of one name would be taken for each other in every list.

ALTER TABLE sites ADD CONSTRAINT sites_of_one_name UNIQUE (name);
