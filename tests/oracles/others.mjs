// Pages as the readers of other people see them: npm microdata-node and rdfa-streaming-parser. Both
// give items of one form: {types, values: [{name, text}] or [{name, item}]}.
import { createRequire } from 'node:module';
import process from 'node:process';

// The packages are installed in the working directory, outside the repository.
const require = createRequire(`${process.cwd()}/`);
const microdata = require('microdata-node');
const { RdfaParser } = require('rdfa-streaming-parser');

export const base = 'https://page.example/shop/page.html';
const rdfType = 'http://www.w3.org/1999/02/22-rdf-syntax-ns#type';

/// The items of microdata, inner ones behind their outer ones.
export function microdataItems(html) {
  const items = [];
  const add = (found) => {
    const item = { types: found.type ?? [], values: [] };
    items.push(item);
    for (const [name, values] of Object.entries(found.properties ?? {})) {
      for (const value of values) {
        const inner = typeof value === 'object';
        item.values.push(inner ? { name, item: add(value) } : { name, text: String(value) });
      }
    }
    return item;
  };
  microdata.toJson(html, { base }).items.forEach(add);
  return items;
}

function triplesOf(html) {
  return new Promise((resolve, reject) => {
    const triples = [];
    const parser = new RdfaParser({ baseIRI: base, contentType: 'text/html' });
    parser.on('data', (triple) => triples.push(triple));
    parser.on('error', reject).on('end', () => resolve(triples));
    parser.write(html);
    parser.end();
  });
}

/// The things of RDFa. What is said of the page itself (Open Graph tags, the vocabulary, links) is
/// left out, as our reader leaves it out, and so are the addresses of things that say no more.
export async function rdfaItems(html) {
  const triples = await triplesOf(html);
  const things = new Map();
  for (const { subject } of triples) {
    if (subject.value !== base) things.set(subject.value, { types: [], values: [] });
  }
  for (const { subject, predicate, object } of triples) {
    const thing = things.get(subject.value);
    if (!thing) continue;
    if (predicate.value === rdfType) {
      thing.types.push(object.value);
      continue;
    }
    const item = object.termType === 'Literal' ? undefined : things.get(object.value);
    thing.values.push(item ? { name: predicate.value, item } : { name: predicate.value, text: object.value });
  }
  return [...things.values()];
}
