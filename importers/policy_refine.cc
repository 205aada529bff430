// Each refinement looks at the marks of a sentence and at the words between two of them.
#include "importers/policy_refine.h"

#include <algorithm>
#include <initializer_list>
#include <string_view>

#include "importers/byte_search.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Marks = std::vector<PolicyMark>;
using Tokens = std::vector<PolicyToken>;

bool has(const Marks& marks, std::initializer_list<R> roles) {
  return std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
    return std::find(roles.begin(), roles.end(), one.role) != roles.end();
  });
}

/// True where [begin, end) holds at most three words, all of them among `words`.
bool only_words(const Tokens& tokens, std::uint32_t begin, std::uint32_t end,
                std::initializer_list<std::string_view> words) {
  if (end < begin || end > begin + 3 || end > tokens.size()) return false;
  return std::all_of(tokens.begin() + begin, tokens.begin() + end, [&](const PolicyToken& one) {
    return std::find(words.begin(), words.end(), one.word) != words.end();
  });
}

/// "The shipping costs for the return": of the way back.
void name_return_costs(Marks& marks, const Tokens& tokens) {
  for (auto& fee : marks) {
    if (fee.role != R::first_delivery) continue;
    const bool back = std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
      return one.role == R::returns && one.begin > fee.end &&
             only_words(
                 tokens, fee.end, one.begin,
                 {"for", "of", "on", "the",   "a",    "your", "any", "fur", "die", "der", "eine",
                  "de",  "du", "le", "votre", "voor", "van",  "het", "je",  "uw",  "een"});
    });
    if (back) fee.role = R::return_form;
  }
}

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

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// "After we have received ..", "receiving your return": the return has arrived.
void turn_receipts(Marks& marks, const Tokens& tokens) {
  for (auto& event : marks) {
    if (event.role != R::event || event.value != "delivery") continue;
    bool receipt = false;
    for (auto at = event.begin; at < event.end; ++at) {
      for (const std::string_view stem :
           {"receiv", "recei", "recu", "recep", "erhalt", "ontvang"}) {
        receipt = receipt || tokens[at].word.starts_with(stem);
      }
    }
    if (!receipt) continue;
    bool ours = false;
    auto first = event.begin < 5 ? 0 : event.begin - 5;
    for (const auto& one : marks) {
      if (one.role == R::span && one.begin < event.begin) first = std::max(first, one.end);
    }
    for (auto at = first; at < event.begin; ++at) {
      const std::string_view word = tokens[at].word;
      if (is_one_of(word, {"we", "wir", "nous", "wij", "we've", "we'll", "warehouse"})) ours = true;
      if (is_one_of(word, {"you", "sie", "du", "vous", "je", "u", "jij", "."})) ours = false;
    }
    const bool returned = std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
      return one.role == R::returns && one.begin > event.end &&
             only_words(tokens, event.end, one.begin,
                        {"your",    "the",       "a",        "ihrer",    "deiner",   "der",
                         "votre",   "du",        "je",       "uw",       "des",      "les",
                         "goods",   "items",     "products", "produits", "articles", "waren",
                         "artikel", "producten", "item",     "parcel"});
    });
    if (ours || returned) event.value = "back";
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

/// "We pay the money back": no way back of the goods.
void drop_inner_returns(Marks& marks) {
  const Marks all = marks;
  std::erase_if(marks, [&](const PolicyMark& inner) {
    return inner.role == R::returns &&
           std::any_of(all.begin(), all.end(), [&](const PolicyMark& one) {
             return (one.role == R::refund || one.role == R::refund_act) &&
                    one.begin < inner.begin && inner.end <= one.end;
           });
  });
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

/// "We cannot refund your return postage"
bool is_refused(const Marks& marks, const Tokens& tokens, const PolicyMark& cost) {
  return std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
    const bool refusal = one.role == R::no_return &&
                         is_one_of(tokens[one.end - 1].word, {"refund", "reimburse", "refunded"});
    return refusal && one.end <= cost.begin && one.end + 2 >= cost.begin;
  });
}

