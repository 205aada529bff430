// What a sentence about delivery stands under: headings, titles, lines, and the way it speaks of.
#include <algorithm>
#include <utility>

#include "importers/policy_clause.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

constexpr std::size_t kShortTitle = 5;

/// "Ireland (Republic and Northern)": more is said of the place than was understood.
bool has_unread_remark(const Sentence& s, const PolicyMark& place) {
  if (s.word(place.end) != "(") return false;
  auto end = place.end;
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  while (end < size && s.word(end) != ")") ++end;
  const auto inner = part_of(s, place.end, end);
  return inner.marks.empty() && unread_words(inner) > 0;
}

/// "Austria and Ruritania": a place beside it that was not understood.
bool has_unread_partner(const Sentence& s, const PolicyMark& place) {
  const auto joins = [&](std::uint32_t at) {
    return s.word(at) == "&" || s.word(at) == "/" || is_joint(s, at);
  };
  // "Highlands, islands and Northern Ireland"
  const bool listed =
      s.word(place.end) == "," && is_unread(s, place.end + 1) && joins(place.end + 2);
  if (listed) return true;
  if (joins(place.end)) {
    auto next = place.end + 1;
    while (next < place.end + 4 && is_plain_word(s.word(next))) ++next;
    if (is_unread(s, next)) return true;
  }
  return place.begin > 1 && joins(place.begin - 1) && is_unread(s, place.begin - 2);
}

/// "Home: 4.99": whatever it names.
bool has_label(const Sentence& s) { return word_between(s, 1, 6, {":", "|"}); }

/// "Express à domicile", "next day home delivery": where it goes, no name of a way.
bool is_to_door(const Sentence& part, const PolicyMark& kind) {
  return word_between(part, kind.begin, kind.end,
                      {"home", "domicile", "domicilio", "hause", "haustur", "thuis", "huis", "door",
                       "maison", "casa"});
}

/// "To Ireland: 9.95. Please allow 4-6 days", "the cost is then 9.95": of the way named before.
bool is_bare_time(const Sentence& s) {
  constexpr std::size_t kBareTime = 9;
  const bool then = word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()),
                                 {"then", "dann", "alors", "dan", "entonces"});
  const bool time = s.has(R::span) && !s.has_any(R::money, R::free, R::dispatch, R::all_orders);
  return s.tokens.size() <= kBareTime && (time || (then && s.has(R::money)));
}

}  // namespace

bool is_of_dispatch(const Sentence& part, const PolicyMark& kind) {
  if (kind.value != "same-day" && kind.value != "next-day") return false;
  return std::any_of(part.marks.begin(), part.marks.end(),
                     [&](const PolicyMark& one) {
                       const bool behind = one.begin >= kind.end && one.begin <= kind.end + 2;
                       const bool before = one.end <= kind.begin && one.end + 4 >= kind.begin;
                       return one.role == R::dispatch && (behind || before);
                     }) ||
         word_between(part, kind.begin < 4 ? 0 : kind.begin - 4, kind.begin,
                      {"sent",     "leave",     "leaves",     "posted",    "shipped",   "goes",
                       "out",      "raus",      "verschickt", "versendet", "part",      "partent",
                       "expediee", "expediees", "envoyee",    "envoyees",  "verstuurd", "verzonden",
                       "vertrekt", "sale",      "salen",      "enviamos",  "enviado",   "post",
                       "ship",     "send"}) ||
         word_between(part, kind.end, kind.end + 2,
                      {"sent", "verschickt", "versendet", "versandt", "verstuurd", "verzonden",
                       "expediee", "expediees", "raus", "weg", "posted", "shipped"});
}

bool has_way_label(const Sentence& s) {
  const auto* kind = s.first(R::kind);
  constexpr std::uint32_t kLabel = 5;
  if (kind == nullptr || kind->end > kLabel) return false;
  return word_between(s, kind->end, kind->end + 3, {":", "|"});
}

void DeliveryRules::read_context(const Clause& clause, Option& option, bool named_before) const {
  std::vector<std::string> regions;
  bool outside = false;
  for (const auto& mark : clause.part.marks) {
    if (mark.role == R::outside) outside = true;
    if (mark.role == R::kind && is_of_dispatch(clause.part, mark)) continue;
    const bool named =
        std::any_of(clause.part.marks.begin(), clause.part.marks.end(), [&](const PolicyMark& one) {
          return one.role == R::kind && one.value == "express" && one.end <= mark.begin;
        });
    const bool faster =
        option.kind == "express" && mark.value == "next-day" && (named || !has_fact(clause.part));
    // "Parcel shop collection"
    const auto* first = clause.part.first(R::kind);
    const bool point = mark.value == "collection" && first != &mark && first != nullptr &&
                       first->value == "pickup-point";
    // "Parcel shops", and below it "collection is free"
    const bool there = mark.value == "collection" && section_.kind == "pickup-point" &&
                       option.kind == section_.kind && mark.end <= mark.begin + 2;
    // "Express, to your door"
    const bool door = mark.value == "standard" && first != nullptr && first->end <= mark.begin &&
                      first->value == option.kind && is_to_door(clause.part, mark) &&
                      !has_fact(part_of(clause.part, first->end, mark.begin));
    // "Evening delivery | 6pm to 10pm on a day that suits you"
    const bool cell = clause.part.kind == PolicyLineKind::row && named_before &&
                      !has_fact(clause.part) && !option.kind.empty();
    if (mark.role == R::kind && !faster && !point && !there && !door && !cell)
      option.kind = mark.value;
    // a row or an item of a list of ways: "Store | free"
    const bool fetched = mark.role == R::method && mark.value == "store" &&
                         !clause.part.has(R::kind) && clause.part.kind != PolicyLineKind::text;
    if (fetched) option.kind = "collection";
    option.vague =
        option.vague || (mark.role == R::region && (has_unread_remark(clause.part, mark) ||
                                                    has_unread_partner(clause.part, mark)));
    if (mark.role == R::region && !outside &&
        std::find(regions.begin(), regions.end(), mark.value) == regions.end()) {
      regions.emplace_back(mark.value);
    }
  }
  if (!regions.empty()) option.regions = regions;
}

