// Names of enumerators: one table per enumeration serves both directions, so a name that is
// written can always be read back.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>
#include <utility>

namespace rangebook {

template <typename Enum, std::size_t N>
using NameTable = std::array<std::pair<Enum, std::string_view>, N>;

/// The name of `value`; every enumerator must stand in the table.
template <typename Enum, std::size_t N>
constexpr std::string_view name_of(const NameTable<Enum, N>& table, Enum value) {
  for (const auto& [entry, name] : table) {
    if (entry == value) return name;
  }
  return "?";
}

/// The enumerator called `name`; nothing if there is none.
template <typename Enum, std::size_t N>
constexpr std::optional<Enum> value_of(const NameTable<Enum, N>& table, std::string_view name) {
  for (const auto& [entry, entry_name] : table) {
    if (entry_name == name) return entry;
  }
  return std::nullopt;
}

}  // namespace rangebook
