// Writes the invented demonstration feeds into a folder: the same bytes on every run and machine.
//
//   demo_feeds_generator FOLDER          writes
//   demo_feeds_generator --check FOLDER  says which files differ from what would be written
#include <algorithm>
#include <exception>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <map>
#include <set>
#include <stdexcept>

#include "demo-feeds/archive.h"
#include "demo-feeds/csv_feed.h"
#include "demo-feeds/page_feed.h"
#include "demo-feeds/saved_feed.h"
#include "demo-feeds/shop_feeds.h"
#include "demo-feeds/truth.h"
#include "demo-feeds/workbook_feed.h"

namespace demo {
namespace {

namespace fs = std::filesystem;
using Files = std::map<std::string, std::string>;  // path below the folder -> bytes

std::string lower(std::string text) {
  for (char& c : text) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return text;
}

/// Adds the table of a capture, named after `base`; gives its name.
std::string add_table(const House& house, const Capture& capture, const std::string& base,
                      Files& files) {
  switch (capture.table) {
    case TableForm::csv:
      files[base + ".csv"] = csv_feed(house, capture);
      return base + ".csv";
    case TableForm::workbook:
      files[base + ".xlsx"] = workbook_feed(house, capture);
      return base + ".xlsx";
    case TableForm::json:
      files[base + ".json"] = json_feed(house, capture);
      return base + ".json";
    case TableForm::xml:
      files[base + ".xml"] = xml_feed(house, capture);
      return base + ".xml";
  }
  throw std::logic_error("a table of no form");
}

/// The style of a department with the lowest code.
std::string first_code(const Capture& capture, const std::string& category) {
  std::string first;
  for (const Style& style : capture.range.styles) {
    if (style.category == category && (first.empty() || style.code < first)) first = style.code;
  }
  return first;
}

/// The pages of a capture by path below their folder.
Files pages_of(const House& house, const Capture& capture) {
  const bool mixed = capture.pages == PagesForm::mixed;
  const std::string complete = mixed ? first_code(capture, "jackets-coats") : "";
  const std::string mhtml = mixed ? first_code(capture, "scarves") : "";
  Files pages;
  for (const Style& style : capture.range.styles) {
    if (!capture.as_pages.contains(style.category)) continue;
    if (style.code == complete) {
      pages.merge(complete_page(house, capture, style));
    } else if (style.code == mhtml) {
      pages[lower(style.code) + ".mhtml"] = mhtml_page(house, capture, style);
    } else {
      pages[lower(style.code) + ".html"] = product_page(house, capture, style);
    }
  }
  return pages;
}

/// Adds the files of one capture; gives its line of captures.tsv.
std::string add_capture(const House& house, const Capture& capture, Files& files) {
  const std::string base = house.slug + "/" + lower(capture.season);
  std::string names = add_table(house, capture, base, files);
  const Files pages = pages_of(house, capture);
  const bool zipped = capture.pages == PagesForm::zip;
  if (zipped) files[base + "-pages.zip"] = zip_of(pages, midnight(capture.date));
  const std::string folder = base + "-pages/";
  for (const auto& [name, text] : pages) {
    if (!zipped) files[std::string(folder).append(name)] = text;
  }
  if (!pages.empty()) names += " " + base + (zipped ? "-pages.zip" : "-pages");
  return house.slug + "\t" + house.name + "\t" + house.country + "\t" + house.currency + "\tuk\t" +
         capture.season + "\t" + capture.date + "\t" + capture.scope + "\t" + names + "\n";
}

void add_truth(const Story& story, const Comparison& comparison, Files& files) {
  const std::string name = "truth-" + lower(story.captures.at(comparison.from).season) + "-" +
                           lower(story.captures.at(comparison.to).season) + ".json";
  files[story.house.slug + "/" + name] = truth(story, comparison).dump(1) + "\n";
}

Files all_files() {
  Files files;
  std::string captures =
      "# Invented: no shop, garment or price here is real. Written by demo-feeds/generate.cc.\n"
      "# One capture a line, in the order to take them in. Files are below this folder, with a\n"
      "# space between them; a folder means every page in it.\n"
      "shop\tname\tcountry\tcurrency\tsizes\tseason\tdate\tscope\tfiles\n";
  for (const Story& story : {skerrowby(), tidewell_marr(), ostrel_house(), pellorie()}) {
    for (const Capture& capture : story.captures) {
      captures += add_capture(story.house, capture, files);
    }
    for (const Comparison& comparison : story.comparisons) add_truth(story, comparison, files);
  }
  files["captures.tsv"] = captures;
  return files;
}

void write_all(const fs::path& folder, const Files& files) {
  for (const auto& [name, text] : files) {
    fs::create_directories((folder / name).parent_path());
    std::ofstream file(folder / name, std::ios::binary | std::ios::trunc);
    file << text;
    if (!file.flush()) throw std::runtime_error("cannot write " + (folder / name).string());
  }
}

std::string read(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// Archives are the same when they hold the same: how they pack it is up to a library.
bool same_file(const std::string& name, const std::string& there, const std::string& text) {
  if (there == text) return true;
  const bool packed = name.ends_with(".zip") || name.ends_with(".xlsx");
  return packed && !there.empty() && unzipped(there) == unzipped(text);
}

/// Names every file that differs, is missing, or does not belong in a shop's folder.
bool check_all(const fs::path& folder, const Files& files) {
  bool same = true;
  const auto complain = [&same](const std::string& name, const char* what) {
    std::cerr << name << ": " << what << "\n";
    same = false;
  };
  std::set<std::string> shops;
  for (const auto& [name, text] : files) {
    if (!same_file(name, read(folder / name), text))
      complain(name, "differs from what the generator writes");
    if (name.find('/') != std::string::npos) shops.insert(name.substr(0, name.find('/')));
  }
  for (const std::string& shop : shops) {
    for (const auto& entry : fs::recursive_directory_iterator(folder / shop)) {
      const std::string name = fs::relative(entry.path(), folder).generic_string();
      if (entry.is_regular_file() && !files.contains(name)) complain(name, "is not generated");
    }
  }
  return same;
}

}  // namespace
}  // namespace demo

int main(int argc, char** argv) {
  const bool check = argc == 3 && argv[1] == std::string("--check");
  if (argc != 2 && !check) {
    std::cerr << "usage: demo_feeds_generator [--check] FOLDER\n";
    return 2;
  }
  try {
    const auto files = demo::all_files();
    if (check) return demo::check_all(argv[2], files) ? 0 : 1;
    demo::write_all(argv[1], files);
  } catch (const std::exception& problem) {
    std::cerr << "demo_feeds_generator: " << problem.what() << "\n";
    return 3;
  }
  return 0;
}
