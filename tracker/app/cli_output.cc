// All change how figures look, never what they are.
#include "tracker/app/cli_output.h"

#include <algorithm>

#include "reports/number_style.h"
#include "schema/nearest_word.h"
#include "tracker/app/scope_words.h"

namespace rangebook {
namespace {

bool has(const std::vector<std::string>& formats, std::string_view form) {
  return std::find(formats.begin(), formats.end(), form) != formats.end();
}

/// Empty when the word is one of the formats.
std::string format_fault(const std::string& word, const std::vector<std::string>& formats) {
  if (has(formats, word)) return {};
  return "\"" + word + "\" is no format here." + did_you_mean(word, formats) +
         " There are: " + joined(formats) + ".";
}

std::string locale_fault(const std::string& tag) {
  if (NumberStyle::of(tag)) return {};
  return "\"" + tag + "\" is no locale that is known here; write it as de-DE or en-IE.";
}

/// `--bom`, `--locale` and `--words`.
void add_style(CLI::App& sub, const std::vector<std::string>& formats, OutputChoice& output) {
  if (has(formats, "csv")) {
    sub.add_flag("--bom", output.bom,
                 "Begin CSV with a byte order mark, for spreadsheets that take it for another "
                 "encoding otherwise");
  }
  if (has(formats, "html")) {
    sub.add_option(
           "--locale", output.locale,
           "Prices, percentages and days as in this locale, in text, md and html; the words "
           "stay English")
        ->check(locale_fault)
        ->type_name("TAG");
    sub.add_option("--words", output.words,
                   "Words of reports in another language, in text, md, html and xlsx: a table that "
                   "--format words begins")
        ->type_name("FILE");
  }
}

}  // namespace

void add_output(CLI::App& sub, std::vector<std::string> formats, OutputChoice& output) {
  if (has(formats, "html")) formats.emplace_back("words");
  sub.add_option("--format", output.format, "Form of the output: " + joined(formats))
      ->check([formats](const std::string& word) { return format_fault(word, formats); })
      ->type_name("FORM")
      ->capture_default_str();
  sub.add_option("--out", output.file, "Write to this file")->type_name("FILE");
  add_style(sub, formats, output);
}

}  // namespace rangebook
