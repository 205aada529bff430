// Lines of one shop, read as far as somebody asks.
#include "tracker/app/shop_lines.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>
#include <utility>

#include "tracker/app/identity_stage.h"
#include "tracker/line_pair.h"
#include "tracker/line_prices.h"
#include "tracker/reference.h"
#include "tracker/store/wordings.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

/// The text of a key without its kind: `code:AB1` is the code AB1.
LineGlimpse glimpse_of_key(LineId id, const std::string& key) {
  LineGlimpse glimpse;
  glimpse.id = id;
  const std::string text = key.substr(std::min(key.find(':') + 1, key.size()));
  (key.starts_with("code:") || key.starts_with("group:") ? glimpse.code : glimpse.name) = text;
  return glimpse;
}

}  // namespace

ShopLines::ShopLines(const Book& book, const std::string& shop)
    : book_(book), roll_(read_roll(book, shop)), source_(book, roll_) {}

const Identities& ShopLines::identities() {
  if (!identities_) {
    identities_ =
        std::make_unique<Identities>(identify(book_, roll_, source_, roll_.captures.size()));
  }
  return *identities_;
}

void ShopLines::add_decision(const LinkDecision& decision) {
  std::erase_if(roll_.decisions,
                [&](const LinkDecision& other) { return same_pair(other, decision); });
  roll_.decisions.push_back(decision);
}

const std::string& ShopLines::key_of(LineId line) {
  if (keys_.empty()) keys_ = line_keys(book_, roll_.shop.slug);
  return keys_[line];
}

bool ShopLines::has_code(std::uint32_t capture, std::string_view code) {
  const auto [found, added] = codes_.try_emplace(capture);
  if (added) {
    for (const LineId line : roll_.captures[capture].lines) found->second.insert(key_of(line));
  }
  return found->second.contains(fmt::format("code:{}", trim_text(code)));
}

LineGlimpse ShopLines::glimpse(SightingAt at) {
  const auto [found, added] = glimpses_.try_emplace(at);
  if (!added) return found->second;
  const LineState state = std::move(source_.lines(at.capture, {at.row}).front());
  LineGlimpse& glimpse = found->second;
  glimpse.id = state.id;
  glimpse.code = state.listing.card.line_code;
  glimpse.name = state.listing.card.name;
  const auto price = lowest_selling(state.listing.offers);
  if (price && state.listing.offers.currency) {
    glimpse.price = Money{*price, *state.listing.offers.currency};
  }
  glimpse.seen = sighting_of(roll_.captures[at.capture].info, state.listing.origin);
  return glimpse;
}

LineGlimpse ShopLines::glimpse(LineId line, Day on) {
  const auto at = sighting_on(roll_, line, on);
  return at ? glimpse(*at) : glimpse_of_key(line, key_of(line));
}

std::string ShopLines::line_reference(const LineIdentity& line) {
  const SightingAt first = line.seen.front();
  const LineId stored = roll_.captures[first.capture].lines[first.row];
  const std::string again =
      line.id == stored ? "" : to_string(roll_.captures[first.capture].info.on);
  return long_reference({"line", roll_.shop.slug, key_of(stored), again});
}

std::string ShopLines::pair_reference(const LinkDecision& about) {
  const bool itself = about.a == about.b;
  std::pair a(key_of(about.a), itself ? to_string(about.a_on) : std::string());
  std::pair b(key_of(about.b), itself ? to_string(about.b_on) : std::string());
  if (b < a) std::swap(a, b);
  return long_reference({"pair", roll_.shop.slug, a.first, a.second, b.first, b.second});
}

LinkDecision decision_of(const Roll& roll, const FoundLink& question, bool same) {
  const auto side = [&](SightingAt at) {
    const RollCapture& capture = roll.captures[at.capture];
    return std::pair(capture.lines[at.row], capture.info.on);
  };
  const auto [a, a_on] = side(question.from);
  const auto [b, b_on] = side(question.to);
  return {a, b, same, a_on, b_on};
}

}  // namespace rangebook
