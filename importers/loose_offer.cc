// Both readers collect candidates first and give a row only if they agree.
#include "importers/loose_offer.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <string>

#include "importers/json_tree.h"
#include "importers/microdata.h"
#include "importers/page_merge.h"
#include "importers/page_money.h"
#include "importers/schema_org_offer.h"
#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

constexpr std::size_t kMostScripts = 40;
constexpr std::size_t kLongestScript = std::size_t{4} << 20U;
constexpr std::size_t kMostValues = 20;  // assignments of one script that are looked into
constexpr std::size_t kShortestValue = 20;

constexpr auto kNames = std::to_array<std::string_view>(
    {"name", "title", "productName", "product_name", "productTitle"});
constexpr auto kPrices = std::to_array<std::string_view>(
    {"price", "currentPrice", "current_price", "salePrice", "sale_price", "sellingPrice",
     "finalPrice", "final_price", "formattedPrice", "formatted_price"});
constexpr auto kAmounts =
    std::to_array<std::string_view>({"formatted", "formattedValue", "display", "value", "amount"});
constexpr auto kCurrencies = std::to_array<std::string_view>(
    {"currency", "priceCurrency", "currencyCode", "currency_code", "currencyIsoCode"});

template <typename Names>
bool is_one_of(const Names& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

bool is_in_item(const HtmlTree& tree, HtmlId id) {
  for (; id != 0; id = tree[id].parent) {
    if (tree.has(id, "itemscope")) return true;
  }
  return false;
}

/// Prices that were found, as far as they agree.
class OnePrice {
 public:
  void add(std::string text, std::string currency) {
    const auto amount = comparable_amount(text);
    if (!amount) return;
    several_ = several_ || (amount_ && *amount_ != *amount);
    several_ = several_ || (!currency_.empty() && !currency.empty() && currency_ != currency);
    amount_ = amount;
    if (text_.empty()) text_ = std::move(text);
    if (currency_.empty()) currency_ = std::move(currency);
  }
  bool is_certain() const { return amount_ && *amount_ > 0 && !several_; }
  const std::string& text() const { return text_; }
  const std::string& currency() const { return currency_; }

 private:
  std::optional<std::int64_t> amount_;
  std::string text_;
  std::string currency_;
  bool several_ = false;
};

// Behind the bracket that closes the one at `at`, or npos.
std::size_t value_end(std::string_view text, std::size_t at) {
  std::size_t depth = 0;
  for (char quote = 0; at < text.size(); ++at) {
    const char c = text[at];
    if (quote != 0) {
      if (c == '\\') ++at;
      if (c == quote) quote = 0;
    } else if (c == '"' || c == '\'') {
      quote = c;
    } else if (c == '{' || c == '[') {
      ++depth;
    } else if (c == '}' || c == ']') {
      if (--depth == 0) return at + 1;
    }
  }
  return text.npos;
}

// Adds the whole script where it is JSON, else the values it assigns.
void add_values(JsonTree& tree, std::string_view script) {
  const auto begin = script.find_first_not_of(" \t\r\n");
  if (begin == script.npos) return;
  std::size_t at = begin;
  for (std::size_t i = 0; i < kMostValues && at < script.size(); ++i) {
    if (script[at] != '{' && script[at] != '[') {
      const auto equals = script.find('=', at);
      if (equals == script.npos) return;
      at = script.find_first_not_of(" \t\r\n", equals + 1);
      if (at == script.npos) return;
      if (script[at] != '{' && script[at] != '[') continue;
    }
    const std::size_t end = value_end(script, at);
    if (end == script.npos) return;
    if (end - at >= kShortestValue) tree.add(script.substr(at, end - at), 0);
    at = end;
  }
}

class ScriptData {
 public:
  ScriptData(const JsonTree& tree, std::string name) : tree_(tree), name_(std::move(name)) {}

  OnePrice price() const {
    OnePrice found;
    for (JsonId id = 1; id < tree_.size(); ++id) {
      if (tree_[id].kind == JsonKind::object && is_the_product(id)) read(id, found);
    }
    return found;
  }

 private:
  bool is_the_product(JsonId object) const {
    for (JsonId at = tree_[object].first_child; at != 0; at = tree_[at].next) {
      if (tree_[at].kind == JsonKind::text && is_one_of(kNames, tree_[at].key) &&
          folded_text(clean_text(tree_[at].text)) == name_) {
        return true;
      }
    }
    return false;
  }

  void read(JsonId object, OnePrice& found) const {
    const std::string currency = currency_of(object);
    for (JsonId at = tree_[object].first_child; at != 0; at = tree_[at].next) {
      if (!is_one_of(kPrices, tree_[at].key)) continue;
      if (tree_[at].kind != JsonKind::object) {
        add(at, currency, found);
        continue;
      }
      const std::string own = currency_of(at);
      for (JsonId inner = tree_[at].first_child; inner != 0; inner = tree_[inner].next) {
        if (is_one_of(kAmounts, tree_[inner].key)) add(inner, own.empty() ? currency : own, found);
      }
    }
  }

  std::string currency_of(JsonId object) const {
    for (JsonId at = tree_[object].first_child; at != 0; at = tree_[at].next) {
      const bool code = tree_[at].kind == JsonKind::text && tree_[at].text.size() == 3;
      if (code && is_one_of(kCurrencies, tree_[at].key)) return std::string(tree_[at].text);
    }
    return {};
  }

  void add(JsonId value, const std::string& currency, OnePrice& found) const {
    const std::string text = clean_text(tree_[value].text);
    const auto money = find_money(text);
    if (money.size() == 1) {
      return found.add(text, money[0].currency.empty() ? currency : money[0].currency);
    }
    const auto sign = text.find('.');
    const bool plain = text.find_first_not_of("0123456789.") == text.npos && sign != text.npos;
    const std::size_t decimals = plain ? text.size() - sign - 1 : 0;
    if (decimals == 1 || decimals == 2) found.add(plain_number(text), currency);
  }

  const JsonTree& tree_;
  std::string name_;  ///< folded
};

}  // namespace

