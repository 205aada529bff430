-- What `changes` did say, from changes.json, in the same form as `expected`: the table `said`.
CREATE TEMP TABLE entry AS
  SELECT value ->> 'kind' AS kind, value -> 'line' ->> 'code' AS code, value -> 'line' ->> 'name' AS name,
    value -> 'before' AS old, value -> 'after' AS new
  FROM json_each(readfile('changes.json'), '$.changes');
DELETE FROM entry WHERE code IS NULL;  -- figures of the whole shop

CREATE TEMP TABLE said AS
  SELECT kind, code, CASE
    WHEN kind IN ('line-new', 'line-dropped') THEN name
    WHEN kind = 'line-renamed' THEN (old ->> 'name') || ' > ' || (new ->> 'name')
    WHEN kind = 'composition-changed' THEN (old ->> 'composition') || ' > ' || (new ->> 'composition')
    WHEN kind = 'colour-added' THEN new ->> 'colour'
    WHEN kind = 'colour-dropped' THEN old ->> 'colour'
    WHEN kind IN ('sizes-widened', 'sizes-narrowed') THEN (old ->> 'min') || '-' || (old ->> 'max') ||
      ' > ' || (new ->> 'min') || '-' || (new ->> 'max')
    WHEN kind IN ('stock-out', 'stock-back') THEN (old ->> 'in_stock') || '/' || (old ->> 'offered') ||
      ' > ' || (new ->> 'in_stock') || '/' || (new ->> 'offered')
    ELSE '' END AS what
  FROM entry WHERE old ->> 'amount_minor' IS NULL;

-- A price stands for every variant of its colours and sizes; without a list, for all of them.
INSERT INTO said
  SELECT kind, code, colour || '/' || size || ' ' || (old ->> 'amount_minor') || ' > ' ||
    (new ->> 'amount_minor')
  FROM entry JOIN kept ON kept.line_code = code
  WHERE old ->> 'amount_minor' IS NOT NULL
    AND (new -> 'colours' IS NULL OR colour IN (SELECT value FROM json_each(new, '$.colours')))
    AND (new -> 'sizes' IS NULL OR size IN (SELECT value FROM json_each(new, '$.sizes')));
