-- What a person has typed and the book has not taken as a fact: a form half
-- filled, a figure that cannot stand, tests of a sample that is not written
-- down yet. It is there so that a program that ends in the middle of a word
-- finds it again. No fact, no hash and no list comes of it, and it goes when
-- the act is done or given up, or when the load has left the yard.

CREATE TABLE drafts (
    place TEXT NOT NULL, -- which form
    id    TEXT NOT NULL, -- of what: a load, a meter, a day; empty for a new one
    at    TEXT NOT NULL, -- when it was last typed in
    who   TEXT NOT NULL, -- and by whom
    texts TEXT NOT NULL, -- JSON object of name to text, all as typed
    PRIMARY KEY (place, id)
) STRICT, WITHOUT ROWID;
