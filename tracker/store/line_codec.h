// The canonical bytes of the three parts of a listing, and deltas between two states of a line's
// offers. Equal parts have equal bytes in every book: the hash of the bytes is the content address.
//
// Layout in schema/FORMAT.md, "Line parts". Colour and size labels stand in each version rather
// than in a dictionary of the book: a version can then be read alone, and compared across books;
// packs of versions are compressed together, so the repetition costs little. Rejected alternative:
// one row a variant in SQL (measured by the design: sixty times the bytes for a repeat capture).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "schema/listing.h"

namespace rangebook {

enum class Part : std::uint8_t { card, detail, offers };
inline constexpr Part kParts[] = {Part::card, Part::detail, Part::offers};
std::string_view to_string(Part part);

/// Appends the canonical bytes to `out`.
void encode(const LineCard& card, std::string& out);
void encode(const LineDetail& detail, std::string& out);
void encode(const LineOffers& offers, std::string& out);

/// Reads canonical bytes; nothing when they are damaged.
std::optional<LineCard> decode_card(std::string_view bytes);
std::optional<LineDetail> decode_detail(std::string_view bytes);
std::optional<LineOffers> decode_offers(std::string_view bytes);

/// The changes that turn `base` into `target`, when both have the same currency, variants and
/// codes and only prices and stock differ; nothing otherwise.
std::optional<std::string> encode_offers_delta(const LineOffers& base, const LineOffers& target);
/// Applies a delta to its base; false when the bytes do not fit it.
bool apply_offers_delta(std::string_view delta, LineOffers& offers);

/// XXH3, 64 bits, of canonical bytes.
std::uint64_t content_hash(std::string_view bytes);

}  // namespace rangebook
