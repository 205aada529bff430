// What was found for each capture, kept in the book between commands.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "schema/identity.h"
#include "tracker/identity/roll.h"
#include "tracker/store/book.h"

namespace rangebook {

/// What was found for the capture at a place of the roll, if it was kept under this fingerprint.
std::optional<CaptureFinds> read_found(const Book& book, const Roll& roll, std::uint32_t place,
                                       std::string_view fingerprint);

/// Keeps it, in place of what was kept before. A book that cannot be written to now, because
/// somebody else is at it, is left as it is: the next command works it out again.
void keep_found(const Book& book, const Roll& roll, std::uint32_t place,
                std::string_view fingerprint, const CaptureFinds& finds);

}  // namespace rangebook
