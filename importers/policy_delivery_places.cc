// Where a shop delivers and where not: lists of places, and sentences that only name places.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "importers/policy_clause.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

void add_place(std::vector<std::string>& places, std::string_view place) {
  if (std::find(places.begin(), places.end(), place) == places.end()) places.emplace_back(place);
}

}  // namespace

/// "We deliver throughout the UK, except to the Channel Islands", "we do not ship to Canada": said
/// of the usual delivery, where no figure stands beside it.
void DeliveryRules::read_places(const Sentence& s, const std::vector<Clause>& clauses) {
  const bool other = s.has(R::kind) && s.first(R::kind)->value != "standard";
  // "We do not deliver to" is one phrase
  const auto* left_out = s.first(R::outside);
  const bool said = left_out != nullptr &&
                    word_between(s, left_out->begin, left_out->end,
                                 {"deliver", "ship", "livrons", "liefern", "leveren", "available"});
  const bool about = said || asked_ || s.has_any(R::delivery, R::dispatch, R::sending);
  if (has_fact(s) || other || !about || !doubt_.empty() || !section_.kind.empty()) return;
  if (s.has_any(R::day, R::example, R::returns, R::aside)) return;
  const bool closed = s.has_any(R::only, R::outside, R::negation);
  if (!closed || (s.has(R::only) && s.first(R::only)->begin > 0 && !s.has(R::region))) return;
  Places& found = stated_;
  for (const auto& clause : clauses) {
    bool outside = clause.part.has(R::negation);
    for (const auto& mark : clause.part.marks) {
      if (mark.role == R::outside) outside = true;
      if (outside && mark.value == "world") continue;  // "not to any other country"
      if (mark.role == R::region) add_place(outside ? found.never : found.to, mark.value);
      if (mark.role == R::region && clause.option.vague) return void(found = {});
    }
  }
  found.sentence = s.text;
  found.byte = s.byte;
}

void DeliveryRules::finish_places() {
  const auto keys = claims_.option_keys();
  const bool usual = keys.empty() || std::find(keys.begin(), keys.end(), "standard") != keys.end();
  const auto add_to = [&](const std::string& key, std::string_view name,
                          std::vector<std::string> places) {
    const std::string field = fmt::format("delivery.{}.{}", key, name);
    // "Within the Netherlands, the islands included"
    std::erase_if(places, [&](const std::string& one) {
      return one.size() > 2 && one.starts_with(frame_.country + "-") && name == "regions";
    });
    if (places.empty() || claims_.speaks_of(field)) return;
    std::sort(places.begin(), places.end());
    claims_.add({field, value_text(places), stated_.sentence, stated_.byte, {}, false});
  };
  const auto add = [&](std::string_view name, const std::vector<std::string>& places) {
    if (usual) return add_to("standard", name, places);
    // "Delivery only in Switzerland", then an economy and a priority way
    for (const auto& key : keys) {
      const std::string& kind = kinds_[key];
      const bool fetched = is_fetched(kind);
      if (!fetched && !regions_.contains(key)) add_to(key, name, places);
    }
  };
  const bool home = std::any_of(stated_.to.begin(), stated_.to.end(),
                                [&](const auto& one) { return is_home(one, frame_); });
  if (home && !regions_.contains("standard")) add("regions", stated_.to);
  add("not_regions", stated_.never);
}

}  // namespace rangebook
