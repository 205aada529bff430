// What became of a capture, for telling the stylist.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "schema/capture.h"
#include "schema/mapping_preview.h"
#include "schema/profile.h"
#include "schema/rejection.h"
#include "tracker/store/capture_writer.h"

namespace rangebook {

struct CaptureReport {
  CaptureInfo info;
  CaptureOutcome outcome;
  Shop shop;
  bool new_shop = false;                    ///< the shop was not in the book and was added
  bool kept = false;                        ///< false: dry run, unchanged, or nothing could be read
  std::optional<Profile> saved;             ///< the profile that was kept
  std::vector<std::string> notes;           ///< sentences worth knowing
  std::vector<Rejection> first_rejections;  ///< at most kShownRejections
};
inline constexpr std::size_t kShownRejections = 10;

/// Called now and then with bytes read and bytes in all.
using ProgressCallback = std::function<void(std::uint64_t, std::uint64_t)>;

/// A shop, a capture, a profile or a column that a request names and that is not there: a sentence
/// that says so and names the nearest one there is.
struct NotThere {
  std::string message;
};

}  // namespace rangebook
