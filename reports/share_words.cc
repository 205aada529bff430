// Shares and intervals in words.
#include "reports/share_words.h"

#include <fmt/format.h>

#include "reports/wording.h"

namespace rangebook {

std::uint32_t per_mille(std::uint32_t part, std::uint32_t whole) {
  constexpr std::uint64_t kPerMille = 1000;
  return whole == 0 ? 0 : static_cast<std::uint32_t>((part * kPerMille + whole / 2) / whole);
}

std::string share_words(std::uint32_t part, std::uint32_t whole) {
  return whole == 0 ? "-" : percent_words(per_mille(part, whole), false);
}

std::string interval_words(const ShareInterval& interval) {
  constexpr std::uint32_t kPercent = 10'000;
  return fmt::format("{}–{}%", interval.low / kPercent, (interval.high + kPercent - 1) / kPercent);
}

std::string interval_note(const std::optional<ShareInterval>& interval) {
  return interval ? fmt::format(" (95%: {})", interval_words(*interval)) : "";
}

std::string stock_words(const ReachStep& step) {
  if (step.stock_unknown == 0) return std::to_string(step.in_stock);
  return fmt::format("{} ({} not stated)", step.in_stock, step.stock_unknown);
}

}  // namespace rangebook
