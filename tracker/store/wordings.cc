// Cards in the order in which they were written.
#include "tracker/store/wordings.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "schema/error.h"
#include "tracker/store/manifest.h"
#include "tracker/store/pack.h"

namespace rangebook {
namespace {

constexpr std::size_t kCacheBytes = std::size_t{1} << 20U;

using Wanted = std::map<std::pair<Version, LineId>, SightingAt>;

Wanted latest_sightings(const Roll& roll, const std::map<std::int64_t, Manifest>& manifests) {
  Wanted wanted;
  for (std::uint32_t place = 0; place < roll.captures.size(); ++place) {
    const Manifest& manifest = manifests.at(roll.captures[place].info.id);
    for (std::uint32_t row = 0; row < manifest.size(); ++row) {
      wanted[{manifest[row].card, manifest[row].line}] = {place, row};
    }
  }
  return wanted;
}

}  // namespace

std::vector<Wording> read_wordings(const Book& book, const Roll& roll) {
  const auto record = book.find_shop(roll.shop.slug);
  if (!record) return {};
  const auto wanted = latest_sightings(roll, read_manifests(book.database(), record->id));
  PackReader cards(book.database(), record->id, Part::card, kCacheBytes);
  std::vector<Wording> wordings;
  wordings.reserve(wanted.size());
  for (const auto& [version, at] : wanted) {
    auto card = decode_card(cards.stored(version.first).bytes);
    if (!card) throw Error(fmt::format("The card version {} is damaged.", version.first));
    wordings.push_back({at, std::move(*card)});
  }
  std::sort(wordings.begin(), wordings.end(),
            [](const Wording& a, const Wording& b) { return a.at < b.at; });
  return wordings;
}

std::map<LineId, std::string> line_keys(const Book& book, std::string_view shop) {
  auto rows = book.database().prepare(
      "SELECT l.id, l.key FROM line l JOIN shop s ON s.id = l.shop_id WHERE s.slug = ?1");
  rows.bind(1, shop);
  std::map<LineId, std::string> keys;
  while (rows.step()) keys.emplace(rows.integer(0), rows.text(1));
  return keys;
}

}  // namespace rangebook
