// From items to the product facts a stylist would look up: an own, plain way through schema.org,
// written for this comparison and sharing nothing with the program.

const lastWord = (name) => name.split(/[/#:]/).filter(Boolean).pop() ?? '';
const typesOf = (item) => [...item.types, ...texts(item, 'additionalType')].map(lastWord);
const isA = (item, ...types) => typesOf(item).some((type) => types.includes(type));
const productTypes = ['Product', 'ProductGroup', 'IndividualProduct', 'ProductModel', 'SomeProducts', 'ProductCollection'];

const values = (item, ...names) => item.values.filter((value) => names.includes(lastWord(value.name)));
const texts = (item, ...names) =>
  values(item, ...names).map((value) => (value.item ? texts(value.item, 'name', 'value')[0] : value.text) ?? '');
const items = (item, ...names) => values(item, ...names).flatMap((value) => (value.item ? [value.item] : []));

/// Every white space as one blank, none at the ends.
export const tidy = (text) => text.replace(/\s+/g, ' ').trim();

/// A price as a plain number, so that `49.9` and `49.90` are one.
export const amount = (text) => {
  const digits = text.replace(/[^0-9.,]/g, '').replace(/,(\d{1,2})$/, '.$1').replace(/,/g, '');
  return digits === '' ? '' : String(Number(digits));
};

function offersOf(product) {
  return items(product, 'offers').flatMap((offer) => {
    const inner = items(offer, 'offers');
    return inner.length > 0 ? inner.map((one) => ({ ...one, values: [...one.values, ...values(offer, 'priceCurrency')] })) : [offer];
  });
}

// Prices of lease, members and delivery are not the price of the thing, and are exceptions here.
function offerFacts(offer) {
  const places = [offer, ...items(offer, 'priceSpecification')];
  const all = (name) => places.flatMap((place) => texts(place, name));
  return {
    price: all('price').map(amount),
    currency: all('priceCurrency').slice(0, 1).map(tidy),
    in_stock: texts(offer, 'availability').slice(0, 1).map((text) => lastWord(tidy(text))),
  };
}

const fields = {
  name: (product) => texts(product, 'name').slice(0, 1).map(tidy),
  code: (product) => texts(product, 'sku', 'productGroupID').map(tidy),
  gtin: (product) => texts(product, 'gtin', 'gtin8', 'gtin12', 'gtin13', 'gtin14').map(tidy),
  colour: (product) => texts(product, 'color').map(tidy),
  size: (product) => texts(product, 'size').map(tidy),
};

/// The facts of all products among the items: "field=value", each once, sorted.
export function productFacts(all) {
  const facts = new Set();
  for (const product of all.filter((item) => isA(item, ...productTypes))) {
    for (const [field, read] of Object.entries(fields)) read(product).forEach((text) => facts.add(`${field}=${text}`));
    for (const offer of offersOf(product)) {
      for (const [field, found] of Object.entries(offerFacts(offer))) found.forEach((text) => facts.add(`${field}=${text}`));
    }
  }
  return [...facts].filter((fact) => !fact.endsWith('=')).sort();
}

/// The same from our rows.
export function rowFacts(rows) {
  const facts = new Set();
  for (const row of rows) {
    const add = (field, text) => text && facts.add(`${field}=${tidy(text)}`);
    add('name', row.name);
    for (const code of [row.line_code, row.variant_code, row.group_id]) add('code', code);
    for (const field of ['gtin', 'currency', 'in_stock']) add(field, row[field]);
    for (const field of ['colour', 'size']) (row[field] ?? '').split('|').forEach((part) => add(field, part));
    if (row.price) facts.add(`price=${amount(row.price)}`);
  }
  return [...facts].sort();
}

/// Every statement as "property=text", sorted; our addresses resolved where theirs are.
export function statements(found) {
  return found.flatMap((item) => [
    ...item.types.map((type) => `type=${type}`),
    ...item.values.map(({ name, text }) => `${name}=${text === undefined ? '(item)' : tidy(text)}`),
  ]).sort();
}
