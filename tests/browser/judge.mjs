// What every page is judged by: the rules of the HTML standard (html-validate), axe-core, and that
// nothing is wider than the window.
import { createRequire } from "node:module";
import { readFile } from "node:fs/promises";

const require = createRequire(process.cwd() + "/package.json");
const { HtmlValidate } = require("html-validate");
const axe = await readFile(require.resolve("axe-core/axe.min.js"), "utf8");

const validator = new HtmlValidate({
  extends: ["html-validate:standard"],
  rules: {
    // Style of our own writer, not of the standard.
    "no-inline-style": "error",
    "no-trailing-whitespace": "off",
    "long-title": "off",
    "require-sri": "off",
    "void-style": "off",
  },
});

/// Colours differ by scheme, layout by width: two of the four hold everything.
export const looks = [
  { colorScheme: "light", viewport: { width: 1280, height: 900 } },
  { colorScheme: "dark", viewport: { width: 390, height: 844 } },
];

/// What is wrong with the text of a page, a sentence each.
export async function faultsOfHtml(html, name) {
  const { results } = await validator.validateString(html, name);
  return results.flatMap(({ messages }) =>
    messages.map((each) => `${each.ruleId} at ${each.line}:${each.column}: ${each.message}`));
}

/// What is wrong with a page as it is shown; takes rows away from long tables.
export async function faultsOfView(page, where) {
  const faults = [];
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  if (wide > 0) faults.push(`${where}: ${wide} px wider than the window`);
  await page.evaluate(axe);
  // Rows are alike: the first ones stand for all, or ten thousand would take minutes.
  await page.evaluate(() => {
    for (const row of document.querySelectorAll("tbody tr:nth-child(n+40), .sources li:nth-child(n+40)")) row.remove();
  });
  const { violations } = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
  for (const each of violations) {
    const node = each.nodes[0];
    faults.push(`${where}: axe ${each.id}: ${each.help}: ${node.target} (${each.nodes.length} places) ${node.failureSummary.replace(/\s+/g, " ").slice(0, 300)}`);
  }
  return faults;
}
