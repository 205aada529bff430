// Manifest, then each line's parts from its packs.
#include "tracker/store/snapshot_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "schema/error.h"
#include "tracker/store/manifest.h"
#include "tracker/store/pack.h"

namespace rangebook {
namespace {

/// Lines are read in the order in which they were written, so a few packs serve: the one at hand
/// and those its deltas refer back to.
constexpr std::size_t kCacheBytes = std::size_t{4} << 20U;

std::vector<LineOrigin> read_origins(const Database& database, std::int64_t capture,
                                     std::size_t count) {
  auto row = database.prepare("SELECT origins FROM capture WHERE id = ?1");
  if (!row.bind(1, capture).step()) throw Error(fmt::format("There is no capture {}.", capture));
  auto origins = decode_origins(row.blob(0), count);
  if (!origins) throw Error(fmt::format("The origins of capture {} are damaged.", capture));
  return std::move(*origins);
}

LineCard read_card(PackReader& cards, Version version) {
  auto card = decode_card(cards.stored(version).bytes);
  if (!card) throw Error(fmt::format("The card version {} is damaged.", version));
  return std::move(*card);
}

LineDetail read_detail(PackReader& details, Version version) {
  auto detail = decode_detail(details.stored(version).bytes);
  if (!detail) throw Error(fmt::format("The detail version {} is damaged.", version));
  return std::move(*detail);
}

std::vector<RefusedLine> refused_lines(const Book& book, std::int64_t capture) {
  std::vector<RefusedLine> lines;
  for (const auto& rejection : book.rejections(capture)) {
    if (rejection.refused == Refused::row) {
      lines.push_back({rejection.line_code, rejection.name});
    }
  }
  return lines;
}

}  // namespace

Snapshot read_snapshot(const Book& book, std::int64_t capture, SnapshotDetail detail) {
  const auto info = book.capture(capture);
  if (!info) throw Error(fmt::format("There is no capture {} in this book.", capture));
  const auto shop = book.find_shop(info->shop).value();
  const Manifest manifest = read_manifest(book.database(), capture);
  const auto origins = read_origins(book.database(), capture, manifest.size());
  PackReader cards(book.database(), shop.id, Part::card, kCacheBytes);
  PackReader details(book.database(), shop.id, Part::detail, kCacheBytes);
  PackReader offers(book.database(), shop.id, Part::offers, kCacheBytes);
  Snapshot snapshot{shop.shop, *info, {}, refused_lines(book, capture)};
  snapshot.lines.resize(manifest.size());
  for (std::size_t i = 0; i < manifest.size(); ++i) {
    const auto& entry = manifest[i];
    auto& line = snapshot.lines[i];
    line.id = entry.line;
    line.listing.origin = {origins[i].document, origins[i].line, 0};
    line.listing.card = read_card(cards, entry.card);
    line.listing.offers = offers.offers(entry.offers);
    if (detail == SnapshotDetail::with) {
      line.listing.detail = read_detail(details, entry.detail);
    }
    line.hashes =
        PartHashes{cards.hash(entry.card), details.hash(entry.detail), offers.hash(entry.offers)};
  }
  return snapshot;
}

// Read in the order of the versions, so that each pack is unpacked once.
std::vector<LineDetail> read_details(const Book& book, std::int64_t capture,
                                     const std::vector<std::size_t>& lines) {
  const auto info = book.capture(capture);
  if (!info) throw Error(fmt::format("There is no capture {} in this book.", capture));
  const Manifest manifest = read_manifest(book.database(), capture);
  PackReader reader(book.database(), book.find_shop(info->shop).value().id, Part::detail,
                    kCacheBytes);
  std::vector<std::size_t> order(lines.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return manifest.at(lines[a]).detail < manifest.at(lines[b]).detail;
  });
  std::vector<LineDetail> details(lines.size());
  for (const std::size_t at : order) {
    details[at] = read_detail(reader, manifest.at(lines[at]).detail);
  }
  return details;
}

}  // namespace rangebook
