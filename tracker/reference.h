// Short references that a person can read aloud and type: five signs of a hash.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// Shown at least; longer only where two references would be alike.
inline constexpr std::size_t kReferenceSigns = 5;
/// Enough to type, if no other begins so.
inline constexpr std::size_t kLeastReferenceSigns = 4;

/// Twelve signs of Crockford's base 32 (no i, l, o, u) from a 64-bit hash (XXH3) of the parts.
/// The same parts in the same order give the same reference in every book.
std::string long_reference(const std::vector<std::string_view>& parts);

/// What of each long reference is shown: as many signs as tell all of them apart.
std::vector<std::string> shown_references(const std::vector<std::string>& long_references);

/// A typed reference in the form of the long ones: small letters, `o` read as 0, `i` and `l` as 1.
/// Empty when it cannot be one.
std::string typed_reference(std::string_view word);

}  // namespace rangebook
