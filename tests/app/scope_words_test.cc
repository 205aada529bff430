// Words for scopes.
#include "tracker/app/scope_words.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

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
