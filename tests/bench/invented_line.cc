// Makes invented lines: every choice comes from the seed and the line's number.
#include "tests/bench/invented_line.h"

#include <algorithm>
#include <array>

#include "tests/bench/invented_words.h"
#include "tests/bench/random.h"

namespace rangebook::bench {
namespace {

enum Purpose : std::uint64_t { kShape, kText, kSale, kOffer, kChange, kRename };

constexpr std::uint64_t kCodes = 26 * 26 * 1'000'000ULL;
constexpr std::uint64_t kItems = 100'000'000'000ULL;  // 11 digits between prefix and check digit

struct Shape {
  std::uint32_t colours = 0;
  std::uint32_t sizes = 0;
  std::uint32_t first_size = 0;
};

// 2 to 4 colours and 8 to 12 sizes: 30 variants on average.
Shape shape_of(std::uint64_t seed, std::uint64_t index) {
  Random random(seed, index, kShape);
  const std::uint32_t colours = 2 + random.below(3);
  const std::uint32_t sizes = 8 + random.below(5);
  return {colours, sizes, 4 + 2 * random.below(3)};
}

std::string code_of(std::uint64_t seed, std::uint64_t index) {
  std::uint64_t number = shuffled(index, kCodes, seed);
  std::string code(8, '0');
  for (std::size_t at = code.size() - 1; at >= 2; --at) {
    code[at] = static_cast<char>('0' + number % 10);
    number /= 10;
  }
  code[0] = static_cast<char>('A' + number / 26);
  code[1] = static_cast<char>('A' + number % 26);
  return code;
}

std::vector<std::string_view> pick_colours(Random& random, std::uint32_t count) {
  std::vector<std::string_view> picked;
  while (picked.size() < count) {
    const std::string_view colour = random.one_of(kColours);
    if (std::find(picked.begin(), picked.end(), colour) == picked.end()) picked.push_back(colour);
  }
  return picked;
}

std::string slug_of(std::string_view name) {
  std::string slug(name);
  for (char& c : slug) {
    if (c == ' ') c = '-';
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return slug;
}

void append(std::string& to, std::initializer_list<std::string_view> pieces) {
  for (const std::string_view piece : pieces) to += piece;
}

std::string composition_of(Random& random) {
  const std::string_view first = random.one_of(kFibres);
  const std::string_view second = random.one_of(kSecondFibres);
  if (first == second || random.below(5) == 0) return "100% " + std::string(first);
  const std::uint32_t share = random.below(3) == 0 ? 50 + random.below(40) : 92 + random.below(7);
  std::string text = "\"";
  append(text, {std::to_string(share), "% ", first, ", ", std::to_string(100 - share), "% ", second,
                random.below(4) == 0 ? "; lining: 100% polyester\"" : "\""});
  return text;
}

std::string description_of(Random& random, const InventedLine& line, std::string_view garment) {
  std::string text = "\"";
  append(text, {"A ", random.one_of(kManners), " ", garment, " in ", random.one_of(kFeels), ", ",
                random.one_of(kFeels), " cloth with ", random.one_of(kDetails), ", ",
                random.one_of(kDetails), " and ", random.one_of(kDetails), ". "});
  if (random.below(40) == 0) append(text, {"We call it the \"\"", line.name, "\"\". "});
  append(text,
         {"Made for ", random.one_of(kOccasions), " or ", random.one_of(kOccasions),
          "; wear it with ", random.one_of(kPartners), " or ", random.one_of(kPartners), ". "});
  append(text, {"Fits ", random.one_of(kFits), ". Length ", std::to_string(50 + random.below(80)),
                " cm in size 12, model is ", std::to_string(165 + random.below(18)), " cm. ",
                random.one_of(kCare), "\""});
  return text;
}

// Prices end in 00, 50, 95 or 99, as is common practice, no source.
std::uint32_t price_near(Random& random, std::uint32_t base) {
  static constexpr std::array<std::uint32_t, 4> kEndings{0, 50, 95, 99};
  const std::uint32_t pounds = base * (75 + random.below(60)) / 10'000;
  return pounds * 100 + kEndings[random.below(4)];
}

std::uint32_t check_digit(std::uint64_t twelve_digits) {
  std::uint64_t sum = 0;
  for (std::uint64_t weight = 3; twelve_digits > 0; weight = 4 - weight) {
    sum += weight * (twelve_digits % 10);
    twelve_digits /= 10;
  }
  return static_cast<std::uint32_t>((10 - sum % 10) % 10);
}

}  // namespace

std::uint32_t invented_variant_count(std::uint64_t seed, std::uint64_t index) {
  const Shape shape = shape_of(seed, index);
  return shape.colours * shape.sizes;
}

InventedLine invented_line(std::uint64_t seed, std::uint64_t index) {
  const Shape shape = shape_of(seed, index);
  Random random(seed, index, kText);
  const Garment& garment = random.one_of(kGarments);
  InventedLine line;
  line.index = index;
  line.code = code_of(seed, index);
  append(line.name, {random.one_of(kNames), " ", random.one_of(kManners), " ", garment.name});
  line.slug = slug_of(line.name);
  line.category = garment.category;
  line.composition = composition_of(random);
  line.description = description_of(random, line, garment.name);
  line.colours = pick_colours(random, shape.colours);
  line.first_size = shape.first_size;
  line.size_count = shape.sizes;
  line.full_price = price_near(random, garment.base_price);
  return line;
}

void rename(InventedLine& line, std::uint64_t seed) {
  Random random(seed, line.index, kRename);
  line.name = std::string(random.one_of(kNames)) + line.name.substr(line.name.find(' '));
}

void recode(InventedLine& line, std::uint64_t seed) { line.code = code_of(~seed, line.index); }

InventedOffer invented_offer(const InventedLine& line, std::uint64_t seed, std::uint32_t variant) {
  Random random(seed, line.index * kMostVariants + variant, kOffer);
  // A third of the lines are marked down as a whole; one variant in eight is out of stock.
  Random sale(seed, line.index, kSale);
  const std::uint32_t share = sale.below(3) == 0 ? 90 - 10 * sale.below(5) : 100;
  return {line.full_price * share / 100, line.full_price, random.below(8) != 0};
}

void change_offer(InventedOffer& offer, std::uint64_t seed, std::uint64_t line,
                  std::uint32_t variant) {
  static constexpr std::array<std::uint32_t, 6> kShares{85, 75, 65,
                                                        55, 45, 35};  // none of the first prices
  Random random(seed, line * kMostVariants + variant, kChange);
  switch (random.below(8)) {
    case 0:
      offer.full_price += 100 * (1 + random.below(5));
      offer.price = offer.full_price;
      return;
    case 1:
    case 2:
    case 3:
      offer.price = offer.full_price * kShares[random.below(6)] / 100;
      return;
    default:
      offer.in_stock = !offer.in_stock;
  }
}

std::uint64_t invented_gtin(std::uint64_t seed, std::uint64_t line, std::uint32_t variant) {
  const std::uint64_t item = shuffled(line * kMostVariants + variant, kItems, seed);
  const std::uint64_t twelve_digits = 2 * kItems + item;
  return twelve_digits * 10 + check_digit(twelve_digits);
}

}  // namespace rangebook::bench
