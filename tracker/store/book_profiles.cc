// Profiles of a book: one default at most for each shop.
#include <fmt/format.h>

#include "schema/error.h"
#include "tracker/store/book.h"

namespace rangebook {
namespace {

Profile read_profile(const Statement& row) {
  Profile profile;
  profile.name = row.text(0);
  profile.is_default = row.integer(1) != 0;
  const auto options = table_options_of(row.text(2));
  if (!options) {
    throw Error(fmt::format("The profile \"{}\" is damaged; save it again.", profile.name));
  }
  profile.options = *options;
  return profile;
}

}  // namespace

void Book::put_profile(std::string_view shop, const Profile& profile) {
  const auto record = find_shop(shop);
  if (!record) throw Error(fmt::format("There is no shop \"{}\" to keep a profile for.", shop));
  const bool makes_default = profile.is_default || profiles(shop).empty();
  database_->execute("SAVEPOINT profile");  // also within the transaction of a capture
  if (makes_default) {
    auto clear = database_->prepare("UPDATE profile SET is_default = 0 WHERE shop_id = ?1");
    clear.bind(1, record->id).run();
  }
  auto put = database_->prepare(
      "INSERT INTO profile (shop_id, name, is_default, options) VALUES (?1, ?2, ?3, ?4) "
      "ON CONFLICT (shop_id, name) DO UPDATE SET options = ?4, "
      "is_default = max(is_default, ?3)");
  put.bind(1, record->id).bind(2, std::string_view(profile.name));
  put.bind(3, std::int64_t{makes_default ? 1 : 0});
  put.bind(4, std::string_view(to_text(profile.options))).run();
  database_->execute("RELEASE profile");
}

std::vector<Profile> Book::profiles(std::string_view shop) const {
  auto rows = database_->prepare(
      "SELECT p.name, p.is_default, p.options FROM profile p JOIN shop s ON s.id = p.shop_id "
      "WHERE s.slug = ?1 ORDER BY p.name");
  rows.bind(1, shop);
  std::vector<Profile> found;
  while (rows.step()) found.push_back(read_profile(rows));
  return found;
}

std::optional<Profile> Book::find_profile(std::string_view shop, std::string_view name) const {
  for (auto& profile : profiles(shop)) {
    if (profile.name == name) return profile;
  }
  return std::nullopt;
}

bool Book::remove_profile(std::string_view shop, std::string_view name) {
  if (!find_profile(shop, name)) return false;
  auto remove = database_->prepare(
      "DELETE FROM profile WHERE name = ?2 AND shop_id = (SELECT id FROM shop WHERE slug = ?1)");
  remove.bind(1, shop).bind(2, name).run();
  return true;
}

}  // namespace rangebook