/// "Minus the shipping costs for the return": she pays.
void add_kept_costs(Marks& marks, const Tokens& tokens) {
  Marks more;
  for (const auto& cost : marks) {
    if (cost.role != R::return_form || has(marks, {R::payer, R::money, R::free})) continue;
    if (is_refused(marks, tokens, cost)) {
      more.push_back({.role = R::payer, .value = "customer", .begin = cost.begin, .end = cost.end});
    }
    for (auto at = cost.begin < 2 ? 0 : cost.begin - 2; at < cost.begin; ++at) {
      if (!is_one_of(tokens[at].word, {"minus", "less", "abzuglich", "moins"})) continue;
      more.push_back({.role = R::payer, .value = "customer", .begin = at, .end = at + 1});
    }
  }
  marks.insert(marks.end(), more.begin(), more.end());
}

/// "A prepaid label is in the parcel": nothing to pay, where nothing else is said of the cost.
void add_prepaid(Marks& marks, const Tokens& tokens) {
  if (has(marks, {R::money, R::free, R::payer, R::negation, R::exchange, R::faulty, R::region})) {
    return;
  }
  const bool conditional = std::any_of(tokens.begin(), tokens.end(), [](const PolicyToken& one) {
    return is_one_of(one.word, {"if", "wenn", "falls", "si", "als", "indien", "unless", "cost"});
  });
  if (conditional || (!tokens.empty() && tokens.back().word == ";")) return;
  for (std::uint32_t at = 0; at < tokens.size(); ++at) {
    const bool paid = is_one_of(
        tokens[at].word,
        {"prepaid",      "pre-paid",        "postage-paid",     "freepost",       "frankierte",
         "frankiertes",  "frankierten",     "vorfrankierte",    "vorfrankiertes", "vorfrankierten",
         "prepayee",     "preaffranchie",   "pre-affranchie",   "affranchie",     "gefrankeerd",
         "gefrankeerde", "voorgefrankeerd", "voorgefrankeerde", "prepagada",      "prefranqueada"});
    if (!paid) continue;
    for (auto near = at < 4 ? 0 : at - 4; near < at + 4 && near < tokens.size(); ++near) {
      const std::string_view word = tokens[near].word;
      const bool label = word.ends_with("label") || word.ends_with("etikett") ||
                         word.starts_with("etiquet") || word.ends_with("etiket") ||
                         word.ends_with("sticker") || word.ends_with("aufkleber");
      if (!label) continue;
      marks.push_back({.role = R::free, .value = "prepaid", .begin = at, .end = at + 1});
      return;
    }
  }
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
  if (has(marks, {R::money, R::free})) return;
  std::erase_if(marks, [&](const PolicyMark& one) {
    return one.role == R::kind && one.end > one.begin && tokens[one.end - 1].word == "class";
  });
}

