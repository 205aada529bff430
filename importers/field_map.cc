// Header names to fields, by the table of names.
#include "importers/field_map.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <unordered_map>

#include "schema/embedded.h"

namespace rangebook {
namespace {

std::string folded(std::string_view header) {
  std::string out;
  for (const char sign : header) {
    const bool gap = sign == ' ' || sign == '-' || sign == '.' || sign == '_' || sign == '\t';
    if (gap && (out.empty() || out.back() == '_')) continue;
    out.push_back(gap ? '_' : sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign + 32) : sign);
  }
  while (!out.empty() && out.back() == '_') out.pop_back();
  return out;
}

std::optional<Field> contract_field(std::string_view name) {
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    if (to_string(static_cast<Field>(i)) == name) return static_cast<Field>(i);
  }
  return std::nullopt;
}

std::unordered_map<std::string, Field> read_names() {
  std::unordered_map<std::string, Field> names;
  for (const auto& row : table_rows("tables/fields.tsv")) {
    if (const auto field = contract_field(row.at(0))) names.emplace(row.at(1), *field);
  }
  return names;
}

}  // namespace

std::size_t FieldMap::known() const {
  return static_cast<std::size_t>(
      std::count_if(column.begin(), column.end(), [](const auto& c) { return c.has_value(); }));
}

std::optional<Field> field_named(std::string_view header) {
  static const auto kNames = read_names();
  const auto found = kNames.find(folded(header));
  return found == kNames.end() ? std::nullopt : std::optional(found->second);
}

FieldMap map_header(std::span<const std::string_view> header) {
  FieldMap map;
  map.columns = header.size();
  std::array<bool, kFieldCount> by_contract{};
  for (std::size_t i = 0; i < header.size(); ++i) {
    const auto field = field_named(header[i]);
    const auto slot = field ? static_cast<std::size_t>(*field) : 0;
    const bool exact = field && folded(header[i]) == to_string(*field);
    if (!field || (map.column[slot] && (by_contract[slot] || !exact))) {
      if (!header[i].empty()) map.unknown.emplace_back(header[i]);
      continue;
    }
    if (map.column[slot]) map.unknown.emplace_back(header[*map.column[slot]]);
    map.column[slot] = i;
    by_contract[slot] = exact;
  }
  return map;
}

std::string to_string(const FieldMap& map) {
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    if (map.column[i]) {
      parts.push_back(fmt::format("{}={}", to_string(static_cast<Field>(i)), *map.column[i] + 1));
    }
  }
  std::string text = fmt::format("{}", fmt::join(parts, " "));
  if (!map.unknown.empty()) text += fmt::format("; not used: {}", fmt::join(map.unknown, ", "));
  return text;
}

}  // namespace rangebook
