// Picks: lines the stylist recommended on a day, in her own words, and what became of them.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/capture.h"
#include "schema/change.h"
#include "schema/line_history.h"
#include "schema/snapshot.h"

namespace rangebook {

/// The lists of her vocabulary.
enum class PickList : std::uint8_t { personality, palette, dress_code, body_shape, caution };
inline constexpr std::size_t kPickLists = 5;
std::string_view to_string(PickList list);  ///< `dress-code`
std::optional<PickList> parse_pick_list(std::string_view name);
std::vector<std::string> pick_list_names();

struct PickWord {
  PickList list = PickList::personality;
  std::string word;
  auto operator<=>(const PickWord&) const = default;
};

struct Pick {
  std::int64_t number = 0;
  std::string shop;             ///< slug
  LineId line = 0;              ///< as stored with the capture of `seen_on`
  Day seen_on{};                ///< day of the capture it was picked from
  Day on{};                     ///< day it was recommended
  std::string theme;            ///< empty: none
  std::optional<Day> review;    ///< when to look at it again
  std::string note;             ///< stands in show-notes
  std::vector<PickWord> words;  ///< sorted

  bool operator==(const Pick&) const = default;
};

/// What later captures say of a pick.
enum class PickState : std::uint8_t {
  there,
  gone,        ///< looked for, and not there
  not_looked,  ///< no later capture looked for it
  refused,     ///< a row that may be the line could not be read
  not_kept,    ///< the capture it was picked from is no longer in the book
};
std::string_view to_string(PickState state);  ///< `not-looked`

/// A size that cannot be had.
struct SoldOutSize {
  std::string size;
  std::vector<std::string> colours;  ///< in these only; empty: in every colour

  bool operator==(const SoldOutSize&) const = default;
};

struct FollowedPick {
  Pick pick;
  Shop shop;
  LineId id = 0;                 ///< its lasting identity; 0 when not kept
  std::string code;              ///< of the line as last seen
  std::string name;              ///< likewise
  std::string reference;         ///< of the line; empty when not kept
  std::optional<SeenLine> then;  ///< nothing when not kept
  PickState state = PickState::not_kept;
  std::optional<CaptureInfo> by;         ///< the latest after its own that looked for it
  std::optional<CaptureInfo> latest;     ///< the shop's latest, whether it looked or not
  std::optional<SeenLine> now;           ///< as `by` shows it
  bool was_away = false;                 ///< a capture in between looked and did not find it
  std::vector<SoldOutSize> sold_out;     ///< by `now`; where nobody looked again, by `then`
  std::vector<std::string> new_colours;  ///< then not, now there
  std::vector<Change> changes;           ///< from `then` to `now`, as `changes` lists them
};

/// Picks with what became of them.
struct PickSheet {
  std::string shop;   ///< slug; empty: of every shop
  std::string theme;  ///< empty: of every theme
  std::vector<FollowedPick> picks;
};

}  // namespace rangebook
