// Opening books: new, old, newer, and files that are none.
#include "tracker/store/book.h"

#include <gtest/gtest.h>

#include <fstream>

#include "schema/error.h"
#include "tests/tracker/store/temp_book.h"
#include "tracker/store/migrate.h"

namespace rangebook {
namespace {

std::string error_of(const std::string& path, bool create) {
  try {
    Book::open(path, create);
  } catch (const Error& error) {
    return error.what();
  }
  return {};
}

TEST(Book, ShopsReadBackAndCanBeChanged) {
  const TempFolder folder;
  Book book = Book::open(folder.file("deep/down/b.rangebook"), true);
  book.put_shop(mill_shop());
  Shop changed = mill_shop();
  changed.sizes = SizeSystem::eu;
  changed.currency = std::nullopt;
  book.put_shop(changed);
  ASSERT_EQ(book.shops().size(), 1U);
  EXPECT_EQ(book.find_shop("mill")->shop, changed);
  EXPECT_EQ(book.find_shop("other"), std::nullopt);
}

TEST(Book, AMissingBookIsNotMadeBySurprise) {
  const TempFolder folder;
  EXPECT_NE(error_of(folder.file("b.rangebook"), false).find("no book"), std::string::npos);
}

TEST(Book, ANewerBookIsRefused) {
  const TempFolder folder;
  const std::string path = folder.file("b.rangebook");
  Book::open(path, true).database().execute("PRAGMA user_version = 99");
  EXPECT_NE(error_of(path, false).find("newer rangebook"), std::string::npos);
}

TEST(Book, OtherFilesAreRefused) {
  const TempFolder folder;
  const std::string text = folder.file("text.rangebook");
  std::ofstream(text) << std::string(5000, 'x');
  EXPECT_NE(error_of(text, false).find("no rangebook file"), std::string::npos);
  const std::string other = folder.file("other.db");
  Database(other, Database::Mode::create).execute("CREATE TABLE t (x)");
  EXPECT_NE(error_of(other, true).find("another program"), std::string::npos);
}

TEST(Book, MigrationsRunFromEveryEarlierVersion) {
  const TempFolder folder;
  const std::string path = folder.file("b.rangebook");
  { const Database empty(path, Database::Mode::create); }  // version 0: nothing yet
  const Book book = Book::open(path, false);
  auto version = book.database().prepare("PRAGMA user_version");
  ASSERT_TRUE(version.step());
  EXPECT_EQ(version.integer(0), newest_version());
}

TEST(Book, ABackupHoldsTheSameAndNeverOverwrites) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  book.put_shop(mill_shop());
  book.backup(folder.file("copy.rangebook"));
  EXPECT_EQ(Book::open(folder.file("copy.rangebook"), false).shops().at(0).shop, mill_shop());
  EXPECT_THROW(book.backup(folder.file("copy.rangebook")), Error);
}

TEST(Transaction, WithoutCommitNothingHappened) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  {
    const Transaction transaction(book.database());
    book.put_shop(mill_shop());
  }
  EXPECT_TRUE(book.shops().empty());
}

}  // namespace
}  // namespace rangebook
