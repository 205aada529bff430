// Elements are met innermost first; each amount belongs to the smallest that holds all of it.
#include "importers/page_amounts.h"

#include <algorithm>
#include <map>

#include "importers/page_merge.h"
#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

constexpr std::uint32_t kMostNodes = 60;   // of an element that is one price, or a block of them
constexpr std::size_t kLongestText = 200;  // of such an element
constexpr std::size_t kContext = 40;       // bytes of text before an amount that explain it
constexpr std::ptrdiff_t kProseWords = 8;
constexpr std::size_t kLongestNumber = 12;

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

// The text before an amount, from the amount before it on.
std::string text_ahead(const PageView& view, HtmlId element, std::string_view line,
                       std::size_t from, std::size_t begin) {
  std::string ahead = folded_text(line.substr(from, begin - from));
  if (ahead.empty() && from == 0) ahead = text_before(view, element);
  while (!ahead.empty() && (ahead.back() == ':' || ahead.back() == ' ')) ahead.pop_back();
  return ahead;
}

// Of that, the words behind the last number.
std::string words_before(std::string ahead) {
  const auto digit = ahead.find_last_of("0123456789");
  if (digit != ahead.npos) ahead.erase(0, digit + 1);
  while (!ahead.empty() && ahead.front() == ' ') ahead.erase(0, 1);
  const auto last = ahead.rfind(' ');
  if (last != ahead.npos && is_word(ahead.substr(last + 1), PageWord::approximately)) {
    ahead.resize(last);
  }
  return ahead;
}

// "2 for", "3 pour": a count and a joining word.
bool is_bundle(std::string_view ahead) {
  const auto space = ahead.rfind(' ');
  if (space == ahead.npos || !is_word(ahead.substr(space + 1), PageWord::bundle)) return false;
  const auto count = ahead.substr(0, space);
  const auto begin = count.find_last_not_of("0123456789");
  const auto digits = begin == count.npos ? count : count.substr(begin + 1);
  const bool free = begin == count.npos || count[begin] == ' ' || count[begin] == '(';
  return free && !digits.empty() && digits.size() <= 2;
}

bool is_per_something(std::string_view after) {
  const std::string text = folded_text(after.substr(0, std::min(after.size(), kContext)));
  return text.starts_with('/') || starts_with_phrase(text, PageWord::behind_other);
}

// Neither at the beginning nor the end of a line, among so many words: running text.
bool is_in_prose(std::string_view line, const std::vector<PageMoney>& all, std::size_t i) {
  if (all[i].begin == 0) return false;
  std::string words(line);
  for (auto money = all.rbegin(); money != all.rend(); ++money) {
    words.replace(money->begin, money->end - money->begin, " ");
  }
  words = folded_text(words);
  return std::count(words.begin(), words.end(), ' ') >= kProseWords;
}

/// What stands around an amount.
struct Context {
  std::string ahead;       ///< the text before it
  std::string_view after;  ///< the text behind it
  bool in_prose = false;
};

// A filter ("0 - 50 EUR") or a service to add, with a box to tick.
bool is_to_tick(const PageView& view, HtmlId element) {
  const HtmlTree& tree = view.tree();
  HtmlId label = element;
  for (int level = 0; level < 3 && label != 0 && !tree.is(label, "label"); ++level) {
    label = tree[label].parent;
  }
  for (HtmlId at = label; tree.is(label, "label") && at < tree[label].end; ++at) {
    if (tree.is(at, "input") && tree.attribute(at, "type") == "checkbox") return true;
  }
  return false;
}

bool is_other(const PageView& view, HtmlId element, const Context& around) {
  const std::string before = words_before(around.ahead);
  const bool times = before == "x" || before.ends_with(" x") || before.ends_with("\u00d7");
  return times || is_bundle(around.ahead) || is_per_something(around.after) ||
         (ends_with_phrase(before, PageWord::saving) && !before.starts_with('%')) ||
         is_to_tick(view, element) || has_phrase(before, PageWord::other_amount) ||
         has_stem(before, PageWord::other_stem) ||
         view.named_near(element, PageWord::unit_token, 1) ||
         (around.in_prose && !view.named(element, PageWord::price_token));
}

