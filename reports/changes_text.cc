// The list of changes as plain text and as Markdown, grouped by kind.
#include <fmt/format.h>

#include <functional>

#include "reports/change_lists.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

/// True when the line itself says all there is to say.
bool is_about_presence(ChangeKind kind) {
  return kind == ChangeKind::line_new || kind == ChangeKind::line_dropped ||
         kind == ChangeKind::line_not_covered;
}

std::string capture_sentence(const CaptureInfo& capture) {
  return fmt::format("{} ({}), looked at: {}", clean_line(capture.season), to_string(capture.on),
                     clean_line(to_string(capture.scope)));
}

std::string subject_code(const Change& change) { return change.line ? change.line->code : ""; }
std::string subject_name(const Change& change) {
  return change.line ? std::string(line_words(*change.line)) : category_words(change.category);
}

std::string place(const std::optional<Sighting>& seen) {
  if (!seen) return "-";
  if (seen->document.empty()) return "whole capture";
  return seen->line ? fmt::format("{}:{}", seen->document, *seen->line) : seen->document;
}

std::string places(const Change& change) {
  return fmt::format("{} -> {}", place(change.evidence.before), place(change.evidence.after));
}

/// Both sides; nothing where the line itself is the news.
Phrase sides(const Change& change) {
  if (is_about_presence(change.kind)) return {};
  Phrase before = side_phrase(change.kind, change.before);
  const Phrase after = side_phrase(change.kind, change.after);
  if (!before.empty() && !after.empty()) before.words(" -> ");
  return before.append(after);
}

std::string text_line(const Change& change) {
  const std::string code = clean_line(subject_code(change));
  const std::string both = plain_text(sides(change), false);
  std::string line = code.empty() ? "  " : fmt::format("  {}  ", code);
  line += clean_line(subject_name(change));
  if (!both.empty()) line += fmt::format("  {}", both);
  line += plain_text(related_phrase(change), false);
  return line + fmt::format("  [{}]\n", clean_line(places(change)));
}

std::string markdown_row(const Change& change) {
  return fmt::format("| {} | {} | {} | {} | {} |\n", markdown_escaped(subject_code(change)),
                     markdown_escaped(subject_name(change)) + markdown_text(related_phrase(change)),
                     markdown_text(side_phrase(change.kind, change.before)),
                     markdown_text(side_phrase(change.kind, change.after)),
                     markdown_escaped(places(change)));
}

/// Calls `heading` before the first change of each kind and `row` for every change.
void by_kind(const ChangeSet& set, const std::function<void(ChangeKind, std::size_t)>& heading,
             const std::function<void(const Change&)>& row) {
  for (std::size_t at = 0; at < set.changes.size(); ++at) {
    const ChangeKind kind = set.changes[at].kind;
    if (at == 0 || kind != set.changes[at - 1].kind) {
      std::size_t end = at;
      while (end < set.changes.size() && set.changes[end].kind == kind) ++end;
      heading(kind, end - at);
    }
    row(set.changes[at]);
  }
}

}  // namespace

std::string changes_text(const ChangeSet& set) {
  std::string out = fmt::format("{}\nthen: {}\nnow:  {}\n{}\n{}\n", clean_line(set.shop.name),
                                capture_sentence(set.from), capture_sentence(set.to),
                                plain_text(lines_now_phrase(set.reconciliation), false),
                                plain_text(lines_then_phrase(set.reconciliation), false));
  for (const auto& note : set.coverage.notes) out += fmt::format("note: {}\n", clean_line(note));
  if (set.changes.empty()) out += "\nNo changes.\n";
  by_kind(
      set,
      [&out](ChangeKind kind, std::size_t count) {
        out += fmt::format("\n{} ({})\n", kind_words(kind), count);
      },
      [&out](const Change& change) { out += text_line(change); });
  return out;
}

std::string changes_markdown(const ChangeSet& set) {
  std::string out = fmt::format(
      "# {}\n\n- then: {}\n- now: {}\n- {}\n- {}\n", markdown_escaped(set.shop.name),
      markdown_escaped(capture_sentence(set.from)), markdown_escaped(capture_sentence(set.to)),
      markdown_text(lines_now_phrase(set.reconciliation)),
      markdown_text(lines_then_phrase(set.reconciliation)));
  for (const auto& note : set.coverage.notes) out += fmt::format("- {}\n", markdown_escaped(note));
  if (set.changes.empty()) out += "\nNo changes.\n";
  by_kind(
      set,
      [&out](ChangeKind kind, std::size_t count) {
        out += fmt::format("\n## {} ({})\n\n", kind_words(kind), count);
        out += "| code | line | then | now | seen in |\n|---|---|---|---|---|\n";
      },
      [&out](const Change& change) { out += markdown_row(change); });
  return out;
}

}  // namespace rangebook
