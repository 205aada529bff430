// The same facts as in csv_feed.cc, in the nesting that JSON and XML allow.
#include "demo-feeds/shop_feeds.h"

#include <nlohmann/json.hpp>
#include <stdexcept>

#include "demo-feeds/csv_feed.h"
#include "demo-feeds/page_feed.h"
#include "demo-feeds/words.h"

namespace demo {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kNotice = "Invented: no shop, garment or price here is real.";

Json product(const House& house, const Capture& capture, const Style& style) {
  Json colours = Json::array();
  for (const std::string& colour : style.colours) {
    if (style.selling(colour) != style.lowest_selling()) {
      throw std::logic_error("one object cannot hold two prices: " + style.code);
    }
    colours.push_back(spelled(colour, capture.dialect));
  }
  Json sizes = Json::array();
  for (const SizeStep& size : style.sizes) sizes.push_back(label(size));
  Json result{{"line_code", style.code},
              {"name", style.name},
              {"category", department(style.category).wording},
              {"colours", colours},
              {"sizes", sizes},
              {"price", decimal(style.lowest_selling(), '.')}};
  if (!style.sale.empty()) result["full_price"] = decimal(style.full, '.');
  result.update({{"currency", house.currency},
                 {"in_stock", !style.all_gone},
                 {"composition", composition(style.fabric, capture.dialect.wording)},
                 {"description", style.description},
                 {"url", address(house, style)}});
  return result;
}

class Rss {
 public:
  Rss(const House& house, const Capture& capture) : house_(house), capture_(capture) {}

  std::string write() {
    text_ = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<rss version=\"2.0\" xmlns:range=\"urn:" +
            house_.domain + ".example:range\">\n<channel>\n";
    element("title", house_.name + ", " + capture_.season);
    element("link", "https://" + house_.domain + ".example/");
    element("description", kNotice);
    for (const Style& style : capture_.range.styles) item(style);
    return std::move(text_) + "</channel>\n</rss>\n";
  }

 private:
  void element(const std::string& name, const std::string& value) {
    text_ += "<" + name + ">" + escaped(value) + "</" + name + ">\n";
  }

  void item(const Style& style) {
    text_ += "<item>\n";
    element("range:style_code", style.code);
    element("title", style.name);
    element("link", address(house_, style));
    element("description", style.description);
    element("category", department(style.category).wording);
    element("range:composition", composition(style.fabric, capture_.dialect.wording));
    element("range:currency", house_.currency);
    for (const VariantKey& key : style.variants()) variant(style, key);
    text_ += "</item>\n";
  }

  void variant(const Style& style, const VariantKey& key) {
    text_ += "<range:variant>";
    inside("colour", spelled(key.first, capture_.dialect));
    inside("size", label(key.second));
    inside("price", decimal(style.selling(key.first), '.'));
    if (style.sale.contains(key.first)) inside("full_price", decimal(style.full, '.'));
    inside("in_stock", style.in_stock(key) ? "true" : "false");
    inside("gtin", style.gtins.at(key));
    text_ += "</range:variant>\n";
  }

  void inside(const std::string& name, const std::string& value) {
    text_ += "<range:" + name + ">" + escaped(value) + "</range:" + name + ">";
  }

  House house_;
  const Capture& capture_;
  std::string text_;
};

}  // namespace

std::string json_feed(const House& house, const Capture& capture) {
  Json products = Json::array();
  for (const Style& style : capture.range.styles) {
    products.push_back(product(house, capture, style));
  }
  const Json feed{{"notice", kNotice}, {"shop", house.name}, {"products", products}};
  return feed.dump(1) + "\n";
}

std::string xml_feed(const House& house, const Capture& capture) {
  return Rss(house, capture).write();
}

}  // namespace demo
