// Picks and their vocabulary in the book.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "schema/pick.h"
#include "tracker/store/book.h"

namespace rangebook {

/// Keeps a pick and gives its number. Its words must be in the vocabulary.
std::int64_t add_pick(Book& book, const Pick& pick);
/// Replaces theme, review date, note, day and words of the pick with this number.
void store_pick(Book& book, const Pick& pick);
/// Of numbers that are not there, nothing.
void remove_picks(Book& book, const std::vector<std::int64_t>& numbers);

/// By number. `shop` may be empty: of every shop.
std::vector<Pick> kept_picks(const Book& book, std::string_view shop);

/// By list, then word.
std::vector<PickWord> pick_vocabulary(const Book& book);
/// False when the list has it already.
bool add_pick_word(Book& book, const PickWord& word);
/// How many picks use it.
std::int64_t uses_of(const Book& book, const PickWord& word);
/// Takes the word out of its list and off every pick. False when the list does not have it.
bool remove_pick_word(Book& book, const PickWord& word);
/// Rewords it, on every pick too. The list must have the word and not the new one.
void rename_pick_word(Book& book, const PickWord& word, const std::string& now);

}  // namespace rangebook
