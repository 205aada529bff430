// One choice for each column: its field is numbered, and the column it is about goes with it.
#include "tracker/desk/reading_form.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <map>
#include <set>

#include "reports/mapping_preview.h"
#include "schema/nearest_word.h"
#include "tracker/app/table_words.h"

namespace rangebook {
namespace {

/// Columns beyond these are shown without a choice.
constexpr std::size_t kMostChoices = 300;

std::string spoken(std::string_view name) {
  std::string words(name);
  std::replace(words.begin(), words.end(), '_', ' ');
  if (words == "colour+size") return "colour and size";
  if (words == "ignore") return "nothing: leave it out";
  return words;
}

std::string meaning_of(const ColumnPreview& column) {
  if (column.fields.empty()) return "not used";
  std::vector<std::string> names;
  for (const Field field : column.fields) names.push_back(spoken(to_string(field)));
  return fmt::format("{}{}", fmt::join(names, " and "),
                     column.known == ColumnPreview::Known::by_values ? ", a guess" : "");
}

std::string use_of(const ColumnChoice& choice) {
  if (choice.colour_size) return "colour+size";
  return choice.field ? std::string(to_string(*choice.field)) : "ignore";
}

class ReadingForm {
 public:
  ReadingForm(HtmlWriter& html, const TableOptions& said) : html_(html) {
    for (const auto& choice : said.columns) said_.emplace(choice.column, use_of(choice));
  }

  void document(const DocumentPreview& document) {
    const auto inside = html_.in("div", {{"class", "read"}});
    {
      const auto heading = html_.in("h3");
      html_.element("bdi", {}, document.name);
    }
    detected(document);
    sentences(document.doubts);
    syntaxes(document);
    if (!document.columns.empty()) columns(document);
  }

  /// Columns that were said something about and are in none of the documents.
  void absent() {
    for (const auto& [column, use] : said_) {
      if (shown_.contains(column)) continue;
      const auto field = html_.in("div", {{"class", "field"}});
      choice(column, fmt::format("Column {}, which is not there", column), "as found");
    }
  }

 private:
  void detected(const DocumentPreview& document) {
    std::vector<std::string> parts;
    if (!document.profile.empty()) parts.emplace_back("read as kept for this shop");
    for (const auto& found : document.detected) {
      parts.push_back(
          fmt::format("{}: {}{}", found.what, found.value, found.stated ? " (as said)" : ""));
    }
    parts.push_back(fmt::format("{} row{}", document.rows, document.rows == 1 ? "" : "s"));
    html_.element("p", {{"class", "dates"}}, fmt::format("{}", fmt::join(parts, "; ")));
  }

  void sentences(const std::vector<std::string>& doubts) {
    if (doubts.empty()) return;
    const auto list = html_.in("ul", {{"class", "doubts"}});
    for (const auto& doubt : doubts) html_.element("li", {}, doubt);
  }

  void syntaxes(const DocumentPreview& document) {
    for (const auto& one : document.syntaxes) {
      std::vector<std::string> names;
      for (const Field field : one.fields) names.push_back(spoken(to_string(field)));
      html_.element("p", {},
                    fmt::format("{}: {} row{}: {}", one.syntax, one.rows, one.rows == 1 ? "" : "s",
                                fmt::join(names, ", ")));
    }
    std::vector<std::string> conflicts;
    for (const auto& each : document.conflicts) {
      conflicts.push_back(fmt::format("{}, {}: {} says \"{}\", which was taken; {} says \"{}\".",
                                      each.line, spoken(to_string(each.field)), each.taken_from,
                                      each.taken, each.other_from, each.other));
    }
    if (document.conflict_count > document.conflicts.size()) {
      conflicts.push_back(fmt::format("And {} contradictions more.",
                                      document.conflict_count - document.conflicts.size()));
    }
    sentences(conflicts);
  }

  void columns(const DocumentPreview& document) {
    wide_table(html_,
               {fmt::format("Columns of {}", document.name),
                "",
                {"Column", "Means", "Examples, and what they are read as"}},
               [&](HtmlWriter& /*body*/) {
                 std::map<std::string, int> names;
                 for (const auto& column : document.columns) ++names[column.name];
                 for (const auto& column : document.columns)
                   column_row(column, names[column.name] == 1);
               });
  }

  void column_row(const ColumnPreview& column, bool own_name) {
    const auto row = html_.in("tr");
    const std::string number = fmt::format("#{}", column.place);
    const std::string key = column.name.empty() || !own_name ? number : column.name;
    {
      const auto cell = html_.in("th", {{"scope", "row"}});
      html_.element("bdi", {}, column.name.empty() ? number : column.name);
    }
    {
      const auto cell = html_.in("td");
      const bool asked = column.place > 0 && !shown_.contains(key) && shown_.size() < kMostChoices;
      if (asked) {
        choice(key, fmt::format("What {} means", column.name.empty() ? number : column.name),
               found_words(column, key));
      } else {
        html_.text(meaning_of(column));
      }
    }
    examples(column);
  }

