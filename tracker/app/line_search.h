// The one line that a word means, in one shop or in all.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "tracker/app/line_lookup.h"
#include "tracker/app/shop_lines.h"
#include "tracker/line_history.h"

namespace rangebook {

/// A line that a word means. Lives as long as the search.
struct MeantLine {
  ShopLines* lines = nullptr;
  std::uint32_t line = 0;  ///< index into its identities
};

class LineSearch {
 public:
  /// In every shop of the book where `shop` is empty. The book must outlive it.
  LineSearch(const Book& book, const std::string& shop);

  /// By code, reference or name. A line in several shops, or several in one, is a sentence that
  /// lists them; so is a shop that is not there.
  std::variant<MeantLine, NotThere> find(const std::string& word);

 private:
  const Book& book_;
  std::string shop_;
  std::vector<std::unique_ptr<ShopLines>> shops_;
};

/// The captures from sighting `from` of a line on, up to the day `until`. Each says why its row is
/// the line seen before.
std::vector<HistoryCapture> captures_of(ShopLines& lines, const LineIdentity& line, SightingAt from,
                                        Day until);

}  // namespace rangebook
