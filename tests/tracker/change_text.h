// Changes as one line of text each, so that a test can say the whole change set at a glance:
//   price-up AB1 50 -> 55 (navy; 8, 10)
#pragma once

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <string>
#include <vector>

#include "schema/change.h"
#include "tests/tracker/range_text.h"
#include "tracker/differ.h"
#include "tracker/linker.h"

namespace rangebook::testing {

inline std::string amount(const Money& money) {
  return money.minor % 100 == 0 ? fmt::format("{}", money.minor / 100)
                                : fmt::format("{}.{:02}", money.minor / 100, money.minor % 100);
}

struct FactText {
  std::string operator()(const NameFact& f) const {
    return f.code.empty() ? f.name : fmt::format("{} {}", f.code, f.name);
  }
  std::string operator()(const PriceFact& f) const {
    std::string text = amount(f.amount);
    if (f.full) text += "/" + amount(*f.full);
    if (f.colours.empty() && f.sizes.empty()) return text;
    return text + fmt::format(" ({}; {})", fmt::join(f.colours, ", "), fmt::join(f.sizes, ", "));
  }
  std::string operator()(const ColourFact& f) const { return f.colour; }
  std::string operator()(const SizeFact& f) const {
    return fmt::format("{} {} {}..{} [{}]", to_string(f.system), to_string(f.fit), f.min, f.max,
                       fmt::join(f.labels, " "));
  }
  std::string operator()(const CompositionFact& f) const { return f.composition; }
  std::string operator()(const CategoryFact& f) const { return f.category; }
  std::string operator()(const StockFact& f) const {
    return fmt::format("{} of {}", f.in_stock, f.offered);
  }
  std::string operator()(const IndexFact& f) const {
    return fmt::format("{}/{}/{} of {}", f.jevons, f.dutot, f.carli, f.lines);
  }
  std::string operator()(const TermsFact& f) const {
    return fmt::format("{} = {} ({})", f.field, f.value, to_string(f.direction));
  }
};

inline std::string text_of(const std::optional<Fact>& fact) {
  return fact ? std::visit(FactText{}, *fact) : "nothing";
}

inline std::string text_of(const Change& change) {
  const std::string subject = change.line ? change.line->code : change.category;
  return fmt::format("{} {}{}{} -> {}", to_string(change.kind), subject, subject.empty() ? "" : " ",
                     text_of(change.before), text_of(change.after));
}

inline ChangeSet compare(const Snapshot& from, const Snapshot& to,
                         const std::vector<EarlierLine>& earlier = {}) {
  return diff_snapshots(from, to, link_lines(from, to, {}, nullptr), earlier);
}

inline std::vector<std::string> texts(const ChangeSet& changes, bool of_lines) {
  std::vector<std::string> result;
  for (const Change& change : changes.changes) {
    if (change.line.has_value() == of_lines) result.push_back(text_of(change));
  }
  return result;
}

/// The changes of lines between two ranges written as text.
inline std::vector<std::string> line_changes(std::string_view then, std::string_view now) {
  return texts(compare(range("AW25", then), range("AW26", now)), true);
}

/// Those of the shop and its categories.
inline std::vector<std::string> shop_changes(std::string_view then, std::string_view now) {
  return texts(compare(range("AW25", then), range("AW26", now)), false);
}

}  // namespace rangebook::testing
