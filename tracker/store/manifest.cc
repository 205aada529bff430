// Columns of differences, compressed: consecutive lines with consecutive versions are runs of ones.
#include "tracker/store/manifest.h"

#include <fmt/format.h>

#include <algorithm>

#include "schema/error.h"
#include "tracker/store/varint.h"

namespace rangebook {
namespace {

constexpr int kManifestLevel = 9;
constexpr std::uint64_t kMaxManifestBytes = std::uint64_t{1} << 30U;

using Column = Version ManifestEntry::*;
constexpr Column kColumns[] = {&ManifestEntry::card, &ManifestEntry::detail,
                               &ManifestEntry::offers};

std::string compressed(const std::string& bytes) {
  return FrameWriter(kManifestLevel).compress(bytes);
}

void put_lines(std::string& out, const Manifest& entries) {
  put_varint(out, entries.size());
  LineId last = 0;
  for (const auto& entry : entries) {
    put_varint(out, static_cast<std::uint64_t>(entry.line - last));
    last = entry.line;
  }
}

Manifest read_lines(ByteReader& in) {
  Manifest entries(in.count());
  LineId last = 0;
  for (auto& entry : entries) {
    last += static_cast<LineId>(in.varint());
    entry.line = last;
  }
  return entries;
}

const ManifestEntry* find_line(const Manifest& manifest, LineId line) {
  const auto at = std::lower_bound(
      manifest.begin(), manifest.end(), line,
      [](const ManifestEntry& entry, LineId wanted) { return entry.line < wanted; });
  return at != manifest.end() && at->line == line ? &*at : nullptr;
}

/// Difference of `entry`'s version to the last one written + 1; 0 means: as in the base.
std::uint64_t column_code(Version version, Version last, const Version* base) {
  if (base && *base == version) return 0;
  return zigzag(static_cast<std::int64_t>(version - last)) + 1;
}

Manifest lines_not_in(const Manifest& from, const Manifest& other) {
  Manifest missing;
  std::set_difference(from.begin(), from.end(), other.begin(), other.end(),
                      std::back_inserter(missing),
                      [](const auto& a, const auto& b) { return a.line < b.line; });
  return missing;
}

void put_columns(std::string& out, const Manifest& entries, const Manifest& base) {
  for (const Column column : kColumns) {
    Version last = 0;
    for (const auto& entry : entries) {
      const auto* old = find_line(base, entry.line);
      const auto code = column_code(entry.*column, last, old ? &(old->*column) : nullptr);
      put_varint(out, code);
      if (code != 0) last = entry.*column;
    }
  }
}

bool read_columns(ByteReader& in, Manifest& entries, const Manifest& base) {
  for (const Column column : kColumns) {
    Version last = 0;
    for (auto& entry : entries) {
      const std::uint64_t code = in.varint();
      const auto* old = find_line(base, entry.line);
      if (code == 0 && !old) return false;
      if (code != 0) last += static_cast<Version>(unzigzag(code - 1));
      entry.*column = code == 0 ? old->*column : last;
    }
  }
  return !in.failed();
}

Manifest merged(const Manifest& base, const Manifest& removed, const Manifest& changed) {
  Manifest out;
  out.reserve(base.size() + changed.size());
  auto next = changed.begin();
  for (const auto& entry : base) {
    while (next != changed.end() && next->line < entry.line) out.push_back(*next++);
    const bool replaced = next != changed.end() && next->line == entry.line;
    if (replaced) out.push_back(*next++);
    if (!replaced && !find_line(removed, entry.line)) out.push_back(entry);
  }
  out.insert(out.end(), next, changed.end());
  return out;
}

[[noreturn]] void damaged(std::int64_t capture) {
  throw Error(
      fmt::format("The list of lines of capture {} is damaged. Restore the book from a "
                  "backup.",
                  capture));
}

}  // namespace

std::string encode_manifest(const Manifest& manifest) {
  std::string out;
  put_lines(out, manifest);
  put_columns(out, manifest, {});
  return compressed(out);
}

std::string encode_manifest_delta(const Manifest& base, const Manifest& manifest) {
  Manifest changed;
  for (const auto& entry : manifest) {
    const auto* old = find_line(base, entry.line);
    if (!old || *old != entry) changed.push_back(entry);
  }
  std::string out;
  put_lines(out, lines_not_in(base, manifest));
  put_lines(out, changed);
  put_columns(out, changed, base);
  return compressed(out);
}

std::optional<Manifest> decode_manifest(std::string_view bytes) {
  const std::string raw = decompress(bytes, kMaxManifestBytes);
  ByteReader in(raw);
  Manifest manifest = read_lines(in);
  if (!read_columns(in, manifest, {}) || !in.at_end()) return std::nullopt;
  return manifest;
}

std::optional<Manifest> apply_manifest_delta(const Manifest& base, std::string_view bytes) {
  const std::string raw = decompress(bytes, kMaxManifestBytes);
  ByteReader in(raw);
  const Manifest removed = read_lines(in);
  Manifest changed = read_lines(in);
  if (!read_columns(in, changed, base) || !in.at_end()) return std::nullopt;
  return merged(base, removed, changed);
}

std::string encode_origins(const std::vector<LineOrigin>& origins) {
  std::string out;
  std::int64_t last = 0;
  for (const auto& origin : origins) {
    put_varint(out, zigzag(static_cast<std::int64_t>(origin.document) - last));
    last = origin.document;
  }
  last = 0;
  for (const auto& origin : origins) {
    put_varint(out, zigzag(static_cast<std::int64_t>(origin.line) - last));
    last = static_cast<std::int64_t>(origin.line);
  }
  return compressed(out);
}

std::optional<std::vector<LineOrigin>> decode_origins(std::string_view bytes, std::size_t count) {
  const std::string raw = decompress(bytes, kMaxManifestBytes);
  ByteReader in(raw);
  std::vector<LineOrigin> origins(count);
  std::int64_t last = 0;
  for (auto& origin : origins) {
    last += in.signed_varint();
    origin.document = static_cast<std::uint32_t>(last);
  }
  last = 0;
  for (auto& origin : origins) {
    last += in.signed_varint();
    origin.line = static_cast<std::uint64_t>(last);
  }
  if (in.failed() || !in.at_end()) return std::nullopt;
  return origins;
}

Manifest read_manifest(const Database& database, std::int64_t capture) {
  std::vector<std::string> deltas;
  auto row = database.prepare("SELECT base_id, manifest FROM capture WHERE id = ?1");
  std::optional<Manifest> manifest;
  for (std::int64_t at = capture; !manifest;) {
    row.reset();
    if (!row.bind(1, at).step() || deltas.size() > kMaxManifestChain) damaged(capture);
    if (row.is_null(0)) {
      manifest = decode_manifest(row.blob(1));
      if (!manifest) damaged(at);
    } else {
      deltas.emplace_back(row.blob(1));
      at = row.integer(0);
    }
  }
  for (; !deltas.empty(); deltas.pop_back()) {
    manifest = apply_manifest_delta(*manifest, deltas.back());
    if (!manifest) damaged(capture);
  }
  return std::move(*manifest);
}

// A base is always the older capture, so it stands in the map already.
std::map<std::int64_t, Manifest> read_manifests(const Database& database, std::int64_t shop) {
  auto row =
      database.prepare("SELECT id, base_id, manifest FROM capture WHERE shop_id = ?1 ORDER BY id");
  row.bind(1, shop);
  std::map<std::int64_t, Manifest> manifests;
  while (row.step()) {
    const std::int64_t capture = row.integer(0);
    const auto base = row.is_null(1) ? manifests.end() : manifests.find(row.integer(1));
    if (!row.is_null(1) && base == manifests.end()) damaged(capture);
    auto manifest = base == manifests.end() ? decode_manifest(row.blob(2))
                                            : apply_manifest_delta(base->second, row.blob(2));
    if (!manifest) damaged(capture);
    manifests[capture] = std::move(*manifest);
  }
  return manifests;
}

unsigned manifest_chain(const Database& database, std::int64_t capture) {
  auto row = database.prepare("SELECT base_id FROM capture WHERE id = ?1");
  unsigned length = 0;
  for (std::int64_t at = capture; row.bind(1, at).step() && !row.is_null(0); ++length) {
    at = row.integer(0);
    row.reset();
  }
  return length;
}

void store_manifest(const Database& database, std::int64_t capture, const Manifest& manifest,
                    std::optional<std::int64_t> base, const Manifest& base_manifest) {
  std::string bytes = encode_manifest(manifest);
  std::optional<std::int64_t> used;
  if (base && manifest_chain(database, *base) + 1 < kMaxManifestChain) {
    std::string delta = encode_manifest_delta(base_manifest, manifest);
    if (delta.size() < bytes.size()) {
      bytes = std::move(delta);
      used = base;
    }
  }
  database.prepare("UPDATE capture SET base_id = ?2, manifest = ?3 WHERE id = ?1")
      .bind(1, capture)
      .bind(2, used)
      .bind_blob(3, bytes)
      .run();
}

}  // namespace rangebook
