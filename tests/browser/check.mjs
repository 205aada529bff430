// One page: the rules of the HTML standard (html-validate), and in Chromium at two widths, light and
// dark: no violation by axe-core, nothing wider than the window, and a list that can be searched.
// Prints a line a page, and below it what is wrong.
//   node check.mjs FILE.html...
import { createRequire } from "node:module";
import { basename } from "node:path";
import { pathToFileURL } from "node:url";
import { readFile } from "node:fs/promises";

const require = createRequire(process.cwd() + "/package.json");
const { chromium } = require("playwright-core");
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

const most = 12;
let faults = [];
const wrong = (what) => faults.push(what);

async function validate(file) {
  const report = await validator.validateFile(file);
  for (const result of report.results) {
    for (const each of result.messages) {
      wrong(`${each.ruleId} at ${each.line}:${each.column}: ${each.message}`);
    }
  }
}

async function judge(page, where) {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  if (wide > 0) wrong(`${where}: ${wide} px wider than the window`);
  // Rows are alike: the first ones stand for all, or ten thousand would take minutes.
  await page.evaluate(() => {
    for (const row of document.querySelectorAll("tbody tr:nth-child(n+40), .sources li:nth-child(n+40)")) row.remove();
  });
  const { violations } = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
  for (const each of violations) {
    const node = each.nodes[0];
    wrong(`${where}: axe ${each.id}: ${each.help}: ${node.target} (${each.nodes.length} places) ${node.failureSummary.replace(/\s+/g, " ").slice(0, 300)}`);
  }
}

/// Finding and sorting keep every row, and the figures with their line.
async function search(page) {
  const said = await page.evaluate(() => {
    const list = document.querySelector(".list");
    if (!list) return "";
    const rows = Number(list.dataset.rows);
    const before = [...list.querySelectorAll("tbody tr")].map((row) => row.textContent).sort();
    const input = list.querySelector("input");
    if (!input) return "the script did not run";
    const first = list.querySelector("tbody th").textContent.trim();
    input.value = first;
    input.dispatchEvent(new Event("input"));
    const shown = [...list.querySelectorAll("tbody tr")].filter((row) => !row.hidden);
    if (shown.length === 0 || shown.length === rows) return `"${first}" found ${shown.length} of ${rows}`;
    input.value = "";
    input.dispatchEvent(new Event("input"));
    for (const button of list.querySelectorAll("thead button")) { button.click(); button.click(); }
    const after = [...list.querySelectorAll("tbody tr")];
    if (after.some((row) => row.hidden)) return "rows stay hidden";
    return after.map((row) => row.textContent).sort().join() === before.join() ? "" : "rows got lost";
  });
  if (said) wrong(said);
}

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM || "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu"],
});
// Colours differ by scheme, layout by width: two of the four hold everything.
const looks = [
  { colorScheme: "light", viewport: { width: 1280, height: 900 } },
  { colorScheme: "dark", viewport: { width: 390, height: 844 } },
];

async function look(file, options) {
  const context = await browser.newContext({ ...options, bypassCSP: true });
  const page = await context.newPage();
  page.on("request", (request) => {
    if (!request.url().startsWith("file:")) wrong(`asks for ${request.url()}`);
  });
  page.on("pageerror", (error) => wrong(`script: ${error.message}`));
  await page.goto(pathToFileURL(file).href);
  await page.evaluate(axe);
  await judge(page, `${options.colorScheme} ${options.viewport.width}`);
  await context.close();
}

/// With its own policy in force: the script runs, and nothing else is asked for.
async function use(file) {
  const context = await browser.newContext();
  const page = await context.newPage();
  page.on("console", (message) => {
    if (message.type() === "error") wrong(message.text());
  });
  await page.goto(pathToFileURL(file).href);
  await search(page);
  await context.close();
}

for (const file of process.argv.slice(2)) {
  faults = [];
  await validate(file);
  for (const options of looks) await look(file, options);
  await use(file);
  console.log(`${faults.length === 0 ? "ok   " : "FAIL "} ${basename(file)}`);
  for (const each of faults.slice(0, most)) console.log(`      ${each}`);
  if (faults.length > most) console.log(`      and ${faults.length - most} more`);
}
await browser.close();
