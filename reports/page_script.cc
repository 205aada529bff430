// Plain, and without a way to write markup: text is set as text only.
#include "reports/page_script.h"

namespace rangebook {
namespace {

constexpr std::string_view kScript = R"js(
"use strict";
for (const list of document.querySelectorAll(".list")) {
  const table = list.querySelector("table");
  const body = table.tBodies[0];
  let folded = list.querySelector("details");
  const total = Number(list.dataset.rows);
  const unfold = () => {
    if (!folded) return;
    for (const row of [...folded.querySelectorAll("tbody tr")]) body.append(row);
    folded.remove();
    folded = null;
  };
  const status = document.createElement("span");
  status.setAttribute("role", "status");
  const show = () => {
    unfold();
    const words = input.value.toLowerCase().split(/\s+/);
    let shown = 0;
    for (const row of body.rows) {
      const text = row.textContent.toLowerCase();
      row.hidden = !words.every((word) => text.includes(word));
      if (!row.hidden) ++shown;
    }
    table.caption.textContent = list.dataset.caption;
    status.textContent = shown + " of " + total + " shown";
  };
  const label = document.createElement("label");
  const input = document.createElement("input");
  input.type = "search";
  input.autocomplete = "off";
  input.addEventListener("input", show);
  label.append("Find in this list ", input);
  const tools = document.createElement("div");
  tools.className = "tools";
  tools.append(label, status);
  list.prepend(tools);
  const words = new Intl.Collator("en", { numeric: true });
  const key = (row, place, isNumber) => {
    const cell = row.cells[place];
    if (cell.dataset.v) return Number(cell.dataset.v);
    const text = [...cell.childNodes].filter((node) => node.nodeName !== "SUP")
      .map((node) => node.textContent).join("").trim();
    if (!isNumber) return text;
    const number = Number(text.replace(/[^0-9.-]/g, "") || NaN);
    return Number.isNaN(number) ? -Infinity : number;
  };
  [...table.tHead.rows[0].cells].forEach((head, place) => {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = head.textContent;
    head.replaceChildren(button);
    button.addEventListener("click", () => {
      show();
      const down = head.getAttribute("aria-sort") === "ascending";
      for (const other of table.tHead.rows[0].cells) other.removeAttribute("aria-sort");
      head.setAttribute("aria-sort", down ? "descending" : "ascending");
      const isNumber = head.className === "figures";
      const keyed = [...body.rows].map((row) => [key(row, place, isNumber), row]);
      keyed.sort((a, b) => (typeof a[0] === "number" && typeof b[0] === "number"
        ? a[0] - b[0] || 0 : words.compare(a[0], b[0])) * (down ? -1 : 1));
      for (const [, row] of keyed) body.append(row);
    });
  });
}
)js";

constexpr std::string_view kHash = "KKhvwRw+g+NnMkc1oZ6zcooCzgzgGY+jkUfd6UwKpTQ=";

}  // namespace

std::string_view page_script() { return kScript; }
std::string_view page_script_hash() { return kHash; }

}  // namespace rangebook
