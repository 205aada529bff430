// What all tables share: rows by meaning, doubts, and refusals with a remedy.
#include "importers/table_reader.h"

#include <gtest/gtest.h>

#include "importers/csv_reader.h"
#include "tests/importers/read_rows.h"

namespace rangebook {
namespace {

TEST(TableReader, ARepairedRowIsTakenAndDoubted) {
  const auto out = read_csv("code,name,price\nM1,\"a \"tulip\" hem\",79\nM2,Nora,80\n");
  EXPECT_EQ(out.rows.size(), 2U);
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].refused, Refused::nothing);
  EXPECT_EQ(out.rejections[0].line, 2U);
  EXPECT_EQ(out.rejections[0].line_code, "M1");
}

TEST(TableReader, TablesWithoutHeaderAreRefusedWithARemedy) {
  const auto out = read_csv("M1,x1,79\nM2,x2,80\n");
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].kind, RejectionKind::no_name_column);
  EXPECT_FALSE(out.rejections[0].how_to_fix.empty());
}

TEST(TableReader, TheMappingTellsWhatWasDetected) {
  const auto out = read_csv("Range list\n\nname;price\nMaya;79\n");
  EXPECT_EQ(out.mapping, "delimiter=semicolon name=1 price=2; header=line 3");
}

TEST(TableReader, OptionsAreFollowed) {
  TableOptions options;
  options.delimiter = ';';
  options.decimal = ',';
  TextSource source("name;price\nMaya;1.299\n");
  const auto reader = open_csv(source, 0, options);
  EXPECT_EQ(reader->decimal_sign(), ',');
  options.encoding = "no-such-encoding";
  TextSource again("name;price\n");
  const auto refused = open_csv(again, 0, options);
  ASSERT_EQ(refused->next(), RowReader::Step::rejection);
  EXPECT_EQ(refused->rejection().kind, RejectionKind::bad_encoding);
  EXPECT_EQ(refused->next(), RowReader::Step::end);
}

}  // namespace
}  // namespace rangebook
