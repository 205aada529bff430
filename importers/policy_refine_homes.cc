// "At home" in a policy: where an order goes, where it is tried on, or where a parcel is fetched.
#include <algorithm>
#include <string_view>

#include "importers/policy_refine.h"

namespace rangebook {
namespace {

using R = PolicyRole;

bool is_home_word(std::string_view word) {
  static constexpr std::string_view kWords[] = {
      "home",  "door", "address", "hause", "haustur", "adresse", "domicile",  "chez",     "maison",
      "thuis", "huis", "deur",    "adres", "casa",    "puerta",  "domicilio", "huisadres"};
  return std::find(std::begin(kWords), std::end(kWords), word) != std::end(kWords);
}

/// "To your home", but not "home delivery".
bool is_home(const PolicyMark& mark, const std::vector<PolicyToken>& tokens) {
  if (mark.role != R::kind || mark.value != "standard") return false;
  const auto begin = tokens.begin() + mark.begin;
  const auto end = tokens.begin() + mark.end;
  const auto delivers = [](const PolicyToken& one) {
    for (const std::string_view stem : {"deliver", "shipp", "liefer", "zustell", "versand", "livr",
                                        "lever", "bezorg", "envi", "entreg", "gebracht"}) {
      if (one.word.find(stem) != one.word.npos) return true;
    }
    return false;
  };
  return std::any_of(begin, end, [](const PolicyToken& one) { return is_home_word(one.word); }) &&
         std::none_of(begin, end, delivers);
}

/// "Try it on at home", "we fetch it from your home", "nobody is at home".
bool is_at_home(const std::vector<PolicyToken>& tokens) {
  return std::any_of(tokens.begin(), tokens.end(), [](const PolicyToken& one) {
    for (const std::string_view stem :
         {"anprob", "probier", "essay", "prueb", "nobody", "niemand", "personne", "nadie"}) {
      if (one.word.starts_with(stem)) return true;
    }
    static constexpr std::string_view kWords[] = {
        "try",   "trying",  "tried", "pas",   "passen",  "probar",   "nehmen",    "holt",   "holen",
        "haalt", "ophalen", "halen", "fetch", "fetched", "retirons", "recogemos", "recogen"};
    return std::find(std::begin(kWords), std::end(kWords), one.word) != std::end(kWords);
  });
}

/// "Chez vous", "bei Ihnen"
bool is_place_of_hers(const PolicyMark& mark, const std::vector<PolicyToken>& tokens) {
  if (mark.role != R::delivery || mark.end > mark.begin + 3) return false;
  const std::string_view first = tokens[mark.begin].word;
  return first == "chez" || first == "bei" || first == "bij" || first == "your";
}

}  // namespace

void drop_homes(std::vector<PolicyMark>& marks, const std::vector<PolicyToken>& tokens) {
  const bool about = std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
    const bool other = one.role == R::kind && !is_home(one, tokens);
    return other || one.role == R::delivery || one.role == R::dispatch || one.role == R::sending ||
           one.role == R::first_delivery || one.role == R::money || one.role == R::free;
  });
  if (tokens.empty()) return;
  const bool at_home = is_at_home(tokens);
  const bool label = tokens.size() <= 4 && tokens.back().word != ".";
  if ((about || label) && !at_home) return;
  std::erase_if(marks, [&](const PolicyMark& one) {
    return is_home(one, tokens) || (at_home && is_place_of_hers(one, tokens));
  });
}

}  // namespace rangebook
