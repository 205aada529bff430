// Profiles are kept with their shop, one of them at most its default. Invented names.
#include <gtest/gtest.h>

#include "schema/error.h"
#include "tests/tracker/store/temp_book.h"

namespace rangebook {
namespace {

Profile profile_of(const std::string& name, const std::string& column) {
  Profile profile;
  profile.name = name;
  profile.options.columns = {{column, Field::price}};
  return profile;
}

std::string default_of(const Book& book) {
  std::string name;
  for (const auto& profile : book.profiles("mill")) {
    if (!profile.is_default) continue;
    EXPECT_TRUE(name.empty());
    name = profile.name;
  }
  return name;
}

TEST(BookProfiles, TheFirstIsTheDefaultUntilAnotherIs) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  book.put_shop(mill_shop());
  book.put_profile("mill", profile_of("spring", "Preis"));
  book.put_profile("mill", profile_of("autumn", "Prijs"));
  EXPECT_EQ(default_of(book), "spring");
  Profile autumn = profile_of("autumn", "Prix");
  autumn.is_default = true;
  book.put_profile("mill", autumn);
  EXPECT_EQ(default_of(book), "autumn");
  ASSERT_EQ(book.profiles("mill").size(), 2U);
  EXPECT_EQ(book.find_profile("mill", "autumn"), autumn);
  book.put_profile("mill", profile_of("autumn", "Prezzo"));  // changed, and still the default
  EXPECT_EQ(default_of(book), "autumn");
}

TEST(BookProfiles, RemovedAndMissingOnes) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  book.put_shop(mill_shop());
  book.put_profile("mill", profile_of("spring", "Preis"));
  EXPECT_TRUE(book.remove_profile("mill", "spring"));
  EXPECT_FALSE(book.remove_profile("mill", "spring"));
  EXPECT_EQ(book.find_profile("mill", "spring"), std::nullopt);
  EXPECT_TRUE(book.profiles("nowhere").empty());
  EXPECT_THROW(book.put_profile("nowhere", profile_of("spring", "Preis")), Error);
}

TEST(BookProfiles, GoWithTheTransactionTheyAreIn) {
  const TempFolder folder;
  Book book = Book::open(folder.file("b.rangebook"), true);
  book.put_shop(mill_shop());
  {
    const Transaction transaction(book.database());
    book.put_profile("mill", profile_of("spring", "Preis"));
  }
  EXPECT_TRUE(book.profiles("mill").empty());
}

}  // namespace
}  // namespace rangebook
