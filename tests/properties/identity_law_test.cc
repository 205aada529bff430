// Laws of identity through the whole program: the order in which captures are taken in, and how
// their rows are spread over documents, changes no answer; decisions hold whatever comes and goes.
// RANGEBOOK_SEED runs other ranges.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <set>
#include <tuple>

#include "tests/properties/random_range.h"
#include "tests/tracker/store/temp_book.h"
#include "tracker/app/link_desk.h"
#include "tracker/app/pipeline.h"

namespace rangebook {
namespace {

using testing::Random;

constexpr int kRounds = 6;
constexpr int kSeasons = 4;

/// One line of an invented shop as a row of a table.
struct Row {
  int style = 0;
  std::string text;
};

/// A style has words of its own; some styles share most of them, so that questions arise.
Row row_of(int style, const std::string& code, int season, Random& random) {
  static const std::vector<std::string> kFirst{"Maya", "Orla", "Greta", "Hedda", "Ines", "Ada"};
  static const std::vector<std::string> kSecond{"Wrap", "Midi", "Cable", "Pleated", "Linen"};
  static const std::vector<std::string> kThing{"Dress", "Tunic", "Jumper", "Skirt"};
  static const std::vector<std::string> kCloth{"100% cotton", "100% viscose", "100% wool",
                                               "60% wool 40% acrylic"};
  const auto at = static_cast<std::size_t>(style);
  std::string name = kFirst[at % 6] + " " + kSecond[at / 2 % 5] + " " + kThing[at / 3 % 4];
  if (season > 1 && random.one_in(4)) name = kFirst[at % 6] + " " + kThing[at / 3 % 4];
  // Some are changed so much that nobody can be sure.
  const bool changed = random.one_in(2);
  const std::string cloth = kCloth[changed ? random.below(4) : at % 4];
  const std::string text =
      changed ? fmt::format("{} with a {} neck", kThing[at / 3 % 4], at % 3 == 0 ? "high" : "round")
              : fmt::format("{} with {} buttons", name, 3 + style);
  return {style, fmt::format("{},{},{}s,{},8-14,{}.00,{},\"{}\"\n", code, name, kThing[at / 3 % 4],
                             at % 2 == 0 ? "navy|ecru" : "moss", 30 + style * 3 + (changed ? 9 : 0),
                             cloth, text)};
}

using Season = std::vector<Row>;

/// Styles come, go, come back, and now and then get a new code.
std::vector<Season> invent(Random& random) {
  std::vector<Season> seasons(kSeasons);
  std::map<int, std::string> codes;
  for (int season = 0; season < kSeasons; ++season) {
    for (int style = 0; style < 14; ++style) {
      if (random.one_in(4)) continue;
      std::string& code = codes[style];
      if (code.empty() || random.one_in(3)) code = fmt::format("C{}{:02}", season, style);
      seasons[static_cast<std::size_t>(season)].push_back(row_of(style, code, season, random));
    }
  }
  return seasons;
}

/// A book of its own, to be filled by captures.
class Shelf {
 public:
  /// Bounds far apart, so that many pairs are asked about.
  Shelf() : book_(Book::open(folder_.file("b.rangebook"), true)) {
    Shop shop = mill_shop();
    shop.link_above = 99;
    shop.ask_above = 2;
    book_.put_shop(shop);
  }

  /// Rows are dealt to so many documents.
  void take(const Season& rows, int season, std::size_t documents) {
    CaptureRequest request;
    request.shop = "mill";
    request.season = fmt::format("AW{}", 22 + season);
    request.on = date::sys_days(date::year(2022 + season) / 9 / 1);
    for (std::size_t i = 0; i < documents; ++i) {
      const std::string path = folder_.file(fmt::format("{}-{}-{}.csv", season, documents, i));
      std::ofstream out(path);
      out << "line_code,name,category,colour,size,price,composition,description\n";
      for (std::size_t k = i; k < rows.size(); k += documents) out << rows[k].text;
      request.files.push_back(path);
    }
    run_capture(book_, request, {});
  }

  /// What a comparison says, without numbers of the book, documents and rows.
  using Told = std::multiset<
      std::tuple<ChangeKind, std::string, std::optional<Fact>, std::optional<Fact>, std::string>>;
  Told told(int from, int to) {
    const auto found = run_comparison(
        book_, {"mill", fmt::format("AW{}", 22 + from), fmt::format("AW{}", 22 + to)});
    const auto& set = std::get<ChangeSet>(found);
    EXPECT_TRUE(set.reconciliation.adds_up());
    Told told;
    for (const Change& change : set.changes) {
      told.emplace(change.kind, change.line ? change.line->code : change.category, change.before,
                   change.after, change.evidence.link);
    }
    return told;
  }
  std::vector<Told> all() {
    std::vector<Told> all;
    for (int from = 0; from < kSeasons; ++from) {
      for (int to = from + 1; to < kSeasons; ++to) all.push_back(told(from, to));
    }
    return all;
  }
  LinkList links() { return std::get<LinkList>(list_links(book_, {"mill", "", ""})); }
  std::vector<std::string> waiting() {
    std::vector<std::string> all;
    for (const LinkCase& pair : links().waiting) {
      all.push_back(pair.reference + " " + pair.sentence);
    }
    return all;
  }
  Book& book() { return book_; }

