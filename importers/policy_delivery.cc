// Rules for delivery: which option a clause speaks of, its fee, thresholds and times.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "importers/byte_search.h"
#include "importers/policy_clause.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

constexpr std::string_view kAside = "It stands under a heading about something else.";
constexpr std::string_view kExample = "It may go on with an example.";
constexpr std::string_view kUnreadPlace = "A place in it was not understood.";
constexpr std::size_t kStrangeWords = 5;
constexpr std::size_t kFollowing = 16;
constexpr std::size_t kShortLine = 14;
constexpr std::size_t kHeadedLine = 28;

/// About customs or gift wrapping; "plus customs" only names them.
bool is_other_service(const Sentence& s) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == R::other_service &&
           !word_between(s, one.begin < 4 ? 0 : one.begin - 4, one.begin,
                         {"zzgl", "zuzuglich", "plus", "excl", "excluding", "hors", "exclusief",
                          "exkl", "exklusive", "ohne", "exclusive", "sin"});
  });
}

/// "Gift boxes: 2.50": a list names something that was not understood.
bool has_unknown_label(const Sentence& s) {
  if (s.kind == PolicyLineKind::text) return false;
  std::uint32_t end = 0;
  while (end < s.tokens.size() && end < 8 && !is_stop(s.word(end))) ++end;
  if (end == 0 || end >= s.tokens.size() || (s.word(end) != ":" && s.word(end) != "|"))
    return false;
  const auto label = part_of(s, 0, end + 1);
  const bool home = word_between(label, 0, end, {"home", "thuis", "hause", "zuhause", "domicilio"});
  return label.marks.empty() && !home && is_ascii_letter(label.word(0)[0]);
}

/// "Our quiet-hours option is 5.00": words that were not understood may name another way, or what
/// is no delivery at all.
bool may_be_other_way(const Sentence& s) {
  const std::size_t bearable = s.has(R::delivery) ? 3 : 1;
  return unread_words(s) > bearable && s.kind == PolicyLineKind::text && !s.has(R::region) &&
         !s.has_any(R::order, R::first_delivery, R::all_orders, R::per_parcel, R::dispatch);
}

/// "White glove delivery is 99.00": a word that was not understood beside the delivery itself.
bool has_unread_name(const Sentence& s) {
  return s.kind == PolicyLineKind::text && !s.has_any(R::kind, R::region) &&
         std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
           if (one.role != R::delivery) return false;
           return (one.begin > 0 && is_unread(s, one.begin - 1)) || is_unread(s, one.end);
         });
}

/// "We deliver in Leeds for 3.00": a place with a capital that was not understood.
bool names_unread_place(const Sentence& s) {
  for (std::uint32_t at = 1; at < s.tokens.size(); ++at) {
    const char first = s.text.size() > s.tokens[at].begin ? s.text[s.tokens[at].begin] : ' ';
    const bool place =
        first >= 'A' && first <= 'Z' && is_unread(s, at) &&
        word_between(s, at - 1, at,
                     {"in", "a", "dans", "within", "around", "en", "near", "bei", "rond", "te"});
    if (place) return true;
  }
  return false;
}

/// "Your shoes arrive the next day": what was ordered, no certain kind of goods.
bool speaks_of_own(const Sentence& s) {
  return std::all_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    // "5 days, 6 weeks for what is made to measure"
    const bool fact_before = last_before(s, R::money, one.begin) != nullptr ||
                             last_before(s, R::span, one.begin) != nullptr;
    const bool other = one.value != "sale" && fact_before;
    return one.role != R::item || other ||
           (one.begin > 0 && word_between(s, one.begin - 1, one.begin,
                                          {"your", "je", "uw", "jouw", "ihre", "deine", "vos",
                                           "votre", "tus", "tu", "sus"}));
  });
}

