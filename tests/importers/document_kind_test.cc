// Kinds of documents by their first bytes. Signatures: the formats' own documents (PNG, PDF, ZIP,
// OLE2).
#include "importers/document_kind.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

using namespace std::string_view_literals;

TEST(DocumentKind, BySignature) {
  EXPECT_EQ(kind_of("PK\x03\x04rest"), DocumentKind::zip);
  EXPECT_EQ(kind_of("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"), DocumentKind::old_workbook);
  EXPECT_EQ(kind_of("%PDF-1.7"), DocumentKind::pdf);
  EXPECT_EQ(kind_of("\x89PNG\r\n\x1A\n"), DocumentKind::picture);
}

TEST(DocumentKind, Markup) {
  EXPECT_EQ(kind_of("<!-- saved -->\n<!DOCTYPE html><html>"), DocumentKind::page);
  EXPECT_EQ(kind_of("<?xml version='1.0'?><rss version='2.0'>"), DocumentKind::xml);
  EXPECT_EQ(kind_of("<?xml version='1.0'?><!DOCTYPE html><html>"), DocumentKind::page);
  EXPECT_EQ(kind_of("<div class=x>"), DocumentKind::page);
  EXPECT_EQ(kind_of("<products><product/></products>"), DocumentKind::xml);
}

TEST(DocumentKind, JsonAndTables) {
  EXPECT_EQ(kind_of("\xEF\xBB\xBF [{\"name\":1}]"), DocumentKind::json);
  EXPECT_EQ(kind_of("{\n  \"products\": []"), DocumentKind::json);
  EXPECT_EQ(kind_of("[Range],name\n"), DocumentKind::text);
  EXPECT_EQ(kind_of("name,price\n"), DocumentKind::text);
  EXPECT_EQ(kind_of("\xFF\xFEn\0a\0"sv), DocumentKind::text);
  EXPECT_EQ(kind_of(""), DocumentKind::text);
  EXPECT_EQ(kind_of("\0\1\2\3\4\5\6\7"sv), DocumentKind::other);
}

TEST(DocumentKind, ASavedPageInOneFile) {
  EXPECT_EQ(kind_of("From: <Saved>\nMIME-Version: 1.0\nContent-Type: multipart/related;\n"),
            DocumentKind::mail);
  EXPECT_EQ(kind_of("date: name\n1,2\n"), DocumentKind::text);
}

}  // namespace
}  // namespace rangebook
