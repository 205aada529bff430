// The editable text form: lines of `field = value`.
#include "schema/terms_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "schema/terms_values.h"

namespace rangebook {
namespace {

/// What the lines gave so far.
struct Form {
  ReadTermsText result;
  std::map<std::string, std::size_t> seen;  // field: its line
  std::optional<Currency> home;

  void fault(std::size_t line, std::string what, std::string how) {
    result.faults.push_back({line, std::move(what), std::move(how)});
  }
};

void read_observed(Form& form, std::size_t line, std::string_view value) {
  form.result.terms.observed = parse_day(value);
  if (form.result.terms.observed) return;
  form.fault(line, fmt::format("\"{}\" is no date.", value),
             "Write the day on which the terms were seen, as in 2026-09-01.");
}

void read_field(Form& form, std::size_t line, const std::string& field, std::string_view value) {
  if (const auto [at, is_new] = form.seen.try_emplace(field, line); !is_new) {
    form.fault(line, fmt::format("{} stands on line {} too.", field, at->second),
               "Keep one of the two lines.");
    return;
  }
  if (field == "shop") {
    form.result.terms.shop = value;
  } else if (field == "observed") {
    read_observed(form, line, value);
  } else if (value.empty()) {
    form.fault(line, fmt::format("{} has no value.", field),
               "Write a value behind the =, or take the line out when the shop does not say.");
  } else if (auto bad = set_field(form.result.terms, field, value, form.home)) {
    form.fault(line, std::move(bad->what), std::move(bad->how_to_fix));
  }
}

void read_line(Form& form, std::size_t line, std::string_view text) {
  text = trimmed(text);
  if (text.empty() || text.front() == '#') return;
  const auto equals = text.find('=');
  if (equals == text.npos) {
    form.fault(line, "This line has no =.",
               "Write a field, = and its value, as in return.window = 28 days from delivery.");
    return;
  }
  read_field(form, line, std::string(trimmed(text.substr(0, equals))),
             trimmed(text.substr(equals + 1)));
}

}  // namespace

std::string terms_text(const Terms& terms) {
  std::string text;
  if (!terms.shop.empty()) text += fmt::format("shop = {}\n", terms.shop);
  if (terms.observed) text += fmt::format("observed = {}\n", to_string(*terms.observed));
  for (const auto& [field, value] : stated_values(terms)) {
    text += fmt::format("{} = {}\n", field, value);
  }
  return text;
}

ReadTermsText read_terms_text(std::string_view text, std::optional<Currency> home) {
  Form form;
  form.home = home;
  if (text.size() > kMaxTermsForm) {
    form.fault(1, "The text is too long for one shop's terms.", "Give each shop its own text.");
    return std::move(form.result);
  }
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  for (std::size_t line = 1; !text.empty(); ++line) {
    const auto end = std::min(text.find('\n'), text.size());
    read_line(form, line, text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return std::move(form.result);
}

}  // namespace rangebook
