// Rows, lists and decimals of a table.
#include "tests/evaluate/write_rows.h"

namespace rangebook::evaluate {
namespace {

using Row = std::map<std::string, std::string>;

const std::vector<std::string> kColumns = {
    "line_code", "name",     "category",    "colour",      "size", "price", "full_price",
    "currency",  "in_stock", "composition", "description", "url",  "image"};

std::string decimal(const Shop& shop, Amount amount) {
  Amount unit = 1;
  for (int i = 0; i < shop.digits; ++i) unit *= 10;
  std::string text = std::to_string(amount / unit);
  if (shop.digits == 0) return text;
  std::string rest = std::to_string(amount % unit);
  rest.insert(0, static_cast<std::size_t>(shop.digits) - rest.size(), '0');
  return text + shop.decimal_sign + rest;
}
std::string quoted(const std::string& text, char separator) {
  if (text.find_first_of(std::string("\"\r\n") + separator) == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + "\"";
}
std::string size_list(const Shop& shop, const std::set<SizeStep>& sizes) {
  std::string text;
  for (const SizeStep step : sizes) text += (text.empty() ? "" : "|") + shop.label(step);
  return text;
}

class Writer {
 public:
  explicit Writer(const Shop& shop) : shop_(shop) {
    for (const std::string& column : kColumns) {
      if (shop.columns.contains(column)) columns_.push_back(column);
    }
    for (const std::string& column : columns_)
      text_ += column + (column == columns_.back() ? '\n' : shop.separator);
  }
  void line(const Line& line) {
    Row row = common(line);
    if (shop_.layout == Layout::row_a_line) {
      for (const Colourway& colour : line.colours)
        row["colour"] += (row["colour"].empty() ? "" : "|") + colour.name;
      offer(line, line.colours[0], size_list(shop_, line.colours[0].sizes), row);
      row["in_stock"] = sold_out(line.colours[0]) ? "no" : "yes";
      return put(row);
    }
    for (const Colourway& colour : line.colours) colourway(line, colour, row);
  }
  std::string take() { return std::move(text_); }

 private:
  static Row common(const Line& line) {
    return {{"line_code", line.code},
            {"name", line.name},
            {"category", line.category_words},
            {"composition", line.composition},
            {"description", line.description},
            {"url", line.url},
            {"image", line.image}};
  }
  static bool sold_out(const Colourway& colour) {
    return !colour.sizes.empty() && colour.sold_out.size() == colour.sizes.size();
  }
  void offer(const Line& line, const Colourway& colour, const std::string& sizes, Row& row) const {
    row["size"] = sizes;
    row["currency"] = shop_.currency;
    row["price"] = line.refused ? "on request" : decimal(shop_, colour.price);
    row["full_price"] = colour.full_price ? decimal(shop_, *colour.full_price) : "";
  }
  void colourway(const Line& line, const Colourway& colour, Row& row) {
    row["colour"] = colour.name;
    if (shop_.layout == Layout::row_a_colour) {
      offer(line, colour, size_list(shop_, colour.sizes), row);
      row["in_stock"] = sold_out(colour) ? "no" : "yes";
      return put(row);
    }
    for (const SizeStep step : colour.sizes) {
      offer(line, colour, shop_.label(step), row);
      row["in_stock"] = colour.sold_out.contains(step) ? "no" : "yes";
      put(row);
    }
  }
  void put(Row& row) {
    for (const std::string& column : columns_)
      text_ += quoted(row[column], shop_.separator) +
               (column == columns_.back() ? '\n' : shop_.separator);
  }

  const Shop& shop_;
  std::vector<std::string> columns_;
  std::string text_;
};

}  // namespace

std::string csv_of(const Shop& shop, const Capture& capture) {
  Writer writer(shop);
  for (const Line& line : capture.lines) writer.line(line);
  return writer.take();
}

}  // namespace rangebook::evaluate
