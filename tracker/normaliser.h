// The normaliser: raw rows in, listings and rejections out. Rows that follow each other and belong
// to the same line become one listing; the store joins those that stand apart.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "schema/capture.h"
#include "schema/raw_row.h"
#include "schema/rejection.h"
#include "tracker/listing_builder.h"
#include "tracker/money_parser.h"

namespace rangebook {

/// A listing with the exact evidence its line is known by in the book: the line code, else the
/// group id, else the address, else the name.
struct KeyedListing {
  std::string key;
  Listing listing;
};

/// Works on one document. Same rows, same result.
class Normaliser {
 public:
  /// `shop` gives the home currency and what bare size numbers mean. It must outlive this.
  /// `decimal` is the decimal sign the user says the document has; nothing: the prices tell it.
  explicit Normaliser(const Shop& shop, std::optional<char> decimal = std::nullopt)
      : shop_(shop), stated_decimal_(decimal) {}

  /// Takes a row. Returns the listing that is complete because this row starts another line.
  std::optional<KeyedListing> add(const RawRow& row);
  /// Ends the document: the listings still open, and the rows whose price could be read only
  /// after the other rows had settled the decimal sign.
  std::vector<KeyedListing> finish();
  /// The rejections since the last call, in the order of the rows.
  std::vector<Rejection> take_rejections();
  /// The decimal sign as stated, else as the prices so far prove it; nothing while they prove none,
  /// or both.
  std::optional<char> decimal_sign() const;

 private:
  /// What the cells of one row say, beside the texts of the line.
  struct Reading {
    std::optional<Currency> currency;
    std::optional<MinorUnits> price;
    std::optional<MinorUnits> full_price;
    Stock stock = Stock::unknown;
    std::optional<Gtin> gtin;
    const std::vector<std::string>* sizes = nullptr;  ///< null: one size, as the cell says
  };
  /// A row with text of its own, for those that wait for the end of the document.
  struct KeptRow {
    std::array<std::string, kFieldCount> cells;
    Origin origin;

    explicit KeptRow(const RawRow& row);
    RawRow view() const;
  };

  std::optional<KeyedListing> start_line(const RawRow& row);
  bool continues_line(const RawRow& row) const;
  std::optional<KeyedListing> complete();
  void take(const RawRow& row);
  void take_texts(const RawRow& row);
  void check_composition(const RawRow& row);
  void take_variants(const RawRow& row, const Reading& reading);
  void report(const RawRow& row, ListingBuilder::Outcome outcome, const VariantFacts& facts);
  bool read(const RawRow& row, Reading& reading);
  bool read_currency(const RawRow& row, Reading& reading);
  bool read_price(const RawRow& row, Field field, Reading& reading,
                  std::optional<MinorUnits>& price);
  void refuse_price(const RawRow& row, Field field, const MoneyProblem& problem);
  bool waits_for_decimal_sign(const RawRow& row, const MoneyProblem& problem);
  void read_stock(const RawRow& row, Reading& reading);
  void read_gtin(const RawRow& row, Reading& reading);
  bool read_sizes(const RawRow& row, Reading& reading);
  void learn_decimal_sign(std::string_view text);
  Rejection& reject(const RawRow& row, RejectionKind kind, Refused refused, Field field,
                    std::string what, std::string how_to_fix);

  const Shop& shop_;
  std::optional<char> stated_decimal_;
  ListingBuilder line_;
  std::string key_;
  std::string last_price_;  ///< text the decimal sign was last looked for in
  std::vector<Rejection> rejections_;
  std::vector<KeptRow> kept_;  ///< rows with an ambiguous price, for finish()
  bool finishing_ = false;
  std::array<bool, 2> proven_{};  ///< '.' and ',' seen as decimal sign beyond doubt
  std::unordered_map<std::string, std::vector<std::string>> size_cells_;
  std::unordered_map<std::string, std::size_t> nameless_;  ///< lines known by name alone
};

/// The key of a line: `code:..`, `group:..`, `url:..` or `name:..`; empty when nothing is stated.
std::string line_key(const LineCard& card);

/// Availability as shops, spreadsheets and schema.org write it; nothing when not understood.
/// A quantity is in stock from 1 on. To be ordered but not to be had now is `unknown`.
std::optional<Stock> parse_stock(std::string_view text);

}  // namespace rangebook
