// Pieces to lines, lines to versions, versions to a manifest.
#include "tracker/store/capture_writer.h"

#include <xxhash.h>

#include <algorithm>
#include <filesystem>
#include <numeric>

#include "tracker/listing_builder.h"
#include "tracker/store/line_codec.h"
#include "tracker/store/varint.h"
#include "tracker/store/versions.h"

namespace rangebook {
namespace {

std::string folder_of(const std::string& book) {
  const auto folder = std::filesystem::path(book).parent_path();
  return folder.empty() ? "." : folder.string();
}

std::string scope_kind(const Scope& scope) {
  switch (scope.kind) {
    case Scope::Kind::all:
      return "all";
    case Scope::Kind::categories:
      return "categories";
    case Scope::Kind::picks:
      return "picks";
  }
  return {};
}

const ManifestEntry* find_line(const Manifest& manifest, LineId line) {
  const auto at = std::lower_bound(
      manifest.begin(), manifest.end(), line,
      [](const ManifestEntry& entry, LineId wanted) { return entry.line < wanted; });
  return at != manifest.end() && at->line == line ? &*at : nullptr;
}

ShopRecord find_or_put(Book& book, const Shop& shop) {
  if (auto record = book.find_shop(shop.slug)) return std::move(*record);
  book.put_shop(shop);
  return book.find_shop(shop.slug).value();
}

constexpr char kInsertLine[] = "INSERT INTO line (shop_id, key) VALUES (?1, ?2)";
constexpr char kInsertRejection[] =
    "INSERT INTO rejection (capture_id, document, line, byte, field, kind, refused, what, "
    "how_to_fix, excerpt, line_code, name) "
    "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)";

}  // namespace

/// A line as it waits in the spill file: key, origin and the canonical bytes of its parts.
struct CaptureWriter::Parts {
  std::string key;
  LineOrigin origin;
  std::string card;
  std::string detail;
  std::string offers;
  std::uint64_t variants = 0;
  std::string raw;  ///< scratch
};

class CaptureWriter::Versions {
 public:
  Versions(const Database& database, std::int64_t shop)
      : cards(database, shop, Part::card),
        details(database, shop, Part::detail),
        offers(database, shop, Part::offers) {}

