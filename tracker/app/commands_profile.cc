// What tables of a shop need said, kept under a name.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <cstdio>

#include "schema/nearest_word.h"
#include "tracker/app/cli.h"
#include "tracker/app/commands.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/table_words.h"

namespace rangebook {
namespace {

void print_profile(const Profile& profile) {
  fmt::print("{}{}: {}\n", profile.name, profile.is_default ? " (default)" : "",
             said(profile.options));
}

NotThere no_profile(const Book& book, const std::string& shop, const std::string& name) {
  std::vector<std::string> names;
  for (const auto& profile : book.profiles(shop)) names.push_back(profile.name);
  return {fmt::format("{} has no profile \"{}\".{}{}", shop, name, did_you_mean(name, names),
                      names.empty() ? "" : fmt::format(" It has: {}.", fmt::join(names, ", ")))};
}

}  // namespace

int command_profile_list(const std::string& book, const std::string& shop) {
  const Book opened = Book::open(book, false);
  if (!opened.find_shop(shop)) return not_there(no_shop(opened, shop));
  const auto profiles = opened.profiles(shop);
  if (profiles.empty()) {
    fmt::print(
        "No profiles yet. Keep one with: rangebook profile save {} NAME --column "
        "\"Preis=price\"\n",
        shop);
  }
  for (const auto& profile : profiles) print_profile(profile);
  return kDone;
}

int command_profile_show(const std::string& book, const std::string& shop,
                         const std::string& name) {
  const Book opened = Book::open(book, false);
  if (!opened.find_shop(shop)) return not_there(no_shop(opened, shop));
  const auto profile = opened.find_profile(shop, name);
  if (!profile) return not_there(no_profile(opened, shop, name));
  fmt::print("{}{}\n", profile->name, profile->is_default ? " (default)" : "");
  for (const auto& [option, word] : option_words(profile->options)) {
    fmt::print("  {}: {}\n", option, word);
  }
  return kDone;
}

int command_profile_save(const std::string& book, const std::string& shop, const Profile& profile) {
  Book opened = Book::open(book, false);
  if (!opened.find_shop(shop)) return not_there(no_shop(opened, shop));
  Profile saved = profile;
  if (profile.options.empty()) {
    const auto known = opened.find_profile(shop, profile.name);
    if (!known || !profile.is_default) {
      return not_there(
          {"Say what the profile is to keep, such as --column \"Preis=price\", or "
           "--default for one that is there."});
    }
    saved.options = known->options;
  }
  opened.put_profile(shop, saved);
  print_profile(opened.find_profile(shop, saved.name).value());
  return kDone;
}

int command_profile_remove(const std::string& book, const std::string& shop,
                           const std::string& name) {
  Book opened = Book::open(book, false);
  if (!opened.find_shop(shop)) return not_there(no_shop(opened, shop));
  if (!opened.remove_profile(shop, name)) return not_there(no_profile(opened, shop, name));
  fmt::print("Removed profile {} of {}. Captures that were read with it stay as they are.\n", name,
             shop);
  return kDone;
}

}  // namespace rangebook
