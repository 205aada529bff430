// Phrases by their first word; numbers in words taken apart.
#include "importers/policy_words.h"

#include <algorithm>
#include <string>
#include <unordered_map>
#include <unordered_set>

#include "importers/byte_search.h"
#include "schema/embedded.h"
#include "schema/error.h"
#include "schema/names.h"

namespace rangebook {
namespace {

using R = PolicyRole;

constexpr NameTable<R, 58> kRoles{{{R::delivery, "delivery"},
                                   {R::returns, "return"},
                                   {R::refund, "refund"},
                                   {R::refund_act, "refund_act"},
                                   {R::free, "free"},
                                   {R::negation, "not"},
                                   {R::over, "over"},
                                   {R::from, "from"},
                                   {R::or_more, "or_more"},
                                   {R::under, "under"},
                                   {R::order, "order"},
                                   {R::smaller, "smaller"},
                                   {R::before_discount, "before_discount"},
                                   {R::after_discount, "after_discount"},
                                   {R::per_parcel, "per_parcel"},
                                   {R::per_item, "per_item"},
                                   {R::kind, "kind"},
                                   {R::region, "region"},
                                   {R::outside, "outside"},
                                   {R::dispatch, "dispatch"},
                                   {R::event, "event"},
                                   {R::further, "further"},
                                   {R::tell, "tell"},
                                   {R::method, "method"},
                                   {R::payer, "payer"},
                                   {R::deduct, "deduct"},
                                   {R::statutory, "statutory"},
                                   {R::faulty, "faulty"},
                                   {R::unless_faulty, "unless_faulty"},
                                   {R::example, "example"},
                                   {R::hedge, "hedge"},
                                   {R::no_return, "no_return"},
                                   {R::returnable, "returnable"},
                                   {R::only, "only"},
                                   {R::seal, "seal"},
                                   {R::exchange, "exchange"},
                                   {R::credit, "credit"},
                                   {R::original, "original"},
                                   {R::first_delivery, "first_delivery"},
                                   {R::return_form, "return_form"},
                                   {R::restocking, "restocking"},
                                   {R::item, "item"},
                                   {R::need, "need"},
                                   {R::not_needed, "not_needed"},
                                   {R::yes, "yes"},
                                   {R::no, "no"},
                                   {R::can, "can"},
                                   {R::season, "season"},
                                   {R::until, "until"},
                                   {R::between, "between"},
                                   {R::all_orders, "all_orders"},
                                   {R::minimum_order, "minimum_order"},
                                   {R::kept_below, "kept_below"},
                                   {R::charged_after, "charged_after"},
                                   {R::final_sale, "final"},
                                   {R::no_limit, "no_limit"},
                                   {R::neutral, "neutral"},
                                   {R::unit, "unit"}}};
constexpr NameTable<R, 11> kMoreRoles{{{R::next_day, "next_day"},
                                       {R::likewise, "likewise"},
                                       {R::sending, "sending"},
                                       {R::within, "within"},
                                       {R::other_service, "other_service"},
                                       {R::label, "label"},
                                       {R::have, "have"},
                                       {R::beside, "beside"},
                                       {R::who_pays, "who_pays"},
                                       {R::aside, "aside"},
                                       {R::soft, "soft"}}};

/// `shipping` of "shipping's free".
std::string_view base_of(std::string_view word) {
  return word.ends_with("'s") ? word.substr(0, word.size() - 2) : word;
}

/// Words that may stand between the parts of a phrase ("betalen we binnen 14 dagen terug").
constexpr std::size_t kLongestGap = 7;

bool is_word(std::string_view word) { return is_ascii_letter(word[0]) || is_ascii_digit(word[0]); }

struct Word {
  std::string text;
  bool prefix = false;  ///< any ending
  bool ending = false;  ///< any beginning: compounds ("Filialretoure")
  bool any = false;     ///< one to seven words

  bool fits(const std::string& word) const {
    if (ending) return word.size() > text.size() && word.ends_with(text);
    if (prefix) return word.starts_with(text);
    return word == text || base_of(word) == text;
  }
};

struct Phrase {
  std::vector<Word> words;
  R role = R::delivery;
  std::string_view value;
};

std::vector<Word> phrase_words(std::string_view text) {
  std::vector<Word> words;
  while (!text.empty()) {
    const auto end = std::min(text.find(' '), text.size());
    auto piece = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (piece == "*") {
      words.push_back({.text = {}, .any = true});
      continue;
    }
    if (piece.starts_with('*')) {
      words.push_back({.text = std::string(piece.substr(1)), .ending = true});
      continue;
    }
    const bool prefix = piece.ends_with('*');
    if (prefix) piece.remove_suffix(1);
    if (piece.ends_with('\'')) {  // an elision, which stands alone in a text too
      words.push_back({.text = std::string(piece), .prefix = prefix});
      continue;
    }
    for (auto& token : policy_tokens(piece)) words.push_back({.text = std::move(token.word)});
    if (!words.empty()) words.back().prefix = prefix;
  }
  return words;
}

/// The index of phrases by their first word.
class Lexicon {
 public:
  Lexicon() {
    for (const auto& row : table_rows("tables/policy_words.tsv")) add_row(row);
  }

