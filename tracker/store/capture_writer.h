// Writing one capture: everything or nothing, in one transaction.
//
// Listings arrive in the order of the documents, and the same line may arrive in pieces. Pieces
// wait packed in a spill file; at the end they are joined by key, compared with what the book
// knows of the line, and only new versions are written.
//
// A capture can be read again from its documents, with another mapping: its list of lines and its
// rejections are replaced, its id, date and documents stay. Versions are only ever added, and the
// lists of captures that are deltas against this one are written anew, so that they still say the
// same.
#pragma once

#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "schema/capture.h"
#include "schema/listing.h"
#include "schema/rejection.h"
#include "tracker/store/book.h"
#include "tracker/store/document_archive.h"
#include "tracker/store/former_capture.h"
#include "tracker/store/manifest.h"
#include "tracker/store/spill.h"

namespace rangebook {

/// What a capture came to.
struct CaptureOutcome {
  std::int64_t id = 0;
  bool unchanged = false;      ///< the same documents are in the book already, as capture `id`
  bool other_options = false;  ///< .. but read with another profile or other options
  std::uint64_t lines = 0;
  std::uint64_t variants = 0;
  std::uint64_t new_lines = 0;   ///< never seen in this book before
  std::uint64_t same_lines = 0;  ///< exactly as the book knew them
  std::uint64_t refused_rows = 0;
  std::uint64_t refused_cells = 0;
  std::uint64_t doubts = 0;
};

class CaptureWriter {
 public:
  /// Begins the transaction; a shop the book does not have is added with it. `info.documents` and
  /// `info.id` are filled in by the writer. `same_day_only`: the same documents count as the same
  /// capture only on the same date.
  CaptureWriter(Book& book, const Shop& shop, CaptureInfo info, bool same_day_only);

  /// Begins the transaction that reads a capture of the book again. Its documents are ended in
  /// their order; their bytes are those the book has.
  CaptureWriter(Book& book, const CaptureInfo& capture);

  /// Bytes of the current document, in order.
  void add_bytes(std::string_view bytes) {
    if (!former_) archive_.add(bytes);
  }
  /// Ends the current document. Its index among the documents of the capture is the number of
  /// documents ended before. Its hash and length are the writer's to find.
  void end_document(DocumentInfo document);
  void add(std::string_view key, const Listing& listing);
  void reject(const Rejection& rejection);

  /// Joins, compares and writes. Without `keep`, and when there is no line at all, everything is
  /// worked out and rolled back: an empty capture would make every line look dropped. Until this
  /// is destroyed, the book shows the capture as it would be. A capture read again that came out
  /// as it was is unchanged.
  CaptureOutcome finish(bool keep);
  const CaptureInfo& info() const { return info_; }

 private:
  /// One piece of a line, waiting in the spill file.
  struct Piece {
    std::uint64_t key_low = 0;  ///< 128-bit hash of the key
    std::uint64_t key_high = 0;
    std::uint64_t place = 0;
    std::uint32_t length = 0;
    std::uint32_t order = 0;
  };
  struct Parts;
  class Versions;

  std::optional<std::int64_t> same_capture() const;
  bool same_options(std::int64_t capture) const;
  void end_former_document(const DocumentInfo& document);
  void insert_capture();
  void load_keys();
  void join_pieces();
  void sort_pieces();
  void read_piece(const Piece& piece, Parts& parts);
  void merge_pieces(std::size_t first, std::size_t last, Parts& parts);
  LineId line_of(const Piece& piece, std::string_view key);
  void write_line(LineId line, const Parts& parts, Versions& versions);
  void write_manifest();
  std::optional<std::int64_t> newest_capture() const;

  Book& book_;
  const Database& database_;
  Transaction transaction_;
  ShopRecord shop_;
  CaptureInfo info_;
  bool same_day_only_;
  DocumentArchive archive_;
  std::vector<std::int64_t> document_ids_;
  std::optional<FormerCapture> former_;  ///< only when a capture is read again
  Spill spill_;
  std::deque<Piece> pieces_;  // a deque: growing never holds two copies
  std::unordered_map<std::uint64_t, std::vector<std::pair<std::uint64_t, LineId>>> known_lines_;
  std::optional<std::int64_t> base_;
  Manifest base_manifest_;
  Manifest manifest_;
  std::vector<LineOrigin> origins_;
  Statement insert_line_;
  Statement insert_rejection_;
  CaptureOutcome outcome_;
};

}  // namespace rangebook
