// The headline sentences of a brief.
#pragma once

#include <vector>

#include "reports/brief.h"
#include "reports/brief_sources.h"

namespace rangebook {

/// Most important first: size ranges of categories, like-for-like prices, entry prices, lines new,
/// back and gone; then what concerns single lines. Within a sentence the largest change is named
/// first. Exactly one headline (Theme::nothing) when nothing changed.
std::vector<Headline> brief_headlines(const ChangeSet& set, SourceList& sources);

/// The headlines about which lines there are: new, back and gone.
void add_presence_headlines(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources);
/// The headline about lines known again under another name, code or category.
void add_identity_headline(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources);
/// The headlines about colours, fabric and stock of lines that stayed.
void add_detail_headlines(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources);

}  // namespace rangebook
