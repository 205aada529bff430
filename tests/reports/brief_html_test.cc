// The page: well formed, self-contained, readable by assistive programs, safe with any name.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <regex>
#include <set>

#include "reports/brief_formats.h"
#include "reports/brief_style.h"
#include "reports/page_script.h"
#include "tests/reports/fixture/change_set.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

std::string page() { return brief_html(make_brief(fixture::rich(), {true})); }

std::vector<std::string> matches(const std::string& text, const char* pattern) {
  std::vector<std::string> found;
  const std::regex expression(pattern);
  for (std::sregex_iterator it(text.begin(), text.end(), expression), end; it != end; ++it) {
    found.push_back((*it)[1]);
  }
  return found;
}

/// Tags in balance; void elements by the HTML Standard, section 13.1.2.
void expect_balanced(const std::string& html) {
  static const std::set<std::string> kVoid{"meta", "br", "rect", "line", "circle", "input"};
  std::vector<std::string> open;
  for (const std::string& tag : matches(html, "<(/?[a-z0-9]+)[^>]*>")) {
    if (tag[0] != '/') {
      if (!kVoid.contains(tag)) open.push_back(tag);
      continue;
    }
    ASSERT_FALSE(open.empty()) << tag;
    ASSERT_EQ(open.back(), tag.substr(1));
    open.pop_back();
  }
  EXPECT_TRUE(open.empty());
}

TEST(BriefPage, IsBalanced) {
  expect_balanced(page());
  expect_balanced(brief_html(make_brief(fixture::unchanged())));
  expect_balanced(brief_html(make_brief(fixture::large(300))));
}

TEST(BriefPage, EveryLinkHasItsTargetAndEveryIdIsUnique) {
  const std::string html = page();
  std::set<std::string> ids;
  for (const std::string& id : matches(html, " id=\"([^\"]*)\"")) {
    EXPECT_TRUE(ids.insert(id).second) << id;
  }
  const auto links = matches(html, " href=\"#([^\"]*)\"");
  EXPECT_GT(links.size(), 100U);
  for (const std::string& link : links) EXPECT_TRUE(ids.contains(link)) << link;
  for (const std::string& name : matches(html, " aria-labelledby=\"([^\"]*)\"")) {
    EXPECT_TRUE(ids.contains(name)) << name;
  }
}

TEST(BriefPage, AsksForNothingOutsideAndRunsNothing) {
  const std::string html = page();
  EXPECT_THAT(html, Not(HasSubstr("://")));
  EXPECT_THAT(html, Not(HasSubstr("url(")));
  EXPECT_EQ(matches(html, "<(script)").size(), 1U) << "our own";
  EXPECT_THAT(brief_html(make_brief(fixture::unchanged())), Not(HasSubstr("<script")));
  EXPECT_THAT(html, HasSubstr("&lt;script&gt;alert(1)&lt;/script&gt;"));
  EXPECT_THAT(html, HasSubstr("default-src &#39;none&#39;"));
}

TEST(BriefPage, TablesHaveCaptionsAndScopes) {
  const std::string html = page();
  EXPECT_EQ(matches(html, "<(table)>").size(), matches(html, "<(caption)>").size());
  for (const std::string& attributes : matches(html, "<th ([^>]*)>")) {
    EXPECT_THAT(attributes, HasSubstr("scope="));
  }
}

TEST(BriefPage, HasOneHeadingOfEachSectionALanguageAndASkipLink) {
  const std::string html = page();
  EXPECT_EQ(matches(html, "<(h1)>").size(), 1U);
  EXPECT_EQ(matches(html, "<(section) ").size(), matches(html, "<(h2) ").size());
  EXPECT_THAT(html, HasSubstr("<html lang=\"en-GB\">"));
  EXPECT_THAT(html, HasSubstr("<a class=\"skip\" href=\"#brief\">"));
}

TEST(BriefPage, NamesOfAnyDirectionAreIsolated) {
  EXPECT_THAT(page(), HasSubstr("<bdi>سترة صوف</bdi>"));
}

TEST(BriefPage, HostileNamesAndLabelsStayText) {
  ChangeSet set = fixture::rich();
  const std::string hostile = "\"><img src=x onerror=alert(1)>" + std::string(3000, 'x') + "\xFF";
  set.shop.name = hostile;
  set.to.season = hostile;
  set.coverage.notes = {hostile};
  set.to.documents[0].name = hostile;
  for (Change& change : set.changes) {
    if (change.line) change.line->name = change.line->code = change.line->category = hostile;
    if (change.evidence.after) change.evidence.after->document = hostile;
    change.evidence.link = hostile;
  }
  const std::string html = brief_html(make_brief(set));
  expect_balanced(html);
  EXPECT_THAT(html, Not(HasSubstr("<img")));
}

TEST(BriefPage, LongListsFoldAllButTheFirstRows) {
  const std::string html = brief_html(make_brief(fixture::large(300)));
  EXPECT_THAT(html, HasSubstr("<summary>Full prices, largest move first: 290 more</summary>"));
  EXPECT_THAT(html, HasSubstr("data-rows=\"300\""));
}

TEST(BriefPage, LongListsBringOneScriptThatThePolicyNames) {
  const std::string html = brief_html(make_brief(fixture::large(300)));
  EXPECT_EQ(matches(html, "<(script)>").size(), 1U);
  EXPECT_THAT(html, HasSubstr(page_script()));
  EXPECT_THAT(html, HasSubstr("script-src &#39;sha256-" + std::string(page_script_hash())));
}

TEST(BriefPage, PicturesAreNamedAndDescribedAndHaveATable) {
  const std::string html = page();
  const std::size_t pictures = matches(html, "<(svg) ").size();
  EXPECT_GE(pictures, 5U);
  EXPECT_EQ(matches(html, "<svg (role=\"img\") ").size(), pictures);
  EXPECT_EQ(matches(html, "<(desc) id=").size(), pictures);
  EXPECT_GE(matches(html, "<summary>(The figures)</summary>").size(), 4U);
}

/// Relative luminance and contrast by WCAG 2.2, section "Terms" (definitions of both).
double luminance(const std::string& hex) {
  const std::array<double, 3> weights{0.2126, 0.7152, 0.0722};
  double sum = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    const double part = std::stoi(hex.substr(1 + i * 2, 2), nullptr, 16) / 255.0;
    const double linear = part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
    sum += weights[i] * linear;
  }
  return sum;
}
double contrast(const std::string& a, const std::string& b) {
  const double first = luminance(a);
  const double second = luminance(b);
  return (std::max(first, second) + 0.05) / (std::min(first, second) + 0.05);
}

TEST(BriefStyle, ColoursMeetTheContrastOfWcagAa) {
  EXPECT_NEAR(contrast("#000000", "#ffffff"), 21.0, 1e-9);
  const std::string css(brief_style());
  const auto colours = [&css](const std::string& name) {
    return matches(css, ("--" + name + ": (#[0-9a-f]{6});").c_str());
  };
  const auto papers = colours("paper");
  ASSERT_GE(papers.size(), 2U) << "light and dark";
  for (std::size_t paper = 0; paper < 2; ++paper) {
    for (const char* text : {"ink", "quiet", "mark"}) {
      EXPECT_GE(contrast(colours(text).at(paper), papers[paper]), 4.5) << text << paper;
    }
  }
}

}  // namespace
}  // namespace rangebook
