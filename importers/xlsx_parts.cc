// One reader of events for each part; the archive is walked once for all of them.
#include "importers/xlsx_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <functional>

#include "importers/byte_search.h"
#include "importers/xml_scan.h"
#include "importers/zip_walk.h"

namespace rangebook {
namespace {

constexpr std::size_t kMaxSheets = 1024;
constexpr std::size_t kMaxFormats = 65'536;

unsigned number_or(std::optional<std::string_view> text, unsigned otherwise) {
  unsigned value = otherwise;
  if (text) std::from_chars(text->data(), text->data() + text->size(), value);
  return value;
}

/// Attributes of relationships have the local name `id` as those of sheets do not.
struct Relation {
  std::string target;
  std::string type;
};
using Relations = std::map<std::string, Relation, std::less<>>;

class RelationEvents final : public XmlEvents {
 public:
  void start(std::string_view name, const XmlAttributes& attributes) override {
    if (name != "Relationship" || relations.size() >= kMaxSheets * 8) return;
    const auto id = attributes.find("Id");
    const auto target = attributes.find("Target");
    if (!id || !target) return;
    relations[std::string(*id)] = {std::string(*target),
                                   std::string(attributes.find("Type").value_or(""))};
  }
  void end(std::string_view) override {}
  void text(std::string_view) override {}

  Relations relations;
};

class WorkbookEvents final : public XmlEvents {
 public:
  void start(std::string_view name, const XmlAttributes& attributes) override {
    if (name == "workbookPr") {
      const auto flag = attributes.find("date1904");
      from_1904 = flag == "1" || flag == "true" || flag == "on";
    }
    if (name != "sheet" || sheets.size() >= kMaxSheets) return;
    SheetEntry sheet;
    sheet.name = attributes.find("name").value_or("");
    sheet.path = attributes.find("id").value_or("");  // the relation, until it is looked up
    sheet.hidden = attributes.find("state").value_or("visible") != "visible";
    sheets.push_back(std::move(sheet));
  }
  void end(std::string_view) override {}
  void text(std::string_view) override {}

  std::vector<SheetEntry> sheets;
  bool from_1904 = false;
};

class StyleEvents final : public XmlEvents {
 public:
  void start(std::string_view name, const XmlAttributes& attributes) override {
    if (name == "cellXfs") in_cells_ = true;
    if (name == "numFmt" && own_.size() < kMaxFormats) {
      own_[number_or(attributes.find("numFmtId"), 0)] =
          read_format(attributes.find("formatCode").value_or(""));
    }
    if (name == "xf" && in_cells_ && formats.size() < kMaxFormats) {
      const unsigned id = number_or(attributes.find("numFmtId"), 0);
      const auto own = own_.find(id);
      formats.push_back(own == own_.end() ? builtin_format(id) : own->second);
    }
  }
  void end(std::string_view name) override {
    if (name == "cellXfs") in_cells_ = false;
  }
  void text(std::string_view) override {}

  std::vector<NumberFormat> formats;

 private:
  std::map<unsigned, NumberFormat> own_;
  bool in_cells_ = false;
};

/// Runs of rich text are joined; readings of Japanese text (`rPh`) are left out.
class StringEvents final : public XmlEvents {
 public:
  explicit StringEvents(SharedStrings& strings) : strings_(strings) {}

  void start(std::string_view name, const XmlAttributes&) override {
    if (name == "rPh") in_reading_ = true;
    if (name == "t") in_text_ = !in_reading_;
  }
  void end(std::string_view name) override {
    if (name == "rPh") in_reading_ = false;
    if (name == "t") in_text_ = false;
    if (name == "si") strings_.end_string();
  }
  void text(std::string_view text) override {
    if (in_text_ && strings_.bytes() <= kMaxSharedBytes) strings_.append(text);
  }

