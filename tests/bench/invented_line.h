// Invented lines of clothing for benchmarks. Every name, code, price and address is made up; hosts
// are under the reserved name `.example` (RFC 2606).
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook::bench {

/// Variants a line can have at most: 4 colours x 12 sizes.
inline constexpr std::uint32_t kMostVariants = 64;

/// What all variants of a line share. The description, composition and name are CSV cells, quoted
/// where needed.
struct InventedLine {
  std::uint64_t index = 0;
  std::string code;
  std::string name;
  std::string slug;
  std::string composition;
  std::string description;
  std::string_view category;
  std::vector<std::string_view> colours;
  std::uint32_t first_size = 0;  ///< UK size; sizes go in steps of two
  std::uint32_t size_count = 0;
  std::uint32_t full_price = 0;  ///< minor units

  std::uint32_t variant_count() const {
    return static_cast<std::uint32_t>(colours.size()) * size_count;
  }
};

/// What differs between the variants of a line. Amounts are minor units.
struct InventedOffer {
  std::uint32_t price = 0;
  std::uint32_t full_price = 0;
  bool in_stock = true;
};

/// The colours and sizes alone, without text: cheap, to count variants.
std::uint32_t invented_variant_count(std::uint64_t seed, std::uint64_t index);
InventedLine invented_line(std::uint64_t seed, std::uint64_t index);
/// Another name for the same style, as a shop might give it next season.
void rename(InventedLine& line, std::uint64_t seed);
/// Another code, as a shop gives after changing its stock system. Everything else stays.
void recode(InventedLine& line, std::uint64_t seed);

InventedOffer invented_offer(const InventedLine& line, std::uint64_t seed, std::uint32_t variant);
/// Half of the changes are stock alone, the rest prices.
void change_offer(InventedOffer& offer, std::uint64_t seed, std::uint64_t line,
                  std::uint32_t variant);

/// GTIN-13 in the GS1 range for restricted circulation (prefix 2), with its check digit; unique.
std::uint64_t invented_gtin(std::uint64_t seed, std::uint64_t line, std::uint32_t variant);

}  // namespace rangebook::bench
