// Lines left alone against the colours that linked lines lost or gained.
#include "tracker/colour_moves.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <unordered_map>
#include <utility>

#include "tracker/line_prices.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

/// Colours by key, each with its label.
using Colours = std::map<std::string, std::string>;

/// A line with colours that its other side does not have.
struct Whole {
  std::size_t row = 0;
  Colours missing;
};

std::optional<Colours> colours_of(const LineOffers& offers, Interpreter& interpreter) {
  Colours colours;
  for (const std::string& label : offers.colours) {
    if (label.empty()) return std::nullopt;
    colours.emplace(interpreter.colour_key(label), label);
  }
  return colours;
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words(1);
  for (const char sign : fold_text(text)) {
    if (is_ascii_letter(sign) || is_ascii_digit(sign)) {
      words.back().push_back(sign);
    } else if (!words.back().empty()) {
      words.emplace_back();
    }
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

/// The name without the words of the line's own colours.
std::string bare_name(const Listing& listing) {
  std::set<std::string> colours;
  for (const std::string& colour : listing.offers.colours) {
    for (std::string& word : words_of(colour)) colours.insert(std::move(word));
  }
  std::string bare;
  for (const std::string& word : words_of(listing.card.name)) {
    if (!colours.contains(word)) bare += word + " ";
  }
  return bare;
}

/// One direction: wholes in one capture, parts in the other.
class Moves {
 public:
  Moves(const Snapshot& wholes, const Snapshot& parts, Interpreter& interpreter)
      : wholes_(wholes), parts_(parts), interpreter_(interpreter) {}

  /// `other` is the line on the other side, or null where there is none.
  void add_whole(std::size_t row, const LineOffers* other) {
    auto colours = colours_of(wholes_.lines[row].listing.offers, interpreter_);
    if (!colours || colours->size() < 2) return;
    if (other != nullptr) {
      const auto kept = colours_of(*other, interpreter_);
      if (!kept) return;
      std::erase_if(*colours, [&](const auto& colour) { return kept->contains(colour.first); });
    }
    if (!colours->empty()) index({row, std::move(*colours)});
  }

  std::vector<ColourMove> find(const std::vector<std::size_t>& alone) const {
    std::vector<ColourMove> moves;
    std::set<std::pair<std::size_t, std::string>> taken;
    for (const std::size_t row : alone) {
      auto move = move_of(row);
      if (move && taken.emplace(move->whole, move->colour).second) {
        moves.push_back(std::move(*move));
      }
    }
    return moves;
  }

 private:
  void index(Whole whole) {
    const LineOffers& offers = wholes_.lines[whole.row].listing.offers;
    for (std::size_t i = 0; i < offers.gtins.size(); ++i) {
      const auto gtin = offers.gtins[i];
      const std::string& colour = offers.colours[offers.offers[i].colour];
      if (gtin && whole.missing.contains(interpreter_.colour_key(colour))) {
        by_gtin_.emplace((*gtin).value(), all_.size());
      }
    }
    by_name_[bare_name(wholes_.lines[whole.row].listing)].push_back(all_.size());
    all_.push_back(std::move(whole));
  }

  std::optional<ColourMove> move_of(std::size_t row) const {
    const Listing& part = parts_.lines[row].listing;
    const auto colours = colours_of(part.offers, interpreter_);
    if (!colours || colours->size() != 1) return std::nullopt;
    const std::string& colour = colours->begin()->first;
    if (auto move = by_gtin(row, part.offers, colour)) return move;
    return by_name(row, part, colour);
  }

  ColourMove move(const Whole& whole, std::size_t row, const std::string& colour,
                  std::string evidence) const {
    return {whole.row, row, whole.missing.at(colour), std::move(evidence)};
  }

  std::optional<ColourMove> by_gtin(std::size_t row, const LineOffers& offers,
                                    const std::string& colour) const {
    std::map<std::size_t, std::size_t> shared;
    for (const OptionalGtin gtin : offers.gtins) {
      if (!gtin) continue;
      const auto found = by_gtin_.find((*gtin).value());
      if (found != by_gtin_.end()) ++shared[found->second];
    }
    if (shared.size() != 1) return std::nullopt;
    const auto& [whole, count] = *shared.begin();
    if (!all_[whole].missing.contains(colour)) return std::nullopt;
    return move(all_[whole], row, colour,
                count == 1 ? "a GTIN in common" : fmt::format("{} GTINs in common", count));
  }

  std::optional<ColourMove> by_name(std::size_t row, const Listing& part,
                                    const std::string& colour) const {
    const std::string bare = bare_name(part);
    const auto found = by_name_.find(bare);
    if (bare.empty() || found == by_name_.end()) return std::nullopt;
    const Whole* only = nullptr;
    std::string why;
    for (const std::size_t each : found->second) {
      if (!all_[each].missing.contains(colour)) continue;
      std::string reason = likeness(wholes_.lines[all_[each].row].listing, part);
      if (reason.empty()) continue;
      if (only != nullptr) return std::nullopt;
      only = &all_[each];
      why = std::move(reason);
    }
    if (only == nullptr) return std::nullopt;
    return move(*only, row, colour, std::move(why));
  }

  /// What besides the name makes them one style; empty if nothing does.
  std::string likeness(const Listing& whole, const Listing& part) const {
    if (interpreter_.category(whole.card) != interpreter_.category(part.card)) return {};
    if (!whole.card.composition.empty() && !part.card.composition.empty()) {
      const auto& a = interpreter_.composition(whole.card.composition);
      const auto& b = interpreter_.composition(part.card.composition);
      return a && a == b ? "the same name without the colour, the same composition" : "";
    }
    const auto a = lowest_undiscounted(whole.offers);
    const auto b = lowest_undiscounted(part.offers);
    return a && a == b ? "the same name without the colour, the same price" : "";
  }

  const Snapshot& wholes_;
  const Snapshot& parts_;
  Interpreter& interpreter_;
  std::vector<Whole> all_;
  std::unordered_map<std::uint64_t, std::size_t> by_gtin_;
  std::unordered_map<std::string, std::vector<std::size_t>> by_name_;
};

}  // namespace

ColourMoves find_colour_moves(const Snapshot& from, const Snapshot& to, const LinkSet& links,
                              Interpreter& interpreter) {
  if (links.only_from.empty() && links.only_to.empty()) return {};
  Moves split(from, to, interpreter);
  Moves merged(to, from, interpreter);
  for (const Link& link : links.links) {
    const LineOffers& then = from.lines[link.from].listing.offers;
    const LineOffers& now = to.lines[link.to].listing.offers;
    if (then.colours == now.colours) continue;
    split.add_whole(link.from, &now);
    merged.add_whole(link.to, &then);
  }
  for (const std::size_t i : links.only_from) split.add_whole(i, nullptr);
  for (const std::size_t j : links.only_to) merged.add_whole(j, nullptr);
  return {split.find(links.only_to), merged.find(links.only_from)};
}

}  // namespace rangebook
