// Scopes, refusals and the notes about them.
#include "tracker/coverage.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "tracker/category_parser.h"
#include "tracker/differ.h"
#include "tracker/link_keys.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

constexpr std::array<std::string_view, kSilenceCount> kReasons{
    "one capture does not state every colour, so no colour is called added or dropped",
    "one capture does not state every size, so nothing is said of the size range",
    "size labels of no known system differ, so nothing is said of the size range",
    "sizes are given in different systems, and systems are never converted into each other",
    "only one capture states a price, so no price is compared",
    "one capture has one price for the line and the other several, so no price is compared",
    "one capture states no full prices at all, so an equal price is no sign of a markdown or its "
    "end",
    "the captures price in different currencies, so no price is compared",
    "only one capture states the composition",
    "only one capture names parts such as a lining, and what both name is the same",
    "one capture does not state the stock of every variant",
    "rows of the earlier capture were refused, so nothing is called added that they may have had",
    "rows of the later capture were refused, so nothing is called gone that they may have had",
};

bool within_any(std::string_view slug, const std::vector<std::string>& ancestors) {
  return std::any_of(ancestors.begin(), ancestors.end(), [slug](const std::string& ancestor) {
    return category_within(slug, ancestor);
  });
}

std::string name_key(std::string_view name) { return fold_text(space_folded(name)); }

std::string lines_text(std::uint32_t count) {
  return count == 1 ? "1 line" : fmt::format("{} lines", count);
}

std::string scope_text(const Scope& scope) {
  if (scope.kind == Scope::Kind::picks) return "picks only";
  return fmt::format("{} only", fmt::join(scope.categories, ", "));
}

void note_scope(std::vector<std::string>& notes, std::string_view which, const CaptureInfo& capture,
                std::uint32_t outside, std::string_view verdict) {
  if (capture.scope.kind == Scope::Kind::all) return;
  notes.push_back(fmt::format("The {} capture ({}, {}) looked at {}: {} it did not look for {}.",
                              which, capture.season, to_string(capture.on),
                              scope_text(capture.scope), lines_text(outside), verdict));
}

/// Rows that say neither code nor name may be any line's.
std::size_t nameless(const std::vector<RefusedLine>& refused) {
  return static_cast<std::size_t>(
      std::count_if(refused.begin(), refused.end(), [](const RefusedLine& row) {
        return trim_text(row.line_code).empty() && trim_text(row.name).empty();
      }));
}

/// Which lines such rows were cannot be told, so what was not found is said with this note.
void note_nameless(std::vector<std::string>& notes, std::string_view which, std::size_t rows,
                   std::uint32_t unfound, std::string_view verdict) {
  if (rows == 0 || unfound == 0) return;
  notes.push_back(
      fmt::format("{} of the {} capture {} no line: up to {} called {} may be {}.",
                  rows == 1 ? "1 refused row" : fmt::format("{} refused rows", rows), which,
                  rows == 1 ? "names" : "name",
                  lines_text(static_cast<std::uint32_t>(std::min<std::size_t>(rows, unfound))),
                  verdict, rows == 1 ? "in it" : "in them"));
}

void note_refused(std::vector<std::string>& notes, std::string_view which, std::size_t rows) {
  if (rows == 0) return;
  notes.push_back(fmt::format("{} of the {} capture {} in no figure.",
                              rows == 1 ? "1 row" : fmt::format("{} rows", rows), which,
                              rows == 1 ? "was refused and stands" : "were refused and stand"));
}

}  // namespace

bool scope_covers(const Scope& scope, std::string_view category) {
  switch (scope.kind) {
    case Scope::Kind::all:
      return true;
    case Scope::Kind::categories:
      return within_any(category, scope.categories);
    case Scope::Kind::picks:
      return false;
  }
  return false;
}

