// The straight path of the whole program: every stage once, in order.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/change.h"
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

/// Two snapshots -> links -> changes. Throws Error when the shop or a capture is not there; the
/// message names the nearest one that is.
ChangeSet run_comparison(const Book& book, const CompareRequest& request);

/// The capture a word names: a date, an id, or a season (its latest capture); empty: the latest.
/// Throws Error with what there is instead.
CaptureInfo find_capture(const Book& book, const std::string& shop, const std::string& word);

}  // namespace rangebook
