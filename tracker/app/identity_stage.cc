// Capture by capture, then all together.
#include "tracker/app/identity_stage.h"

#include <algorithm>
#include <fstream>
#include <map>
#include <string>
#include <utility>

#include "tracker/identity/assembly.h"
#include "tracker/identity/finder.h"
#include "tracker/identity/fingerprint.h"
#include "tracker/identity/threads.h"
#include "tracker/reference.h"
#include "tracker/store/found_links.h"

namespace rangebook {
namespace {

/// Stands for the rules: whatever changes in them changes the program. Its own bytes are hashed,
/// which a version number that somebody has to raise would not be safer than.
const std::string& program_fingerprint() {
  static const std::string fingerprint = [] {
    std::ifstream file("/proc/self/exe", std::ios::binary | std::ios::ate);
    std::string bytes(static_cast<std::size_t>(std::max<std::streamoff>(file.tellg(), 0)), '\0');
    file.seekg(0).read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    return long_reference({bytes});
  }();
  return fingerprint;
}

/// For each capture whether it shows a line under a code no capture before it had.
std::vector<char> with_fresh_rows(const Roll& roll) {
  std::vector<char> fresh(roll.captures.size());
  const Threads threads(roll, roll.captures.size());
  for (std::uint32_t thread = 0; thread < threads.count(); ++thread) {
    fresh[threads.first(thread).capture] = 1;
  }
  return fresh;
}

/// Reads what lines said of themselves, capture by capture.
std::vector<EarlierLine> read_earlier(const Roll& roll, StoredLines& lines,
                                      const std::map<SightingAt, LineId>& wanted) {
  std::vector<EarlierLine> earlier;
  for (auto at = wanted.begin(); at != wanted.end();) {
    const std::uint32_t capture = at->first.capture;
    const CaptureInfo& info = roll.captures[capture].info;
    std::vector<std::uint32_t> rows;
    const auto begin = at;
    for (; at != wanted.end() && at->first.capture == capture; ++at) rows.push_back(at->first.row);
    auto line = begin;
    for (LineState& state : lines.lines(capture, rows)) {
      LineCard& card = state.listing.card;
      earlier.push_back({(line++)->second, info.season, info.on, info.id, std::move(card.line_code),
                         std::move(card.name)});
    }
  }
  return earlier;
}

}  // namespace

LikenessOptions likeness_options(const Shop& shop) {
  LikenessOptions options;
  if (shop.link_above) options.link_from = static_cast<double>(*shop.link_above) / 100;
  if (shop.ask_above) options.ask_from = static_cast<double>(*shop.ask_above) / 100;
  return options;
}

Identities identify(const Book& book, const Roll& roll, StoredLines& lines, std::size_t looked_at) {
  const LikenessOptions options = likeness_options(roll.shop);
  std::vector<CaptureFinds> finds;
  const auto fresh = with_fresh_rows(roll);
  for (std::uint32_t capture = 0; capture < roll.captures.size(); ++capture) {
    if (capture == 0 || capture >= looked_at || fresh[capture] == 0) {
      finds.emplace_back();
      continue;
    }
    const std::string fingerprint =
        finds_fingerprint(roll, capture, options, program_fingerprint());
    if (auto known = read_found(book, roll, capture, fingerprint)) {
      finds.push_back(std::move(*known));
      continue;
    }
    finds.push_back(find_links(roll, assemble(roll, finds), capture, lines, options));
    keep_found(book, roll, capture, fingerprint, finds.back());
  }
  return assemble(roll, finds);
}

std::optional<std::uint32_t> place_of(const Roll& roll, std::int64_t capture) {
  for (std::uint32_t place = 0; place < roll.captures.size(); ++place) {
    if (roll.captures[place].info.id == capture) return place;
  }
  return std::nullopt;
}

std::vector<EarlierLine> seen_earlier(const Roll& roll, const Identities& identities,
                                      StoredLines& lines, std::uint32_t before,
                                      std::uint32_t after) {
  std::map<SightingAt, LineId> wanted;
  for (const std::uint32_t index : identities.of_row[after]) {
    const LineIdentity& line = identities.lines[index];
    const auto first_of_both = std::lower_bound(line.seen.begin(), line.seen.end(),
                                                SightingAt{std::min(before, after), 0});
    const bool there = std::any_of(line.seen.begin(), line.seen.end(),
                                   [&](SightingAt seen) { return seen.capture == before; });
    if (!there && first_of_both != line.seen.begin()) wanted[*(first_of_both - 1)] = line.id;
  }
  return read_earlier(roll, lines, wanted);
}

}  // namespace rangebook
