// One number a sighting.
#include "reports/brief_sources.h"

namespace rangebook {

SourceList::SourceList(const CaptureInfo& from, const CaptureInfo& to)
    : then_{from.id, from.on, from.season, {}, {}}, now_{to.id, to.on, to.season, {}, {}} {}

std::size_t SourceList::number(const Sighting& seen) {
  const auto document = std::tie(seen.capture, seen.on, seen.document);
  auto lines = numbers_.find(document);
  if (lines == numbers_.end()) lines = numbers_.try_emplace(Document(document)).first;
  const auto [entry, is_new] = lines->second.try_emplace(seen.line, sources_.size() + 1);
  if (is_new) sources_.push_back(seen);
  return entry->second;
}

}  // namespace rangebook
