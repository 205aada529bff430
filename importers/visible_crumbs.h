// The way from the shop's start page to the product, as its page shows it.
#pragma once

#include <string>
#include <string_view>

#include "importers/page_view.h"

namespace rangebook {

/// The breadcrumbs joined with " > ", without the start page at the front and `product` at the end.
/// An element that is named so; else a short line above the heading whose names stand between signs
/// ("Home / Women / Skirts") and which begins with the start page, ends with the product, or has
/// arrows for signs.
std::string visible_breadcrumbs(const PageView& view, const std::string& product);

/// True for what shops call their start page (`Home`, `Startseite`).
bool is_start_page(std::string_view name);

}  // namespace rangebook
