// Claims are grouped by field; a group with one meaning is taken.
#include "importers/policy_claims.h"

#include <algorithm>
#include <map>

#include "schema/terms_fields.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using Group = std::vector<const PolicyClaim*>;

/// "28 days" and "28 days from delivery" do not contradict each other: the fuller one is meant.
bool fits_into(std::string_view plain, std::string_view full) {
  return full.starts_with(plain) && full.substr(plain.size()).starts_with(" from ");
}

bool agree(std::string_view a, std::string_view b) {
  return a == b || fits_into(a, b) || fits_into(b, a);
}

/// The fullest of the claims, if all agree.
const PolicyClaim* one_meaning(const Group& group) {
  const PolicyClaim* best = nullptr;
  for (const auto* claim : group) {
    for (const auto* other : group) {
      if (!agree(claim->text, other->text)) return nullptr;
    }
    if (best == nullptr || fits_into(best->text, claim->text)) best = claim;
  }
  return best;
}

TermsEvidence evidence_of(const PolicyClaim& claim, const std::string& document) {
  TermsEvidence evidence;
  evidence.sentence = claim.sentence;
  evidence.document = document;
  evidence.byte = claim.byte;
  return evidence;
}

class Resolver {
 public:
  explicit Resolver(std::string document) : document_(std::move(document)) {}

  void take(const std::string& field, const Group& group) {
    const PolicyClaim* one = one_meaning(group);
    if (one == nullptr) {
      for (const auto* claim : group) {
        const auto other = std::find_if(group.begin(), group.end(), [&](const PolicyClaim* x) {
          return !agree(x->text, claim->text);
        });
        ask(*claim, "The policy says two things.",
            other == group.end() ? std::string{} : (*other)->sentence);
      }
      return;
    }
    if (set_field(reading_.terms, field, one->text)) return;
    reading_.terms.evidence[field] = evidence_of(*one, document_);
  }

  void ask(const PolicyClaim& claim, std::string why, std::string other) {
    const bool known = std::any_of(
        reading_.doubts.begin(), reading_.doubts.end(),
        [&](const TermsDoubt& one) { return one.field == claim.field && one.text == claim.text; });
    if (known || field_text(reading_.terms, claim.field) == claim.text) return;
    TermsDoubt doubt{claim.field, claim.text, evidence_of(claim, document_)};
    doubt.evidence.confidence = TermsConfidence::doubtful;
    doubt.evidence.doubt = std::move(why);
    doubt.evidence.contradicts = std::move(other);
    reading_.doubts.push_back(std::move(doubt));
  }

  TermsReading finish() {
    std::stable_sort(
        reading_.doubts.begin(), reading_.doubts.end(),
        [](const TermsDoubt& a, const TermsDoubt& b) { return a.evidence.byte < b.evidence.byte; });
    return std::move(reading_);
  }

 private:
  std::string document_;
  TermsReading reading_;
};

}  // namespace

bool PolicyClaims::speaks_of(std::string_view field) const {
  return std::any_of(claims_.begin(), claims_.end(),
                     [&](const PolicyClaim& one) { return one.field == field; });
}

const PolicyClaim* PolicyClaims::stated(std::string_view field) const {
  const auto at = std::find_if(claims_.begin(), claims_.end(), [&](const PolicyClaim& one) {
    return one.field == field && one.doubt.empty();
  });
  return at == claims_.end() ? nullptr : &*at;
}

std::vector<std::string> PolicyClaims::option_keys() const {
  std::vector<std::string> keys;
  for (const auto& claim : claims_) {
    std::string_view rest = claim.field;
    if (!rest.starts_with("delivery.") || !claim.doubt.empty()) continue;
    rest.remove_prefix(9);
    const std::string key(rest.substr(0, rest.find('.')));
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
  }
  return keys;
}

void PolicyClaims::remove(std::string_view field) {
  std::erase_if(claims_, [&](const PolicyClaim& one) { return one.field == field; });
}

void PolicyClaims::remove_weak(std::string_view beginning) {
  std::erase_if(claims_, [&](const PolicyClaim& one) {
    return one.weak && one.field.starts_with(beginning);
  });
}

void PolicyClaims::rename_option(std::string_view from, std::string_view to) {
  const std::string before = "delivery." + std::string(from) + ".";
  for (auto& claim : claims_) {
    if (!claim.field.starts_with(before)) continue;
    claim.field = "delivery." + std::string(to) + claim.field.substr(before.size() - 1);
  }
}

void PolicyClaims::doubt(std::string_view field, std::string_view why,
                         const std::function<bool(const PolicyClaim&)>& fits) {
  for (auto& claim : claims_) {
    if (claim.field == field && claim.doubt.empty() && fits(claim)) claim.doubt = why;
  }
}

void PolicyClaims::complete(std::string_view field, std::string_view ending) {
  const auto last = std::find_if(claims_.rbegin(), claims_.rend(),
                                 [&](const PolicyClaim& one) { return one.field == field; });
  if (last != claims_.rend() && last->text.find(" from ") == std::string::npos) {
    last->text += ending;
  }
}

TermsReading PolicyClaims::resolve(const std::string& document) const {
  std::map<std::string, Group> stated;
  std::map<std::string, Group> weak;
  for (const auto& claim : claims_) {
    if (claim.doubt.empty()) (claim.weak ? weak : stated)[claim.field].push_back(&claim);
  }
  Resolver resolver(document);
  for (const auto& one : weak) {
    if (stated.contains(one.first)) continue;
    // "next day" by name, and a sentence in doubt that says otherwise
    const auto* named = one.second.front();
    const bool doubted = std::any_of(claims_.begin(), claims_.end(), [&](const PolicyClaim& other) {
      return other.field == named->field && !other.doubt.empty() && other.text != named->text;
    });
    if (!doubted) stated.insert(one);
    if (doubted) resolver.ask(*named, "The policy says two things.", {});
  }
  for (const auto& [field, group] : stated) {
    // who pays is contradicted, so how much is not sure either
    const bool cost = field.starts_with("return.") && field.ends_with(".fee");
    const auto payer =
        cost ? stated.find(field.substr(0, field.size() - 3) + "paid_by") : stated.end();
    if (payer != stated.end() && one_meaning(payer->second) == nullptr) {
      for (const auto* claim : group) resolver.ask(*claim, "The policy says two things.", {});
    } else {
      resolver.take(field, group);
    }
  }
  for (const auto& claim : claims_) {
    if (!claim.doubt.empty()) resolver.ask(claim, claim.doubt, {});
  }
  return resolver.finish();
}

}  // namespace rangebook