  std::string found_words(const ColumnPreview& column, const std::string& key) const {
    if (said_.contains(key)) return "as found";
    if (column.known == ColumnPreview::Known::by_choice) return "as kept: " + meaning_of(column);
    return "as found: " + meaning_of(column);
  }

  void choice(const std::string& key, const std::string& label, const std::string& as_found) {
    shown_.insert(key);
    const std::string number = std::to_string(shown_.size());
    hidden_field(html_, "column-" + number, key);
    const auto said = said_.find(key);
    const std::string value = said == said_.end() ? std::string{} : said->second;
    const auto select = html_.in("select", {{"name", "means-" + number}, {"aria-label", label}});
    option("", as_found, value);
    for (const auto& use : column_uses()) option(use, spoken(use), value);
  }

  void option(const std::string& value, const std::string& words, const std::string& chosen) {
    if (value == chosen) {
      html_.element("option", {{"value", value}, {"selected", ""}}, words);
    } else {
      html_.element("option", {{"value", value}}, words);
    }
  }

  void examples(const ColumnPreview& column) {
    const auto cell = html_.in("td", {{"class", "telling"}});
    const auto list = html_.in("ul", {{"class", "examples"}});
    for (const auto& example : column.examples) {
      const auto item = html_.in("li");
      html_.element("bdi", {}, example.text);
      if (example.read.empty() || example.read == example.text) continue;
      html_.text(" is read as ");
      html_.element("bdi", {}, example.read);
    }
    for (const auto& doubt : column.doubts) html_.element("li", {{"class", "doubt"}}, doubt);
    if (column.examples.empty() && column.doubts.empty()) html_.element("li", {}, "empty");
  }

  HtmlWriter& html_;
  std::map<std::string, std::string> said_;  ///< by column
  std::set<std::string> shown_;              ///< columns with a choice
};

const std::vector<Choice> kDelimiters{
    {"", "as found"}, {"comma", "comma"}, {"semicolon", "semicolon"},
    {"tab", "tab"},   {"bar", "bar"},     {"space", "space"}};
const std::vector<Choice> kDecimals{{"", "as found"}, {"point", "point"}, {"comma", "comma"}};

void table_fields(HtmlWriter& html, const TableOptions& said, const DeskAsk& typed) {
  std::map<std::string, std::string> words;
  for (const auto& [name, word] : option_words(said)) words[name] = word;
  const auto value = [&](const std::string& name) {
    return typed.said(name).empty() ? words[name] : typed.said(name);
  };
  field_group(html, "Where a table is misread", [&](HtmlWriter& fields) {
    choice_field(fields, "delimiter", "Between columns", kDelimiters, value("delimiter"));
    choice_field(fields, "decimal", "Decimals of prices", kDecimals, value("decimal"));
    text_field(fields, "header-row", "Line of names", value("header-row"),
               "in which line the columns are named, from 1; or none");
    text_field(fields, "encoding", "Encoding", value("encoding"), "such as windows-1252");
    text_field(fields, "sheet", "Sheet of a workbook", value("sheet"), "by its name");
  });
}

bool is_doubtful(const DocumentPreview& document) {
  return !document.doubts.empty() || document.conflict_count > 0 ||
         std::any_of(document.columns.begin(), document.columns.end(),
                     [](const ColumnPreview& column) { return !column.doubts.empty(); });
}

bool is_table(const DocumentPreview& document) {
  return document.importer == "table" || document.importer == "workbook";
}

}  // namespace

void reading_fields(HtmlWriter& html, const std::vector<DocumentPreview>& documents,
                    const TableOptions& said, const DeskAsk& typed) {
  ReadingForm form(html, said);
  std::size_t shown = 0;
  for (const auto& document : documents) {
    if (shown >= kShownDocuments && (!is_doubtful(document) || shown >= 3 * kShownDocuments))
      continue;
    form.document(document);
    ++shown;
  }
  if (shown < documents.size()) {
    html.element("p", {}, fmt::format("And {} documents more.", documents.size() - shown));
  }
  form.absent();
  const bool tables = std::any_of(documents.begin(), documents.end(), is_table);
  if (tables || !said.empty()) table_fields(html, said, typed);
}

std::variant<TableOptions, std::string> reading_of(const DeskAsk& ask) {
  TableWords words;
  words.delimiter = ask.said("delimiter");
  words.encoding = ask.said("encoding");
  words.header_row = ask.said("header-row");
  words.decimal = ask.said("decimal");
  words.sheet = ask.said("sheet");
  for (std::size_t i = 1; i <= kMostChoices; ++i) {
    const std::string& means = ask.said(fmt::format("means-{}", i));
    if (means.empty()) continue;
    words.columns.push_back(fmt::format("{}={}", ask.said(fmt::format("column-{}", i)), means));
  }
  auto options = options_of(words);
  if (auto* problem = std::get_if<std::string>(&options)) return without_options(*problem);
  return options;
}

}  // namespace rangebook
