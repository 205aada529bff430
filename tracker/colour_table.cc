// Both tables are read once.
#include "tracker/colour_table.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <unordered_map>

#include "schema/embedded.h"
#include "schema/error.h"
#include "schema/names.h"
#include "tracker/colour_parser.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

constexpr NameTable<ColourEffect, 8> kEffectNames{{
    {ColourEffect::lighten, "lighten"},
    {ColourEffect::darken, "darken"},
    {ColourEffect::mute, "mute"},
    {ColourEffect::wash, "wash"},
    {ColourEffect::brighten, "brighten"},
    {ColourEffect::keep, "keep"},
    {ColourEffect::join, "join"},
    {ColourEffect::print, "print"},
}};

/// English names of the families; a word of another language is plain when it has the value of one.
constexpr std::array<std::string_view, 13> kPlainNames{"white", "grey", "black",  "beige",  "brown",
                                                       "red",   "pink", "orange", "yellow", "green",
                                                       "teal",  "blue", "purple"};

std::string joined_key(std::string_view name) {
  std::string key = colour_key(name);
  std::erase_if(key, [](char c) { return c == ' '; });
  return key;
}

using Names = std::unordered_map<std::string, NamedColour>;
using Words = std::unordered_map<std::string, ColourWord>;

bool is_plain(const Names& names, Srgb colour, bool foreign, const std::string& key) {
  return std::any_of(kPlainNames.begin(), kPlainNames.end(), [&](std::string_view plain) {
    if (!foreign) return key == plain;
    const auto found = names.find(std::string(plain));
    return found != names.end() && found->second.colour == colour;
  });
}

/// Earlier rows win.
const Names& names() {
  static const Names table = [] {
    Names read;
    for (const auto& row : table_rows("tables/colours.tsv")) {
      const auto colour = parse_hex_colour(row.at(1));
      if (!colour) throw Error("tables/colours.tsv has a bad value: " + std::string(row[1]));
      const auto kind = row.at(2);
      const std::string key = joined_key(row[0]);
      const bool plain = is_plain(read, *colour, kind.starts_with("word-"), key);
      const bool leads = kind == "word-fr" || kind == "word-es" || kind == "word-it";
      read.emplace(key, NamedColour{*colour, plain, leads});
    }
    return read;
  }();
  return table;
}

int percent_of(std::string_view text) {
  int percent = 0;
  const auto end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, percent);
  if (read.ec != std::errc() || read.ptr != end || percent < 0 || percent > 100) {
    throw Error("tables/colour_words.tsv has a bad percentage: " + std::string(text));
  }
  return percent;
}

void add_words(Words& words, std::string_view list, ColourWord meaning) {
  while (!list.empty()) {
    const auto end = std::min(list.find('|'), list.size());
    words.emplace(joined_key(list.substr(0, end)), meaning);
    list.remove_prefix(std::min(end + 1, list.size()));
  }
}

const Words& colour_words() {
  static const Words table = [] {
    Words read;
    for (const auto& row : table_rows("tables/colour_words.tsv")) {
      const auto effect = value_of(kEffectNames, row.at(0));
      if (!effect) throw Error("tables/colour_words.tsv has a bad effect: " + std::string(row[0]));
      add_words(read, row.at(2), {*effect, percent_of(row.at(1))});
    }
    return read;
  }();
  return table;
}

bool can_be_part(ColourWord word) {
  return word.effect != ColourEffect::join && word.effect != ColourEffect::print;
}

/// `from` moved towards `to` by percent, rounded to the nearest; back away from it below zero.
std::uint8_t moved(int from, int to, int percent) {
  const int hundredfold = from * 100 + (to - from) * percent;
  return static_cast<std::uint8_t>(std::clamp((hundredfold + 50) / 100, 0, 255));
}

Srgb moved_to(Srgb colour, int grey, int percent) {
  return {moved(colour.red, grey, percent), moved(colour.green, grey, percent),
          moved(colour.blue, grey, percent)};
}

/// The grey of the same lightness to the eye (weights of ITU-R BT.709).
int own_grey(Srgb colour) {
  return (2126 * colour.red + 7152 * colour.green + 722 * colour.blue + 5000) / 10000;
}

constexpr int kWashedGrey = 0xd8;
constexpr std::size_t kShortestPart = 3;

}  // namespace

std::optional<NamedColour> find_colour(const std::string& joined) {
  const auto found = names().find(joined);
  if (found == names().end()) return std::nullopt;
  return found->second;
}

std::optional<ColourWord> find_colour_word(const std::string& joined) {
  const auto found = colour_words().find(joined);
  if (found == colour_words().end()) return std::nullopt;
  return found->second;
}

std::optional<ColourCompound> find_colour_compound(const std::string& joined) {
  for (std::size_t cut = kShortestPart; cut + kShortestPart <= joined.size(); ++cut) {
    const std::string front = joined.substr(0, cut);
    const std::string back = joined.substr(cut);
    const auto word_first = find_colour_word(front);
    const auto colour_last = find_colour(back);
    if (word_first && colour_last && can_be_part(*word_first)) return {{*colour_last, *word_first}};
    const auto colour_first = find_colour(front);
    const auto word_last = find_colour_word(back);
    if (colour_first && word_last && can_be_part(*word_last)) return {{*colour_first, *word_last}};
  }
  return std::nullopt;
}

Srgb with_effect(Srgb colour, ColourWord word) {
  switch (word.effect) {
    case ColourEffect::lighten:
      return moved_to(colour, 255, word.percent);
    case ColourEffect::darken:
      return moved_to(colour, 0, word.percent);
    case ColourEffect::mute:
      return moved_to(colour, own_grey(colour), word.percent);
    case ColourEffect::wash:
      return moved_to(colour, kWashedGrey, word.percent);
    case ColourEffect::brighten:
      return moved_to(colour, own_grey(colour), -word.percent);
    case ColourEffect::keep:
    case ColourEffect::join:
    case ColourEffect::print:
      return colour;
  }
  return colour;
}

std::optional<Srgb> parse_hex_colour(std::string_view text) {
  if ((text.size() != 7 && text.size() != 4) || text.front() != '#') return std::nullopt;
  const auto digits = text.substr(1);
  std::array<std::uint8_t, 3> channels{};
  const std::size_t width = digits.size() / 3;
  for (std::size_t i = 0; i < channels.size(); ++i) {
    int value = 0;
    const char* begin = digits.data() + i * width;
    const auto read = std::from_chars(begin, begin + width, value, 16);
    if (read.ec != std::errc() || read.ptr != begin + width || value < 0) return std::nullopt;
    channels[i] = static_cast<std::uint8_t>(width == 1 ? value * 17 : value);
  }
  return Srgb{channels[0], channels[1], channels[2]};
}

}  // namespace rangebook