Scope common_scope(const Scope& a, const Scope& b) {
  if (a.kind == Scope::Kind::picks || b.kind == Scope::Kind::picks) return {Scope::Kind::picks, {}};
  if (a.kind == Scope::Kind::all) return b;
  if (b.kind == Scope::Kind::all) return a;
  Scope common{Scope::Kind::categories, {}};
  for (const std::string& slug : a.categories) {
    if (within_any(slug, b.categories)) common.categories.push_back(slug);
  }
  for (const std::string& slug : b.categories) {
    if (within_any(slug, a.categories)) common.categories.push_back(slug);
  }
  std::sort(common.categories.begin(), common.categories.end());
  const auto end = std::unique(common.categories.begin(), common.categories.end());
  common.categories.erase(end, common.categories.end());
  return common;
}

RefusedIndex::RefusedIndex(const std::vector<RefusedLine>& refused) {
  for (const RefusedLine& row : refused) {
    const std::string_view code = trim_text(row.line_code);
    const std::string name = name_key(row.name);
    if (!code.empty()) codes_.emplace(code);
    if (name.empty()) continue;
    names_.insert(name);
    if (code.empty()) names_without_code_.insert(name);
  }
}

bool RefusedIndex::may_be(const LineCard& card) const {
  const std::string code(trim_text(card.line_code));
  if (!code.empty() && codes_.contains(code)) return true;
  const auto& names = code.empty() ? names_ : names_without_code_;
  return !names.empty() && names.contains(name_key(card.name));
}

// The lines that sort first are named, not those met first: the order of input must not show.
void SilenceLog::add(Silence silence, const LineCard& card) {
  Entry& entry = entries_[static_cast<std::size_t>(silence)];
  ++entry.lines;
  const std::string& label = card.line_code.empty() ? card.name : card.line_code;
  const auto at = std::lower_bound(entry.first.begin(), entry.first.end(), label);
  if (at == entry.first.end() && entry.first.size() == kNamedLines) return;
  entry.first.insert(at, label);
  if (entry.first.size() > kNamedLines) entry.first.pop_back();
}

std::vector<std::string> SilenceLog::sentences() const {
  std::vector<std::string> sentences;
  for (std::size_t i = 0; i < kSilenceCount; ++i) {
    const Entry& entry = entries_[i];
    if (entry.lines == 0) continue;
    sentences.push_back(fmt::format("{} ({}{}): {}.", lines_text(entry.lines),
                                    fmt::join(entry.first, ", "),
                                    entry.lines > entry.first.size() ? ", .." : "", kReasons[i]));
  }
  return sentences;
}

Coverage coverage_of(const Snapshot& from, const Snapshot& to, const Reconciliation& reconciliation,
                     const SilenceLog& silences) {
  Coverage coverage;
  coverage.common = common_scope(from.capture.scope, to.capture.scope);
  coverage.lines_compared = reconciliation.carried;
  coverage.rows_refused_then = static_cast<std::uint32_t>(from.refused.size());
  coverage.rows_refused_now = static_cast<std::uint32_t>(to.refused.size());
  note_scope(coverage.notes, "earlier", from.capture, reconciliation.unseen_then,
             "are not called new");
  note_scope(coverage.notes, "later", to.capture, reconciliation.not_covered,
             "are not called dropped");
  if (coverage.common.kind == Scope::Kind::categories && coverage.common.categories.empty()) {
    coverage.notes.emplace_back("The captures looked at different categories.");
  }
  note_refused(coverage.notes, "earlier", from.refused.size());
  note_refused(coverage.notes, "later", to.refused.size());
  note_nameless(coverage.notes, "earlier", nameless(from.refused), reconciliation.added, "new");
  note_nameless(coverage.notes, "later", nameless(to.refused), reconciliation.dropped, "gone");
  for (std::string& sentence : silences.sentences()) coverage.notes.push_back(std::move(sentence));
  return coverage;
}

void note_waiting(std::vector<std::string>& notes, std::size_t pairs) {
  if (pairs == 0) return;
  notes.push_back(
      fmt::format("{} for a yes or no: the two lines of each are likely the same one, "
                  "and until then count as two.",
                  pairs == 1 ? "1 pair waits" : fmt::format("{} pairs wait", pairs)));
}

}  // namespace rangebook
