// The stylist's desk for picks: keeping them, following them up, and what is due. The same
// functions serve the command line and pages.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "schema/due.h"
#include "schema/pick.h"
#include "tracker/app/pipeline.h"
#include "tracker/store/book.h"

namespace rangebook {

/// Longer texts are refused, in bytes.
inline constexpr std::size_t kMaxPickWord = 80;
inline constexpr std::size_t kMaxPickNote = 4000;

/// Her words by list.
using PickWordChoice = std::map<PickList, std::vector<std::string>>;

/// A line to be kept as a pick.
struct PickWish {
  std::string shop;     ///< slug; empty: every shop is searched
  std::string line;     ///< code, reference or name
  std::string capture;  ///< season, date or id; empty: the latest by `on` that shows the line
  Day on{};             ///< day it was recommended
  std::string theme;
  std::optional<Day> review;
  std::string note;
  PickWordChoice words;
};

/// What is to be changed; everything else stays.
struct PickChange {
  std::optional<Day> on;
  std::optional<std::string> theme;
  std::optional<std::optional<Day>> review;
  std::optional<std::string> note;
  PickWordChoice words;  ///< lists that stand here are replaced; an empty one is cleared
};

/// Which picks.
struct PickFilter {
  std::string shop;   ///< slug; empty: every shop
  std::string theme;  ///< empty: every theme
};

/// The kept pick. Not kept: no such line, capture or word, or it is a pick of that day and theme
/// already; the sentence says what there is.
std::variant<FollowedPick, NotThere> keep_pick(Book& book, const PickWish& wish);
/// The pick with this number.
std::variant<FollowedPick, NotThere> find_pick(const Book& book, std::int64_t number);
std::variant<FollowedPick, NotThere> change_pick(Book& book, std::int64_t number,
                                                 const PickChange& change);
/// Removes all of these, or none where one is not there. Gives what was removed.
std::variant<std::vector<Pick>, NotThere> drop_picks(Book& book,
                                                     const std::vector<std::int64_t>& numbers);

/// Picks by number, each with what later captures say of it.
std::variant<PickSheet, NotThere> follow_picks(const Book& book, const PickFilter& filter);

/// Every theme once, in order.
std::vector<std::string> pick_themes(const Book& book);

DueList what_is_due(const Book& book, const DueRequest& request);
/// The same, for who has read the captures of all shops already.
DueList what_is_due(const Book& book,
                    const std::map<std::string, std::vector<CaptureRecord>>& captures,
                    const DueRequest& request);

/// The vocabulary, edited. Each gives how many picks use the word, or says what is wrong.
std::variant<std::int64_t, NotThere> add_to_vocabulary(Book& book, const PickWord& word);
/// Also takes it off the picks.
std::variant<std::int64_t, NotThere> remove_from_vocabulary(Book& book, const PickWord& word);
/// Also on the picks.
std::variant<std::int64_t, NotThere> reword_vocabulary(Book& book, const PickWord& word,
                                                       const std::string& now);

}  // namespace rangebook