/// "UK: standard 3.95, express 7.50": the place holds for all of it.
bool has_place_label(const Sentence& s) {
  if (s.marks.empty() || s.marks.front().role != R::region) return false;
  const auto end = s.marks.front().end;
  return word_between(s, end, end + 1, {":", "-", "|"}) &&
         std::count_if(s.marks.begin(), s.marks.end(),
                       [](const PolicyMark& one) { return one.role == R::region; }) == 1;
}

/// "During sales allow up to 10 days"
bool is_of_season(const Sentence& s) {
  for (std::uint32_t at = 0; at + 1 < s.tokens.size(); ++at) {
    const bool during = word_between(
        s, at, at + 1, {"during", "pendant", "wahrend", "tijdens", "durante", "periode", "im"});
    if (during && word_between(s, at + 1, at + 4,
                               {"sale", "sales", "soldes", "solden", "rebajas", "aktionen",
                                "schlussverkauf"})) {
      return true;
    }
  }
  return false;
}

/// Members, codes, .. ; "after any discount code has been taken off" says how a value is counted.
bool is_hedged(const Sentence& s) {
  if (is_of_season(s)) return true;
  constexpr std::uint32_t kReach = 6;
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& hedge) {
    if (hedge.role != R::hedge) return false;
    return std::none_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& basis) {
      const bool counted = basis.role == R::before_discount || basis.role == R::after_discount;
      return counted && hedge.begin >= basis.begin && hedge.begin <= basis.end + kReach;
    });
  });
}

}  // namespace

bool is_home(std::string_view region, const PolicyFrame& frame) {
  if (frame.country.empty()) return false;
  return region == frame.country || region.starts_with(frame.country + "-");
}

