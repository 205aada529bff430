// Shops, captures and documents of a book.
#include "tracker/store/book.h"

#include <fmt/format.h>

#include <filesystem>
#include <unordered_map>

#include "schema/error.h"
#include "tracker/store/decisions.h"
#include "tracker/store/manifest.h"
#include "tracker/store/migrate.h"
#include "tracker/store/zstd_frame.h"

namespace rangebook {
namespace {

constexpr std::uint64_t kMaxChunkBytes = std::uint64_t{16} << 20U;
constexpr char kCaptureColumns[] =
    "SELECT c.id, s.slug, c.season, c.captured_on, c.scope_kind, c.scope_categories, c.line_count, "
    "(SELECT count(*) FROM rejection r WHERE r.capture_id = c.id AND r.refused <> 'nothing') "
    "FROM capture c JOIN shop s ON s.id = c.shop_id ";
/// Of which documents a capture was made, after the capture's number.
constexpr char kDocumentColumns[] =
    "SELECT cd.capture_id, cd.name, d.sha256, d.bytes, cd.importer, cd.mapping, cd.profile, "
    "cd.options FROM capture_document cd JOIN document d ON d.id = cd.document_id ";

constexpr char kShopColumns[] =
    "SELECT id, slug, name, country, currency, sizes, link_above, ask_above FROM shop ";

std::vector<std::string> split(std::string_view text) {
  std::vector<std::string> parts;
  while (!text.empty()) {
    const std::size_t at = std::min(text.find(','), text.size());
    parts.emplace_back(text.substr(0, at));
    text.remove_prefix(std::min(at + 1, text.size()));
  }
  return parts;
}

Scope read_scope(std::string_view kind, std::string_view categories) {
  Scope scope;
  if (kind == "picks") scope.kind = Scope::Kind::picks;
  if (kind == "categories") scope.kind = Scope::Kind::categories;
  scope.categories = split(categories);
  return scope;
}

ShopRecord read_shop(const Statement& row) {
  ShopRecord record;
  record.id = row.integer(0);
  record.shop.slug = row.text(1);
  record.shop.name = row.text(2);
  record.shop.country = row.text(3);
  record.shop.currency = Currency::from_code(row.text(4));
  record.shop.sizes = parse_size_system(row.text(5)).value_or(SizeSystem::unknown);
  if (!row.is_null(6)) record.shop.link_above = row.integer(6);
  if (!row.is_null(7)) record.shop.ask_above = row.integer(7);
  return record;
}

Rejection read_rejection(const Statement& row) {
  Rejection rejection;
  rejection.document = static_cast<std::uint32_t>(row.integer(0));
  if (!row.is_null(1)) rejection.line = static_cast<std::uint64_t>(row.integer(1));
  rejection.byte = static_cast<std::uint64_t>(row.integer(2));
  rejection.field = row.text(3);
  rejection.kind = parse_rejection_kind(row.text(4)).value_or(RejectionKind::malformed_row);
  rejection.refused = parse_refused(row.text(5)).value_or(Refused::row);
  rejection.what = row.text(6);
  rejection.how_to_fix = row.text(7);
  rejection.excerpt = row.blob(8);
  rejection.line_code = row.text(9);
  rejection.name = row.text(10);
  return rejection;
}

/// Options of a newer program, or damaged ones, are as good as none: the mapping is shown beside.
TableOptions read_options(std::string_view text) {
  return table_options_of(text).value_or(TableOptions{});
}

DocumentInfo read_document(const Statement& row) {
  return {std::string(row.text(1)),
          hex(row.blob(2)),
          static_cast<std::uint64_t>(row.integer(3)),
          std::string(row.text(4)),
          std::string(row.text(5)),
          std::string(row.text(6)),
          read_options(row.text(7))};
}

CaptureRecord read_record(const Statement& row) {
  CaptureRecord record;
  CaptureInfo& info = record.info;
  info.id = row.integer(0);
  info.shop = row.text(1);
  info.season = row.text(2);
  const auto day = parse_day(row.text(3));
  if (!day) throw Error(fmt::format("The date of capture {} is damaged.", info.id));
  info.on = *day;
  info.scope = read_scope(row.text(4), row.text(5));
  record.lines = row.integer(6);
  record.refused = row.integer(7);
  return record;
}

/// Captures in the order of `rows`, with the documents of each.
std::vector<CaptureRecord> read_records(Statement& rows, Statement& documents) {
  std::vector<CaptureRecord> found;
  std::unordered_map<std::int64_t, std::size_t> places;
  while (rows.step()) {
    found.push_back(read_record(rows));
    places[found.back().info.id] = found.size() - 1;
  }
  while (documents.step()) {
    const auto place = places.find(documents.integer(0));
    if (place == places.end()) continue;  // captured since the rows were read
    found[place->second].info.documents.push_back(read_document(documents));
  }
  return found;
}

}  // namespace

std::string hex(std::string_view bytes) {
  constexpr std::string_view kDigits = "0123456789abcdef";
  std::string out;
  out.reserve(2 * bytes.size());
  for (const char byte : bytes) {
    out.push_back(kDigits[static_cast<unsigned char>(byte) >> 4U]);
    out.push_back(kDigits[static_cast<unsigned char>(byte) & 15U]);
  }
  return out;
}

Book Book::open(const std::string& path, bool create) {
  const bool exists = std::filesystem::exists(path);
  if (!exists && !create) {
    throw Error(
        fmt::format("There is no book at {} yet. Begin with \"rangebook shop add\" or "
                    "\"rangebook capture\", or name another file with --book.",
                    path));
  }
  const auto folder = std::filesystem::path(path).parent_path();
  std::error_code ignored;
  if (!exists && !folder.empty()) std::filesystem::create_directories(folder, ignored);
  auto database = std::make_unique<Database>(
      path, create ? Database::Mode::create : Database::Mode::read_write);
  database->execute(
      "PRAGMA journal_mode = WAL; PRAGMA synchronous = NORMAL; "
      "PRAGMA foreign_keys = ON");
  migrate(*database);
  return Book(std::move(database));
}

void Book::put_shop(const Shop& shop) {
  auto put = database_->prepare(
      "INSERT INTO shop (slug, name, country, currency, sizes, link_above, ask_above) "
      "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7) "
      "ON CONFLICT (slug) DO UPDATE SET name = ?2, country = ?3, currency = ?4, sizes = ?5, "
      "link_above = ?6, ask_above = ?7");
  put.bind(1, shop.slug).bind(2, shop.name).bind(3, shop.country);
  if (shop.currency) put.bind(4, shop.currency->code());
  put.bind(5, to_string(shop.sizes)).bind(6, shop.link_above).bind(7, shop.ask_above).run();
}

std::optional<ShopRecord> Book::find_shop(std::string_view slug) const {
  auto row = database_->prepare(std::string(kShopColumns) + "WHERE slug = ?1");
  if (!row.bind(1, slug).step()) return std::nullopt;
  return read_shop(row);
}

std::vector<ShopRecord> Book::shops() const {
  std::vector<ShopRecord> found;
  auto rows = database_->prepare(std::string(kShopColumns) + "ORDER BY slug");
  while (rows.step()) found.push_back(read_shop(rows));
  return found;
}

std::vector<CaptureRecord> Book::captures(std::string_view shop) const {
  auto rows = database_->prepare(std::string(kCaptureColumns) +
                                 "WHERE s.slug = ?1 ORDER BY c.captured_on, c.id");
  auto documents = database_->prepare(
      std::string(kDocumentColumns) +
      "WHERE cd.capture_id IN (SELECT c.id FROM capture c JOIN shop s ON s.id = c.shop_id WHERE "
      "s.slug = ?1) ORDER BY cd.capture_id, cd.position");
  return read_records(rows.bind(1, shop), documents.bind(1, shop));
}

std::map<std::string, std::vector<CaptureRecord>> Book::captures_of_all() const {
  auto rows =
      database_->prepare(std::string(kCaptureColumns) + "ORDER BY c.shop_id, c.captured_on, c.id");
  std::map<std::string, std::vector<CaptureRecord>> found;
  while (rows.step()) found[std::string(rows.text(1))].push_back(read_record(rows));
  return found;
}

std::optional<CaptureInfo> Book::capture(std::int64_t id) const {
  auto row = database_->prepare(std::string(kCaptureColumns) + "WHERE c.id = ?1");
  auto documents = database_->prepare(std::string(kDocumentColumns) +
                                      "WHERE cd.capture_id = ?1 ORDER BY cd.position");
  const auto found = read_records(row.bind(1, id), documents.bind(1, id));
  return found.empty() ? std::nullopt : std::optional(found.front().info);
}

std::vector<Rejection> Book::rejections(std::int64_t capture) const {
  auto rows = database_->prepare(
      "SELECT document, line, byte, field, kind, refused, what, how_to_fix, excerpt, line_code, "
      "name FROM rejection WHERE capture_id = ?1 ORDER BY id");
  rows.bind(1, capture);
  std::vector<Rejection> found;
  while (rows.step()) found.push_back(read_rejection(rows));
  return found;
}

std::vector<LinkDecision> Book::link_decisions(std::string_view shop) const {
  std::vector<LinkDecision> found;
  for (const KeptDecision& kept : kept_decisions(*this, shop)) found.push_back(kept.about);
  return found;
}

std::optional<CaptureInfo> Book::undo_capture(std::string_view shop,
                                              std::optional<std::int64_t> only) {
  const auto record = find_shop(shop);
  if (!record) return std::nullopt;
  Transaction transaction(*database_);
  auto newest = database_->prepare("SELECT max(id) FROM capture WHERE shop_id = ?1");
  newest.bind(1, record->id).step();
  if (newest.is_null(0) || (only && newest.integer(0) != *only)) return std::nullopt;
  auto removed = capture(newest.integer(0));
  database_->prepare("DELETE FROM capture WHERE id = ?1").bind(1, newest.integer(0)).run();
  drop_unused_packs(record->id);
  newest.reset();
  transaction.commit();
  return removed;
}

/// Packs are written in the order of captures, so those of an undone capture are the last ones.
void Book::drop_unused_packs(std::int64_t shop) {
  ManifestEntry last;
  auto rows = database_->prepare("SELECT id FROM capture WHERE shop_id = ?1");
  rows.bind(1, shop);
  while (rows.step()) {
    for (const auto& entry : read_manifest(*database_, rows.integer(0))) {
      last.card = std::max(last.card, entry.card);
      last.detail = std::max(last.detail, entry.detail);
      last.offers = std::max(last.offers, entry.offers);
    }
  }
  const auto drop = [&](Part part, Version version) {
    auto remove = database_->prepare(
        "DELETE FROM pack WHERE shop_id = ?1 AND part = ?2 AND first_version > ?3");
    remove.bind(1, shop).bind(2, to_string(part)).bind(3, static_cast<std::int64_t>(version)).run();
  };
  drop(Part::card, last.card);
  drop(Part::detail, last.detail);
  drop(Part::offers, last.offers);
}

void Book::backup(const std::string& path) const {
  if (std::filesystem::exists(path)) {
    throw Error(fmt::format("{} is there already; a backup never overwrites a file.", path));
  }
  database_->copy_to(path);
}

BookSizes Book::sizes() const {
  const auto sum = [&](const char* sql) {
    auto row = database_->prepare(sql);
    row.step();
    return row.integer(0);
  };
  return {sum("SELECT coalesce(sum(length(frame)), 0) FROM document_chunk"),
          sum("SELECT coalesce(sum(length(frame) + length(hashes)), 0) FROM pack"),
          sum("SELECT coalesce(sum(length(manifest) + length(origins)), 0) FROM capture"),
          sum("SELECT page_count * page_size FROM pragma_page_count(), pragma_page_size()")};
}

StoredDocument::StoredDocument(const Database& database, std::int64_t capture,
                               std::uint32_t position)
    : frames_(database.prepare(
          "SELECT k.frame FROM capture_document cd JOIN document_chunk k "
          "ON k.document_id = cd.document_id WHERE cd.capture_id = ?1 AND cd.position = ?2 "
          "ORDER BY k.position")) {
  frames_.bind(1, capture).bind(2, std::int64_t{position});
}

std::string_view StoredDocument::next_frame() {
  if (!frames_.step()) return {};
  frame_ = decompress(frames_.blob(0), kMaxChunkBytes);
  return frame_;
}

StoredDocument Book::open_document(std::int64_t capture, std::uint32_t position) const {
  return {*database_, capture, position};
}

std::string Book::document_bytes(std::int64_t capture, std::uint32_t position) const {
  auto document = open_document(capture, position);
  std::string bytes;
  for (auto frame = document.next_frame(); !frame.empty(); frame = document.next_frame()) {
    bytes += frame;
  }
  return bytes;
}

}  // namespace rangebook
