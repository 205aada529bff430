// Product feeds as shops give them to others.
#pragma once

#include <string>

#include "demo-feeds/story.h"

namespace demo {

/// One object a line, its sizes and colours as lists.
std::string json_feed(const House& house, const Capture& capture);

/// RSS 2.0: one item a line, with an element of our own for each variant.
std::string xml_feed(const House& house, const Capture& capture);

}  // namespace demo
