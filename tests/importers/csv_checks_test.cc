// CSV against two collections of cases from outside: npm csv-spectrum (tests/checks/csv-spectrum)
// and the parser tables of npm papaparse (tests/checks/papaparse_records.tsv).
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "tests/check_rows.h"
#include "tests/importers/loaded_table.h"

namespace rangebook {
namespace {

using Json = nlohmann::ordered_json;

std::string whole_file(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// Each row as an object of the header's names, which is how csv-spectrum states it.
Json as_objects(const LoadedTable& table) {
  Json rows = Json::array();
  for (const auto& row : table.rows) {
    Json object = Json::object();
    for (std::size_t i = 0; i < table.header.size(); ++i) object[table.header[i]] = row.at(i);
    rows.push_back(object);
  }
  return rows;
}

TEST(CsvSpectrum, AllTwelveCases) {
  std::size_t cases = 0;
  for (const auto& entry : std::filesystem::directory_iterator(RANGEBOOK_CHECKS "/csv-spectrum")) {
    if (entry.path().extension() != ".csv") continue;
    ++cases;
    Json wanted =
        Json::parse(whole_file(std::filesystem::path(entry.path()).replace_extension("json")));
    if (wanted.is_object()) wanted = Json::array({wanted});
    Json found = as_objects(load_table(whole_file(entry.path())));
    if (entry.path().stem() == "location_coordinates") {  // see its README
      wanted[0].erase("Contact Phone Number");
      found.at(0).erase("Contact Phone Number");
    }
    EXPECT_EQ(found, wanted) << entry.path();
  }
  EXPECT_EQ(cases, 12U);
}

TableOptions options_of(const std::string& delimiter, const std::string& quote) {
  TableOptions options;
  if (!delimiter.empty()) options.delimiter = Json::parse(delimiter).get<std::string>().front();
  if (!quote.empty()) options.quote = Json::parse(quote).get<std::string>().front();
  return options;
}

Json records_of(const std::string& text, const TableOptions& options) {
  TextSource source(text);
  const auto records = open_csv_records(source, options);
  Json rows = Json::array();
  Record record;
  while (records->next(record)) {
    rows.push_back(record.fault == RecordFault::none ? Json(record.cells) : Json("fault"));
  }
  return rows;
}

TEST(PapaparseTables, SameRecords) {
  std::size_t same = 0;
  std::size_t otherwise = 0;
  for (const auto& row : check_rows("papaparse_records.tsv")) {
    const auto found =
        records_of(Json::parse(row.at(3)).get<std::string>(), options_of(row.at(1), row.at(2)));
    if (row.size() > 5 && !row[5].empty()) {
      EXPECT_NE(found, Json::parse(row.at(4))) << row[0] << " agrees by now";
      ++otherwise;
      continue;
    }
    EXPECT_EQ(found, Json::parse(row.at(4))) << row[0];
    ++same;
  }
  EXPECT_GE(same, 80U);
  EXPECT_EQ(otherwise, 7U);
}

}  // namespace
}  // namespace rangebook
