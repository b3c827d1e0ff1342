-- Rows of bins are long: a bin has up to sixty layers with the same few factors.
-- They are kept as lines with the names written once, in place of a JSON object;
-- the program rewrites those there are in this same step.

SELECT 1;