  PartVersions cards;
  PartVersions details;
  PartVersions offers;
};

CaptureWriter::CaptureWriter(Book& book, const Shop& shop, CaptureInfo info, bool same_day_only)
    : book_(book),
      database_(book.database()),
      transaction_(database_),
      shop_(find_or_put(book, shop)),
      info_(std::move(info)),
      same_day_only_(same_day_only),
      archive_(database_),
      spill_(folder_of(database_.path())),
      insert_line_(database_.prepare(kInsertLine)),
      insert_rejection_(database_.prepare(kInsertRejection)) {
  base_ = newest_capture();
  insert_capture();
}

CaptureWriter::CaptureWriter(Book& book, const CaptureInfo& capture)
    : book_(book),
      database_(book.database()),
      transaction_(database_),
      shop_(book.find_shop(capture.shop).value()),
      info_(capture),
      same_day_only_(true),
      archive_(database_),
      former_(read_former_capture(book, capture)),
      spill_(folder_of(database_.path())),
      insert_line_(database_.prepare(kInsertLine)),
      insert_rejection_(database_.prepare(kInsertRejection)) {
  auto row = database_.prepare("SELECT base_id FROM capture WHERE id = ?1");
  row.bind(1, info_.id).step();
  if (!row.is_null(0)) base_ = row.integer(0);
  info_.documents.clear();
  database_.prepare("DELETE FROM rejection WHERE capture_id = ?1").bind(1, info_.id).run();
  // What was found about lines was found in the lines as they were.
  database_
      .prepare("DELETE FROM found WHERE capture_id IN (SELECT id FROM capture WHERE shop_id = ?1)")
      .bind(1, shop_.id)
      .run();
}

std::optional<std::int64_t> CaptureWriter::newest_capture() const {
  auto row = database_.prepare("SELECT max(id) FROM capture WHERE shop_id = ?1");
  row.bind(1, shop_.id).step();
  return row.is_null(0) ? std::nullopt : std::optional(row.integer(0));
}

void CaptureWriter::insert_capture() {
  std::string categories;
  for (const auto& category : info_.scope.categories) {
    categories += (categories.empty() ? "" : ",") + category;
  }
  database_
      .prepare(
          "INSERT INTO capture (shop_id, season, captured_on, scope_kind, scope_categories, "
          "line_count, manifest, origins) VALUES (?1, ?2, ?3, ?4, ?5, 0, x'', x'')")
      .bind(1, shop_.id)
      .bind(2, std::string_view(info_.season))
      .bind(3, std::string_view(to_string(info_.on)))
      .bind(4, std::string_view(scope_kind(info_.scope)))
      .bind(5, std::string_view(categories))
      .run();
  info_.id = database_.last_row_id();
}

void CaptureWriter::end_document(DocumentInfo document) {
  if (former_) return end_former_document(document);
  const ArchivedDocument archived = archive_.finish();
  document.sha256 = hex(archived.sha256);
  document.bytes = archived.bytes;
  database_
      .prepare(
          "INSERT INTO capture_document (capture_id, position, document_id, name, importer, "
          "mapping, profile, options) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)")
      .bind(1, info_.id)
      .bind(2, static_cast<std::int64_t>(document_ids_.size()))
      .bind(3, archived.id)
      .bind(4, std::string_view(document.name))
      .bind(5, std::string_view(document.importer))
      .bind(6, std::string_view(document.mapping))
      .bind(7, std::string_view(document.profile))
      .bind(8, std::string_view(to_text(document.options)))
      .run();
  document_ids_.push_back(archived.id);
  info_.documents.push_back(std::move(document));
}

void CaptureWriter::end_former_document(const DocumentInfo& document) {
  const std::size_t position = info_.documents.size();
  DocumentInfo known = former_->info.documents.at(position);
  known.importer = document.importer;
  known.mapping = document.mapping;
  known.profile = document.profile;
  known.options = document.options;
  database_
      .prepare(
          "UPDATE capture_document SET importer = ?3, mapping = ?4, profile = ?5, options = ?6 "
          "WHERE capture_id = ?1 AND position = ?2")
      .bind(1, info_.id)
      .bind(2, static_cast<std::int64_t>(position))
      .bind(3, std::string_view(known.importer))
      .bind(4, std::string_view(known.mapping))
      .bind(5, std::string_view(known.profile))
      .bind(6, std::string_view(to_text(known.options)))
      .run();
  info_.documents.push_back(std::move(known));
}

void CaptureWriter::reject(const Rejection& rejection) {
  switch (rejection.refused) {
    case Refused::row:
      ++outcome_.refused_rows;
      break;
    case Refused::cell:
      ++outcome_.refused_cells;
      break;
    case Refused::nothing:
      ++outcome_.doubts;
      break;
  }
  auto& insert = insert_rejection_;
  insert.bind(1, info_.id).bind(2, std::int64_t{rejection.document});
  insert.bind(
      3, rejection.line ? std::optional(static_cast<std::int64_t>(*rejection.line)) : std::nullopt);
  insert.bind(4, static_cast<std::int64_t>(rejection.byte));
  insert.bind(5, std::string_view(rejection.field)).bind(6, to_string(rejection.kind));
  insert.bind(7, to_string(rejection.refused)).bind(8, std::string_view(rejection.what));
  insert.bind(9, std::string_view(rejection.how_to_fix)).bind_blob(10, rejection.excerpt);
  insert.bind(11, std::string_view(rejection.line_code));
  insert.bind(12, std::string_view(rejection.name)).run();
}

void CaptureWriter::add(std::string_view key, const Listing& listing) {
  std::string raw;
  std::string part;
  const auto put_part = [&](const auto& value) {
    part.clear();
    encode(value, part);
    put_text(raw, part);
  };
  put_text(raw, key);
  put_varint(raw, listing.origin.document);
  put_varint(raw, listing.origin.line);
  put_varint(raw, listing.offers.offers.size());
  put_part(listing.card);
  put_part(listing.detail);
  put_part(listing.offers);
  const auto hash = XXH3_128bits(key.data(), key.size());
  pieces_.push_back({hash.low64, hash.high64, spill_.append(raw),
                     static_cast<std::uint32_t>(raw.size()),
                     static_cast<std::uint32_t>(pieces_.size())});
}

void CaptureWriter::read_piece(const Piece& piece, Parts& parts) {
  spill_.read(piece.place, piece.length, parts.raw);
  ByteReader in(parts.raw);
  parts.key = in.text();
  parts.origin.document = static_cast<std::uint32_t>(in.varint());
  parts.origin.line = in.varint();
  parts.variants = in.varint();
  parts.card = in.text();
  parts.detail = in.text();
  parts.offers = in.text();
}

/// Pieces of the same line next to each other, lines in the order in which they first appear.
void CaptureWriter::sort_pieces() {
  std::vector<std::uint32_t> first(pieces_.size());
  std::iota(first.begin(), first.end(), 0U);
  const auto by_key = [](const Piece& a, const Piece& b) {
    return std::tie(a.key_high, a.key_low, a.order) < std::tie(b.key_high, b.key_low, b.order);
  };
  std::sort(pieces_.begin(), pieces_.end(), by_key);
  const auto same = [](const Piece& a, const Piece& b) {
    return a.key_high == b.key_high && a.key_low == b.key_low;
  };
  std::uint32_t leader = 0;
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    if (i == 0 || !same(pieces_[i - 1], pieces_[i])) leader = pieces_[i].order;
    first[pieces_[i].order] = leader;
  }
  std::sort(pieces_.begin(), pieces_.end(), [&](const Piece& a, const Piece& b) {
    return std::tie(first[a.order], a.order) < std::tie(first[b.order], b.order);
  });
}

