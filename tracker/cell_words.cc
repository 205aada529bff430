// The parsers of the normaliser, one cell at a time.
#include "tracker/cell_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "schema/gtin.h"
#include "tracker/category_parser.h"
#include "tracker/colour_parser.h"
#include "tracker/composition_parser.h"
#include "tracker/money_parser.h"
#include "tracker/normaliser.h"
#include "tracker/size_parser.h"

namespace rangebook {
namespace {

constexpr std::size_t kShownSizes = 12;

std::string refused(std::string_view what) { return fmt::format("refused: {}", what); }

std::string price_words(std::string_view text, const CellHints& hints) {
  const auto result =
      parse_money(text, {hints.currency ? hints.currency : hints.shop.currency, hints.decimal});
  if (const auto* money = std::get_if<Money>(&result)) return to_string(*money);
  const auto& problem = std::get<MoneyProblem>(result);
  switch (problem.kind) {
    case MoneyProblem::Kind::no_amount:
      return refused("no price");
    case MoneyProblem::Kind::ambiguous:
      return problem.readings.empty()
                 ? refused("can be read in several ways")
                 : refused(fmt::format("{}?", fmt::join(problem.readings, " or ")));
    case MoneyProblem::Kind::no_currency:
      return refused("no currency");
    case MoneyProblem::Kind::too_precise:
      return refused("too many decimals");
    case MoneyProblem::Kind::out_of_range:
      return refused("no price is so large");
    case MoneyProblem::Kind::negative:
      return refused("below zero");
  }
  return {};
}

std::string currency_words(std::string_view text, const CellHints& hints) {
  auto currency = Currency::from_code(text);
  if (!currency) currency = find_currency(text, hints.shop.currency);
  return currency ? std::string(currency->code()) : refused("no currency code");
}

/// The systems of the sizes, each once: `uk`, `uk petite`.
std::string system_words(const std::vector<Size>& sizes) {
  std::vector<std::string> systems;
  for (const auto& size : sizes) {
    std::string words = size.ranked() ? std::string(to_string(size.system)) : "system not known";
    if (size.fit != FitRange::regular) words += fmt::format(" {}", to_string(size.fit));
    if (std::find(systems.begin(), systems.end(), words) == systems.end()) {
      systems.push_back(std::move(words));
    }
  }
  return fmt::format("{}", fmt::join(systems, ", "));
}

std::string size_words(std::string_view text, const CellHints& hints) {
  auto expanded = expand_sizes(text, hints.shop.sizes);
  if (std::holds_alternative<SizeProblem>(expanded)) {
    return refused(std::get<SizeProblem>(expanded).what);
  }
  auto& labels = std::get<std::vector<std::string>>(expanded);
  if (labels.empty()) return {};
  const std::string systems = system_words(interpret_sizes(labels, hints.shop.sizes));
  const std::size_t count = labels.size();
  if (count > kShownSizes) labels.resize(kShownSizes);
  return fmt::format("{}{} ({})", fmt::join(labels, ", "),
                     count > kShownSizes ? fmt::format(", .. {} sizes", count) : "", systems);
}

std::string stock_words(std::string_view text) {
  const auto stock = parse_stock(text);
  if (!stock) return refused("does not say whether it is in stock");
  switch (*stock) {
    case Stock::in_stock:
      return "in stock";
    case Stock::sold_out:
      return "sold out";
    case Stock::unknown:
      return "not known";
  }
  return {};
}

std::string colour_words(std::string_view text) {
  if (text.find_first_of("|;") == text.npos) return {};
  return fmt::format("{}", fmt::join(split_colours(text), ", "));
}

std::string composition_words(std::string_view text) {
  const auto composition = parse_composition(text);
  return composition ? to_string(*composition) : std::string("kept as text");
}

}  // namespace

std::string cell_words(Field field, std::string_view text, const CellHints& hints) {
  if (text.empty()) return {};
  switch (field) {
    case Field::price:
    case Field::full_price:
      return price_words(text, hints);
    case Field::currency:
      return currency_words(text, hints);
    case Field::size:
      return size_words(text, hints);
    case Field::in_stock:
      return stock_words(text);
    case Field::colour:
      return colour_words(text);
    case Field::composition:
      return composition_words(text);
    case Field::category:
      return std::string(find_category(text, {}));
    case Field::gtin:
      return Gtin::parse(text) ? std::string{} : refused("no GTIN");
    case Field::line_code:
    case Field::name:
    case Field::description:
    case Field::url:
    case Field::image:
    case Field::group_id:
    case Field::variant_code:
      return {};
  }
  return {};
}

}  // namespace rangebook
