// Currencies of ISO 4217 from the embedded table, and the two plain text forms of an amount.
#include "schema/money.h"

#include <array>
#include <cstddef>
#include <vector>

#include "schema/embedded.h"
#include "schema/error.h"

namespace rangebook {
namespace {

constexpr std::size_t kLetters = 26;

struct CurrencyRow {
  std::string_view code;
  int exponent = 0;
};

/// The place of a code among all three-letter words, any case; nothing if it is not one.
std::optional<std::size_t> word_index(std::string_view code) {
  if (code.size() != 3) return std::nullopt;
  std::size_t index = 0;
  for (const char sign : code) {
    const char lower = static_cast<char>(sign | 0x20);
    if (lower < 'a' || lower > 'z') return std::nullopt;
    index = index * kLetters + static_cast<std::size_t>(lower - 'a');
  }
  return index;
}

/// The table and an index by code: rows are looked up once per imported row, so by plain address.
struct CurrencyTable {
  std::vector<CurrencyRow> rows;
  std::array<std::uint16_t, kLetters * kLetters * kLetters> row_after{};  // row + 1; 0: none

  CurrencyTable() {
    for (const auto& cells : table_rows("tables/currencies.tsv")) add(cells);
  }

  void add(const std::vector<std::string_view>& cells) {
    const auto index = cells.size() < 2 ? std::nullopt : word_index(cells[0]);
    if (!index || cells[1].size() != 1) throw Error("the table of currencies is damaged");
    rows.push_back({cells[0], cells[1].front() - '0'});
    row_after[*index] = static_cast<std::uint16_t>(rows.size());
  }
};

const CurrencyTable& currency_table() {
  static const CurrencyTable table;
  return table;
}

}  // namespace

std::optional<Currency> Currency::from_code(std::string_view code) {
  const auto index = word_index(code);
  if (!index) return std::nullopt;
  const auto after = currency_table().row_after[*index];
  if (after == 0) return std::nullopt;
  return Currency(static_cast<std::uint16_t>(after - 1));
}

std::string_view Currency::code() const { return currency_table().rows[row_].code; }

int Currency::exponent() const { return currency_table().rows[row_].exponent; }

std::string decimal_text(const Money& money) {
  const auto exponent = static_cast<std::size_t>(money.currency.exponent());
  const bool negative = money.minor < 0;
  const auto bits = static_cast<std::uint64_t>(money.minor);
  std::string text = std::to_string(negative ? 0 - bits : bits);
  if (text.size() <= exponent) text.insert(0, exponent + 1 - text.size(), '0');
  if (exponent > 0) text.insert(text.size() - exponent, 1, '.');
  return negative ? "-" + text : text;
}

std::string to_string(const Money& money) {
  return decimal_text(money) + " " + std::string(money.currency.code());
}

}  // namespace rangebook
