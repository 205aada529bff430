// One table a document. Widths are counted in signs, not bytes.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "reports/mapping_preview.h"
#include "reports/phrase.h"

namespace rangebook {
namespace {

constexpr std::size_t kNameWidth = 28;
constexpr std::size_t kExampleWidth = 44;

std::string counted(std::uint64_t count, std::string_view thing) {
  return fmt::format("{} {}{}", count, thing, count == 1 ? "" : "s");
}

std::size_t signs(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
  }));
}

/// At most `width` signs, the last of them dots where text was left out.
std::string cut(std::string_view text, std::size_t width) {
  std::string clean = clean_line(text);
  if (signs(clean) <= width) return clean;
  std::size_t kept = 0;
  std::size_t at = 0;
  while (at < clean.size()) {
    const bool begins = (static_cast<unsigned char>(clean[at]) & 0xC0U) != 0x80U;
    if (begins && ++kept > width - 2) break;
    ++at;
  }
  return clean.substr(0, at) + "..";
}

std::string padded(const std::string& text, std::size_t width) {
  const std::size_t used = signs(text);
  return used < width ? text + std::string(width - used, ' ') : text;
}

std::string meaning_of(const ColumnPreview& column) {
  const bool chosen = column.known == ColumnPreview::Known::by_choice;
  if (column.fields.empty()) return chosen ? "not used (as said)" : "not used";
  std::vector<std::string_view> names;
  for (const Field field : column.fields) names.push_back(to_string(field));
  std::string text = fmt::format("{}", fmt::join(names, "+"));
  switch (column.known) {
    case ColumnPreview::Known::by_name:
      break;
    case ColumnPreview::Known::by_choice:
      text += " (as said)";
      break;
    case ColumnPreview::Known::by_values:
      text += " (guessed)";
      break;
  }
  return text;
}

std::string name_of(const ColumnPreview& column) {
  std::string name = cut(column.name, kNameWidth);
  if (column.place == 0) return name;
  return fmt::format("{:>2} {}", column.place, name.empty() ? "-" : name);
}

std::string examples_of(const ColumnPreview& column) {
  std::vector<std::string> parts;
  for (const auto& example : column.examples) {
    std::string part = cut(example.text, kExampleWidth);
    if (!example.read.empty() && example.read != example.text) {
      part += " -> " + cut(example.read, kExampleWidth * 2);
    }
    parts.push_back(std::move(part));
  }
  return parts.empty() ? "(empty)" : fmt::format("{}", fmt::join(parts, " | "));
}

void add_columns(const DocumentPreview& document, std::string& out) {
  if (document.columns.empty()) return;
  const bool fields_only =
      std::all_of(document.columns.begin(), document.columns.end(),
                  [](const auto& column) { return column.name.empty() && column.place == 0; });
  std::size_t name_width = 6;
  std::size_t meaning_width = 7;
  for (const auto& column : document.columns) {
    name_width = std::max(name_width, signs(name_of(column)));
    meaning_width = std::max(meaning_width, signs(meaning_of(column)));
  }
  const auto line = [&](const std::string& name, const std::string& meaning,
                        const std::string& examples) {
    const std::string first = fields_only ? "" : padded(name, name_width) + "  ";
    out += fmt::format("  {}{}  {}\n", first, padded(meaning, meaning_width), examples);
  };
  line("COLUMN", "MEANING", "EXAMPLES, AND WHAT THEY ARE READ AS");
  for (const auto& column : document.columns) {
    line(name_of(column), meaning_of(column), examples_of(column));
  }
}

void add_detected(const DocumentPreview& document, std::string& out) {
  std::vector<std::string> parts;
  if (!document.profile.empty()) parts.push_back(fmt::format("profile: {}", document.profile));
  for (const auto& found : document.detected) {
    parts.push_back(fmt::format("{}: {}{}", found.what, clean_line(found.value),
                                found.stated ? " (as said)" : ""));
  }
  if (!parts.empty()) out += fmt::format("  {}\n", fmt::join(parts, "; "));
}

void add_syntaxes(const DocumentPreview& document, std::string& out) {
  for (const auto& one : document.syntaxes) {
    std::vector<std::string_view> names;
    for (const Field field : one.fields) names.push_back(to_string(field));
    out +=
        fmt::format("  {}: {}: {}\n", one.syntax, counted(one.rows, "row"), fmt::join(names, ", "));
  }
  for (const auto& conflict : document.conflicts) {
    out +=
        fmt::format("  ! {}: {}: {} says \"{}\" (taken), {} says \"{}\"\n",
                    cut(conflict.line, kNameWidth), to_string(conflict.field), conflict.taken_from,
                    clean_line(conflict.taken), conflict.other_from, clean_line(conflict.other));
  }
  if (document.conflict_count > document.conflicts.size()) {
    out += fmt::format("  ! and {} more contradictions\n",
                       document.conflict_count - document.conflicts.size());
  }
}

void add_doubts(const DocumentPreview& document, std::string& out) {
  for (const auto& column : document.columns) {
    const std::string name = column.name.empty() ? meaning_of(column) : clean_line(column.name);
    for (const auto& doubt : column.doubts) {
      out += fmt::format("  ? {}: {}\n", name, clean_line(doubt));
    }
  }
  for (const auto& doubt : document.doubts) out += fmt::format("  ? {}\n", clean_line(doubt));
}

bool has_doubts(const DocumentPreview& document) {
  return !document.doubts.empty() || !document.conflicts.empty() || document.refused_rows > 0 ||
         std::any_of(document.columns.begin(), document.columns.end(),
                     [](const auto& column) { return !column.doubts.empty(); });
}

void add_document(const DocumentPreview& document, std::string& out) {
  out += fmt::format("{} ({}): {}", clean_line(document.name), document.importer,
                     counted(document.rows, "row"));
  if (document.refused_rows > 0) out += fmt::format(", {} refused", document.refused_rows);
  out += "\n";
  add_detected(document, out);
  add_syntaxes(document, out);
  add_columns(document, out);
  add_doubts(document, out);
  out += "\n";
}

void add_outcome(const MappingPreview& preview, std::string& out) {
  const auto& capture = preview.capture;
  if (preview.lines == 0) {
    out += "Dry run: no line could be read, nothing would be kept.\n";
  } else {
    out += fmt::format(
        "Dry run, nothing kept: {} {} of {}, scope {}: {}, {} ({} new to the book, {} as "
        "before).\n",
        capture.season, capture.shop, to_string(capture.on), to_string(capture.scope),
        counted(preview.lines, "line"), counted(preview.variants, "variant"),
        counted(preview.new_lines, "line"), preview.same_lines);
  }
  for (const auto& note : preview.notes) out += clean_line(note) + "\n";
}

}  // namespace

std::string documents_text(const std::vector<DocumentPreview>& documents) {
  std::string out;
  std::size_t shown = 0;
  std::size_t left_out = 0;
  for (const auto& document : documents) {
    if (shown < kShownDocuments || (has_doubts(document) && shown < 2 * kShownDocuments)) {
      add_document(document, out);
      ++shown;
    } else {
      ++left_out;
    }
  }
  if (left_out > 0) {
    out +=
        fmt::format("{} more not shown; --format json has all.\n\n", counted(left_out, "document"));
  }
  return out;
}

std::string preview_text(const MappingPreview& preview) {
  std::string out = documents_text(preview.documents);
  add_outcome(preview, out);
  return out;
}

}  // namespace rangebook
