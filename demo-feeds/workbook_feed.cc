// Written by libxlsxwriter, which writes to a file only.
#include "demo-feeds/workbook_feed.h"

#include <unistd.h>
#include <xlsxwriter.h>

#include <charconv>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>

#include "demo-feeds/archive.h"
#include "demo-feeds/csv_feed.h"

namespace demo {
namespace {

namespace fs = std::filesystem;

bool is_price(const std::string& column) { return column == "price" || column == "full_price"; }

void write_cell(lxw_worksheet* sheet, lxw_row_t row, lxw_col_t column, const std::string& text,
                lxw_format* number) {
  double value = 0;
  const auto end = text.data() + text.size();
  const bool numeric = number != nullptr && std::from_chars(text.data(), end, value).ptr == end;
  if (text.empty()) return;
  if (numeric) {
    worksheet_write_number(sheet, row, column, value, number);
  } else {
    worksheet_write_string(sheet, row, column, text.c_str(), nullptr);
  }
}

void write_book(const fs::path& path, const House& house, const Capture& capture) {
  lxw_workbook* book = workbook_new(path.c_str());
  lxw_doc_properties properties{};
  properties.created = midnight(capture.date);
  workbook_set_properties(book, &properties);
  lxw_format* number = workbook_add_format(book);
  format_set_num_format(number, "0.00");
  lxw_worksheet* sheet = workbook_add_worksheet(book, capture.season.c_str());
  const std::string title = house.name + ", range of " + capture.season + " (invented)";
  worksheet_write_string(sheet, 0, 0, title.c_str(), nullptr);
  const auto rows = table_rows(house, capture);
  for (std::size_t row = 0; row < rows.size(); ++row) {
    for (std::size_t column = 0; column < rows[row].size(); ++column) {
      const bool price = row > 0 && is_price(rows[0][column]);
      write_cell(sheet, static_cast<lxw_row_t>(row + 2), static_cast<lxw_col_t>(column),
                 rows[row][column], price ? number : nullptr);
    }
  }
  if (workbook_close(book) != LXW_NO_ERROR) throw std::runtime_error("cannot write a workbook");
}

}  // namespace

std::string workbook_feed(const House& house, const Capture& capture) {
  const fs::path path =
      fs::temp_directory_path() / ("demo-feed-" + std::to_string(::getpid()) + ".xlsx");
  write_book(path, house, capture);
  std::ifstream file(path, std::ios::binary);
  std::string bytes{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  file.close();
  fs::remove(path);
  if (bytes.empty()) throw std::runtime_error("cannot read the workbook again");
  return bytes;
}

}  // namespace demo
