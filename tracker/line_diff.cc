// Comparing the card, the colours and the stock of one line; sizes and prices have files of their
// own.
#include "tracker/line_diff.h"

#include <algorithm>
#include <string>
#include <vector>

#include "tracker/category_parser.h"
#include "tracker/link_keys.h"
#include "tracker/size_diff.h"
#include "tracker/text_fold.h"
#include "tracker/variant_match.h"

namespace rangebook {
namespace {

bool same_card(const LinePair& pair) {
  const auto& then = pair.before->hashes;
  const auto& now = pair.after->hashes;
  return then && now ? then->card == now->card : pair.then().card == pair.now().card;
}

bool same_offers(const LinePair& pair) {
  const auto& then = pair.before->hashes;
  const auto& now = pair.after->hashes;
  return then && now ? then->offers == now->offers : pair.then().offers == pair.now().offers;
}

/// `Maya wrap dress in..` of a listing page, without its dots; nothing if the name is not cut.
std::optional<std::string_view> cut_name(std::string_view name) {
  for (const std::string_view dots : {"...", "\xE2\x80\xA6"}) {
    if (name.ends_with(dots)) return trim_text(name.substr(0, name.size() - dots.size()));
  }
  return std::nullopt;
}

/// One is the other, cut short by a page that had no room.
bool cut_short(const std::string& a, const std::string& b) {
  const auto begins = [](const std::string& whole, const std::string& cut) {
    const auto shown = cut_name(cut);
    return shown && !shown->empty() && whole.starts_with(*shown);
  };
  return begins(a, b) || begins(b, a);
}

void diff_name_and_code(const LinePair& pair, PairChanges& changes) {
  const LineCard& then = pair.then().card;
  const LineCard& now = pair.now().card;
  const std::string name_then = space_folded(then.name);
  const std::string name_now = space_folded(now.name);
  if (name_then != name_now && !cut_short(name_then, name_now)) {
    changes.add(ChangeKind::line_renamed, name_fact(*pair.before), name_fact(*pair.after));
  }
  const std::string_view code_then = trim_text(then.line_code);
  const std::string_view code_now = trim_text(now.line_code);
  if (!code_then.empty() && !code_now.empty() && code_then != code_now) {
    changes.add(ChangeKind::line_recoded, name_fact(*pair.before), name_fact(*pair.after));
  }
}

enum class Compared : std::uint8_t { same, differs, not_stated };

const CompositionPart* find_part(const Composition& composition, const std::string& part) {
  const auto found =
      std::find_if(composition.parts.begin(), composition.parts.end(),
                   [&part](const CompositionPart& each) { return each.part == part; });
  return found == composition.parts.end() ? nullptr : &*found;
}

/// The canonical text leaves out what is no fibre, such as that it is recycled.
bool same_fibres(const CompositionPart& a, const CompositionPart& b) {
  return to_string(Composition{{a}}) == to_string(Composition{{b}});
}

/// Parts of `a` against `b`. A part that `b` lacks is gone only if the capture of `b` names such
/// parts at all.
Compared compare_parts(const Composition& a, const Composition& b, CaptureDetail& detail_b) {
  Compared result = Compared::same;
  for (const CompositionPart& part : a.parts) {
    const CompositionPart* other = find_part(b, part.part);
    if (other != nullptr ? !same_fibres(*other, part) : detail_b.states_part(part.part)) {
      return Compared::differs;
    }
    if (other == nullptr) result = Compared::not_stated;
  }
  return result;
}

Compared compare_compositions(const LinePair& pair, Interpreter& interpreter) {
  const std::string& then = pair.then().card.composition;
  const std::string& now = pair.now().card.composition;
  const auto& parts_then = interpreter.composition(then);
  const auto& parts_now = interpreter.composition(now);
  if (!parts_then || !parts_now) {
    return fold_text(space_folded(then)) == fold_text(space_folded(now)) ? Compared::same
                                                                         : Compared::differs;
  }
  const Compared gone = compare_parts(*parts_then, *parts_now, *pair.detail_after);
  const Compared came = compare_parts(*parts_now, *parts_then, *pair.detail_before);
  if (gone == Compared::differs || came == Compared::differs) return Compared::differs;
  return gone == Compared::same ? came : gone;
}

void diff_composition(const LinePair& pair, Interpreter& interpreter, PairChanges& changes,
                      SilenceLog& silences) {
  const std::string& then = pair.then().card.composition;
  const std::string& now = pair.now().card.composition;
  if (then == now) return;
  if (then.empty() || now.empty()) {
    silences.add(Silence::composition, pair.now().card);
    return;
  }
  const Compared compared = compare_compositions(pair, interpreter);
  if (compared == Compared::not_stated) {
    silences.add(Silence::composition_parts, pair.now().card);
  } else if (compared == Compared::differs) {
    changes.add(ChangeKind::composition_changed, CompositionFact{then}, CompositionFact{now});
  }
}

/// The line is filed more closely on one side, by a capture that knows the closer category, while
/// the other never uses it.
bool only_filed_closer(std::string_view then, std::string_view now, const LinePair& pair) {
  if (category_within(now, then)) return !pair.detail_before->states_category(now);
  if (category_within(then, now)) return !pair.detail_after->states_category(then);
  return false;
}

// A category read off the name is not stated by the shop: a new name would look like a move.
void diff_category(const LinePair& pair, Interpreter& interpreter, PairChanges& changes) {
  if (pair.then().card.category == pair.now().card.category) return;
  const std::string_view then = interpreter.stated_category(pair.then().card);
  const std::string_view now = interpreter.stated_category(pair.now().card);
  if (then == now || then == kUnsorted || now == kUnsorted) return;
  if (only_filed_closer(then, now, pair)) return;
  changes.add(ChangeKind::category_moved, CategoryFact{std::string(then)},
              CategoryFact{std::string(now)});
}

bool states_all(const std::vector<std::string>& labels) {
  return !labels.empty() && std::none_of(labels.begin(), labels.end(),
                                         [](const std::string& label) { return label.empty(); });
}

/// The keys of a side's colours, each with its first spelling.
std::vector<std::pair<std::string, std::string>> keyed(const std::vector<std::string>& colours,
                                                       Interpreter& interpreter) {
  std::vector<std::pair<std::string, std::string>> keys;
  keys.reserve(colours.size());
  for (const std::string& colour : colours) {
    keys.emplace_back(interpreter.colour_key(colour), colour);
  }
  std::sort(keys.begin(), keys.end());
  const auto same = [](const auto& a, const auto& b) { return a.first == b.first; };
  keys.erase(std::unique(keys.begin(), keys.end(), same), keys.end());
  return keys;
}

/// Colours of `side` whose key `other` does not have.
std::vector<std::string> colours_missing_in(
    const std::vector<std::pair<std::string, std::string>>& other,
    const std::vector<std::pair<std::string, std::string>>& side) {
  std::vector<std::string> missing;
  for (const auto& [key, colour] : side) {
    const auto found = std::lower_bound(other.begin(), other.end(), std::pair(key, std::string()));
    if (found == other.end() || found->first != key) missing.push_back(colour);
  }
  return missing;
}

void diff_colours(const LinePair& pair, Interpreter& interpreter, PairChanges& changes,
                  SilenceLog& silences) {
  const auto& then = pair.then().offers.colours;
  const auto& now = pair.now().offers.colours;
  if (then == now) return;
  if (!states_all(then) || !states_all(now)) {
    silences.add(Silence::colours, pair.now().card);
    return;
  }
  const auto keys_then = keyed(then, interpreter);
  const auto keys_now = keyed(now, interpreter);
  if (!pair.refused_then) {
    for (std::string& colour : colours_missing_in(keys_then, keys_now)) {
      changes.add(ChangeKind::colour_added, std::nullopt, ColourFact{std::move(colour)});
    }
  }
  if (!pair.refused_now) {
    for (std::string& colour : colours_missing_in(keys_now, keys_then)) {
      changes.add(ChangeKind::colour_dropped, ColourFact{std::move(colour)}, std::nullopt);
    }
  }
}

struct StockCount {
  StockFact fact;
  bool all_stated = true;

