// The three tables as hash maps from folded phrases, built once.
#include "tracker/fibre_table.h"

#include <algorithm>
#include <unordered_map>

#include "schema/embedded.h"
#include "schema/error.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

constexpr std::size_t kLongestPhrase = 4;

template <typename Value>
using Phrases = std::unordered_map<std::string, Value>;

template <typename Value>
void add_phrases(Phrases<Value>& phrases, std::string_view cell, const Value& value) {
  while (!cell.empty()) {
    const auto end = std::min(cell.find('|'), cell.size());
    if (end > 0) phrases.emplace(fold_text(cell.substr(0, end)), value);
    cell.remove_prefix(std::min(end + 1, cell.size()));
  }
}

struct FibreTables {
  Phrases<Fibre> names;
  Phrases<Fibre> codes;
  Phrases<PartName> parts;
};

Phrases<Fibre> read_names() {
  Phrases<Fibre> names;
  for (const auto& row : table_rows("tables/fibres.tsv")) {
    const auto origin = parse_fibre_origin(row.at(2));
    if (!origin) throw Error("tables/fibres.tsv has no such origin: " + std::string(row[2]));
    const Fibre fibre{row.at(1), *origin};
    add_phrases(names, row[1], fibre);
    if (row.size() > 4) add_phrases(names, row[4], fibre);
  }
  return names;
}

Phrases<Fibre> read_codes(const Phrases<Fibre>& names) {
  Phrases<Fibre> codes;
  for (const auto& row : table_rows("tables/fibre_codes.tsv")) {
    const auto fibre = names.find(std::string(row.at(1)));
    if (fibre == names.end()) {
      throw Error("tables/fibre_codes.tsv names no fibre: " + std::string(row[1]));
    }
    codes.emplace(row.at(0), fibre->second);
  }
  return codes;
}

Phrases<PartName> read_parts() {
  Phrases<PartName> parts;
  for (const auto& row : table_rows("tables/composition_parts.tsv")) {
    add_phrases(parts, row.at(2), PartName{row.at(0), row.at(1) == "yes"});
  }
  return parts;
}

const FibreTables& tables() {
  static const FibreTables all = [] {
    FibreTables read{.names = read_names(), .codes = {}, .parts = read_parts()};
    read.codes = read_codes(read.names);
    return read;
  }();
  return all;
}

template <typename Value>
std::optional<Value> longest_at_start(const Phrases<Value>& phrases, FibreWords words,
                                      std::size_t& length) {
  std::optional<Value> found;
  std::string phrase;
  for (std::size_t i = 0; i < std::min(words.size(), kLongestPhrase); ++i) {
    if (i > 0) phrase += ' ';
    phrase += words[i].folded;
    const auto at = phrases.find(phrase);
    if (at == phrases.end()) continue;
    found = at->second;
    length = i + 1;
  }
  return found;
}

}  // namespace

std::optional<Fibre> fibre_at_start(FibreWords words, std::size_t& length) {
  if (const auto named = longest_at_start(tables().names, words, length)) return named;
  if (words.empty()) return std::nullopt;
  const auto code = tables().codes.find(std::string(words.front().raw));
  if (code == tables().codes.end()) return std::nullopt;
  length = 1;
  return code->second;
}

std::optional<PartName> part_at_start(FibreWords words, std::size_t& length) {
  return longest_at_start(tables().parts, words, length);
}

}  // namespace rangebook
