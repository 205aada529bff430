// Workbooks, read back with libarchive and expat by ECMA-376: the same figures as every other form,
// as numbers, and nothing that could run.
#include "reports/workbook.h"

#include <archive.h>
#include <archive_entry.h>
#include <expat.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <charconv>
#include <cstdlib>
#include <ctime>
#include <map>

#include "reports/brief_formats.h"
#include "reports/change_lists.h"
#include "tests/reports/fixture/change_set.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

/// The parts of a zip file by name.
std::map<std::string, std::string> parts_of(const std::string& bytes) {
  std::map<std::string, std::string> parts;
  archive* zip = archive_read_new();
  archive_read_support_format_zip(zip);
  EXPECT_EQ(archive_read_open_memory(zip, bytes.data(), bytes.size()), ARCHIVE_OK);
  archive_entry* entry = nullptr;
  while (archive_read_next_header(zip, &entry) == ARCHIVE_OK) {
    std::string& part = parts[archive_entry_pathname(entry)];
    std::array<char, 4096> buffer{};
    for (la_ssize_t got = 0; (got = archive_read_data(zip, buffer.data(), buffer.size())) > 0;) {
      part.append(buffer.data(), static_cast<std::size_t>(got));
    }
  }
  archive_read_free(zip);
  return parts;
}

/// Text of all `v` and `t` elements, by the cell or string they stand in.
struct Reader {
  std::vector<std::string> strings;                                  // of the shared strings
  std::map<std::string, std::pair<std::string, std::string>> cells;  // by place: type, value
  std::string at, type, text;
  bool reads = false;

  static void start(void* self, const char* name, const char** attributes) {
    auto& reader = *static_cast<Reader*>(self);
    const std::string_view tag(name);
    if (tag == "c") {
      reader.at.clear();
      reader.type = "n";
      for (; *attributes != nullptr; attributes += 2) {
        if (std::string_view(attributes[0]) == "r") reader.at = attributes[1];
        if (std::string_view(attributes[0]) == "t") reader.type = attributes[1];
      }
    }
    reader.reads = tag == "v" || tag == "t";
    if (reader.reads) reader.text.clear();
  }
  static void end(void* self, const char* name) {
    auto& reader = *static_cast<Reader*>(self);
    const std::string_view tag(name);
    if (tag == "t") reader.strings.push_back(reader.text);
    if (tag == "v") reader.cells[reader.at] = {reader.type, reader.text};
    reader.reads = false;
  }
  static void characters(void* self, const char* text, int length) {
    auto& reader = *static_cast<Reader*>(self);
    if (reader.reads) reader.text.append(text, static_cast<std::size_t>(length));
  }

  void read(const std::string& xml) {
    XML_Parser parser = XML_ParserCreate(nullptr);
    XML_SetUserData(parser, this);
    XML_SetElementHandler(parser, start, end);
    XML_SetCharacterDataHandler(parser, characters);
    EXPECT_EQ(XML_Parse(parser, xml.data(), static_cast<int>(xml.size()), 1), XML_STATUS_OK);
    XML_ParserFree(parser);
  }
};

/// A sheet by number, from 1: place -> type and value, shared strings put in.
std::map<std::string, std::pair<std::string, std::string>> sheet_of(const std::string& book,
                                                                    int number) {
  auto parts = parts_of(book);
  Reader strings;
  strings.read(parts.at("xl/sharedStrings.xml"));
  Reader sheet;
  sheet.read(parts.at("xl/worksheets/sheet" + std::to_string(number) + ".xml"));
  for (auto& [place, cell] : sheet.cells) {
    if (cell.first == "s") cell.second = strings.strings.at(std::stoul(cell.second));
  }
  return sheet.cells;
}

std::vector<std::vector<std::string>> csv_rows(const std::string& csv) {
  std::vector<std::vector<std::string>> rows(1, std::vector<std::string>(1));
  bool quoted = false;
  for (std::size_t i = 0; i < csv.size(); ++i) {
    const char sign = csv[i];
    if (sign == '"') {
      if (quoted && i + 1 < csv.size() && csv[i + 1] == '"')
        rows.back().back() += csv[++i];
      else
        quoted = !quoted;
    } else if (!quoted && sign == ',') {
      rows.back().emplace_back();
    } else if (!quoted && sign == '\n') {
      rows.emplace_back(1);
    } else if (quoted || sign != '\r') {
      rows.back().back() += sign;
    }
  }
  rows.pop_back();
  return rows;
}

double number_of(const std::string& text) {
  double number = 0;
  EXPECT_EQ(std::from_chars(text.data(), text.data() + text.size(), number).ec, std::errc{})
      << text;
  return number;
}

