// Product pages as browsers save them with their parts.
#pragma once

#include <map>
#include <string>

#include "demo-feeds/story.h"

namespace demo {

/// "Web page, complete": the page and the folder of its parts, by path below the folder of the
/// capture. Links to pictures and styles lead into the folder, which also holds a script and a
/// frame with an advert.
std::map<std::string, std::string> complete_page(const House& house, const Capture& capture,
                                                 const Style& style);

/// One file, as a browser writes it: MHTML without any script, so that the markup that is left is
/// the page's microdata.
std::string mhtml_page(const House& house, const Capture& capture, const Style& style);

}  // namespace demo
