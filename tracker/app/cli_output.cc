// Both change how figures look, never what they are.
#include "tracker/app/cli_output.h"

#include <algorithm>

#include "reports/number_style.h"

namespace rangebook {
namespace {

std::string locale_fault(const std::string& tag) {
  if (NumberStyle::of(tag)) return {};
  return "\"" + tag + "\" is no locale that is known here; write it as de-DE or en-IE.";
}

}  // namespace

void add_output_style(CLI::App& sub, const std::vector<std::string>& formats,
                      OutputChoice& output) {
  const auto has = [&formats](std::string_view form) {
    return std::find(formats.begin(), formats.end(), form) != formats.end();
  };
  if (has("csv")) {
    sub.add_flag("--bom", output.bom,
                 "Begin CSV with a byte order mark, for spreadsheets that take it for another "
                 "encoding otherwise");
  }
  if (has("html")) {
    sub.add_option(
           "--locale", output.locale,
           "Prices, percentages and days as in this locale, in text, md and html; the words "
           "stay English")
        ->check(locale_fault)
        ->type_name("TAG");
  }
}

}  // namespace rangebook