void CaptureWriter::merge_pieces(std::size_t begin, std::size_t end, Parts& parts) {
  ListingBuilder builder;
  for (std::size_t i = begin; i < end; ++i) {
    read_piece(pieces_[i], parts);
    Listing listing;
    listing.card = decode_card(parts.card).value();
    listing.detail = decode_detail(parts.detail).value();
    listing.offers = decode_offers(parts.offers).value();
    listing.origin = {parts.origin.document, parts.origin.line, 0};
    const auto outcome = builder.add_all(listing);
    if (outcome == ListingBuilder::Outcome::added) continue;
    Rejection rejection;
    rejection.document = parts.origin.document;
    rejection.line = parts.origin.line;
    rejection.kind = RejectionKind::conflicting_rows;
    rejection.what = "The rows of this line from here on contradict its earlier rows.";
    rejection.how_to_fix = "Keep one row for each colour and size of a line, in one currency.";
    rejection.line_code = listing.card.line_code;
    rejection.name = listing.card.name;
    reject(rejection);
  }
  const Listing whole = builder.build();
  parts.origin = {whole.origin.document, whole.origin.line};
  parts.variants = whole.offers.offers.size();
  for (auto* bytes : {&parts.card, &parts.detail, &parts.offers}) bytes->clear();
  encode(whole.card, parts.card);
  encode(whole.detail, parts.detail);
  encode(whole.offers, parts.offers);
}

void CaptureWriter::load_keys() {
  auto rows = database_.prepare("SELECT id, key FROM line WHERE shop_id = ?1");
  rows.bind(1, shop_.id);
  while (rows.step()) {
    const auto key = rows.text(1);
    const auto hash = XXH3_128bits(key.data(), key.size());
    known_lines_[hash.low64].emplace_back(hash.high64, rows.integer(0));
  }
}

LineId CaptureWriter::line_of(const Piece& piece, std::string_view key) {
  const auto found = known_lines_.find(piece.key_low);
  if (found != known_lines_.end()) {
    for (const auto& [high, line] : found->second) {
      if (high == piece.key_high) return line;
    }
  }
  ++outcome_.new_lines;
  insert_line_.bind(1, shop_.id).bind(2, key).run();
  return database_.last_row_id();
}

void CaptureWriter::write_line(LineId line, const Parts& parts, Versions& versions) {
  const auto* known = find_line(former_ ? former_->manifest : base_manifest_, line);
  const auto previous = [&](Version ManifestEntry::*column) {
    return known ? std::optional(known->*column) : std::nullopt;
  };
  ManifestEntry entry;
  entry.line = line;
  entry.card = versions.cards.put(parts.card, previous(&ManifestEntry::card));
  entry.detail = versions.details.put(parts.detail, previous(&ManifestEntry::detail));
  entry.offers = versions.offers.put(parts.offers, previous(&ManifestEntry::offers));
  if (known && *known == entry) ++outcome_.same_lines;
  ++outcome_.lines;
  outcome_.variants += parts.variants;
  manifest_.push_back(entry);
  origins_.push_back(parts.origin);
}

