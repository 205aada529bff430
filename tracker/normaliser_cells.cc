// Reading the cells of one row: price, currency, stock, GTIN, sizes, and the key of its line.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <unordered_map>

#include "schema/embedded.h"
#include "tracker/normaliser.h"
#include "tracker/size_parser.h"

namespace rangebook {
namespace {

/// The memo of size cells starts anew when a document has more different ones, so that memory
/// does not grow with a column that holds no sizes at all.
constexpr std::size_t kMaxSizeCells = 4096;
/// So many rows with an ambiguous price wait for the rest of the document; further ones are
/// refused at once.
constexpr std::size_t kMaxKeptRows = 10'000;
constexpr std::string_view kHttp = "http://";
constexpr std::string_view kHttps = "https://";

char lower(char sign) { return sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign + 32) : sign; }

/// Lower case (ASCII), without blanks, hyphens and underscores.
std::string bare_word(std::string_view text) {
  std::string word;
  for (const char sign : text) {
    if (sign != ' ' && sign != '-' && sign != '_') word.push_back(lower(sign));
  }
  return word;
}

/// Lower case (ASCII), runs of blanks as one.
std::string folded_name(std::string_view name) {
  std::string out;
  for (const char sign : name) {
    if (sign == ' ' && (out.empty() || out.back() == ' ')) continue;
    out.push_back(lower(sign));
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

/// An address without scheme, query, fragment and trailing slash: these change, the page stays.
std::string folded_address(std::string_view url) {
  if (url.starts_with(kHttps)) url.remove_prefix(kHttps.size());
  if (url.starts_with(kHttp)) url.remove_prefix(kHttp.size());
  url = url.substr(0, url.find_first_of("?#"));
  while (!url.empty() && url.back() == '/') url.remove_suffix(1);
  const std::size_t host = std::min(url.find('/'), url.size());
  std::string out;
  for (const char sign : url.substr(0, host)) out.push_back(lower(sign));
  if (out.starts_with("www.")) out.erase(0, 4);
  out += url.substr(host);
  return out;
}

std::unordered_map<std::string, Stock> read_stock_words() {
  std::unordered_map<std::string, Stock> words;
  for (const auto& row : table_rows("tables/stock_words.tsv")) {
    const Stock stock = row.at(0) == "in_stock"   ? Stock::in_stock
                        : row.at(0) == "sold_out" ? Stock::sold_out
                                                  : Stock::unknown;
    words.emplace(row.at(1), stock);
  }
  return words;
}

/// A count of pieces; below zero is oversold, so none is to be had.
std::optional<Stock> quantity_stock(std::string_view text) {
  const bool negative = text.starts_with('-');
  if (negative) text.remove_prefix(1);
  if (text.empty() || text.find_first_not_of("0123456789") != text.npos) return std::nullopt;
  const bool some = text.find_first_not_of('0') != text.npos;
  return some && !negative ? Stock::in_stock : Stock::sold_out;
}

}  // namespace

std::string line_key(const LineCard& card) {
  if (!card.line_code.empty()) return "code:" + card.line_code;
  if (!card.group_id.empty()) return "group:" + card.group_id;
  if (!card.url.empty()) return "url:" + folded_address(card.url);
  if (!card.name.empty()) return "name:" + folded_name(card.name);
  return {};
}

std::optional<Stock> parse_stock(std::string_view text) {
  if (const auto stock = quantity_stock(text)) return stock;
  static const auto kWords = read_stock_words();
  const std::size_t slash = text.rfind('/');
  if (slash != text.npos) text.remove_prefix(slash + 1);
  const auto found = kWords.find(bare_word(text));
  return found == kWords.end() ? std::nullopt : std::optional(found->second);
}

bool Normaliser::read(const RawRow& row, Reading& reading) {
  if (!read_sizes(row, reading) || !read_currency(row, reading) ||
      !read_price(row, Field::price, reading, reading.price) ||
      !read_price(row, Field::full_price, reading, reading.full_price)) {
    return false;
  }
  read_stock(row, reading);
  read_gtin(row, reading);
  return true;
}

bool Normaliser::read_currency(const RawRow& row, Reading& reading) {
  const std::string_view cell = row[Field::currency];
  if (cell.empty()) return true;
  reading.currency = Currency::from_code(cell);
  if (!reading.currency) reading.currency = find_currency(cell, shop_.currency);
  if (reading.currency) return true;
  reject(row, RejectionKind::bad_currency, Refused::row, Field::currency,
         fmt::format("\"{}\" is no currency code.", cell),
         "Use a code of ISO 4217, such as GBP or EUR.");
  return false;
}

bool Normaliser::read_price(const RawRow& row, Field field, Reading& reading,
                            std::optional<MinorUnits>& price) {
  const std::string_view cell = row[field];
  if (cell.empty()) return true;
  learn_decimal_sign(cell);
  const auto hint = reading.currency ? reading.currency : shop_.currency;
  const auto result = parse_money(cell, {hint, decimal_sign()});
  if (const auto* problem = std::get_if<MoneyProblem>(&result)) {
    if (!waits_for_decimal_sign(row, *problem)) refuse_price(row, field, *problem);
    return false;
  }
  const Money& money = std::get<Money>(result);
  if (reading.currency && money.currency != *reading.currency) {
    reject(row, RejectionKind::bad_currency, Refused::row, field,
           fmt::format("The price \"{}\" is in {}, the row says {}.", cell, money.currency.code(),
                       reading.currency->code()),
           "Correct the currency or the price.");
    return false;
  }
  reading.currency = money.currency;
  price = money.minor;
  return true;
}

bool Normaliser::waits_for_decimal_sign(const RawRow& row, const MoneyProblem& problem) {
  if (problem.kind != MoneyProblem::Kind::ambiguous || finishing_) return false;
  if (decimal_sign() || kept_.size() >= kMaxKeptRows) return false;
  kept_.emplace_back(row);
  return true;
}

void Normaliser::refuse_price(const RawRow& row, Field field, const MoneyProblem& problem) {
  const bool ambiguous = problem.kind == MoneyProblem::Kind::ambiguous;
  const bool no_currency = problem.kind == MoneyProblem::Kind::no_currency;
  std::string what = problem.what + ".";
  if (ambiguous && !problem.readings.empty()) {
    what += fmt::format(" It can be read as {}.", fmt::join(problem.readings, " or as "));
  }
  reject(row,
         ambiguous     ? RejectionKind::ambiguous_price
         : no_currency ? RejectionKind::bad_currency
                       : RejectionKind::bad_price,
         Refused::row, field, std::move(what),
         ambiguous     ? "Write it with two decimals, for instance 1299.00."
         : no_currency ? "Add a currency column, or set the shop's currency with \"shop add\"."
                       : "Write the price as a plain number such as 79.90; leave the cell empty "
                         "when the price is not known.");
}

void Normaliser::read_stock(const RawRow& row, Reading& reading) {
  const std::string_view cell = row[Field::in_stock];
  if (cell.empty()) return;
  if (const auto stock = parse_stock(cell)) {
    reading.stock = *stock;
    return;
  }
  reject(row, RejectionKind::bad_stock, Refused::cell, Field::in_stock,
         fmt::format("\"{}\" does not say whether it is in stock.", cell.substr(0, kExcerptBytes)),
         "Write yes or no, or the number of pieces.");
}

void Normaliser::read_gtin(const RawRow& row, Reading& reading) {
  const std::string_view cell = row[Field::gtin];
  if (cell.empty()) return;
  reading.gtin = Gtin::parse(cell);
  if (reading.gtin) return;
  reject(row, RejectionKind::bad_gtin, Refused::cell, Field::gtin,
         fmt::format("\"{}\" is no GTIN: 8, 12, 13 or 14 digits with the right check digit.",
                     cell.substr(0, kExcerptBytes)),
         "Copy it again from the source; spreadsheets shorten long numbers (4.0E+12) and drop "
         "leading zeros.");
}

bool Normaliser::read_sizes(const RawRow& row, Reading& reading) {
  const std::string_view cell = row[Field::size];
  if (cell.empty()) return true;
  auto found = size_cells_.find(std::string(cell));
  if (found == size_cells_.end()) {
    auto expanded = expand_sizes(cell, shop_.sizes);
    if (const auto* problem = std::get_if<SizeProblem>(&expanded)) {
      reject(row, RejectionKind::bad_size, Refused::row, Field::size, problem->what,
             problem->how_to_fix);
      return false;
    }
    if (size_cells_.size() >= kMaxSizeCells) size_cells_.clear();
    found = size_cells_
                .emplace(std::string(cell), std::get<std::vector<std::string>>(std::move(expanded)))
                .first;
  }
  reading.sizes = &found->second;
  return true;
}

/// Prices that prove both signs to be the decimal sign settle nothing.
void Normaliser::learn_decimal_sign(std::string_view text) {
  if (text == last_price_) return;
  last_price_ = text;
  if (const auto sign = proven_decimal_sign(text)) proven_[*sign == '.' ? 0 : 1] = true;
}

std::optional<char> Normaliser::decimal_sign() const {
  if (stated_decimal_) return stated_decimal_;
  if (proven_[0] == proven_[1]) return std::nullopt;
  return proven_[0] ? '.' : ',';
}

}  // namespace rangebook