/// "Orders placed on a Sunday", "in the evening": a time, no service, where no price is named.
void drop_weekdays(Marks& marks, const Tokens& tokens) {
  constexpr std::size_t kHeading = 4;
  if (has(marks, {R::money, R::free}) || tokens.size() <= kHeading) return;
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

/// "To your credit card"
void drop_credit_cards(Marks& marks, const Tokens& tokens) {
  std::erase_if(marks, [&](const PolicyMark& one) {
    return one.role == R::credit && one.end < tokens.size() &&
           is_one_of(tokens[one.end].word, {"card", "cards"});
  });
}

/// "A refund, exchange or gift card": what she gets, no goods.
void turn_gift_cards(Marks& marks, const Tokens& tokens) {
  for (auto& card : marks) {
    if (card.role != R::item || card.value != "gift-cards" || card.begin < 2) continue;
    const bool listed = is_one_of(tokens[card.begin - 1].word, {"or", "oder", "ou", "of", "a"}) &&
                        std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
                          const bool gives = one.role == R::refund || one.role == R::exchange;
                          return gives && one.end <= card.begin && one.end + 2 >= card.begin;
                        });
    if (listed) card.role = R::credit;
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

/// "We cover the cost of returns", "we do not cover it": who the verb speaks of.
void turn_payers(Marks& marks, const Tokens& tokens) {
  for (auto& payer : marks) {
    const bool verb = is_one_of(tokens[payer.begin].word,
                                {"cover", "pay", "meet", "bear", "foot", "shoulder", "refund"});
    if (payer.role != R::payer || payer.value != "customer" || !verb) continue;
    bool ours = false;
    bool denied = false;
    for (auto at = payer.begin < 4 ? 0 : payer.begin - 4; at < payer.begin; ++at) {
      const std::string_view word = tokens[at].word;
      if (is_one_of(word, {"we", "we'll"})) ours = true;
      if (is_one_of(word, {"you", "you'll", "customer", "customers", "buyer", "buyers", "that"})) {
        ours = false;
      }
      if (is_one_of(word, {"not", "don't", "can't", "cannot", "won't"})) denied = true;
    }
    if (ours) payer.value = "shop";
    if (ours && denied) payer.value = "customer";
    if (!ours || !denied) continue;
    std::erase_if(marks, [&](const PolicyMark& one) {
      return (one.role == R::negation || one.role == R::no_return) && one.begin < payer.begin &&
             one.begin + 4 >= payer.begin;
    });
    return;
  }
}

/// "Wir zahlen den Kaufpreis zurueck": the money goes back, nothing is said of what sending costs.
void drop_paid_back(Marks& marks, const Tokens& tokens) {
  if (has(marks, {R::return_form, R::first_delivery, R::label})) return;
  std::erase_if(marks, [&](const PolicyMark& payer) {
    if (payer.role != R::payer || payer.value != "shop") return false;
    bool pays = false;
    for (auto at = payer.begin; at < payer.end; ++at) {
      pays = pays || is_one_of(tokens[at].word, {"zahlen", "pay", "payons", "betalen", "pagamos"});
    }
    if (!pays) return false;
    return std::any_of(tokens.begin() + payer.end, tokens.end(), [](const PolicyToken& one) {
      return is_one_of(one.word, {"zuruck", "terug", "back"});
    });
  });
}

/// "We take nothing back": free of charge only beside a word of cost.
void drop_nothing(Marks& marks, const Tokens& tokens) {
  if (has(marks, {R::money, R::over, R::or_more})) return;
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

/// "Orders are processed within ..": nothing of money that goes back.
void turn_loose_refunds(Marks& marks) {
  if (has(marks, {R::refund, R::returns, R::returnable})) return;
  for (auto& one : marks) {
    if (one.role == R::refund_act && one.value == "loose") one.role = R::dispatch;
  }
}

/// "Returning or swapping is not possible"
bool is_impossible(const Marks& marks, const Tokens& tokens, const PolicyMark& no) {
  if (no.end >= tokens.size() || has(marks, {R::delivery, R::kind, R::dispatch, R::payer})) {
    return false;
  }
  return is_one_of(tokens[no.end].word, {"possible", "moglich", "mogelijk", "posible"}) &&
         has(marks, {R::returns});
}

/// "can unfortunately not take back": a negation right before the return.
void add_refusals(Marks& marks, const Tokens& tokens) {
  Marks refusals;
  for (const auto& no : marks) {
    if (no.role != R::negation) continue;
    const bool said = std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
      return one.role == R::returns && one.begin >= no.end && one.begin <= no.end + 1;
    });
    if (!said && !is_impossible(marks, tokens, no)) continue;
    PolicyMark refusal = no;
    refusal.role = R::no_return;
    refusals.push_back(refusal);
  }
  marks.insert(marks.end(), refusals.begin(), refusals.end());
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
