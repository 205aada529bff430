-- One line per kind: how many expected, how many of them not said, how many said without ground, and
-- an example of what is wrong.
CREATE TEMP VIEW missing AS SELECT * FROM expected EXCEPT SELECT * FROM said;
CREATE TEMP VIEW unfounded AS SELECT * FROM said EXCEPT SELECT * FROM expected;
.mode tabs
SELECT kind,
  (SELECT count(*) FROM expected e WHERE e.kind = k.kind),
  (SELECT count(*) FROM missing m WHERE m.kind = k.kind),
  (SELECT count(*) FROM unfounded u WHERE u.kind = k.kind) +
    (SELECT count(*) - count(DISTINCT code || what) FROM said s WHERE s.kind = k.kind),
  coalesce((SELECT 'missing: ' || code || ' ' || what FROM missing m WHERE m.kind = k.kind LIMIT 1), '') ||
  coalesce((SELECT ' unfounded: ' || code || ' ' || what FROM unfounded u WHERE u.kind = k.kind LIMIT 1), '')
FROM (SELECT kind FROM expected UNION SELECT kind FROM said) k ORDER BY kind;
