// Canonical bytes read back to the same value, deltas rebuild their target, damage is noticed.
#include "tracker/store/line_codec.h"

#include <gtest/gtest.h>

#include <random>

namespace rangebook {
namespace {

LineOffers two_by_two() {
  LineOffers line;
  line.currency = Currency::from_code("GBP");
  line.colours = {"ecru", "navy"};
  line.sizes = {"10", "12"};
  line.offers = {{0, 0, Stock::in_stock, 7990, std::nullopt},
                 {0, 1, Stock::sold_out, 7990, 9990},
                 {1, 0, Stock::unknown, std::nullopt, std::nullopt},
                 {1, 1, Stock::in_stock, 7990, std::nullopt}};
  line.gtins = {Gtin::parse("2850664475700"), std::nullopt, Gtin::parse("29501031"), std::nullopt};
  return line;
}

std::string bytes_of(const LineOffers& line) {
  std::string bytes;
  encode(line, bytes);
  return bytes;
}

TEST(LineCodec, CardsReadBack) {
  const LineCard card{"AB1", "", "Maya wrap dress", "dresses", "100% viscose", "https://x.example"};
  std::string bytes;
  encode(card, bytes);
  EXPECT_EQ(decode_card(bytes), card);
}

TEST(LineCodec, OffersReadBack) {
  const LineOffers line = two_by_two();
  EXPECT_EQ(decode_offers(bytes_of(line)), line);
  EXPECT_EQ(bytes_of(*decode_offers(bytes_of(line))), bytes_of(line));
}

TEST(LineCodec, OffersWithGapsReadBack) {
  LineOffers line = two_by_two();
  line.offers.erase(line.offers.begin() + 1);
  line.gtins.clear();
  line.variant_codes = {"a", "", "c"};
  EXPECT_EQ(decode_offers(bytes_of(line)), line);
}

TEST(LineCodec, ADeltaRebuildsItsTarget) {
  const LineOffers base = two_by_two();
  LineOffers target = base;
  target.offers[1].price = 5990;
  target.offers[1].stock = Stock::in_stock;
  target.offers[2].full_price = 100;
  target.offers[3].price = std::nullopt;
  const auto delta = encode_offers_delta(base, target);
  ASSERT_TRUE(delta);
  LineOffers rebuilt = base;
  ASSERT_TRUE(apply_offers_delta(*delta, rebuilt));
  EXPECT_EQ(rebuilt, target);
  EXPECT_EQ(bytes_of(rebuilt), bytes_of(target));
}

TEST(LineCodec, AnotherSizeIsNoDelta) {
  LineOffers target = two_by_two();
  target.sizes[1] = "14";
  EXPECT_EQ(encode_offers_delta(two_by_two(), target), std::nullopt);
}

TEST(LineCodec, RandomOffersAndDeltasReadBack) {
  std::mt19937 random(7);
  const auto pick = [&](unsigned below) { return static_cast<int>(random() % below); };
  for (int round = 0; round < 500; ++round) {
    LineOffers line;
    line.currency = Currency::from_code("EUR");
    for (int c = 0; c < 1 + pick(4); ++c) line.colours.push_back("c" + std::to_string(c));
    for (int s = 0; s < 1 + pick(12); ++s) line.sizes.push_back("s" + std::to_string(s));
    for (std::size_t c = 0; c < line.colours.size(); ++c) {
      for (std::size_t s = 0; s < line.sizes.size(); ++s) {
        if (pick(8) == 0) continue;
        line.offers.push_back({static_cast<std::uint16_t>(c), static_cast<std::uint16_t>(s),
                               static_cast<Stock>(pick(3)), pick(9000), std::nullopt});
      }
    }
    LineOffers target = line;
    for (auto& offer : target.offers) {
      if (pick(4) == 0)
        offer.price = pick(3) == 0 ? std::nullopt : std::optional(MinorUnits{pick(9000)});
      if (pick(4) == 0) offer.full_price = pick(9000);
      if (pick(4) == 0) offer.stock = static_cast<Stock>(pick(3));
    }
    ASSERT_EQ(decode_offers(bytes_of(line)), line) << round;
    const auto delta = encode_offers_delta(line, target);
    ASSERT_TRUE(delta);
    ASSERT_TRUE(apply_offers_delta(*delta, line));
    ASSERT_EQ(line, target) << round;
  }
}

TEST(LineCodec, EveryTruncationIsNoticed) {
  const std::string bytes = bytes_of(two_by_two());
  for (std::size_t length = 0; length < bytes.size(); ++length) {
    EXPECT_EQ(decode_offers(bytes.substr(0, length)), std::nullopt) << length;
  }
}

}  // namespace
}  // namespace rangebook
