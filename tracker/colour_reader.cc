// A name is cut into words, words into pieces of the tables, and pieces at joints into groups of
// one colour each.
#include "tracker/colour_reader.h"

#include <algorithm>
#include <vector>

#include "tracker/colour_parser.h"
#include "tracker/colour_table.h"
#include "tracker/colour_traits.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

/// Words of a name; a sign that joins colours is a word of its own.
std::vector<std::string> words_of(std::string_view key) {
  std::vector<std::string> words;
  bool open = false;
  for (const char c : key) {
    const bool letter =
        is_ascii_letter(c) || is_ascii_digit(c) || static_cast<unsigned char>(c) >= 0x80;
    const bool joint = std::string_view("/,&+|;").find(c) != std::string_view::npos;
    if (joint) words.emplace_back(1, '/');
    if (letter && !open) words.emplace_back();
    if (letter) words.back() += c;
    open = letter;
  }
  return words;
}

/// One or several words that mean something together.
struct Piece {
  std::optional<NamedColour> colour;
  std::optional<ColourWord> word;
  bool known() const { return colour || word; }
  bool joins() const { return !colour && word && word->effect == ColourEffect::join; }
  bool prints() const { return !colour && word && word->effect == ColourEffect::print; }
};

bool has_digit(const std::string& word) {
  return std::any_of(word.begin(), word.end(), is_ascii_digit);
}

/// Numbers and codes of the shop say nothing about the colour.
Piece code_or_unknown(const std::string& word) {
  if (has_digit(word)) return {std::nullopt, ColourWord{}};
  return {};
}

/// The longest piece at `at`, which moves behind it. A compound gives its colour first, then its
/// word, so that both stand in one group.
void take_piece(const std::vector<std::string>& words, std::size_t& at,
                std::vector<Piece>& pieces) {
  const auto longest = std::min(kLongestColourName, words.size() - at);
  for (auto count = longest; count > 0; --count) {
    std::string joined;
    for (auto i = at; i < at + count; ++i) joined += words[i];
    const Piece piece{find_colour(joined), find_colour_word(joined)};
    if (!piece.known()) continue;
    pieces.push_back(piece);
    at += count;
    return;
  }
  const auto& word = words[at++];
  if (word == "/") {
    pieces.push_back({std::nullopt, ColourWord{ColourEffect::join, 0}});
  } else if (const auto compound = find_colour_compound(word)) {
    pieces.push_back({compound->colour, std::nullopt});
    pieces.push_back({std::nullopt, compound->word});
  } else {
    pieces.push_back(code_or_unknown(word));
  }
}

std::vector<Piece> pieces_of(const std::vector<std::string>& words) {
  std::vector<Piece> pieces;
  for (std::size_t at = 0; at < words.size();) take_piece(words, at, pieces);
  return pieces;
}

/// What the words between two joints say.
struct GroupReading {
  std::vector<Srgb> colours;
  bool unknown = false;
  bool approximate = false;
  bool print = false;
};

using Group = std::vector<Piece>;

/// `heather`, `ice`: a colour only where no other is named.
void settle_double_meanings(Group& group) {
  const bool has_colour = std::any_of(
      group.begin(), group.end(), [](const Piece& piece) { return piece.colour && !piece.word; });
  bool named = has_colour;
  for (Piece& piece : group) {
    if (!piece.colour || !piece.word) continue;
    if (named) {
      piece.colour.reset();
    } else {
      piece.word.reset();
      named = true;
    }
  }
}

HueFamily family_of(const NamedColour& name) { return traits_of(name.colour).family; }

/// Two names side by side.
void read_pair(const NamedColour& first, const NamedColour& second, GroupReading& reading) {
  const bool head_first = first.leads;
  const NamedColour& head = head_first ? first : second;
  const NamedColour& other = head_first ? second : first;
  if (family_of(first) == family_of(second)) {
    reading.colours = {head.plain ? other.colour : head.colour};
  } else if (head.plain && !other.plain) {
    reading.colours = {head.colour};
    reading.approximate = true;
  } else {
    reading.colours = {first.colour, second.colour};
  }
}

void read_names(const std::vector<NamedColour>& named, GroupReading& reading) {
  if (named.size() == 2) return read_pair(named.front(), named.back(), reading);
  for (const auto& each : named) reading.colours.push_back(each.colour);
}

