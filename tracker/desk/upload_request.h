// What was said of an upload, as typed, and the capture it asks for.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "tracker/app/request.h"
#include "tracker/desk/held_uploads.h"
#include "tracker/store/book.h"

namespace rangebook {

/// Fields of the form. `shop`: a slug, or empty for a new one; `as-it-is`: a season of a name of
/// its own; `part`: what was looked at, as `all`, `picks` or `some`; `kept-reading`: `no` where the
/// shop's profile is not to be used.
inline constexpr auto kUploadWords =
    std::to_array<std::string_view>({"shop", "name", "country", "currency", "sizes", "season",
                                     "as-it-is", "on", "part", "categories", "kept-reading"});

/// Those fields, as the form says them.
UploadWords upload_words(const DeskAsk& ask);

struct UploadRequest {
  CaptureRequest capture;
  std::vector<std::string> problems;  ///< sentences that say what to do; empty: nothing is wrong
};
/// `book`: nothing where there is none yet.
UploadRequest request_of(const std::optional<Book>& book, const HeldUpload& upload);

/// The shop of the request: the book's, or as described.
Shop shop_of(const std::optional<Book>& book, const CaptureRequest& request);

/// `Mill & Daughters`: `mill-daughters`.
std::string slug_of(std::string_view name);

}  // namespace rangebook
