// The list of changes as text, CSV and Markdown.
#include "reports/change_lists.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/reports/fixture/change_set.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

/// A plain reader of RFC 4180, written for this test alone.
std::vector<std::vector<std::string>> read_csv(const std::string& text) {
  std::vector<std::vector<std::string>> rows(1, {""});
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char sign = text[i];
    if (quoted && sign == '"' && i + 1 < text.size() && text[i + 1] == '"') {
      rows.back().back() += text[++i];
    } else if (sign == '"') {
      quoted = !quoted;
    } else if (!quoted && sign == ',') {
      rows.back().emplace_back();
    } else if (!quoted && sign == '\r') {
      ++i;
      rows.push_back({""});
    } else {
      rows.back().back() += sign;
    }
  }
  rows.pop_back();
  return rows;
}

TEST(ChangesCsv, OneRowAChangeWithItsAmountsAndRows) {
  const ChangeSet set = fixture::rich();
  const auto rows = read_csv(changes_csv(set));
  ASSERT_EQ(rows.size(), set.changes.size() + 1);
  for (std::size_t i = 0; i < set.changes.size(); ++i) {
    const Change& change = set.changes[i];
    const auto& row = rows[i + 1];
    ASSERT_EQ(row.size(), rows.front().size());
    EXPECT_EQ(row[0], to_string(change.kind));
    EXPECT_EQ(row[2], change.line ? change.line->code : "");
    const auto* price = change.after ? std::get_if<PriceFact>(&*change.after) : nullptr;
    EXPECT_EQ(row[8], price != nullptr ? decimal_text(price->amount) : "");
    const auto& seen = change.evidence.after;
    EXPECT_EQ(row[18], seen ? seen->document : "");
    EXPECT_EQ(row[19], seen && seen->line ? std::to_string(*seen->line) : "");
  }
}

TEST(ChangesCsv, ANameThatIsAFormulaIsDefused) {
  EXPECT_THAT(changes_csv(fixture::rich()), HasSubstr(",'=SUM(A1:A9),"));
}

TEST(ChangesText, OneLineAChangeUnderTheHeadingOfItsKind) {
  const std::string text = changes_text(fixture::rich());
  EXPECT_THAT(text, HasSubstr("\nFull price up (2)\n"
                              "  DR-1002  Tarn shirt dress  £79.90 -> £89.90  "
                              "[range-aw25.csv:21 -> range-aw26.csv:22]\n"));
  EXPECT_THAT(text, HasSubstr("\nNew lines (9)\n  DR-1001  Vale wrap dress  [- -> "));
  EXPECT_THAT(text, HasSubstr("58 carried + 9 new + 1 back = 68 lines now\n"));
  EXPECT_THAT(text, HasSubstr("  dresses  £49.00 -> £59.00  [whole capture -> whole capture]\n"));
}

TEST(ChangesText, NoControlCharactersFromNames) {
  ChangeSet set = fixture::rich();
  set.changes[0].line->name = "wrap\x1B[2J\ndress";
  set.changes[0].line->code = "\x07";
  EXPECT_THAT(changes_text(set), HasSubstr("wrap [2J dress"));
}

TEST(ChangesText, SaysSoWhenThereIsNone) {
  EXPECT_THAT(changes_text(fixture::unchanged()), HasSubstr("\nNo changes.\n"));
  EXPECT_THAT(changes_markdown(fixture::unchanged()), HasSubstr("\nNo changes.\n"));
}

TEST(ChangesMarkdown, NamesStayInertInTheirCells) {
  ChangeSet set = fixture::rich();
  set.changes[0].line->name = "a|b **c**";
  const std::string text = changes_markdown(set);
  EXPECT_THAT(text, HasSubstr("| DR-1001 | a\\|b \\*\\*c\\*\\* |"));
  EXPECT_THAT(text, HasSubstr("\\<script\\>alert(1)\\</script\\>"));
  EXPECT_THAT(text, Not(HasSubstr("<script>")));
}

}  // namespace
}  // namespace rangebook
