// The look of the brief page: a set page of print, not a screen of boxes. One serif face of the
// reader's system, hairlines, side heads in the margin, one ink colour for what can be followed.
#pragma once

#include <string_view>

namespace rangebook {

/// The style sheet. Colours meet WCAG 2.2 AA (4.5:1 for text) on both papers, as the test checks.
std::string_view brief_style();

}  // namespace rangebook
