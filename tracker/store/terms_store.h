// Terms in the book: one version a day and shop, its fields with the sentences they came from, and
// the readings that wait for an answer.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "schema/terms_fields.h"
#include "schema/terms_reading.h"
#include "schema/terms_version.h"
#include "tracker/store/book.h"

namespace rangebook {

/// What was observed on one day.
struct TermsVersion {
  Day on{};
  Terms terms;
};

/// A reading that waits for a yes.
struct OpenDoubt {
  std::int64_t id = 0;  ///< what the stylist types
  Day on{};
  TermsDoubt reading;
};

/// A document that terms were read from.
struct TermsDocument {
  std::string name;
  std::string bytes;
};

/// What became of a reading.
struct TermsOutcome {
  std::size_t added = 0;    ///< fields that the day did not have
  std::size_t changed = 0;  ///< typed anew
  std::size_t same = 0;
  std::size_t doubts = 0;  ///< that wait, those of this reading
};

/// Adds what was read on `on` to the terms of that day, in one transaction. A field that the day
/// has with another value stays, and the new one becomes a doubt. A doubt that was answered is not
/// asked again.
TermsOutcome keep_terms(Book& book, const ShopRecord& shop, Day on, const TermsReading& reading,
                        const std::vector<TermsDocument>& documents);

/// Sets typed fields on `on`. A day without terms of its own starts from those in force. `fields`
/// are checked by the caller; an empty text makes a field "not stated".
TermsOutcome type_terms(Book& book, const ShopRecord& shop, Day on,
                        const std::vector<TermsValue>& fields);

/// All days with terms, in order.
std::vector<TermsVersion> terms_versions(const Book& book, const ShopRecord& shop);

/// A text that stays as it is while the terms of the shop do.
std::string terms_state(const Book& book, std::string_view slug);

/// The terms as of `on`: of delivery and of returns the latest version that speaks of it.
TermsInForce terms_in_force(const Book& book, const ShopRecord& shop, Day on);
/// Of each of the shops, in their order.
std::vector<TermsInForce> terms_in_force(const Book& book, std::span<const ShopRecord> shops,
                                         Day on);
/// The same from versions at hand.
TermsInForce terms_in_force(const Shop& shop, const std::vector<TermsVersion>& versions, Day on);

/// What waits, by day, then in the order of the documents.
std::vector<OpenDoubt> open_doubts(const Book& book, const ShopRecord& shop);

/// Answers a doubt: yes makes the value the field's. False when there is no such open doubt of the
/// shop.
bool answer_doubt(Book& book, const ShopRecord& shop, std::int64_t doubt, bool yes);

}  // namespace rangebook
