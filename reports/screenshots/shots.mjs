// node shots.mjs PAGES OUT: pictures of the demo's pages for the README, 8 bits a pixel at most.
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";

const require = createRequire(process.cwd() + "/package.json");
const { chromium } = require("playwright-core");
const [pages, out] = process.argv.slice(2);

const shots = [
  { name: "brief", file: "skerrowby.html", width: 1280, height: 1000, scheme: "light" },
  { name: "brief-dark-390", file: "skerrowby.html", width: 390, height: 844, scheme: "dark", at: "#prices" },
  { name: "pictures", file: "ostrel-house.html", width: 1280, height: 1000, scheme: "light", at: "#prices" },
];

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM || "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu"],
});
for (const shot of shots) {
  const page = await browser.newPage({
    colorScheme: shot.scheme,
    viewport: { width: shot.width, height: shot.height },
  });
  await page.goto(pathToFileURL(`${pages}/${shot.file}`).href);
  if (shot.at) await page.evaluate((at) => document.querySelector(at).scrollIntoView(), shot.at);
  await page.screenshot({ path: `${out}/${shot.name}.png` });
  await page.close();
}
await browser.close();
