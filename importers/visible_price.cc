// From all amounts to the one that counts.
#include "importers/visible_price.h"

#include <algorithm>

#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

constexpr std::uint32_t kMostNodes = 60;   // of an element that is one price, or a block of them
constexpr std::size_t kLongestText = 200;  // of such an element
constexpr int kNearLevels = 3;             // around an amount, where its element is named
constexpr std::size_t kShortest = 8;       // of a percentage beside the price
constexpr std::size_t kShortText = 40;     // of an element beside the price that may belong to it

// The different amounts of one role, the lowest first.
std::vector<const ShownAmount*> of_role(const std::vector<ShownAmount>& block, AmountRole role) {
  std::vector<const ShownAmount*> out;
  for (const auto& amount : block) {
    const bool known = std::any_of(out.begin(), out.end(), [&](const ShownAmount* other) {
      return other->amount == amount.amount;
    });
    if (amount.role == role && !known && amount.amount > 0) out.push_back(&amount);
  }
  std::sort(out.begin(), out.end(),
            [](const ShownAmount* a, const ShownAmount* b) { return a->amount < b->amount; });
  return out;
}

constexpr std::string_view kTypeItIn = "Look at the page and type the price into a CSV.";

PriceDoubt several(const std::vector<const ShownAmount*>& amounts) {
  std::string all;
  for (const auto* amount : amounts) all += (all.empty() ? "" : " and ") + amount->text;
  return {"The page shows several prices, and nothing says which one counts: " + all + ".",
          std::string(kTypeItIn), all};
}

bool has_price_name(const PageView& view, HtmlId element) {
  return view.named_near(element, PageWord::price_token, kNearLevels);
}

struct Rank {
  int levels = 0;  ///< from the heading up to what holds both; fewer is better
  bool named = false;
  bool linked = false;
  bool before = false;
  bool bound = false;
  int points() const {
    return (named ? 6 : 0) - levels - (linked ? 6 : 0) - (before ? 2 : 0) - (bound ? 3 : 0);
  }
};

Rank rank_of(const PageView& view, const ShownAmount& amount) {
  Rank rank;
  if (view.heading() != 0) rank.levels = view.levels_apart(view.heading(), amount.element);
  rank.named = has_price_name(view, amount.element);
  rank.linked = view.in_link(amount.element);
  rank.before = amount.element < view.heading();
  rank.bound = amount.lower_bound;
  return rank;
}

bool may_be_price(const ShownAmount& amount) {
  return amount.role != AmountRole::other && amount.role != AmountRole::old && amount.amount > 0;
}

struct Block {
  HtmlId from = 0;
  HtmlId to = 0;
};

bool is_short(const PageView& view, HtmlId id) {
  const HtmlTree& tree = view.tree();
  return tree[id].end - id <= kMostNodes && view.line(id).size() <= kShortText && view.shown(id);
}

using Amounts = std::vector<ShownAmount>;

// Shows an amount, or how much less it is ("-25%").
bool is_of_prices(const PageView& view, HtmlId id, const Amounts& amounts) {
  const std::string line = view.line(id);
  if (!find_money(line).empty() || (line.size() <= kShortest && line.ends_with('%'))) return true;
  return std::any_of(amounts.begin(), amounts.end(),
                     [&](const ShownAmount& amount) { return view.inside(amount.element, id); });
}

// With the elements right beside it that show amounts too ("Was 10 EUR" in a paragraph of its own).
Block with_neighbours(const PageView& view, HtmlId element, const Amounts& amounts) {
  const HtmlTree& tree = view.tree();
  const HtmlId parent = tree[element].parent;
  Block block{element, tree[element].end};
  HtmlId before = parent + 1;
  bool open = false;  // an unbroken row of short elements with amounts leads up to the block
  for (HtmlId at = before; at < tree[parent].end; at = std::max(tree[at].end, at + 1)) {
    if (tree[at].is_text && clean_text(tree[at].text).empty()) continue;
    const bool prices = is_short(view, at) && is_of_prices(view, at, amounts);
    if (at < element && prices && !open) before = at;
    if (at < element) open = prices;
    if (at == element && open) block.from = before;
    if (at <= element) continue;
    if (!prices) break;
    block.to = std::max(tree[at].end, at + 1);
  }
  return block;
}

