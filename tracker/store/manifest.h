// Manifests: which lines a capture shows, and which version of each part. A line that did not
// change since the capture the manifest is based on costs nothing.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/raw_row.h"
#include "schema/snapshot.h"
#include "tracker/store/pack.h"
#include "tracker/store/sqlite.h"

namespace rangebook {

struct ManifestEntry {
  LineId line = 0;
  Version card = 0;
  Version detail = 0;
  Version offers = 0;

  bool operator==(const ManifestEntry&) const = default;
};

/// Ordered by line, each line once.
using Manifest = std::vector<ManifestEntry>;

/// Where each line of a manifest was first met in its document.
struct LineOrigin {
  std::uint32_t document = 0;
  std::uint64_t line = 1;
};

inline constexpr unsigned kMaxManifestChain = 8;

std::string encode_manifest(const Manifest& manifest);
/// The changes that turn `base` into `manifest`.
std::string encode_manifest_delta(const Manifest& base, const Manifest& manifest);
/// Nothing when the bytes are damaged.
std::optional<Manifest> decode_manifest(std::string_view bytes);
std::optional<Manifest> apply_manifest_delta(const Manifest& base, std::string_view bytes);

std::string encode_origins(const std::vector<LineOrigin>& origins);
std::optional<std::vector<LineOrigin>> decode_origins(std::string_view bytes, std::size_t count);

/// The manifest of a capture, through the chain of its bases. Throws Error when damaged.
Manifest read_manifest(const Database& database, std::int64_t capture);
/// The manifests of all captures of a shop by capture, each unpacked once. Throws Error when
/// damaged.
std::map<std::int64_t, Manifest> read_manifests(const Database& database, std::int64_t shop);
/// Writes the manifest of a capture: whole, or as a delta against that of `base` where that is
/// shorter and the chain allows it.
void store_manifest(const Database& database, std::int64_t capture, const Manifest& manifest,
                    std::optional<std::int64_t> base, const Manifest& base_manifest);
/// How many bases stand before the capture's manifest.
unsigned manifest_chain(const Database& database, std::int64_t capture);

}  // namespace rangebook
