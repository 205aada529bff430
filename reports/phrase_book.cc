// Patterns, and pages made of them.
#include "reports/phrase_book.h"

#include <fmt/format.h>

#include <charconv>
#include <optional>
#include <unordered_set>

#include "reports/page_texts.h"
#include "reports/page_words.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

constexpr std::string_view kSlot = "{}";
constexpr std::string_view kHeader = "english";

bool is_own_words(const Piece& piece) { return piece.kind == Piece::Kind::words; }

/// A phrase as texts and slots in turn; a slot is a run of pieces that are not our own words.
struct Part {
  std::string text;
  std::vector<Piece> slot;
  bool is_slot() const { return !slot.empty(); }
};

std::vector<Part> parts_of(const Phrase& phrase) {
  std::vector<Part> parts;
  for (const Piece& piece : phrase.pieces) {
    const bool goes_on = !parts.empty() && parts.back().is_slot() != is_own_words(piece);
    Part& part = goes_on ? parts.back() : parts.emplace_back();
    if (is_own_words(piece)) {
      part.text += piece.text;
    } else {
      part.slot.push_back(piece);
    }
  }
  return parts;
}

/// One step of a translation: text, or the number of a slot counted from 0.
struct Step {
  std::string text;
  std::optional<std::size_t> slot;
};

/// Nothing for `{x}`.
std::optional<std::vector<Step>> steps_of(std::string_view pattern) {
  std::vector<Step> steps;
  std::size_t next = 0;
  while (!pattern.empty()) {
    const std::size_t open = std::min(pattern.find('{'), pattern.size());
    if (open > 0) steps.push_back({std::string(pattern.substr(0, open)), {}});
    pattern.remove_prefix(open);
    if (pattern.empty()) break;
    const std::size_t close = pattern.find('}');
    if (close == std::string_view::npos) return {};
    const std::string_view inside = pattern.substr(1, close - 1);
    std::size_t number = next + 1;
    if (!inside.empty()) {
      const auto read = std::from_chars(inside.data(), inside.data() + inside.size(), number);
      if (read.ec != std::errc() || read.ptr != inside.data() + inside.size()) return {};
    }
    if (number == 0) return {};
    next = number;
    steps.push_back({{}, number - 1});
    pattern.remove_prefix(close + 1);
  }
  return steps;
}

/// Of a pattern that was looked at before.
std::vector<Step> known_steps(std::string_view pattern) {
  return steps_of(pattern).value_or(std::vector<Step>{});
}

/// What is wrong with a translation; empty for nothing.
std::string fault_of(std::string_view english, std::string_view other) {
  const auto asked = steps_of(english);
  const auto given = steps_of(other);
  if (!asked || !given) return "a brace that holds neither nothing nor a number; write {} or {2}";
  std::unordered_set<std::size_t> open;
  std::unordered_set<std::size_t> used;
  for (const Step& step : *asked) {
    if (step.slot) open.insert(*step.slot);
  }
  for (const Step& step : *given) {
    if (step.slot) used.insert(*step.slot);
  }
  if (open != used) {
    return fmt::format("{} in English, {} in the translation: each figure must stand in both",
                       open.size(), used.size());
  }
  return {};
}

}  // namespace

std::string pattern_of(const Phrase& phrase) {
  std::string pattern;
  for (const Part& part : parts_of(phrase)) pattern += part.is_slot() ? kSlot : part.text;
  return pattern;
}

PhraseBook PhraseBook::read(std::string_view table, std::vector<std::string>& faults) {
  PhraseBook book;
  constexpr std::string_view kMark = "\xEF\xBB\xBF";
  if (table.starts_with(kMark)) table.remove_prefix(kMark.size());
  for (std::size_t number = 1; !table.empty(); ++number) {
    const std::size_t end = std::min(table.find('\n'), table.size());
    std::string_view line = table.substr(0, end);
    table.remove_prefix(std::min(end + 1, table.size()));
    if (line.ends_with('\r')) line.remove_suffix(1);
    if (!line.empty() && !line.starts_with('#')) book.add(line, number, faults);
  }
  if (book.language_.empty() && faults.empty()) {
    faults.emplace_back("line 1: no first line; write english, a tab, and a language such as de");
  }
  return book;
}

