// `rangebook check`: proves what the book claims, and names what it cannot prove.
#include <fmt/format.h>
#include <openssl/evp.h>

#include <set>

#include "schema/error.h"
#include "tracker/store/manifest.h"
#include "tracker/store/pack.h"
#include "tracker/store/snapshot_reader.h"
#include "tracker/store/zstd_frame.h"

namespace rangebook {
namespace {

constexpr std::uint64_t kMaxChunkBytes = std::uint64_t{16} << 20U;
constexpr std::size_t kCacheBytes = std::size_t{16} << 20U;

/// Of one shop and part; damage comes in blocks, and a thousand lines say no more than ten.
constexpr std::size_t kShownFaults = 10;

using Findings = std::vector<std::string>;

void check_database(const Database& database, Findings& findings) {
  auto integrity = database.prepare("PRAGMA integrity_check(20)");
  while (integrity.step()) {
    if (integrity.text(0) != "ok") findings.emplace_back(integrity.text(0));
  }
  auto keys = database.prepare("PRAGMA foreign_key_check");
  while (keys.step()) {
    findings.push_back(
        fmt::format("A row of the table {} refers to a row that is not there.", keys.text(0)));
  }
}

/// SHA-256 of a document, from its frames.
std::string document_hash(const Database& database, std::int64_t document, std::uint64_t& bytes) {
  EVP_MD_CTX* context = EVP_MD_CTX_new();
  EVP_DigestInit_ex(context, EVP_sha256(), nullptr);
  auto frames =
      database.prepare("SELECT frame FROM document_chunk WHERE document_id = ?1 ORDER BY position");
  frames.bind(1, document);
  while (frames.step()) {
    const std::string chunk = decompress(frames.blob(0), kMaxChunkBytes);
    bytes += chunk.size();
    EVP_DigestUpdate(context, chunk.data(), chunk.size());
  }
  std::string hash(32, '\0');
  EVP_DigestFinal_ex(context, reinterpret_cast<unsigned char*>(hash.data()), nullptr);
  EVP_MD_CTX_free(context);
  return hash;
}

void check_documents(const Database& database, Findings& findings) {
  auto rows = database.prepare("SELECT id, sha256, bytes FROM document ORDER BY id");
  while (rows.step()) {
    try {
      std::uint64_t bytes = 0;
      const std::string hash = document_hash(database, rows.integer(0), bytes);
      if (hash == rows.blob(1) && bytes == static_cast<std::uint64_t>(rows.integer(2))) continue;
      findings.push_back(fmt::format("Document {} no longer has its hash {}.", rows.integer(0),
                                     hex(rows.blob(1))));
    } catch (const Error& error) {
      findings.push_back(fmt::format("Document {}: {}", rows.integer(0), error.what()));
    }
  }
}

bool is_readable(Part part, std::string_view canonical) {
  switch (part) {
    case Part::card:
      return decode_card(canonical).has_value();
    case Part::detail:
      return decode_detail(canonical).has_value();
    case Part::offers:
      return decode_offers(canonical).has_value();
  }
  return false;
}

/// What is wrong with one version; empty when it is sound.
std::string version_fault(PackReader& packs, Part part, Version version) {
  try {
    const std::string bytes = packs.canonical(version);
    if (content_hash(bytes) == packs.hash(version) && is_readable(part, bytes)) return {};
    return fmt::format("version {} of the {} no longer has its hash.", version, to_string(part));
  } catch (const Error& error) {
    return error.what();
  }
}

void check_versions(PackReader& packs, Part part, const std::string& shop, Findings& findings) {
  std::size_t faults = 0;
  for (Version version = 1; version <= packs.last_version(); ++version) {
    const std::string fault = version_fault(packs, part, version);
    if (fault.empty() || ++faults > kShownFaults) continue;
    findings.push_back(fmt::format("{}: {}", shop, fault));
  }
  if (faults > kShownFaults) {
    findings.push_back(fmt::format("{}: {} more versions of the {} are damaged.", shop,
                                   faults - kShownFaults, to_string(part)));
  }
}

std::set<LineId> line_ids(const Database& database, std::int64_t shop) {
  std::set<LineId> ids;
  auto rows = database.prepare("SELECT id FROM line WHERE shop_id = ?1");
  rows.bind(1, shop);
  while (rows.step()) ids.insert(rows.integer(0));
  return ids;
}

void check_capture(const Database& database, const CaptureRecord& record,
                   const std::set<LineId>& lines, const ManifestEntry& last, Findings& findings) {
  const auto complain = [&](std::string_view what) {
    findings.push_back(fmt::format("Capture {}: {}", record.info.id, what));
  };
  try {
    const Manifest manifest = read_manifest(database, record.info.id);
    if (static_cast<std::int64_t>(manifest.size()) != record.lines) {
      complain(fmt::format("it counts {} lines and lists {}.", record.lines, manifest.size()));
    }
    for (const auto& entry : manifest) {
      if (!lines.contains(entry.line)) complain(fmt::format("line {} is not there.", entry.line));
      if (entry.card == 0 || entry.card > last.card || entry.detail == 0 ||
          entry.detail > last.detail || entry.offers == 0 || entry.offers > last.offers) {
        complain(fmt::format("line {} refers to a version that is not there.", entry.line));
      }
    }
    auto origins = database.prepare("SELECT origins FROM capture WHERE id = ?1");
    origins.bind(1, record.info.id).step();
    if (!decode_origins(origins.blob(0), manifest.size())) complain("its origins are damaged.");
  } catch (const Error& error) {
    complain(error.what());
  }
}

void check_shop(const Book& book, const ShopRecord& shop, Findings& findings) {
  const Database& database = book.database();
  ManifestEntry last;
  for (const Part part : kParts) {
    PackReader packs(database, shop.id, part, kCacheBytes);
    check_versions(packs, part, shop.shop.slug, findings);
    (part == Part::card     ? last.card
     : part == Part::detail ? last.detail
                            : last.offers) = packs.last_version();
  }
  const auto lines = line_ids(database, shop.id);
  for (const auto& record : book.captures(shop.shop.slug)) {
    check_capture(database, record, lines, last, findings);
  }
}

}  // namespace

std::vector<std::string> check_book(const Book& book) {
  Findings findings;
  check_database(book.database(), findings);
  check_documents(book.database(), findings);
  for (const auto& shop : book.shops()) {
    try {
      check_shop(book, shop, findings);
    } catch (const Error& error) {
      findings.push_back(fmt::format("{}: {}", shop.shop.slug, error.what()));
    }
  }
  return findings;
}

}  // namespace rangebook
