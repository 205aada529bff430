// Captures of one shop for tests of identity, in the language of range_text.h. Lines are kept under
// their codes, as in the store: equal codes have equal ids.
#pragma once

#include <algorithm>
#include <map>
#include <numeric>
#include <string>
#include <string_view>
#include <vector>

#include "tests/tracker/range_text.h"
#include "tracker/identity/assembly.h"
#include "tracker/identity/finder.h"
#include "tracker/identity/threads.h"

namespace rangebook::testing {

/// Captures, taken in one after the other, and what the identity stage makes of them.
class Captures : public LineSource {
 public:
  /// A capture of the whole range, `year` years after 2024. Ids follow the order of these calls.
  Captures& take(std::string_view season, int year, std::string_view text) {
    Snapshot snapshot = range(season, text);
    snapshot.capture.id = static_cast<std::int64_t>(taken_.size()) + 1;
    snapshot.capture.on = date::sys_days(date::year(2024 + year) / 9 / 1);
    for (LineState& line : snapshot.lines) line.id = id_of(line.listing.card);
    std::sort(snapshot.lines.begin(), snapshot.lines.end(),
              [](const LineState& a, const LineState& b) { return a.id < b.id; });
    taken_.push_back(std::move(snapshot));
    return *this;
  }
  Captures& decide(std::string_view a, std::string_view b, bool same) {
    decisions_.push_back({ids_.at(std::string(a)), ids_.at(std::string(b)), same, {}, {}});
    return *this;
  }
  Captures& decide(LinkDecision decision) {
    decisions_.push_back(decision);
    return *this;
  }
  LineId id(std::string_view code) const { return ids_.at(std::string(code)); }

  const Roll& roll() {
    roll_ = {};
    roll_.shop.sizes = SizeSystem::uk;
    roll_.decisions = decisions_;
    by_date_.clear();
    for (const Snapshot& snapshot : taken_) by_date_.push_back(&snapshot);
    std::sort(by_date_.begin(), by_date_.end(), [](const Snapshot* a, const Snapshot* b) {
      return capture_before(a->capture, b->capture);
    });
    for (const Snapshot* snapshot : by_date_) {
      RollCapture& capture = roll_.captures.emplace_back();
      capture.info = snapshot->capture;
      for (const LineState& line : snapshot->lines) capture.lines.push_back(line.id);
    }
    for (const auto& [key, id] : ids_) {
      if (key.starts_with("name:")) roll_.unsure.push_back(id);
    }
    std::sort(roll_.unsure.begin(), roll_.unsure.end());
    return roll_;
  }

  std::vector<CaptureFinds> finds() {
    const Roll& all = roll();
    std::vector<CaptureFinds> finds;
    for (std::uint32_t i = 0; i < all.captures.size(); ++i) {
      finds.push_back(find_links(all, assemble(all, finds), i, *this, {}));
    }
    return finds;
  }

  Identities identities() {
    const auto found = finds();
    return assemble(roll_, found);
  }

  const Snapshot& by_date(std::uint32_t capture) const { return *by_date_[capture]; }

  /// Lines as `AB1@AW24 XY9@AW25`, code or name and season of each sighting; sorted.
  std::vector<std::string> told() {
    std::vector<std::string> all;
    for (const LineIdentity& line : identities().lines) {
      std::string text;
      for (const SightingAt seen : line.seen) {
        const Snapshot& capture = by_date(seen.capture);
        const LineCard& card = capture.lines[seen.row].listing.card;
        text += (text.empty() ? "" : " ") + (card.line_code.empty() ? card.name : card.line_code) +
                "@" + capture.capture.season;
      }
      all.push_back(std::move(text));
    }
    std::sort(all.begin(), all.end());
    return all;
  }

  std::vector<LineState> lines(std::uint32_t capture,
                               const std::vector<std::uint32_t>& rows) override {
    std::vector<LineState> found;
    for (const std::uint32_t row : rows) found.push_back(by_date_[capture]->lines[row]);
    read_ += rows.size();
    return found;
  }
  std::vector<LineDetail> details(std::uint32_t capture,
                                  const std::vector<std::uint32_t>& rows) override {
    std::vector<LineDetail> found;
    for (const std::uint32_t row : rows) {
      found.push_back(by_date_[capture]->lines[row].listing.detail);
    }
    return found;
  }
  std::vector<std::uint64_t> hashes(std::uint32_t capture,
                                    const std::vector<std::uint32_t>& rows) override {
    std::vector<std::uint64_t> found;
    for (const std::uint32_t row : rows) {
      const LineCard& card = by_date_[capture]->lines[row].listing.card;
      found.push_back(std::hash<std::string>()(card.line_code + card.name));
    }
    return found;
  }
  /// How many lines were read so far.
  std::size_t read() const { return read_; }

 private:
  LineId id_of(const LineCard& card) {
    const std::string key = card.line_code.empty() ? "name:" + card.name : card.line_code;
    return ids_.try_emplace(key, static_cast<LineId>(ids_.size()) + 1).first->second;
  }

  std::map<std::string, LineId> ids_;
  std::vector<Snapshot> taken_;
  std::vector<const Snapshot*> by_date_;
  std::vector<LinkDecision> decisions_;
  Roll roll_;
  std::size_t read_ = 0;
};

}  // namespace rangebook::testing
