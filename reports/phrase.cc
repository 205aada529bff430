// Plain and Markdown forms of phrases, and the cleaning of text that is not ours.
#include "reports/phrase.h"

#include <fmt/format.h>

#include "reports/number_style.h"
#include "reports/utf8.h"

namespace rangebook {
namespace {

/// Line and paragraph separators, and the C1 controls that some terminals obey.
bool is_control(std::string_view character) {
  const auto first = static_cast<unsigned char>(character[0]);
  if (character.size() == 1) return first < 0x20 || first == 0x7F;
  if (character.size() == 2)
    return first == 0xC2 && static_cast<unsigned char>(character[1]) < 0xA0;
  return character == "\xE2\x80\xA8" || character == "\xE2\x80\xA9";
}

/// U+202A..U+202E and U+2066..U+2069: they change the order of whatever follows.
bool is_reordering(std::string_view character) {
  if (character.size() != 3 || character[0] != '\xE2') return false;
  const auto last = static_cast<unsigned char>(character[2]);
  return (character[1] == '\x80' && last >= 0xAA && last <= 0xAE) ||
         (character[1] == '\x81' && last >= 0xA6 && last <= 0xA9);
}

bool has_markdown_meaning(char sign) {
  constexpr std::string_view kSigns = "\\`*_[]<>&|~$#@:!^=";
  return kSigns.find(sign) != std::string_view::npos;
}

bool ends_in_www(std::string_view text) {
  return text.size() >= 3 && (text.ends_with("www") || text.ends_with("WWW"));
}

}  // namespace

Phrase& Phrase::value(const PieceValue& value) {
  pieces.push_back({Piece::Kind::figure, figure_text(value, {}), 0, value});
  return *this;
}

std::string clean_line(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const Utf8Step step = utf8_step(text);
    const std::string_view character = text.substr(0, step.bytes);
    if (!step.valid || is_reordering(character)) {
      out += kReplacement;
    } else if (is_control(character)) {
      out += ' ';
    } else {
      out += character;
    }
    text.remove_prefix(step.bytes);
  }
  return out;
}

std::string markdown_escaped(std::string_view text) {
  std::string out;
  const std::string line = clean_line(text);
  for (const char sign : line) {
    if (has_markdown_meaning(sign) || (sign == '.' && ends_in_www(out))) out += '\\';
    out += sign;
  }
  return out;
}

std::string plain_text(const Phrase& phrase, bool notes) {
  std::string out;
  for (const Piece& piece : phrase.pieces) {
    if (piece.kind != Piece::Kind::note) {
      out += clean_line(piece.text);
    } else if (notes) {
      out += fmt::format("[{}]", piece.note);
    }
  }
  return out;
}

std::string markdown_text(const Phrase& phrase) {
  std::string out;
  for (const Piece& piece : phrase.pieces) {
    switch (piece.kind) {
      case Piece::Kind::words:
        out += piece.text;
        break;
      case Piece::Kind::label:
        out += fmt::format("**{}**", piece.text);
        break;
      case Piece::Kind::name:
      case Piece::Kind::figure:
      case Piece::Kind::code:
        out += markdown_escaped(piece.text);
        break;
      case Piece::Kind::note:
        out += fmt::format("[^{}]", piece.note);
        break;
    }
  }
  return out;
}

std::vector<std::size_t> notes_of(const Phrase& phrase) {
  std::vector<std::size_t> notes;
  for (const Piece& piece : phrase.pieces) {
    if (piece.kind == Piece::Kind::note) notes.push_back(piece.note);
  }
  return notes;
}

}  // namespace rangebook
