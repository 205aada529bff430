// The straight path of the whole program: every stage once, in order.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "schema/change.h"
#include "schema/palette.h"
#include "schema/rejection.h"
#include "tracker/app/request.h"
#include "tracker/store/book.h"
#include "tracker/store/capture_writer.h"

namespace rangebook {

/// What became of a capture, for telling the stylist.
struct CaptureReport {
  CaptureInfo info;
  CaptureOutcome outcome;
  Shop shop;
  bool new_shop = false;                    ///< the shop was not in the book and was added
  bool kept = false;                        ///< false: dry run, unchanged, or nothing could be read
  std::vector<std::string> notes;           ///< sentences worth knowing
  std::vector<Rejection> first_rejections;  ///< at most kShownRejections
};
inline constexpr std::size_t kShownRejections = 10;

/// Called now and then with bytes read and bytes in all.
using ProgressCallback = std::function<void(std::uint64_t, std::uint64_t)>;

/// Documents -> raw rows -> listings -> store. One capture, one transaction.
CaptureReport run_capture(Book& book, const CaptureRequest& request,
                          const ProgressCallback& progress);

/// A shop or capture that a request names and the book does not have: a sentence that says so and
/// names the nearest one it has.
struct NotThere {
  std::string message;
};

/// Two snapshots -> links -> changes.
std::variant<ChangeSet, NotThere> run_comparison(const Book& book, const CompareRequest& request);

/// The palettes of both captures of a comparison, within what both looked at.
std::vector<PalettePair> run_palettes(const Book& book, const ChangeSet& set);

/// The capture a word names: a date, an id, or a season (its latest capture); empty: the latest.
std::variant<CaptureInfo, NotThere> find_capture(const Book& book, const std::string& shop,
                                                 const std::string& word);

}  // namespace rangebook
