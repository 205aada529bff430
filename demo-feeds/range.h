// The invented range of an invented shop in one season: styles with their colours, sizes, prices,
// stock and codes. The generator has its own model on purpose: it must not share code with the
// program whose answers it checks.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace demo {

using Minor = std::int64_t;  ///< pence or cents

enum class System : std::uint8_t { uk, alpha, one_size };
enum class Fit : std::uint8_t { regular, petite, tall };

/// `rank` is the UK number itself, or the place in XS, S, M, L, XL, XXL, 3XL from 0.
struct SizeStep {
  System system = System::uk;
  Fit fit = Fit::regular;
  int rank = 0;
  auto operator<=>(const SizeStep&) const = default;
};
std::string label(const SizeStep& size);  ///< `12`, `12 Petite`, `XL`, `One Size`
std::string to_string(System system);     ///< `uk`, `alpha`, `one-size`
std::string to_string(Fit fit);           ///< `regular`, `petite`, `tall`
int step_between(System system);          ///< ranks from one size to the next

struct Fibre {
  std::string name{};
  int percent = 0;
};
/// How a season's feed words compositions: `65% Cotton, 35% Linen` or `Cotton 65%, Linen 35%`.
enum class Wording : std::uint8_t { share_first, fibre_first };
struct Fabric {
  std::string noun{};  ///< for the description: `cotton poplin`
  std::vector<Fibre> main{};
  std::vector<Fibre> lining{};  ///< empty for none
};
std::string composition(const Fabric& fabric, Wording wording);

using VariantKey = std::pair<std::string, SizeStep>;  ///< colour, size

struct Style {
  int uid = 0;  ///< the truth about identity: kept when name and code change
  std::string code{};
  std::string name{};
  std::string category{};  ///< slug
  Fabric fabric{};
  std::string description{};
  std::vector<std::string> colours{};
  std::set<SizeStep> sizes{};
  Minor full = 0;                       ///< price without a markdown, the same for all variants
  std::map<std::string, Minor> sale{};  ///< colour -> selling price while it is marked down
  bool all_gone = false;                ///< listed, but every variant sold out
  std::set<VariantKey> sold_out{};      ///< single variants that are sold out
  std::map<VariantKey, std::string> gtins{};

  Minor selling(const std::string& colour) const;
  Minor lowest_selling() const;
  bool in_stock(const VariantKey& key) const { return !all_gone && !sold_out.contains(key); }
  std::vector<VariantKey> variants() const;  ///< by colour as listed, then size
};

/// Sizes of one system and fit of a style, smallest first.
std::vector<SizeStep> sizes_of(const Style& style, System system, Fit fit);

struct Range {
  std::vector<Style> styles{};
  Style* find(int uid);
  const Style* find(int uid) const;
};

/// Hands out GTIN-13s of one shop. The leading 2 is the GS1 range for restricted circulation, so
/// none of these numbers can belong to a real article.
class Numbers {
 public:
  explicit Numbers(int shop_digit) : shop_(shop_digit) {}
  std::string next_gtin();
  int next_uid() { return ++uid_; }
  void number_variants(Style& style);  ///< gives every variant without a GTIN a new one

 private:
  int shop_;
  int counter_ = 0;
  int uid_ = 0;
};

std::string decimal(Minor amount, char sign);  ///< 4990 -> `49.90`

}  // namespace demo
