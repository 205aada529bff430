// The words for options, and the text they are kept as. Words are our own; examples invented.
#include "schema/table_options.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

TableOptions options_from(const std::vector<std::pair<std::string, std::string>>& words) {
  TableOptions options;
  for (const auto& [name, word] : words) {
    const auto problem = set_option(options, name, word);
    EXPECT_FALSE(problem) << (problem ? problem->what : "");
  }
  return options;
}

TEST(TableOptions, WordsAndSignsMeanTheSame) {
  EXPECT_EQ(options_from({{"delimiter", "semicolon"}}), options_from({{"delimiter", ";"}}));
  EXPECT_EQ(options_from({{"delimiter", "tab"}}).delimiter, '\t');
  EXPECT_EQ(options_from({{"delimiter", "^"}}).delimiter, '^');
  EXPECT_EQ(options_from({{"decimal", "comma"}}), options_from({{"decimal", ","}}));
  EXPECT_EQ(options_from({{"quote", "single"}}), options_from({{"quote", "'"}}));
  EXPECT_TRUE(options_from({{"quote", "none"}}).no_quotes);
  EXPECT_TRUE(options_from({{"header-row", "none"}}).no_header);
  EXPECT_EQ(options_from({{"header-row", "3"}}).header_row, 3U);
}

TEST(TableOptions, ALaterWordTakesTheEarlierOnesPlace) {
  const auto options = options_from({{"header-row", "none"},
                                     {"header-row", "2"},
                                     {"column", "Preis=price"},
                                     {"column", "Preis=full_price"}});
  EXPECT_FALSE(options.no_header);
  ASSERT_EQ(options.columns.size(), 1U);
  EXPECT_EQ(options.columns[0].field, Field::full_price);
}

TEST(TableOptions, ColumnsSayWhatTheyMean) {
  const auto options = options_from(
      {{"column", "a=b=price"}, {"column", "#3=colour+size"}, {"column", "Notes=ignore"}});
  ASSERT_EQ(options.columns.size(), 3U);
  EXPECT_EQ(options.columns[0].column, "a=b");
  EXPECT_TRUE(options.columns[1].colour_size);
  EXPECT_FALSE(options.columns[2].field);
}

TEST(TableOptions, AWrongWordSaysWhichThereAre) {
  TableOptions options;
  const auto wrong = [&](const std::string& name, const std::string& word) {
    const auto problem = set_option(options, name, word);
    return problem ? problem.value() : OptionProblem{};
  };
  EXPECT_EQ(wrong("delimiter", "semicolons").allowed.size(), 5U);
  EXPECT_EQ(wrong("delimiter", "x").word, "x");
  EXPECT_FALSE(wrong("delimiter", ".").what.empty());
  EXPECT_FALSE(wrong("header-row", "0").what.empty());
  EXPECT_FALSE(wrong("header-row", "2x").what.empty());
  EXPECT_EQ(wrong("decimal", "dot").allowed, (std::vector<std::string>{"point", "comma"}));
  EXPECT_EQ(wrong("column", "Preis=prise").word, "prise");
  EXPECT_NE(wrong("column", "Preis").what.find("\"Preis=price\""), std::string::npos);
  EXPECT_NE(wrong("column", "=price").what.find("does not say"), std::string::npos);
  EXPECT_TRUE(options.empty());
}

TEST(TableOptions, TheTextReadsBack) {
  const auto options = options_from({{"delimiter", "bar"},
                                     {"quote", "^"},
                                     {"encoding", "windows-1252"},
                                     {"header-row", "4"},
                                     {"decimal", "comma"},
                                     {"sheet", "Range AW26"},
                                     {"column", "Price\nEUR=price"},
                                     {"column", "back\\slash=name"},
                                     {"column", "#2=ignore"}});
  EXPECT_EQ(table_options_of(to_text(options)), options);
  EXPECT_EQ(to_text(TableOptions{}), "");
  EXPECT_EQ(table_options_of(""), TableOptions{});
  EXPECT_FALSE(table_options_of("delimiter"));
  EXPECT_FALSE(table_options_of("colour=blue\n"));
}

TEST(TableOptions, WhatIsSaidOnTopWins) {
  const auto below = options_from(
      {{"delimiter", "bar"}, {"header-row", "none"}, {"column", "A=name"}, {"column", "B=price"}});
  const auto above = options_from({{"header-row", "2"}, {"column", "B=full_price"}});
  const auto both = overlaid(below, above);
  EXPECT_EQ(both.delimiter, '|');
  EXPECT_FALSE(both.no_header);
  EXPECT_EQ(both.header_row, 2U);
  ASSERT_EQ(both.columns.size(), 2U);
  EXPECT_EQ(both.columns[1].field, Field::full_price);
  EXPECT_EQ(overlaid(below, {}), below);
  EXPECT_EQ(overlaid({}, below), below);
}

}  // namespace
}  // namespace rangebook