 private:
  TempFolder folder_;
  Book book_;
};

template <typename Check>
void for_some(Check check) {
  const std::uint64_t first = testing::seed_or(20261125);
  for (int round = 0; round < kRounds && !::testing::Test::HasFailure(); ++round) {
    const std::uint64_t seed = first + static_cast<std::uint64_t>(round);
    SCOPED_TRACE("RANGEBOOK_SEED=" + std::to_string(seed));
    Random random(seed);
    check(random);
  }
}

void take_in_order(Shelf& shelf, const std::vector<Season>& seasons, const std::vector<int>& order,
                   std::size_t documents) {
  for (const int season : order) {
    shelf.take(seasons[static_cast<std::size_t>(season)], season, documents);
  }
}

TEST(IdentityLaw, TheOrderOfTakingCapturesInChangesNoAnswer) {
  for_some([](Random& random) {
    const auto seasons = invent(random);
    std::vector<int> order{0, 1, 2, 3};
    Shelf straight;
    take_in_order(straight, seasons, order, 1);
    random.shuffle(order);
    Shelf shuffled;
    take_in_order(shuffled, seasons, order, 1);
    EXPECT_EQ(straight.all(), shuffled.all());
    EXPECT_EQ(straight.waiting(), shuffled.waiting());
  });
}

TEST(IdentityLaw, OrderAndDocumentsOfRowsChangeNoAnswer) {
  for_some([](Random& random) {
    auto seasons = invent(random);
    Shelf whole;
    take_in_order(whole, seasons, {0, 1, 2, 3}, 1);
    for (Season& season : seasons) random.shuffle(season);
    Shelf dealt;
    take_in_order(dealt, seasons, {0, 1, 2, 3}, 3);
    EXPECT_EQ(whole.all(), dealt.all());
    EXPECT_EQ(whole.waiting(), dealt.waiting());
  });
}

TEST(IdentityLaw, DecisionsHoldAndAreNeverAskedAgain) {
  std::size_t asked = 0;
  for_some([&asked](Random& random) {
    const auto seasons = invent(random);
    Shelf shelf;
    Shop timid = mill_shop();  // asks about most of what others link
    timid.link_above = 100;
    timid.ask_above = 5;
    shelf.book().put_shop(timid);
    take_in_order(shelf, seasons, {0, 1, 2, 3}, 1);
    const auto before = shelf.all();
    std::vector<std::string> settled;
    for (auto open = shelf.links().waiting; !open.empty(); open = shelf.links().waiting) {
      const std::string reference = open.front().reference;
      EXPECT_EQ(std::count(settled.begin(), settled.end(), reference), 0);
      const auto done = settle_links(shelf.book(), "mill", {reference}, random.one_in(2));
      if (!std::holds_alternative<std::vector<Settled>>(done)) {
        ASSERT_TRUE(std::holds_alternative<std::vector<Settled>>(
            settle_links(shelf.book(), "mill", {reference}, false)));
      }
      settled.push_back(reference);
    }
    const auto after = shelf.all();
    shelf.book().undo_capture("mill");
    shelf.take(seasons[3], 3, 2);
    EXPECT_EQ(shelf.all(), after);
    EXPECT_TRUE(shelf.links().waiting.empty());
    for (std::size_t i = 0; i < settled.size(); ++i) unsettle_link(shelf.book(), "mill", "");
    EXPECT_EQ(shelf.all(), before);
    asked += settled.size();
  });
  EXPECT_GT(asked, 0U);
}

// What is carried from A to B and from B to C is carried from A to C, so nothing is told of a line
// in one comparison that another denies.
TEST(IdentityLaw, ComparisonsAgreeWithEachOther) {
  for_some([](Random& random) {
    const auto seasons = invent(random);
    Shelf shelf;
    take_in_order(shelf, seasons, {0, 1, 2, 3}, 1);
    /// Numbers of the lines that a comparison names, by their code in the later capture.
    const auto numbers = [&](int from, int to) {
      const auto found = run_comparison(
          shelf.book(), {"mill", fmt::format("AW{}", 22 + from), fmt::format("AW{}", 22 + to)});
      std::map<std::string, LineId> ids;
      for (const Change& change : std::get<ChangeSet>(found).changes) {
        if (change.line && change.evidence.after) ids[change.line->code] = change.line->id;
      }
      return ids;
    };
    const auto direct = numbers(0, 3);
    const auto last = numbers(2, 3);
    for (const auto& [code, id] : direct) {
      if (last.contains(code)) {
        EXPECT_EQ(last.at(code), id) << code;
      }
    }
  });
}

}  // namespace
}  // namespace rangebook
