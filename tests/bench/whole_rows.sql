-- A capture as one row per variant with everything the file says; the key is the variant's.
CREATE TABLE variant (
  line_code TEXT, name TEXT, category TEXT, colour TEXT, size TEXT, price TEXT, full_price TEXT,
  currency TEXT, in_stock TEXT, composition TEXT, description TEXT, url TEXT, image TEXT, gtin TEXT,
  PRIMARY KEY (line_code, colour, size)
) WITHOUT ROWID;
