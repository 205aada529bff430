// The peer of reading a workbook: npm exceljs, its streaming reader and writer.
//   exceljs_peer.mjs write ROWS.csv SHEET.xlsx   one sheet with shared strings, numbers as numbers
//   exceljs_peer.mjs read SHEET.xlsx             goes through every row; prints rows, cells, seconds
import { createRequire } from 'node:module';
import fs from 'node:fs';
import process from 'node:process';
import readline from 'node:readline';

const require = createRequire(`${process.cwd()}/`);
const ExcelJS = require('exceljs');

// The generator's files (RFC 4180), whose fields hold no line breaks.
const fields = (line) =>
  [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain);
const numeric = new Set(['price', 'full_price']);

async function write(csv, xlsx) {
  const workbook = new ExcelJS.stream.xlsx.WorkbookWriter({ filename: xlsx, useSharedStrings: true });
  const sheet = workbook.addWorksheet('range');
  let header;
  for await (const line of readline.createInterface({ input: fs.createReadStream(csv) })) {
    const cells = fields(line);
    header ??= cells;
    const typed = header.map((name, i) => (numeric.has(name) && cells !== header && cells[i] ? Number(cells[i]) : cells[i]));
    sheet.addRow(typed).commit();
  }
  await workbook.commit();
}

async function read(xlsx) {
  const began = process.hrtime.bigint();
  const options = { sharedStrings: 'cache', styles: 'ignore', hyperlinks: 'ignore', worksheets: 'emit', entries: 'emit' };
  let rows = 0;
  let cells = 0;
  for await (const sheet of new ExcelJS.stream.xlsx.WorkbookReader(xlsx, options)) {
    for await (const row of sheet) {
      rows += 1;
      cells += row.values.filter((value) => value !== undefined && value !== '').length;
    }
  }
  console.log(rows, cells, (Number(process.hrtime.bigint() - began) / 1e9).toFixed(3));
}

const [verb, ...files] = process.argv.slice(2);
await (verb === 'write' ? write(...files) : read(...files));
