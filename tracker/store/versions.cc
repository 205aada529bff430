// Equal hashes are proved equal by their bytes before a version is used again.
#include "tracker/store/versions.h"

namespace rangebook {
namespace {

constexpr std::size_t kCacheBytes = std::size_t{4} << 20U;

}  // namespace

PartVersions::PartVersions(const Database& database, std::int64_t shop, Part part)
    : part_(part), reader_(database, shop, part, kCacheBytes), writer_(database, shop, part) {}

Version PartVersions::put(std::string_view canonical, std::optional<Version> previous) {
  const std::uint64_t hash = content_hash(canonical);
  if (previous && reader_.hash(*previous) == hash && holds(*previous, canonical)) return *previous;
  if (const auto found = reader_.find(hash); found && holds(*found, canonical)) return *found;
  if (part_ == Part::offers && previous) {
    const auto change = delta(canonical, *previous);
    if (change && change->size() < canonical.size()) return writer_.add({previous, hash, *change});
  }
  return writer_.add({std::nullopt, hash, canonical});
}

bool PartVersions::holds(Version version, std::string_view canonical) {
  const StoredVersion found = reader_.stored(version);
  return found.base ? reader_.canonical(version) == canonical : found.bytes == canonical;
}

std::optional<std::string> PartVersions::delta(std::string_view canonical, Version previous) {
  if (reader_.chain_length(previous) + 1 >= kMaxDeltaChain) return std::nullopt;
  const auto target = decode_offers(canonical);
  if (!target) return std::nullopt;
  return encode_offers_delta(reader_.offers(previous), *target);
}

}  // namespace rangebook
