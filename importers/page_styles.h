// What the style sheets inside a page say of classes: which are struck through, which not
// displayed.
#pragma once

#include <string>
#include <string_view>
#include <unordered_set>

namespace rangebook {

struct PageStyles {
  std::unordered_set<std::string> struck;  ///< names of classes
  std::unordered_set<std::string> undisplayed;
};

/// Adds the rules of one style sheet that name a class alone (`.old`, `span.old`). Rules that hang
/// on more (`.open .note`, `@media print`) say nothing of the page as it is shown.
void read_styles(std::string_view sheet, PageStyles& styles);

}  // namespace rangebook
