// Quoting, and defusing of formulas.
#include "reports/csv_writer.h"

#include "reports/utf8.h"

namespace rangebook {
namespace {

constexpr std::string_view kFormulaStarts = "=+-@\t\r\n";

std::string valid_utf8(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const Utf8Step step = utf8_step(text);
    out += step.valid ? text.substr(0, step.bytes) : kReplacement;
    text.remove_prefix(step.bytes);
  }
  return out;
}

}  // namespace

void CsvWriter::text(std::string_view cell) {
  const bool formula = !cell.empty() && kFormulaStarts.find(cell.front()) != std::string_view::npos;
  plain((formula ? "'" : "") + valid_utf8(cell));
}

void CsvWriter::plain(std::string_view cell) {
  if (!first_) out_ += ',';
  first_ = false;
  if (cell.find_first_of(",\"\r\n") == std::string_view::npos) {
    out_ += cell;
    return;
  }
  out_ += '"';
  for (const char sign : cell) {
    if (sign == '"') out_ += '"';
    out_ += sign;
  }
  out_ += '"';
}

void CsvWriter::end_row() {
  out_ += "\r\n";
  first_ = true;
}

}  // namespace rangebook
