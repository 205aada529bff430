// Everything known of which line is which in one shop, and the references by which the stylist
// names lines and pairs.
#pragma once

#include <map>
#include <memory>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "schema/identity.h"
#include "schema/link_case.h"
#include "tracker/identity/roll.h"
#include "tracker/store/book.h"
#include "tracker/store/roll_reader.h"

namespace rangebook {

/// The lines of one shop through all its captures. Not to be copied: what reads lines points in.
class ShopLines {
 public:
  /// The book must outlive it. A shop the book does not have has no lines.
  ShopLines(const Book& book, const std::string& shop);
  ShopLines(const ShopLines&) = delete;
  ShopLines& operator=(const ShopLines&) = delete;

  const Book& book() const { return book_; }
  const Roll& roll() const { return roll_; }
  /// Worked out when first asked for.
  const Identities& identities();
  StoredLines& source() { return source_; }
  /// Whether the capture at this place shows a line kept under the code.
  bool has_code(std::uint32_t capture, std::string_view code);
  /// Counts a decision among those of the roll, in place of an earlier one about the pair.
  void add_decision(const LinkDecision& decision);

  /// `then` and `now` in the order of the captures; ids are those of the store.
  LineGlimpse glimpse(SightingAt at);
  /// Of a line of the store as it was seen on a day; by its key alone when no capture has it.
  LineGlimpse glimpse(LineId line, Day on);

  /// Long references (tracker/reference.h). The same in every book with the same lines.
  std::string line_reference(const LineIdentity& line);
  std::string pair_reference(const LinkDecision& about);

 private:
  const std::string& key_of(LineId line);

  const Book& book_;
  Roll roll_;
  StoredLines source_;
  std::unique_ptr<Identities> identities_;
  std::map<LineId, std::string> keys_;
  std::map<std::uint32_t, std::set<std::string>> codes_;  // keys of the lines of a capture
  std::map<SightingAt, LineGlimpse> glimpses_;
};

/// The decision a question is about.
LinkDecision decision_of(const Roll& roll, const FoundLink& question, bool same);

/// Why a decision cannot stand, in sentences; empty when it can.
std::string objection_to(ShopLines& lines, const LinkDecision& proposed);

}  // namespace rangebook