 private:
  SharedStrings& strings_;
  bool in_text_ = false;
  bool in_reading_ = false;
};

/// Whether a path is that of a part, whose name some writers number: `xl/workbook2.xml`.
bool is_part(std::string_view path, std::string_view name, std::string_view ending) {
  path.remove_prefix(path.find_last_of('/') + 1);
  if (path.size() < name.size() + ending.size()) return false;
  const auto same = [](char wanted, char found) { return wanted == ascii_lower(found); };
  if (!std::equal(name.begin(), name.end(), path.begin(), same)) return false;
  const std::string_view tail = path.substr(path.size() - ending.size());
  if (!std::equal(ending.begin(), ending.end(), tail.begin(), same)) return false;
  const auto number = path.substr(name.size(), path.size() - name.size() - ending.size());
  return std::all_of(number.begin(), number.end(), is_ascii_digit);
}

/// A target relative to the folder of the workbook, without `..`, `.` and a leading slash.
std::string path_of(std::string_view folder, std::string_view target) {
  if (target.starts_with('/')) return std::string(target.substr(1));
  std::string path(folder);
  while (target.starts_with("../")) {
    target.remove_prefix(3);
    path.erase(path.find_last_of('/', path.size() < 2 ? 0 : path.size() - 2) + 1);
  }
  if (target.starts_with("./")) target.remove_prefix(2);
  return path.append(target);
}

DocumentFault damaged(std::string_view part, std::string_view problem) {
  return {RejectionKind::unreadable_document,
          fmt::format("The workbook is damaged: {} ({}).", part, problem),
          "Open it in a spreadsheet program and save it again as .xlsx."};
}

class PartsReader {
 public:
  explicit PartsReader(std::string_view bytes) : walk_(bytes) {}

  WorkbookParts read() {
    while (!parts_.fault && walk_.next()) take(walk_.path());
    if (!parts_.fault && walk_.fault()) parts_.fault = walk_.fault();
    if (!parts_.fault) finish();
    return std::move(parts_);
  }

 private:
  void take(const std::string& path) {
    if (is_part(path, "workbook", ".xml.rels")) {
      feed(path, relations_);
    } else if (is_part(path, "workbook", ".xml")) {
      folder_ = path.substr(0, path.find_last_of('/') + 1);
      found_ = true;
      feed(path, workbook_);
    } else if (is_part(path, "styles", ".xml")) {
      feed(path, styles_);
    } else if (is_part(path, "sharedstrings", ".xml")) {
      feed(path, strings_);
    } else if (is_part(path, "workbook", ".bin")) {
      refuse("This is a binary workbook (.xlsb).");
    } else if (path == "content.xml") {
      refuse("This is a workbook in OpenDocument format (.ods) or none at all.");
    }
  }

  void refuse(std::string what) {
    parts_.fault = {RejectionKind::unreadable_document, std::move(what),
                    "Open it in a spreadsheet program and save it as .xlsx."};
  }

  void feed(const std::string& path, XmlEvents& events) {
    XmlScan parser(events);
    for (auto piece = walk_.read(); !piece.empty(); piece = walk_.read()) {
      if (!parser.feed(piece, false)) break;
    }
    if (walk_.fault()) return;
    if (!parser.feed({}, true)) parts_.fault = damaged(path, parser.problem());
  }

  void finish() {
    parts_.sheets = std::move(workbook_.sheets);
    parts_.from_1904 = workbook_.from_1904;
    parts_.formats = std::move(styles_.formats);
    for (auto& sheet : parts_.sheets) {
      const auto found = relations_.relations.find(sheet.path);
      const bool sheet_type = found != relations_.relations.end() &&
                              found->second.type.find("/worksheet") != std::string::npos;
      sheet.path = sheet_type ? path_of(folder_, found->second.target) : std::string{};
    }
    // Sheets of charts and macros have no table.
    std::erase_if(parts_.sheets, [](const SheetEntry& sheet) { return sheet.path.empty(); });
    if (!found_) {
      refuse("The archive holds no workbook.");
    } else if (parts_.sheets.empty()) {
      parts_.fault = damaged("xl/workbook.xml", "it names no sheet");
    } else if (parts_.strings.bytes() > kMaxSharedBytes) {
      parts_.fault = {
          RejectionKind::over_limit,
          fmt::format("The workbook holds more than {} MiB of text.", kMaxSharedBytes >> 20U),
          "Save the sheet that matters as CSV."};
    }
  }

  ZipWalk walk_;
  WorkbookParts parts_;
  RelationEvents relations_;
  WorkbookEvents workbook_;
  StyleEvents styles_;
  StringEvents strings_{parts_.strings};
  std::string folder_;
  bool found_ = false;
};

}  // namespace

WorkbookParts read_workbook_parts(std::string_view bytes) { return PartsReader(bytes).read(); }

}  // namespace rangebook