std::vector<ProductRow> read_loose_properties(const PageView& view) {
  const HtmlTree& tree = view.tree();
  std::map<std::string, std::string, std::less<>> said;
  OnePrice price;
  for (HtmlId id = 1; id < tree.size(); ++id) {
    const auto names = tree.attribute(id, "itemprop");
    if (!names || is_in_item(tree, id)) continue;
    const std::string text = clean_text(element_value(tree, id));
    for (const auto& name : attribute_words(*names)) {
      if (name == "price") price.add(text, "");
      if (!text.empty()) said.emplace(name, text);
    }
  }
  if (!price.is_certain()) return {};
  ProductRow row;
  row.byte = tree[view.heading()].byte;
  row[Field::name] = view.heading_text();
  if (row[Field::name].empty()) row[Field::name] = said["name"];
  if (row[Field::name].empty()) return {};
  row[Field::price] = price.text();
  row[Field::currency] = said["priceCurrency"];
  row[Field::in_stock] = availability_word(said["availability"]);
  row[Field::line_code] = said["sku"];
  return {std::move(row)};
}

std::vector<ProductRow> read_script_data(const PageView& view) {
  const HtmlTree& tree = view.tree();
  const std::string name = view.heading_text();
  JsonTree data;
  std::size_t scripts = 0;
  for (HtmlId id = 1; id < tree.size() && !name.empty() && scripts < kMostScripts; ++id) {
    if (!tree[id].is_text || !tree.is(tree[id].parent, "script")) continue;
    const auto type = tree.attribute(tree[id].parent, "type").value_or("");
    if (type.find("ld+json") != type.npos || tree[id].text.size() > kLongestScript) continue;
    ++scripts;
    add_values(data, tree[id].text);
  }
  const OnePrice price = ScriptData(data, folded_text(name)).price();
  if (!price.is_certain()) return {};
  ProductRow row;
  row.byte = tree[view.heading()].byte;
  row[Field::name] = name;
  row[Field::price] = price.text();
  row[Field::currency] = price.currency();
  return {std::move(row)};
}

}  // namespace rangebook
