// Frame content: for each version the distance to its base (0: whole), then each length, then all
// bytes one after the other. Columns of like numbers compress best.
#include "tracker/store/pack.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstring>

#include "schema/error.h"
#include "tracker/store/varint.h"

namespace rangebook {
namespace {

constexpr int kPackLevel = 3;

[[noreturn]] void damaged(Part part, Version version) {
  throw Error(
      fmt::format("Version {} of a line's {} is damaged or missing. Restore the book from "
                  "a backup, or run \"rangebook check\" to see what is affected.",
                  version, to_string(part)));
}

std::uint64_t hash_at(const std::string& hashes, std::size_t index) {
  std::uint64_t hash = 0;
  for (unsigned i = 0; i < 8; ++i) {
    hash |= std::uint64_t{static_cast<unsigned char>(hashes[index * 8 + i])} << (8 * i);
  }
  return hash;
}

void put_hash(std::string& out, std::uint64_t hash) {
  for (unsigned i = 0; i < 8; ++i) {
    out.push_back(static_cast<char>(static_cast<unsigned char>(hash >> (8 * i))));
  }
}

}  // namespace

PackWriter::PackWriter(const Database& database, std::int64_t shop, Part part)
    : database_(database), shop_(shop), part_(part), frames_(kPackLevel) {
  auto last = database.prepare(
      "SELECT coalesce(max(first_version + version_count), 1) FROM pack "
      "WHERE shop_id = ?1 AND part = ?2");
  last.bind(1, shop).bind(2, to_string(part)).step();
  next_ = first_ = static_cast<Version>(last.integer(0));
}

Version PackWriter::add(const StoredVersion& version) {
  put_varint(bases_, version.base ? next_ - *version.base : 0);
  put_varint(lengths_, version.bytes.size());
  payload_.append(version.bytes);
  put_hash(hashes_, version.hash);
  const Version number = next_++;
  if (payload_.size() >= kPackBytes) flush();
  return number;
}

void PackWriter::flush() {
  if (next_ == first_) return;
  auto insert = database_.prepare(
      "INSERT INTO pack (shop_id, part, first_version, version_count, hashes, frame) "
      "VALUES (?1, ?2, ?3, ?4, ?5, ?6)");
  insert.bind(1, shop_).bind(2, to_string(part_)).bind(3, static_cast<std::int64_t>(first_));
  insert.bind(4, static_cast<std::int64_t>(next_ - first_)).bind_blob(5, hashes_);
  insert.bind_blob(6, frames_.compress(bases_ + lengths_ + payload_)).run();
  first_ = next_;
  for (auto* column : {&bases_, &lengths_, &payload_, &hashes_}) column->clear();
}

PackReader::PackReader(const Database& database, std::int64_t shop, Part part,
                       std::size_t cache_bytes)
    : database_(database), part_(part), cache_bytes_(cache_bytes) {
  auto rows = database.prepare(
      "SELECT id, first_version, version_count, hashes FROM pack "
      "WHERE shop_id = ?1 AND part = ?2 ORDER BY first_version");
  rows.bind(1, shop).bind(2, to_string(part));
  while (rows.step()) {
    directory_.push_back({rows.integer(0), static_cast<Version>(rows.integer(1)),
                          static_cast<std::uint32_t>(rows.integer(2)), std::string(rows.blob(3))});
    const auto& pack = directory_.back();
    if (pack.hashes.size() != std::size_t{pack.count} * 8) damaged(part, pack.first);
  }
}

Version PackReader::last_version() const {
  return directory_.empty() ? 0 : directory_.back().first + directory_.back().count - 1;
}

std::size_t PackReader::pack_of(Version version) const {
  const auto after =
      std::upper_bound(directory_.begin(), directory_.end(), version,
                       [](Version wanted, const Directory& pack) { return wanted < pack.first; });
  if (after == directory_.begin()) damaged(part_, version);
  const auto pack = std::prev(after);
  if (version >= pack->first + pack->count) damaged(part_, version);
  return static_cast<std::size_t>(pack - directory_.begin());
}

const PackReader::Unpacked& PackReader::unpack(std::size_t directory) {
  const auto found = std::find_if(cache_.begin(), cache_.end(), [&](const Unpacked& pack) {
    return pack.directory == directory;
  });
  if (found != cache_.end()) {
    cache_.splice(cache_.begin(), cache_, found);
    return cache_.front();
  }
  cache_.push_front(read_pack(directory));
  cached_ += cache_.front().raw.size();
  while (cached_ > cache_bytes_ && cache_.size() > 1) {
    cached_ -= cache_.back().raw.size();
    cache_.pop_back();
  }
  return cache_.front();
}

PackReader::Unpacked PackReader::read_pack(std::size_t directory) const {
  const Directory& pack = directory_[directory];
  auto row = database_.prepare("SELECT frame FROM pack WHERE id = ?1");
  if (!row.bind(1, pack.id).step()) damaged(part_, pack.first);
  Unpacked unpacked;
  unpacked.directory = directory;
  unpacked.raw = decompress(row.blob(0), kMaxPackBytes);
  ByteReader in(unpacked.raw);
  unpacked.bases.reserve(pack.count);
  for (std::uint32_t i = 0; i < pack.count; ++i) unpacked.bases.push_back(in.varint());
  std::uint64_t end = 0;
  unpacked.ends.reserve(pack.count);
  for (std::uint32_t i = 0; i < pack.count; ++i) {
    end += in.varint();
    unpacked.ends.push_back(static_cast<std::uint32_t>(end));
  }
  if (in.failed() || end != in.left()) damaged(part_, pack.first);
  unpacked.payload = unpacked.raw.size() - in.left();
  return unpacked;
}

StoredVersion PackReader::stored(Version version) {
  const std::size_t directory = pack_of(version);
  const Unpacked& pack = unpack(directory);
  const std::size_t index = version - directory_[directory].first;
  const std::size_t from = index == 0 ? 0 : pack.ends[index - 1];
  StoredVersion found;
  if (pack.bases[index] >= version) damaged(part_, version);
  if (pack.bases[index] != 0) found.base = version - pack.bases[index];
  found.hash = hash_at(directory_[directory].hashes, index);
  found.bytes = std::string_view(pack.raw).substr(pack.payload + from, pack.ends[index] - from);
  return found;
}

std::string PackReader::canonical(Version version) {
  const StoredVersion found = stored(version);
  if (!found.base) return std::string(found.bytes);
  std::string bytes;
  encode(offers(version), bytes);
  return bytes;
}

LineOffers PackReader::offers(Version version) {
  std::vector<std::string> deltas;
  Version at = version;
  StoredVersion found = stored(at);
  while (found.base) {
    if (deltas.size() >= kMaxDeltaChain) damaged(part_, version);
    deltas.emplace_back(found.bytes);
    at = *found.base;
    found = stored(at);
  }
  auto line = decode_offers(found.bytes);
  if (!line) damaged(part_, at);
  for (; !deltas.empty(); deltas.pop_back()) {
    if (!apply_offers_delta(deltas.back(), *line)) damaged(part_, version);
  }
  return std::move(*line);
}

unsigned PackReader::chain_length(Version version) {
  unsigned length = 0;
  for (auto base = stored(version).base; base; base = stored(*base).base) ++length;
  return length;
}

std::uint64_t PackReader::hash(Version version) const {
  const std::size_t directory = pack_of(version);
  return hash_at(directory_[directory].hashes, version - directory_[directory].first);
}

std::optional<Version> PackReader::find(std::uint64_t hash) const {
  if (by_hash_.empty()) {
    by_hash_.reserve(last_version());
    for (const auto& pack : directory_) {
      for (std::uint32_t i = 0; i < pack.count; ++i) {
        by_hash_[hash_at(pack.hashes, i)] = pack.first + i;
      }
    }
  }
  const auto found = by_hash_.find(hash);
  return found == by_hash_.end() ? std::nullopt : std::optional(found->second);
}

}  // namespace rangebook
