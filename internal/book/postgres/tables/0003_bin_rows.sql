-- Rows of bins are kept as lines of text. Those written before stay as they are until their day changes;
-- a program of before this step cannot read the new ones.

COMMENT ON COLUMN bin_days.body IS 'lines of text; before step 3 a JSON object';
