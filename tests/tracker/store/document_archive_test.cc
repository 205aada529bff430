// Documents stay byte for byte, under their SHA-256.
#include "tracker/store/document_archive.h"

#include <gtest/gtest.h>

#include "tests/tracker/store/temp_book.h"

namespace rangebook {
namespace {

// FIPS 180-4 worked example (NIST): SHA-256 of "abc".
TEST(DocumentArchive, HashIsSha256) {
  const TempFolder folder;
  const Book book = Book::open(folder.file("b.rangebook"), true);
  DocumentArchive archive(book.database());
  archive.add("a");
  archive.add("bc");
  const auto document = archive.finish();
  EXPECT_EQ(hex(document.sha256),
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(document.bytes, 3U);
  EXPECT_FALSE(document.was_known);
}

TEST(DocumentArchive, LargeDocumentsAreHashedTheSame) {
  const TempFolder folder;
  const Book book = Book::open(folder.file("b.rangebook"), true);
  DocumentArchive archive(book.database());
  const std::string text(3 * kFrameBytes + 17, 'q');
  archive.add(text);
  const auto whole = archive.finish();
  for (std::size_t at = 0; at < text.size(); at += 100'000) {
    archive.add(std::string_view(text).substr(at, 100'000));
  }
  const auto pieces = archive.finish();
  EXPECT_EQ(pieces.sha256, whole.sha256);
  EXPECT_EQ(pieces.id, whole.id);
  EXPECT_TRUE(pieces.was_known);
}

TEST(DocumentArchive, AnEmptyDocumentIsADocument) {
  const TempFolder folder;
  const Book book = Book::open(folder.file("b.rangebook"), true);
  DocumentArchive archive(book.database());
  EXPECT_EQ(archive.finish().bytes, 0U);
}

}  // namespace
}  // namespace rangebook
