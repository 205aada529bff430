// Each refinement looks at the marks of a sentence and at the words between two of them.
#include "importers/policy_refine.h"

#include <algorithm>
#include <initializer_list>
#include <string_view>

#include "importers/byte_search.h"
#include "importers/policy_refine_steps.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Marks = PolicyMarks;
using Tokens = PolicyTokens;

/// "Other countries in Europe": Europe, not the world.
void narrow_world(Marks& marks, const Tokens& tokens) {
  std::erase_if(marks, [&](const PolicyMark& world) {
    if (world.role != R::region || world.value != "world") return false;
    return std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
      if (one.role != R::region || one.value == "world") return false;
      return one.end == world.begin ||  // "EU-Ausland"
             (one.begin >= world.end && one.begin > world.begin &&
              only_words(tokens, world.end, one.begin,
                         {"d'", "de", "of", "in", "the", "l'", "der", "in", "van", "en", "within",
                          "la", "los", "innerhalb", "binnen"}));
    });
  });
}

/// "Anywhere outside Australia": the rest of the world.
void turn_outside(Marks& marks, const Tokens& tokens) {
  for (auto& place : marks) {
    const bool country = place.value.size() == 2 || place.value == "europe";
    if (place.role != R::region || !country || place.begin == 0) continue;
    auto at = place.begin - 1;
    while (at > 0 &&
           only_words(tokens, at, at + 1, {"of", "the", "de", "la", "der", "von", "van", "l'"})) {
      --at;
    }
    if (only_words(tokens, at, at + 1, {"outside", "ausserhalb", "buiten", "fuera"})) {
      place.value = "world";
      place.begin = at;
    }
  }
}

/// "The United States excepted", "though not in the Highlands": places left out by what stands
/// behind or before them.
void leave_out_places(Marks& marks, const Tokens& tokens) {
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const PolicyMark place = marks[i];
    if (place.role != R::region) continue;
    const auto size = static_cast<std::uint32_t>(tokens.size());
    const bool behind =
        place.end < size &&
        only_words(tokens, place.end, place.end + 1,
                   {"excepted", "excluded", "ausgenommen", "ausgeschlossen", "excepte", "exceptee",
                    "excepts", "exclu", "exclue", "exclus", "uitgezonderd", "uitgesloten",
                    "excluido", "excluida", "excluidas"}) &&
        (place.end + 1 == size || tokens[place.end + 1].word.size() == 1);
    const bool before = std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& no) {
      return no.role == R::negation && no.end < place.begin &&
             only_words(tokens, no.end, place.begin,
                        {"in", "to", "the", "for", "nach", "auf", "die", "der", "en", "dans", "les",
                         "la", "aux", "au", "naar", "op", "de", "het", "a"});
    });
    if (!behind && !before) continue;
    PolicyMark outside{.role = R::outside, .begin = place.begin, .end = place.begin};
    marks.insert(marks.begin() + static_cast<std::ptrdiff_t>(i), outside);
    ++i;
  }
}

/// "La livraison est gratuite": delivery itself, not the day it is counted from.
void name_delivery(Marks& marks, const Tokens& tokens) {
  Marks more;
  for (const auto& event : marks) {
    if (event.role != R::event || event.value != "delivery") continue;
    const bool named = std::any_of(tokens.begin() + event.begin, tokens.begin() + event.end,
                                   [](const auto& one) { return one.word == "livraison"; });
    bool counted = false;
    for (auto at = event.begin < 3 ? 0 : event.begin - 3; at <= event.begin; ++at) {
      counted = counted || is_one_of(tokens[at].word,
                                     {"apres", "suivant", "suivent", "compter", "partir", "des",
                                      "depuis", "date", "jour", "suivants", "suivante"});
    }
    if (named && !counted) {
      more.push_back({.role = R::delivery, .begin = event.begin, .end = event.end});
    }
  }
  marks.insert(marks.end(), more.begin(), more.end());
}

