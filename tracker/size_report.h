// Size reach of one capture, and since when it holds. Pure functions of snapshots.
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "schema/size_report.h"
#include "schema/snapshot.h"
#include "tracker/interpreter.h"

namespace rangebook {

/// A capture with `scope` looked at all of `category`, a slug or `all`.
bool looks_at(const Scope& scope, std::string_view category);

/// What a capture says of one size of a category.
enum class SizeSeen : std::uint8_t {
  offered,
  absent,       ///< it looked at every line of the category, all state their sizes, none has it
  cannot_tell,  ///< it did not look there, refused rows, or lines do not state their sizes
};

/// Follows a size back in time, capture by capture, newest first.
class SinceSearch {
 public:
  explicit SinceSearch(const CaptureInfo& now);
  void see(const CaptureInfo& capture, SizeSeen seen);
  /// No gap was met yet: older captures may still show it.
  bool open() const { return open_; }
  const OfferedSince& since() const { return since_; }

 private:
  OfferedSince since_;
  std::uint32_t unsure_ = 0;  // captures since the last that showed it
  bool open_ = true;
};

/// Every size of a capture by category, read line by line.
class CaptureSizes {
 public:
  explicit CaptureSizes(const Snapshot& snapshot);

  const CaptureInfo& capture() const { return capture_; }
  /// `all` first, then by slug, without since and stated.
  const std::vector<CategorySizes>& categories() const { return categories_; }
  SizeSeen seen(std::string_view category, const SizePosition& size) const;

 private:
  CaptureInfo capture_;
  bool refused_ = false;
  std::vector<CategorySizes> categories_;
  std::uint32_t hidden_ = 0;  // lines without sizes in categories that come in sizes
};

/// Puts a report together: the capture it is about, then earlier ones of the shop, newest first,
/// for as long as `wants_more`.
class SizeReporter {
 public:
  /// `stated`: by date; the latest up to the capture counts, else the first after it. `category`: a
  /// slug, empty for all of them.
  SizeReporter(const Snapshot& snapshot, const std::vector<StatedSizes>& stated,
               std::string_view category);

  bool wants_more() const;
  void add(const Snapshot& earlier);
  SizeReport take();

 private:
  using Key = std::pair<std::string, SizePosition>;  // category and size

  void mark_stated(CategorySizes& category, const std::vector<Size>& sizes) const;

  SizeReport report_;
  std::map<Key, SinceSearch> searches_;
};

/// The size a label means in a system; nothing if the system has no such size.
std::optional<Size> size_in(std::string_view label, SizeSystem system);

/// One size of one shop: a row for its fit range, and one for each other fit range that has it too.
/// A dual size (22/24) counts as both. `category`: a slug, or `all`.
class ReachingSearch {
 public:
  ReachingSearch(const Snapshot& snapshot, const Size& size, std::string_view category);

  bool wants_more() const;
  void add(const Snapshot& earlier);
  std::vector<ReachingShop> take();

 private:
  Size size_;
  std::string category_;
  std::vector<ReachingShop> rows_;
  std::vector<SinceSearch> searches_;  // of rows_
};

/// Sorts the rows of all shops as ReachingReport has them.
void sort_reaching(std::vector<ReachingShop>& shops);

}  // namespace rangebook
