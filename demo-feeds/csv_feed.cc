// RFC 4180 quoting, with the separators and decimal signs shops really use.
#include "demo-feeds/csv_feed.h"

#include <algorithm>
#include <stdexcept>

#include "demo-feeds/words.h"

namespace demo {
namespace {

std::string lower(std::string text) {
  for (char& c : text) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return text;
}

class Table {
 public:
  explicit Table(const Dialect& dialect) : dialect_(dialect) {
    if (dialect.byte_order_mark) text_ = "\xEF\xBB\xBF";
  }
  void row(const std::vector<std::string>& cells) {
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (i > 0) text_ += dialect_.separator;
      text_ += quoted(cells[i]);
    }
    text_ += "\r\n";
  }
  std::string take() { return std::move(text_); }

 private:
  std::string quoted(const std::string& cell) const {
    if (cell.find_first_of(std::string{dialect_.separator, '"', '\n'}) == std::string::npos) {
      return cell;
    }
    std::string text = "\"";
    for (const char c : cell) text += c == '"' ? std::string("\"\"") : std::string(1, c);
    return text + "\"";
  }

  Dialect dialect_;
  std::string text_;
};

/// `8-20` where every step is there, else `8|10|14`.
std::string size_cell(const Style& style) {
  const SizeStep first = *style.sizes.begin();
  const SizeStep last = *style.sizes.rbegin();
  if (style.sizes.size() > 2 &&
      style.sizes == run(first.system, first.fit, first.rank, last.rank)) {
    return label(first) + "-" + label(last);
  }
  std::string cell;
  for (const SizeStep& size : style.sizes) cell += (cell.empty() ? "" : "|") + label(size);
  return cell;
}

class Feed {
 public:
  Feed(const House& house, const Dialect& dialect) : house_(house), dialect_(dialect) {
    std::vector<std::string> header{"line_code", "name",        "category",    "colour",
                                    "size",      "price",       "full_price",  "currency",
                                    "in_stock",  "composition", "description", "url"};
    if (dialect.variant_columns) header.push_back("gtin");
    rows_.push_back(header);
  }
  void style(const Style& style) {
    if (!dialect_.row_per_variant) return whole_line(style);
    for (const VariantKey& key : style.variants()) variant(style, key);
  }
  std::vector<std::vector<std::string>> take() { return std::move(rows_); }

 private:
  void variant(const Style& style, const VariantKey& key) {
    std::vector<std::string> cells =
        row(style, spelled(key.first, dialect_), label(key.second), style.in_stock(key));
    prices(style, key.first, cells);
    if (dialect_.variant_columns) cells.push_back(style.gtins.at(key));
    rows_.push_back(cells);
  }
  void whole_line(const Style& style) {
    std::string colours;
    for (const std::string& colour : style.colours) {
      if (style.selling(colour) != style.lowest_selling()) {
        throw std::logic_error("one row cannot hold two prices: " + style.code);
      }
      colours += (colours.empty() ? "" : "|") + spelled(colour, dialect_);
    }
    std::vector<std::string> cells = row(style, colours, size_cell(style), !style.all_gone);
    prices(style, style.colours.front(), cells);
    rows_.push_back(cells);
  }
  /// All cells of a row but the two prices.
  std::vector<std::string> row(const Style& style, const std::string& colour,
                               const std::string& size, bool in_stock) const {
    return {style.code,
            style.name,
            department(style.category).wording,
            colour,
            size,
            "",
            "",
            house_.currency,
            in_stock ? dialect_.in_stock : dialect_.sold_out,
            composition(style.fabric, dialect_.wording),
            style.description,
            address(house_, style)};
  }
  void prices(const Style& style, const std::string& colour,
              std::vector<std::string>& cells) const {
    cells[5] = decimal(style.selling(colour), dialect_.decimal_sign);
    if (style.sale.contains(colour)) cells[6] = decimal(style.full, dialect_.decimal_sign);
  }

  House house_;
  Dialect dialect_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace

std::string address(const House& house, const Style& style) {
  return "https://" + house.domain + ".example/women/" + style.category + "/" + lower(style.code);
}

std::string spelled(const std::string& colour, const Dialect& dialect) {
  std::string text = colour;
  const std::size_t grey = text.find("Grey");
  if (dialect.american_grey && grey != std::string::npos) text.replace(grey, 4, "Gray");
  return text;
}

std::vector<std::vector<std::string>> table_rows(const House& house, const Capture& capture) {
  Feed feed(house, capture.dialect);
  for (const Style& style : capture.range.styles) {
    if (!capture.as_pages.contains(style.category)) feed.style(style);
  }
  for (Style style : capture.nameless) {
    style.name.clear();
    feed.style(style);
  }
  return feed.take();
}

std::string csv_feed(const House& house, const Capture& capture) {
  Table table(capture.dialect);
  for (const auto& cells : table_rows(house, capture)) table.row(cells);
  return table.take();
}

}  // namespace demo
