// The values of scripts first, then the objects that are about the page's product.
#include "importers/script_data.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

#include "importers/html_tag.h"
#include "importers/json_tree.h"
#include "importers/one_price.h"
#include "importers/page_money.h"
#include "importers/schema_org_offer.h"
#include "importers/schema_org_words.h"
#include "importers/size_rows.h"

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
    std::to_array<std::string_view>({"formatted", "formattedValue", "display", "value", "amount",
                                     "current", "now", "selling", "final", "sale"});
constexpr auto kFullPrices = std::to_array<std::string_view>(
    {"originalPrice", "original_price", "listPrice", "list_price", "wasPrice", "was_price",
     "regularPrice", "regular_price", "compareAtPrice", "compare_at_price", "oldPrice", "old_price",
     "fullPrice", "full_price", "rrp", "msrp"});
constexpr auto kFullAmounts = std::to_array<std::string_view>(
    {"original", "was", "old", "list", "regular", "full", "compareAt", "previous", "initial"});
constexpr auto kCurrencies = std::to_array<std::string_view>(
    {"currency", "priceCurrency", "currencyCode", "currency_code", "currencyIsoCode"});
constexpr auto kStock = std::to_array<std::string_view>(
    {"inStock", "in_stock", "isInStock", "available", "isAvailable", "availableForSale",
     "availability", "availabilityStatus", "stockStatus", "stock_status"});
constexpr auto kGone = std::to_array<std::string_view>({"soldOut", "sold_out", "isSoldOut"});
constexpr auto kSizeLists =
    std::to_array<std::string_view>({"sizes", "variants", "skus", "sizeOptions"});
constexpr auto kSizes = std::to_array<std::string_view>(
    {"size", "sizeName", "size_name", "label", "displayName", "name", "title", "value"});
constexpr auto kColours = std::to_array<std::string_view>(
    {"color", "colour", "colorName", "colourName", "color_name", "colour_name"});
constexpr auto kMaterials =
    std::to_array<std::string_view>({"composition", "material", "materials", "fabric"});

