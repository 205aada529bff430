// Numbering of the notes of a brief.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <unordered_map>
#include <vector>

#include "reports/brief.h"

namespace rangebook {

/// Gives every distinct sighting one number, from 1, in order of first mention.
class SourceList {
 public:
  SourceList(const CaptureInfo& from, const CaptureInfo& to);

  std::size_t number(const Sighting& seen);
  /// The whole earlier or later capture, for counts over all of its lines.
  std::size_t then() { return number(then_); }
  std::size_t now() { return number(now_); }

  /// Adds the note of one side, if there is one.
  void cite(Phrase& phrase, const std::optional<Sighting>& seen) {
    if (seen && !phrase.empty()) phrase.note(number(*seen));
  }

  std::vector<Source> take() { return std::move(sources_); }

 private:
  using Document = std::tuple<std::int64_t, Day, std::string>;
  using LineNumbers = std::unordered_map<std::optional<std::uint64_t>, std::size_t>;
  Sighting then_;
  Sighting now_;
  std::vector<Source> sources_;
  std::map<Document, LineNumbers, std::less<>> numbers_;  // found without copying a name
};

}  // namespace rangebook
