// libxlsxwriter writes to a file only; it is read back and removed.
#include "reports/workbook.h"

#include <fmt/format.h>
#include <unistd.h>
#include <xlsxwriter.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <set>

#include "reports/brief_formats.h"
#include "schema/error.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kMostRows = 1'048'576;  // of a sheet, ECMA-376 in practice
constexpr std::size_t kLongestText = 32'000;  // bytes; a cell holds 32,767 characters
constexpr std::size_t kLongestName = 31;      // characters of the name of a sheet
constexpr lxw_row_t kHeader = 1;              // below the title
constexpr double kNarrowest = 7;
constexpr double kWidest = 60;

/// A file of our own that is gone afterwards.
class ScratchFile {
 public:
  ScratchFile() {
    std::string name = (fs::temp_directory_path() / "rangebook-XXXXXX").string();
    const int file = ::mkstemp(name.data());
    if (file < 0) throw Error("Cannot write to the folder for temporary files, " + name);
    ::close(file);
    path_ = name;
  }
  ~ScratchFile() {
    std::error_code ignored;
    fs::remove(path_, ignored);
  }
  ScratchFile(const ScratchFile&) = delete;
  ScratchFile& operator=(const ScratchFile&) = delete;

  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

/// At most 31 characters, none of `[]:*?/\`, not quoted, each name once (ECMA-376, 18.2.19, and
/// what spreadsheets refuse).
std::string sheet_name(std::string_view wanted, std::set<std::string>& taken) {
  std::string name;
  for (const char sign : clean_line(wanted)) {
    const bool refused = std::string_view("[]:*?/\\'").find(sign) != std::string_view::npos;
    name += refused ? ' ' : sign;
  }
  const auto cut = [](std::string text, std::size_t most) {
    if (text.size() > most) text.resize(most);
    while (!text.empty() &&
           (static_cast<unsigned char>(text.back()) >= 0x80 || text.back() == ' ')) {
      text.pop_back();
    }
    return text;
  };
  if (name.size() > kLongestName) name = cut(name, kLongestName);
  if (name.empty()) name = "Sheet";
  std::string unique = name;
  for (int number = 2; !taken.insert(unique).second; ++number) {
    const std::string suffix = fmt::format(" {}", number);
    unique = cut(name, kLongestName - suffix.size()) + suffix;
  }
  return unique;
}

/// The date of the parts of the archive; ZIP knows none before it.
constexpr Day kFirstZipDay = date::sys_days{date::year{1980} / 1 / 1};

class BookWriter {
 public:
  BookWriter(const fs::path& path, Day made) : book_(workbook_new(path.c_str())) {
    if (book_ == nullptr) throw Error("Cannot write a workbook to " + path.string());
    lxw_doc_properties properties{};
    constexpr std::time_t kSeconds = 86'400;
    // No date at all would be taken for now, and the same report would be other bytes tomorrow.
    const Day day = std::max(made, kFirstZipDay);
    properties.created = static_cast<std::time_t>(day.time_since_epoch().count()) * kSeconds;
    workbook_set_properties(book_, &properties);
    title_ = format("");
    format_set_bold(title_);
    header_ = format("");
    format_set_bold(header_);
    format_set_bottom(header_, LXW_BORDER_THIN);
    format_set_text_wrap(header_);
    format_set_align(header_, LXW_ALIGN_VERTICAL_BOTTOM);
    wrapped_ = format("");
    format_set_text_wrap(wrapped_);
    format_set_align(wrapped_, LXW_ALIGN_VERTICAL_TOP);
  }

  void add(const Sheet& sheet) {
    if (sheet.rows.size() + kHeader + 1 > kMostRows) {
      throw Error(fmt::format("{} rows do not fit on a sheet of a workbook: write CSV instead.",
                              sheet.rows.size()));
    }
    lxw_worksheet* page = workbook_add_worksheet(book_, sheet_name(sheet.name, names_).c_str());
    write_text(page, 0, 0, sheet.title, title_);
    std::vector<double> widths(sheet.columns.size(), kNarrowest);
    for (std::size_t i = 0; i < sheet.columns.size(); ++i) {
      write_text(page, kHeader, static_cast<lxw_col_t>(i), sheet.columns[i], header_);
      widen(widths[i], std::min(sheet.columns[i].size(), std::size_t{14}));
    }
    lxw_row_t at = kHeader;
    for (const auto& row : sheet.rows) {
      ++at;
      for (std::size_t i = 0; i < row.size(); ++i) {
        widen(widths.at(i), write_cell(page, at, static_cast<lxw_col_t>(i), row[i]));
      }
    }
    finish(page, widths, at);
  }

  void close() {
    const lxw_error fault = workbook_close(std::exchange(book_, nullptr));
    if (fault != LXW_NO_ERROR) {
      throw Error(fmt::format("Cannot write a workbook: {}.", lxw_strerror(fault)));
    }
  }

  ~BookWriter() {
    if (book_ != nullptr) workbook_close(book_);
  }
  BookWriter(const BookWriter&) = delete;
  BookWriter& operator=(const BookWriter&) = delete;

