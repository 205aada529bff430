// What `picks` and `due` do, once the command line was understood.
#pragma once

#include <string>
#include <vector>

#include "tracker/app/commands.h"
#include "tracker/app/pick_desk.h"
#include "tracker/app/pick_forms.h"

namespace rangebook {

int command_picks(const std::string& book, const PickFilter& filter, PickView view,
                  const OutputChoice& output);
int command_pick_add(const std::string& book, const PickWish& wish);
int command_pick_change(const std::string& book, std::int64_t number, const PickChange& change);
int command_pick_remove(const std::string& book, const std::vector<std::int64_t>& numbers);
int command_pick_words(const std::string& book, const OutputChoice& output);
int command_pick_word_add(const std::string& book, const PickWord& word);
int command_pick_word_remove(const std::string& book, const PickWord& word);
int command_pick_word_rename(const std::string& book, const PickWord& word, const std::string& now);
int command_due(const std::string& book, const DueRequest& request, const OutputChoice& output);

}  // namespace rangebook
