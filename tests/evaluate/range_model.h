// What an invented shop shows in a capture, as plain facts with the truth beside them: two lines of
// one style are the same line, whatever their names and codes say.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace rangebook::evaluate {

/// Minor units of the shop's currency.
using Amount = std::int64_t;
/// A step of the shop's size ladder; petite sizes stand kPetite above.
using SizeStep = int;
inline constexpr SizeStep kPetite = 100;

struct Colourway {
  std::string name = {};
  std::set<SizeStep> sizes = {};
  std::set<SizeStep> sold_out = {};
  Amount price = 0;
  std::optional<Amount> full_price = {};
};

struct Line {
  int style = 0;         ///< the truth
  int piece = 0;         ///< 1: a colourway of the style that stands as a line of its own
  bool refused = false;  ///< its rows cannot be read: the price is no price
  std::string code = {};
  std::string name = {};
  std::string category = {};  ///< slug
  std::string category_words = {};
  std::map<std::string, int> fibres = {};  ///< name in English -> per cent
  std::string composition = {};
  std::string description = {};
  std::string url = {};
  std::string image = {};
  std::vector<Colourway> colours = {};
  std::map<std::string, std::string> words = {};  ///< what a generator makes texts of
};

struct Capture {
  std::string season;
  std::string date;
  std::string scope = "all";  ///< or category slugs joined by commas
  std::vector<Line> lines = {};
};

enum class Layout { row_a_variant, row_a_colour, row_a_line };

struct Shop {
  std::string country;
  std::string currency;
  int digits = 2;  ///< of the currency
  std::string system;
  std::vector<std::string> ladder;  ///< size labels, smallest first
  std::string petite = {};          ///< what is added to a label; empty: no such range
  Layout layout = Layout::row_a_variant;
  char separator = ',';
  char decimal_sign = '.';
  std::set<std::string> columns;  ///< of the manual CSV contract

  std::string label(SizeStep step) const {
    const std::string& plain = ladder[static_cast<std::size_t>(step % kPetite)];
    return step < kPetite ? plain : plain + petite;
  }
};

/// Three captures of one shop; `then` and `now` are compared, `earlier` lies a season before both.
struct Seasons {
  Shop shop;
  Capture earlier;
  Capture then;
  Capture now;
};

}  // namespace rangebook::evaluate
