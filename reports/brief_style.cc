// The style sheet of the brief page, in the order of the page.
#include "reports/brief_style.h"

namespace rangebook {
namespace {

constexpr std::string_view kStyle = R"css(
:root {
  color-scheme: light dark;
  --paper: #fcfbf7;
  --ink: #1f1c18;
  --quiet: #5d564b;
  --hairline: #c9c2b4;
  --mark: #7a2338;
  --serif: "Iowan Old Style", "Palatino Linotype", "URW Palladio L", P052, Palatino,
    "Book Antiqua", Georgia, serif;
}
@media (prefers-color-scheme: dark) {
  :root {
    --paper: #181714;
    --ink: #ece7dd;
    --quiet: #b4ab9c;
    --hairline: #4b463d;
    --mark: #e9a3ad;
  }
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body {
  margin: 0 auto; padding: 2.5rem 1.25rem 4rem; max-width: 66rem;
  background: var(--paper); color: var(--ink);
  font: 1.0625rem/1.55 var(--serif); font-variant-numeric: oldstyle-nums;
  overflow-wrap: break-word; hyphens: manual;
}
a { color: var(--mark); text-underline-offset: .15em; text-decoration-thickness: .06em; }
a:focus-visible, summary:focus-visible, button:focus-visible, input:focus-visible, .scroll:focus-visible {
  outline: .15rem solid var(--mark); outline-offset: .15rem;
}
.skip { position: absolute; left: -100vw; top: 0; background: var(--paper); padding: .5rem 1rem; }
.skip:focus { left: 0; }

header.top { border-top: .2rem solid var(--ink); padding-top: .8rem; }
.kind { margin: 0; font-variant-caps: all-small-caps; letter-spacing: .12em; color: var(--quiet); }
h1 { margin: .3rem 0 0; font-size: clamp(2rem, 6vw, 3.1rem); font-weight: 400; line-height: 1.08;
  letter-spacing: -.01em; text-wrap: balance; }
.against { margin: .35rem 0 0; font-size: 1.35rem; font-style: italic; }
.dates { margin: .2rem 0 0; color: var(--quiet); }
.invented { display: inline-block; margin: .9rem 0 0; padding: .1rem .7rem;
  border: 1px solid var(--mark); color: var(--mark); font-style: italic; }
nav { margin: 1.6rem 0 0; border-top: 1px solid var(--hairline);
  border-bottom: 1px solid var(--hairline); }
nav ul { display: flex; flex-wrap: wrap; gap: 0 1.4rem; margin: 0; padding: .3rem 0;
  list-style: none; }
nav a { display: inline-block; padding: .2rem 0; text-decoration: none; }
nav a:hover { text-decoration: underline; }

section { margin-top: 2.6rem; }
h2 { margin: 0 0 .8rem; font-size: 1.3rem; font-weight: 400; font-style: italic; line-height: 1.25;
  text-wrap: balance; }
h3 { margin: 1.9rem 0 .2rem; font-size: 1.0625rem; font-weight: 400; font-style: italic; }
section p { margin: 0 0 .6rem; max-width: 40rem; }
.headlines { margin: 0; padding: 0; list-style: none; }
.headlines li { padding: .75rem 0; border-top: 1px solid var(--hairline); }
.headlines li:first-child { border-top: 0; padding-top: 0; }
.headlines .theme { display: block; margin: 0; font-variant-caps: all-small-caps;
  letter-spacing: .1em; color: var(--mark); line-height: 1.3; }
.headlines p { margin: 0; }
.headlines .lead { font-size: 1.3rem; line-height: 1.38; }
.headlines .dates { margin-top: .15rem; font-size: .875rem; }

sup { font-size: .68em; line-height: 0; white-space: nowrap; font-variant-numeric: lining-nums; }
sup a { padding: .3em .15em; text-decoration-thickness: 1px; text-underline-offset: .2em; }
:target { background: color-mix(in srgb, var(--mark) 16%, transparent); }

/* A shade at an edge tells that the table goes on beyond it. */
.scroll { margin: 1.2rem 0 0; overflow-x: auto;
  background:
    linear-gradient(to right, var(--paper) 30%, transparent) left / 2.5rem 100% no-repeat local,
    linear-gradient(to left, var(--paper) 30%, transparent) right / 2.5rem 100% no-repeat local,
    linear-gradient(to right, var(--hairline), transparent) left / .7rem 100% no-repeat scroll,
    linear-gradient(to left, var(--hairline), transparent) right / .7rem 100% no-repeat scroll; }
table { width: 100%; border-collapse: collapse; border-top: 1px solid var(--ink);
  border-bottom: 1px solid var(--ink); font-size: .9375rem; line-height: 1.4;
  font-variant-numeric: lining-nums tabular-nums; }
caption { padding: 0 0 .4rem; text-align: left; font-style: italic; color: var(--quiet); }
th, td { max-width: 20rem; padding: .34rem 1.1rem .34rem 0; text-align: left; vertical-align: baseline;
  font-weight: 400; }
tr > :last-child { padding-right: 0; }
thead th { font-variant-caps: all-small-caps; letter-spacing: .06em; color: var(--quiet);
  border-bottom: 1px solid var(--ink); vertical-align: bottom; line-height: 1.2; }
tbody tr + tr > * { border-top: 1px solid var(--hairline); }
tbody th, tbody td { min-width: 6.5rem; }
tbody th { min-width: 9rem; }
.figures, .n { text-align: right; }
.n { white-space: nowrap; }
tbody .figures, tbody .n { min-width: 5.5rem; }
.whole { white-space: nowrap; }
.code { color: var(--quiet); font-size: .92em; }
details { margin-top: .6rem; }
summary { padding: .25rem 0; color: var(--mark); cursor: pointer; font-style: italic; }
details .scroll { margin-top: .4rem; }

.tools { display: flex; flex-wrap: wrap; gap: .2rem 1rem; align-items: baseline;
  margin-top: 1.2rem; color: var(--quiet); font-size: .9375rem; }
.tools input { width: 14rem; max-width: 60vw; padding: .2rem .4rem; border: 1px solid var(--quiet);
  background: var(--paper); color: var(--ink); font: inherit; }
.tools + .scroll { margin-top: .5rem; }
thead button { margin: 0; padding: 0; border: 0; background: none; color: inherit; font: inherit;
  font-variant-caps: inherit; letter-spacing: inherit; text-align: inherit; cursor: pointer; }
thead button:hover { text-decoration: underline; }
[aria-sort] button { color: var(--mark); }
[aria-sort="ascending"] button::after { content: " \2191"; }
[aria-sort="descending"] button::after { content: " \2193"; }

/* The shop at a glance: a card. */
#glance + .matter { padding: .3rem 1.2rem .9rem; border: 1px solid var(--ink); }
#glance + .matter table { border: 0; }
#glance + .matter caption { display: none; }

.pictures { display: grid; gap: 2rem 2.6rem; margin: 1.4rem 0 0;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, 20rem), 1fr)); align-items: start; }
figure { margin: 0; min-width: 0; max-width: 27rem; border-top: 1px solid var(--ink);
  padding-top: .5rem; }
