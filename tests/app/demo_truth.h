// Reads the demo's captures and truth, takes feeds into a book, and compares changes one by one.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "reports/changes_json.h"
#include "tracker/app/pipeline.h"

namespace rangebook {

using Json = nlohmann::ordered_json;

inline std::string read_file(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path.string());
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

inline std::vector<std::string> split(const std::string& text, char separator) {
  std::vector<std::string> parts;
  std::istringstream stream(text);
  for (std::string part; std::getline(stream, part, separator);) parts.push_back(part);
  return parts;
}

/// One line of captures.tsv: shop, name, country, currency, sizes, season, date, scope, files.
using CaptureLine = std::vector<std::string>;

inline std::vector<CaptureLine> capture_lines(const std::filesystem::path& feeds) {
  std::vector<CaptureLine> lines;
  bool header = true;
  for (const std::string& line : split(read_file(feeds / "captures.tsv"), '\n')) {
    if (line.starts_with('#')) continue;
    if (!header) lines.push_back(split(line, '\t'));
    header = false;
  }
  return lines;
}

inline Shop shop_of(const CaptureLine& line) {
  return {line.at(0), line.at(1), line.at(2), Currency::from_code(line.at(3)),
          parse_size_system(line.at(4)).value()};
}

inline CaptureRequest request_of(const std::filesystem::path& feeds, const CaptureLine& line) {
  CaptureRequest request;
  request.shop = line.at(0);
  request.season = line.at(5);
  request.on = parse_day(line.at(6)).value();
  if (line.at(7) != "all") {
    request.scope = {Scope::Kind::categories, split(line.at(7), ',')};
  }
  for (const std::string& file : split(line.at(8), ' ')) {
    request.files.push_back((feeds / file).string());
  }
  return request;
}

/// Takes in every capture of captures.tsv, or those of one shop.
inline void take_in(Book& book, const std::filesystem::path& feeds, const std::string& shop = {}) {
  for (const CaptureLine& line : capture_lines(feeds)) {
    if (!shop.empty() && line.at(0) != shop) continue;
    book.put_shop(shop_of(line));
    run_capture(book, request_of(feeds, line), {});
  }
}

/// The change as the truth states it: without ids and evidence, which depend on the book.
inline Json bare(Json change) {
  change.erase("evidence");
  if (!change.at("line").is_null()) change.at("line").erase("id");
  return change;
}

inline std::vector<std::string> bare_texts(const Json& changes) {
  std::vector<std::string> texts;
  for (const Json& change : changes) texts.push_back(nlohmann::json(bare(change)).dump());
  return texts;
}

/// What the program says of the pair a truth file is about.
inline Json actual_changes(const Book& book, const Json& truth) {
  const CompareRequest request{truth.at("shop"), truth.at("from").at("season"),
                               truth.at("to").at("season")};
  return Json::parse(changes_json(std::get<ChangeSet>(run_comparison(book, request))));
}

/// Every change that is only in one of the two, `missing: ..` or `surplus: ..`; sorted.
inline std::vector<std::string> differences(const Json& truth, const Json& actual) {
  std::vector<std::string> expected = bare_texts(truth.at("changes"));
  std::vector<std::string> found = bare_texts(actual.at("changes"));
  std::ranges::sort(expected);
  std::ranges::sort(found);
  std::vector<std::string> only;
  std::vector<std::string> result;
  std::ranges::set_difference(expected, found, std::back_inserter(only));
  for (const std::string& text : only) result.push_back("missing: " + text);
  only.clear();
  std::ranges::set_difference(found, expected, std::back_inserter(only));
  for (const std::string& text : only) result.push_back("surplus: " + text);
  return result;
}

}  // namespace rangebook
