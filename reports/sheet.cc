// From phrases to values.
#include "reports/sheet.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "reports/csv_writer.h"

namespace rangebook {
namespace {

bool has_value(const Piece& piece) { return !std::holds_alternative<std::monostate>(piece.value); }

/// The value of a cell that is one figure; notes beside it do not count.
SheetCell cell_of(const Phrase& phrase) {
  const Piece* only = nullptr;
  for (const Piece& piece : phrase.pieces) {
    if (piece.kind == Piece::Kind::note) continue;
    if (only != nullptr || !has_value(piece)) return {plain_text(phrase, false), {}};
    only = &piece;
  }
  return only == nullptr ? SheetCell{} : SheetCell{{}, only->value};
}

SheetCell text_cell(std::string text) { return {std::move(text), {}}; }
SheetCell count_cell(std::size_t number) { return {{}, Count{static_cast<std::int64_t>(number)}}; }

SheetCell notes_cell(const std::vector<Phrase>& cells) {
  std::vector<std::size_t> numbers;
  for (const Phrase& cell : cells) {
    for (const std::size_t note : notes_of(cell)) {
      if (std::find(numbers.begin(), numbers.end(), note) == numbers.end()) numbers.push_back(note);
    }
  }
  if (numbers.size() == 1) return count_cell(numbers.front());
  return text_cell(fmt::format("{}", fmt::join(numbers, ", ")));
}

Sheet sheet_of(const BriefTable& table) {
  Sheet sheet{table.caption, table.caption, {}, {}};
  for (const BriefColumn& column : table.columns) sheet.columns.push_back(column.heading);
  const bool cited = std::any_of(table.rows.begin(), table.rows.end(), [](const auto& row) {
    return std::any_of(row.begin(), row.end(),
                       [](const Phrase& cell) { return !notes_of(cell).empty(); });
  });
  if (cited) sheet.columns.emplace_back("Sources");
  for (const auto& row : table.rows) {
    std::vector<SheetCell> cells;
    for (const Phrase& cell : row) cells.push_back(cell_of(cell));
    if (cited) cells.push_back(notes_cell(row));
    sheet.rows.push_back(std::move(cells));
  }
  return sheet;
}

Sheet headlines_sheet(const ReportPage& page) {
  Sheet sheet{"In short", page.title, {"Rank", "About", "Headline", "Sources"}, {}};
  for (const Headline& each : page.headlines) {
    sheet.rows.push_back(
        {count_cell(sheet.rows.size() + 1), text_cell(std::string(theme_words(each.theme))),
         text_cell(plain_text(each.sentence, false)), notes_cell({each.sentence})});
  }
  return sheet;
}

struct CsvText {
  CsvWriter& csv;
  void operator()(std::monostate) const {}
  void operator()(const Money& money) const { csv.plain(decimal_text(money)); }
  void operator()(const MoneyStep& step) const { csv.plain(decimal_text(step.step)); }
  void operator()(Day day) const { csv.plain(to_string(day)); }
  void operator()(Count count) const { csv.plain(std::to_string(count.number)); }
  void operator()(Share share) const {
    const auto size = share.per_mille < 0 ? -share.per_mille : share.per_mille;
    csv.plain(fmt::format("{}{}.{:03}", share.per_mille < 0 ? "-" : "", size / 1000, size % 1000));
  }
};

}  // namespace

std::string csv_of(const Sheet& sheet) {
  CsvWriter csv;
  for (const auto& column : sheet.columns) csv.text(column);
  csv.end_row();
  for (const auto& row : sheet.rows) {
    for (const SheetCell& cell : row) {
      if (std::holds_alternative<std::monostate>(cell.value)) {
        csv.text(cell.text);
      } else {
        std::visit(CsvText{csv}, cell.value);
      }
    }
    csv.end_row();
  }
  return csv.take();
}

std::vector<Sheet> sheets_of(const ReportPage& page) {
  std::vector<Sheet> sheets{headlines_sheet(page)};
  for (const BriefSection& section : page.sections) {
    for (const BriefTable& table : section.tables) sheets.push_back(sheet_of(table));
  }
  return sheets;
}

Sheet notes_of(const ReportPage& page) {
  Sheet sheet{"Notes", page.title, {"About", "Note"}, {}};
  const auto add = [&sheet](std::string_view about, std::string note) {
    sheet.rows.push_back({text_cell(std::string(about)), text_cell(std::move(note))});
  };
  add("Captures", plain_text(page.dates, false));
  for (const auto& caution : page.cautions) add("Caution", caution);
  for (const BriefSection& section : page.sections) {
    for (const Phrase& each : section.paragraphs) add(section.heading, plain_text(each, false));
  }
  return sheet;
}

Sheet sources_of(const ReportPage& page) {
  Sheet sheet{"Sources",
              "What the numbers of sources stand for",
              {"Number", "Season", "Date", "Document", "Line"},
              {}};
  for (const Source& source : page.sources) {
    SheetCell line;
    if (source.line) line = count_cell(*source.line);
    const std::string document = source.document.empty() ? "the whole capture" : source.document;
    sheet.rows.push_back({count_cell(sheet.rows.size() + 1),
                          text_cell(source.season),
                          {{}, source.on},
                          text_cell(document),
                          line});
  }
  return sheet;
}

}  // namespace rangebook
