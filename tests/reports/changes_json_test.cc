// The JSON of a change set, read back with an independent library and compared with the value.
#include "reports/changes_json.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/reports/fixture/change_set.h"
#include "tests/reports/fixture/read_json.h"

namespace rangebook {
namespace {

using nlohmann::json;

json parsed(const ChangeSet& set) { return fixture::read_json(changes_json(set)); }

json expected(const NameFact& fact) { return {{"code", fact.code}, {"name", fact.name}}; }
json expected(const PriceFact& fact) {
  json result{{"amount_minor", fact.amount.minor}, {"currency", fact.amount.currency.code()}};
  if (fact.full) result["full_amount_minor"] = fact.full->minor;
  if (!fact.colours.empty()) result["colours"] = fact.colours;
  if (!fact.sizes.empty()) result["sizes"] = fact.sizes;
  return result;
}
json expected(const ColourFact& fact) { return {{"colour", fact.colour}}; }
json expected(const SizeFact& fact) {
  return {{"system", to_string(fact.system)},
          {"fit", to_string(fact.fit)},
          {"labels", fact.labels},
          {"min", fact.min},
          {"max", fact.max}};
}
json expected(const CompositionFact& fact) { return {{"composition", fact.composition}}; }
json expected(const CategoryFact& fact) { return {{"category", fact.category}}; }
json expected(const StockFact& fact) {
  return {{"in_stock", fact.in_stock}, {"offered", fact.offered}};
}
json expected(const TermsFact& fact) {
  return {{"field", fact.field},
          {"value", fact.value},
          {"sentence", fact.sentence},
          {"direction", to_string(fact.direction)}};
}
/// Decimal strings turned back into millionths, so the printing is checked from the other side.
std::int64_t millionths(const json& text) {
  std::string digits = text.get<std::string>();
  EXPECT_EQ(digits.at(digits.size() - 7), '.');
  digits.erase(digits.size() - 7, 1);
  return std::stoll(digits);
}
json expected(const std::optional<Fact>& fact) {
  if (!fact) return nullptr;
  return std::visit(
      [](const auto& content) -> json {
        if constexpr (std::is_same_v<std::decay_t<decltype(content)>, IndexFact>) {
          return content.lines;
        } else {
          return expected(content);
        }
      },
      *fact);
}
json expected(const std::optional<Sighting>& seen) {
  if (!seen) return nullptr;
  return {{"capture", seen->capture},
          {"season", seen->season},
          {"date", to_string(seen->on)},
          {"document", seen->document},
          {"line", seen->line ? json(*seen->line) : json(nullptr)}};
}

void expect_side(const json& side, const std::optional<Fact>& fact) {
  const auto* index = fact ? std::get_if<IndexFact>(&*fact) : nullptr;
  if (index == nullptr) {
    EXPECT_EQ(side, expected(fact));
    return;
  }
  EXPECT_EQ(side.size(), 4U);
  EXPECT_EQ(millionths(side.at("jevons")), index->jevons);
  EXPECT_EQ(millionths(side.at("dutot")), index->dutot);
  EXPECT_EQ(millionths(side.at("carli")), index->carli);
  EXPECT_EQ(side.at("lines"), index->lines);
}

void expect_change(const json& read, const Change& change) {
  SCOPED_TRACE(read.dump());
  EXPECT_EQ(parse_change_kind(read.at("kind").get<std::string>()), change.kind);
  if (change.line) {
    EXPECT_EQ(read.at("line"), (json{{"id", change.line->id},
                                     {"code", change.line->code},
                                     {"name", change.line->name},
                                     {"category", change.line->category}}));
    EXPECT_FALSE(read.contains("category"));
  } else {
    EXPECT_TRUE(read.at("line").is_null());
    EXPECT_EQ(read.at("category"), change.category);
  }
  expect_side(read.at("before"), change.before);
  expect_side(read.at("after"), change.after);
  EXPECT_EQ(read.at("evidence"), (json{{"before", expected(change.evidence.before)},
                                       {"after", expected(change.evidence.after)},
                                       {"link", change.evidence.link}}));
}

TEST(ChangesJson, EveryChangeEqualsTheValue) {
  const ChangeSet set = fixture::rich();
  const json read = parsed(set);
  ASSERT_EQ(read.at("changes").size(), set.changes.size());
  for (std::size_t i = 0; i < set.changes.size(); ++i) {
    expect_change(read.at("changes").at(i), set.changes[i]);
  }
}

TEST(ChangesJson, HeadEqualsTheValue) {
  const ChangeSet set = fixture::rich();
  const json read = parsed(set);
  EXPECT_EQ(read.at("format"), "rangebook.changes/1");
  EXPECT_EQ(read.at("shop"), "quillmere");
  EXPECT_EQ(
      read.at("from"),
      (json{{"id", 41},
            {"season", "AW25"},
            {"date", "2025-09-03"},
            {"scope", "all"},
            {"documents",
             {{{"name", "range-aw25.csv"}, {"sha256", std::string(64, 'a')}, {"bytes", 48211}}}}}));
  EXPECT_EQ(read.at("to").at("scope"), "dresses,knitwear,skirts,trousers");
  EXPECT_EQ(read.at("coverage"), (json{{"scope", "dresses,knitwear,skirts,trousers"},
                                       {"lines_compared", 58},
                                       {"rows_refused_then", 2},
                                       {"rows_refused_now", 1},
                                       {"notes", set.coverage.notes}}));
  EXPECT_EQ(read.at("reconciliation"), (json{{"lines_then", 70},
                                             {"lines_now", 68},
                                             {"carried", 58},
                                             {"new", 9},
                                             {"returned", 1},
                                             {"unseen_then", 0},
                                             {"dropped", 9},
                                             {"not_covered", 3}}));
}

TEST(ChangesJson, CountsNameEveryKind) {
  const ChangeSet set = fixture::rich();
  const json counts = parsed(set).at("counts");
  EXPECT_EQ(counts.size(), kChangeKindCount);
  for (std::size_t i = 0; i < kChangeKindCount; ++i) {
    EXPECT_EQ(counts.at(std::string(to_string(static_cast<ChangeKind>(i)))), set.counts[i]);
  }
  EXPECT_EQ(counts.at("terms-changed"), 0);
  EXPECT_EQ(counts.at("price-up"), 2);
}

TEST(ChangesJson, CategoriesEqualTheValue) {
  const ChangeSet set = fixture::rich();
  const json dresses = parsed(set).at("categories").at(1);
  EXPECT_EQ(dresses.at("category"), "dresses");
  EXPECT_EQ(dresses.at("new"), 6);
  EXPECT_EQ(dresses.at("index").at("jevons"), "1.052000");
  EXPECT_EQ(dresses.at("after").at("prices").at(0).at("entry_minor"), 5900);
  const json& steps = dresses.at("after").at("reach").at(0).at("steps");
  ASSERT_EQ(steps.size(), 10U);
  EXPECT_EQ(steps.at(9),
            (json{{"label", "24"}, {"offering", 4}, {"in_stock", 2}, {"stock_unknown", 0}}));
  EXPECT_TRUE(parsed(set).at("categories").at(2).at("index").is_null());
}

TEST(ChangesJson, KeysStandInTheDocumentedOrder) {
  std::vector<std::string> keys;
  const auto read = fixture::read_ordered_json(changes_json(fixture::rich()));
  for (const auto& [key, value] : read.items()) keys.push_back(key);
  EXPECT_EQ(keys,
            (std::vector<std::string>{"format", "shop", "from", "to", "coverage", "counts",
                                      "reconciliation", "categories", "was_prices", "changes"}));
}

TEST(ChangesJson, NoChangesIsStillAFullDocument) {
  const json read = parsed(fixture::unchanged());
  EXPECT_EQ(read.at("changes"), json::array());
  EXPECT_EQ(read.at("counts").size(), kChangeKindCount);
  EXPECT_EQ(read.at("categories"), json::array());
}

TEST(ChangesJson, EqualValuesGiveEqualBytesOneChangeALine) {
  const ChangeSet set = fixture::large(500);
  const std::string text = changes_json(set);
  EXPECT_EQ(text, changes_json(fixture::large(500)));
  std::size_t lines = 0;
  std::size_t at = 0;
  while ((at = text.find("\n{\"kind\":", at)) != std::string::npos) ++lines, ++at;
  EXPECT_EQ(lines, 500U);
  EXPECT_EQ(text.back(), '\n');
}

TEST(ChangesJson, BrokenNamesStillGiveValidJson) {
  ChangeSet set = fixture::rich();
  set.changes[0].line->name = "caf\xE9 \"dress\"\n\x01";
  EXPECT_EQ(parsed(set).at("changes").at(0).at("line").at("name"),
            "caf\xEF\xBF\xBD \"dress\"\n\x01");
}

TEST(IndexText, SixPlacesAlways) {
  EXPECT_EQ(index_text(1'031'200), "1.031200");
  EXPECT_EQ(index_text(1'000'000), "1.000000");
  EXPECT_EQ(index_text(7), "0.000007");
  EXPECT_EQ(index_text(-1'500'000), "-1.500000");
  EXPECT_EQ(index_text(12'345'678'901), "12345.678901");
}

}  // namespace
}  // namespace rangebook
