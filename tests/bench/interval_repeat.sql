-- The peer of a repeat capture, second part: variants of `seen` whose offer differs from the open
-- interval close it and open a new one.
CREATE TEMP TABLE differing AS
  SELECT variant.id AS variant_id, CAST(round(seen.price * 100) AS INTEGER) AS price,
    CAST(round(seen.full_price * 100) AS INTEGER) AS full_price, seen.in_stock = 'yes' AS in_stock
  FROM seen JOIN line ON line.code = seen.line_code
  JOIN variant ON variant.line_id = line.id AND variant.colour = seen.colour
    AND variant.size = seen.size
  JOIN offer_interval o ON o.variant_id = variant.id AND o.valid_to IS NULL
  WHERE (o.price, o.full_price, o.in_stock) IS NOT
    (CAST(round(seen.price * 100) AS INTEGER), CAST(round(seen.full_price * 100) AS INTEGER),
     seen.in_stock = 'yes');
DROP TABLE seen;
UPDATE offer_interval SET valid_to = 2
  WHERE valid_to IS NULL AND variant_id IN (SELECT variant_id FROM differing);
INSERT INTO offer_interval SELECT variant_id, 2, NULL, price, full_price, in_stock FROM differing;
SELECT count(*) FROM differing;
VACUUM;