figcaption { line-height: 1.35; font-variant-numeric: lining-nums; }
.reading { display: block; margin-top: .25rem; color: var(--quiet); font-size: .875rem; }
figure svg { display: block; width: 100%; height: auto; margin-top: .7rem; }
svg text { font: 12px var(--serif); font-variant-numeric: lining-nums tabular-nums;
  fill: var(--ink); unicode-bidi: isolate; }
svg .quiet { fill: var(--quiet); font-style: italic; }
svg .reversed { fill: var(--paper); }
svg .axis { stroke: var(--ink); stroke-width: 1; }
svg .grid { stroke: var(--hairline); stroke-width: 1; }
svg .now { fill: var(--mark); }
svg .then { fill: none; stroke: var(--quiet); stroke-width: 1.2; stroke-dasharray: 4 2; }
svg .now-rail { stroke: var(--mark); stroke-width: 1.6; }
svg .then-rail { stroke: var(--quiet); stroke-width: 1.2; stroke-dasharray: 4 2; }
svg .now-rung { stroke: var(--paper); stroke-width: 2; }
svg .then-rung { stroke: var(--ink); stroke-width: 2; }
svg .carried { fill: var(--hairline); }
svg .back { fill: var(--hairline); stroke: var(--mark); stroke-width: 1.6; }
svg .unlooked { fill: none; stroke: var(--quiet); stroke-width: 1.2; stroke-dasharray: 1 3; }
svg .slope { stroke: var(--mark); stroke-width: 1.5; }
svg .slope-other { stroke: var(--hairline); stroke-width: 1; }
svg .dot-then { fill: none; stroke: var(--quiet); stroke-width: 1.4; stroke-dasharray: 2 2; }
svg .dot-now { stroke: var(--ink); stroke-width: .8; }