template <typename Names>
bool is_one_of(const Names& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

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

/// What the objects about the product say.
struct ScriptFacts {
  std::string name;
  OnePrice price;
  OnePrice full;
  std::string stock;
  std::string colour;
  std::string composition;
  std::vector<VisibleSize> sizes;
};

class ScriptData {
 public:
  ScriptData(const JsonTree& tree, std::vector<std::string> names)
      : tree_(tree), names_(std::move(names)) {}

  ScriptFacts read() const {
    ScriptFacts facts;
    for (JsonId id = 1; id < tree_.size(); ++id) {
      if (tree_[id].kind != JsonKind::object) continue;
      const auto name = name_of(id);
      if (name.empty()) continue;
      if (facts.name.empty()) facts.name = name;
      read_prices(id, facts);
      read_others(id, facts);
    }
    return facts;
  }

 private:
  /// The name, where it is that of the page's product.
  std::string name_of(JsonId object) const {
    for (JsonId at = tree_[object].first_child; at != 0; at = tree_[at].next) {
      if (tree_[at].kind != JsonKind::text || !is_one_of(kNames, tree_[at].key)) continue;
      std::string name = clean_text(tree_[at].text);
      if (is_one_of(names_, folded_text(name))) return name;
    }
    return {};
  }

  void read_prices(JsonId object, ScriptFacts& facts) const {
    const std::string currency = currency_of(object);
    for (JsonId at = tree_[object].first_child; at != 0; at = tree_[at].next) {
      const bool full = is_one_of(kFullPrices, tree_[at].key);
      if (!full && !is_one_of(kPrices, tree_[at].key)) continue;
      if (tree_[at].kind != JsonKind::object) {
        add(at, currency, full ? facts.full : facts.price);
        continue;
      }
      const std::string own = currency_of(at);
      for (JsonId inner = tree_[at].first_child; inner != 0; inner = tree_[inner].next) {
        const std::string& of = own.empty() ? currency : own;
        const bool former = is_one_of(kFullAmounts, tree_[inner].key);
        if (former) add(inner, of, facts.full);
        if (is_one_of(kAmounts, tree_[inner].key)) add(inner, of, full ? facts.full : facts.price);
      }
    }
  }

  void read_others(JsonId object, ScriptFacts& facts) const {
    if (facts.stock.empty()) facts.stock = stock_of(object).value_or("");
    for (JsonId at = tree_[object].first_child; at != 0; at = tree_[at].next) {
      const std::string text = clean_text(tree_[at].text);
      const bool words = tree_[at].kind == JsonKind::text && !text.empty();
      if (words && facts.colour.empty() && is_one_of(kColours, tree_[at].key)) facts.colour = text;
      const bool shares = words && text.find('%') != text.npos;
      if (shares && facts.composition.empty() && is_one_of(kMaterials, tree_[at].key)) {
        facts.composition = text;
      }
      const bool list = tree_[at].kind == JsonKind::array && is_one_of(kSizeLists, tree_[at].key);
      if (list && facts.sizes.empty()) facts.sizes = sizes_of(at);
    }
  }

  /// Every entry must be a size, else the list is one of something else.
  std::vector<VisibleSize> sizes_of(JsonId list) const {
    std::vector<VisibleSize> sizes;
    for (JsonId at = tree_[list].first_child; at != 0; at = tree_[at].next) {
      const bool object = tree_[at].kind == JsonKind::object;
      VisibleSize size{object ? label_of(at) : clean_text(tree_[at].text), false};
      if (!looks_like_size(size.label)) return {};
      size.sold_out = object && stock_of(at) == "OutOfStock";
      const bool known = std::any_of(sizes.begin(), sizes.end(), [&](const VisibleSize& other) {
        return other.label == size.label;
      });
      if (!known) sizes.push_back(std::move(size));
    }
    return sizes;
  }

  std::string label_of(JsonId object) const {
    for (const auto key : kSizes) {
      for (JsonId at = tree_[object].first_child; at != 0; at = tree_[at].next) {
        const bool plain = tree_[at].kind == JsonKind::text || tree_[at].kind == JsonKind::number;
        if (plain && tree_[at].key == key && looks_like_size(clean_text(tree_[at].text))) {
          return clean_text(tree_[at].text);
        }
      }
    }
    return {};
  }

  /// `InStock` or `OutOfStock`, where a truth value or the word of schema.org says so.
  std::optional<std::string> stock_of(JsonId object) const {
    for (JsonId at = tree_[object].first_child; at != 0; at = tree_[at].next) {
      const bool gone = is_one_of(kGone, tree_[at].key);
      if (!gone && !is_one_of(kStock, tree_[at].key)) continue;
      if (tree_[at].kind == JsonKind::boolean) {
        return (tree_[at].text == "true") != gone ? "InStock" : "OutOfStock";
      }
      const std::string word = availability_word(tree_[at].text);
      if (!gone && (word == "InStock" || word == "OutOfStock")) return word;
      if (!gone && word == "SoldOut") return "OutOfStock";
    }
    return std::nullopt;
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
  std::vector<std::string> names_;  ///< folded
};

JsonTree values_of_scripts(const HtmlTree& tree) {
  JsonTree data;
  std::size_t scripts = 0;
  for (HtmlId id = 1; id < tree.size() && scripts < kMostScripts; ++id) {
    if (!tree[id].is_text || !tree.is(tree[id].parent, "script")) continue;
    const auto type = tree.attribute(tree[id].parent, "type").value_or("");
    if (type.find("ld+json") != type.npos || tree[id].text.size() > kLongestScript) continue;
    ++scripts;
    add_values(data, tree[id].text);
  }
  return data;
}

}  // namespace

std::vector<ProductRow> read_script_data(const PageView& view) {
  const std::string heading = folded_text(view.heading_text());
  const auto names = heading.empty() ? view.titles() : std::vector<std::string>{heading};
  if (names.empty()) return {};
  const JsonTree data = values_of_scripts(view.tree());
  ScriptFacts facts = ScriptData(data, names).read();
  if (!facts.price.is_certain()) return {};
  ProductRow row;
  row.byte = view.tree()[view.heading()].byte;
  row[Field::name] = heading.empty() ? facts.name : view.heading_text();
  row[Field::price] = facts.price.text();
  row[Field::currency] = facts.price.currency();
  const bool former = facts.full.is_certain() &&
                      comparable_amount(facts.full.text()) > comparable_amount(facts.price.text());
  if (former) row[Field::full_price] = facts.full.text();
  row[Field::in_stock] = facts.stock;
  row[Field::colour] = facts.colour;
  row[Field::composition] = facts.composition;
  return rows_by_stock(std::move(row), facts.sizes);
}

}  // namespace rangebook
