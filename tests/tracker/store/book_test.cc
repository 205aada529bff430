// Opening books: new, old, newer, and files that are none.
#include "tracker/store/book.h"

#include <gtest/gtest.h>

#include <fstream>

#include "schema/embedded.h"
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

TEST(Book, StatementsInUseAtOnceAreSeparate) {
  const TempFolder folder;
  const Database database(folder.file("b.db"), Database::Mode::create);
  database.execute("CREATE TABLE t (x); INSERT INTO t VALUES (1), (2), (3)");
  constexpr std::string_view kGreater = "SELECT x FROM t WHERE x > ifnull(?1, 0) ORDER BY x";
  auto outer = database.prepare(kGreater);
  std::vector<std::int64_t> pairs;
  while (outer.step()) {
    auto inner = database.prepare(kGreater);
    inner.bind(1, outer.integer(0));
    while (inner.step()) pairs.push_back(10 * outer.integer(0) + inner.integer(0));
  }
  EXPECT_EQ(pairs, (std::vector<std::int64_t>{12, 13, 23}));
}

TEST(Book, AStatementUsedAgainForgetsItsValuesAndItsPlace) {
  const TempFolder folder;
  const Database database(folder.file("b.db"), Database::Mode::create);
  database.execute("CREATE TABLE t (x); INSERT INTO t VALUES (1), (2), (3)");
  constexpr std::string_view kGreater = "SELECT x FROM t WHERE x > ifnull(?1, 0) ORDER BY x";
  database.prepare(kGreater).bind(1, std::int64_t{1}).step();  // left in the middle of its rows
  auto again = database.prepare(kGreater);
  ASSERT_TRUE(again.step());
  EXPECT_EQ(again.integer(0), 1);
  // One left in the middle would hold the table.
  auto other = database.prepare("SELECT 1");
  again.reset();
  database.execute("DROP TABLE t");
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

/// A book as a program left it that knew `version` migrations, with a shop and a capture of one
/// document in it.
void write_old_book(const std::string& path, int version) {
  const Database database(path, Database::Mode::create);
  int run = 0;
  for (const auto& file : embedded_files()) {
    if (!file.name.starts_with("migrations/") || run == version) continue;
    database.execute(std::string(file.text));
    ++run;
  }
  if (version > 0) {
    database.execute(
        "INSERT INTO shop (slug, name, country, sizes) VALUES ('mill', 'Mill', 'GB', 'uk');"
        "INSERT INTO document (sha256, bytes) VALUES (x'00', 0);"
        "INSERT INTO capture (shop_id, season, captured_on, scope_kind, scope_categories, "
        "line_count, manifest, origins) VALUES (1, 'AW25', '2025-09-01', 'all', '', 0, x'', x'');"
        "INSERT INTO capture_document (capture_id, position, document_id, name, importer, mapping) "
        "VALUES (1, 0, 1, 'range.csv', 'table', 'name=1');");
  }
  database.execute("PRAGMA application_id = " + std::to_string(version > 0 ? kApplicationId : 0) +
                   "; PRAGMA user_version = " + std::to_string(version));
}

TEST(Book, MigrationsRunFromEveryEarlierVersion) {
  const TempFolder folder;
  for (int version = 0; version <= newest_version(); ++version) {
    const std::string path = folder.file("b" + std::to_string(version) + ".rangebook");
    write_old_book(path, version);
    const Book book = Book::open(path, false);
    auto now = book.database().prepare("PRAGMA user_version");
    ASSERT_TRUE(now.step());
    EXPECT_EQ(now.integer(0), newest_version());
    if (version == 0) continue;
    const auto document = book.capture(1)->documents.at(0);
    EXPECT_EQ(document.mapping, "name=1");
    EXPECT_EQ(document.profile, "");
    EXPECT_TRUE(document.options.empty());
    EXPECT_TRUE(book.profiles("mill").empty());
  }
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
