// A tiny language for snapshots, so that tests read like a range:
//
//   AB1 | Maya Dress | Dresses | navy, ecru | 8, 10, 12 | 50 | in | 100% cotton
//     : ecru 12 40/50 out
//
// Code, name, category, colours, sizes, price, stock, composition; cells at the end may be left out
// and `-` is "not stated". A line that starts with `:` changes one variant: colour, size, price,
// stock. Prices are whole euros, `40/50` is 40 marked down from 50. Spaces in labels are written
// `_`.
#pragma once

#include <algorithm>
#include <charconv>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "schema/snapshot.h"

namespace rangebook::testing {

inline std::string_view stripped(std::string_view text) {
  while (text.starts_with(' ')) text.remove_prefix(1);
  while (text.ends_with(' ')) text.remove_suffix(1);
  return text;
}

/// The parts of `text` between separators, stripped; none for an empty text or `-`.
inline std::vector<std::string> parts_of(std::string_view text, char separator) {
  std::vector<std::string> parts;
  text = stripped(text);
  if (text.empty() || text == "-") return parts;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find(separator, at), text.size());
    std::string part(stripped(text.substr(at, end - at)));
    if (!part.empty() || separator != ' ') parts.push_back(part == "-" ? "" : part);
    at = end + 1;
  }
  return parts;
}

inline std::optional<MinorUnits> euros(std::string_view text) {
  if (text.empty()) return std::nullopt;
  MinorUnits amount = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), amount);
  if (read.ptr != text.data() + text.size()) throw std::runtime_error("bad price in a test");
  return amount * 100;
}

inline void set_price(Offer& offer, std::string_view text) {
  const std::size_t slash = std::min(text.find('/'), text.size());
  offer.price = euros(text.substr(0, slash));
  offer.full_price = slash < text.size() ? euros(text.substr(slash + 1)) : std::nullopt;
}

inline void set_stock(Offer& offer, std::string_view word) {
  offer.stock = word == "in" ? Stock::in_stock : word == "out" ? Stock::sold_out : Stock::unknown;
}

/// Labels in canonical order; a single empty one where none is stated.
inline std::vector<std::string> labels_of(std::string_view cell) {
  std::vector<std::string> labels = parts_of(cell, ',');
  for (std::string& label : labels) std::replace(label.begin(), label.end(), '_', ' ');
  std::sort(labels.begin(), labels.end());
  return labels.empty() ? std::vector<std::string>{""} : labels;
}

inline LineState line_of(std::string_view row) {
  std::vector<std::string> cells = parts_of(row, '|');
  cells.resize(8);
  LineState line;
  line.listing.card = {cells[0], {}, cells[1], cells[2], cells[7], {}};
  LineOffers& offers = line.listing.offers;
  offers.currency = Currency::from_code("EUR");
  offers.colours = labels_of(cells[3]);
  offers.sizes = labels_of(cells[4]);
  for (std::size_t colour = 0; colour < offers.colours.size(); ++colour) {
    for (std::size_t size = 0; size < offers.sizes.size(); ++size) {
      Offer offer;
      offer.colour = static_cast<std::uint16_t>(colour);
      offer.size = static_cast<std::uint16_t>(size);
      set_price(offer, cells[5]);
      set_stock(offer, cells[6]);
      offers.offers.push_back(offer);
    }
  }
  return line;
}

inline std::size_t index_of(const std::vector<std::string>& labels, std::string label) {
  std::replace(label.begin(), label.end(), '_', ' ');
  const auto found = std::find(labels.begin(), labels.end(), label);
  if (found == labels.end()) throw std::runtime_error("no such label in a test: " + label);
  return static_cast<std::size_t>(found - labels.begin());
}

inline void change_variant(LineOffers& offers, std::string_view row) {
  std::vector<std::string> words = parts_of(row, ' ');
  words.resize(4);
  const std::size_t colour = index_of(offers.colours, words[0]);
  Offer& offer = offers.offers[colour * offers.sizes.size() + index_of(offers.sizes, words[1])];
  set_price(offer, words[2]);
  set_stock(offer, words[3]);
}

/// A snapshot of the whole range, with ids from 1 in the order written.
inline Snapshot range(std::string_view season, std::string_view text) {
  Snapshot snapshot;
  snapshot.shop.slug = "demo";
  snapshot.shop.sizes = SizeSystem::uk;
  snapshot.capture.id = season == "AW25" ? 1 : 2;
  snapshot.capture.shop = "demo";
  snapshot.capture.season = season;
  snapshot.capture.on =
      date::sys_days(date::year(2025) / 9 / 1) + date::days(365) * (snapshot.capture.id - 1);
  snapshot.capture.documents.push_back({std::string(season) + ".csv", {}, 0, "csv", {}});
  std::uint64_t row_number = 0;
  for (std::string& row : parts_of(text, '\n')) {
    ++row_number;
    if (row.empty()) continue;
    if (row.starts_with(':')) {
      change_variant(snapshot.lines.back().listing.offers, row.substr(1));
      continue;
    }
    snapshot.lines.push_back(line_of(row));
    snapshot.lines.back().id = static_cast<LineId>(snapshot.lines.size());
    snapshot.lines.back().listing.origin = {0, row_number, 0};
  }
  return snapshot;
}

/// The same lines, seen with a scope of these categories.
inline Snapshot within(Snapshot snapshot, std::vector<std::string> categories) {
  snapshot.capture.scope = {Scope::Kind::categories, std::move(categories)};
  return snapshot;
}

inline Snapshot picks(Snapshot snapshot) {
  snapshot.capture.scope = {Scope::Kind::picks, {}};
  return snapshot;
}

}  // namespace rangebook::testing
