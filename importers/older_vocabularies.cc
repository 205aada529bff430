// Terms are renamed first; then each kind of thing is put together as schema.org has it.
#include "importers/older_vocabularies.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string_view>
#include <utility>

#include "importers/html_tag.h"
#include "importers/json_ld.h"
#include "schema/embedded.h"

namespace rangebook {
namespace {

/// A chain of breadcrumbs, and of goods inside an offer, is followed up to here.
constexpr std::size_t kMaxChain = 64;

struct Vocabulary {
  std::string_view address;
  std::string_view name;  ///< in the table
};

constexpr auto kVocabularies =
    std::to_array<Vocabulary>({{"://purl.org/goodrelations/v1#", "gr"},
                               {"://www.purl.org/goodrelations/v1#", "gr"},
                               {"://rdf.data-vocabulary.org/#", "v"},
                               {"://rdf.data-vocabulary.org/", "v"},
                               {"://data-vocabulary.org/", "v"},
                               {"://www.data-vocabulary.org/", "v"},
                               {"://www.w3.org/2000/01/rdf-schema#", "rdfs"},
                               {"://xmlns.com/foaf/0.1/", "foaf"},
                               {"://purl.org/dc/terms/", "dc"},
                               {"://purl.org/dc/elements/1.1/", "dc"}});

// Facts of an offer that pages state on the product instead.
constexpr auto kOfferFacts = std::to_array<std::string_view>(
    {"price", "priceCurrency", "priceSpecification", "availability", "inventoryLevel"});
// What names the goods where only the offer is described.
constexpr auto kGoodsFacts =
    std::to_array<std::string_view>({"name", "description", "image", "url", "category", "color"});
constexpr auto kGoodsCodes =
    std::to_array<std::string_view>({"sku", "mpn", "gtin", "gtin8", "gtin12", "gtin13", "gtin14"});

std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), ascii_lower);
  return out;
}

/// "gr:hasCurrency" in lower case, without its address; the vocabulary alone in `first`.
std::pair<std::string_view, std::string_view> split_name(std::string_view name) {
  const auto colon = name.find("://");
  if (colon == name.npos || !name.starts_with("http")) return {};
  for (const auto& vocabulary : kVocabularies) {
    if (!name.substr(colon).starts_with(vocabulary.address)) continue;
    std::string_view term = name.substr(colon + vocabulary.address.size());
    if (term.ends_with('/')) term.remove_suffix(1);
    return {vocabulary.name, term};
  }
  return {};
}

const std::map<std::string, std::string_view>& terms() {
  static const auto known = [] {
    std::map<std::string, std::string_view> out;
    for (const auto& row : table_rows("tables/older_vocabularies.tsv")) {
      out.emplace(std::string(row[0]) + ":" + lower(row[1]), row[2]);
    }
    return out;
  }();
  return known;
}

std::string_view term_of(std::string_view vocabulary, std::string_view term) {
  const auto found = terms().find(std::string(vocabulary) + ":" + lower(term));
  return found == terms().end() ? std::string_view{} : found->second;
}

bool has(const MarkupValue& value, std::string_view name) {
  return std::any_of(value.names.begin(), value.names.end(),
                     [&](const auto& known) { return schema_org_name(known) == name; });
}

const MarkupValue* value_of(const MarkupItem& item, std::string_view name) {
  const auto found = std::find_if(item.values.begin(), item.values.end(),
                                  [&](const MarkupValue& value) { return has(value, name); });
  return found == item.values.end() ? nullptr : &*found;
}

bool is_a(const MarkupItem& item, std::string_view type) {
  return std::any_of(item.types.begin(), item.types.end(),
                     [&](const auto& known) { return schema_org_name(known) == type; });
}

bool is_offer(const MarkupItem& item) {
  return is_a(item, "Offer") || is_a(item, "AggregateOffer");
}
bool is_goods(const MarkupItem& item) {
  return is_a(item, "Product") || is_a(item, "SomeProducts") || is_a(item, "IndividualProduct") ||
         is_a(item, "ProductModel");
}

class Translator {
 public:
  explicit Translator(MarkupItems items) : items_(std::move(items)) {}

