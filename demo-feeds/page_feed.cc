// Page furniture around the markup.
#include "demo-feeds/page_feed.h"

#include <algorithm>
#include <set>

#include "demo-feeds/csv_feed.h"
#include "demo-feeds/page_markup.h"
#include "demo-feeds/words.h"

namespace demo {
namespace {

constexpr const char* kNotice =
    "Invented demonstration page: this shop, its goods, prices and texts do not exist.";

constexpr const char* kStyleSheet =
    "<style>body{font:16px/1.5 sans-serif;margin:0}nav a{padding:.5em}.price s{color:#767676}"
    ".sizes option[disabled]{color:#999}footer{background:#eee;padding:1em}</style>\n";

class Page {
 public:
  Page(const House& house, const Capture& capture, const Style& style)
      : house_(house), capture_(capture), style_(style) {}

  std::string write() {
    head();
    header();
    body();
    others();
    footer();
    return std::move(html_);
  }

 private:
  std::string shown(Minor amount) const {
    return (house_.currency == "GBP" ? "\xC2\xA3" : "\xE2\x82\xAC") + decimal(amount, '.');
  }
  std::string wording() const { return escaped(department(style_.category).wording); }

  void head() {
    html_ =
        "<!DOCTYPE html>\n<!-- " + std::string(kNotice) + " -->\n<html lang=\"en-GB\">\n<head>\n";
    html_ += "<meta charset=\"utf-8\">\n<title>" + escaped(style_.name) + " | " +
             escaped(house_.name) + "</title>\n";
    html_ += "<link rel=\"canonical\" href=\"" + address(house_, style_) + "\">\n";
    html_ += "<meta name=\"description\" content=\"" + escaped(style_.description) + "\">\n";
    html_ += kStyleSheet;
    html_ += "<script>window.basket={items:0,open:\"<div>\"};</script>\n";
    html_ += "<script type=\"application/ld+json\">\n" +
             product_markup(house_, capture_, style_).dump() + "\n</script>\n</head>\n";
  }

  void header() {
    html_ += "<body>\n<header><nav aria-label=\"Departments\">";
    for (const Department& each : departments()) {
      html_ += "<a href=\"/women/" + each.slug + "\">" + escaped(each.wording) + "</a> ";
    }
    html_ +=
        "</nav></header>\n<main>\n<ol class=\"crumbs\"><li><a href=\"/\">Home</a></li><li>"
        "<a href=\"/women\">Women</a></li><li>" +
        wording() + "</li></ol>\n";
  }

  void body() {
    html_ += "<h1>" + escaped(style_.name) + "</h1>\n";
    price();
    html_ += "<fieldset><legend>Colour</legend>";
    for (const std::string& colour : style_.colours) {
      const std::string text = escaped(spelled(colour, capture_.dialect));
      html_ += "<label><input type=\"radio\" name=\"colour\">" + text + "</label> ";
    }
    html_ += "</fieldset>\n<select class=\"sizes\" aria-label=\"Size\">";
    for (const SizeStep& size : style_.sizes) {
      html_ +=
          "<option" + std::string(anywhere(size) ? ">" : " disabled>") + label(size) + "</option>";
    }
    html_ += "</select>\n<button type=\"button\">Add to basket</button>\n<p>" +
             escaped(style_.description) + "</p>\n<h2>Fabric and care</h2>\n<p>" +
             composition(style_.fabric, capture_.dialect.wording) +
             ". Follow the label.</p>\n<p>Code: " + style_.code + "</p>\n";
  }

  bool anywhere(const SizeStep& size) const {
    return std::ranges::any_of(style_.colours, [&](const std::string& colour) {
      return style_.in_stock({colour, size});
    });
  }

  void price() {
    html_ += "<p class=\"price\">" + shown(style_.lowest_selling());
    if (!style_.sale.empty()) html_ += " <s>" + shown(style_.full) + "</s>";
    html_ += "</p>\n";
    if (style_.all_gone) html_ += "<p>Sold out</p>\n";
  }

  /// Prices of other styles in the visible text: a reader of markup must not take them.
  void others() {
    html_ += "<aside><h2>Worn with</h2><ul>";
    int left = 3;
    for (const Style& other : capture_.range.styles) {
      if (other.category == style_.category || left == 0) continue;
      --left;
      html_ += "<li>" + escaped(other.name) + ", " + shown(other.lowest_selling()) + "</li>";
    }
    html_ += "</ul></aside>\n</main>\n";
  }

  void footer() {
    html_ += "<footer><p>";
    html_ += capture_.season == "AW25"
                 ? "Delivery " + shown(395) + ", free over " + shown(5000) +
                       ". Send back within 28 days, free of charge."
                 : "Delivery " + shown(495) + ", free over " + shown(7500) +
                       ". Send back within 14 days; collection costs " + shown(250) + ".";
    html_ += "</p><p>" + std::string(kNotice) + "</p></footer>\n</body>\n</html>\n";
  }

  House house_;
  const Capture& capture_;
  const Style& style_;
  std::string html_;
};

}  // namespace

std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '&') {
      out += "&amp;";
    } else if (c == '<') {
      out += "&lt;";
    } else if (c == '"') {
      out += "&quot;";
    } else {
      out += c;
    }
  }
  return out;
}

std::string product_page(const House& house, const Capture& capture, const Style& style) {
  return Page(house, capture, style).write();
}

}  // namespace demo
