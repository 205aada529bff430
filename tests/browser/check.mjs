// One page: the rules of the HTML standard (html-validate), and in Chromium at two widths, light and
// dark: no violation by axe-core, nothing wider than the window, and a list that can be searched.
// Prints a line a page, and below it what is wrong.
//   node check.mjs FILE.html...
import { createRequire } from "node:module";
import { basename } from "node:path";
import { pathToFileURL } from "node:url";
import { readFile } from "node:fs/promises";
import { faultsOfHtml, faultsOfView, looks } from "./judge.mjs";

const require = createRequire(process.cwd() + "/package.json");
const { chromium } = require("playwright-core");

const most = 12;
let faults = [];
const wrong = (what) => faults.push(what);

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
async function look(file, options) {
  const context = await browser.newContext({ ...options, bypassCSP: true });
  const page = await context.newPage();
  page.on("request", (request) => {
    if (!request.url().startsWith("file:")) wrong(`asks for ${request.url()}`);
  });
  page.on("pageerror", (error) => wrong(`script: ${error.message}`));
  await page.goto(pathToFileURL(file).href);
  (await faultsOfView(page, `${options.colorScheme} ${options.viewport.width}`)).forEach(wrong);
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
  (await faultsOfHtml(await readFile(file, "utf8"), basename(file))).forEach(wrong);
  for (const options of looks) await look(file, options);
  await use(file);
  console.log(`${faults.length === 0 ? "ok   " : "FAIL "} ${basename(file)}`);
  for (const each of faults.slice(0, most)) console.log(`      ${each}`);
  if (faults.length > most) console.log(`      and ${faults.length - most} more`);
}
await browser.close();
