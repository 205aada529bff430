// A kind of goods is the shop's own where sentences on delivery and windows name it.
#include "importers/policy_own_goods.h"

#include <algorithm>
#include <map>

namespace rangebook {
namespace {

using R = PolicyRole;

constexpr std::size_t kListed = 4;
constexpr int kOften = 2;

bool is_wide(std::string_view kind) {
  return kind == "shoes" || kind == "jewellery" || kind == "hats";
}

bool refuses(const PolicySentence& s) {
  return s.has_any(R::no_return, R::final_sale, R::outside, R::only, R::seal) ||
         s.has_any(R::likewise, R::negation, R::credit);
}

/// "Engraved jewellery", "jewellery made to measure": some of it.
bool is_some(const PolicySentence& s, const PolicyMark& item) {
  const auto touches = [&](const PolicyMark& one) {
    return one.role == R::item && &one != &item &&
           (one.end + 1 >= item.begin && one.begin <= item.end + 1);
  };
  return is_unread(s, item.end) || (item.begin > 0 && is_unread(s, item.begin - 1)) ||
         std::any_of(s.marks.begin(), s.marks.end(), touches);
}

/// Said of what is ordered: its delivery, its window, its price; no other goods beside it.
bool is_of_order(const PolicySentence& s, const PolicyMark& item) {
  const bool alone = std::none_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == R::item && one.value != item.value;
  });
  return alone && !s.has(R::aside) &&
         (s.has_any(R::delivery, R::dispatch, R::kind) || (s.has(R::returns) && s.has(R::span)));
}

}  // namespace

std::set<std::string_view> own_goods(const std::vector<PolicySentence>& sentences) {
  std::map<std::string_view, int> named;
  std::map<std::string_view, bool> ordered;
  std::set<std::string_view> refused;
  for (const auto& s : sentences) {
    const bool listed = s.kind == PolicyLineKind::item && s.tokens.size() <= kListed;
    for (const auto& item : s.marks) {
      if (item.role != R::item || !is_wide(item.value)) continue;
      const bool some = is_some(s, item);
      if (!some && (listed || refuses(s))) refused.insert(item.value);
      if (!some && !refuses(s)) {
        ++named[item.value];
        ordered[item.value] = ordered[item.value] || is_of_order(s, item);
      }
    }
  }
  std::set<std::string_view> own;
  for (const auto& [kind, count] : named) {
    if (count >= kOften && ordered[kind] && refused.count(kind) == 0) own.insert(kind);
  }
  return own;
}

void leave_out_goods(PolicySentence& sentence, const std::set<std::string_view>& goods) {
  if (goods.empty() || refuses(sentence)) return;
  std::erase_if(sentence.marks, [&](const PolicyMark& one) {
    return one.role == R::item && goods.count(one.value) > 0;
  });
}

}  // namespace rangebook