void CaptureWriter::join_pieces() {
  load_keys();
  if (base_) base_manifest_ = read_manifest(database_, *base_);
  sort_pieces();
  Versions versions(database_, shop_.id);
  Parts parts;
  for (std::size_t begin = 0; begin < pieces_.size();) {
    std::size_t end = begin + 1;
    while (end < pieces_.size() && pieces_[end].key_low == pieces_[begin].key_low &&
           pieces_[end].key_high == pieces_[begin].key_high) {
      ++end;
    }
    if (end - begin == 1) {
      read_piece(pieces_[begin], parts);
    } else {
      merge_pieces(begin, end, parts);
    }
    write_line(line_of(pieces_[begin], parts.key), parts, versions);
    begin = end;
  }
  versions.cards.flush();
  versions.details.flush();
  versions.offers.flush();
}

void CaptureWriter::write_manifest() {
  std::vector<std::size_t> order(manifest_.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return manifest_[a].line < manifest_[b].line; });
  Manifest sorted;
  std::vector<LineOrigin> origins;
  for (const std::size_t i : order) {
    sorted.push_back(manifest_[i]);
    origins.push_back(origins_[i]);
  }
  manifest_ = std::move(sorted);
  store_manifest(database_, info_.id, manifest_, base_, base_manifest_);
  database_.prepare("UPDATE capture SET line_count = ?2, origins = ?3 WHERE id = ?1")
      .bind(1, info_.id)
      .bind(2, static_cast<std::int64_t>(manifest_.size()))
      .bind_blob(3, encode_origins(origins))
      .run();
  if (!former_) return;
  database_
      .prepare(
          "INSERT INTO reread (capture_id, times) VALUES (?1, 1) "
          "ON CONFLICT (capture_id) DO UPDATE SET times = times + 1")
      .bind(1, info_.id)
      .run();
  for (const auto& dependent : former_->dependents) {
    store_manifest(database_, dependent.capture, dependent.manifest, info_.id, manifest_);
  }
}

/// An earlier capture of this shop, season and scope made from exactly these documents.
std::optional<std::int64_t> CaptureWriter::same_capture() const {
  auto own = document_ids_;
  std::sort(own.begin(), own.end());
  for (const auto& record : book_.captures(shop_.shop.slug)) {
    const auto& other = record.info;
    if (other.id == info_.id || other.season != info_.season || other.scope != info_.scope)
      continue;
    if (same_day_only_ && other.on != info_.on) continue;
    auto rows = database_.prepare(
        "SELECT document_id FROM capture_document WHERE capture_id = ?1 ORDER BY document_id");
    rows.bind(1, other.id);
    std::vector<std::int64_t> documents;
    while (rows.step()) documents.push_back(rows.integer(0));
    if (documents == own) return other.id;
  }
  return std::nullopt;
}

/// Whether every document of another capture was read with what was said now.
bool CaptureWriter::same_options(std::int64_t capture) const {
  using Said = std::tuple<std::int64_t, std::string, std::string>;
  std::vector<Said> own;
  for (std::size_t i = 0; i < document_ids_.size(); ++i) {
    const auto& document = info_.documents[i];
    own.emplace_back(document_ids_[i], document.profile, to_text(document.options));
  }
  std::vector<Said> other;
  auto rows = database_.prepare(
      "SELECT document_id, profile, options FROM capture_document WHERE capture_id = ?1");
  rows.bind(1, capture);
  while (rows.step()) other.emplace_back(rows.integer(0), rows.text(1), rows.text(2));
  std::sort(own.begin(), own.end());
  std::sort(other.begin(), other.end());
  return own == other;
}

CaptureOutcome CaptureWriter::finish(bool keep) {
  const auto same = former_ ? std::nullopt : same_capture();
  outcome_.id = same.value_or(info_.id);
  outcome_.unchanged = same.has_value();
  outcome_.other_options = same && !same_options(*same);
  if (same && keep) return outcome_;
  join_pieces();
  write_manifest();
  if (former_) outcome_.unchanged = same_as_former(book_, *former_, info_, manifest_);
  if (keep && outcome_.lines > 0 && !outcome_.unchanged) transaction_.commit();
  return outcome_;
}

}  // namespace rangebook
