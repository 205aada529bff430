// A report for a terminal and as Markdown.
#include <fmt/format.h>

#include <algorithm>

#include "reports/page_words.h"
#include "reports/report_page.h"
#include "reports/utf8.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

/// Columns wider than this are not padded further, so one long name does not stretch a table.
constexpr std::size_t kWidestColumn = 44;

std::size_t characters(std::string_view text) {
  std::size_t count = 0;
  for (; !text.empty(); ++count) text.remove_prefix(utf8_step(text).bytes);
  return count;
}

std::vector<std::vector<std::string>> text_rows(const BriefTable& table) {
  std::vector<std::vector<std::string>> rows(1);
  for (const BriefColumn& column : table.columns) rows.front().push_back(column.heading);
  for (const auto& cells : table.rows) {
    auto& row = rows.emplace_back();
    for (const Phrase& cell : cells) row.push_back(plain_text(cell, true));
  }
  return rows;
}

std::vector<std::size_t> column_widths(const std::vector<std::vector<std::string>>& rows) {
  std::vector<std::size_t> widths(rows.front().size());
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      widths[i] = std::max(widths[i], std::min(characters(row[i]), kWidestColumn));
    }
  }
  return widths;
}

std::string padded(const std::string& cell, std::size_t width, bool right) {
  const std::size_t size = characters(cell);
  const std::string gap(size < width ? width - size : 0, ' ');
  return right ? gap + cell : cell + gap;
}

void add_table(std::string& out, const BriefTable& table) {
  const auto rows = text_rows(table);
  const auto widths = column_widths(rows);
  out += fmt::format("\n  {}\n", clean_line(table.caption));
  for (const auto& row : rows) {
    std::string line = "   ";
    for (std::size_t i = 0; i < row.size(); ++i) {
      line += ' ' + padded(row[i], widths[i], table.columns[i].numeric) + ' ';
    }
    line.erase(line.find_last_not_of(' ') + 1);
    out += line + '\n';
  }
}

void add_markdown_table(std::string& out, const BriefTable& table) {
  out += fmt::format("\n**{}**\n\n|", markdown_escaped(table.caption));
  for (const BriefColumn& column : table.columns) out += fmt::format(" {} |", column.heading);
  out += "\n|";
  for (const BriefColumn& column : table.columns) out += column.numeric ? "---:|" : "---|";
  out += '\n';
  for (const auto& cells : table.rows) {
    out += '|';
    for (const Phrase& cell : cells) out += fmt::format(" {} |", markdown_text(cell));
    out += '\n';
  }
}

}  // namespace

Phrase source_phrase(const Source& source, const NumberStyle& numbers) {
  Phrase phrase;
  if (!source.season.empty()) phrase.name(source.season).words(", ");
  phrase.day(source.on).words(", ");
  restyle(phrase, numbers);
  if (source.document.empty()) return phrase.words("the whole capture");
  phrase.name(source.document);
  if (source.line) phrase.words(", line ").count(*source.line);
  return phrase;
}

std::string page_text(const ReportPage& page) {
  std::string out = clean_line(page.title) + '\n' + plain_text(page.dates, false) + "\n\n";
  std::size_t number = 0;
  for (const Headline& headline : page.headlines) {
    out += fmt::format("{:>2}. {}\n", ++number, plain_text(headline.sentence, true));
  }
  for (const BriefSection& section : page.sections) {
    out += fmt::format("\n{}\n", section.heading);
    for (const Phrase& each : section.paragraphs)
      out += fmt::format("  {}\n", plain_text(each, true));
    for (const BriefTable& table : section.tables) add_table(out, table);
  }
  if (!page.sources.empty()) out += fmt::format("\n{}\n", page.words.text(kSourcesWord));
  number = 0;
  for (const Source& source : page.sources) {
    out += fmt::format("  [{}] {}\n", ++number,
                       plain_text(page.words.phrase(source_phrase(source, page.numbers)), false));
  }
  out += '\n';
  for (const auto& caution : page.cautions) out += caution + '\n';
  return out;
}

std::string page_markdown(const ReportPage& page) {
  std::string out =
      fmt::format("# {}\n\n{}\n\n", markdown_escaped(page.title), markdown_text(page.dates));
  std::size_t number = 0;
  for (const Headline& headline : page.headlines) {
    out += fmt::format("{}. {}\n", ++number, markdown_text(headline.sentence));
  }
  for (const BriefSection& section : page.sections) {
    out += fmt::format("\n## {}\n", markdown_escaped(section.heading));
    for (const Phrase& each : section.paragraphs) out += fmt::format("\n{}\n", markdown_text(each));
    for (const BriefTable& table : section.tables) add_markdown_table(out, table);
  }
  out += '\n';
  number = 0;
  for (const Source& source : page.sources) {
    out += fmt::format("[^{}]: {}\n", ++number,
                       markdown_text(page.words.phrase(source_phrase(source, page.numbers))));
  }
  out += '\n';
  for (const auto& caution : page.cautions) out += fmt::format("{}\n\n", caution);
  out.pop_back();
  return out;
}

}  // namespace rangebook