AmountRole role_of(const PageView& view, HtmlId element, const Context& around) {
  if (is_other(view, element, around)) return AmountRole::other;
  if (view.struck(element)) return AmountRole::old;
  const std::string before = words_before(around.ahead);
  const bool sale = view.named_near(element, PageWord::sale_token, 1);
  if (view.named(element, PageWord::saving_token) && !sale) return AmountRole::other;
  if (view.named(element, PageWord::old_token)) return AmountRole::old;
  if (ends_with_phrase(before, PageWord::was)) return AmountRole::old;
  if (ends_with_phrase(before, PageWord::weak_was)) return AmountRole::weak_old;
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

// "42,50" and nothing else: the sign of currency is drawn by the page's style, or left out.
std::vector<PageMoney> number_alone(std::string_view line) {
  const bool plain = line.find_first_not_of("0123456789.,' ") == line.npos;
  const auto sign = line.find_last_of(".,");
  const bool decimals = sign != line.npos && sign > 0 && line.size() - sign == 3;
  const auto amount = plain && decimals ? comparable_amount(line) : std::nullopt;
  if (!amount || line.size() > kLongestNumber) return {};
  return {{.begin = 0, .end = line.size(), .currency = {}, .amount = *amount}};
}

// "kr" is the crown of the country whose language the page is in: ISO 639-1 and ISO 4217.
std::string crown_of(const HtmlTree& tree) {
  for (HtmlId id = 1; id < tree.size(); ++id) {
    if (!tree.is(id, "html")) continue;
    const std::string language = folded_text(tree.attribute(id, "lang").value_or("").substr(0, 2));
    if (language == "da") return "DKK";
    if (language == "sv") return "SEK";
    if (language == "nb" || language == "nn" || language == "no") return "NOK";
    return language == "is" ? "ISK" : "";
  }
  return {};
}

bool has_crown(std::string_view text) { return folded_text(text).find("kr") != text.npos; }

class Finder {
 public:
  explicit Finder(const PageView& view) : view_(view) {}

  // Descendants stand behind their ancestors, so going backwards meets them first.
  std::vector<ShownAmount> run() {
    const HtmlTree& tree = view_.tree();
    for (HtmlId id = static_cast<HtmlId>(tree.size()); id-- > 1;) {
      const HtmlNode& node = tree[id];
      if (node.is_text || node.end - id > kMostNodes || !view_.displayed(id)) continue;
      if (node.name == "select" || node.name == "option") continue;
      look(id);
    }
    find_bare_numbers();
    std::vector<ShownAmount> out;
    for (const auto& [id, amounts] : claims_) {
      out.insert(out.end(), amounts.begin(), amounts.end());
    }
    const std::string crown = crown_of(tree);
    for (auto& amount : out) {
      const bool crowns = amount.currency.empty() && has_crown(amount.text);
      if (crowns) amount.currency = crown;
    }
    return out;
  }

 private:
  // Numbers without a sign, in elements called price where no amount with a sign stands.
  void find_bare_numbers() {
    const HtmlTree& tree = view_.tree();
    std::vector<bool> signed_around(tree.size(), false);
    for (const auto& [id, amounts] : claims_) {
      std::fill(signed_around.begin() + id, signed_around.begin() + tree[id].end, true);
      for (HtmlId up = id; up != 0 && (up == id || !signed_around[up]); up = tree[up].parent) {
        signed_around[up] = true;
      }
    }
    for (HtmlId id = static_cast<HtmlId>(tree.size()); id-- > 1;) {
      const HtmlNode& node = tree[id];
      if (node.is_text || signed_around[id] || node.end - id > kMostNodes) continue;
      if (!view_.shown(id) || !view_.named(id, PageWord::price_token)) continue;
      const std::string line = view_.line(id);
      const auto found = number_alone(line);
      if (!found.empty()) claims_[id] = {shown(id, line, found, 0)};
      if (!found.empty()) signed_around[tree[id].parent] = true;
    }
  }

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
    const Context around{
        .ahead = text_ahead(view_, id, line, i == 0 ? 0 : all[i - 1].end, money.begin),
        .after = line.substr(money.end),
        .in_prose = is_in_prose(line, all, i)};
    ShownAmount out{.element = id, .text = {}, .currency = money.currency, .amount = money.amount};
    out.text = line.substr(money.begin, money.end - money.begin);
    const bool next_joined =
        i + 1 < all.size() && joins(line.substr(money.end, all[i + 1].begin - money.end));
    const bool joined = i > 0 && joins(line.substr(all[i - 1].end, money.begin - all[i - 1].end));
    out.lower_bound =
        next_joined || joined || ends_with_phrase(words_before(around.ahead), PageWord::from);
    out.role = role_of(view_, id, around);
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

}  // namespace

std::vector<ShownAmount> shown_amounts(const PageView& view) { return Finder(view).run(); }

}  // namespace rangebook
