// Text of a report in pieces: our own words, what the shop wrote, figures, and the notes they
// carry. Every format gets the same pieces and escapes each by what it is, so that a figure cannot
// differ between the page, the text and the JSON.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "schema/day.h"
#include "schema/money.h"

namespace rangebook {

struct Count {
  std::int64_t number = 0;
  bool operator==(const Count&) const = default;
};
/// In tenths of a percent.
struct Share {
  std::int64_t per_mille = 0;
  bool signs = false;  ///< a rise is written with its sign
  bool operator==(const Share&) const = default;
};
struct MoneyStep {
  Money step;
  bool operator==(const MoneyStep&) const = default;
};
/// What a figure is, for spreadsheets and for other ways to write it; nothing where it is text
/// only.
using PieceValue = std::variant<std::monostate, Money, MoneyStep, Day, Count, Share>;

struct Piece {
  enum class Kind : std::uint8_t {
    words,   ///< our own text, safe in every format
    label,   ///< our own text, set strong: what a paragraph is about
    name,    ///< text of the shop: may hold anything
    figure,  ///< a price, size, share or count; may hold labels of the shop
    code,    ///< a line code beside a name, set quietly; text of the shop
    note,    ///< a reference to source number `note`, counted from 1
  };
  Kind kind = Kind::words;
  std::string text;
  std::size_t note = 0;
  PieceValue value = {};

  bool operator==(const Piece&) const = default;
};

/// A sentence or the content of a table cell.
struct Phrase {
  std::vector<Piece> pieces;

  Phrase& words(std::string_view text) { return add(Piece::Kind::words, text); }
  Phrase& label(std::string_view text) { return add(Piece::Kind::label, text); }
  Phrase& code(std::string_view text) { return add(Piece::Kind::code, text); }
  Phrase& name(std::string_view text) { return add(Piece::Kind::name, text); }
  Phrase& figure(std::string_view text) { return add(Piece::Kind::figure, text); }
  Phrase& note(std::size_t number) {
    pieces.push_back({Piece::Kind::note, {}, number, {}});
    return *this;
  }
  /// A figure that knows its value; its text is that of reports/wording.h until it is restyled.
  Phrase& value(const PieceValue& value);
  Phrase& money(const Money& money) { return value(money); }
  Phrase& day(Day day) { return value(day); }
  Phrase& count(std::size_t number) { return value(Count{static_cast<std::int64_t>(number)}); }
  Phrase& share(std::int64_t per_mille, bool signs = false) {
    return value(Share{per_mille, signs});
  }
  Phrase& append(const Phrase& other) {
    pieces.insert(pieces.end(), other.pieces.begin(), other.pieces.end());
    return *this;
  }

  bool empty() const { return pieces.empty(); }
  bool operator==(const Phrase&) const = default;

 private:
  Phrase& add(Piece::Kind kind, std::string_view text) {
    pieces.push_back({kind, std::string(text), 0, {}});
    return *this;
  }
};

/// One line of plain text. With `notes`, references stand as `[3]`.
std::string plain_text(const Phrase& phrase, bool notes);

/// One line of CommonMark with GFM tables; references stand as `[^3]`.
std::string markdown_text(const Phrase& phrase);

/// The note numbers of a phrase in order.
std::vector<std::size_t> notes_of(const Phrase& phrase);

/// Text fit for one line of a terminal or file: line breaks and control characters become spaces,
/// and what could reorder or hide the figures beside it (bidirectional overrides, broken UTF-8)
/// becomes U+FFFD.
std::string clean_line(std::string_view text);

/// Text of the shop as inert CommonMark: nothing in it can become markup, a link or a table cell.
std::string markdown_escaped(std::string_view text);

}  // namespace rangebook
