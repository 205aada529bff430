// One label: first the words that stand beside the size (system, fit), then the size itself.
#include "tracker/size_label.h"

#include <algorithm>
#include <array>
#include <span>
#include <string>
#include <vector>

#include "tracker/size_words.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

using Tokens = std::span<const SizeToken>;
using Type = SizeToken::Type;

/// What is left of a label once its words are understood.
struct Core {
  std::vector<SizeToken> tokens;
  std::optional<SizeSystem> mark;
  std::optional<FitRange> fit;
  bool inches = false;
  bool contradictory = false;  ///< two systems or two fits
};

template <typename Value>
void settle(std::optional<Value>& slot, Value value, bool& contradictory) {
  if (slot && *slot != value) contradictory = true;
  slot = value;
}

bool is_inch_word(const SizeToken& token) {
  return token.is_sign('"') || token.is_word("in") || token.is_word("inch") ||
         token.is_word("inches");
}

/// `waist` and `leg` written out, as the one letter the patterns know.
SizeToken abbreviated(SizeToken token) {
  if (token.is_word("waist")) token.text = "w";
  if (token.is_word("leg") || token.is_word("length") || token.is_word("inseam")) token.text = "l";
  return token;
}

void take_token(Core& core, const SizeToken& token, bool alone) {
  const bool word = token.type == Type::word && !alone;
  const bool first = core.tokens.empty() || core.tokens.back().is_sign('/');  // "T36/T38"
  if (word && first && is_size_word(token.text)) return;
  core.inches = core.inches || is_inch_word(token) || token.is_word("waist");
  if (is_inch_word(token)) return;
  if (const auto system = word ? system_word(token.text) : std::nullopt) {
    settle(core.mark, *system, core.contradictory);
  } else if (const auto fit = word ? fit_word(token.text) : std::nullopt) {
    settle(core.fit, *fit, core.contradictory);
  } else {
    core.tokens.push_back(abbreviated(token));
  }
}

bool is_loose_sign(const SizeToken& token) {
  return token.type == Type::sign && std::string_view("-.:,/#").find(token.text) != token.text.npos;
}

void trim_signs(std::vector<SizeToken>& tokens) {
  while (!tokens.empty() && is_loose_sign(tokens.back())) tokens.pop_back();
  while (!tokens.empty() && is_loose_sign(tokens.front())) tokens.erase(tokens.begin());
}

std::optional<Core> core_of(std::string_view folded) {
  const auto tokens = size_tokens(folded);
  if (!tokens) return std::nullopt;
  Core core;
  for (const auto& token : *tokens) {
    if (core.tokens.empty() && is_loose_sign(token)) continue;
    take_token(core, token, tokens->size() == 1);
  }
  trim_signs(core.tokens);
  if (core.contradictory || core.tokens.empty()) return std::nullopt;
  return core;
}

/// One sign a token: `N` for a number, the letter or sign itself (folded, so never `N`), `?` for
/// longer words.
std::string pattern_of(Tokens tokens) {
  std::string pattern;
  for (const auto& token : tokens) {
    if (token.type == Type::number) {
      pattern += 'N';
    } else {
      pattern += token.text.size() == 1 ? token.text.front() : '?';
    }
  }
  return pattern;
}

template <std::size_t N>
bool contains(const std::array<std::string_view, N>& patterns, std::string_view pattern) {
  return std::find(patterns.begin(), patterns.end(), pattern) != patterns.end();
}

constexpr std::array<std::string_view, 11> kWaistAndLength{
    "wNlN", "wN/lN", "wN-lN", "wNxlN", "wN/N", "wNxN", "NwNl", "Nw/Nl", "Nw-Nl", "NwxNl", "NxN"};
constexpr std::array<std::string_view, 2> kWaistAndLengthInches{"N/N", "N-N"};
constexpr std::array<std::string_view, 2> kWaistInches{"N", "Nw"};

bool waist_plausible(int tenths) { return tenths >= 200 && tenths <= 600; }
bool length_plausible(int tenths) { return tenths >= 240 && tenths <= 400; }