 private:
  static void widen(double& width, std::size_t signs) {
    width = std::clamp(static_cast<double>(signs) + 2, width, kWidest);
  }

  static void finish(lxw_worksheet* page, const std::vector<double>& widths, lxw_row_t last) {
    for (std::size_t i = 0; i < widths.size(); ++i) {
      const auto column = static_cast<lxw_col_t>(i);
      worksheet_set_column(page, column, column, widths[i], nullptr);
    }
    worksheet_freeze_panes(page, kHeader + 1, 0);
    if (!widths.empty()) {
      worksheet_autofilter(page, kHeader, 0, last, static_cast<lxw_col_t>(widths.size() - 1));
    }
    worksheet_repeat_rows(page, kHeader, kHeader);
    worksheet_set_paper(page, 9);  // A4
    worksheet_set_landscape(page);
    worksheet_fit_to_pages(page, 1, 0);
  }

  /// By its number format; each is made once.
  lxw_format* format(const std::string& number) {
    if (number.empty()) return workbook_add_format(book_);
    const auto [found, is_new] = formats_.try_emplace(number, nullptr);
    if (is_new) {
      found->second = workbook_add_format(book_);
      format_set_num_format(found->second, number.c_str());
      format_set_align(found->second, LXW_ALIGN_VERTICAL_TOP);
    }
    return found->second;
  }

  void write_text(lxw_worksheet* page, lxw_row_t row, lxw_col_t column, std::string_view text,
                  lxw_format* look) {
    std::string line = clean_line(text);
    if (line.size() > kLongestText) {
      line.resize(kLongestText);
      while ((static_cast<unsigned char>(line.back()) & 0xC0U) == 0x80U) line.pop_back();
      line.back() = ' ';  // the first byte of what was cut, or a sign of one byte
      line += "(cut)";
    }
    if (!line.empty()) worksheet_write_string(page, row, column, line.c_str(), look);
  }

  /// How many signs it shows, about.
  std::size_t write_cell(lxw_worksheet* page, lxw_row_t row, lxw_col_t column,
                         const SheetCell& cell) {
    const auto number = [&](double value, const std::string& look) {
      worksheet_write_number(page, row, column, value, format(look));
    };
    if (const auto* money = std::get_if<Money>(&cell.value)) {
      number(amount(*money), money_look(money->currency, false));
    } else if (const auto* step = std::get_if<MoneyStep>(&cell.value)) {
      number(amount(step->step), money_look(step->step.currency, true));
    } else if (const auto* count = std::get_if<Count>(&cell.value)) {
      number(static_cast<double>(count->number), "0");
    } else if (const auto* share = std::get_if<Share>(&cell.value)) {
      number(static_cast<double>(share->per_mille) / 1000,
             share->signs ? "+0.0%;-0.0%;0.0%" : "0.0%");
    } else if (const auto* day = std::get_if<Day>(&cell.value)) {
      number(serial(*day), "yyyy-mm-dd");
    } else {
      write_text(page, row, column, cell.text, wrapped_);
      return cell.text.size();
    }
    return 12;
  }

  static double amount(const Money& money) {
    double unit = 1;
    for (int i = 0; i < money.currency.exponent(); ++i) unit *= 10;
    return static_cast<double>(money.minor) / unit;
  }

  /// Days since 30 December 1899, the 1900 date system of ECMA-376 (18.17.4.1) from March 1900 on.
  static double serial(Day day) {
    constexpr int kUnixEpoch = 25'569;
    return static_cast<double>(day.time_since_epoch().count() + kUnixEpoch);
  }

  static std::string money_look(Currency currency, bool signs) {
    std::string digits = "#,##0";
    if (currency.exponent() > 0)
      digits += '.' + std::string(static_cast<std::size_t>(currency.exponent()), '0');
    const std::string look = fmt::format("{} [${}]", digits, currency.code());
    return signs ? fmt::format("+{0};-{0};{0}", look) : look;
  }

  lxw_workbook* book_;
  lxw_format* title_ = nullptr;
  lxw_format* header_ = nullptr;
  lxw_format* wrapped_ = nullptr;
  std::map<std::string, lxw_format*> formats_;
  std::set<std::string> names_;
};

}  // namespace

std::string workbook_of(const std::vector<Sheet>& sheets, Day made) {
  const ScratchFile file;
  BookWriter writer(file.path(), made);
  for (const Sheet& each : sheets) {
    if (!each.rows.empty()) writer.add(each);
  }
  writer.close();
  std::ifstream in(file.path(), std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::string page_workbook(const ReportPage& page, Day made) {
  std::vector<Sheet> sheets = sheets_of(page);
  sheets.push_back(notes_of(page));
  sheets.push_back(sources_of(page));
  return workbook_of(sheets, made);
}

std::string changes_workbook(const ChangeSet& set) {
  const ReportPage page =
      page_of(Brief{set.shop, set.from, set.to, false, {}, {}, {}, report_cautions(false)});
  Sheet notes = notes_of(page);
  for (const auto& note : set.coverage.notes) {
    notes.rows.push_back({{"Not looked at or not stated", {}}, {note, {}}});
  }
  return workbook_of({changes_sheet(set), notes}, set.to.on);
}

}  // namespace rangebook
