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

/// Reads lines of one capture, without their details.
class LineReader {
 public:
  LineReader(const Database& database, std::int64_t shop, std::vector<LineOrigin> origins)
      : cards_(database, shop, Part::card, kCacheBytes),
        offers_(database, shop, Part::offers, kCacheBytes),
        origins_(std::move(origins)) {}

  /// The hash of the detail stays 0.
  void read(const ManifestEntry& entry, std::size_t row, LineState& line) {
    line.id = entry.line;
    line.listing.origin = {origins_[row].document, origins_[row].line, 0};
    line.listing.card = read_card(cards_, entry.card);
    line.listing.offers = offers_.offers(entry.offers);
    line.hashes = PartHashes{cards_.hash(entry.card), 0, offers_.hash(entry.offers)};
  }

 private:
  PackReader cards_;
  PackReader offers_;
  std::vector<LineOrigin> origins_;
};

std::int64_t shop_of(const Book& book, std::int64_t capture) {
  const auto info = book.capture(capture);
  if (!info) throw Error(fmt::format("There is no capture {} in this book.", capture));
  return book.find_shop(info->shop).value().id;
}

/// Places in `lines` in the order of the versions, so that each pack is unpacked once.
std::vector<std::size_t> in_order_of(const Manifest& manifest,
                                     const std::vector<std::size_t>& lines,
                                     Version ManifestEntry::*part) {
  std::vector<std::size_t> order(lines.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return manifest.at(lines[a]).*part < manifest.at(lines[b]).*part;
  });
  return order;
}

}  // namespace

Snapshot read_snapshot(const Book& book, std::int64_t capture, SnapshotDetail detail) {
  const auto info = book.capture(capture);
  if (!info) throw Error(fmt::format("There is no capture {} in this book.", capture));
  const auto shop = book.find_shop(info->shop).value();
  const Manifest manifest = read_manifest(book.database(), capture);
  LineReader reader(book.database(), shop.id,
                    read_origins(book.database(), capture, manifest.size()));
  PackReader details(book.database(), shop.id, Part::detail, kCacheBytes);
  Snapshot snapshot{shop.shop, *info, {}, refused_lines(book, capture)};
  snapshot.lines.resize(manifest.size());
  for (std::size_t i = 0; i < manifest.size(); ++i) {
    auto& line = snapshot.lines[i];
    reader.read(manifest[i], i, line);
    line.hashes->detail = details.hash(manifest[i].detail);
    if (detail == SnapshotDetail::with) {
      line.listing.detail = read_detail(details, manifest[i].detail);
    }
  }
  return snapshot;
}

std::vector<LineState> read_lines(const Book& book, std::int64_t capture,
                                  const std::vector<std::size_t>& lines) {
  const auto shop = shop_of(book, capture);
  const Manifest manifest = read_manifest(book.database(), capture);
  LineReader reader(book.database(), shop, read_origins(book.database(), capture, manifest.size()));
  std::vector<LineState> found(lines.size());
  for (const std::size_t at : in_order_of(manifest, lines, &ManifestEntry::offers)) {
    reader.read(manifest.at(lines[at]), lines[at], found[at]);
  }
  return found;
}

std::vector<LineDetail> read_details(const Book& book, std::int64_t capture,
                                     const std::vector<std::size_t>& lines) {
  const Manifest manifest = read_manifest(book.database(), capture);
  PackReader reader(book.database(), shop_of(book, capture), Part::detail, kCacheBytes);
  std::vector<LineDetail> details(lines.size());
  for (const std::size_t at : in_order_of(manifest, lines, &ManifestEntry::detail)) {
    details[at] = read_detail(reader, manifest.at(lines[at]).detail);
  }
  return details;
}

std::vector<std::uint64_t> read_card_hashes(const Book& book, std::int64_t capture,
                                            const std::vector<std::size_t>& lines) {
  const Manifest manifest = read_manifest(book.database(), capture);
  const PackReader reader(book.database(), shop_of(book, capture), Part::card, kCacheBytes);
  std::vector<std::uint64_t> hashes;
  hashes.reserve(lines.size());
  for (const std::size_t line : lines) hashes.push_back(reader.hash(manifest.at(line).card));
  return hashes;
}

}  // namespace rangebook
