// Shared by the history of a line and by picks, so that both say the same.
#include "reports/seen_line.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "reports/wording.h"

namespace rangebook {
namespace {

void write_span(JsonWriter& json, std::string_view name, const std::optional<PriceSpan>& prices) {
  json.key(name);
  if (!prices) return json.null();
  json.begin_object();
  json.member("low_minor", prices->low.minor);
  json.member("high_minor", prices->high.minor);
  json.member("currency", prices->low.currency.code());
  json.end_object();
}

void write_sizes(JsonWriter& json, const std::vector<SizeFact>& facts) {
  json.key("sizes");
  json.begin_array();
  for (const SizeFact& fact : facts) {
    json.begin_object();
    json.member("system", to_string(fact.system));
    json.member("fit", to_string(fact.fit));
    write_strings(json, "labels", fact.labels);
    json.member("min", fact.min);
    json.member("max", fact.max);
    json.end_object();
  }
  json.end_array();
}

}  // namespace

std::string span_words(const PriceSpan& span) {
  return span.low == span.high
             ? money_words(span.low)
             : fmt::format("{} to {}", money_words(span.low), money_words(span.high));
}

std::string sizes_words(const SeenLine& line) {
  std::string words;
  for (const SizeFact& fact : line.sizes) {
    words += (words.empty() ? "" : "; ") + size_range_words(fact);
  }
  for (const auto& label : line.unranked) words += (words.empty() ? "" : ", ") + label;
  return words;
}

std::string colours_words(const SeenLine& line) {
  return fmt::format("{}", fmt::join(line.colours, ", "));
}

void write_strings(JsonWriter& json, std::string_view key, const std::vector<std::string>& texts) {
  json.key(key);
  json.begin_array();
  for (const auto& text : texts) json.value(text);
  json.end_array();
}

void write_seen_line(JsonWriter& json, const SeenLine& seen) {
  json.begin_object();
  json.member("code", seen.card.line_code);
  json.member("group_id", seen.card.group_id);
  json.member("name", seen.card.name);
  json.member("category", seen.category);
  json.member("category_text", seen.card.category);
  json.member("composition", seen.card.composition);
  json.member("url", seen.card.url);
  write_span(json, "price", seen.price);
  write_span(json, "full_price", seen.full_price);
  json.member("variants", seen.variants);
  json.member("marked_down", seen.marked_down);
  json.member("in_stock", seen.stock.in_stock);
  json.member("stock_stated", seen.stock.offered);
  write_strings(json, "colours", seen.colours);
  write_sizes(json, seen.sizes);
  write_strings(json, "unranked_sizes", seen.unranked);
  json.member("document", seen.seen.document);
  json.key("line");
  seen.seen.line ? json.value(*seen.seen.line) : json.null();
  json.end_object();
}

}  // namespace rangebook
