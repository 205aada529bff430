// Every likely dialect reads the sample; the one that sees the best table wins.
#include "importers/csv_dialect.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <utility>
#include <vector>

#include "importers/byte_search.h"
#include "importers/csv_records.h"
#include "importers/field_map.h"

namespace rangebook {
namespace {

constexpr std::string_view kUsual = ",;\t|";
constexpr std::string_view kRare = ":^~#*\x1F ";
/// A header is looked for in so many of the first records.
constexpr std::size_t kHeaderRecords = 40;
constexpr std::size_t kMaxRecords = 400;
/// What a table of one column scores, so that it is chosen only where nothing separates.
constexpr double kOneColumn = 1e-3;

/// Signs that seldom separate have to do better than the usual ones.
constexpr double kRareWeight = 0.5;

class SampleSource final : public ByteSource {
 public:
  explicit SampleSource(std::string_view text) : text_(text) {}
  std::string_view next_chunk() override { return std::exchange(text_, {}); }

 private:
  std::string_view text_;
};

/// What one dialect makes of the sample.
struct Sight {
  std::map<std::size_t, std::size_t> widths;  ///< width of a record -> how many have it
  std::size_t records = 0;
  std::size_t cells = 0;
  std::size_t odd_cells = 0;  ///< with quotes at one end, or a fault
  std::size_t known = 0;      ///< most different fields named by one of the first records
  bool has_name = false;      ///< that record names a name column
};

/// A cell that a wrong quote or delimiter would leave behind.
bool is_odd(std::string_view cell) {
  while (!cell.empty() && cell.front() == ' ') cell.remove_prefix(1);
  while (!cell.empty() && cell.back() == ' ') cell.remove_suffix(1);
  if (cell.empty()) return false;
  const auto quote = [](char sign) { return sign == '"' || sign == '\''; };
  const bool opens = quote(cell.front());
  const bool closes = quote(cell.back()) && cell.size() > 1;
  const bool inches = closes && !opens && is_ascii_digit(cell[cell.size() - 2]);
  return (opens || closes) && !inches;
}

void look_for_header(const Record& record, Sight& sight) {
  const FieldMap map = map_header(record.cells);
  if (map.known() <= sight.known) return;
  sight.known = map.known();
  sight.has_name = map.has(Field::name);
}

void look_at(const Record& record, Sight& sight) {
  if (sight.records < kHeaderRecords) look_for_header(record, sight);
  ++sight.records;
  ++sight.widths[record.cells.size()];
  sight.cells += std::max<std::size_t>(record.cells.size(), 1);
  if (record.fault != RecordFault::none) ++sight.odd_cells;
  sight.odd_cells +=
      static_cast<std::size_t>(std::count_if(record.cells.begin(), record.cells.end(), is_odd));
}

Sight sight_of(std::string_view sample, const CsvDialect& dialect, bool whole) {
  SampleSource source(sample);
  CsvRecords records(source);
  records.set_dialect(dialect);
  Sight sight;
  Record record;
  while (sight.records < kMaxRecords && records.next(record)) {
    const bool cut = !whole && !record.ended;
    if (!cut || sight.records == 0) look_at(record, sight);
  }
  return sight;
}

/// The pattern score: many records of one width, and wide ones.
double pattern_score(const Sight& sight) {
  double sum = 0;
  for (const auto& [width, count] : sight.widths) {
    const auto wide = static_cast<double>(std::max<std::size_t>(width, 1));
    sum += static_cast<double>(count) * std::max(kOneColumn, (wide - 1) / wide);
  }
  return sum / static_cast<double>(std::max<std::size_t>(sight.widths.size(), 1)) /
         static_cast<double>(std::max<std::size_t>(sight.records, 1));
}

double score_of(const Sight& sight) {
  if (sight.records == 0) return 0;
  const double sound =
      1 - static_cast<double>(sight.odd_cells) / static_cast<double>(sight.cells + 1);
  const auto known = static_cast<double>(sight.known + (sight.has_name ? 1 : 0));
  return pattern_score(sight) * sound * sound * (1 + known * known);
}

/// Whether the records agree well enough for a sign that is more often text than a delimiter.
bool is_beyond_doubt(const Sight& sight) {
  if (sight.known >= 3 && sight.has_name) return true;
  if (sight.records < 3 || sight.widths.size() != 1 || sight.odd_cells != 0) return false;
  return sight.widths.begin()->first >= 3;
}

class Contest {
 public:
  Contest(std::string_view sample, bool whole) : sample_(sample), whole_(whole) {}

