// Single keys can be switched off (WCAG 2.2, 2.1.4), and never count while she types in a field.
#include "tracker/desk/desk_script.h"

namespace rangebook {
namespace {

constexpr std::string_view kScript = R"js(
"use strict";
const buttons = [...document.querySelectorAll("button[data-key]")];
const stored = (value) => {
  try {
    if (value === undefined) return localStorage.getItem("answer-by-keys") !== "no";
    localStorage.setItem("answer-by-keys", value ? "yes" : "no");
  } catch { /* not kept, then */ }
  return true;
};
if (buttons.length > 0) {
  const box = document.createElement("input");
  box.type = "checkbox";
  box.checked = stored();
  const label = document.createElement("label");
  label.append(box, " Answer by keys: " + buttons.map((button) => button.dataset.key).join(", "));
  const line = document.createElement("p");
  line.className = "keys";
  line.append(label);
  buttons[0].closest(".answers").after(line);
  const show = () => {
    for (const button of buttons) {
      const hint = button.querySelector("kbd");
      if (hint) hint.remove();
      if (!box.checked) {
        button.removeAttribute("aria-keyshortcuts");
        continue;
      }
      const key = document.createElement("kbd");
      key.setAttribute("aria-hidden", "true");
      key.textContent = button.dataset.key;
      button.append(key);
      button.setAttribute("aria-keyshortcuts", button.dataset.key);
    }
  };
  show();
  box.addEventListener("change", () => { stored(box.checked); show(); });
  document.addEventListener("keydown", (event) => {
    if (!box.checked || event.repeat || event.ctrlKey || event.altKey || event.metaKey) return;
    const at = event.target;
    if (at !== box && at.closest("input, select, textarea, [contenteditable]")) return;
    const button = buttons.find((each) => each.dataset.key === event.key.toLowerCase());
    if (!button) return;
    event.preventDefault();
    button.click();
  });
}
)js";

}  // namespace

std::string_view desk_script() { return kScript; }

}  // namespace rangebook
