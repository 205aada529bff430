// Archives of documents, and archives made to do harm.
#include "importers/container.h"

#include <gtest/gtest.h>

#include "tests/importers/zip_of.h"

namespace rangebook {
namespace {

using Names = std::vector<std::string>;

/// `name=bytes` of each document, `!what` of each refusal.
Names contents(Container& container) {
  Names out;
  for (auto step = container.next(); step != Container::Step::end; step = container.next()) {
    if (step == Container::Step::refused) {
      out.push_back("!" + container.fault().what);
      continue;
    }
    std::string bytes;
    auto& source = container.source();
    for (auto chunk = source.next_chunk(); !chunk.empty(); chunk = source.next_chunk()) {
      bytes += chunk;
    }
    out.push_back(container.name() + "=" + bytes.substr(0, 20));
  }
  return out;
}

Names in_archive(const ZipParts& parts) { return contents(*open_archive(zip_of(parts))); }

TEST(Container, DocumentsOfAnArchiveInItsOrder) {
  EXPECT_EQ(in_archive({{"b.csv", "name\nMaya\n"},
                        {"a/page.html", "<html>"},
                        {"a/page_files/frame.html", "<html>"},
                        {"a/look.png", "x"},
                        {"__MACOSX/._b.csv", "x"},
                        {".DS_Store", "x"},
                        {"feed", "[]"}}),
            (Names{"b.csv=name\nMaya\n", "a/page.html=<html>", "feed=[]"}));
}

TEST(Container, PicturesWithTheNameOfATableArePassedOver) {
  const auto archive = open_archive(zip_of({{"a.csv", "\x89PNG\r\n\x1A\n"}, {"b.jpg", "x"}}));
  EXPECT_TRUE(contents(*archive).empty());
  EXPECT_EQ(archive->left_aside().sentence(), "2 files that are no documents");
}

TEST(Container, NamesThatLeadOutAreRefused) {
  const std::string what = "!The archive holds a file whose name leads out of it.";
  EXPECT_EQ(in_archive({{"../a.csv", "x"}, {"b.csv", "y"}}), (Names{what, "b.csv=y"}));
  EXPECT_EQ(in_archive({{"a/../../b.csv", "x"}}), Names{what});
  EXPECT_EQ(in_archive({{"/etc/a.csv", "x"}}), Names{what});
  EXPECT_EQ(in_archive({{"a\\..\\..\\b.csv", "x"}}), Names{what});
  EXPECT_EQ(in_archive({{"C:/a.csv", "x"}}), Names{what});
}

TEST(Container, ArchivesWithinArchivesAreRefusedWorkbooksAreNot) {
  const std::string inner = zip_of({{"a.csv", "name\n"}});
  EXPECT_EQ(in_archive({{"in.zip", inner}}), Names{"!in.zip is an archive within the archive."});
  EXPECT_EQ(in_archive({{"in.csv", inner}}), Names{"!in.csv is an archive within the archive."});
  EXPECT_EQ(in_archive({{"r.xlsx", workbook_of("")}}).size(), 1U);
}

TEST(Container, ArchivesBeyondMeasureAreRefused) {
  const Names found =
      in_archive({{"a.csv", std::string(std::size_t{80} << 20U, 'a')}, {"b.csv", "x"}});
  ASSERT_FALSE(found.empty());
  EXPECT_NE(found.back().find("times its size"), std::string::npos);
}

TEST(Container, DamagedArchivesSaySo) {
  const std::string whole = zip_of({{"a.csv", std::string(5000, 'x')}});
  for (std::size_t keep = 0; keep < whole.size(); keep += 7) {
    for (const auto& line : contents(*open_archive(whole.substr(0, keep)))) {
      EXPECT_FALSE(line.empty());
    }
  }
  EXPECT_EQ(contents(*open_archive("no archive")), Names{"!The archive is damaged or cut short."});
}

TEST(Container, PartsOfSavedPagesAreLeftAsideWhereThePageIsThere) {
  const auto archive = open_archive(zip_of({{"a/dress_files/frame.html", "<html>"},
                                            {"a/dress_files/x.js", "x"},
                                            {"a/dress.html", "<html>"},
                                            {"shop_files/coat.html", "<html>"}}));
  EXPECT_EQ(contents(*archive), (Names{"a/dress.html=<html>", "shop_files/coat.html=<html>"}));
  EXPECT_EQ(archive->left_aside().sentence(),
            "2 parts of 1 saved page (pictures, scripts, styles, frames)");
}

}  // namespace
}  // namespace rangebook
