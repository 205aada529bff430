// Markup in several honest spellings of the same facts.
#include "demo-feeds/page_markup.h"

#include <algorithm>
#include <array>

#include "demo-feeds/csv_feed.h"
#include "demo-feeds/words.h"

namespace demo {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kContext = "https://schema.org";

/// `price` as text with two places, as text without them, as a number.
Json price_value(Minor amount, int spelling) {
  if (spelling % 3 == 0) return decimal(amount, '.');
  if (spelling % 3 == 1 && amount % 100 == 0) return std::to_string(amount / 100);
  if (amount % 100 == 0) return amount / 100;
  return static_cast<double>(amount) / 100.0;
}

std::string availability(bool in_stock, int spelling) {
  constexpr std::array<const char*, 4> kHere{"https://schema.org/InStock", "InStock",
                                             "http://schema.org/InStock",
                                             "https://schema.org/LimitedAvailability"};
  constexpr std::array<const char*, 4> kGone{"https://schema.org/OutOfStock", "OutOfStock",
                                             "http://schema.org/OutOfStock",
                                             "https://schema.org/SoldOut"};
  return (in_stock ? kHere : kGone).at(static_cast<std::size_t>(spelling % 4));
}

class Markup {
 public:
  Markup(const House& house, const Capture& capture, const Style& style)
      : house_(house),
        style_(style),
        dialect_(capture.dialect),
        spelling_(style.uid + (capture.season.back() - '0')) {}

  Json document() const {
    if (style_.sizes.begin()->system == System::one_size) return with_context(nested_offers());
    if (spelling_ % 4 == 1) return graph();
    return with_context(group());
  }

 private:
  Json with_context(const Json& thing) const {
    Json result = Json::object({{"@context", kContext}});
    result.update(thing);
    return result;
  }

  Json common(const char* type) const {
    return {{"@type", type},
            {"name", style_.name},
            {"description", style_.description},
            {"url", address(house_, style_)},
            {"image", Json::array({address(house_, style_) + "/front.jpg"})},
            {"brand", {{"@type", "Brand"}, {"name", house_.name}}},
            {"material", composition(style_.fabric, dialect_.wording)},
            {"category", department(style_.category).wording}};
  }

  Json graph() const {
    Json crumbs = Json::array();
    int position = 0;
    for (const std::string& name : {std::string("Home"), std::string("Women"),
                                    department(style_.category).wording, style_.name}) {
      crumbs.push_back({{"@type", "ListItem"}, {"position", ++position}, {"name", name}});
    }
    const Json shop{{"@type", "OnlineStore"}, {"name", house_.name}};
    const Json trail{{"@type", "BreadcrumbList"}, {"itemListElement", crumbs}};
    return {{"@context", kContext}, {"@graph", Json::array({shop, trail, group()})}};
  }

  Json group() const {
    Json thing = common("ProductGroup");
    thing["productGroupID"] = style_.code;
    thing["variesBy"] = {"https://schema.org/color", "https://schema.org/size"};
    Json variants = Json::array();
    for (const VariantKey& key : style_.variants()) {
      Json variant = article(key);
      variant["offers"] = offer(key);
      variants.push_back(std::move(variant));
    }
    thing["hasVariant"] = std::move(variants);
    return thing;
  }

  Json nested_offers() const {
    Json thing = common("Product");
    thing["sku"] = style_.code;
    Json offers = Json::array();
    for (const VariantKey& key : style_.variants()) {
      Json nested = offer(key);
      nested["itemOffered"] = article(key);
      offers.push_back(std::move(nested));
    }
    thing["offers"] = {{"@type", "AggregateOffer"},
                       {"priceCurrency", house_.currency},
                       {"lowPrice", price_value(style_.lowest_selling(), spelling_)},
                       {"highPrice", price_value(style_.full, spelling_)},
                       {"offerCount", offers.size()},
                       {"offers", offers}};
    return thing;
  }

  Json article(const VariantKey& key) const {
    const std::string& gtin = style_.gtins.at(key);
    Json thing{{"@type", "Product"},
               {"sku", style_.code + "-" + gtin.substr(gtin.size() - 5)},
               {"gtin13", gtin},
               {"color", spelled(key.first, dialect_)}};
    if (spelling_ % 5 == 2) {
      thing["size"] = {{"@type", "SizeSpecification"},
                       {"name", label(key.second)},
                       {"sizeSystem", "https://schema.org/WearableSizeSystemUK"}};
    } else {
      thing["size"] = label(key.second);
    }
    return thing;
  }

  Json offer(const VariantKey& key) const {
    Json thing{{"@type", "Offer"},
               {"price", price_value(style_.selling(key.first), spelling_)},
               {"priceCurrency", house_.currency},
               {"availability", availability(style_.in_stock(key), spelling_ / 2)}};
    if (style_.sale.contains(key.first)) {
      thing["priceSpecification"] = {{"@type", "UnitPriceSpecification"},
                                     {"priceType", "https://schema.org/StrikethroughPrice"},
                                     {"price", price_value(style_.full, spelling_)},
                                     {"priceCurrency", house_.currency}};
    }
    return thing;
  }

  House house_;
  const Style& style_;
  Dialect dialect_;
  int spelling_;
};

}  // namespace

nlohmann::ordered_json product_markup(const House& house, const Capture& capture,
                                      const Style& style) {
  return Markup(house, capture, style).document();
}

}  // namespace demo