  MarkupItems run() {
    for (auto& item : items_) rename(item);
    if (!translated_) return std::move(items_);
    join_goods();
    join_lone_offer();
    note_offered();
    const std::size_t stated = items_.size();
    for (std::size_t i = 0; i < stated; ++i) name_goods(i);
    for (std::size_t i = 0; i < stated; ++i) move_offer_facts(i);
    list_breadcrumbs();
    return std::move(items_);
  }

 private:
  void rename(MarkupItem& item);
  void rename_value(std::string_view vocabulary, MarkupValue& value);
  void join_goods();
  void join_lone_offer();
  void name_goods(std::size_t offer);
  void move_offer_facts(std::size_t goods);
  void list_breadcrumbs();
  void note_offered();
  std::optional<std::size_t> goods_in(std::size_t offer) const;
  void copy_missing(std::size_t from, std::size_t to, std::string_view name);
  std::optional<std::size_t> add_item(std::string_view type, std::size_t beside);

  MarkupItems items_;
  bool translated_ = false;
  std::set<std::size_t> offered_;                      ///< the offers that some product has
  std::multimap<std::size_t, std::size_t> offers_of_;  ///< of goods, from either side
};

void Translator::rename(MarkupItem& item) {
  std::string_view vocabulary;
  for (auto& type : item.types) {
    const auto [of, term] = split_name(type);
    const auto known = term_of(of, term);
    if (known.empty()) continue;
    translated_ = true;
    vocabulary = of;
    type = known;
  }
  for (auto& value : item.values) rename_value(vocabulary, value);
}

// `identifier` says what it is in its text: "sku:4711".
void Translator::rename_value(std::string_view vocabulary, MarkupValue& value) {
  for (auto& name : value.names) {
    auto [of, term] = split_name(name);
    if (of.empty() && name.find(':') == name.npos) {
      of = vocabulary;
      term = name;
    }
    const auto colon = value.text.find(':');
    const bool typed = colon != value.text.npos && equals_ignoring_case(term, "identifier");
    const std::string whole =
        typed ? "identifier:" + value.text.substr(0, colon) : std::string(term);
    const auto known = term_of(of, whole);
    if (known.empty()) continue;
    if (typed) value.text.erase(0, colon + 1);
    name = known;
  }
}

std::optional<std::size_t> Translator::add_item(std::string_view type, std::size_t beside) {
  if (items_.size() >= kMaxItems) return std::nullopt;
  MarkupItem item;
  item.types = {std::string(type)};
  item.byte = items_[beside].byte;
  items_.push_back(std::move(item));
  return items_.size() - 1;
}

// The goods of an offer, also behind a node that says how many of them there are.
std::optional<std::size_t> Translator::goods_in(std::size_t offer) const {
  std::optional<std::size_t> at = offer;
  for (std::size_t step = 0; at && step < 3; ++step) {
    std::optional<std::size_t> next;
    for (const std::string_view name : {"itemOffered", "includesObject", "typeOfGood"}) {
      const MarkupValue* value = value_of(items_[*at], name);
      if (value != nullptr && value->item && !next) next = value->item;
    }
    if (next && is_goods(items_[*next])) return next;
    at = next;
  }
  return std::nullopt;
}

void Translator::join_goods() {
  for (std::size_t i = 0; i < items_.size(); ++i) {
    if (!is_offer(items_[i]) || value_of(items_[i], "includesObject") == nullptr) continue;
    const auto goods = goods_in(i);
    if (goods) items_[i].values.push_back({.names = {"itemOffered"}, .text = {}, .item = goods});
  }
}

void Translator::note_offered() {
  for (std::size_t i = 0; i < items_.size(); ++i) {
    if (is_offer(items_[i])) {
      if (const auto goods = goods_in(i)) offers_of_.emplace(*goods, i);
    }
    if (!is_goods(items_[i])) continue;
    for (const auto& value : items_[i].values) {
      if (!value.item || !has(value, "offers")) continue;
      offered_.insert(*value.item);
      offers_of_.emplace(i, *value.item);
    }
  }
}

// A page of one product and one offer, which do not name each other, means one of the other.
void Translator::join_lone_offer() {
  std::vector<std::size_t> goods;
  std::vector<std::size_t> offers;
  for (std::size_t i = 0; i < items_.size(); ++i) {
    if (is_goods(items_[i])) goods.push_back(i);
    if (is_offer(items_[i])) offers.push_back(i);
  }
  if (goods.size() != 1 || offers.size() != 1 || goods_in(offers.front())) return;
  if (value_of(items_[goods.front()], "offers") != nullptr) return;
  items_[goods.front()].values.push_back({.names = {"offers"}, .text = {}, .item = offers.front()});
}

