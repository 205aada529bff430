// What the pages of the desk have in common: the bar above, parts with a side head, forms.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "reports/html_writer.h"
#include "reports/report_page.h"
#include "tracker/desk/desk.h"

namespace rangebook {

struct SheetHead {
  std::string_view here;  ///< path of the entry of the bar that this page belongs to
  std::string kind;       ///< small, above the heading
  std::string heading;
  std::string under = {};  ///< beneath it; may be empty
};
using WriteHtml = std::function<void(HtmlWriter&)>;

DeskAnswer sheet(const Desk& desk, const SheetHead& head, const WriteHtml& main, int status = 200);
/// A report with the bar above it; `before` stands in front of what it says.
DeskAnswer report_sheet(const Desk& desk, std::string_view here, const ReportPage& page,
                        const WriteHtml& before);
/// Something is not there or wrong: a sentence, and the way back.
DeskAnswer trouble_sheet(const Desk& desk, int status, const std::string& message);

void part(HtmlWriter& html, std::string_view id, std::string_view heading, const WriteHtml& matter);
struct TableHead {
  std::string label;    ///< names the table for who moves to it by keyboard
  std::string caption;  ///< empty: none
  std::vector<std::string_view> columns;
};
/// A table that scrolls sideways where it is wider than the page; `rows` writes its body.
void wide_table(HtmlWriter& html, const TableHead& head, const WriteHtml& rows);
/// What a shop wrote, in whichever direction.
void text_cell(HtmlWriter& html, std::string_view text);
/// What is wrong, set apart; nothing for an empty message.
void alert(HtmlWriter& html, std::string_view message);
void link(HtmlWriter& html, const std::string& address, std::string_view words);

struct Choice {
  std::string value;
  std::string words;
};
/// A label with a field beneath it; `name` is also its id.
void text_field(HtmlWriter& html, std::string_view name, std::string_view label,
                std::string_view value, std::string_view hint = {}, std::string_view kind = "text");
void choice_field(HtmlWriter& html, std::string_view name, std::string_view label,
                  const std::vector<Choice>& choices, std::string_view value);
/// Room for lines of text.
void lines_field(HtmlWriter& html, std::string_view name, std::string_view label,
                 std::string_view value, std::string_view hint);
/// Files of her choice; `folder`: a whole folder.
void file_field(HtmlWriter& html, std::string_view name, std::string_view label,
                std::string_view hint, bool folder);
void tick_field(HtmlWriter& html, std::string_view name, std::string_view label, bool ticked);
/// Fields under a heading of their own.
void field_group(HtmlWriter& html, std::string_view legend, const WriteHtml& fields);
void hidden_field(HtmlWriter& html, std::string_view name, std::string_view value);
/// A form that changes something: sent with the token of its path.
void post_form(HtmlWriter& html, const Desk& desk, std::string_view path, const WriteHtml& fields);
/// A form that only asks: its answer has an address that can be kept.
void ask_form(HtmlWriter& html, std::string_view path, const WriteHtml& fields);
void button(HtmlWriter& html, std::string_view words);

/// Sentences that say what is wrong and what to do; nothing where there are none.
void problem_list(HtmlWriter& html, const std::vector<std::string>& problems);

/// The same page in other forms, to keep as files.
void keep_as(HtmlWriter& html, const DeskAsk& ask, const std::vector<Choice>& formats);
/// In a format of keep_as(): bytes with a type and a file name.
DeskAnswer kept_file(const std::string& bytes, const std::string& format, const std::string& name);

/// A message of the command line without the command it ends with: `See: rangebook links mill`.
std::string without_commands(std::string message);
/// `--currency: ..` is said on the command line; a page has no options.
std::string without_options(std::string message);

}  // namespace rangebook