std::optional<SizeReading> as_waist(const Core& core, std::string_view pattern) {
  const bool both = contains(kWaistAndLength, pattern) ||
                    (core.inches && contains(kWaistAndLengthInches, pattern));
  const bool waist = pattern == "wN" || (core.inches && contains(kWaistInches, pattern));
  if (!both && !waist) return std::nullopt;
  std::vector<int> numbers;
  for (const auto& token : core.tokens) {
    if (token.type == Type::number) numbers.push_back(token.tenths);
  }
  SizeReading reading;
  if (waist_plausible(numbers.front()) && (!both || length_plausible(numbers.back()))) {
    reading = {SizeShape::waist, std::nullopt, FitRange::regular, numbers.front(), numbers.front()};
    if (both) reading.second = numbers.back();
  }
  return reading;
}

SizeReading alpha_reading(const AlphaSize& low, const AlphaSize& high) {
  return {SizeShape::alpha, std::nullopt, low.fit, low.rank, high.rank};
}

/// A dual size is two neighbours or more, smaller first: `S/M`, `XS-S`.
std::optional<SizeReading> as_alpha_pair(Tokens tokens) {
  for (std::size_t i = 1; i + 1 < tokens.size(); ++i) {
    if (!tokens[i].is_sign('/') && !tokens[i].is_sign('-')) continue;
    const auto low = alpha_size(tokens.first(i));
    const auto high = alpha_size(tokens.subspan(i + 1));
    if (low && high && low->fit == high->fit && low->rank < high->rank) {
      return alpha_reading(*low, *high);
    }
  }
  return std::nullopt;
}

std::optional<SizeReading> as_alpha(Tokens tokens) {
  if (const auto size = alpha_size(tokens)) return alpha_reading(*size, *size);
  return as_alpha_pair(tokens);
}

/// The bra system a band belongs to: inches are even from 26, centimetres multiples of 5 from 60,
/// Australian bands are dress sizes.
std::optional<SizeSystem> band_system(int tenths) {
  if (tenths % 10 != 0) return std::nullopt;
  const int band = tenths / 10;
  if (band >= 60 && band <= 140 && band % 5 == 0) return SizeSystem::bra_eu;
  if (band >= 26 && band <= 58 && band % 2 == 0) return SizeSystem::bra;
  if (band >= 6 && band <= 24 && band % 2 == 0) return SizeSystem::bra_au;
  return std::nullopt;
}

std::optional<SizeReading> as_bra(Tokens tokens) {
  const bool dashed = tokens.size() == 3 && tokens[1].is_sign('-');
  if (tokens.size() != 2 && !dashed) return std::nullopt;
  if (tokens.front().type != Type::number || tokens.back().type != Type::word) return std::nullopt;
  const auto system = band_system(tokens.front().tenths);
  const auto cup = cup_rank(tokens.back().text);
  if (!system || !cup) return std::nullopt;
  const int band = tokens.front().tenths;
  return SizeReading{SizeShape::bra, *system, FitRange::regular, band, band, *cup};
}

/// Takes the fit letters off `12P`, `P12`, `12P-14P`, `12-R`.
std::optional<FitRange> take_fit_letter(std::vector<SizeToken>& tokens) {
  const auto pattern = pattern_of(tokens);
  const bool dual = pattern.size() == 5 && pattern[0] == 'N' && pattern[3] == 'N' &&
                    pattern[1] == pattern[4] && (pattern[2] == '-' || pattern[2] == '/');
  if (pattern == "pN") {
    tokens.erase(tokens.begin());
    return FitRange::petite;
  }
  if (tokens.size() < 2 || tokens.front().type != Type::number) return std::nullopt;
  const auto fit = fit_letter(tokens.back().text);
  if (!fit) return std::nullopt;
  tokens.pop_back();
  if (dual) tokens.erase(tokens.begin() + 1);
  trim_signs(tokens);
  return fit;
}