/// "From 50 free": German "frei" means free of charge only beside an amount or a delivery.
void drop_bare_frei(Marks& marks, const Tokens& tokens) {
  const Marks all = marks;
  std::erase_if(marks, [&](const PolicyMark& one) {
    if (one.role != R::free || one.end != one.begin + 1 || tokens[one.begin].word != "frei") {
      return false;
    }
    return std::none_of(all.begin(), all.end(), [&](const PolicyMark& other) {
      return (other.role == R::money || other.role == R::delivery) &&
             (other.begin == one.end || (other.end <= one.begin && other.end + 2 >= one.begin));
    });
  });
}

/// "Not worn, washed or altered": what was done to it, no kind of goods.
void drop_altered(Marks& marks, const Tokens& tokens) {
  const Marks all = marks;
  std::erase_if(marks, [&](const PolicyMark& one) {
    if (one.role != R::item || one.end != one.begin + 1 || tokens[one.begin].word != "altered") {
      return false;
    }
    return std::any_of(all.begin(), all.end(), [&](const PolicyMark& need) {
      return need.role == R::need && need.end <= one.begin && need.end + 4 >= one.begin;
    });
  });
}

/// "We use first class post": of no service of its own where no price is named.
void drop_classes(Marks& marks, const Tokens& tokens) {
  if (has_role(marks, {R::money, R::free})) return;
  std::erase_if(marks, [&](const PolicyMark& one) {
    return one.role == R::kind && one.end > one.begin && tokens[one.end - 1].word == "class";
  });
}

/// "Orders placed on a Sunday", "in the evening": a time, no service, where no price is named.
void drop_weekdays(Marks& marks, const Tokens& tokens) {
  constexpr std::size_t kHeading = 4;
  if (has_role(marks, {R::money, R::free}) || tokens.size() <= kHeading) return;
  const auto names_service = [](const PolicyToken& one) {
    for (const std::string_view stem :
         {"deliver", "liefer", "zustell", "livr", "lever", "bezorg", "entreg", "slot"}) {
      if (one.word.find(stem) != one.word.npos) return true;
    }
    return false;
  };
  std::erase_if(marks, [&](const PolicyMark& one) {
    return one.role == R::kind &&
           is_one_of(one.value, {"saturday", "sunday", "weekend", "evening"}) &&
           std::none_of(tokens.begin() + one.begin, tokens.begin() + one.end, names_service);
  });
}

/// "After two days your order is ready": until it can be fetched, not how long it is kept.
void turn_ready(Marks& marks, const Tokens& tokens) {
  const bool after = std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
    return one.role == R::span && one.begin > 0 &&
           only_words(tokens, one.begin - 1, one.begin,
                      {"after", "nach", "na", "binnen", "innerhalb", "within", "apres", "sous"});
  });
  if (!after) return;
  std::erase_if(marks, [&](const PolicyMark& one) {
    return one.role == R::aside && is_one_of(tokens[one.end - 1].word, {"klaar", "bereit"});
  });
}

/// "Our warehouse in Poland": where parcels come from.
void drop_origins(Marks& marks, const Tokens& tokens) {
  std::erase_if(marks, [&](const PolicyMark& place) {
    if (place.role != R::region || place.begin < 2) return false;
    const bool in = is_one_of(tokens[place.begin - 1].word, {"in", "en", "au", "aux", "a"});
    const auto first = place.begin < 4 ? 0 : place.begin - 4;
    return in &&
           std::any_of(tokens.begin() + first, tokens.begin() + place.begin - 1,
                       [](const PolicyToken& one) {
                         return is_one_of(
                             one.word,
                             {"warehouse",   "workshop",  "studio",    "factory",   "based",
                              "located",     "made",      "lager",     "werkstatt", "sitz",
                              "hergestellt", "gefertigt", "entrepot",  "atelier",   "fabrique",
                              "fabriques",   "bases",     "magazijn",  "gemaakt",   "gevestigd",
                              "almacen",     "taller",    "fabricado", "fabricados"});
                       });
  });
}