  bool none_left() const { return all_stated && fact.offered > 0 && fact.in_stock == 0; }
};

StockCount count_stock(const LineOffers& offers) {
  StockCount count;
  for (const Offer& offer : offers.offers) {
    if (offer.stock == Stock::unknown) {
      count.all_stated = false;
    } else {
      ++count.fact.offered;
    }
    if (offer.stock == Stock::in_stock) ++count.fact.in_stock;
  }
  return count;
}

// Sold out is said only where the stock of every variant is stated and no row was refused: a
// variant nobody knows about may be there to be had.
void diff_stock(const LinePair& pair, PairChanges& changes, SilenceLog& silences) {
  const StockCount then = count_stock(pair.then().offers);
  const StockCount now = count_stock(pair.now().offers);
  if (then.none_left() && now.fact.in_stock > 0 && !pair.refused_then) {
    changes.add(ChangeKind::stock_back, then.fact, now.fact);
  }
  if (then.fact.in_stock > 0 && now.none_left() && !pair.refused_now) {
    changes.add(ChangeKind::stock_out, then.fact, now.fact);
  }
  if (then.all_stated != now.all_stated) silences.add(Silence::stock, pair.now().card);
}

}  // namespace

CategoryPair categories_of(const LinePair& pair, Interpreter& interpreter) {
  const std::string_view then = interpreter.category(pair.then().card);
  const std::string_view now = interpreter.category(pair.now().card);
  if (then == now) return {then, now};
  const bool states_then = interpreter.stated_category(pair.then().card) != kUnsorted;
  const bool states_now = interpreter.stated_category(pair.now().card) != kUnsorted;
  if (states_then && states_now) {
    if (!only_filed_closer(then, now, pair)) return {then, now};
    return category_within(now, then) ? CategoryPair{now, now} : CategoryPair{then, then};
  }
  if (states_then != states_now)
    return states_now ? CategoryPair{now, now} : CategoryPair{then, then};
  // Both are read off names, and the line was renamed: any one will do, the same when swapped.
  if (then == kUnsorted || now == kUnsorted) {
    return then == kUnsorted ? CategoryPair{now, now} : CategoryPair{then, then};
  }
  return then < now ? CategoryPair{then, then} : CategoryPair{now, now};
}

std::optional<LineIndexPrices> diff_line(const LinePair& pair, Interpreter& interpreter,
                                         PairChanges& changes, SilenceLog& silences) {
  if (!same_card(pair)) {
    diff_name_and_code(pair, changes);
    diff_composition(pair, interpreter, changes, silences);
    diff_category(pair, interpreter, changes);
  }
  if (same_offers(pair)) return unchanged_prices(pair.now().offers);
  diff_colours(pair, interpreter, changes, silences);
  diff_sizes(pair, changes, silences);
  diff_stock(pair, changes, silences);
  return diff_prices(pair, interpreter, changes, silences);
}

}  // namespace rangebook
