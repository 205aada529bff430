// Price text: any bytes are read or refused, and what is read can be written and read again. The
// first line holds the hints: a currency code, then a decimal sign.
#include <cstddef>
#include <cstdint>

#include "tests/fuzz/require.h"
#include "tracker/money_parser.h"

namespace rangebook {
namespace {

MoneyHints read_hints(std::string_view line) {
  MoneyHints hints{Currency::from_code(line.substr(0, 3)), std::nullopt};
  if (line.size() > 3 && (line[3] == '.' || line[3] == ',')) hints.decimal_sign = line[3];
  return hints;
}

void check_money(const Money& money) {
  require(money.minor >= 0, "a price is zero or more");
  const auto again = parse_money(to_string(money), {money.currency, '.'});
  const auto* back = std::get_if<Money>(&again);
  require(back != nullptr && *back == money, "a written price reads back");
}

void check_problem(const MoneyProblem& problem) {
  require(!problem.what.empty(), "a problem says what is wrong");
  require(problem.what.size() < 600, "a problem is a sentence");
}

}  // namespace
}  // namespace rangebook

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const auto [line, text] = first_line(as_text(data, size));
  const MoneyHints hints = read_hints(line);
  const auto result = parse_money(text, hints);
  if (const auto* money = std::get_if<Money>(&result)) {
    check_money(*money);
  } else {
    check_problem(std::get<MoneyProblem>(result));
  }
  parse_amount(text, hints);
  find_currency(text, hints.currency);
  const auto sign = proven_decimal_sign(text);
  require(!sign || *sign == '.' || *sign == ',', "a decimal sign is a point or a comma");
  return 0;
}
