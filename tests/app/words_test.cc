// The nearest word, and words for scopes.
#include "tracker/app/words.h"

#include <gtest/gtest.h>

#include "tracker/app/scope_words.h"

namespace rangebook {
namespace {

const std::vector<std::string> kVerbs{"capture", "changes", "check", "shop"};

TEST(NearestWord, OneSlipIsForgiven) {
  EXPECT_EQ(nearest_word("captur", kVerbs), "capture");
  EXPECT_EQ(nearest_word("cahnges", kVerbs), "changes");  // neighbours swapped
  EXPECT_EQ(nearest_word("shopp", kVerbs), "shop");
  EXPECT_EQ(nearest_word("check", kVerbs), "check");
}

TEST(NearestWord, AnotherWordIsNotGuessed) {
  EXPECT_EQ(nearest_word("revisit", kVerbs), std::nullopt);
  EXPECT_EQ(nearest_word("", kVerbs), std::nullopt);
  EXPECT_EQ(did_you_mean("xyz", kVerbs), "");
}

TEST(ParseScope, WordsAndSlugs) {
  EXPECT_EQ(std::get<Scope>(parse_scope("all")).kind, Scope::Kind::all);
  EXPECT_EQ(std::get<Scope>(parse_scope("picks")).kind, Scope::Kind::picks);
  const Scope scope = std::get<Scope>(parse_scope("knitwear,Jackets & Coats,dresses,dresses"));
  EXPECT_EQ(to_string(scope), "dresses,jackets-coats,knitwear");
}

TEST(ParseScope, AMistypedCategoryWouldCoverNothing) {
  const std::string said = std::get<std::string>(parse_scope("dreses"));
  EXPECT_NE(said.find("Did you mean \"dresses\"?"), std::string::npos);
}

}  // namespace
}  // namespace rangebook
