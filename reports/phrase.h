// Text of a report in pieces: our own words, what the shop wrote, figures, and the notes they
// carry. Every format gets the same pieces and escapes each by what it is, so that a figure cannot
// differ between the page, the text and the JSON.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

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

  bool operator==(const Piece&) const = default;
};

/// A sentence or the content of a table cell.
struct Phrase {
  std::vector<Piece> pieces;

  Phrase& words(std::string_view text) { return add({Piece::Kind::words, std::string(text), 0}); }
  Phrase& label(std::string_view text) { return add({Piece::Kind::label, std::string(text), 0}); }
  Phrase& code(std::string_view text) { return add({Piece::Kind::code, std::string(text), 0}); }
  Phrase& name(std::string_view text) { return add({Piece::Kind::name, std::string(text), 0}); }
  Phrase& figure(std::string_view text) { return add({Piece::Kind::figure, std::string(text), 0}); }
  Phrase& note(std::size_t number) { return add({Piece::Kind::note, {}, number}); }
  Phrase& append(const Phrase& other) {
    pieces.insert(pieces.end(), other.pieces.begin(), other.pieces.end());
    return *this;
  }

  bool empty() const { return pieces.empty(); }
  bool operator==(const Phrase&) const = default;

 private:
  Phrase& add(Piece piece) {
    pieces.push_back(std::move(piece));
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
