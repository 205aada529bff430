// A stylist's weeks at the desk, from an empty book, with the invented shops of the demo: captures by
// upload, a mapping put right, links settled, the brief read, an order compared, picks kept, a later
// capture, the follow-up, a workbook exported and opened again. Then the main path without scripts.
// Every page on the way is judged as the reports are. Prints a line a step.
//   node week.mjs PROGRAM FEEDS FOLDER [PICTURES]
import { createRequire } from "node:module";
import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createInterface } from "node:readline";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { faultsOfHtml, faultsOfView, looks } from "./judge.mjs";

const require = createRequire(process.cwd() + "/package.json");
const { chromium } = require("playwright-core");
const XLSX = require("xlsx");

const [program, feeds, folder, pictures] = process.argv.slice(2);
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });

// ---- the desk

async function openDesk(book) {
  const desk = spawn(program, ["--book", join(folder, book), "desk", "--feeds", feeds], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  for await (const line of createInterface({ input: desk.stdout })) {
    const found = line.match(/http:\/\/\S+/);
    if (found) return { desk, entrance: found[0] };
  }
  throw new Error("the desk said no address");
}

async function closeDesk({ desk }) {
  if (desk.exitCode !== null) return;
  desk.kill("SIGTERM");
  await once(desk, "exit");
}

// ---- steps

let failed = 0;
async function step(words, work) {
  try {
    await work();
    console.log(`ok    ${words}`);
  } catch (error) {
    failed += 1;
    console.log(`FAIL  ${words}`);
    console.log(`      ${String(error.message).split("\n").slice(0, 6).join("\n      ")}`);
  }
}

function must(is, words) {
  if (!is) throw new Error(words);
}

async function mustShow(page, words) {
  const text = await page.locator("main").innerText();
  must(words instanceof RegExp ? words.test(text) : text.includes(words),
    `${page.url()} does not say ${words}; it says: ${text.slice(0, 400)}`);
}

// ---- judging: the HTML as it was sent, axe and the width as it is shown

const judged = new Map();
let browser;

async function judge(page, as) {
  const url = new URL(page.url());
  const name = as ?? (url.pathname === "/" ? "start" : url.pathname.slice(1).replaceAll("/", "-"));
  if (judged.has(name)) return;
  const sent = await page.context().request.get(page.url());
  const faults = await faultsOfHtml(await sent.text(), name);
  judged.set(name, faults);
  const cookies = await page.context().cookies();
  for (const options of looks) {
    const where = `${options.colorScheme}-${options.viewport.width}`;
    const context = await browser.newContext({ ...options, bypassCSP: true });
    await context.addCookies(cookies);
    const copy = await context.newPage();
    copy.on("pageerror", (error) => faults.push(`script: ${error.message}`));
    await copy.goto(page.url());
    if (pictures) {
      mkdirSync(pictures, { recursive: true });
      await copy.screenshot({ path: join(pictures, `${name}-${where}.png`) });
    }
    faults.push(...(await faultsOfView(copy, where)));
    await context.close();
  }
}

// ---- what she does

const shops = [
  { slug: "skerrowby", name: "Skerrowby", country: "GB", currency: "GBP" },
  { slug: "tidewell-marr", name: "Tidewell Marr", country: "IE", currency: "EUR" },
  { slug: "ostrel-house", name: "Ostrel House", country: "GB", currency: "GBP" },
  { slug: "pellorie", name: "Pellorie", country: "IE", currency: "EUR" },
];
const feed = (name) => join(feeds, name);
const pressed = (page, name) => page.locator("main").getByRole("button", { name, exact: true }).first().click();
const followed = (page, name) => page.locator("main").getByRole("link", { name, exact: true }).first().click();

/// Hands files over as a capture; the page is then the one that shows what was understood.
async function upload(page, base, shop, capture) {
  await page.goto(base + "/add");
  await judge(page);
  if (capture.files) await page.setInputFiles('input[name="documents"]', capture.files);
  if (capture.table) await page.getByLabel("Or paste a table").fill(capture.table);
  if (capture.policy) await page.getByLabel("Its words on delivery and returns").fill(capture.policy);
  if (capture.first) {
    await page.getByLabel("Its name").fill(shop.name);
    await page.locator('[name="country"]').fill(shop.country);
    await page.locator('[name="currency"]').fill(shop.currency);
    await page.locator('[name="sizes"]').selectOption("uk");
  } else {
    await page.locator('select[name="shop"]').selectOption(shop.slug);
  }
  await page.locator('[name="season"]').fill(capture.season);
  await page.locator('[name="on"]').fill(capture.on);
  if (capture.categories) {
    await page.locator('[name="part"]').selectOption("some");
    await page.locator('[name="categories"]').fill(capture.categories);
  }
  await Promise.all([
    page.waitForURL(/\/held/, { timeout: 120_000 }),
    pressed(page, "See what is understood"),
  ]);
}

async function keep(page) {
  await judge(page);
  await Promise.all([page.waitForURL(/\/kept/, { timeout: 120_000 }), pressed(page, "Keep it in the book")]);
  await judge(page);
}

const policyText = (name) => {
  const text = readFileSync(feed(name), "utf8");
  return name.endsWith(".txt") ? text : text.replace(/<(head|style|script)[\s\S]*?<\/\1>/g, "")
    .replace(/<\/(p|h\d|li|tr|div)>/g, "\n").replace(/<[^>]+>/g, " ").replaceAll("&amp;", "&").trim();
};

const earlier = [
  { shop: 0, season: "AW25", on: "2025-09-08", files: ["skerrowby/aw25.csv"], policy: "terms/skerrowby-aw25.html" },
  { shop: 1, season: "AW25", on: "2025-09-08", files: ["tidewell-marr/aw25.csv"], policy: "terms/tidewell-marr.html" },
  { shop: 2, season: "AW25", on: "2025-09-09", files: ["ostrel-house/aw25.csv", "ostrel-house/aw25-pages.zip"], policy: "terms/ostrel-house-aw25.html" },
  { shop: 3, season: "AW25", on: "2025-09-08", files: ["pellorie/aw25.json"], policy: "terms/pellorie.txt" },
];
const later = [
  { shop: 0, season: "AW26", on: "2026-09-07", files: ["skerrowby/aw26.csv"], policy: "terms/skerrowby-aw26.html" },
  { shop: 3, season: "AW26", on: "2026-09-07", files: ["pellorie/aw26.csv"], categories: "dresses, knitwear, tops" },
];
const asCapture = (each, first) => ({
  ...each, first, files: each.files.map(feed), policy: each.policy && policyText(each.policy),
});

/// A shop whose lines come back so changed that only she can say which is which: the invented rows of
/// a golden case.
const loft = { slug: "loft", name: "Loft", country: "GB", currency: "GBP" };
const seasons = join(dirname(fileURLToPath(import.meta.url)), "../cases/two-lines-that-may-be-one-wait-for-a-yes/in");
async function twoSeasons(page, base) {
  for (const [season, on, first] of [["AW24", "2024-09-02", true], ["AW25", "2025-09-01", false]]) {
    await upload(page, base, loft, { first, season, on, files: [join(seasons, `${season.toLowerCase()}.csv`)] });
    await keep(page);
  }
}

async function settleAll(page, base, slug) {
  await page.goto(`${base}/links?shop=${slug}`);
  const asked = new Set();
  for (let i = 0; i < 200; i += 1) {
    const pair = page.locator('input[name="pair"]').first();
    const yes = page.getByRole("button", { name: /^Yes/ });
    if ((await yes.count()) === 0) break;
    await judge(page);
    const reference = await pair.getAttribute("value");
    must(!asked.has(reference), `asked twice: ${reference}`);
    asked.add(reference);
    await Promise.all([page.waitForNavigation(), yes.first().click()]);
  }
  return asked.size;
}

async function keepPick(page, base, slug, words, theme) {
  await page.goto(`${base}/lines?shop=${slug}&words=${encodeURIComponent(words)}`);
  await judge(page);
  await page.locator("main td a").first().click();
  await judge(page);
  await page.locator('[name="theme"]').fill(theme);
  await page.locator('[name="review"]').fill("2026-10-01");
  await page.locator('[name="on"]').fill("2025-09-20");
  await page.locator('[name="note"]').fill("For the show <b>about</b> coats");
  await Promise.all([page.waitForURL(/\/picks(#|\?|$)/), pressed(page, "Keep it")]);
}

/// From the first page on: every path that a link leads to, three addresses of each at most.
async function followLinks(page, base) {
  const visits = new Map();
  const known = new Set(["/"]);
  const next = ["/"];
  while (next.length > 0) {
    const url = new URL(next.shift(), base);
    const times = visits.get(url.pathname) ?? 0;
    if (times === 3) continue;
    visits.set(url.pathname, times + 1);
    const answer = await page.goto(url.href);
    must(answer.status() === 200, `${url.href} answers ${answer.status()}`);
    await judge(page, url.pathname === "/" ? "start-full" : undefined);
    for (const href of await page.locator("a[href]").evaluateAll((links) => links.map((each) => each.href))) {
      const to = new URL(href);
      to.hash = "";
      if (to.origin !== base || to.searchParams.has("format") || known.has(to.href)) continue;
      known.add(to.href);
      next.push(to.href);
    }
  }
  must(visits.size >= 20, `only ${visits.size} pages are linked: ${[...visits.keys()].join(" ")}`);
}

// ---- the week

browser = await chromium.launch({
  executablePath: process.env.CHROMIUM || "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu"],
});

async function week() {
  const opened = await openDesk("week.rangebook");
  const base = new URL(opened.entrance).origin;
  const context = await browser.newContext({ acceptDownloads: true });
  const page = await context.newPage();
  page.on("console", (message) => {
    if (message.type() === "error" && !message.text().includes("status of 4")) {
      failed += 1;
      console.log(`FAIL  ${page.url()}: ${message.text()}`);
    }
  });

  await step("an empty book says how it begins", async () => {
    await page.goto(opened.entrance);
    await judge(page);
    must((await page.locator('main a[href="/add"]').count()) > 0, "there is no way to the first capture");
  });
  await step("a form sent empty says what to do and keeps its words", async () => {
    await page.goto(base + "/add");
    await page.locator('[name="season"]').fill("AW25");
    await pressed(page, "See what is understood");
    await page.getByText("Choose files or a folder, or paste").waitFor({ timeout: 10_000 });
    must((await page.locator('[name="season"]').inputValue()) === "AW25", "the season is gone");
  });
  for (const each of earlier) {
    const shop = shops[each.shop];
    await step(`${shop.name}: the first capture is handed over, looked at, kept`, async () => {
      await upload(page, base, shop, asCapture(each, true));
      await mustShow(page, /line/);
      await keep(page);
      await mustShow(page, /lines?/);
    });
  }
  await step("a column that was misread is put right, and remembered", async () => {
    const rows = "Ref,Stuck,Warengruppe,Colour,Size,Ticket,Currency\n" +
      "MR1,Invented wrap dress,dresses,navy,8-18,59.00,GBP\nMR2,Invented polo,tops,ecru,8-14,25.00,GBP\n";
    await page.goto(base + "/add");
    await upload(page, base, { name: "Marlow Invented", country: "GB", currency: "GBP" },
      { first: true, season: "AW26", on: "2026-09-02", table: rows });
    const choose = async (column, use) =>
      page.getByLabel(`What ${column} means`, { exact: true }).selectOption(use);
    await choose("Ref", "line_code");
    await choose("Stuck", "name");
    await choose("Ticket", "price");
    await Promise.all([page.waitForNavigation(), pressed(page, "Read it like this")]);
    await mustShow(page, "59.00");
    await keep(page);
    await page.goto(base + "/lines?shop=marlow-invented");
    await mustShow(page, "Invented wrap dress");
    await mustShow(page, "£59.00");
  });
  await step("a capture is taken back and waits again", async () => {
    await upload(page, base, shops[0], { season: "SS26", on: "2026-03-01", files: [feed("skerrowby/aw25.csv")] });
    await keep(page);
    await pressed(page, "Take it back");
    await page.goto(base + "/add");
    await mustShow(page, "Not kept yet");
    await page.locator('main a[href^="/held"]').first().click();
    await pressed(page, "Do not keep it");
    await page.goto(base + "/add");
    must(!(await page.locator("main").innerText()).includes("Not kept yet"), "it is still held");
  });
  await step("three picks are kept", async () => {
    for (const words of ["dress", "coat", "polo"]) await keepPick(page, base, "skerrowby", words, "Autumn show");
    await judge(page);
    must((await page.locator('[id^="pick-"]').count()) === 3, "there are not three picks");
    must((await page.locator("main b").count()) === 0, "a note became markup");
  });
  for (const each of later) {
    const shop = shops[each.shop];
    await step(`${shop.name}: a later capture`, async () => {
      await upload(page, base, shop, asCapture(each, false));
      await keep(page);
    });
  }
  await step("keys answer a pair and take it back, but not while they are off", async () => {
    await twoSeasons(page, base);
    await page.goto(`${base}/links?shop=${loft.slug}`);
    const asked = () => page.locator('input[name="pair"]').first().getAttribute("value");
    const press = (key) => Promise.all([page.waitForNavigation(), page.keyboard.press(key)]);
    const first = await asked();
    await press("y");
    await page.goto(`${base}/links/said?shop=${loft.slug}`);
    await mustShow(page, "one line");
    await page.goto(`${base}/links?shop=${loft.slug}`);
    await press("u");
    await page.goto(`${base}/links?shop=${loft.slug}`);
    must((await asked()) === first, "the pair is not asked again after it was taken back");
    await page.getByLabel("Answer by keys").uncheck();
    await page.keyboard.press("n");
    await page.reload();
    must((await asked()) === first, "a key answered while keys are off");
    await page.getByLabel("Answer by keys").check();
    await press("l");
    must(page.url().includes("later="), "the pair was not put off");
  });
  await step("links that wait are settled, each asked once", async () => {
    must((await settleAll(page, base, loft.slug)) > 0, "no pair waits");
    await page.goto(`${base}/links/said?shop=${loft.slug}`);
    await mustShow(page, "Maya");
  });
  await step("the brief says what changed", async () => {
    await page.goto(base + "/brief?shop=skerrowby");
    await judge(page);
    await mustShow(page, /26/);
    await mustShow(page, "Say it right");
  });
  for (const path of ["/moves?shop=skerrowby", "/prices?shop=skerrowby", "/sizes?shop=skerrowby",
    "/reach?size=22&system=uk&category=dresses", "/links/said?shop=skerrowby", "/picks/follow", "/picks/notes",
    "/picks/words", "/due", "/terms?shop=skerrowby", "/"]) {
    await step(`${path} answers`, async () => {
      const answer = await page.goto(base + path);
      must(answer.status() === 200, `${answer.status()}`);
      await judge(page);
    });
  }
  await step("every link of the desk leads to a page that answers", async () => {
    await followLinks(page, base);
  });
  await step("the follow-up tells what became of the picks", async () => {
    await page.goto(base + "/picks");
    await mustShow(page, /Now/);
    await mustShow(page, /£\d/);
  });
  await step("an order is compared across all four shops", async () => {
    for (const currency of ["GBP", "EUR"]) {
      await page.goto(`${base}/order`);
      await page.locator('[name="currency"]').fill(currency);
      await page.locator('[name="keep"]').fill("69 45.50");
      await page.locator('[name="back"]').fill("39");
      await Promise.all([page.waitForNavigation(), pressed(page, "Work it out")]);
      for (const shop of shops) await mustShow(page, shop.name);
    }
    await judge(page);
  });
  await step("the brief is exported as a workbook, and opens again", async () => {
    await page.goto(base + "/brief?shop=skerrowby");
    const [download] = await Promise.all([
      page.waitForEvent("download"), page.getByRole("link", { name: /workbook/i }).first().click()]);
    const file = join(folder, "brief.xlsx");
    await download.saveAs(file);
    const book = XLSX.readFile(file);
    must(book.SheetNames.length > 1, "it has one sheet only");
    const cells = book.SheetNames.flatMap((name) => Object.entries(book.Sheets[name]))
      .filter(([place]) => !place.startsWith("!")).map(([, cell]) => cell);
    must(cells.some((cell) => cell.t === "n"), "no figure is a number");
    must(cells.some((cell) => String(cell.v).includes("Skerrowby")), "the shop is not named");
  });
  await step("the back button leads back, and an address can be kept", async () => {
    await page.goto(base + "/moves?shop=skerrowby");
    await page.goto(base + "/prices?shop=skerrowby");
    await page.goBack();
    must(page.url() === base + "/moves?shop=skerrowby", page.url());
  });
  await context.close();
  await closeDesk(opened);
}

async function withoutScripts() {
  const opened = await openDesk("plain.rangebook");
  const base = new URL(opened.entrance).origin;
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await step("without scripts: two captures are kept", async () => {
    await page.goto(opened.entrance);
    for (const [each, first] of [[earlier[0], true], [later[0], false]]) {
      await upload(page, base, shops[0], asCapture(each, first));
      await keep(page);
    }
  });
  await step("without scripts: links are settled", async () => {
    await twoSeasons(page, base);
    must((await settleAll(page, base, loft.slug)) > 0, "no pair waits");
  });
  await step("without scripts: the brief, a filter, a pick", async () => {
    await page.goto(base + "/brief?shop=skerrowby");
    await mustShow(page, "Say it right");
    await page.goto(base + "/moves?shop=skerrowby");
    await page.locator('[name="words"]').fill("dress");
    await Promise.all([page.waitForNavigation(), pressed(page, "Show")]);
    await mustShow(page, /dress/i);
    await keepPick(page, base, "skerrowby", "dress", "Plain");
    await mustShow(page, "Plain");
  });
  await context.close();
  await closeDesk(opened);
}

await week();
await withoutScripts();
await browser.close();
for (const [name, faults] of judged) {
  console.log(`${faults.length === 0 ? "ok   " : "FAIL "} desk page: ${name}`);
  for (const each of faults.slice(0, 12)) console.log(`      ${each}`);
}
writeFileSync(join(folder, "done"), "");
process.exit(failed === 0 ? 0 : 1);