  /// The longest match at `at`: its roles and length in tokens, 0 for none.
  std::size_t longest(const std::vector<PolicyToken>& tokens, std::size_t at,
                      std::vector<const Phrase*>& found) const {
    found.clear();
    std::size_t best = 0;
    const auto weigh = [&](std::size_t index) {
      const Phrase& phrase = phrases_[index];
      const std::size_t size = match(phrase, tokens, at);
      if (size == 0 || size < best) return;
      if (size > best) found.clear();
      best = size;
      found.push_back(&phrase);
    };
    const auto weigh_all = [&](const std::string& word) {
      const auto [first, last] = by_word_.equal_range(word);
      for (auto one = first; one != last; ++one) weigh(one->second);
    };
    weigh_all(tokens[at].word);
    const auto base = base_of(tokens[at].word);
    if (base.size() < tokens[at].word.size()) weigh_all(std::string(base));
    const auto prefixed = by_prefix_.find(tokens[at].word.front());
    if (prefixed != by_prefix_.end()) {
      for (const std::size_t index : prefixed->second) weigh(index);
    }
    if (best == 0) {  // a compound by its last part
      for (const std::size_t index : by_ending_) weigh(index);
    }
    std::sort(found.begin(), found.end());  // the order of the table
    return best;
  }

  /// How far to go on behind a match of `size` tokens: to its end, or into it where a longer phrase
  /// begins that goes on behind it ("we'll refund the difference").
  std::size_t step(const std::vector<PolicyToken>& tokens, std::size_t at, std::size_t size) const {
    std::vector<const Phrase*> inner;
    for (std::size_t in = 1; in < size; ++in) {
      const std::size_t longer = longest(tokens, at + in, inner);
      if (longer > size && in + longer > size) return in;
    }
    return std::max<std::size_t>(size, 1);
  }

 private:
  void add_row(const std::vector<std::string_view>& row) {
    if (row.size() != 3) throw Error("the table of policy words is damaged");
    auto role = value_of(kRoles, row[0]);
    if (!role) role = value_of(kMoreRoles, row[0]);
    if (!role) throw Error("the table of policy words has an unknown role " + std::string(row[0]));
    std::string_view rest = row[2];
    while (!rest.empty()) {
      const auto end = std::min(rest.find('|'), rest.size());
      add(phrase_words(rest.substr(0, end)), *role, row[1] == "-" ? std::string_view{} : row[1]);
      rest.remove_prefix(std::min(end + 1, rest.size()));
    }
  }

  void add(std::vector<Word> words, R role, std::string_view value) {
    if (words.empty()) return;
    const std::size_t index = phrases_.size();
    if (words.front().prefix && !words.front().text.empty()) {
      by_prefix_[words.front().text.front()].push_back(index);
    } else if (words.front().ending) {
      by_ending_.push_back(index);
    } else {
      by_word_.emplace(words.front().text, index);
    }
    phrases_.push_back({std::move(words), role, value});
  }

  static std::size_t match(const Phrase& phrase, const std::vector<PolicyToken>& tokens,
                           std::size_t at) {
    std::size_t next = at;
    for (std::size_t i = 0; i < phrase.words.size(); ++i) {
      const Word& word = phrase.words[i];
      if (word.any) {
        const Word& after = phrase.words[i + 1];
        std::size_t skipped = 1;
        while (skipped <= kLongestGap && next + skipped < tokens.size() &&
               is_word(tokens[next + skipped - 1].word) &&
               !after.fits(tokens[next + skipped].word)) {
          ++skipped;
        }
        if (skipped > kLongestGap || next + skipped >= tokens.size() ||
            !after.fits(tokens[next + skipped].word)) {
          return 0;
        }
        next += skipped;
        continue;
      }
      if (next >= tokens.size() || !word.fits(tokens[next].word)) return 0;
      ++next;
    }
    return next - at;
  }