void PhraseBook::add(std::string_view line, std::size_t number, std::vector<std::string>& faults) {
  const auto fault = [&](std::string_view what) {
    faults.push_back(fmt::format("line {}: {}", number, what));
  };
  const std::size_t tab = line.find('\t');
  if (tab == std::string_view::npos) {
    return fault("no tab; write the English text, a tab, and its translation");
  }
  const std::string english(trimmed(line.substr(0, tab)));
  const std::string other(trimmed(line.substr(tab + 1)));
  if (language_.empty()) {
    if (english != kHeader || !NumberStyle::of(other) || other.empty()) {
      fault("not a first line; write english, a tab, and a language such as de");
      language_ = "und";  // BCP 47: undetermined
      return;
    }
    language_ = other;
    return;
  }
  if (other.empty()) return;
  const std::string wrong = fault_of(english, other);
  if (!wrong.empty()) return fault(wrong);
  if (!texts_.try_emplace(english, other).second) fault("this English text stands above already");
}

const std::string* PhraseBook::found(const std::string& pattern) const {
  const auto entry = texts_.find(pattern);
  return entry == texts_.end() ? nullptr : &entry->second;
}

std::string PhraseBook::text(std::string_view english) const {
  if (texts_.empty()) return std::string(english);
  const std::string_view core = trimmed(english);
  const std::string* other = found(std::string(core));
  if (other == nullptr) return std::string(english);
  const auto before = static_cast<std::size_t>(core.data() - english.data());
  return std::string(english.substr(0, before)) + *other +
         std::string(english.substr(before + core.size()));
}

std::string PhraseBook::filled(std::string_view pattern,
                               const std::vector<std::string>& slots) const {
  const std::string* other = found(std::string(pattern));
  std::string out;
  for (const Step& step : known_steps(other == nullptr ? pattern : *other)) {
    out += step.slot ? slots.at(*step.slot) : step.text;
  }
  return out;
}

Phrase PhraseBook::phrase(const Phrase& english) const {
  if (texts_.empty()) return english;
  std::vector<Part> parts = parts_of(english);
  for (Part& part : parts) {
    for (Piece& piece : part.slot) {
      const bool is_ours = piece.kind == Piece::Kind::label ||
                           (piece.kind == Piece::Kind::figure && piece.value.index() == 0);
      if (is_ours) piece.text = text(piece.text);
    }
  }
  Phrase out;
  const auto put = [&out](const Part& part) {
    out.pieces.insert(out.pieces.end(), part.slot.begin(), part.slot.end());
  };
  const std::string pattern = pattern_of(english);
  const std::string* whole = found(std::string(trimmed(pattern)));
  if (whole == nullptr) {
    for (const Part& part : parts) part.is_slot() ? put(part) : void(out.words(text(part.text)));
    return out;
  }
  std::erase_if(parts, [](const Part& part) { return !part.is_slot(); });
  for (const Step& step : known_steps(text(pattern))) {
    step.slot ? put(parts.at(*step.slot)) : void(out.words(step.text));
  }
  return out;
}

ReportPage translated(ReportPage page, const PhraseBook& book) {
  page.words = book;
  each_text(
      page, [&book](std::string& text) { text = book.text(text); },
      [&book](Phrase& phrase) { phrase = book.phrase(phrase); });
  return page;
}

std::string phrase_table(ReportPage page) {
  std::string out = "english\t\n";
  std::unordered_set<std::string> seen;
  const auto put = [&](std::string_view text) {
    const std::string line = clean_line(trimmed(text));
    const bool says_something = line.find_first_not_of("{}0123456789 .,:;-()") != std::string::npos;
    if (says_something && seen.insert(line).second) out += line + "\t\n";
  };
  each_text(page, put, [&put](const Phrase& phrase) { put(pattern_of(phrase)); });
  for (const std::string_view each : kPageWords) put(each);
  for (const Headline& each : page.headlines) put(theme_words(each.theme));
  return out;
}

}  // namespace rangebook
