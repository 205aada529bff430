// Both begin with the page as the shop sends it (page_feed.h).
#include "demo-feeds/saved_feed.h"

#include <stdexcept>

#include "demo-feeds/csv_feed.h"
#include "demo-feeds/page_feed.h"
#include "demo-feeds/page_markup.h"

namespace demo {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kStyle = "body { font: 16px/1.5 sans-serif; }\n";
constexpr const char* kPicture =
    "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 3 4\"><path d=\"M1 0h1l1 "
    "4H0z\"/></svg>\n";
constexpr const char* kAdvert =
    "<!DOCTYPE html>\n<html><body><h1>Invented advert</h1><p "
    "class=\"price\">9.90</p></body></html>\n";

void insert_behind(std::string& html, const std::string& mark, const std::string& text) {
  const std::size_t at = html.find(mark);
  if (at == std::string::npos) throw std::logic_error("no " + mark + " in the page");
  html.insert(at + mark.size(), text);
}

/// Takes out every element of a name.
void take_out(std::string& html, const std::string& name) {
  const std::string end = "</" + name + ">\n";
  for (auto from = html.find("<" + name); from != std::string::npos;
       from = html.find("<" + name, from)) {
    html.erase(from, html.find(end, from) + end.size() - from);
  }
}

std::string address_comment(const std::string& address) {
  std::string size = std::to_string(address.size());
  size.insert(0, 4 - size.size(), '0');
  return "<!-- saved from url=(" + size + ")" + address + " -->\n";
}

bool is_address(const std::string& text) { return text.starts_with("http"); }

/// JSON-LD said in microdata: the same things and properties, in the same nesting. Recurses as deep
/// as our own documents nest, which is four levels.
std::string microdata(  // NOLINT(misc-no-recursion)
    const Json& value, const std::string& property) {
  const std::string named = property.empty() ? "" : " itemprop=\"" + property + "\"";
  std::string html;
  if (value.is_array()) {
    for (const Json& each : value) html += microdata(each, property);
  } else if (value.is_object()) {
    const std::string type = value.at("@type");
    html = "<div" + named + " itemscope itemtype=\"https://schema.org/" + type + "\">\n";
    for (const auto& [name, inner] : value.items()) {
      if (!name.starts_with('@')) html += microdata(inner, name);
    }
    html += "</div>\n";
  } else {
    const std::string text = value.is_string() ? value.get<std::string>() : value.dump();
    html = is_address(text) ? "<link" + named + " href=\"" + escaped(text) + "\">\n"
                            : "<meta" + named + " content=\"" + escaped(text) + "\">\n";
  }
  return html;
}

/// The thing on the page that is for sale.
Json product_of(const Json& document) {
  return document.contains("@graph") ? document.at("@graph").back() : document;
}

/// RFC 2045, section 6.7, lines ended as in mail.
std::string quoted_printable(const std::string& text) {
  constexpr const char* kDigits = "0123456789ABCDEF";
  std::string out;
  std::size_t column = 0;
  for (const char sign : text) {
    const auto byte = static_cast<unsigned char>(sign);
    if (sign == '\n') {
      out += "\r\n";
      column = 0;
      continue;
    }
    std::string coded(1, sign);
    if (sign == '=' || byte >= 0x7F || byte < 0x20) {
      coded = {'=', kDigits[byte >> 4U], kDigits[byte & 0x0FU]};
    }
    if (column + coded.size() > 75) {
      out += "=\r\n";
      column = 0;
    }
    out += coded;
    column += coded.size();
  }
  return out;
}

std::string part(const std::string& type, const std::string& location, const std::string& text) {
  return "------demo-part----\r\nContent-Type: " + type +
         "\r\nContent-Transfer-Encoding: quoted-printable\r\nContent-Location: " + location +
         "\r\n\r\n" + quoted_printable(text) + "\r\n";
}

}  // namespace

std::map<std::string, std::string> complete_page(const House& house, const Capture& capture,
                                                 const Style& style) {
  const std::string name = style.name + " - " + house.name;
  const std::string folder = name + "_files/";
  std::string html = product_page(house, capture, style);
  take_out(html, "style");
  insert_behind(html, "<!DOCTYPE html>\n", address_comment(address(house, style)));
  insert_behind(html, "<meta charset=\"utf-8\">\n",
                "<link rel=\"stylesheet\" href=\"./" + folder + "shop.css\">\n<script src=\"./" +
                    folder + "basket.js\"></script>\n");
  insert_behind(html, "<main>\n",
                "<img src=\"./" + folder + "front.svg\" alt=\"\">\n<iframe src=\"./" + folder +
                    "saved_resource.html\"></iframe>\n");
  return {{name + ".html", html},
          {folder + "shop.css", kStyle},
          {folder + "basket.js", "window.basket = { items: 0 };\n"},
          {folder + "front.svg", kPicture},
          {folder + "saved_resource.html", kAdvert}};
}

std::string mhtml_page(const House& house, const Capture& capture, const Style& style) {
  const std::string at = address(house, style);
  std::string html = product_page(house, capture, style);
  take_out(html, "script");
  insert_behind(html, "<main>\n", microdata(product_of(product_markup(house, capture, style)), ""));
  return "From: <Saved by the generator of the demo>\r\nSnapshot-Content-Location: " + at +
         "\r\nSubject: " + style.name + " | " + house.name +
         "\r\nMIME-Version: 1.0\r\nContent-Type: multipart/related;\r\n\ttype=\"text/html\";\r\n\t"
         "boundary=\"----demo-part----\"\r\n\r\n\r\n" +
         part("text/html", at, html) + part("image/svg+xml", at + "/front.svg", kPicture) +
         part("text/html", "https://adverts.example/one", kAdvert) + "------demo-part------\r\n";
}

}  // namespace demo
