// A phrase of the reports on a page of the desk, without its notes.
#pragma once

#include "reports/html_writer.h"
#include "reports/phrase.h"

namespace rangebook {

void write_phrase(HtmlWriter& html, const Phrase& phrase);

}  // namespace rangebook