/// "Over 50 here and over 100 there": two limits, not "100 and over".
void part_limits(Marks& marks, const Tokens& tokens) {
  const Marks all = marks;
  for (auto& more : marks) {
    if (more.role != R::or_more || more.end != more.begin + 2 || more.begin == 0) continue;
    const bool joint = is_one_of(tokens[more.begin].word, {"and", "und", "et", "en", "y", "or"});
    const auto money_at = [&](std::uint32_t begin, bool ends) {
      return std::any_of(all.begin(), all.end(), [&](const PolicyMark& one) {
        return one.role == R::money && (ends ? one.end : one.begin) == begin;
      });
    };
    if (!joint || !money_at(more.end, false) || money_at(more.begin, true)) continue;
    more.role = R::over;
    ++more.begin;
  }
}

/// French "des" is "from" before a number only ("dès 60 €"), else an article.
void drop_articles(Marks& marks, const Tokens& tokens) {
  const Marks all = marks;
  std::erase_if(marks, [&](const PolicyMark& one) {
    const bool alone = one.role == R::from && one.end == one.begin + 1;
    if (!alone || tokens[one.begin].word != "des") return false;
    const bool number = one.end < tokens.size() && is_ascii_digit(tokens[one.end].word[0]);
    if (number) return false;  // "des 3 articles"
    return std::none_of(all.begin(), all.end(), [&](const PolicyMark& other) {
      return (other.role == R::money && other.begin >= one.end && other.begin <= one.end + 3) ||
             (other.role == R::free && other.end == one.begin);
    });
  });
}

/// "We take nothing back": free of charge only beside a word of cost.
void drop_nothing(Marks& marks, const Tokens& tokens) {
  if (has_role(marks, {R::money, R::over, R::or_more})) return;
  const bool cost = std::any_of(tokens.begin(), tokens.end(), [](const PolicyToken& one) {
    for (const std::string_view stem : {"kost", "cout", "cost", "betaal", "zahl", "bezahl", "pay",
                                        "paie", "berechn", "reken", "factur", "cuesta", "pag"}) {
      if (one.word.starts_with(stem)) return true;
    }
    return false;
  });
  if (cost) return;
  std::erase_if(marks, [&](const PolicyMark& one) {
    return one.role == R::free && one.end == one.begin + 1 &&
           is_one_of(tokens[one.begin].word, {"niets", "nichts", "rien", "niks", "nada"});
  });
}

/// "In 3 days at most": the lower bound is not said.
void open_spans(Marks& marks) {
  for (auto& span : marks) {
    if (span.role != R::span || span.span.min != span.span.max) continue;
    const bool most = std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
      return one.role == R::within && one.begin == span.end && one.value == "behind";
    });
    if (!most) continue;
    span.open = true;
    span.span.min.reset();
  }
}

}  // namespace

void refine_marks(Marks& marks, const Tokens& tokens) {
  add_refusals(marks, tokens);
  name_return_costs(marks, tokens);
  add_kept_costs(marks, tokens);
  add_prepaid(marks, tokens);
  turn_receipts(marks, tokens);
  drop_inner_returns(marks);
  drop_bare_frei(marks, tokens);
  drop_nothing(marks, tokens);
  drop_paid_back(marks, tokens);
  turn_payers(marks, tokens);
  drop_altered(marks, tokens);
  drop_articles(marks, tokens);
  turn_gift_cards(marks, tokens);
  drop_classes(marks, tokens);
  drop_weekdays(marks, tokens);
  drop_homes(marks, tokens);
  turn_ready(marks, tokens);
  part_limits(marks, tokens);
  drop_origins(marks, tokens);
  drop_credit_cards(marks, tokens);
  turn_outside(marks, tokens);
  leave_out_places(marks, tokens);
  narrow_world(marks, tokens);
  name_delivery(marks, tokens);
  turn_loose_refunds(marks);
  open_spans(marks);
  std::stable_sort(marks.begin(), marks.end(),
                   [](const PolicyMark& a, const PolicyMark& b) { return a.begin < b.begin; });
}

}  // namespace rangebook
