// From all amounts to the one that counts.
#include "importers/visible_price.h"

#include <algorithm>
#include <map>

#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

constexpr std::uint32_t kMostNodes = 60;   // of an element that is one price, or a block of them
constexpr std::size_t kLongestText = 200;  // of such an element
constexpr int kNearLevels = 3;             // around an amount, where its element is named
constexpr std::size_t kContext = 40;       // bytes of text before an amount that explain it

std::string_view tail(std::string_view text) {
  return text.size() > kContext ? text.substr(text.size() - kContext) : text;
}

// The shown text that stands before an element, short.
std::string text_before(const PageView& view, HtmlId element) {
  const HtmlTree& tree = view.tree();
  std::string out;
  for (HtmlId at = element; at > 1 && element - at < 12 && out.size() < kContext;) {
    --at;
    if (tree[at].is_text && !view.hidden(at)) out.insert(0, std::string(tree[at].text) + " ");
    const bool apart = tree[at].name == "h1" || tree[at].name == "h2" || tree[at].name == "form";
    if (apart) break;
  }
  return std::string(tail(folded_text(out)));
}

// The words between the last amount before and this one.
std::string words_before(const PageView& view, HtmlId element, std::string_view line,
                         std::size_t begin) {
  std::string before = folded_text(line.substr(0, begin));
  if (before.empty()) before = text_before(view, element);
  const auto digit = before.find_last_of("0123456789");
  if (digit != before.npos) before.erase(0, digit + 1);
  while (!before.empty() && (before.back() == ':' || before.back() == ' ')) before.pop_back();
  return before;
}

bool is_per_something(std::string_view after) {
  const std::string text = folded_text(after.substr(0, std::min(after.size(), kContext)));
  return text.starts_with('/') || text.starts_with("per ") || text.starts_with("pro ") ||
         text.starts_with("par ") || text.starts_with("al mese") || text.starts_with("off") ||
         text.starts_with("je ") || text.starts_with("x ") || text.starts_with("/ ");
}

AmountRole role_of(const PageView& view, HtmlId element, const std::string& before,
                   std::string_view after) {
  const auto named = [&](PageWord role, int levels) {
    return view.named_near(element, role, levels);
  };
  if (is_per_something(after) || ends_with_phrase(before, PageWord::saving) ||
      has_phrase(before, PageWord::other_amount) || before == "x" || before == "\u00d7" ||
      named(PageWord::unit_token, 1)) {
    return AmountRole::other;
  }
  if (view.struck(element)) return AmountRole::old;
  const bool sale = named(PageWord::sale_token, 1);
  if (named(PageWord::saving_token, 0) && !sale) return AmountRole::other;
  if (view.named(element, PageWord::old_token)) return AmountRole::old;
  if (ends_with_phrase(before, PageWord::was)) return AmountRole::old;
  if (ends_with_phrase(before, PageWord::now)) return AmountRole::sale;
  if (view.named(element, PageWord::sale_token)) return AmountRole::sale;
  if (view.named(view.tree()[element].parent, PageWord::old_token)) return AmountRole::old;
  if (view.named(element, PageWord::weak_old_token)) return AmountRole::weak_old;
  return sale ? AmountRole::sale : AmountRole::plain;
}

// "10 - 20 EUR": two amounts with nothing but a dash or a joining word between.
bool joins(std::string_view between) {
  const std::string word = folded_text(between);
  return word == "-" || word == "\u2013" || word == "\u2014" || word == "to" || word == "bis" ||
         word == "a" || word == "\u00e0" || word == "tot" || word == "hasta";
}

class Finder {
 public:
  explicit Finder(const PageView& view) : view_(view) {}

  // Descendants stand behind their ancestors, so going backwards meets them first.
  std::vector<ShownAmount> run() {
    const HtmlTree& tree = view_.tree();
    for (HtmlId id = static_cast<HtmlId>(tree.size()); id-- > 1;) {
      const HtmlNode& node = tree[id];
      if (node.is_text || node.end - id > kMostNodes || !view_.shown(id)) continue;
      if (node.name == "select" || node.name == "option") continue;
      look(id);
    }
    std::vector<ShownAmount> out;
    for (const auto& [id, amounts] : claims_) {
      out.insert(out.end(), amounts.begin(), amounts.end());
    }
    return out;
  }

