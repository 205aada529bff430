-- What `changes` has to say, worked out from the rows of both files by plain SQL (design, section 6).
-- Leaves the table `expected` (kind, code, what), one row per variant where a kind is about variants.
CREATE TEMP TABLE old AS SELECT *, CAST(round(price * 100) AS INTEGER) AS pays,
    CAST(round(full_price * 100) AS INTEGER) AS full, CAST(size AS INTEGER) AS number
  FROM old_file;
CREATE TEMP TABLE new AS SELECT *, CAST(round(price * 100) AS INTEGER) AS pays,
    CAST(round(full_price * 100) AS INTEGER) AS full, CAST(size AS INTEGER) AS number
  FROM new_file;
CREATE INDEX temp.old_by_variant ON old (line_code, colour, size);
CREATE INDEX temp.new_by_variant ON new (line_code, colour, size);

CREATE TEMP TABLE old_line AS
  SELECT line_code, name, category, composition, min(number) AS low, max(number) AS high,
    sum(in_stock = 'yes') AS there, count(*) AS offered
  FROM old GROUP BY line_code;
CREATE TEMP TABLE new_line AS
  SELECT line_code, name, category, composition, min(number) AS low, max(number) AS high,
    sum(in_stock = 'yes') AS there, count(*) AS offered
  FROM new GROUP BY line_code;
CREATE TEMP TABLE carried AS
  SELECT o.*, n.name AS name2, n.category AS category2, n.composition AS composition2, n.low AS low2,
    n.high AS high2, n.there AS there2, n.offered AS offered2
  FROM old_line o JOIN new_line n USING (line_code);
CREATE TEMP TABLE kept AS
  SELECT o.line_code, o.colour, o.size, o.pays, o.full, n.pays AS pays2, n.full AS full2
  FROM old o JOIN new n USING (line_code, colour, size);

CREATE TEMP TABLE expected (kind TEXT, code TEXT, what TEXT);
INSERT INTO expected
  SELECT 'line-new', line_code, name FROM new_line WHERE line_code NOT IN (SELECT line_code FROM old_line)
  UNION ALL
  SELECT 'line-dropped', line_code, name FROM old_line WHERE line_code NOT IN (SELECT line_code FROM new_line)
  UNION ALL
  SELECT 'line-renamed', line_code, name || ' > ' || name2 FROM carried WHERE name <> name2
  UNION ALL
  SELECT 'composition-changed', line_code, composition || ' > ' || composition2 FROM carried
    WHERE composition <> composition2
  UNION ALL
  SELECT 'category-moved', line_code, '' FROM carried WHERE category <> category2
  UNION ALL
  SELECT 'colour-added', line_code, colour FROM
    (SELECT line_code, colour FROM new EXCEPT SELECT line_code, colour FROM old) JOIN carried USING (line_code)
  UNION ALL
  SELECT 'colour-dropped', line_code, colour FROM
    (SELECT line_code, colour FROM old EXCEPT SELECT line_code, colour FROM new) JOIN carried USING (line_code)
  UNION ALL
  SELECT 'sizes-widened', line_code, low || '-' || high || ' > ' || low2 || '-' || high2 FROM carried
    WHERE low2 < low OR high2 > high
  UNION ALL
  SELECT 'sizes-narrowed', line_code, low || '-' || high || ' > ' || low2 || '-' || high2 FROM carried
    WHERE low2 > low OR high2 < high
  UNION ALL
  SELECT DISTINCT 'size-gap-filled', line_code, '' FROM
    (SELECT line_code, number FROM new EXCEPT SELECT line_code, number FROM old) JOIN carried USING (line_code)
    WHERE number > low AND number < high
  UNION ALL
  SELECT DISTINCT 'size-gap-opened', line_code, '' FROM
    (SELECT line_code, number FROM old EXCEPT SELECT line_code, number FROM new) JOIN carried USING (line_code)
    WHERE number > low2 AND number < high2;

-- Full prices as such, then markdowns: begun, ended, or now at another selling price.
CREATE TEMP VIEW priced AS
  SELECT *, colour || '/' || size || ' ' || full || ' > ' || full2 AS fulls,
    colour || '/' || size || ' ' || pays || ' > ' || pays2 AS paid
  FROM kept;
INSERT INTO expected
  SELECT 'price-up', line_code, fulls FROM priced WHERE full2 > full
  UNION ALL
  SELECT 'price-down', line_code, fulls FROM priced WHERE full2 < full
  UNION ALL
  SELECT 'marked-down', line_code, paid FROM priced WHERE pays = full AND pays2 < full2
  UNION ALL
  SELECT 'markdown-ended', line_code, paid FROM priced WHERE pays < full AND pays2 = full2
  UNION ALL
  SELECT 'markdown-changed', line_code, paid FROM priced
    WHERE pays < full AND pays2 < full2 AND pays <> pays2;
INSERT INTO expected
  SELECT 'stock-out', line_code, there || '/' || offered || ' > ' || there2 || '/' || offered2
    FROM carried WHERE there > 0 AND there2 = 0
  UNION ALL
  SELECT 'stock-back', line_code, there || '/' || offered || ' > ' || there2 || '/' || offered2
    FROM carried WHERE there = 0 AND there2 > 0;