  void enter(const CsvDialect& dialect, bool only_beyond_doubt = false) {
    const Sight sight = sight_of(sample_, dialect, whole_);
    if (only_beyond_doubt && !is_beyond_doubt(sight)) return;
    const double score = score_of(sight) * (only_beyond_doubt ? kRareWeight : 1);
    if (score <= best_score_) return;
    best_score_ = score;
    best_ = dialect;
    best_sight_ = sight;
  }
  const CsvDialect& best() const { return best_; }
  /// Whether the best so far is a table nobody would doubt.
  bool convinces() const {
    const auto& widths = best_sight_.widths;
    if (best_sight_.has_name && best_sight_.known > 1) return true;
    return widths.size() == 1 && widths.begin()->first > 1 && best_sight_.odd_cells == 0;
  }

 private:
  std::string_view sample_;
  bool whole_;
  CsvDialect best_;
  Sight best_sight_;
  double best_score_ = -1;
};

/// Whether cells begin or end with the quote beside this delimiter.
bool has_quoted_cells(std::string_view sample, char quote, char delimiter) {
  const auto edge = [&](char sign) { return sign == delimiter || sign == '\n' || sign == '\r'; };
  std::size_t opens = sample.starts_with(quote) ? 1 : 0;
  std::size_t closes = sample.ends_with(quote) ? 1 : 0;
  for (std::size_t at = sample.find(quote); at != sample.npos; at = sample.find(quote, at + 1)) {
    if (at > 0 && (edge(sample[at - 1]) || sample[at - 1] == ' ')) ++opens;
    if (at + 1 < sample.size() && edge(sample[at + 1])) ++closes;
  }
  return opens > 0 && closes > 0;
}

/// The dialects of one delimiter that the sample gives reason to try.
std::vector<CsvDialect> dialects_of(std::string_view sample, char delimiter,
                                    const CsvDialectOptions& options) {
  std::vector<CsvDialect> out;
  if (options.no_quotes) return {{delimiter, std::nullopt, std::nullopt, false}};
  for (const char quote : std::string_view("\"'")) {
    if (options.quote && *options.quote != quote) continue;
    const bool usual = quote == '"' || options.quote;
    if (!usual && !has_quoted_cells(sample, quote, delimiter)) continue;
    out.push_back({delimiter, quote, std::nullopt, false});
    if (sample.find(std::string{'\\', quote}) != sample.npos) {
      out.push_back({delimiter, quote, '\\', false});
    }
  }
  if (out.empty()) out.push_back({delimiter, options.quote, std::nullopt, false});
  return out;
}

}  // namespace

CsvDialect detect_dialect(std::string_view sample, bool whole, const CsvDialectOptions& options) {
  Contest contest(sample, whole);
  const auto enter_all = [&](std::string_view delimiters, bool rare) {
    for (const char delimiter : delimiters) {
      if (!options.delimiter && delimiter != ',' && sample.find(delimiter) == sample.npos) continue;
      for (const auto& dialect : dialects_of(sample, delimiter, options)) {
        contest.enter(dialect, rare);
      }
    }
  };
  if (options.delimiter) {
    enter_all(std::string_view(&*options.delimiter, 1), false);
    return contest.best();
  }
  enter_all(kUsual, false);
  if (contest.convinces()) return contest.best();
  enter_all(kRare, true);
  if (sample.find("  ") != sample.npos)
    contest.enter({' ', std::nullopt, std::nullopt, true}, true);
  return contest.best();
}

std::string delimiter_name(const CsvDialect& dialect) {
  constexpr std::array<std::pair<char, std::string_view>, 6> kNames{{{',', "comma"},
                                                                     {';', "semicolon"},
                                                                     {'\t', "tab"},
                                                                     {'|', "bar"},
                                                                     {' ', "space"},
                                                                     {'\x1F', "unit separator"}}};
  if (dialect.gaps) return "wide gap";
  for (const auto& [sign, name] : kNames) {
    if (sign == dialect.delimiter) return std::string(name);
  }
  return std::string(1, dialect.delimiter);
}

std::string quote_name(const CsvDialect& dialect) {
  if (!dialect.quote) return "none";
  std::string name = *dialect.quote == '"'    ? "double"
                     : *dialect.quote == '\'' ? "single"
                                              : std::string(1, *dialect.quote);
  return dialect.escape ? name + ", escaped by backslash" : name;
}

std::string to_string(const CsvDialect& dialect) {
  std::string text = "delimiter=" + delimiter_name(dialect);
  if (!dialect.quote && !dialect.gaps) text += " quote=none";
  if (dialect.quote && *dialect.quote != '"') {
    text += *dialect.quote == '\'' ? " quote=single" : fmt::format(" quote={}", *dialect.quote);
  }
  if (dialect.escape) text += " escape=backslash";
  return text;
}

}  // namespace rangebook
