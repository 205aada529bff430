// Numbers first, then the signs beside them.
#include "importers/page_money.h"

#include <algorithm>
#include <optional>
#include <unordered_map>

#include "importers/byte_search.h"
#include "importers/page_merge.h"
#include "importers/page_words.h"
#include "schema/embedded.h"

namespace rangebook {
namespace {

constexpr std::size_t kLongestSign = 12;
constexpr std::size_t kLongestNumber = 20;
constexpr std::string_view kNoBreak = "\u00a0";
constexpr std::string_view kThinNoBreak = "\u202f";

// Short abbreviations that are written beside prices and mean nothing else there.
bool is_short_sign(std::string_view sign) {
  return sign == "kr" || sign == "zł" || sign == "kč" || sign == "tl" || sign == "rs" ||
         sign == "fr" || sign == "lei" || sign == "rm";
}

bool is_all_letters(std::string_view sign) {
  return std::all_of(sign.begin(), sign.end(), is_ascii_letter);
}

/// Folded signs and the currency each means (empty where several share it).
const std::unordered_map<std::string, std::string>& signs() {
  static const auto all = [] {
    std::unordered_map<std::string, std::string> out;
    for (const auto& row : table_rows("tables/currencies.tsv")) {
      out.emplace(folded_text(row.at(0)), std::string(row.at(0)));
    }
    for (const auto& row : table_rows("tables/currency_signs.tsv")) {
      const auto use = row.at(1);
      const std::string sign = folded_text(row.at(0));
      if (use == "word" || use == "past") out.erase(sign);
      if (use == "word" || use == "past") continue;
      const bool risky = is_all_letters(sign) && (sign.size() < 3 || use == "shared");
      if (risky && !is_short_sign(sign)) continue;
      const auto currencies = row.at(2);
      out[sign] = use == "shared" ? "" : std::string(currencies.substr(0, 3));
    }
    return out;
  }();
  return all;
}

std::size_t space_at(std::string_view text, std::size_t at) {
  const auto rest = text.substr(at);
  if (rest.starts_with(' ')) return 1;
  if (rest.starts_with(kNoBreak)) return kNoBreak.size();
  return rest.starts_with(kThinNoBreak) ? kThinNoBreak.size() : 0;
}

bool is_digit_at(std::string_view text, std::size_t at) {
  return at < text.size() && is_ascii_digit(text[at]);
}

bool three_digits_at(std::string_view text, std::size_t at) {
  return is_digit_at(text, at) && is_digit_at(text, at + 1) && is_digit_at(text, at + 2) &&
         !is_digit_at(text, at + 3);
}

// Behind the number that begins at `at`: digits, separators between digits, spaces only before
// three digits, and the dash of "49,-".
std::size_t number_end(std::string_view text, std::size_t at) {
  for (;;) {
    while (is_digit_at(text, at)) ++at;
    if (at >= text.size()) return at;
    const std::size_t gap = space_at(text, at);
    const bool separator = text[at] == '.' || text[at] == ',' || text[at] == '\'';
    if (separator && is_digit_at(text, at + 1)) {
      ++at;
    } else if (gap > 0 && three_digits_at(text, at + gap)) {
      at += gap;
    } else if ((text[at] == ',' || text[at] == '.' || text[at] == ':') && at + 1 < text.size() &&
               (text[at + 1] == '-' || text.substr(at + 1).starts_with("\u2013"))) {
      return at + (text[at + 1] == '-' ? 2 : 4);
    } else {
      return at;
    }
  }
}

struct Sign {
  std::size_t size = 0;
  std::string currency;
};

bool is_letter(char c) { return is_ascii_letter(c); }

// The longest sign that `text` begins with, or ends with.
std::optional<Sign> bare_sign_at(std::string_view text, bool at_end) {
  const std::size_t most = std::min(text.size(), kLongestSign);
  for (std::size_t size = most; size > 0; --size) {
    const auto part = at_end ? text.substr(text.size() - size) : text.substr(0, size);
    const char edge = at_end ? part.front() : part.back();
    const bool more = size < text.size();
    const char beyond = !more ? ' ' : at_end ? text[text.size() - size - 1] : text[size];
    if (is_letter(edge) && is_letter(beyond)) continue;
    if (part.front() == ' ' || part.back() == ' ') continue;
    const auto found = signs().find(folded_text(part));
    if (found != signs().end()) return Sign{size, found->second};
  }
  return std::nullopt;
}

// As above; at the end also a sign that is shortened with a full stop ("Rs.").
std::optional<Sign> sign_at(std::string_view text, bool at_end) {
  if (at_end && text.size() > 1 && text.ends_with('.') && is_letter(text[text.size() - 2])) {
    if (auto sign = bare_sign_at(text.substr(0, text.size() - 1), true)) {
      ++sign->size;
      return sign;
    }
  }
  return bare_sign_at(text, at_end);
}

std::size_t space_before(std::string_view text) {
  for (const std::string_view space : {std::string_view(" "), kNoBreak, kThinNoBreak}) {
    if (text.ends_with(space)) return space.size();
  }
  return 0;
}

// "69€99": two digits right behind the sign are cents.
void take_cents(std::string_view text, std::size_t from, PageMoney& money) {
  const auto number = text.substr(from, money.end - from);
  const bool whole = number.find_first_of(".,") == number.npos;
  const std::size_t at = money.end;
  if (!whole || !is_digit_at(text, at) || !is_digit_at(text, at + 1)) return;
  if (is_digit_at(text, at + 2)) return;
  constexpr std::int64_t kCent = 100;  // in ten-thousandths
  money.amount += ((text[at] - '0') * 10 + (text[at + 1] - '0')) * kCent;
  money.end = at + 2;
}

// `floor` is the end of the amount before, whose sign is not this one's.
std::optional<PageMoney> money_at(std::string_view text, std::size_t from, std::size_t to,
                                  std::size_t floor) {
  PageMoney money{.begin = from, .end = to, .currency = {}};
  const auto amount = comparable_amount(text.substr(from, to - from));
  if (!amount || to - from > kLongestNumber) return std::nullopt;
  money.amount = *amount;
  const std::string_view ahead = text.substr(floor, from - floor);
  const std::size_t gap_before = space_before(ahead);
  const auto before = sign_at(ahead.substr(0, ahead.size() - gap_before), true);
  const std::size_t gap_after = to < text.size() ? space_at(text, to) : 0;
  const auto after = sign_at(text.substr(to + gap_after), false);
  // "$ 49.90 EUR" has both; the code says more than the sign.
  if (before) money.begin = from - gap_before - before->size;
  if (before) money.currency = before->currency;
  if (after && (!before || (money.currency.empty() && !after->currency.empty()))) {
    money.end = to + gap_after + after->size;
    if (!after->currency.empty()) money.currency = after->currency;
  }
  if (!before && !after) return std::nullopt;
  if (!before && after && gap_after == 0) take_cents(text, from, money);
  return money;
}

}  // namespace

std::vector<PageMoney> find_money(std::string_view text) {
  std::vector<PageMoney> found;
  for (std::size_t at = 0; at < text.size();) {
    if (!is_ascii_digit(text[at])) {
      ++at;
      continue;
    }
    const std::size_t end = number_end(text, at);
    auto money = money_at(text, at, end, found.empty() ? 0 : found.back().end);
    const bool part = money && at > 0 && money->begin == at && is_letter(text[at - 1]);
    if (money && !part) {
      found.push_back(std::move(*money));
      at = std::max(end, found.back().end);
    } else {
      at = end;
    }
  }
  return found;
}

}  // namespace rangebook
