// Invents styles for a shop: names, fabrics, colours, sizes and prices that fit each other.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "demo-feeds/random.h"
#include "demo-feeds/range.h"

namespace demo {

/// The habits of one invented shop.
struct House {
  std::string slug{};
  std::string name{};
  std::string country{};
  std::string currency{};
  std::string code_prefix{};  ///< line codes are the prefix and a running number
  int first_code = 1000;
  int price_percent = 100;      ///< level of its prices against departments()
  bool ninety_endings = false;  ///< prices end in .90 or .00 instead of .00 or .50
  int size_low = 8;             ///< UK sizes of most styles
  int size_high = 20;
  std::string domain{};  ///< below `.example`, which RFC 2606 keeps free
};

class Inventor {
 public:
  /// Each shop has its own seed, so that a change to one shop's story leaves the others alone.
  Inventor(const House& house, int shop_digit, std::uint64_t seed);

  Style invent(const std::string& department);
  Range invent_range(const std::map<std::string, int>& counts);
  std::string next_code();
  /// A price with the shop's usual ending, near `amount`.
  Minor tidy(Minor amount) const;
  std::string new_colour(const Style& style);  ///< one the style does not have
  Fabric new_fabric(const Style& style);       ///< of the same department, another one

  const House& house() const { return house_; }
  Random& random() { return random_; }
  Numbers& numbers() { return numbers_; }

 private:
  std::set<SizeStep> size_run(const std::string& department);
  std::vector<std::string> pick_colours();
  Minor shelf_price(int lowest, int highest);  ///< whole pounds or euros

  House house_;
  Random random_;
  Numbers numbers_;
  std::vector<std::string> names_;
  std::size_t next_name_ = 0;
  int next_code_;
};

/// Every size from `low` to `high` of one system and fit.
std::set<SizeStep> run(System system, Fit fit, int low, int high);

/// Marks single variants as sold out, never a whole style.
void scatter_sold_out(Range& range, Random& random, int percent);

}  // namespace demo
