// Forms like those printed on paper: a rule to write on, no boxes. Colours are those of the
// reports.
#include "tracker/desk/desk_style.h"

namespace rangebook {
namespace {

constexpr std::string_view kStyle = R"css(
.bar { display: flex; flex-wrap: wrap; gap: 0 1.4rem; align-items: baseline; margin: 0 0 1.4rem;
  border: 0; font-size: 1rem; }
.bar strong { font-weight: 400; font-style: italic; }
.bar ul { gap: 0 1.2rem; padding: 0; }
.bar [aria-current] { color: var(--ink); border-bottom: .15rem solid var(--mark); }
.told { margin: 1.4rem 0; padding: .5rem 1rem; border-left: .25rem solid var(--mark); }
.told p { margin: 0; }
.told form { margin-top: .6rem; }
.shops { margin: 0; padding: 0; list-style: none; }
.shops > li { padding: .9rem 0; border-top: 1px solid var(--hairline); }
.shops > li:first-child { border-top: 0; padding-top: 0; }
.shops > li:target { box-shadow: -.8rem 0 0 color-mix(in srgb, var(--mark) 16%, transparent); }
.shops h3 { margin: 0; font-size: 1.3rem; font-style: normal; }
.shops p { margin: .15rem 0 0; }
.ways { display: flex; flex-wrap: wrap; gap: .1rem 1.2rem; margin: .3rem 0 0; padding: 0;
  list-style: none; }
.ways a { display: inline-block; padding: .15rem 0; }
form.asked { display: flex; flex-wrap: wrap; gap: .7rem 1.6rem; align-items: start; margin: 0; }
.field:not(.wide) ~ button { margin-top: 1.4rem; }
.field.wide ~ button, fieldset ~ button { margin-top: 0; }
form.asked + form.asked, form.asked + p, p + form.asked { margin-top: 1rem; }
.field { display: flex; flex-direction: column; min-width: 0; flex: 0 1 13rem; }
.field.wide { flex: 1 1 100%; }
.field label { color: var(--quiet); font-variant-caps: all-small-caps; letter-spacing: .08em;
  line-height: 1.3; }
.field input, .field select, .field textarea { width: 100%; min-height: 2.1rem; padding: .2rem .1rem;
  border: 0; border-bottom: 1px solid var(--ink); border-radius: 0; background: transparent;
  color: var(--ink); font: inherit; font-variant-numeric: lining-nums; }
.field select, .field option { background: var(--paper); }
.field textarea { border: 1px solid var(--ink); padding: .4rem .5rem; font-size: .9375rem; }
.field select:focus-visible, .field textarea:focus-visible { outline: .15rem solid var(--mark);
  outline-offset: .15rem; }
.field small { color: var(--quiet); font-size: .875rem; line-height: 1.3; }
fieldset { display: flex; flex-wrap: wrap; gap: .7rem 1.6rem; align-items: start; min-width: 0;
  flex: 1 1 100%; margin: 0 0 .6rem; padding: 0; border: 0; }
legend { float: left; width: 100%; margin: 0 0 .1rem; padding: 0; font-style: italic; }
.field.file { flex: 1 1 17rem; }
.field input[type=file] { border-bottom-style: dashed; padding: .4rem .1rem; }
.field input::file-selector-button { min-height: 2.1rem; margin-right: .8rem; padding: .2rem 1.1rem;
  border: 1px solid var(--mark); background: transparent; color: var(--mark); font: inherit; }
.tick { display: flex; gap: .5rem; align-items: baseline; flex: 1 1 100%; }
.tick input { width: 1.1rem; height: 1.1rem; margin: 0; accent-color: var(--mark); flex: none; }
.tick input:focus-visible, .field input[type=file]:focus-visible, td select:focus-visible {
  outline: .15rem solid var(--mark); outline-offset: .15rem; }
.sending { flex: 1 1 100%; margin: 0; font-style: italic; }
.sending:empty { display: none; }
.lead { font-size: 1.2rem; line-height: 1.4; }
.plain, .examples, .doubts { margin: 0; padding: 0; list-style: none; }
.plain li { padding: .25rem 0; }
.doubts { margin: 0 0 .5rem; }
.doubts li, .examples .doubt { padding-left: .7rem; border-left: .15rem solid var(--mark); }
.read { flex: 1 1 100%; min-width: 0; margin-bottom: 1rem; }
.read p { margin: 0 0 .3rem; }
.read h3 { margin-top: 0; }
tbody .telling { min-width: 15rem; }
td select { max-width: 14rem; min-height: 2rem; border: 0; border-bottom: 1px solid var(--ink);
  background: var(--paper); color: var(--ink); font: inherit; }
dl { margin: 0; }
dt { margin-top: .7rem; }
dd { margin: .1rem 0 0 1rem; color: var(--quiet); font-style: italic; }
form button { min-height: 2.1rem; padding: .2rem 1.1rem; border: 1px solid var(--mark);
  background: transparent; color: var(--mark); font: inherit; cursor: pointer; }
form button:hover { background: var(--mark); color: var(--paper); }
form button kbd { margin-left: .6rem; padding: 0 .35rem; border: 1px solid; font: inherit;
  font-size: .8125rem; line-height: 1.2; }
main > form.asked { padding: 1rem 0; }
.keep { margin: .8rem 0 0; color: var(--quiet); font-size: .9375rem; }
.keep a { margin-left: .8rem; }
.scroll { position: relative; }
.hush { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%);
  white-space: nowrap; }
.facts { display: grid; grid-template-columns: max-content 1fr; gap: .15rem 1rem; margin: .7rem 0 0;
  align-items: baseline;
  font-variant-numeric: lining-nums; }
.facts dt { margin: 0; color: var(--quiet); font-variant-caps: all-small-caps; letter-spacing: .08em; }
.facts dd { margin: 0; min-width: 0; overflow-wrap: anywhere; }
.shops h4 { margin: 0; font-size: 1.15rem; font-weight: 400; }
.plain { margin: 0 0 .6rem; padding: 0; list-style: none; }
.plain li { padding: .2rem 0; }
.code { color: var(--quiet); font-size: .875em; }
.label { color: var(--quiet); font-variant-caps: all-small-caps; letter-spacing: .08em; }
p.ways > a { margin-right: 1.2rem; }
fieldset { flex: 1 1 100%; display: flex; flex-wrap: wrap; gap: .1rem 1.4rem; margin: 0; padding: 0;
  border: 0; min-width: 0; }
legend { padding: 0; color: var(--quiet); font-variant-caps: all-small-caps; letter-spacing: .08em; }
fieldset label { display: inline-flex; gap: .4rem; align-items: baseline; min-height: 1.6rem; }
.facts dt.as-is { font-variant-caps: normal; letter-spacing: 0; overflow-wrap: anywhere; }
q { font-style: italic; }
td small { color: var(--quiet); }
.keys { margin: .8rem 0 0; color: var(--quiet); font-size: .9375rem; }
.last { margin: 2rem 0 0; padding-top: .7rem; border-top: 1px solid var(--hairline); }
mark { background: none; color: var(--mark); text-decoration: underline;
  text-decoration-thickness: .12em; text-underline-offset: .2em; }
.two { display: grid; gap: 1rem 2.4rem; grid-template-columns: repeat(auto-fit, minmax(min(100%, 17rem), 1fr)); }
.two { margin: 1.4rem 0 0; }
.two > div { border-top: 1px solid var(--ink); padding-top: .5rem; }
.two h3 { margin: 0 0 .3rem; }
.two .says { font-size: 1.3rem; line-height: 1.35; margin: 0; }
.answers { display: flex; flex-wrap: wrap; gap: .6rem; margin: 1.2rem 0 0; }
.answers form.asked, .answers form.asked + form.asked { margin: 0; gap: .6rem; }
pre { overflow-x: auto; margin: 0; font-size: .8125rem; line-height: 1.45; white-space: pre-wrap; }
@media (max-width: 34rem) {
  form.asked { column-gap: .9rem; }
  .field { flex: 1 1 9.5rem; }
  .field select { font-size: .9375rem; }
}
@media print { .bar, form, .keep { display: none; } }
)css";

}  // namespace

std::string_view desk_style() { return kStyle; }

}  // namespace rangebook
