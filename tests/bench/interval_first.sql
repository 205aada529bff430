-- The peer of a repeat capture, first part: interval rows. One row per variant and state, valid
-- from one capture until the next that differs. Run on an empty database with the CSV in `seen`.
-- Amounts are integers and the text of a line stands once, so that the peer is as small as it can be.
CREATE TABLE line (
  id INTEGER PRIMARY KEY, code TEXT, name TEXT, category TEXT, composition TEXT, description TEXT
);
CREATE TABLE variant (
  id INTEGER PRIMARY KEY, line_id INTEGER, colour TEXT, size TEXT, url TEXT, image TEXT, gtin INTEGER
);
CREATE TABLE offer_interval (
  variant_id INTEGER, valid_from INTEGER, valid_to INTEGER, price INTEGER, full_price INTEGER,
  in_stock INTEGER, PRIMARY KEY (variant_id, valid_from)
) WITHOUT ROWID;
INSERT INTO line (code, name, category, composition, description)
  SELECT line_code, name, category, composition, description FROM seen
  GROUP BY line_code ORDER BY min(rowid);
CREATE UNIQUE INDEX line_by_code ON line (code);
INSERT INTO variant (line_id, colour, size, url, image, gtin)
  SELECT line.id, seen.colour, seen.size, seen.url, seen.image, CAST(seen.gtin AS INTEGER)
  FROM seen JOIN line ON line.code = seen.line_code ORDER BY line.id, seen.rowid;
CREATE UNIQUE INDEX variant_by_place ON variant (line_id, colour, size);
INSERT INTO offer_interval
  SELECT variant.id, 1, NULL, CAST(round(seen.price * 100) AS INTEGER),
    CAST(round(seen.full_price * 100) AS INTEGER), seen.in_stock = 'yes'
  FROM seen JOIN line ON line.code = seen.line_code
  JOIN variant ON variant.line_id = line.id AND variant.colour = seen.colour
    AND variant.size = seen.size
  ORDER BY variant.id;
DROP TABLE seen;
VACUUM;
