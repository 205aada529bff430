// A rejection: a row, a cell or a block of a document that could not be taken, with what is wrong
// and how to fix it. Kept in the book, listed, never dropped silently.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace rangebook {

enum class RejectionKind : std::uint8_t {
  unreadable_document,  ///< wrong file type, empty, cannot be opened as what it says it is
  no_name_column,       ///< a table without the one column every table needs
  malformed_row,        ///< cells beyond the header, quote never closed, ..
  bad_encoding,         ///< bytes that are not valid UTF-8, NUL bytes
  missing_name,
  bad_price,
  ambiguous_price,  ///< two readings, both shown
  bad_currency,
  bad_size,
  bad_stock,
  bad_gtin,
  bad_composition,
  conflicting_rows,  ///< the same colour and size twice with different facts
  bad_markup,        ///< JSON-LD that is no JSON, nested too deep, ..
  over_limit,        ///< a named limit was passed
};
std::string_view to_string(RejectionKind kind);  ///< `ambiguous-price`
std::optional<RejectionKind> parse_rejection_kind(std::string_view name);

/// What was refused: the whole row (or block), one cell while the rest of the row went in, or
/// nothing: the text is kept as it stands and doubted.
enum class Refused : std::uint8_t { row, cell, nothing };
std::string_view to_string(Refused refused);  ///< `row`
std::optional<Refused> parse_refused(std::string_view name);

struct Rejection {
  std::uint32_t document = 0;         ///< index among the documents of the capture
  std::optional<std::uint64_t> line;  ///< line of the file, from 1, where it has lines
  std::uint64_t byte = 0;             ///< offset in the document, from 0
  std::string field;                  ///< column name of the contract; empty for a whole row
  RejectionKind kind = RejectionKind::malformed_row;
  Refused refused = Refused::row;
  std::string what;        ///< one sentence
  std::string how_to_fix;  ///< one sentence
  std::string excerpt;     ///< the text in question, cut at kExcerptBytes
  std::string line_code;   ///< of the refused row, where readable: it must not be called gone
  std::string name;        ///< likewise

  bool operator==(const Rejection&) const = default;
};

inline constexpr std::size_t kExcerptBytes = 160;

}  // namespace rangebook
