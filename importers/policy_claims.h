// What the sentences of a policy claim, field by field, and how claims become terms: claims that
// agree are taken, claims that contradict each other or are in doubt wait for a yes.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/terms_reading.h"

namespace rangebook {

struct PolicyClaim {
  std::string field;  ///< of terms_fields.h, full name
  std::string text;   ///< canonical
  std::string sentence;
  std::uint64_t byte = 0;
  std::string doubt;  ///< why it has to be asked; empty: stated
  bool weak = false;  ///< follows from a name ("next day"); any other claim of the field is better
};

class PolicyClaims {
 public:
  void add(PolicyClaim claim) { claims_.push_back(std::move(claim)); }
  bool speaks_of(std::string_view field) const;
  /// A stated claim of the field, the first; nothing if there is none.
  const PolicyClaim* stated(std::string_view field) const;
  /// Keys of delivery options that have a claim, in order of their first.
  std::vector<std::string> option_keys() const;
  const std::vector<PolicyClaim>& all() const { return claims_; }
  void remove(std::string_view field);
  /// Removes weak claims of the fields that begin so.
  void remove_weak(std::string_view beginning);
  /// Moves the claims of a delivery option to another key.
  void rename_option(std::string_view from, std::string_view to);
  /// Makes claims of a field that fit wait for a yes.
  void doubt(std::string_view field, std::string_view why,
             const std::function<bool(const PolicyClaim&)>& fits);
  /// Adds to the text of the last claim of the field: "30 days", then "from delivery".
  void complete(std::string_view field, std::string_view ending);

  /// `document` goes into the evidence.
  TermsReading resolve(const std::string& document) const;

 private:
  std::vector<PolicyClaim> claims_;
};

}  // namespace rangebook
