-- Reads the generated pair, makes further differences in some lines, and writes the two files the
-- program gets. What differs is not noted anywhere: expected.sql finds it by comparing the rows.
-- Run where before.csv and after.csv are.
.import --csv before.csv old_file
.import --csv after.csv new_file
CREATE TEMP VIEW chosen AS
  SELECT line_code, CAST(substr(line_code, 3) AS INTEGER) % 40 AS lot, max(CAST(size AS INTEGER)) AS
    largest, min(CAST(size AS INTEGER)) AS smallest, min(colour) AS first_colour
  FROM old_file GROUP BY line_code;
CREATE TEMP TABLE lots AS SELECT * FROM chosen WHERE lot < 11;

DELETE FROM new_file WHERE (line_code, size) IN (SELECT line_code, CAST(largest AS TEXT) FROM lots WHERE lot = 0);
DELETE FROM old_file WHERE (line_code, size) IN (SELECT line_code, CAST(largest AS TEXT) FROM lots WHERE lot = 1);
DELETE FROM old_file WHERE (line_code, size) IN (SELECT line_code, CAST(smallest AS TEXT) FROM lots WHERE lot = 2);
DELETE FROM new_file
  WHERE (line_code, size) IN (SELECT line_code, CAST(smallest + 4 AS TEXT) FROM lots WHERE lot = 3);
DELETE FROM old_file
  WHERE (line_code, size) IN (SELECT line_code, CAST(smallest + 6 AS TEXT) FROM lots WHERE lot = 4);
DELETE FROM new_file
  WHERE (line_code, colour) IN (SELECT line_code, first_colour FROM lots WHERE lot = 5);
DELETE FROM old_file
  WHERE (line_code, colour) IN (SELECT line_code, first_colour FROM lots WHERE lot = 6);
UPDATE new_file SET composition = '60% linen, 40% cotton'
  WHERE line_code IN (SELECT line_code FROM lots WHERE lot = 7);
UPDATE new_file SET category = iif(category = 'skirts', 'dresses', 'skirts')
  WHERE line_code IN (SELECT line_code FROM lots WHERE lot = 8);
UPDATE new_file SET in_stock = 'no' WHERE line_code IN (SELECT line_code FROM lots WHERE lot = 9);
UPDATE old_file SET in_stock = 'no' WHERE line_code IN (SELECT line_code FROM lots WHERE lot = 8);
UPDATE new_file SET price = printf('%.2f', price - 3), full_price = printf('%.2f', full_price - 3)
  WHERE line_code IN (SELECT line_code FROM lots WHERE lot = 10) AND size > '10';

.headers on
.mode csv
.once old.csv
SELECT * FROM old_file;
.once new.csv
SELECT * FROM new_file;
