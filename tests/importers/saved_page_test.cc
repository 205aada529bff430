// What browsers leave behind when they save a page with its parts.
#include "importers/saved_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

// The names that Windows documents for folders connected with a page, in its languages.
TEST(SavedPage, FoldersOfPartsInManyLanguages) {
  for (const auto* folder : {"coat_files", "coat-Dateien", "coat_fichiers", "coat_archivos",
                             "coat_bestanden", "coat_file", "coat-filer", "coat_tiedostot",
                             "coat_pliki", "coat_soubory", "coat_arquivos", "coat_FILES"}) {
    EXPECT_EQ(page_of_parts_folder(folder).value_or("none"), "coat") << folder;
  }
  EXPECT_FALSE(page_of_parts_folder("_files"));
  EXPECT_FALSE(page_of_parts_folder("coats"));
}

TEST(SavedPage, AFolderIsOnlyOfPartsBesideItsPage) {
  SavedPages pages;
  pages.add("women/A coat.htm");
  EXPECT_EQ(pages.page_of("women/A coat_files/frames/ad.html").value_or("none"), "women/A coat");
  EXPECT_FALSE(pages.page_of("A coat_files/ad.html"));
  EXPECT_FALSE(pages.page_of("women/A coat.htm"));
}

// The Mark of the Web: the number counts the characters of the address.
TEST(SavedPage, TheCommentSaysWhereThePageCameFrom) {
  EXPECT_EQ(
      saved_from("<!DOCTYPE html>\r\n<!-- saved from url=(0024)https://shop.example/a?b -->\r\n"),
      "https://shop.example/a?b");
  EXPECT_FALSE(saved_from("<!-- saved from url=(0014)about:internet -->"));
  EXPECT_FALSE(saved_from("<p>saved from url=(0024)https://shop.example/a?b"));
  EXPECT_FALSE(saved_from("<!-- x --><p>saved from url=(0024)https://shop.example/a?b"));
  EXPECT_FALSE(saved_from("<!-- saved from url=(0"));
}

TEST(SavedPage, CopiesAreNoAddresses) {
  const std::string base = "https://shop.example/coat";
  for (const auto* copy : {"./coat_files/a.jpg", "Caf%C3%A9%20coat-Dateien/a.jpg?x",
                           "file:///C:/Users/x/coat_files/a.jpg"}) {
    EXPECT_EQ(picture_address(copy, base), "a.jpg") << copy;
    EXPECT_EQ(link_address(copy, base), "") << copy;
  }
  for (const auto* inside :
       {"data:image/png;base64,AA", "cid:1@x", "blob:https://shop.example/1"}) {
    EXPECT_EQ(picture_address(inside, base), "") << inside;
  }
  EXPECT_EQ(picture_address("/pictures/a.jpg", base), "https://shop.example/pictures/a.jpg");
  EXPECT_EQ(link_address("coat_files", base), "https://shop.example/coat_files");
}

const std::string kComment =
    "<!DOCTYPE html>\n<!-- saved from url=(0031)https://shop.example/women/coat -->\n";

// As a browser writes it: names and attributes in other case, values added, links to the folder.
TEST(SavedPage, MarkupIsReadAfterTheBrowserRewroteThePage) {
  const ReadPage page = read_page(
      kComment +
      "<HTML><HEAD><META http-equiv=\"Content-Type\" content=\"text/html; charset=UTF-8\">"
      "<SCRIPT TYPE=\"application/LD+JSON\" "
      "data-x=\"\">{\"@type\":\"Product\",\"name\":\"Thea\",\"sku\":\"T1\"}"
      "</SCRIPT></HEAD><BODY></BODY></HTML>");
  EXPECT_THAT(page.rows, ElementsAre(Cells{{"name", "Thea"},
                                           {"line_code", "T1"},
                                           {"url", "https://shop.example/women/coat"}}));
  EXPECT_THAT(page.rejections, IsEmpty());
}

Cells only_row(const std::string& html) {
  const ReadPage page = read_page(html);
  EXPECT_THAT(page.rows, SizeIs(1));
  return page.rows.empty() ? Cells{} : page.rows[0];
}

const std::string kItem =
    "<div itemscope=\"\" itemtype=\"https://schema.org/Product\"><h1 itemprop=\"name\">Thea</h1>"
    "<img itemprop=\"image\" src=\"./coat_files/front.jpg\">"
    "<a itemprop=\"url\" href=\"./coat_files/saved_resource.html\">Thea</a>"
    "<span itemprop=\"offers\" itemscope=\"\" itemtype=\"https://schema.org/Offer\">"
    "<meta itemprop=\"price\" content=\"149.90\"><meta itemprop=\"priceCurrency\" content=\"GBP\">"
    "<link itemprop=\"availability\" href=\"https://schema.org/InStock\"></span></div>";

TEST(SavedPage, PicturesAndLinksInTheFolderAreNotTheShops) {
  const Cells row = only_row(kComment + "<html><body>" + kItem);
  EXPECT_EQ(row.at("image"), "front.jpg");
  EXPECT_EQ(row.at("url"), "https://shop.example/women/coat");
  EXPECT_EQ(row.at("in_stock"), "InStock");
}

TEST(SavedPage, TheAddressOfAPictureWinsOverItsCopy) {
  const Cells row = only_row(
      kComment +
      "<html><head><link rel=\"canonical\" href=\"https://shop.example/c/coat\">"
      "<meta property=\"og:title\" content=\"Thea\"><meta property=\"og:type\" content=\"product\">"
      "<meta property=\"og:image\" content=\"https://shop.example/p/front.jpg\"></head><body>" +
      kItem);
  EXPECT_EQ(row.at("image"), "https://shop.example/p/front.jpg");
  EXPECT_EQ(row.at("url"), "https://shop.example/c/coat");
}

TEST(SavedPage, ACanonicalAddressOnTheDiskIsNone) {
  const Cells row = only_row(
      kComment + "<html><head><link rel=canonical href=\"file:///C:/x/coat.html\"></head><body>" +
      kItem);
  EXPECT_EQ(row.at("url"), "https://shop.example/women/coat");
}

TEST(SavedPage, WhatWasLeftAsideInWords) {
  LeftAside left;
  EXPECT_TRUE(left.empty());
  left.others = 1;
  EXPECT_EQ(left.sentence(), "1 file that is no document");
  left.parts = 3;
  left.pages = {"a", "b"};
  EXPECT_EQ(left.sentence(),
            "3 parts of 2 saved pages (pictures, scripts, styles, frames) and 1 file that is no "
            "document");
}

}  // namespace
}  // namespace rangebook
