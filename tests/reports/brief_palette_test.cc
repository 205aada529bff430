// The palette section of a brief.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "reports/brief.h"
#include "reports/brief_formats.h"
#include "tests/reports/fixture/change_set.h"

namespace rangebook {
namespace {

std::vector<PalettePair> both_sides() {
  PalettePair all{"all", {}, {}};
  all.before = {
      20, 2, 30, 24, 1, 2, 1, 2, {6, 12, 6}, {8, 8, 8}, {12, 6, 6}, {}, {"Tumble", "<b>"}};
  all.after = {21, 0, 30, 30, 0, 0, 0, 0, {15, 10, 5}, {10, 10, 10}, {15, 10, 5}, {}, {}};
  PalettePair dresses = all;
  dresses.category = "dresses";
  return {all, dresses};
}

const BriefSection* palette_of(const Brief& brief) {
  for (const auto& section : brief.sections) {
    if (section.id == "palette") return &section;
  }
  return nullptr;
}

TEST(BriefPalette, SaysWhatItCountsAndWhatItLeavesOut) {
  const Brief brief = make_brief(fixture::rich(), {false, both_sides()});
  const auto* section = palette_of(brief);
  ASSERT_NE(section, nullptr);
  ASSERT_EQ(section->paragraphs.size(), 4U);
  EXPECT_EQ(plain_text(section->paragraphs[0], false),
            "Now: 30 of 30 colourways have one known colour: 15 warm (50.0%), 10 cool (33.3%), "
            "5 neutral (16.7%); 10 light (33.3%), 10 medium (33.3%), 10 deep (33.3%). The palette "
            "leans warm.");
  EXPECT_EQ(plain_text(section->paragraphs[1], false),
            "Then: 24 of 30 colourways have one known colour: 6 warm (25.0%), 12 cool (50.0%), "
            "6 neutral (25.0%); 8 light (33.3%), 8 medium (33.3%), 8 deep (33.3%). The palette "
            "leans cool.");
  EXPECT_EQ(plain_text(section->paragraphs[2], false),
            "Not among them, then: 2 in several colours, 1 print, 1 known by family only, 2 with a "
            "colour name that is not known (Tumble and <b>); 2 lines state no colour.");
  EXPECT_EQ(section->tables.at(0).rows.size(), 2U);
}

TEST(BriefPalette, EveryFormatShowsItAndTheShopsWordsStayInert) {
  const Brief brief = make_brief(fixture::rich(), {false, both_sides()});
  for (const auto& text :
       {brief_text(brief), brief_markdown(brief), brief_html(brief), brief_json(brief)}) {
    EXPECT_NE(text.find("leans warm"), std::string::npos);
    EXPECT_NE(text.find("Tumble"), std::string::npos);
  }
  EXPECT_EQ(brief_html(brief).find("<b>)"), std::string::npos);
}

TEST(BriefPalette, NothingToSayIsNoSection) {
  EXPECT_EQ(palette_of(make_brief(fixture::rich())), nullptr);
  EXPECT_EQ(palette_of(make_brief(fixture::rich(), {false, {{"all", {}, {}}}})), nullptr);
}

}  // namespace
}  // namespace rangebook
