// The pages both sides read: the examples of schema.org and the W3C carried over in tests/checks, and
// the invented pages there that have markup.
import fs from 'node:fs';
import path from 'node:path';

const hasMarkup = (html) => /\sitemscope|\stypeof\s*=/i.test(html);

function* carriedOver(checks) {
  const cases = (file) => JSON.parse(fs.readFileSync(path.join(checks, file), 'utf8')).cases;
  for (const { id, ...syntaxes } of cases('schemaorg_syntaxes.json')) {
    for (const syntax of ['microdata', 'rdfa']) {
      yield [`schema.org ${id} ${syntax}`, `<!doctype html><body>${syntaxes[syntax]}`];
    }
  }
  for (const { id, html } of cases('microdata_w3c.json')) yield [`w3c ${id}`, html];
  for (const [i, { html }] of cases('microdata_items.json').entries()) {
    yield [`open suite ${i + 1}`, html];
  }
}

function* invented(checks) {
  for (const file of fs.readdirSync(checks, { recursive: true }).map(String).sort()) {
    if (!file.endsWith('.html')) continue;
    const html = fs.readFileSync(path.join(checks, file), 'utf8');
    if (hasMarkup(html)) yield [path.basename(file, '.html'), html];
  }
}

/// All pages as [name, html], in a fixed order.
export function allPages(checks) {
  return [...carriedOver(checks), ...invented(checks)];
}