/// An unknown word on the side where a description stands leaves the colour approximate.
void judge_unknown_words(const Group& group, const NamedColour& name, GroupReading& reading) {
  const auto named =
      std::find_if(group.begin(), group.end(), [](const Piece& p) { return p.colour; });
  const auto last =
      std::find_if(group.rbegin(), group.rend(), [](const Piece& p) { return p.colour; });
  const auto unknown = [](const Piece& piece) { return !piece.known(); };
  const bool before = std::any_of(group.begin(), named, unknown);
  const bool behind = std::any_of(last.base(), group.end(), unknown);
  if (name.leads ? before : behind) {
    reading.unknown = true;
  } else if (before || behind) {
    reading.approximate = true;
  }
}

GroupReading read_group(Group group) {
  settle_double_meanings(group);
  GroupReading reading;
  std::vector<NamedColour> named;
  for (const Piece& piece : group) {
    reading.print = reading.print || piece.prints();
    if (piece.colour) named.push_back(*piece.colour);
  }
  if (named.empty()) {
    reading.unknown =
        std::any_of(group.begin(), group.end(), [](const Piece& p) { return !p.known(); });
    return reading;
  }
  judge_unknown_words(group, named.front(), reading);
  if (reading.unknown) return reading;
  read_names(named, reading);
  for (const Piece& piece : group) {
    if (!piece.word) continue;
    for (Srgb& colour : reading.colours) colour = with_effect(colour, *piece.word);
  }
  return reading;
}

std::vector<Group> groups_of(const std::vector<Piece>& pieces) {
  std::vector<Group> groups(1);
  for (const Piece& piece : pieces) {
    if (piece.joins()) {
      groups.emplace_back();
    } else {
      groups.back().push_back(piece);
    }
  }
  return groups;
}

void add_colours(const GroupReading& group, ColourReading& reading) {
  for (const Srgb colour : group.colours) {
    const auto& known = reading.colours;
    if (std::find(known.begin(), known.end(), colour) == known.end())
      reading.colours.push_back(colour);
  }
}

ColourReading read_words(const std::vector<std::string>& words) {
  ColourReading reading;
  bool print = false;
  bool unknown = false;
  for (auto& group : groups_of(pieces_of(words))) {
    const GroupReading part = read_group(std::move(group));
    print = print || part.print;
    unknown = unknown || part.unknown;
    reading.approximate = reading.approximate || part.approximate;
    add_colours(part, reading);
  }
  using Kind = ColourReading::Kind;
  if (print) {
    reading.kind = Kind::print;
  } else if (!reading.colours.empty()) {
    reading.kind = unknown || reading.colours.size() > 1 ? Kind::several : Kind::single;
  }
  return reading;
}

/// A value written into the name: `Navy (#1f2a44)`.
std::optional<Srgb> written_value(std::string_view name) {
  const auto sign = name.find('#');
  if (sign == std::string_view::npos) return std::nullopt;
  const auto rest = name.substr(sign);
  const auto end = std::min(rest.find_first_not_of("#0123456789abcdefABCDEF"), rest.size());
  return parse_hex_colour(rest.substr(0, end));
}

/// The name without what stands in brackets.
std::string without_brackets(std::string_view key) {
  std::string rest;
  int depth = 0;
  for (const char c : key) {
    if (c == '(' || c == '[') ++depth;
    if (depth == 0) rest += c;
    if ((c == ')' || c == ']') && depth > 0) --depth;
  }
  return rest;
}

/// What stands in brackets explains the name, but may say that it is a print.
bool prints(const std::vector<std::string>& words) {
  const auto pieces = pieces_of(words);
  return std::any_of(pieces.begin(), pieces.end(),
                     [](const Piece& piece) { return piece.prints(); });
}

}  // namespace

ColourReading read_colour(std::string_view name, const ColourOverrides& overrides) {
  if (name.size() > kMaxColourBytes) return {};
  const std::string key = colour_key(name);
  using Kind = ColourReading::Kind;
  if (const auto own = overrides.find(key); own != overrides.end())
    return {Kind::single, {own->second}, false};
  if (const auto value = written_value(key)) return {Kind::single, {*value}, false};
  const auto outside = words_of(without_brackets(key));
  ColourReading reading = read_words(outside.empty() ? words_of(key) : outside);
  if (reading.kind != Kind::print && prints(words_of(key))) reading.kind = Kind::print;
  return reading;
}

std::optional<Srgb> colour_value(std::string_view name, const ColourOverrides& overrides) {
  const ColourReading reading = read_colour(name, overrides);
  if (reading.kind != ColourReading::Kind::single || reading.approximate) return std::nullopt;
  return reading.colours.front();
}

}  // namespace rangebook