void DeliveryRules::open_section(const Sentence& heading) {
  Option option;
  for (const auto& mark : heading.marks) {
    // "Can I collect it from a parcel shop?"
    const bool fetched = mark.value == "collection" && option.kind == "pickup-point";
    const bool kind = mark.role == R::kind && !fetched && !is_of_dispatch(heading, mark);
    if (kind) option.kind = mark.value;
    if (mark.role == R::region) option.regions.emplace_back(mark.value);
  }
  // "UK shipping", and below it "Next day"
  const bool home = !home_above_.empty() && option.regions.empty() && !option.kind.empty();
  if (home && heading.tokens.size() <= kShortTitle && !heading.has(R::outside)) {
    option.regions = home_above_;
  } else if (option.kind.empty() && option.regions.size() == 1 &&
             is_home(option.regions.front(), frame_)) {
    home_above_ = option.regions;
  } else {
    // "International delivery", and below it "Express"
    const bool fetched = is_fetched(option.kind);
    const bool abroad = section_.kind.empty() && !section_.regions.empty() && home_above_.empty();
    if (abroad && !option.kind.empty() && !fetched && option.regions.empty() &&
        heading.kind == PolicyLineKind::heading) {
      aside_ = true;
    }
    home_above_.clear();
  }
  outer_.reset();
  section_ = option;
  last_ = section_;
  headed_ = heading.has_any(R::delivery, R::kind, R::first_delivery);
  headed_free_ = heading.has(R::free) && heading.has_any(R::delivery, R::kind);
}

void DeliveryRules::ask(const Sentence* question) {
  asked_ = question != nullptr;
  if (outer_) section_ = *std::exchange(outer_, std::nullopt);
  if (question == nullptr || !question->has_any(R::kind, R::region)) return;
  const Option around = section_;
  open_section(*question);
  outer_ = around;
}

/// Places the line names, and whether it is clear which delivery is meant.
void DeliveryRules::note_places(const Sentence& s) {
  for (const auto& mark : s.marks) {
    if (mark.role != R::region) continue;
    const bool plain = !has_fact(s) && s.has(R::delivery) && !s.has_any(R::outside, R::negation);
    if (plain) stated_places_.emplace_back(mark.value);
  }
  // "Post 5.00. Courier 8.00, next day. Free over 100.00"
  const bool fast = is_fast(last_.kind);
  const bool bare = !s.has(R::money) || (fast && s.has(R::free) && !s.has(R::delivery));
  const bool several = line_keys_.size() > 1 || (line_kinds_.size() > 1 && bare) ||
                       (fast && bare && s.has(R::free) && !line_kinds_.empty() &&
                        !line_kinds_.contains(key_of(last_)));
  const bool general = s.has(R::per_parcel) && !has_fact(s);  // "all prices are per order"
  if (doubt_.empty() && several && !general && !is_of_both(s) &&
      !s.has_any(R::region, R::kind, R::dispatch)) {
    doubt_ = "It is not clear which delivery is meant.";
  }
}

/// "Parcel shop: 3.99" alone in a line, and in the next "Delivery in 3-5 days. Free from 40.00";
/// but not a list of such lines.
void DeliveryRules::note_title(const Sentence& s) {
  constexpr std::size_t kTitle = 12;
  title_line_ = s.kind == PolicyLineKind::text && has_label(s) && s.has_any(R::money, R::free) &&
                s.tokens.size() <= kTitle && !s.text.ends_with('.') && !s.text.ends_with('!') &&
                !s.has_any(R::span, R::over, R::from, R::or_more);
  if (!title_line_) return;
  title_.reset();
  if (has_way_label(s) && s.has(R::money) && !below_title_) title_ = last_;
}

/// The option that what stands before the sentence leaves for it.
DeliveryRules::Option DeliveryRules::option_before(const Sentence& s, bool goes_on) const {
  // "Express: 9.90. Order by noon and it is delivered tomorrow": still of express
  const bool fast = is_fast(last_.kind);
  const auto* time = s.first(R::span);
  const bool soon = fast && is_soon(time);
  const bool same = !last_.kind.empty() && (s.has(R::next_day) || soon) && !s.has(R::money);
  const auto* kind = s.first(R::kind);
  const bool way = kind != nullptr && !(fast && same && kind->value == "next-day");
  const bool fetched = is_fetched(last_.kind);
  const bool names_delivery =
      (way || s.has(R::region) ||
       (s.has(R::delivery) && !same && ((fetched && !labelled_) || !is_bare_time(s)))) &&
      !s.has(R::smaller);
  Option option = goes_on && !names_delivery ? last_ : section_;
  const bool below = title_ && below_title_ && !way && !s.has_any(R::region, R::dispatch);
  if (below) option = *title_;
  const bool usual = !s.has(R::kind) || s.first(R::kind)->value == "standard";
  if (option.regions.empty() && has_fact(s) && usual) option.regions = stated_places_;
  return option;
}

/// A new line: nothing of the one before holds, but a title right above it.
void DeliveryRules::new_line() {
  last_ = section_;
  line_keys_.clear();
  line_kinds_.clear();
  below_title_ = std::exchange(title_line_, false);
  if (!below_title_) title_.reset();
}

}  // namespace rangebook
