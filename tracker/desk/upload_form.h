// Fields about a capture, and the list of what waits: on more than one page.
#pragma once

#include <optional>
#include <string>

#include "tracker/desk/desk_sheet.h"
#include "tracker/desk/held_uploads.h"

namespace rangebook {

/// Fields of upload_request.h, with what was said.
void upload_fields(HtmlWriter& html, const std::optional<Book>& book, const UploadWords& words);

/// `/held?upload=..`
std::string held_address(const HeldUpload& upload);
/// `aw26.csv and 2 more, AW26`
std::string held_words(const HeldUpload& upload);
/// What waits to be kept, each with a link; nothing where nothing waits.
void held_list(HtmlWriter& html, const Desk& desk);

}  // namespace rangebook