// An offer that is all a page describes names what it sells.
void Translator::name_goods(std::size_t offer) {
  if (!is_offer(items_[offer]) || offered_.contains(offer)) return;
  auto goods = goods_in(offer);
  if (!goods) {
    const MarkupValue* named = value_of(items_[offer], "itemOffered");
    const bool text = named != nullptr && !named->item && !named->text.empty();
    if (!text && value_of(items_[offer], "name") == nullptr) return;
    const std::string words = text ? named->text : "";
    goods = add_item("Product", offer);
    if (!goods) return;
    if (text) items_[*goods].values.push_back({.names = {"name"}, .text = words, .item = {}});
    items_[*goods].values.push_back({.names = {"offers"}, .text = {}, .item = offer});
    for (const auto name : kGoodsCodes) copy_missing(offer, *goods, name);
  }
  for (const auto name : kGoodsFacts) copy_missing(offer, *goods, name);
}

void Translator::copy_missing(std::size_t from, std::size_t to, std::string_view name) {
  if (value_of(items_[to], name) != nullptr) return;
  std::vector<MarkupValue> found;
  for (const auto& value : items_[from].values) {
    if (!has(value, name)) continue;
    found.push_back(value);
    found.back().names = {std::string(name)};
  }
  auto& values = items_[to].values;
  values.insert(values.end(), found.begin(), found.end());
}

void Translator::move_offer_facts(std::size_t goods) {
  if (!is_goods(items_[goods])) return;
  const bool stated = std::any_of(kOfferFacts.begin(), kOfferFacts.end(), [&](auto name) {
    return value_of(items_[goods], name) != nullptr;
  });
  if (!stated) return;
  std::vector<std::size_t> offers;
  const auto [from, to] = offers_of_.equal_range(goods);
  for (auto at = from; at != to; ++at) offers.push_back(at->second);
  if (offers.empty()) {
    const auto offer = add_item("Offer", goods);
    if (!offer) return;
    offers.push_back(*offer);
    items_[goods].values.push_back({.names = {"offers"}, .text = {}, .item = offer});
  }
  for (const std::size_t offer : offers) {
    const bool priced = value_of(items_[offer], "price") != nullptr ||
                        value_of(items_[offer], "priceSpecification") != nullptr ||
                        value_of(items_[offer], "lowPrice") != nullptr;
    for (const auto name : kOfferFacts) {
      if (!(priced && name.starts_with("price") && name != "priceCurrency")) {
        copy_missing(goods, offer, name);
      }
    }
  }
}

// Crumbs stand in a chain by `child`, or one beside the other. Of several chains the first counts.
void Translator::list_breadcrumbs() {
  std::vector<std::size_t> trail;
  std::set<std::size_t> children;
  for (const auto& item : items_) {
    const MarkupValue* child = is_a(item, "Breadcrumb") ? value_of(item, "child") : nullptr;
    if (child != nullptr && child->item) children.insert(*child->item);
  }
  for (std::size_t i = 0; i < items_.size() && trail.size() < kMaxChain; ++i) {
    if (!is_a(items_[i], "Breadcrumb") || children.contains(i)) continue;
    if (!trail.empty() && !children.empty()) break;
    for (std::optional<std::size_t> at = i; at && trail.size() < kMaxChain;) {
      trail.push_back(*at);
      const MarkupValue* child = value_of(items_[*at], "child");
      at = child != nullptr ? child->item : std::nullopt;
    }
  }
  if (trail.empty()) return;
  for (const std::size_t crumb : trail) {
    std::erase_if(items_[crumb].values,
                  [](const MarkupValue& value) { return has(value, "child"); });
  }
  const auto list = add_item("BreadcrumbList", trail.front());
  if (!list) return;
  for (const std::size_t crumb : trail) {
    items_[*list].values.push_back({.names = {"itemListElement"}, .text = {}, .item = crumb});
  }
}

}  // namespace

MarkupItems in_schema_org_terms(MarkupItems items) { return Translator(std::move(items)).run(); }

}  // namespace rangebook
