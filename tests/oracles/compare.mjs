// Our readers of microdata and RDFa against those of other people, page by page.
//   compare.mjs microdata|rdfa statements|facts CHECKS_FOLDER PAGE_STATEMENTS_PROGRAM
// A difference that exceptions.json does not name is a failure, and so is one it names that is gone.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

import { productFacts, rowFacts, statements, tidy } from './facts.mjs';
import { base, microdataItems, rdfaItems } from './others.mjs';
import { allPages } from './pages.mjs';

const [syntax, level, checks, program] = process.argv.slice(2);
const here = path.dirname(fileURLToPath(import.meta.url));

function ourReading(pages) {
  fs.mkdirSync('pages', { recursive: true });
  const files = pages.map(([, html], i) => {
    fs.writeFileSync(`pages/${i}.html`, html);
    return `pages/${i}.html`;
  });
  const read = JSON.parse(execFileSync(program, files, { encoding: 'utf8', maxBuffer: 1 << 28 }));
  return files.map((file) => read[file][syntax]);
}

// Two lists as bags: what only one of them holds.
function difference(ours, theirs) {
  const left = [...theirs];
  const extra = ours.filter((entry) => {
    const at = left.indexOf(entry);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
  return { ours: extra, theirs: left };
}

// Our texts are as written. Where theirs is the address or the number that ours means, ours counts as
// it.
function asTheirs(ours, theirs) {
  const known = new Set(theirs);
  const address = (text) => {
    try {
      return new URL(text, base).href;
    } catch {
      return text;
    }
  };
  return ours.map(({ name, text }) => {
    if (text === undefined) return `${name}=(item)`;
    const meanings = [tidy(text), address(text), String(Number(text))].map((meant) => `${name}=${meant}`);
    return meanings.find((meant) => known.has(meant)) ?? meanings[0];
  });
}

async function compared([, html], ours) {
  const items = syntax === 'rdfa' ? await rdfaItems(html) : microdataItems(html);
  if (level === 'facts') return [rowFacts(ours.rows), productFacts(items)];
  const theirs = statements(items);
  return [asTheirs(ours.statements, theirs), theirs];
}

const listed = JSON.parse(fs.readFileSync(path.join(here, 'exceptions.json'), 'utf8'));
const expected = new Map(listed[syntax][level].map((entry) => [entry.page, entry]));
const same = (a, b) => JSON.stringify([...a].sort()) === JSON.stringify([...(b ?? [])].sort());

const pages = allPages(checks);
const readings = ourReading(pages);
let counted = 0;
let wrong = 0;
const fail = (text) => {
  console.log(text);
  wrong += 1;
};
for (const [i, page] of pages.entries()) {
  const [ours, theirs] = await compared(page, readings[i]);
  counted += theirs.length;
  const found = difference(ours, theirs);
  const named = expected.get(page[0]);
  expected.delete(page[0]);
  const differs = found.ours.length + found.theirs.length > 0;
  if (named && !named.reason) fail(`${page[0]}: the exception gives no reason`);
  if (named && !differs) fail(`${page[0]}: the exception no longer occurs; take it out of the list`);
  const asNamed = named && same(found.ours, named.ours) && same(found.theirs, named.theirs);
  if (differs && !asNamed) fail(`${page[0]}: only ours ${JSON.stringify(found.ours)}, only theirs ${JSON.stringify(found.theirs)}`);
}
for (const name of expected.keys()) fail(`${name}: an exception for a page that is not there`);
if (counted < 40) fail(`only ${counted} ${level} were compared; something is wrong with the pages`);
process.exitCode = wrong > 0 ? 1 : 0;
