// The peer of `changes`: two captures as native DuckDB tables, compared by a full outer join.
//   duckdb_peer.mjs load DATABASE BEFORE.csv AFTER.csv   fills tables `before` and `after`
//   duckdb_peer.mjs join DATABASE KEY[,KEY...]           prints seconds, added, removed, changed
// Only the query is timed: starting node and opening the database are left out, in the peer's favour.
import { createRequire } from 'node:module';
import process from 'node:process';

const require = createRequire(`${process.cwd()}/`);
const { DuckDBInstance } = require('@duckdb/node-api');

const compared = ['name', 'category', 'price', 'full_price', 'currency', 'in_stock', 'composition'];

async function load(connection, before, after) {
  const money = "types = {'price': 'DECIMAL(9,2)', 'full_price': 'DECIMAL(9,2)', 'size': 'VARCHAR'}";
  for (const [table, file] of [['before', before], ['after', after]]) {
    await connection.run(`CREATE TABLE "${table}" AS FROM read_csv('${file}', header = true, ${money})`);
  }
}

// The differing rows with both sides' offers, as a change report needs them, kept inside the database.
function joinQuery(keys) {
  const same = keys.map((key) => `b.${key} = a.${key}`).join(' AND ');
  const differs = compared.map((column) => `b.${column} IS DISTINCT FROM a.${column}`).join(' OR ');
  const shown = ['line_code', 'name', 'colour', 'size', 'price', 'full_price', 'in_stock'];
  const sides = shown.map((column) => `b.${column} AS b_${column}, a.${column} AS a_${column}`);
  return `CREATE TEMP TABLE difference AS SELECT ${sides.join(', ')}
    FROM "before" b FULL OUTER JOIN "after" a ON ${same}
    WHERE b.${keys[0]} IS NULL OR a.${keys[0]} IS NULL OR ${differs}`;
}

async function join(connection, keys) {
  const start = process.hrtime.bigint();
  await connection.run(joinQuery(keys));
  const seconds = Number(process.hrtime.bigint() - start) / 1e9;
  const counted = await connection.runAndReadAll(`SELECT count(*) FILTER (b_line_code IS NULL),
    count(*) FILTER (a_line_code IS NULL),
    count(*) FILTER (b_line_code IS NOT NULL AND a_line_code IS NOT NULL) FROM difference`);
  console.log([seconds.toFixed(4), ...counted.getRows()[0]].join(' '));
}

const [verb, database, ...rest] = process.argv.slice(2);
const instance = await DuckDBInstance.create(database, { threads: '2' });
const connection = await instance.connect();
if (verb === 'load') await load(connection, rest[0], rest[1]);
else await join(connection, rest[0].split(','));
connection.closeSync();
instance.closeSync();