// What stands around an amount and is still one block of prices.
Block block_around(const PageView& view, HtmlId element, const Amounts& amounts) {
  const HtmlTree& tree = view.tree();
  HtmlId block = element;
  for (HtmlId up = tree[element].parent; up != 0; up = tree[up].parent) {
    if (view.inside(view.heading(), up) && view.heading() != 0) break;
    if (tree[up].end - up > kMostNodes || view.line(up).size() > kLongestText) break;
    block = up;
  }
  return with_neighbours(view, block, amounts);
}

// Of several, the one whose own element is called price; all where that is none or several.
std::vector<const ShownAmount*> called_price(const PageView& view,
                                             std::vector<const ShownAmount*> amounts) {
  const ShownAmount* only = nullptr;
  for (const auto* amount : amounts) {
    if (!view.named(amount->element, PageWord::price_token)) continue;
    if (only != nullptr) return amounts;
    only = amount;
  }
  return only == nullptr ? amounts : std::vector<const ShownAmount*>{only};
}

// The one currency of all amounts, for a price that is shown without a sign.
std::string only_currency(const std::vector<ShownAmount>& amounts) {
  std::string only;
  for (const auto& amount : amounts) {
    if (find_money(amount.text).empty()) continue;
    if (amount.currency.empty() || (!only.empty() && amount.currency != only)) return {};
    only = amount.currency;
  }
  return only;
}

}  // namespace

VisiblePrice price_of_block(const PageView& view, const std::vector<ShownAmount>& block) {
  VisiblePrice out;
  auto old = of_role(block, AmountRole::old);
  auto selling = of_role(block, AmountRole::sale);
  const auto plain = of_role(block, AmountRole::plain);
  const auto weak = of_role(block, AmountRole::weak_old);
  if (selling.empty()) {
    selling = plain.empty() ? weak : plain;
    if (!plain.empty()) old.insert(old.end(), weak.begin(), weak.end());
  } else {
    old.insert(old.end(), plain.begin(), plain.end());
    old.insert(old.end(), weak.begin(), weak.end());
  }
  if (selling.empty()) {
    if (!old.empty()) {
      out.doubt = PriceDoubt{"The page shows a former price only: " + old.back()->text + ".",
                             std::string(kTypeItIn), old.back()->text};
    }
    return out;
  }
  if (selling.size() > 1) selling = called_price(view, std::move(selling));
  const ShownAmount& price = *selling.front();
  out.element = price.element;
  out.currency = price.currency;
  if (price.lower_bound) {
    out.doubt = PriceDoubt{
        "The page shows a price range or a price \"from\", not the price of a "
        "variant.",
        std::string(kTypeItIn), price.text};
  } else if (selling.size() > 1) {
    out.doubt = several(selling);
  } else {
    out.price = price.text;
  }
  const auto highest = std::max_element(
      old.begin(), old.end(), [](const auto* a, const auto* b) { return a->amount < b->amount; });
  if (highest != old.end() && (*highest)->amount > price.amount) out.full_price = (*highest)->text;
  return out;
}

std::optional<VisiblePrice> find_visible_price(const PageView& view,
                                               const std::vector<ShownAmount>& amounts) {
  const ShownAmount* best = nullptr;
  Rank best_rank;
  for (const auto& amount : amounts) {
    if (!may_be_price(amount)) continue;
    const Rank rank = rank_of(view, amount);
    if (best != nullptr && rank.points() <= best_rank.points()) continue;
    best = &amount;
    best_rank = rank;
  }
  if (best == nullptr) return std::nullopt;
  const Block block = block_around(view, best->element, amounts);
  std::vector<ShownAmount> together;
  for (const auto& amount : amounts) {
    if (block.from <= amount.element && amount.element < block.to) together.push_back(amount);
  }
  VisiblePrice price = price_of_block(view, together);
  if (price.element == 0) price.element = best->element;
  if (price.currency.empty() && find_money(price.price).empty()) {
    price.currency = only_currency(amounts);
  }
  price.nearest = best->element;
  return price;
}

}  // namespace rangebook