/// Column 0 is A.
std::string place(std::size_t column, std::size_t row) {
  return std::string(1, static_cast<char>('A' + column)) + std::to_string(row);
}

TEST(Workbook, ChangesCarryTheFiguresOfTheirCsv) {
  const ChangeSet set = fixture::rich();
  const auto rows = csv_rows(changes_csv(set));
  const auto cells = sheet_of(changes_workbook(set), 1);
  ASSERT_EQ(rows.size(), set.changes.size() + 1);
  std::size_t numbers = 0;
  for (std::size_t row = 0; row < rows.size(); ++row) {
    for (std::size_t column = 0; column < rows[row].size(); ++column) {
      std::string expected = rows[row][column];
      const auto found = cells.find(place(column, row + 2));
      if (expected.empty()) continue;
      ASSERT_NE(found, cells.end()) << place(column, row + 2) << " " << expected;
      const auto& [type, value] = found->second;
      if (type == "s") {
        if (expected.size() > 1 && expected[0] == '\'') expected.erase(0, 1);
        EXPECT_EQ(value, clean_line(expected));
        continue;
      }
      ++numbers;
      if (const auto day = parse_day(expected)) {
        // ECMA-376, 18.17.4.1: 1 January 2008 is 39448 in the 1900 date system.
        const auto days = (*day - parse_day("2008-01-01").value()).count();
        EXPECT_EQ(std::stol(value), 39448 + days);
      } else {
        EXPECT_DOUBLE_EQ(number_of(value), number_of(expected));
      }
    }
  }
  EXPECT_GT(numbers, 100U);
}

TEST(Workbook, ABriefHoldsRealNumbersAndItsSources) {
  const ReportPage page = page_of(make_brief(fixture::rich(), {true}));
  const std::string book = page_workbook(page, page.made);
  const auto parts = parts_of(book);
  const std::string& styles = parts.at("xl/styles.xml");
  EXPECT_THAT(styles, HasSubstr("#,##0.00 [$GBP]"));
  EXPECT_THAT(styles, HasSubstr("yyyy-mm-dd"));
  const std::string& names = parts.at("xl/workbook.xml");
  EXPECT_THAT(names, HasSubstr("name=\"In short\""));
  EXPECT_THAT(names, HasSubstr("name=\"Notes\""));
  EXPECT_THAT(names, HasSubstr("name=\"Sources\""));
  const auto sources = sheet_of(book, static_cast<int>(sheets_of(page).size()) + 2);
  EXPECT_EQ(sources.at("A3"), (std::pair<std::string, std::string>("n", "1")));
  for (const auto& [name, part] : parts) {
    if (name.find("worksheets/sheet") == std::string::npos) continue;
    EXPECT_THAT(part, HasSubstr("state=\"frozen\"")) << name;
    EXPECT_THAT(part, HasSubstr("<autoFilter")) << name;
    EXPECT_THAT(part, Not(HasSubstr("<f>"))) << name;
  }
}

TEST(Workbook, NothingInItCanRun) {
  ChangeSet set = fixture::rich();
  const std::string hostile = "=cmd|' /C calc'!A0";
  for (Change& change : set.changes) {
    if (change.line) change.line->name = hostile;
  }
  set.to.season = "@SUM(1)\x01\xFF";
  for (const std::string& book :
       {changes_workbook(set), page_workbook(page_of(make_brief(set)), set.to.on)}) {
    for (const auto& [name, part] : parts_of(book)) {
      EXPECT_THAT(part, Not(HasSubstr("<f>"))) << name;
      EXPECT_THAT(part, Not(HasSubstr("externalLink"))) << name;
      if (name.ends_with(".xml")) Reader().read(part);
    }
  }
}

TEST(Workbook, SameSheetsSameBytesInAnyTimeZone) {
  const std::string first = changes_workbook(fixture::rich());
  ::setenv("TZ", "Pacific/Kiritimati", 1);
  ::tzset();
  EXPECT_EQ(changes_workbook(fixture::rich()), first);
  ::unsetenv("TZ");
  ::tzset();
}

TEST(Workbook, NamesOfSheetsAreShortAndDifferent) {
  const Sheet sheet{
      "Prices: [by] category, then and now, and more than fits", "", {"A"}, {{{"x", {}}}}};
  const auto names = parts_of(workbook_of({sheet, sheet}, {})).at("xl/workbook.xml");
  EXPECT_THAT(names, HasSubstr("name=\"Prices   by  category, then and\""));
  EXPECT_THAT(names, HasSubstr("name=\"Prices   by  category, then a 2\""));
}

}  // namespace
}  // namespace rangebook
