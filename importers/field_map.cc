// Header names to fields, by the table of names.
#include "importers/field_map.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <charconv>

#include "importers/header_words.h"

namespace rangebook {
namespace {

constexpr std::size_t slot(Field field) { return static_cast<std::size_t>(field); }

/// Takes the columns of a header one by one.
class Mapper {
 public:
  Mapper(std::span<const std::string_view> header, std::size_t columns) : header_(header) {
    map_.columns = std::max(header.size(), columns);
    chosen_.resize(map_.columns);
  }

  FieldMap map(std::span<const ColumnChoice> choices) {
    for (const auto& choice : choices) choose(choice);
    for (std::size_t i = 0; i < header_.size(); ++i) {
      if (!chosen_[i]) take(i);
    }
    for (std::size_t i = 0; i < chosen_.size(); ++i) {
      if (chosen_[i]) map_.chosen.push_back(i);
    }
    settle_prices();
    settle_colour_size();
    settle_name();
    list_unknown();
    return std::move(map_);
  }

 private:
  /// The column that a choice speaks of.
  std::optional<std::size_t> column_of(const ColumnChoice& choice) const {
    const std::string_view name = choice.column;
    if (name.starts_with('#')) {
      std::size_t number = 0;
      const char* const end = name.data() + name.size();
      const auto [at, error] = std::from_chars(name.data() + 1, end, number);
      const bool good = error == std::errc{} && at == end && number > 0 && number <= map_.columns;
      return good ? std::optional(number - 1) : std::nullopt;
    }
    const std::string folded = folded_header(name);
    for (std::size_t i = 0; i < header_.size(); ++i) {
      if (folded_header(header_[i]) == folded) return i;
    }
    return std::nullopt;
  }

  void choose(const ColumnChoice& choice) {
    const auto column = column_of(choice);
    if (!column) {
      map_.missing.push_back(choice.column);
      return;
    }
    chosen_[*column] = true;
    if (choice.colour_size) map_.colour_size = *column;
    if (!choice.field) return;
    map_.column[slot(*choice.field)] = *column;
    by_contract_[slot(*choice.field)] = true;
  }

  void take(std::size_t i) {
    const auto meaning = column_meaning(header_[i]);
    if (!meaning) return;
    if (!meaning->currency.empty() && map_.currency.empty()) map_.currency = meaning->currency;
    switch (meaning->role) {
      case ColumnRole::sale_price:
        if (!sale_) sale_ = i;
        return;
      case ColumnRole::colour_size:
        if (!map_.colour_size) map_.colour_size = i;
        return;
      case ColumnRole::field:
        break;
    }
    const std::size_t at = slot(meaning->field);
    if (map_.column[at] && (by_contract_[at] || !meaning->by_contract)) {
      map_.doubled.push_back(i);
      return;
    }
    if (map_.column[at]) map_.doubled.push_back(*map_.column[at]);
    map_.column[at] = i;
    by_contract_[at] = meaning->by_contract;
  }

  void settle_prices() {
    if (map_.has(Field::currency)) map_.currency.clear();
    if (!sale_) return;
    auto& price = map_.column[slot(Field::price)];
    auto& full = map_.column[slot(Field::full_price)];
    if (!full && price) full = price;
    map_.fallback[slot(Field::price)] = price ? price : full;
    price = sale_;
  }

  void settle_colour_size() {
    if (map_.has(Field::colour) || map_.has(Field::size)) map_.colour_size.reset();
  }

  void settle_name() {
    if (map_.has(Field::name) || !map_.has(Field::description)) return;
    std::swap(map_.column[slot(Field::name)], map_.column[slot(Field::description)]);
  }

  void list_unknown() {
    const auto uses = [&](std::size_t i) {
      const auto is = [&](const auto& column) { return column == i; };
      return map_.colour_size == i || std::any_of(map_.column.begin(), map_.column.end(), is) ||
             std::any_of(map_.fallback.begin(), map_.fallback.end(), is);
    };
    for (std::size_t i = 0; i < header_.size(); ++i) {
      if (!header_[i].empty() && !uses(i)) map_.unknown.emplace_back(header_[i]);
    }
  }

  std::span<const std::string_view> header_;
  FieldMap map_;
  std::array<bool, kFieldCount> by_contract_{};
  std::vector<bool> chosen_;  ///< columns the user has spoken of
  std::optional<std::size_t> sale_;
};

}  // namespace

std::size_t FieldMap::known() const {
  const auto count =
      std::count_if(column.begin(), column.end(), [](const auto& c) { return c.has_value(); });
  return static_cast<std::size_t>(count) + (colour_size ? 1U : 0U);
}

std::optional<Field> field_named(std::string_view header) {
  const auto meaning = column_meaning(header);
  if (!meaning || meaning->role == ColumnRole::colour_size) return std::nullopt;
  return meaning->field;
}

FieldMap map_header(std::span<const std::string_view> header) {
  return Mapper(header, header.size()).map({});
}

FieldMap map_header(std::span<const std::string_view> header, std::size_t columns,
                    std::span<const ColumnChoice> choices) {
  return Mapper(header, columns).map(choices);
}

std::string to_string(const FieldMap& map) {
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    if (!map.column[i]) continue;
    std::string part = fmt::format("{}={}", to_string(static_cast<Field>(i)), *map.column[i] + 1);
    if (map.fallback[i]) part += fmt::format(" (or {})", *map.fallback[i] + 1);
    parts.push_back(std::move(part));
  }
  if (map.colour_size) parts.push_back(fmt::format("colour+size={}", *map.colour_size + 1));
  if (!map.currency.empty()) parts.push_back(fmt::format("currency=\"{}\"", map.currency));
  std::string text = fmt::format("{}", fmt::join(parts, " "));
  if (map.guessed) text += "; guessed from the content";
  if (!map.unknown.empty()) text += fmt::format("; not used: {}", fmt::join(map.unknown, ", "));
  return text;
}

}  // namespace rangebook
