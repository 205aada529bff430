// Columns in the order of the contract.
#include "reports/snapshot_csv.h"

#include <algorithm>

#include "reports/csv_writer.h"

namespace rangebook {
namespace {

std::string price_text(const LineOffers& line, const std::optional<MinorUnits>& price) {
  return price && line.currency ? decimal_text({*price, *line.currency}) : std::string{};
}

std::string_view stock_text(Stock stock) {
  switch (stock) {
    case Stock::unknown:
      return "";
    case Stock::in_stock:
      return "yes";
    case Stock::sold_out:
      return "no";
  }
  return "";
}

class SnapshotCsv {
 public:
  explicit SnapshotCsv(const Snapshot& snapshot) : snapshot_(snapshot) {
    for (const auto& line : snapshot.lines) {
      if (!line.listing.card.group_id.empty()) last_ = std::max(last_, Field::group_id);
      if (!line.listing.offers.variant_codes.empty()) last_ = std::max(last_, Field::variant_code);
    }
  }

  std::string write() {
    for (std::size_t i = 0; i <= static_cast<std::size_t>(last_); ++i) {
      out_.plain(to_string(static_cast<Field>(i)));
    }
    out_.end_row();
    for (const auto& line : snapshot_.lines) {
      for (std::size_t i = 0; i < line.listing.offers.offers.size(); ++i) {
        write_variant(line.listing, i);
      }
    }
    return out_.take();
  }

 private:
  void write_variant(const Listing& listing, std::size_t i) {
    const auto& [card, detail, line, origin] = listing;
    const Offer& offer = line.offers[i];
    for (const auto* text : {&card.line_code, &card.name, &card.category}) out_.plain(*text);
    out_.plain(line.colours[offer.colour]);
    out_.plain(line.sizes[offer.size]);
    out_.plain(price_text(line, offer.price));
    out_.plain(price_text(line, offer.full_price));
    out_.plain(line.currency ? line.currency->code() : "");
    out_.plain(stock_text(offer.stock));
    for (const auto* text : {&card.composition, &detail.description, &card.url, &detail.image}) {
      out_.plain(*text);
    }
    out_.plain(!line.gtins.empty() && line.gtins[i] ? to_string(*line.gtins[i]) : "");
    if (last_ >= Field::group_id) out_.plain(card.group_id);
    if (last_ >= Field::variant_code) {
      out_.plain(line.variant_codes.empty() ? "" : line.variant_codes[i]);
    }
    out_.end_row();
  }

  const Snapshot& snapshot_;
  Field last_ = Field::gtin;
  CsvWriter out_;
};

}  // namespace

std::string snapshot_csv(const Snapshot& snapshot) { return SnapshotCsv(snapshot).write(); }

}  // namespace rangebook
