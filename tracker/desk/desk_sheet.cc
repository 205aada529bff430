// Sheets are laid out as the reports are, so the desk and what it prints look alike.
#include "tracker/desk/desk_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace rangebook {
namespace {

constexpr std::string_view kStyleAddress = "/desk.css";
constexpr std::string_view kScriptAddress = "/desk.js";

struct BarEntry {
  std::string_view path;
  std::string_view words;
};
constexpr std::array<BarEntry, 8> kBar{{{"/", "Shops"},
                                        {"/add", "Add a capture"},
                                        {"/links", "Which line is which"},
                                        {"/picks", "Picks"},
                                        {"/due", "What is due"},
                                        {"/terms", "Terms"},
                                        {"/reach", "Who reaches a size"},
                                        {"/order", "What an order costs"}}};

void bar_entry(HtmlWriter& html, const BarEntry& entry, std::string_view here) {
  const auto item = html.in("li");
  if (entry.path == here) {
    html.element("a", {{"href", entry.path}, {"aria-current", "page"}}, entry.words);
  } else {
    html.element("a", {{"href", entry.path}}, entry.words);
  }
}

void bar(HtmlWriter& html, const Desk& desk, std::string_view here) {
  {
    const auto nav = html.in("nav", {{"class", "bar"}, {"aria-label", "The desk"}});
    const auto list = html.in("ul");
    for (const BarEntry& entry : kBar) bar_entry(html, entry, here);
  }
  if (!desk.is_demo()) return;
  const auto told = html.in("aside", {{"class", "told"}, {"aria-label", "The demo"}});
  html.element("p", {}, "You are trying the demo: every shop and figure here is invented.");
  post_form(html, desk, "/own", [](HtmlWriter& form) { button(form, "Back to your own book"); });
}

void head_of(HtmlWriter& html, const std::string& title) {
  const auto head = html.in("head");
  html.single("meta", {{"charset", "utf-8"}});
  html.single("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
  html.element("title", {}, title);
  html.single("link", {{"rel", "stylesheet"}, {"href", kStyleAddress}});
  html.script_at(kScriptAddress);
}

void top_of(HtmlWriter& html, const SheetHead& head) {
  const auto header = html.in("header", {{"class", "top"}});
  html.element("p", {{"class", "kind"}}, head.kind);
  html.element("h1", {}, head.heading);
  if (!head.under.empty()) html.element("p", {{"class", "against"}}, head.under);
}

}  // namespace

DeskAnswer sheet(const Desk& desk, const SheetHead& head, const WriteHtml& main, int status) {
  HtmlWriter html;
  html.doctype();
  html.open("html", {{"lang", "en-GB"}});
  head_of(html, head.heading + " - rangebook desk");
  html.open("body");
  html.element("a", {{"class", "skip"}, {"href", "#matter"}}, "Skip to the page");
  bar(html, desk, head.here);
  top_of(html, head);
  {
    const auto in_main = html.in("main", {{"id", "matter"}});
    main(html);
  }
  {
    const auto foot = html.in("footer");
    for (const auto& caution : report_cautions(desk.is_demo())) html.element("p", {}, caution);
  }
  DeskAnswer answer;
  answer.status = status;
  answer.body = html.take();
  return answer;
}

DeskAnswer report_sheet(const Desk& desk, std::string_view here, const ReportPage& page,
                        const WriteHtml& before) {
  DeskAnswer answer;
  answer.body = framed_page_html(
      page, {std::string(kStyleAddress), [&](HtmlWriter& html) { bar(html, desk, here); }, before});
  return answer;
}

DeskAnswer trouble_sheet(const Desk& desk, int status, const std::string& message) {
  return sheet(
      desk, {"", "The desk", "That did not work"},
      [&](HtmlWriter& html) {
        alert(html, without_commands(message));
        const auto way = html.in("p");
        link(html, "/", "To the shops");
      },
      status);
}

void part(HtmlWriter& html, std::string_view id, std::string_view heading,
          const WriteHtml& matter) {
  const auto section = html.in("section", {{"aria-labelledby", id}});
  html.element("h2", {{"id", id}}, heading);
  const auto inside = html.in("div", {{"class", "matter"}});
  matter(html);
}

void wide_table(HtmlWriter& html, const TableHead& head, const WriteHtml& rows) {
  const auto scroll = html.in(
      "div",
      {{"class", "scroll"}, {"role", "group"}, {"tabindex", "0"}, {"aria-label", head.label}});
  const auto table = html.in("table");
  if (!head.caption.empty()) html.element("caption", {}, head.caption);
  {
    const auto top = html.in("thead");
    const auto row = html.in("tr");
    for (const std::string_view column : head.columns) {
      html.element("th", {{"scope", "col"}}, column);
    }
  }
  const auto body = html.in("tbody");
  rows(html);
}

void text_cell(HtmlWriter& html, std::string_view text) {
  constexpr std::size_t kWhole = 12;  // `UK 8–20` is not broken across lines
  const auto cell = html.in("td");
  html.element("bdi", {{"class", text.size() <= kWhole ? "whole" : ""}}, text);
}

void alert(HtmlWriter& html, std::string_view message) {
  if (message.empty()) return;
  const auto told = html.in("div", {{"class", "told"}, {"role", "alert"}});
  html.element("p", {}, message);
}

void link(HtmlWriter& html, const std::string& address, std::string_view words) {
  html.element("a", {{"href", address}}, words);
}

void text_field(HtmlWriter& html, std::string_view name, std::string_view label,
                std::string_view value, std::string_view hint, std::string_view kind) {
  const auto field = html.in("div", {{"class", "field"}});
  html.element("label", {{"for", name}}, label);
  const std::string hint_id = fmt::format("{}-hint", name);
  if (hint.empty()) {
    html.single("input", {{"type", kind}, {"id", name}, {"name", name}, {"value", value}});
    return;
  }
  html.single("input", {{"type", kind},
                        {"id", name},
                        {"name", name},
                        {"value", value},
                        {"aria-describedby", hint_id}});
  html.element("small", {{"id", hint_id}}, hint);
}

void choice_field(HtmlWriter& html, std::string_view name, std::string_view label,
                  const std::vector<Choice>& choices, std::string_view value) {
  const auto field = html.in("div", {{"class", "field"}});
  html.element("label", {{"for", name}}, label);
  const auto select = html.in("select", {{"id", name}, {"name", name}});
  for (const Choice& choice : choices) {
    if (choice.value == value) {
      html.element("option", {{"value", choice.value}, {"selected", ""}}, choice.words);
    } else {
      html.element("option", {{"value", choice.value}}, choice.words);
    }
  }
}

void lines_field(HtmlWriter& html, std::string_view name, std::string_view label,
                 std::string_view value, std::string_view hint) {
  const auto field = html.in("div", {{"class", "field wide"}});
  html.element("label", {{"for", name}}, label);
  const std::string hint_id = fmt::format("{}-hint", name);
  html.open("textarea",
            {{"id", name}, {"name", name}, {"rows", "5"}, {"aria-describedby", hint_id}});
  // HTML drops a line end right behind the tag.
  html.text(fmt::format("\n{}", value));
  html.close();
  html.element("small", {{"id", hint_id}}, hint);
}

void file_field(HtmlWriter& html, std::string_view name, std::string_view label,
                std::string_view hint, bool folder) {
  const auto field = html.in("div", {{"class", "field file"}});
  html.element("label", {{"for", name}}, label);
  const std::string hint_id = fmt::format("{}-hint", name);
  html.single("input", {{"type", "file"},
                        {"id", name},
                        {"name", name},
                        {"multiple", ""},
                        {folder ? "webkitdirectory" : "data-files", ""},
                        {"aria-describedby", hint_id}});
  html.element("small", {{"id", hint_id}}, hint);
}

void tick_field(HtmlWriter& html, std::string_view name, std::string_view label, bool ticked) {
  const auto field = html.in("div", {{"class", "tick"}});
  if (ticked) {
    html.single(
        "input",
        {{"type", "checkbox"}, {"id", name}, {"name", name}, {"value", "yes"}, {"checked", ""}});
  } else {
    html.single("input", {{"type", "checkbox"}, {"id", name}, {"name", name}, {"value", "yes"}});
  }
  html.element("label", {{"for", name}}, label);
}

void field_group(HtmlWriter& html, std::string_view legend, const WriteHtml& fields) {
  const auto group = html.in("fieldset");
  html.element("legend", {}, legend);
  fields(html);
}

void hidden_field(HtmlWriter& html, std::string_view name, std::string_view value) {
  html.single("input", {{"type", "hidden"}, {"name", name}, {"value", value}});
}

void post_form(HtmlWriter& html, const Desk& desk, std::string_view path, const WriteHtml& fields) {
  const auto form = html.in("form", {{"class", "asked"},
                                     {"method", "post"},
                                     {"action", path},
                                     {"enctype", "multipart/form-data"}});
  hidden_field(html, "token", desk.tokens().of(path));
  fields(html);
}

void ask_form(HtmlWriter& html, std::string_view path, const WriteHtml& fields) {
  const auto form = html.in("form", {{"class", "asked"}, {"method", "get"}, {"action", path}});
  fields(html);
}

void button(HtmlWriter& html, std::string_view words) {
  html.element("button", {{"type", "submit"}}, words);
}

void problem_list(HtmlWriter& html, const std::vector<std::string>& problems) {
  if (problems.empty()) return;
  const auto told = html.in("div", {{"class", "told"}, {"role", "alert"}});
  for (const auto& problem : problems) html.element("p", {}, problem);
}

void keep_as(HtmlWriter& html, const DeskAsk& ask, const std::vector<Choice>& formats) {
  const auto line = html.in("p", {{"class", "keep"}});
  html.text("Keep it as a file:");
  for (const Choice& format : formats) {
    std::vector<DeskField> fields = ask.fields;
    std::erase_if(fields, [](const DeskField& field) { return field.name == "format"; });
    fields.push_back({"format", format.value, {}});
    link(html, desk_address(ask.path, fields), format.words);
  }
}

DeskAnswer kept_file(const std::string& bytes, const std::string& format, const std::string& name) {
  DeskAnswer answer;
  answer.body = bytes;
  answer.file_name = fmt::format("{}.{}", name, format == "text" ? "txt" : format);
  answer.type = "text/plain; charset=utf-8";
  if (format == "json") answer.type = "application/json";
  if (format == "csv") answer.type = "text/csv; charset=utf-8";
  if (format == "html") answer.type = "text/html; charset=utf-8";
  if (format == "md") answer.type = "text/markdown; charset=utf-8";
  if (format == "xlsx") {
    answer.type = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
  }
  return answer;
}

std::string without_commands(std::string message) {
  const auto command = message.find(": rangebook ");
  if (command == std::string::npos) return message;
  message.resize(command);
  const auto end = message.rfind(". ");
  const auto begin = end == std::string::npos ? 0 : end + 2;
  const std::string_view last = std::string_view(message).substr(begin);
  // `See` and `To change it` say nothing without the command.
  if (begin > 0 && (last == "See" || last.starts_with("To "))) {
    message.resize(begin - 1);
  } else {
    message += '.';
  }
  return message;
}

std::string without_options(std::string message) {
  for (auto at = message.find("--"); at != std::string::npos; at = message.find("--", at)) {
    message.erase(at, 2);
  }
  return message;
}

}  // namespace rangebook
