// The stylist's desk for terms: reading them, answering doubts, what holds on a day, and what an
// order costs across shops. The same functions serve the command line and pages.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "schema/order.h"
#include "schema/terms_fields.h"
#include "tracker/app/pipeline.h"
#include "tracker/store/book.h"
#include "tracker/store/terms_store.h"

namespace rangebook {

/// No policy is larger; bytes of one document.
inline constexpr std::uint64_t kMaxTermsDocument = std::uint64_t{16} << 20U;

/// A shop by its slug, or a sentence with the nearest one.
std::variant<ShopRecord, NotThere> find_shop(const Book& book, const std::string& slug);

/// What files say of terms: policies as saved pages or texts, tables of `field,value`, and the
/// text form of schema/FORMAT.md.
struct ReadTerms {
  TermsReading reading;
  std::vector<TermsDocument> documents;
  std::vector<std::string> faults;  ///< sentences: file, line, what is wrong, how to fix it
};
/// Of documents at hand.
ReadTerms read_terms_documents(std::vector<TermsDocument> documents, const Shop& shop, Day on);
/// Throws Error when a file cannot be read.
ReadTerms read_terms_files(const std::vector<std::string>& files, const Shop& shop, Day on);

/// `field=value` as typed; a sentence for the first one that is wrong.
std::variant<std::vector<TermsValue>, std::string> typed_fields(
    const std::vector<std::string>& assignments, std::optional<Currency> home);

/// Days on which nobody works, from a text with one ISO 8601 date a line (`#` starts a remark); a
/// sentence for the first line that is none.
std::variant<Holidays, std::string> read_holidays(const std::string& path);

/// The order at each of the shops, by the terms in force on `on`. No shops: all of the book that
/// have terms.
std::variant<OrderComparison, NotThere> compare_terms(const Book& book,
                                                      const std::vector<std::string>& shops,
                                                      const Order& order, Day on,
                                                      const Holidays& holidays);

/// What changed in a shop's terms from version to version.
std::vector<TermsStep> terms_timeline(const Book& book, const ShopRecord& shop);

}  // namespace rangebook
