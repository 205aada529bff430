// Cards and details: texts one after the other. Offers: labels, then one column a fact.
#include "tracker/store/line_codec.h"

#include <xxhash.h>

#include "tracker/store/varint.h"

namespace rangebook {
namespace {

constexpr std::uint64_t kMaxStoredVariants = 1'000'000;  // far above kMaxVariants: damage

// Flags of a version of offers.
constexpr unsigned kFullGrid = 1;  // every colour in every size: places need not be listed
constexpr unsigned kHasGtins = 2;
constexpr unsigned kHasCodes = 4;

void put_labels(std::string& out, const std::vector<std::string>& labels) {
  put_varint(out, labels.size());
  for (const auto& label : labels) put_text(out, label);
}

std::vector<std::string> read_labels(ByteReader& in) {
  std::vector<std::string> labels(in.count());
  for (auto& label : labels) label = in.text();
  return labels;
}

std::uint64_t place_of(const Offer& offer, std::size_t sizes) {
  return std::uint64_t{offer.colour} * sizes + offer.size;
}

bool is_full_grid(const LineOffers& line) {
  return line.offers.size() == line.colours.size() * line.sizes.size();
}

void put_places(std::string& out, const LineOffers& line) {
  std::uint64_t next = 0;
  for (const auto& offer : line.offers) {
    const std::uint64_t place = place_of(offer, line.sizes.size());
    put_varint(out, place - next);
    next = place + 1;
  }
}

/// 0 is "not stated"; a price p is p + 1. Prices are never negative.
std::uint64_t price_code(const OptionalPrice& price) {
  return price ? static_cast<std::uint64_t>(*price) + 1 : 0;
}
OptionalPrice price_of(std::uint64_t code) {
  return code == 0 ? OptionalPrice{} : OptionalPrice(static_cast<MinorUnits>(code - 1));
}

/// Runs of equal prices: most lines have one price.
template <typename Member>
void put_prices(std::string& out, const std::vector<Offer>& offers, Member member) {
  for (std::size_t i = 0; i < offers.size();) {
    std::size_t end = i + 1;
    while (end < offers.size() && offers[end].*member == offers[i].*member) ++end;
    put_varint(out, end - i);
    put_varint(out, price_code(offers[i].*member));
    i = end;
  }
}

template <typename Member>
void read_prices(ByteReader& in, std::vector<Offer>& offers, Member member) {
  for (std::size_t i = 0; i < offers.size() && !in.failed();) {
    const std::uint64_t run = in.varint();
    const auto price = price_of(in.varint());
    if (run == 0 || run > offers.size() - i) {
      in.bytes(in.left() + 1);  // damaged: mark as failed
      return;
    }
    for (const std::size_t end = i + run; i < end; ++i) offers[i].*member = price;
  }
}

void put_stocks(std::string& out, const std::vector<Offer>& offers) {
  for (std::size_t i = 0; i < offers.size(); i += 4) {
    unsigned four = 0;
    for (std::size_t k = 0; k < 4 && i + k < offers.size(); ++k) {
      four |= static_cast<unsigned>(offers[i + k].stock) << (2 * k);
    }
    out.push_back(static_cast<char>(static_cast<unsigned char>(four)));
  }
}

void read_stocks(ByteReader& in, std::vector<Offer>& offers) {
  for (std::size_t i = 0; i < offers.size(); i += 4) {
    const unsigned four = in.byte();
    for (std::size_t k = 0; k < 4 && i + k < offers.size(); ++k) {
      offers[i + k].stock = static_cast<Stock>(((four >> (2 * k)) & 3U) % 3U);
    }
  }
}

void read_places(ByteReader& in, LineOffers& line, bool full_grid) {
  const std::size_t sizes = line.sizes.size();
  std::uint64_t next = 0;
  for (auto& offer : line.offers) {
    const std::uint64_t place = next + (full_grid ? 0 : in.varint());
    if (sizes == 0 || place / sizes >= line.colours.size()) {
      in.bytes(in.left() + 1);
      return;
    }
    offer.colour = static_cast<std::uint16_t>(place / sizes);
    offer.size = static_cast<std::uint16_t>(place % sizes);
    next = place + 1;
  }
}

void put_gtins(std::string& out, const std::vector<OptionalGtin>& gtins) {
  std::int64_t last = 0;
  for (const auto& gtin : gtins) {
    const auto value = gtin ? static_cast<std::int64_t>((*gtin).value()) : 0;
    put_varint(out, zigzag(value - last));
    last = value;
  }
}

void read_gtins(ByteReader& in, std::vector<OptionalGtin>& gtins) {
  std::uint64_t last = 0;
  for (auto& gtin : gtins) {
    last += static_cast<std::uint64_t>(in.signed_varint());
    if (last != 0) gtin = Gtin::from_value(last);
  }
}

// What a delta says of one offer.
constexpr unsigned kStock = 1;
constexpr unsigned kPrice = 2;
constexpr unsigned kFullPrice = 4;
constexpr unsigned kDeltaFlagBits = 3;

void put_offer_delta(std::string& out, std::uint64_t gap, const Offer& from, const Offer& to) {
  unsigned flags = 0;
  if (from.stock != to.stock) flags |= kStock;
  if (from.price != to.price) flags |= kPrice;
  if (from.full_price != to.full_price) flags |= kFullPrice;
  put_varint(out, (gap << kDeltaFlagBits) | flags);
  if ((flags & kStock) != 0) put_varint(out, static_cast<std::uint64_t>(to.stock));
  const auto put_change = [&](const auto& before, const auto& after) {
    put_varint(out, zigzag(static_cast<std::int64_t>(price_code(after) - price_code(before))));
  };
  if ((flags & kPrice) != 0) put_change(from.price, to.price);
  if ((flags & kFullPrice) != 0) put_change(from.full_price, to.full_price);
}

bool same_variants(const LineOffers& a, const LineOffers& b) {
  const auto same_place = [](const Offer& x, const Offer& y) {
    return x.colour == y.colour && x.size == y.size;
  };
  return a.currency == b.currency && a.colours == b.colours && a.sizes == b.sizes &&
         a.gtins == b.gtins && a.variant_codes == b.variant_codes &&
         std::equal(a.offers.begin(), a.offers.end(), b.offers.begin(), b.offers.end(), same_place);
}

}  // namespace

std::string_view to_string(Part part) {
  switch (part) {
    case Part::card:
      return "card";
    case Part::detail:
      return "detail";
    case Part::offers:
      return "offers";
  }
  return {};
}

void encode(const LineCard& card, std::string& out) {
  for (const auto* text : {&card.line_code, &card.group_id, &card.name, &card.category,
                           &card.composition, &card.url}) {
    put_text(out, *text);
  }
}

void encode(const LineDetail& detail, std::string& out) {
  put_text(out, detail.description);
  put_text(out, detail.image);
}

void encode(const LineOffers& line, std::string& out) {
  put_text(out, line.currency ? line.currency->code() : std::string_view{});
  put_labels(out, line.colours);
  put_labels(out, line.sizes);
  put_varint(out, line.offers.size());
  const unsigned flags = (is_full_grid(line) ? kFullGrid : 0U) |
                         (line.gtins.empty() ? 0U : kHasGtins) |
                         (line.variant_codes.empty() ? 0U : kHasCodes);
  out.push_back(static_cast<char>(static_cast<unsigned char>(flags)));
  if ((flags & kFullGrid) == 0) put_places(out, line);
  put_stocks(out, line.offers);
  put_prices(out, line.offers, &Offer::price);
  put_prices(out, line.offers, &Offer::full_price);
  put_gtins(out, line.gtins);
  for (const auto& code : line.variant_codes) put_text(out, code);
}

std::optional<LineCard> decode_card(std::string_view bytes) {
  ByteReader in(bytes);
  LineCard card;
  for (auto* text : {&card.line_code, &card.group_id, &card.name, &card.category, &card.composition,
                     &card.url}) {
    *text = in.text();
  }
  if (in.failed() || !in.at_end()) return std::nullopt;
  return card;
}

std::optional<LineDetail> decode_detail(std::string_view bytes) {
  ByteReader in(bytes);
  LineDetail detail;
  detail.description = in.text();
  detail.image = in.text();
  if (in.failed() || !in.at_end()) return std::nullopt;
  return detail;
}

std::optional<LineOffers> decode_offers(std::string_view bytes) {
  ByteReader in(bytes);
  LineOffers line;
  const std::string_view currency = in.text();
  line.currency = Currency::from_code(currency);
  line.colours = read_labels(in);
  line.sizes = read_labels(in);
  const std::uint64_t count = in.varint();
  const unsigned flags = in.byte();
  if (in.failed() || count > kMaxStoredVariants) return std::nullopt;
  line.offers.resize(count);
  read_places(in, line, (flags & kFullGrid) != 0);
  read_stocks(in, line.offers);
  read_prices(in, line.offers, &Offer::price);
  read_prices(in, line.offers, &Offer::full_price);
  if ((flags & kHasGtins) != 0) line.gtins.resize(count);
  read_gtins(in, line.gtins);
  if ((flags & kHasCodes) != 0) line.variant_codes.resize(count);
  for (auto& code : line.variant_codes) code = in.text();
  if (in.failed() || !in.at_end() || line.currency.has_value() == currency.empty()) {
    return std::nullopt;
  }
  return line;
}

std::optional<std::string> encode_offers_delta(const LineOffers& base, const LineOffers& target) {
  if (!same_variants(base, target)) return std::nullopt;
  std::string out;
  std::size_t next = 0;
  for (std::size_t i = 0; i < base.offers.size(); ++i) {
    if (base.offers[i] == target.offers[i]) continue;
    put_offer_delta(out, i - next, base.offers[i], target.offers[i]);
    next = i + 1;
  }
  return out;
}

bool apply_offers_delta(std::string_view delta, LineOffers& line) {
  ByteReader in(delta);
  std::uint64_t next = 0;
  const auto change = [&](OptionalPrice& price) {
    price = price_of(price_code(price) + static_cast<std::uint64_t>(in.signed_varint()));
  };
  while (!in.at_end()) {
    const std::uint64_t head = in.varint();
    const std::uint64_t index = next + (head >> kDeltaFlagBits);
    if (in.failed() || index >= line.offers.size()) return false;
    Offer& offer = line.offers[index];
    if ((head & kStock) != 0) offer.stock = static_cast<Stock>(in.varint() % 3U);
    if ((head & kPrice) != 0) change(offer.price);
    if ((head & kFullPrice) != 0) change(offer.full_price);
    next = index + 1;
  }
  return !in.failed();
}

std::uint64_t content_hash(std::string_view bytes) {
  return XXH3_64bits(bytes.data(), bytes.size());
}

}  // namespace rangebook