 private:
  void look(HtmlId id) {
    const std::string line = view_.line(id);
    if (line.size() > kLongestText) return;
    const auto found = find_money(line);
    if (found.empty()) return;
    const auto first = claims_.lower_bound(id + 1);
    const auto last = claims_.lower_bound(view_.tree()[id].end);
    std::vector<std::int64_t> inner;
    for (auto at = first; at != last; ++at) {
      for (const auto& amount : at->second) inner.push_back(amount.amount);
    }
    mark_ranges(line, found, first, last);
    std::vector<ShownAmount> fresh;
    for (std::size_t i = 0; i < found.size(); ++i) {
      const auto known = std::find(inner.begin(), inner.end(), found[i].amount);
      if (known == inner.end()) fresh.push_back(shown(id, line, found, i));
      if (known != inner.end()) inner.erase(known);
    }
    if (fresh.empty()) return;
    // An amount that is seen no more was a part of this one, such as "$29" of "$29.99".
    for (auto at = first; at != last;) {
      std::erase_if(at->second, [&](const ShownAmount& amount) {
        return std::find(inner.begin(), inner.end(), amount.amount) != inner.end();
      });
      at = at->second.empty() ? claims_.erase(at) : std::next(at);
    }
    claims_[id] = std::move(fresh);
  }

  ShownAmount shown(HtmlId id, std::string_view line, const std::vector<PageMoney>& all,
                    std::size_t i) const {
    const PageMoney& money = all[i];
    const std::string before = words_before(view_, id, line, money.begin);
    ShownAmount out{.element = id, .text = {}, .currency = money.currency, .amount = money.amount};
    out.text = line.substr(money.begin, money.end - money.begin);
    const bool next_joined =
        i + 1 < all.size() && joins(line.substr(money.end, all[i + 1].begin - money.end));
    const bool joined = i > 0 && joins(line.substr(all[i - 1].end, money.begin - all[i - 1].end));
    out.lower_bound = next_joined || joined || ends_with_phrase(before, PageWord::from);
    out.role = role_of(view_, id, before, line.substr(money.end));
    return out;
  }

  // A range whose ends stand in elements of their own.
  template <typename Iterator>
  void mark_ranges(std::string_view line, const std::vector<PageMoney>& all, Iterator first,
                   Iterator last) {
    for (std::size_t i = 1; i < all.size(); ++i) {
      if (!joins(line.substr(all[i - 1].end, all[i].begin - all[i - 1].end))) continue;
      for (auto at = first; at != last; ++at) {
        for (auto& amount : at->second) {
          if (amount.amount == all[i].amount || amount.amount == all[i - 1].amount) {
            amount.lower_bound = true;
          }
        }
      }
    }
  }

  const PageView& view_;
  std::map<HtmlId, std::vector<ShownAmount>> claims_;  ///< by element
};

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
  int points() const { return (named ? 6 : 0) - levels - (linked ? 6 : 0) - (before ? 2 : 0); }
};

Rank rank_of(const PageView& view, const ShownAmount& amount) {
  Rank rank;
  if (view.heading() != 0) rank.levels = view.levels_apart(view.heading(), amount.element);
  rank.named = has_price_name(view, amount.element);
  rank.linked = view.in_link(amount.element);
  rank.before = amount.element < view.heading();
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
  return tree[id].end - id <= kMostNodes && view.line(id).size() <= kContext && view.shown(id);
}

// With the elements right beside it that show amounts too ("Was 10 EUR" in a paragraph of its own).
Block with_neighbours(const PageView& view, HtmlId element) {
  const HtmlTree& tree = view.tree();
  const HtmlId parent = tree[element].parent;
  Block block{element, tree[element].end};
  HtmlId before = parent + 1;
  bool open = false;  // an unbroken row of short elements with amounts leads up to the block
  for (HtmlId at = before; at < tree[parent].end; at = std::max(tree[at].end, at + 1)) {
    if (tree[at].is_text && clean_text(tree[at].text).empty()) continue;
    const bool amounts = is_short(view, at) && !find_money(view.line(at)).empty();
    if (at < element && amounts && !open) before = at;
    if (at < element) open = amounts;
    if (at == element && open) block.from = before;
    if (at <= element) continue;
    if (!amounts) break;
    block.to = std::max(tree[at].end, at + 1);
  }
  return block;
}

// What stands around an amount and is still one block of prices.
Block block_around(const PageView& view, HtmlId element) {
  const HtmlTree& tree = view.tree();
  HtmlId block = element;
  for (HtmlId up = tree[element].parent; up != 0; up = tree[up].parent) {
    if (view.inside(view.heading(), up) && view.heading() != 0) break;
    if (tree[up].end - up > kMostNodes || view.line(up).size() > kLongestText) break;
    block = up;
  }
  return with_neighbours(view, block);
}

}  // namespace

std::vector<ShownAmount> shown_amounts(const PageView& view) { return Finder(view).run(); }

VisiblePrice price_of_block(const std::vector<ShownAmount>& block) {
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
  const Block block = block_around(view, best->element);
  std::vector<ShownAmount> together;
  for (const auto& amount : amounts) {
    if (block.from <= amount.element && amount.element < block.to) together.push_back(amount);
  }
  VisiblePrice price = price_of_block(together);
  if (price.element == 0) price.element = best->element;
  return price;
}

}  // namespace rangebook
