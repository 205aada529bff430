// Names of lists and states.
#include "schema/pick.h"

#include "schema/names.h"

namespace rangebook {
namespace {

constexpr NameTable<PickList, kPickLists> kLists{{
    {PickList::personality, "personality"},
    {PickList::palette, "palette"},
    {PickList::dress_code, "dress-code"},
    {PickList::body_shape, "body-shape"},
    {PickList::caution, "caution"},
}};

constexpr NameTable<PickState, 5> kStates{{
    {PickState::there, "there"},
    {PickState::gone, "gone"},
    {PickState::not_looked, "not-looked"},
    {PickState::refused, "refused"},
    {PickState::not_kept, "not-kept"},
}};

}  // namespace

std::string_view to_string(PickList list) { return name_of(kLists, list); }
std::optional<PickList> parse_pick_list(std::string_view name) { return value_of(kLists, name); }
std::string_view to_string(PickState state) { return name_of(kStates, state); }

std::vector<std::string> pick_list_names() {
  std::vector<std::string> names;
  for (const auto& [list, name] : kLists) names.emplace_back(name);
  return names;
}

}  // namespace rangebook
