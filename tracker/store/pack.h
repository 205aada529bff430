// Packs: versions of one part of a shop's lines, numbered through, many to one compressed frame.
//
// A version is whole, or (offers only) a delta against an earlier version of the same line; chains
// are at most kMaxDeltaChain long. The content hash of each version stands beside the frame: it is
// the content address, and proves on reading that the bytes are the ones that were written.
// Rejected alternative: one SQL row a version, which costs more in row headers and index than the
// deltas themselves.
#pragma once

#include <cstdint>
#include <list>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "schema/listing.h"
#include "tracker/store/line_codec.h"
#include "tracker/store/sqlite.h"
#include "tracker/store/zstd_frame.h"

namespace rangebook {

/// Number of a version within a shop and part, from 1.
using Version = std::uint64_t;

inline constexpr std::size_t kPackBytes = std::size_t{256} << 10U;  ///< a pack is closed above it
inline constexpr std::uint64_t kMaxPackBytes = std::uint64_t{64} << 20U;
inline constexpr unsigned kMaxDeltaChain = 8;

/// A version as stored.
struct StoredVersion {
  std::optional<Version> base;  ///< a delta against this version
  std::uint64_t hash = 0;       ///< of the canonical bytes, also for a delta
  std::string_view bytes;
};

/// Appends versions; `flush` must be called once all are in.
class PackWriter {
 public:
  PackWriter(const Database& database, std::int64_t shop, Part part);

  Version add(const StoredVersion& version);
  void flush();

 private:
  const Database& database_;
  std::int64_t shop_;
  Part part_;
  Version next_ = 1;
  Version first_ = 1;  ///< of the open pack
  std::string bases_;
  std::string lengths_;
  std::string payload_;
  std::string hashes_;
  FrameWriter frames_;
};

/// Reads versions. Keeps the latest packs unpacked, up to `cache_bytes`.
class PackReader {
 public:
  PackReader(const Database& database, std::int64_t shop, Part part, std::size_t cache_bytes);

  /// The stored form; the view is valid until the next call. Throws Error when there is no such
  /// version or its pack is damaged.
  StoredVersion stored(Version version);
  /// The canonical bytes of a whole version, or those rebuilt from a chain of deltas.
  std::string canonical(Version version);
  /// Offers, through a chain of deltas where there is one.
  LineOffers offers(Version version);
  /// How many deltas stand between this version and a whole one.
  unsigned chain_length(Version version);
  /// The content hash alone, without unpacking anything.
  std::uint64_t hash(Version version) const;
  /// A version with this content hash, the latest one if there are several.
  std::optional<Version> find(std::uint64_t hash) const;

  Version last_version() const;

 private:
  struct Directory {
    std::int64_t id = 0;
    Version first = 1;
    std::uint32_t count = 0;
    std::string hashes;
  };
  struct Unpacked {
    std::size_t directory = 0;
    std::string raw;
    std::vector<std::uint64_t> bases;
    std::vector<std::uint32_t> ends;  ///< of each payload, from `payload` on
    std::size_t payload = 0;
  };

  std::size_t pack_of(Version version) const;
  const Unpacked& unpack(std::size_t directory);
  Unpacked read_pack(std::size_t directory) const;

  const Database& database_;
  Part part_;
  std::size_t cache_bytes_;
  std::size_t cached_ = 0;
  std::vector<Directory> directory_;
  mutable std::unordered_map<std::uint64_t, Version> by_hash_;
  std::list<Unpacked> cache_;  ///< latest used first
};

}  // namespace rangebook
