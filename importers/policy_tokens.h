// A policy's sentences as words, and the marks the rules go by: phrases of the table
// `policy_words.tsv`, amounts, numbers of days, dates, weights, shares.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/terms.h"

namespace rangebook {

/// What a phrase says; the names are those of the table's column `role`. The last ones are worked
/// out from numbers.
enum class PolicyRole : std::uint8_t {
  delivery,
  returns,
  refund,
  refund_act,
  free,
  negation,
  over,
  from,
  or_more,
  under,
  order,
  smaller,
  before_discount,
  after_discount,
  per_parcel,
  per_item,
  kind,
  region,
  outside,
  dispatch,
  event,
  further,
  tell,
  method,
  payer,
  deduct,
  statutory,
  faulty,
  unless_faulty,
  example,
  hedge,
  no_return,
  returnable,
  only,
  seal,
  exchange,
  credit,
  original,
  first_delivery,
  return_form,
  restocking,
  item,
  need,
  not_needed,
  yes,
  no,
  can,
  season,
  until,
  between,
  all_orders,
  minimum_order,
  kept_below,
  charged_after,
  final_sale,
  no_limit,
  neutral,
  unit,
  other_service,
  next_day,
  within,
  label,
  have,
  beside,
  who_pays,
  aside,
  soft,
  sending,
  likewise,
  money,
  span,
  day,
  grams,
  share,
};

/// A word, a number or one sign of punctuation.
struct PolicyToken {
  std::string word;         ///< lower case, without accents
  std::uint32_t begin = 0;  ///< in the sentence
  std::uint32_t end = 0;
};

struct PolicyMark {
  PolicyRole role = PolicyRole::delivery;
  std::string_view value = {};  ///< of the table; empty for worked out ones
  std::uint32_t begin = 0;      ///< tokens [begin, end)
  std::uint32_t end = 0;
  std::optional<Money> money = {};
  DaySpan span = {};
  bool open = false;  ///< a span: "within", "up to"; the lower bound is not said
  SeasonDay day = {};
  int number = 0;  ///< grams, or a share in 1/100 per cent
};

/// The words of a text: hyphens between letters divide, French elisions stand alone (`l'`).
std::vector<PolicyToken> policy_tokens(std::string_view text);

/// Where sentences begin and end in a line. A full stop after a number or an abbreviation ends
/// none.
std::vector<std::pair<std::size_t, std::size_t>> sentence_bounds(std::string_view line);

/// The marks of a sentence, in order of their place, the longest phrase at each place. Phrases do
/// not overlap, but one phrase may have several roles. `home` is the currency of amounts that name
/// none.
std::vector<PolicyMark> policy_marks(std::string_view sentence,
                                     const std::vector<PolicyToken>& tokens,
                                     std::optional<Currency> home);

}  // namespace rangebook