std::optional<SizeReading> as_number(Tokens tokens) {
  const auto pattern = pattern_of(tokens);
  if (pattern != "N" && pattern != "Nw" && pattern != "N-N" && pattern != "N/N") {
    return std::nullopt;
  }
  const bool pair = pattern.size() == 3;
  const int low = tokens.front().tenths;
  const int high = pair ? tokens.back().tenths : low;
  const auto shape = pattern == "N"      ? SizeShape::number
                     : pattern == "Nw"   ? SizeShape::w_number
                     : pattern[1] == '-' ? SizeShape::dash_pair
                                         : SizeShape::slash_pair;
  if (shape == SizeShape::dash_pair && high <= low) return std::nullopt;
  return SizeReading{shape, std::nullopt, FitRange::regular, low, high};
}

SizeReading with_words(SizeReading reading, const Core& core) {
  if (core.fit) reading.fit = *core.fit;
  if (core.mark && !reading.mark) reading.mark = core.mark;
  return reading;
}

SizeReading read_core(Core core) {
  if (const auto waist = as_waist(core, pattern_of(core.tokens))) return with_words(*waist, core);
  if (const auto alpha = as_alpha(core.tokens)) return with_words(*alpha, core);
  if (const auto bra = as_bra(core.tokens)) return with_words(*bra, core);
  if (!core.fit) core.fit = take_fit_letter(core.tokens);
  if (const auto number = as_number(core.tokens)) return with_words(*number, core);
  return {};
}

SizeReading read_plain(std::string_view folded) {
  if (is_one_size(folded)) return SizeReading{SizeShape::one_size, std::nullopt, FitRange::regular};
  auto core = core_of(folded);
  return core ? read_core(std::move(*core)) : SizeReading{};
}

/// `12 (UK)` says more about the size, `L (14-16)` says it again.
SizeReading read_with_brackets(std::string_view folded) {
  const auto open = folded.find('(');
  if (open == std::string_view::npos || open == 0) return read_plain(folded);
  const auto close = std::min(folded.find(')', open), folded.size());
  const auto inner = folded.substr(open + 1, close - open - 1);
  const auto outer = folded.substr(0, open);
  if (std::none_of(inner.begin(), inner.end(), is_ascii_digit)) {
    const auto joined = read_plain(std::string(outer) + " " + std::string(inner));
    if (joined.shape != SizeShape::unknown) return joined;
  }
  return read_plain(outer);
}

/// The names of one size in several systems, when each of them says its system.
std::vector<SizeReading> read_names(std::string_view folded) {
  std::vector<SizeReading> names;
  while (!folded.empty()) {
    const auto end = std::min(folded.find_first_of("/|(,"), folded.size());
    if (auto name = folded.substr(0, end); !name.empty()) {
      if (name.ends_with(')')) name.remove_suffix(1);
      names.push_back(read_plain(name));
      if (!names.back().mark || names.size() > kMaxSizeTokens) return {};
    }
    folded.remove_prefix(std::min(end + 1, folded.size()));
  }
  return names.size() > 1 ? names : std::vector<SizeReading>{};
}

/// The commonest label by far, without any look-up.
std::optional<SizeReading> read_bare_number(std::string_view label) {
  if (label.empty() || label.size() > 2 || label.front() == '0') return std::nullopt;
  int value = 0;
  for (const char c : label) {
    if (!is_ascii_digit(c)) return std::nullopt;
    value = value * 10 + (c - '0');
  }
  value *= 10;
  return SizeReading{SizeShape::number, std::nullopt, FitRange::regular, value, value};
}

}  // namespace

SizeReading read_size_label(std::string_view label, SizeSystem preferred) {
  label = trim_text(label);
  if (const auto number = read_bare_number(label)) return *number;
  if (label.empty() || label.size() > kMaxSizeLabelBytes) return {};
  const auto folded = fold_text(label);
  if (folded.find_first_of("/|(,") != std::string::npos) {
    const auto names = read_names(folded);
    const auto wanted = std::find_if(names.begin(), names.end(),
                                     [&](const auto& name) { return name.mark == preferred; });
    if (wanted != names.end()) return *wanted;
    if (!names.empty()) return names.front();
  }
  return read_with_brackets(folded);
}

}  // namespace rangebook
