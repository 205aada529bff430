// Compositions as shops write them. Fibre names: Regulation (EU) 1007/2011, Annex I. Forms of
// writing: common practice, no source; languages other than English from memory.
#include "tracker/composition_parser.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

#include "schema/embedded.h"
#include "tests/check_rows.h"

namespace rangebook {
namespace {

std::string read(std::string_view text) {
  const auto composition = parse_composition(text);
  return composition ? to_string(*composition) : "nothing";
}

/// The names a row of Annex I gives: `flax (or linen)`, `polyamide or nylon`, `alpaca, llama, ..`.
std::vector<std::string> names_of(std::string row) {
  for (const auto* joint : {" (or ", " (", " or "}) {
    for (auto at = row.find(joint); at != row.npos; at = row.find(joint)) {
      row.replace(at, std::string(joint).size(), ", ");
    }
  }
  std::vector<std::string> names;
  std::istringstream parts(row);
  for (std::string name; std::getline(parts, name, ',');) {
    name.erase(0, name.find_first_not_of(' '));
    if (name.ends_with(')')) name.pop_back();
    names.push_back(name);
  }
  return names;
}

TEST(Fibres, EveryNameOfAnnexIIsKnown) {
  const auto rows = check_rows("fibres-1007-2011.tsv");
  ASSERT_EQ(rows.size(), 50U);
  for (const auto& row : rows) {
    // 48 stands for any material, 49 holds a slash, which parts fibres in a text.
    if (row[0] == "48" || row[0] == "49") continue;
    for (auto name : names_of(row[1])) {
      if (name == "animal") name = "animal hair";
      const auto composition = parse_composition("100% " + name);
      ASSERT_TRUE(composition.has_value()) << name;
      EXPECT_TRUE(composition->parts.at(0).fibres.at(0).known) << name;
      EXPECT_EQ(composition->parts.at(0).fibres.size(), 1U) << name;
    }
  }
}

TEST(Fibres, TheTableHasTheNumbersOfAnnexI) {
  std::vector<std::string> numbers;
  for (const auto& row : table_rows("tables/fibres.tsv")) numbers.emplace_back(row.at(0));
  for (const auto& row : check_rows("fibres-1007-2011.tsv")) {
    EXPECT_NE(std::find(numbers.begin(), numbers.end(), row[0]), numbers.end()) << row[1];
  }
}

// Codes that two public pages agree on (tests/checks/fibre-codes.tsv; not a standard).
TEST(Fibres, LabelCodes) {
  const auto rows = check_rows("fibre-codes.tsv");
  EXPECT_GT(rows.size(), 30U);
  for (const auto& row : rows) {
    const auto by_code = read("100% " + row[0]);
    auto meaning = row[1];
    if (meaning == "Flax/linen") meaning = "Flax";
    EXPECT_EQ(by_code, read("100% " + meaning)) << row[0];
    EXPECT_TRUE(parse_composition("100% " + row[0])->parts[0].fibres[0].known) << row[0];
  }
}

// The two pages disagree on MO and MD, but both mean modal by theirs.
TEST(Fibres, DisputedCodesOfModal) {
  for (const auto* code : {"MO", "MD", "CMD"}) {
    EXPECT_EQ(read(std::string("100% ") + code), "100% modal");
  }
  EXPECT_EQ(read("100% mo"), "100% mo");
}

TEST(Fibres, Origins) {
  const auto origin = [](const std::string& fibre) {
    return to_string(parse_composition("100% " + fibre)->parts.at(0).fibres.at(0).origin);
  };
  EXPECT_EQ(origin("cotton"), "natural");
  EXPECT_EQ(origin("cashmere"), "natural");
  EXPECT_EQ(origin("viscose"), "regenerated");
  EXPECT_EQ(origin("lyocell"), "regenerated");
  EXPECT_EQ(origin("polyester"), "synthetic");
  EXPECT_EQ(origin("elastane"), "synthetic");
  EXPECT_EQ(origin("leather"), "other");
  EXPECT_EQ(origin("moonstuff"), "other");
}

TEST(ParseComposition, ShareBeforeOrAfterTheFibre) {
  for (const auto* text :
       {"65% Cotton, 35% Polyester", "Cotton 65%, Polyester 35%", "65% cotton 35% polyester",
        "Cotton 65% Polyester 35%", "35% polyester/65% cotton", "65 % cotton and 35 % polyester",
        "COTTON: 65%; POLYESTER: 35%", "Cotton (65%), Polyester (35%)",
        "Cotton - 65%, 35% polyester", "65\xC2\xA0% Cotton\n35\xC2\xA0% Polyester", "CO 65 PES 35",
        "65% CO 35% PES", "65 percent cotton, 35 percent polyester", "%65 cotton, %35 polyester",
        "Made of 65% cotton and 35% polyester.", "65 cotton 35 polyester"}) {
    EXPECT_EQ(read(text), "65% cotton 35% polyester") << text;
  }
}

TEST(ParseComposition, OneFibre) {
  EXPECT_EQ(read("100 % cotton"), "100% cotton");
  EXPECT_EQ(read("cotton 100%"), "100% cotton");
  EXPECT_EQ(read("100% organic cotton. Machine wash at 30"), "100% cotton");
  EXPECT_EQ(read("100% Extra-fine merino wool"), "100% wool");
}

TEST(ParseComposition, Decimals) {
  EXPECT_EQ(read("97.5% cotton, 2.5% elastane"), "97.5% cotton 2.5% elastane");
  EXPECT_EQ(read("97,5 % Baumwolle, 2,5 % Elasthan"), "97.5% cotton 2.5% elastane");
  EXPECT_EQ(read("66.67% wool 33.33% silk"), "66.67% wool 33.33% silk");
}

TEST(ParseComposition, OtherNamesOfAFibre) {
  EXPECT_EQ(read("95% rayon 5% spandex"), "95% viscose 5% elastane");
  EXPECT_EQ(read("55% Linen, 45% nylon"), "55% flax 45% polyamide");
  EXPECT_EQ(read("50% lambswool, 50% merino"), "100% wool");
}

TEST(ParseComposition, OtherLanguages) {
  EXPECT_EQ(read("60% Schurwolle 40% Viskose"), "60% wool 40% viscose");
  EXPECT_EQ(read("60 % laine vierge, 40 % \xC3\xA9lasthanne"), "60% wool 40% elastane");
  EXPECT_EQ(read("60% algod\xC3\xB3n 40% poli\xC3\xA9ster"), "60% cotton 40% polyester");
  EXPECT_EQ(read("60% cotone 40% seta"), "60% cotton 40% silk");
  EXPECT_EQ(read("60% katoen 40% wol"), "60% cotton 40% wool");
  EXPECT_EQ(read("Oberstoff: 100% Wolle; Futter: 100% Viskose"), "100% wool; lining: 100% viscose");
  EXPECT_EQ(read("Tissu principal : 100 % soie. Doublure : 100 % coton"),
            "100% silk; lining: 100% cotton");
}

TEST(ParseComposition, Parts) {
  for (const auto* text :
       {"Main: 100% viscose. Lining: 100% polyester", "Shell: 100% viscose; Lining: 100% polyester",
        "100% viscose, lining 100% polyester", "100% viscose; 100% polyester lining",
        "Lining: 100% polyester / Main: 100% viscose",
        "Main fabric 100% viscose Lining 100% polyester",
        "Main: viscose 100%, Lining: polyester 100%", "Main viscose 100% lining polyester 100%",
        "100% viscose Lining: 100% polyester", "100% viscose (main), 100% polyester (lining)",
        "Composition: 100% viscose. Lining\n100% polyester"}) {
    EXPECT_EQ(read(text), "100% viscose; lining: 100% polyester") << text;
  }
  EXPECT_EQ(read("Main: 55% Wool, 42% Polyester, 3% Elastane; Lining: 100% Viscose"),
            "55% wool 42% polyester 3% elastane; lining: 100% viscose");
  EXPECT_EQ(read("Body: 95% cotton, 5% elastane. Sleeves: 100% polyamide. Trim: 100% PES"),
            "body: 95% cotton 5% elastane; sleeve: 100% polyamide; trim: 100% polyester");
  EXPECT_EQ(read("Fabric 1: 100% cotton. Fabric 2: 100% silk"), "100% cotton; main 2: 100% silk");
  EXPECT_EQ(read("Puffed bit: 100% cotton"), "puffed bit: 100% cotton");
  EXPECT_EQ(read("50% wool 50% silk lining"), "lining: 50% silk 50% wool");
  EXPECT_EQ(read("100% wool exclusive of trim"), "100% wool");
}

/// `wool 50 recycled`, for each fibre of the main part that something is claimed of.
std::string claims(const std::string& text) {
  std::string found;
  const Composition composition = parse_composition(text).value();
  for (const auto& share : composition.parts.at(0).fibres) {
    const auto add = [&](std::int32_t part, const char* what) {
      if (part == 0) return;
      if (!found.empty()) found += ", ";
      found += share.fibre + " " + std::to_string(part / 100) + " " + what;
    };
    add(share.recycled, "recycled");
    add(share.organic, "organic");
  }
  return found;
}

TEST(ParseComposition, RecycledAndOrganicAreClaimsOfAShare) {
  EXPECT_EQ(claims("50% recycled wool, 50% polyester"), "wool 50 recycled");
  EXPECT_EQ(claims("80% wool (recycled), 20% polyamide"), "wool 80 recycled");
  EXPECT_EQ(claims("60% organic cotton, 40% recycled cotton"),
            "cotton 40 recycled, cotton 60 organic");
  EXPECT_EQ(claims("70% Bio-Baumwolle, 30% recyceltes Polyester"),
            "cotton 70 organic, polyester 30 recycled");
  EXPECT_EQ(claims("80% poli\xC3\xA9ster reciclado 20% elastano"), "polyester 80 recycled");
  EXPECT_EQ(claims("70% coton biologique, 30% polyester recycl\xC3\xA9"),
            "cotton 70 organic, polyester 30 recycled");
  EXPECT_EQ(claims("80% cotone biologico, 20% poliammide riciclata"),
            "cotton 80 organic, polyamide 20 recycled");
  EXPECT_EQ(claims("100% gerecycled polyester"), "polyester 100 recycled");
  EXPECT_EQ(claims("65% cotton, 35% polyester"), "");
  EXPECT_EQ(read("50% recycled wool, 50% wool"), "100% wool");
}

TEST(ParseComposition, SharesByOrigin) {
  const auto shares = shares_by_origin(
      parse_composition("50% cotton, 20% viscose, 25% polyester, 5% moonstuff")->parts.at(0));
  EXPECT_EQ(shares, (OriginShares{5000, 2000, 2500, 500}));
}

TEST(ParseComposition, ImitationsAreNotLeather) {
  for (const auto* text : {"100% vegan leather", "100% Kunstleder", "100% simili cuir",
                           "100% polipiel", "100% ecopelle", "100% imitatieleer"}) {
    EXPECT_EQ(read(text), "100% imitation leather") << text;
  }
  EXPECT_EQ(read("100% real leather"), "100% leather");
}

TEST(ParseComposition, PartsInSixLanguages) {
  for (const auto* text :
       {"Outer: 90% wool 10% silk. Lining: 100% viscose. Filling: 100% polyester",
        "Oberstoff: 90% Wolle, 10% Seide; Futter: 100% Viskose; F\xC3\xBCllung: 100% Polyester",
        "Tissu : 90 % laine, 10 % soie. Doublure : 100 % viscose. Garnissage : 100 % polyester",
        "Tejido: 90% lana 10% seda. Forro: 100% viscosa. Relleno: 100% poli\xC3\xA9ster",
        "Tessuto: 90% lana 10% seta. Fodera: 100% viscosa. Imbottitura: 100% poliestere",
        "Buitenstof: 90% wol 10% zijde. Voering: 100% viscose. Vulling: 100% polyester",
        "WO 90% SE 10%; Lining: CV 100%; Filling: PL 100%"}) {
    EXPECT_EQ(read(text), "90% wool 10% silk; filling: 100% polyester; lining: 100% viscose")
        << text;
  }
  EXPECT_EQ(read("Main part: 100% cotton, sleeves: 60% viscose 40% nylon"),
            "100% cotton; sleeve: 60% viscose 40% polyamide");
}

TEST(ParseComposition, UnknownFibresStayVerbatim) {
  const auto composition = parse_composition("90% Moon-Stuff, 10% cotton");
  ASSERT_TRUE(composition.has_value());
  const auto& fibres = composition->parts.at(0).fibres;
  EXPECT_EQ(fibres.at(0).fibre, "Moon-Stuff");
  EXPECT_FALSE(fibres.at(0).known);
  EXPECT_TRUE(fibres.at(1).known);
  EXPECT_EQ(read("Moon stuff 100%"), "100% Moon stuff");
}

TEST(ParseComposition, SumsAreKeptAsRead) {
  EXPECT_FALSE(parse_composition("65% cotton, 30% polyester")->parts[0].sums_to_100());
  EXPECT_TRUE(parse_composition("65% cotton, 35% polyester")->parts[0].sums_to_100());
  EXPECT_TRUE(parse_composition("97.5% cotton, 2.5% elastane")->parts[0].sums_to_100());
  EXPECT_FALSE(parse_composition("60% cotton, 60% silk")->parts[0].sums_to_100());
}

TEST(ParseComposition, NothingToRead) {
  for (const auto* text :
       {"", "cotton", "100%", "%", "soft and warm", "Wash at 30", "Cotton 30 wash", "CO 65 PES 30",
        "120% cotton", "cotton/polyester 65/35", "Wool/cashmere 90%/10%", "Lining: none"}) {
    EXPECT_EQ(read(text), "nothing") << text;
  }
  EXPECT_EQ(read("100% cotton" + std::string(5000, ' ')), "nothing");
}

// Equal compositions have equal canonical texts, whatever the order; and reading one gives itself.
TEST(ParseComposition, CanonicalTextIsAFixedPoint) {
  for (const auto* text :
       {"35% polyester, 65% cotton", "Lining: 100% silk. Main: 50% wool 50% silk",
        "97.5% cotton 2.5% elastane; Trim: 60% alpaca 40% wool", "80% Moonstuff 20% CO"}) {
    EXPECT_EQ(read(read(text)), read(text)) << text;
  }
}

}  // namespace
}  // namespace rangebook
