// Text is only ever set as text; the answer to an upload is an address of the desk or a page with a
// message.
#include "tracker/desk/drop_script.h"

namespace rangebook {
namespace {

constexpr std::string_view kScript = R"js(
"use strict";
{
const told = document.getElementById("sending");
const form = told.closest("form");
const dropped = [];
const say = (text) => { told.textContent = text; };
const megabytes = (bytes) => bytes < 104858 ? "less than 0.1 MB"
  : (bytes / 1048576).toFixed(bytes < 10485760 ? 1 : 0) + " MB";

const take = async (entry) => {
  if (entry instanceof File) {
    dropped.push({ file: entry, path: entry.name });
    return;
  }
  if (entry.isFile) {
    const file = await new Promise((done, failed) => entry.file(done, failed));
    dropped.push({ file, path: entry.fullPath.replace(/^\//, "") });
    return;
  }
  const reader = entry.createReader();
  for (;;) {
    const some = await new Promise((done, failed) => reader.readEntries(done, failed));
    if (some.length === 0) return;
    for (const each of some) await take(each);
  }
};

const sayDropped = () => {
  const bytes = dropped.reduce((sum, { file }) => sum + file.size, 0);
  const names = dropped.slice(0, 5).map(({ path }) => path).join(", ");
  say(dropped.length + (dropped.length === 1 ? " file" : " files") + " dropped, " + megabytes(bytes) +
    ": " + names + (dropped.length > 5 ? " and more." : "."));
};

document.addEventListener("dragover", (event) => {
  if (event.dataTransfer.types.includes("Files")) event.preventDefault();
});
document.addEventListener("drop", async (event) => {
  if (!event.dataTransfer.types.includes("Files")) return;
  event.preventDefault();
  // All entries first: the list is emptied when this turn ends.
  const entries = [...event.dataTransfer.items].filter((item) => item.kind === "file")
    .map((item) => item.webkitGetAsEntry() || item.getAsFile());
  try {
    for (const entry of entries) await take(entry);
    sayDropped();
  } catch (error) {
    say("Something that was dropped could not be read: " + error.message);
  }
});

const failed = (text) => {
  const page = new DOMParser().parseFromString(text, "text/html");
  const alert = page.querySelector("[role=alert]");
  say(alert ? [...alert.querySelectorAll("p")].map((p) => p.textContent).join(" ")
    : text || "The desk did not answer. Is it still open?");
  form.querySelector("button").disabled = false;
};

form.addEventListener("submit", (event) => {
  event.preventDefault();
  const data = new FormData(form);
  for (const { file, path } of dropped) data.append("folder", file, path);
  data.append("by-script", "yes");
  let bytes = 0;
  for (const value of data.values()) bytes += value instanceof File ? value.size : value.length;
  if (bytes > Number(told.dataset.most)) {
    say("These files hold " + megabytes(bytes) + " together; at most " +
      megabytes(Number(told.dataset.most)) + " are taken at once. Choose fewer.");
    return;
  }
  form.querySelector("button").disabled = true;
  const request = new XMLHttpRequest();
  request.upload.addEventListener("progress", ({ loaded, total }) => {
    say("Handing over: " + megabytes(loaded) + " of " + megabytes(total) + ".");
  });
  request.addEventListener("load", () => {
    if (request.status !== 200) return failed(request.responseText);
    say("Reading.");
    location.assign(request.responseText);
  });
  request.addEventListener("error", () => failed(""));
  request.open("POST", form.action);
  request.send(data);
});
// Back to this page by the browser's button: the form can be sent again.
window.addEventListener("pageshow", () => { form.querySelector("button").disabled = false; });

say("Or drop files or a folder anywhere on this page.");
}
)js";

}  // namespace

std::string_view drop_script() { return kScript; }

}  // namespace rangebook