.matter > h3:first-child { margin-top: 0; }
.sources { margin: 0; padding: 0 0 0 2.6rem; columns: 24rem; column-gap: 2.4rem;
  font-size: .875rem; line-height: 1.5; font-variant-numeric: lining-nums; }
.sources li { break-inside: avoid; }
.sources .back { padding: 0 .25em; text-decoration-thickness: 1px; }
footer { margin-top: 3rem; padding-top: .8rem; border-top: .2rem solid var(--ink);
  font-size: .9375rem; }
footer p { margin: 0 0 .3rem; max-width: 44rem; }

@media (min-width: 60rem) {
  section { display: grid; grid-template-columns: 10.5rem minmax(0, 1fr); gap: 0 2rem;
    border-top: 1px solid var(--hairline); padding-top: 1.4rem; }
  main > section:first-child { border-top: 0; margin-top: 1rem; }
  section > h2 { grid-column: 1; margin: 0; }
  section > .matter { grid-column: 2; min-width: 0; }
  .matter > .scroll:first-child { margin-top: 0; }
  .headlines li { display: grid; grid-template-columns: 7rem minmax(0, 1fr); gap: 0 1rem; }
  .headlines .theme { padding-top: .3rem; }
  .headlines li > div { grid-column: 2; }
}
@media (max-width: 30rem) {
  body { padding: 1.5rem 1rem 3rem; }
  .sources { padding-left: 2.1rem; }
  table { font-size: .875rem; }
  th, td { padding-right: .6rem; }
  th, td { max-width: 10rem; }
  tbody th { min-width: 6rem; }
  tbody td, tbody .figures, tbody .n { min-width: 3.6rem; }
}
@media print {
  @page { size: A4; margin: 18mm 17mm 20mm; }
  html { font-size: 10pt; }
  :root { color-scheme: light; --paper: #fff; --ink: #000; --quiet: #444; --hairline: #aaa;
    --mark: #5c1528; }
  body { max-width: none; padding: 0; font-size: 1rem; line-height: 1.4; }
  .headlines li { display: grid; grid-template-columns: 24mm minmax(0, 1fr); gap: 0 3mm;
    padding: 1.6mm 0; }
  .skip, nav, .tools { display: none; }
  h1 { font-size: 26pt; }
  .headlines .lead { font-size: 12pt; }
  .headlines .dates { font-size: 8pt; }
  figure summary { display: none; }
  .pictures { grid-template-columns: 1fr 1fr; gap: 6mm 8mm; }
  figure svg { break-inside: avoid; }
  section { display: block; margin-top: 7mm; border-top: 0; padding-top: 0; }
  section > h2 { margin-bottom: 2mm; }
  h2, h3, caption, summary { break-after: avoid; }
  tr, .headlines li, figure { break-inside: avoid; }
  thead { display: table-header-group; break-after: avoid; }
  tbody tr:first-child, tbody tr:last-child { break-before: avoid; }
  table { font-size: 8.5pt; }
  th, td { padding: .8mm 3mm .8mm 0; }
  tbody th, tbody td, tbody .figures, tbody .n { min-width: 0; }
  .scroll { overflow: visible; background: none; }
  details::details-content { content-visibility: visible; display: block; height: auto; }
  summary { list-style: none; color: var(--quiet); }
  a { color: inherit; text-decoration: none; }
  sup a, .headlines .theme { color: var(--mark); }
  .sources { columns: 2; font-size: 8pt; }
  .sources .back { display: none; }
}
)css";

}  // namespace

std::string_view brief_style() { return kStyle; }

}  // namespace rangebook
