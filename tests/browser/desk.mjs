// A first capture by way of the desk, as a person makes it: from the empty book, with a slip, a
// column put right, kept. Every page on the way: valid HTML, no violation by axe-core, no wider
// than the window. Prints a line a page, and below it what is wrong. Rows are invented.
//   node desk.mjs ADDRESS FILE scripts|plain
import { createRequire } from "node:module";
import { readFile } from "node:fs/promises";

const require = createRequire(process.cwd() + "/package.json");
const { chromium } = require("playwright-core");
const { HtmlValidate } = require("html-validate");
const axe = await readFile(require.resolve("axe-core/axe.min.js"), "utf8");
const [address, file, way] = process.argv.slice(2);
const validator = new HtmlValidate({
  extends: ["html-validate:standard"],
  rules: { "no-trailing-whitespace": "off", "long-title": "off", "require-sri": "off", "void-style": "off" },
});

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM || "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu"],
});
const visitor = await browser.newContext({ javaScriptEnabled: way === "scripts" });
const page = await visitor.newPage();
await page.goto(address);
const session = await visitor.storageState();

const looks = [
  { colorScheme: "light", viewport: { width: 1280, height: 900 } },
  { colorScheme: "dark", viewport: { width: 390, height: 844 } },
];

async function judged(url) {
  const faults = [];
  for (const options of looks) {
    const context = await browser.newContext({ ...options, storageState: session, bypassCSP: true });
    const seen = await context.newPage();
    const html = await (await seen.goto(url)).text();
    const wide = await seen.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    if (wide > 0) faults.push(`${wide} px wider than the window of ${options.viewport.width}`);
    await seen.evaluate(axe);
    const { violations } = await seen.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
    for (const each of violations) faults.push(`axe ${each.id}: ${each.help}: ${each.nodes[0].target}`);
    if (options === looks[0]) {
      const { results } = await validator.validateString(html);
      for (const result of results) for (const each of result.messages) faults.push(`${each.ruleId}: ${each.message}`);
    }
    await context.close();
  }
  return faults;
}

/// The page at hand says this, and is as it should be.
async function here(name, words) {
  const faults = await judged(page.url());
  const text = await page.textContent("main");
  if (!text.includes(words)) faults.push(`does not say "${words}"`);
  console.log(`${faults.length === 0 ? "ok   " : "FAIL "} desk, ${way}: ${name}`);
  for (const each of faults) console.log(`      ${each}`);
}

async function press(words) {
  await page.getByRole("button", { name: words }).click();
}

await here("an empty book", "The book is empty");
await page.getByRole("link", { name: "Add the first capture" }).click();
await page.waitForURL(/\/add$/);
await here("handing over", "Files");
await page.setInputFiles("#documents", file);
await page.fill("#season", "AW26");
await press("See what is understood");
await page.waitForURL(/\/held\?/);
await here("a shop that was not said", "Choose the shop");
await page.fill("#name", "Mill & Daughters");
await page.fill("#country", "GB");
await page.selectOption("#sizes", "uk");
await press("Look again");
await page.waitForSelector("#comes-to");
await page.selectOption("[aria-label='What Wert means']", "price");
await press("Read it like this");
await page.waitForSelector("text=is read as 49.00 GBP");
await here("what was understood", "2 lines, 12 variants");
await press("Keep it in the book");
await page.waitForURL(/\/kept\?/);
await here("kept", "2 lines in AW26");
await page.goto(new URL("/", address).href);
await here("the shops", "Mill & Daughters");
await browser.close();
