// A range book: one SQLite file. Opening brings it to the newest version of the tables; a file
// from a newer program is refused, never guessed at.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/capture.h"
#include "schema/profile.h"
#include "schema/snapshot.h"
#include "tracker/linker.h"
#include "tracker/store/sqlite.h"

namespace rangebook {

/// A shop with its row in the book.
struct ShopRecord {
  std::int64_t id = 0;
  Shop shop;
};

/// A capture with its figures, for lists.
struct CaptureRecord {
  CaptureInfo info;
  std::int64_t lines = 0;
  std::int64_t refused = 0;  ///< rows and cells
};

/// Bytes of the parts of a book.
struct BookSizes {
  std::int64_t documents = 0;  ///< compressed
  std::int64_t versions = 0;   ///< packed lines with their hashes
  std::int64_t captures = 0;   ///< lists of lines
  std::int64_t file = 0;
};

/// The bytes of a document, one frame after the other.
class StoredDocument {
 public:
  StoredDocument(const Database& database, std::int64_t capture, std::uint32_t position);

  /// Empty at the end; valid until the next call. Throws Error when damaged.
  std::string_view next_frame();

 private:
  Statement frames_;
  std::string frame_;
};

class Book {
 public:
  /// Opens an existing book, or with `create` makes a new one where there is none.
  /// Throws Error: no such file, no rangebook file, newer version, no permission.
  static Book open(const std::string& path, bool create);

  const Database& database() const { return *database_; }

  /// Adds a shop, or changes the one with this slug.
  void put_shop(const Shop& shop);
  std::optional<ShopRecord> find_shop(std::string_view slug) const;
  std::vector<ShopRecord> shops() const;

  /// Saves a profile under its name, in the place of one that has it. The first profile of a shop
  /// becomes its default; `is_default` makes it that too. Throws Error when there is no such shop.
  void put_profile(std::string_view shop, const Profile& profile);
  /// By name.
  std::vector<Profile> profiles(std::string_view shop) const;
  std::optional<Profile> find_profile(std::string_view shop, std::string_view name) const;
  /// False when there was none. Captures that were read with it stay as they are.
  bool remove_profile(std::string_view shop, std::string_view name);

  /// Captures of a shop by date, then id.
  std::vector<CaptureRecord> captures(std::string_view shop) const;
  /// Those of every shop that has any, by its slug, without their documents: one reading instead
  /// of one for each shop.
  std::map<std::string, std::vector<CaptureRecord>> captures_of_all() const;
  std::optional<CaptureInfo> capture(std::int64_t id) const;
  std::vector<Rejection> rejections(std::int64_t capture) const;

  /// Decisions about which line is which, of the whole shop.
  std::vector<LinkDecision> link_decisions(std::string_view shop) const;

  /// Removes the newest capture of a shop. Its documents stay in the book.
  /// Nothing when the shop has none, or its newest is not `only`; else the capture that was
  /// removed.
  std::optional<CaptureInfo> undo_capture(std::string_view shop,
                                          std::optional<std::int64_t> only = std::nullopt);

  /// Copies the book into a new file, also while it is in use.
  void backup(const std::string& path) const;

  BookSizes sizes() const;

  /// The bytes of a document of a capture, as they were captured.
  std::string document_bytes(std::int64_t capture, std::uint32_t position) const;
  /// The same, piece by piece. The book must outlive it.
  StoredDocument open_document(std::int64_t capture, std::uint32_t position) const;

 private:
  explicit Book(std::unique_ptr<Database> database) : database_(std::move(database)) {}

  void drop_unused_packs(std::int64_t shop);

  std::unique_ptr<Database> database_;
};

/// Lower-case hex.
std::string hex(std::string_view bytes);

}  // namespace rangebook
