// Handing documents over. Whatever arrives is held first, so that no mistake in a word costs her
// the files: browsers do not fill in a field for files again.
#include <fmt/format.h>

#include "tracker/desk/add_pages.h"
#include "tracker/desk/desk_server.h"
#include "tracker/desk/drop_script.h"
#include "tracker/desk/upload_form.h"
#include "tracker/desk/upload_request.h"

namespace rangebook {
namespace {

/// Files that were chosen, and a pasted table as one more. A field for files without one still
/// sends a part, without a name.
std::vector<DeskField> documents_of(const DeskAsk& ask) {
  std::vector<DeskField> documents;
  for (const DeskField& field : ask.fields) {
    const bool is_file = field.name == "documents" || field.name == "folder";
    if (is_file && !field.file_name.empty()) documents.push_back(field);
  }
  if (ask.said("table").find_first_not_of(" \t\r\n") != std::string::npos) {
    documents.push_back({"table", ask.said("table"), "pasted.txt"});
  }
  return documents;
}

void add_form(HtmlWriter& html, const Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  post_form(html, desk, "/add", [&](HtmlWriter& form) {
    field_group(form, "What the shop shows", [&](HtmlWriter& fields) {
      file_field(fields, "documents", "Files",
                 fmt::format("saved pages, tables, workbooks, feeds, zip archives; many at once, "
                             "together at most {} MB",
                             DeskLimits{}.body >> 20U),
                 false);
      file_field(fields, "folder", "Or a folder", "with all it holds", true);
      lines_field(fields, "table", "Or paste a table", ask.said("table"),
                  "as copied from a spreadsheet, with its line of column names");
      lines_field(fields, "policy", "Its words on delivery and returns", ask.said("policy"),
                  "if you have them: the text as it stands on its page");
    });
    upload_fields(form, book, upload_words(ask));
    button(form, "See what is understood");
    form.element("small", {}, "Nothing is in the book before you say so.");
    form.element("p",
                 {{"id", "sending"},
                  {"class", "sending"},
                  {"role", "status"},
                  {"data-most", std::to_string(DeskLimits{}.body)}},
                 "");
  });
  html.script_at("/add.js");
}

DeskAnswer add_sheet(const Desk& desk, const DeskAsk& ask,
                     const std::vector<std::string>& problems) {
  return sheet(
      desk, {"/add", "The desk", "Add a capture"},
      [&](HtmlWriter& html) {
        problem_list(html, problems);
        held_list(html, desk);
        part(html, "new", "Something new",
             [&](HtmlWriter& matter) { add_form(matter, desk, ask); });
      },
      problems.empty() ? 200 : 400);
}

}  // namespace

DeskAnswer add_page(Desk& desk, const DeskAsk& ask) { return add_sheet(desk, ask, {}); }

DeskAnswer add_script(Desk& /*desk*/, const DeskAsk& /*ask*/) {
  DeskAnswer answer;
  answer.type = "text/javascript; charset=utf-8";
  answer.body = drop_script();
  return answer;
}

DeskAnswer take_upload(Desk& desk, const DeskAsk& ask) {
  const auto documents = documents_of(ask);
  const std::string& policy = ask.said("policy");
  if (documents.empty() && policy.empty()) {
    return add_sheet(desk, ask, {"Choose files or a folder, or paste a table or a text of terms."});
  }
  const auto held = desk.held().hold(documents, policy, upload_words(ask));
  if (const auto* problem = std::get_if<std::string>(&held)) {
    return add_sheet(desk, ask, {*problem});
  }
  const std::string address = held_address(std::get<HeldUpload>(held));
  DeskAnswer answer;
  if (ask.said("by-script").empty()) {
    answer.go_to = address;
  } else {
    // A script that is sent on would have the page worked out once more for itself.
    answer.type = "text/plain; charset=utf-8";
    answer.body = address;
  }
  return answer;
}

}  // namespace rangebook
