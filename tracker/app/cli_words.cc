// Words to values; what is wrong with a word is said with the nearest right one.
#include "tracker/app/cli_words.h"

#include <charconv>

#include "schema/nearest_word.h"
#include "tracker/app/scope_words.h"

namespace rangebook {
namespace {

std::string upper(std::string text) {
  for (char& sign : text) {
    if (sign >= 'a' && sign <= 'z') sign = static_cast<char>(sign - 32);
  }
  return text;
}

void check_slug(const std::string& slug) {
  const bool good =
      !slug.empty() && slug.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == slug.npos;
  if (good) return;
  throw UsageError{"\"" + slug +
                   "\" cannot name a shop: use small letters, digits and hyphens, "
                   "for instance harbour-loft."};
}

TableOptions table_of(const TableWords& words) {
  const auto options = options_of(words);
  if (const auto* problem = std::get_if<std::string>(&options)) throw UsageError{*problem};
  return std::get<TableOptions>(options);
}

void check_profile(const std::string& name) {
  const bool good =
      name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string::npos;
  if (good) return;
  throw UsageError{"\"" + name +
                   "\" cannot name a profile: use small letters, digits and hyphens, for instance "
                   "supplier-sheet."};
}

Day day_of(const std::string& word) {
  const auto day = parse_day(word);
  if (!day) throw UsageError{"--on: \"" + word + "\" is no date; write it as 2026-09-01."};
  return *day;
}

/// `85` or `85%`; nothing where the option was not given.
std::optional<std::int64_t> percent_of(const std::string& option, std::string word) {
  if (word.empty()) return std::nullopt;
  if (word.ends_with('%')) word.pop_back();
  std::int64_t percent = 0;
  const auto read = std::from_chars(word.data(), word.data() + word.size(), percent);
  if (read.ec != std::errc() || read.ptr != word.data() + word.size() || percent < 1 ||
      percent > 100) {
    throw UsageError{option + " takes a whole percentage from 1 to 100, such as 85."};
  }
  return percent;
}

}  // namespace

SizeSystem system_of(const std::string& option, const std::string& word) {
  const auto system = parse_size_system(word);
  if (system && *system != SizeSystem::unknown) return *system;
  throw UsageError{option + ": \"" + word + "\" is no size system." +
                   did_you_mean(word, size_system_names()) +
                   " There are: " + joined(size_system_names()) + "."};
}

std::optional<StatedSizes> stated_of(const Words& words) {
  if (words.states_sizes.empty()) return std::nullopt;
  return StatedSizes{words.states_sizes, words.on.empty() ? today() : day_of(words.on)};
}

std::string category_of(const Words& words) {
  if (words.category.empty()) return {};
  const auto slug = parse_category(words.category);
  if (const auto* problem = std::get_if<CategoryProblem>(&slug)) {
    throw UsageError{"--category: " + problem->message + "."};
  }
  return std::get<std::string>(slug);
}

Shop shop_of(const Words& words) {
  Shop shop;
  check_slug(words.shop);
  shop.slug = words.shop;
  shop.name = words.name;
  shop.country = upper(words.country);
  if (!shop.country.empty() && shop.country.size() != 2) {
    throw UsageError{"--country takes a two-letter code of ISO 3166, such as GB or IE."};
  }
  if (!words.currency.empty()) {
    shop.currency = Currency::from_code(words.currency);
    if (!shop.currency) {
      throw UsageError{"--currency: \"" + words.currency +
                       "\" is no currency of ISO 4217, such as GBP or EUR."};
    }
  }
  if (!words.sizes.empty()) {
    shop.sizes = system_of("--sizes", words.sizes);
  }
  shop.link_above = percent_of("--link-above", words.link_above);
  shop.ask_above = percent_of("--ask-above", words.ask_above);
  return shop;
}

MappingRequest mapping_of(const Words& words) {
  if (!words.profile.empty() && words.no_profile) {
    throw UsageError{"--profile and --no-profile contradict each other."};
  }
  return {table_of(words.table), words.profile, words.no_profile};
}

CaptureRequest capture_of(const Words& words) {
  CaptureRequest request;
  check_slug(words.shop);
  check_profile(words.save_profile);
  request.mapping = mapping_of(words);
  request.save_profile = words.save_profile;
  request.shop = words.shop;
  request.files = words.files;
  request.season = words.season;
  if (!words.on.empty()) request.on = day_of(words.on);
  const auto scope = parse_scope(words.scope);
  if (const auto* problem = std::get_if<std::string>(&scope)) throw UsageError{*problem};
  request.scope = std::get<Scope>(scope);
  return request;
}

Profile profile_of(const Words& words) {
  check_profile(words.name);
  return {words.name, words.is_default, table_of(words.table)};
}

}  // namespace rangebook
