-- The same rows cut down to what changes from week to week, as small as a row can be.
CREATE TABLE variant (
  line_code TEXT, colour TEXT, size TEXT, price INTEGER, full_price INTEGER, currency TEXT,
  in_stock INTEGER, gtin INTEGER, PRIMARY KEY (line_code, colour, size)
) WITHOUT ROWID;
INSERT INTO variant
  SELECT line_code, colour, size, CAST(round(price * 100) AS INTEGER),
    CAST(round(full_price * 100) AS INTEGER), currency, in_stock = 'yes', CAST(gtin AS INTEGER)
  FROM whole.variant ORDER BY 1, 2, 3;
