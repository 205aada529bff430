// What a report says around its sections, whatever it is about.
#pragma once

#include <array>
#include <string_view>

namespace rangebook {

inline constexpr std::string_view kContentsWord = "Contents";
inline constexpr std::string_view kInShortWord = "In short";
inline constexpr std::string_view kSourcesWord = "Sources";
inline constexpr std::string_view kInventedWord = "This data is invented";
inline constexpr std::string_view kFiguresWord = "The figures";
inline constexpr std::string_view kCaptionAndRows = "{}: {}";
inline constexpr std::string_view kCaptionAndMore = "{}: {} more";
inline constexpr std::string_view kCaptionAndPart = "{} ({} of {})";
inline constexpr std::string_view kCaptionAndSpan = "{}, rows {} to {}";
inline constexpr std::string_view kSourceLine = "line {}";
inline constexpr std::string_view kSourceWhole = "the whole";
inline constexpr std::string_view kSourceNumber = "Source {}";
inline constexpr std::string_view kPlaceOfSource = "Back to place {} of source {}";
inline constexpr std::string_view kMorePlaces = "and {} more places";

/// All of the above, for a table of translations.
inline constexpr std::array kPageWords{
    kContentsWord,   kInShortWord,    kSourcesWord,    kInventedWord,   kFiguresWord,
    kCaptionAndRows, kCaptionAndMore, kCaptionAndPart, kCaptionAndSpan, kSourceLine,
    kSourceWhole,    kSourceNumber,   kPlaceOfSource,  kMorePlaces};

}  // namespace rangebook
