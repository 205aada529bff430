// Row by row: texts of the line, then its variants. The hot path of an import: nothing is
// allocated for a row that repeats the texts of the row before.
#include "tracker/normaliser.h"

#include <fmt/format.h>

#include <utility>

#include "tracker/colour_parser.h"
#include "tracker/composition_parser.h"
#include "tracker/size_parser.h"

namespace rangebook {
namespace {

std::string_view cut(std::string_view text) { return text.substr(0, kExcerptBytes); }

void fill(std::string& text, std::string_view cell) {
  if (text.empty() && !cell.empty()) text = cell;
}

/// Prices in two currencies, a size range and a colour list in one cell: what a row stands for.
bool is_list(std::string_view colours) { return colours.find_first_of("|;") != colours.npos; }

}  // namespace

Normaliser::KeptRow::KeptRow(const RawRow& row) : origin(row.origin) {
  for (std::size_t i = 0; i < kFieldCount; ++i) cells[i] = row.cells[i];
}

RawRow Normaliser::KeptRow::view() const {
  RawRow row;
  for (std::size_t i = 0; i < kFieldCount; ++i) row.cells[i] = cells[i];
  row.origin = origin;
  return row;
}

std::optional<KeyedListing> Normaliser::add(const RawRow& row) {
  const bool continues = continues_line(row);
  if (row[Field::name].empty() && !(continues && !line_.so_far().card.name.empty())) {
    reject(row, RejectionKind::missing_name, Refused::row, Field::name, "The row has no name.",
           "Give the line's name as the shop writes it.");
    return std::nullopt;
  }
  std::optional<KeyedListing> done;
  if (!continues) done = start_line(row);
  take(row);
  return done;
}

bool Normaliser::continues_line(const RawRow& row) const {
  if (key_.empty()) return false;
  const LineCard& card = line_.so_far().card;
  if (!row[Field::line_code].empty()) return row[Field::line_code] == card.line_code;
  if (!card.line_code.empty()) return false;
  if (!row[Field::group_id].empty()) return row[Field::group_id] == card.group_id;
  if (!row[Field::url].empty()) return row[Field::url] == card.url;
  const bool one_row_a_line = row[Field::colour].empty() && row[Field::size].empty();
  return !one_row_a_line && card.group_id.empty() && card.url.empty() &&
         row[Field::name] == card.name;
}

/// Completes the line so far and begins the one this row belongs to.
std::optional<KeyedListing> Normaliser::start_line(const RawRow& row) {
  auto done = complete();
  line_.clear();
  line_.card().line_code = row[Field::line_code];
  line_.card().group_id = row[Field::group_id];
  line_.card().url = row[Field::url];
  line_.card().name = row[Field::name];
  line_.origin() = row.origin;
  key_ = line_key(line_.so_far().card);
  if (key_.starts_with("name:") && row[Field::colour].empty() && row[Field::size].empty()) {
    const std::size_t count = ++nameless_[key_];
    if (count > 1) key_ += fmt::format("#{}", count);
  }
  return done;
}

std::optional<KeyedListing> Normaliser::complete() {
  if (line_.empty()) return std::nullopt;
  return KeyedListing{key_, line_.build()};
}

void Normaliser::take(const RawRow& row) {
  Reading reading;
  if (!read(row, reading)) return;
  take_texts(row);
  take_variants(row, reading);
}

void Normaliser::take_texts(const RawRow& row) {
  LineCard& card = line_.card();
  const bool other_name =
      !card.name.empty() && !row[Field::name].empty() && row[Field::name] != card.name;
  if (other_name) {
    reject(row, RejectionKind::conflicting_rows, Refused::cell, Field::name,
           fmt::format("The line {} is called \"{}\" here and \"{}\" in an earlier row.",
                       card.line_code, cut(row[Field::name]), cut(card.name)),
           "Give all rows of a line the same name, or two lines two codes.");
  }
  fill(card.name, row[Field::name]);
  fill(card.group_id, row[Field::group_id]);
  fill(card.category, row[Field::category]);
  fill(card.url, row[Field::url]);
  if (card.composition.empty() && !row[Field::composition].empty()) {
    card.composition = row[Field::composition];
    check_composition(row);
  }
  fill(line_.detail().description, row[Field::description]);
  fill(line_.detail().image, row[Field::image]);
}

void Normaliser::check_composition(const RawRow& row) {
  const auto composition = parse_composition(row[Field::composition]);
  if (!composition) return;
  for (const auto& part : composition->parts) {
    if (part.sums_to_100()) continue;
    reject(row, RejectionKind::bad_composition, Refused::nothing, Field::composition,
           fmt::format("The shares of \"{}\" do not sum to 100.", cut(row[Field::composition])),
           "Check the label; the text is kept as it stands.");
    return;
  }
}

void Normaliser::take_variants(const RawRow& row, const Reading& reading) {
  const std::string_view colour_cell = row[Field::colour];
  const auto colours =
      is_list(colour_cell) ? split_colours(colour_cell) : std::vector<std::string>{};
  const std::size_t colour_count = colours.empty() ? 1 : colours.size();
  const std::size_t size_count = reading.sizes ? reading.sizes->size() : 1;
  const bool single = colour_count * size_count == 1;
  for (std::size_t c = 0; c < colour_count; ++c) {
    for (std::size_t s = 0; s < size_count; ++s) {
      VariantFacts facts;
      facts.colour = colours.empty() ? colour_cell : std::string_view(colours[c]);
      facts.size = reading.sizes ? std::string_view((*reading.sizes)[s]) : row[Field::size];
      facts.stock = reading.stock;
      facts.price = reading.price;
      facts.full_price = reading.full_price;
      if (single) facts.gtin = reading.gtin;
      if (single) facts.variant_code = row[Field::variant_code];
      report(row, line_.add(facts, reading.currency), facts);
    }
  }
  if (!single && reading.gtin) {
    reject(row, RejectionKind::bad_gtin, Refused::cell, Field::gtin,
           fmt::format("One GTIN for {} variants.", colour_count * size_count),
           "A GTIN names one colour in one size: give each its own row.");
  }
}

void Normaliser::report(const RawRow& row, ListingBuilder::Outcome outcome,
                        const VariantFacts& facts) {
  switch (outcome) {
    case ListingBuilder::Outcome::added:
    case ListingBuilder::Outcome::merged:
      return;
    case ListingBuilder::Outcome::conflict:
      reject(row, RejectionKind::conflicting_rows, Refused::row, Field::size,
             fmt::format("Colour \"{}\", size \"{}\" stands twice, with different facts.",
                         cut(facts.colour), cut(facts.size)),
             "Keep the right row and delete the other.");
      return;
    case ListingBuilder::Outcome::other_currency:
      reject(row, RejectionKind::bad_currency, Refused::row, Field::currency,
             fmt::format("The line has prices in {} and here in another currency.",
                         line_.so_far().offers.currency->code()),
             "Give all prices of a line in one currency.");
      return;
    case ListingBuilder::Outcome::too_many:
      reject(row, RejectionKind::over_limit, Refused::row, Field::line_code,
             fmt::format("The line has more than {} variants.", kMaxVariants),
             "Check the line codes: does one code stand for many styles?");
      return;
  }
}

std::vector<KeyedListing> Normaliser::finish() {
  std::vector<KeyedListing> done;
  if (auto last = complete()) done.push_back(std::move(*last));
  finishing_ = true;
  for (const auto& kept : std::exchange(kept_, {})) {
    key_.clear();
    start_line(kept.view());
    take(kept.view());
    if (auto listing = complete()) done.push_back(std::move(*listing));
  }
  return done;
}

std::vector<Rejection> Normaliser::take_rejections() { return std::exchange(rejections_, {}); }

Rejection& Normaliser::reject(const RawRow& row, RejectionKind kind, Refused refused, Field field,
                              std::string what, std::string how_to_fix) {
  auto& rejection = rejections_.emplace_back();
  rejection.document = row.origin.document;
  rejection.line = row.origin.line;
  rejection.byte = row.origin.byte;
  rejection.field = to_string(field);
  rejection.kind = kind;
  rejection.refused = refused;
  rejection.what = std::move(what);
  rejection.how_to_fix = std::move(how_to_fix);
  rejection.excerpt = cut(row[field]);
  rejection.line_code = cut(row[Field::line_code]);
  rejection.name = cut(row[Field::name]);
  return rejection;
}

}  // namespace rangebook
