// Captures read again from the book after the mapping was put right. Invented shops and rows.
#include "tracker/app/retry.h"

#include <gtest/gtest.h>

#include <fstream>

#include "tests/tracker/store/temp_book.h"
#include "tracker/app/pipeline.h"
#include "tracker/store/snapshot_reader.h"

namespace rangebook {
namespace {

TableOptions options_of(const std::vector<std::pair<std::string, std::string>>& words) {
  TableOptions options;
  for (const auto& [name, word] : words) EXPECT_FALSE(set_option(options, name, word));
  return options;
}

class Retries : public ::testing::Test {
 protected:
  std::string write(const std::string& name, const std::string& text) {
    std::ofstream(folder_.file(name)) << text;
    return folder_.file(name);
  }

  CaptureReport capture(const std::vector<std::string>& files, const MappingRequest& mapping = {},
                        const std::string& save = {}) {
    CaptureRequest request;
    request.files = files;
    request.shop = "mill";
    request.season = "AW25";
    request.on = parse_day("2025-09-01");
    request.mapping = mapping;
    request.save_profile = save;
    return std::get<CaptureReport>(run_capture(book_, request, {}));
  }

  RetryReport retry(const MappingRequest& mapping, bool keep = true) {
    auto taken = retry_capture(book_, {"mill", "", mapping}, keep, {});
    EXPECT_TRUE(std::holds_alternative<RetryReport>(taken));
    return std::get<RetryReport>(std::move(taken));
  }

  std::size_t lines(std::int64_t id) const {
    return read_snapshot(book_, id, SnapshotDetail::without).lines.size();
  }

  TempFolder folder_;
  Book book_ = [this] {
    Book book = Book::open(folder_.file("b.rangebook"), true);
    book.put_shop(mill_shop());
    return book;
  }();
};

TEST_F(Retries, AColumnNamedNowCuresWhatWasRefused) {
  const auto good = write("a.csv", "code,name,price\nM1,Maya,79.90\nM2,Nora,59.90\n");
  const auto bad = write("b.csv", "code,Ding,price\nM3,Ida,40.00\nM4,Eva,30.00\n");
  const auto first = capture({good, bad});
  EXPECT_EQ(first.outcome.lines, 2U);
  EXPECT_EQ(first.outcome.refused_rows, 1U);
  const MappingRequest ding{options_of({{"column", "Ding=name"}}), {}, false};

  const auto dry = retry(ding, false);
  EXPECT_EQ(dry.cured, 1U);
  EXPECT_EQ(dry.documents.size(), 2U);
  EXPECT_EQ(lines(first.outcome.id), 2U);

  const auto report = retry(ding);
  EXPECT_TRUE(report.capture.kept);
  EXPECT_EQ(report.capture.outcome.id, first.outcome.id);
  EXPECT_EQ(report.lines_before, 2U);
  EXPECT_EQ(report.refused_before, 1U);
  EXPECT_EQ(report.cured, 1U);
  EXPECT_EQ(report.newly_refused, 0U);
  EXPECT_EQ(lines(first.outcome.id), 4U);
  EXPECT_TRUE(book_.rejections(first.outcome.id).empty());
  EXPECT_TRUE(check_book(book_).empty());
  EXPECT_TRUE(retry({}).capture.outcome.unchanged);  // what was said stands with the documents
}

TEST_F(Retries, RowsStillRefusedStayListed) {
  const auto file = write("a.csv", "code,name,price\nM1,Maya,\"1.299,00\"\nM2,Nora,ask\n");
  const auto id = capture({file}).outcome.id;
  EXPECT_EQ(book_.rejections(id).size(), 1U);
  const auto report = retry({options_of({{"column", "price=ignore"}}), {}, false});
  EXPECT_EQ(report.cured, 1U);
  EXPECT_EQ(lines(id), 2U);
  const auto worse = retry({options_of({{"column", "price=price"}}), {}, false});
  EXPECT_EQ(worse.cured, 0U);
  EXPECT_EQ(worse.newly_refused, 1U);
  EXPECT_EQ(book_.rejections(id).size(), 1U);
}

TEST_F(Retries, AProfileIsUsedAsItIsNow) {
  const auto file = write("a.csv", "Ding;Wert\nMaya;79,90\nNora;59,90\n");
  const auto said = options_of({{"column", "Ding=name"}, {"column", "Wert=full_price"}});
  const auto id = capture({file}, {said, {}, false}, "sheet").outcome.id;
  ASSERT_TRUE(book_.find_profile("mill", "sheet"));
  Profile changed = book_.find_profile("mill", "sheet").value();
  changed.options = options_of({{"column", "Ding=name"}, {"column", "Wert=price"}});
  book_.put_profile("mill", changed);
  const auto kept = retry({{}, "sheet", false});
  EXPECT_TRUE(kept.capture.outcome.unchanged || kept.capture.kept);
  // What was said for this capture alone still wins over the profile.
  const auto& offers = read_snapshot(book_, id, SnapshotDetail::without).lines.at(0).listing.offers;
  EXPECT_TRUE(offers.offers.at(0).full_price.has_value());
}

TEST_F(Retries, TheShopsProfileIsUsedUnaskedWhereItFits) {
  const auto said = options_of({{"column", "Ding=name"}, {"column", "Wert=price"}});
  book_.put_profile("mill", {"sheet", false, said});
  const auto fits = write("a.csv", "Ding;Wert\nMaya;79,90\n");
  const auto other = write("b.csv", "name,price\nNora,59.90\n");
  const auto report = capture({fits, other});
  EXPECT_EQ(report.outcome.lines, 2U);
  EXPECT_EQ(report.info.documents.at(0).profile, "sheet");
  EXPECT_EQ(report.info.documents.at(1).profile, "");
  EXPECT_EQ(report.notes.size(), 2U);
}

TEST_F(Retries, NothingReadableLeavesTheCaptureAlone) {
  const auto file = write("a.csv", "code,name,price\nM1,Maya,79.90\n");
  const auto id = capture({file}).outcome.id;
  const auto report = retry({options_of({{"header-row", "2"}}), {}, false});
  EXPECT_EQ(report.capture.outcome.lines, 0U);
  EXPECT_FALSE(report.capture.kept);
  EXPECT_EQ(lines(id), 1U);
}

TEST_F(Retries, AColumnThatIsNowhereIsSaid) {
  capture({write("a.csv", "code,name,price\nM1,Maya,79.90\n")});
  const auto taken = retry_capture(
      book_, {"mill", "", {options_of({{"column", "prise=price"}}), {}, false}}, true, {});
  ASSERT_TRUE(std::holds_alternative<NotThere>(taken));
  EXPECT_NE(std::get<NotThere>(taken).message.find("Did you mean \"price\"?"), std::string::npos);
}

}  // namespace
}  // namespace rangebook