std::string DeliveryRules::key_of(const Option& option) const {
  std::string key = option.kind.empty() ? "standard" : option.kind;
  const bool home = std::any_of(option.regions.begin(), option.regions.end(),
                                [&](const auto& one) { return one == frame_.country; });
  if (option.regions.empty() || home || frame_.country.empty()) return key;
  std::string region = option.regions.front();
  std::transform(region.begin(), region.end(), region.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
  return key + "-" + region;
}

void DeliveryRules::claim(const Sentence& s, const Option& option, std::string_view name,
                          const std::string& text, std::string doubt, bool weak) {
  const std::string key = key_of(option);
  if (doubt.empty()) doubt = doubt_;
  const bool easily_other = name == "transit" || name == "transit_from";
  if (doubt.empty() && strange_ && easily_other) doubt = kUnreadWords;
  const bool figure = easily_other || name == "fee" || name == "handling";
  const bool fetched = is_fetched(option.kind);
  const bool local = figure && name != "handling" && !fetched && names_unread_place(s);
  if (doubt.empty() && local && !s.has_any(R::region, R::dispatch)) doubt = kUnreadPlace;
  const bool other = may_be_other_way(s) || (name == "fee" && has_unread_name(s));
  if (doubt.empty() && figure && option.kind.empty() && other) doubt = kUnreadWords;
  if (doubt.empty()) {
    kinds_.try_emplace(key, option.kind);
    if (name == "transit" && option.regions.size() > 1) shared_[key] = option.regions;
    if (!option.regions.empty()) regions_.try_emplace(key, option.regions);
    if (option.vague) vague_.insert(key);
  }
  claims_.add({fmt::format("delivery.{}.{}", key, name), text, s.text, s.byte, doubt, weak});
  if ((!easily_other && name != "free_over") || !is_of_both(s)) return;
  for (const auto& sibling : line_kinds_) {
    if (sibling == key) continue;
    claims_.add({fmt::format("delivery.{}.{}", sibling, name), text, s.text, s.byte, doubt, weak});
  }
}

/// True when the sentence itself says that it is about delivery.
bool DeliveryRules::is_about(const Sentence& s, bool goes_on) const {
  // "Delivery charges", and below it "30 to 59.99: 2.95"
  const std::size_t unread = unread_words(s);
  const bool value = s.has(R::money) && s.has_any(R::free, R::over, R::from, R::or_more, R::under);
  const bool step =
      headed_ && ((s.tokens.size() <= kShortLine && unread == 0) ||
                  (s.tokens.size() <= kHeadedLine && unread <= (s.has(R::free) ? 3U : 1U) &&
                   value && !s.has_any(R::returns, R::refund, R::tell)));
  return step || s.kind == PolicyLineKind::row || s.has(R::grams) ||
         s.kind == PolicyLineKind::item || asked_ ||
         s.has_any(R::delivery, R::kind, R::region, R::dispatch, R::order, R::smaller) ||
         s.has_any(R::per_parcel, R::first_delivery, R::all_orders, R::minimum_order) ||
         (goes_on && s.tokens.size() <= kFollowing) || (title_ && below_title_) ||
         !section_.kind.empty() || !section_.regions.empty();
}

/// "Order before noon and it is sent the same day": until which hour, and on which days?
void DeliveryRules::read_same_day(const Sentence& s, const Clause& clause) {
  const auto* kind = clause.part.first(R::kind);
  if (kind == nullptr || kind->value != "same-day" || !is_of_dispatch(clause.part, *kind)) return;
  if (s.has_any(R::negation, R::span)) return;
  for_all_.push_back({"handling", "0 days", s.text, s.byte, std::string(kHedged), false});
}

/// What is known of the sentence before its clauses are read.
void DeliveryRules::begin(const Sentence& s, bool goes_on) {
  doubt_ = is_hedged(s) ? kHedged : std::string_view{};
  if (s.has(R::day) && has_fact(s)) doubt_ = kHedged;  // "from 1 January"
  if (in_example_ && !s.has_any(R::kind, R::region)) doubt_ = kExample;
  const bool next_weight = weighed_ && goes_on && s.has(R::money) && !s.has(R::free);
  if (s.has(R::item) && !next_weight && !speaks_of_own(s)) doubt_ = kSomeItems;
  if (aside_) doubt_ = kAside;
  if (doubt_.empty() && has_unknown_label(s)) doubt_ = kUnknownWay;
  if (doubt_.empty() && !is_about(s, goes_on)) doubt_ = kUnknownWay;
  if (!goes_on) {
    line_keys_.clear();
    line_kinds_.clear();
    left_ = false;
    stated_places_.clear();
    free_beyond_.reset();
    weighed_ = false;
  }
  note_places(s);
  strange_ = unread_words(s) >= kStrangeWords;
}

/// The way and places each clause speaks of; what the last one leaves is given back.
DeliveryRules::Option DeliveryRules::name_options(const Sentence& s, Option option,
                                                  std::vector<Clause>& clauses) {
  bool named = false;
  bool told = false;
  bool way = false;
  const bool placed = has_place_label(s);
  for (auto& clause : clauses) {
    const bool kind = clause.part.has(R::kind);
    const bool region = clause.part.has(R::region);
    const bool cell = s.kind == PolicyLineKind::row && way && !has_fact(clause.part);
    if (kind && named && told && !cell && !placed) option.regions = section_.regions;
    if (region && !kind && named && section_.kind.empty() && !s.has(R::kind)) option.kind.clear();
    read_context(clause, option, way);
    way = way || kind;
    named = named || kind || region;
    told = told || kind || has_fact(clause.part);
    clause.option = option;
  }
  for (const auto& clause : clauses) {
    if (clause.part.has(R::region)) line_keys_.insert(key_of(clause.option));
    if (clause.part.has_any(R::money, R::free)) line_kinds_.insert(key_of(clause.option));
  }
  return option;
}

void DeliveryRules::read(const Sentence& s, bool goes_on) {
  excepted_ = false;
  if (!goes_on) in_example_ = false;
  if (s.has(R::example) && has_fact(s)) in_example_ = true;
  if (s.has(R::example) || is_other_service(s)) return;
  if (s.has(R::faulty) && s.has(R::tell)) return;
  begin(s, goes_on);
  auto clauses = clauses_of(s);
  const Option before = option_before(s, goes_on);
  leave_out_asides(clauses);
  leave_out_remarks(s, clauses);
  const Option option = name_options(s, before, clauses);
  if (!goes_on) labelled_ = has_way_label(s);
  last_ = option;
  if (!goes_on) note_title(s);
  give_to_excepted(clauses);
  give_to_next_day(clauses);
  give_to_faster(s, clauses);
  const bool fast = std::any_of(clauses.begin(), clauses.end(), is_fast_unnamed);
  if (fast && doubt_.empty()) doubt_ = kUnknownWay;
  read_money(s, clauses);
  for (const auto& clause : clauses) read_spans(s, clause);
  for (const auto& clause : clauses) read_same_day(s, clause);
  read_per_parcel(s, clauses);
  read_extras(s, option);
  read_places(s, clauses);
  left_ = s.has_any(R::dispatch, R::sending);
}

/// "All prices are per order", "our delivery charges apply per parcel"
static bool speaks_of_prices(const Sentence& s) {
  return s.has(R::first_delivery) ||
         std::any_of(s.tokens.begin(), s.tokens.end(), [](const PolicyToken& one) {
           for (const std::string_view stem :
                {"preise", "kosten", "prices", "charges", "costs", "rates", "fees", "prix", "tarif",
                 "frais", "prijzen", "tarieven", "precios", "gastos"}) {
             if (one.word.starts_with(stem) || one.word.ends_with(stem)) return true;
           }
           return false;
         });
}

/// "In both cases": of the two ways that the line prices.
bool DeliveryRules::is_of_both(const Sentence& s) const {
  return line_kinds_.size() == 2 && !s.has_any(R::kind, R::region) &&
         word_between(s, 0, 4, {"both", "either", "beiden", "beide", "deux", "ambos", "ambas"});
}

/// "4.50 to here, 9.50 to there, for each order"
void DeliveryRules::read_per_parcel(const Sentence& s, const std::vector<Clause>& clauses) {
  const auto* parcel = s.first(R::per_parcel);
  // "All prices below are per order"
  const bool general = parcel != nullptr && !s.has(R::money) && speaks_of_prices(s);
  if (general && !s.has_any(R::hedge, R::kind, R::region, R::free, R::returns)) {
    for_all_.push_back({"per_parcel", std::string(parcel->value), s.text, s.byte, doubt_, false});
  }
  if (parcel == nullptr || !s.has(R::money)) return;
  bool past = false;  // "5.50 per parcel here, 8.00 there"
  for (const auto& clause : clauses) {
    const bool last = &clause == &clauses.back();
    if (clause.fees.empty() && !last) continue;
    claim(s, clause.option, "per_parcel", std::string(parcel->value),
          std::string(past ? kUnknownWay : std::string_view{}));
    past = past || clause.part.has(R::per_parcel);
  }
}

void DeliveryRules::read_extras(const Sentence& s, const Option& option) {
  if (s.has(R::before_discount)) {
    for_all_.push_back({"threshold_basis", "before discount", s.text, s.byte, doubt_, false});
  }
  if (s.has(R::after_discount)) {
    for_all_.push_back({"threshold_basis", "after discount", s.text, s.byte, doubt_, false});
  }
  bool outside = false;
  std::vector<std::string> places;
  std::uint32_t last = 0;
  for (const auto& mark : s.marks) {
    if (word_between(s, last, mark.begin, {";"})) outside = false;
    if (mark.role == R::outside) outside = true;
    if (mark.role == R::region && outside) places.emplace_back(mark.value);
    last = mark.end;
  }
  if (!places.empty() && has_fact(s) && !excepted_)
    claim(s, option, "not_regions", value_text(places));
}

void DeliveryRules::read_kept(const Sentence& s) {
  for_all_.push_back({"threshold_kept", "yes", s.text, s.byte,
                      s.has(R::hedge) ? std::string(kHedged) : std::string{}, false});
}

}  // namespace rangebook
