// Each piece by what it is: text of a shop is kept from reordering what stands beside it.
#include "tracker/desk/phrase_html.h"

namespace rangebook {

void write_phrase(HtmlWriter& html, const Phrase& phrase) {
  for (const Piece& piece : phrase.pieces) {
    switch (piece.kind) {
      case Piece::Kind::words:
        html.text(piece.text);
        break;
      case Piece::Kind::label:
        html.element("strong", {}, piece.text);
        break;
      case Piece::Kind::name:
      case Piece::Kind::figure:
        html.element("bdi", {}, piece.text);
        break;
      case Piece::Kind::code:
        html.element("bdi", {{"class", "code"}}, piece.text);
        break;
      case Piece::Kind::note:
        break;
    }
  }
}

}  // namespace rangebook