  std::vector<Phrase> phrases_;
  std::unordered_multimap<std::string, std::size_t> by_word_;
  std::unordered_map<char, std::vector<std::size_t>> by_prefix_;  ///< by their first letter
  std::vector<std::size_t> by_ending_;
};

struct NumberWord {
  std::string_view kind;
  int value = 0;
};

const std::unordered_map<std::string_view, NumberWord>& number_words() {
  static const auto all = [] {
    std::unordered_map<std::string_view, NumberWord> words;
    for (const auto& row : table_rows("tables/policy_numbers.tsv")) {
      int value = 0;
      for (const char c : row.at(2)) value = value * 10 + (c - '0');
      words.emplace(row.at(0), NumberWord{row.at(1), value});
    }
    return words;
  }();
  return all;
}

const NumberWord* number_word(std::string_view word) {
  const auto at = number_words().find(word);
  return at == number_words().end() || at->second.kind == "month" ? nullptr : &at->second;
}

/// `achtundzwanzig`, `achtentwintig`: the unit before the tens.
std::optional<int> compound(std::string_view word) {
  for (const std::string_view joint : {"und", "en"}) {
    for (auto at = word.find(joint, 2); at != word.npos; at = word.find(joint, at + 1)) {
      auto unit_word = word.substr(0, at);
      const auto* tens = number_word(word.substr(at + joint.size()));
      const auto* unit = unit_word == "ein" ? number_word("eins") : number_word(unit_word);
      if (unit != nullptr && tens != nullptr && unit->value < 10 && tens->value >= 20) {
        return unit->value + tens->value;
      }
    }
  }
  return std::nullopt;
}

}  // namespace

std::vector<PolicyMark> phrase_marks(const std::vector<PolicyToken>& tokens) {
  static const Lexicon lexicon;
  const auto names_return = [&](std::size_t begin, std::size_t end) {
    return std::any_of(tokens.begin() + static_cast<std::ptrdiff_t>(begin),
                       tokens.begin() + static_cast<std::ptrdiff_t>(end), [](const auto& token) {
                         return token.word.starts_with("return") ||
                                token.word.find("retour") != std::string::npos ||
                                token.word.find("rucksend") != std::string::npos ||
                                token.word.find("ruckgabe") != std::string::npos;
                       });
  };
  std::vector<PolicyMark> marks;
  std::vector<const Phrase*> found;
  for (std::size_t at = 0; at < tokens.size();) {
    const std::size_t size = lexicon.longest(tokens, at, found);
    for (const Phrase* phrase : found) {
      marks.push_back({.role = phrase->role,
                       .value = phrase->value,
                       .begin = static_cast<std::uint32_t>(at),
                       .end = static_cast<std::uint32_t>(at + size)});
    }
    const bool method = !found.empty() && found.front()->role == R::method;
    if (method && names_return(at, at + size)) {
      marks.push_back({.role = R::returns,
                       .begin = static_cast<std::uint32_t>(at),
                       .end = static_cast<std::uint32_t>(at + size)});
    }
    const bool open =
        !found.empty() && std::any_of(found.front()->words.begin(), found.front()->words.end(),
                                      [](const Word& word) { return word.any; });
    at += open ? 1 : lexicon.step(tokens, at, size);  // words inside "send * back" count too
  }
  return marks;
}

std::optional<PolicyNumber> number_at(const std::vector<PolicyToken>& tokens, std::size_t at) {
  if (at >= tokens.size()) return std::nullopt;
  const std::string& word = tokens[at].word;
  if (is_ascii_digit(word[0])) {
    if (word.size() > 4) return std::nullopt;
    int value = 0;
    for (const char c : word) value = value * 10 + (c - '0');
    return PolicyNumber{value, 1, false};
  }
  if (const auto* named = number_word(word)) {
    PolicyNumber number{named->value, 1, named->kind == "one"};
    const auto* next = at + 1 < tokens.size() ? number_word(tokens[at + 1].word) : nullptr;
    const bool unit_follows = next != nullptr && next->value < 10 && next->kind == "number";
    if (named->kind == "tens" && unit_follows) number = {named->value + next->value, 2, false};
    if (named->kind == "one" && next != nullptr && next->value == 100) number = {100, 2, false};
    const bool twenty_one = named->kind == "tens" && at + 2 < tokens.size() &&
                            tokens[at + 1].word == "et" && tokens[at + 2].word.starts_with("un");
    if (twenty_one) number = {named->value + 1, 3, false};
    return number;
  }
  const auto value = compound(word);
  return value ? std::optional(PolicyNumber{*value, 1, false}) : std::nullopt;
}

bool is_plain_word(std::string_view word) {
  static const auto all = [] {
    std::unordered_set<std::string_view> words;
    for (const auto& row : table_rows("tables/policy_plain.tsv")) {
      std::string_view rest = row.at(1);
      while (!rest.empty()) {
        const auto end = std::min(rest.find(' '), rest.size());
        words.insert(rest.substr(0, end));
        rest.remove_prefix(std::min(end + 1, rest.size()));
      }
    }
    return words;
  }();
  return all.count(word) > 0;
}

std::optional<unsigned> month_named(std::string_view word) {
  const auto at = number_words().find(word);
  if (at == number_words().end() || at->second.kind != "month") return std::nullopt;
  return static_cast<unsigned>(at->second.value);
}

}  // namespace rangebook
