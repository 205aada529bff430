// Manifests to lists of lines; lines when somebody asks.
#include "tracker/store/roll_reader.h"

#include <algorithm>

#include "tracker/store/manifest.h"
#include "tracker/store/snapshot_reader.h"

namespace rangebook {
namespace {

std::vector<LineId> unsure_lines(const Database& database, std::int64_t shop) {
  // Keys sort by their kind, so the ranges beside `code:` and `group:` are read and no others.
  auto rows = database.prepare(
      "SELECT id FROM line WHERE shop_id = ?1 AND "
      "(key < 'code:' OR (key >= 'code;' AND key < 'group:') OR key >= 'group;')");
  rows.bind(1, shop);
  std::vector<LineId> lines;
  while (rows.step()) lines.push_back(rows.integer(0));
  std::sort(lines.begin(), lines.end());
  return lines;
}

std::vector<std::size_t> as_places(const std::vector<std::uint32_t>& rows) {
  return {rows.begin(), rows.end()};
}

}  // namespace

Roll read_roll(const Book& book, std::string_view shop) {
  Roll roll;
  const auto record = book.find_shop(shop);
  if (!record) return roll;
  roll.shop = record->shop;
  const auto manifests = read_manifests(book.database(), record->id);
  for (auto& capture : book.captures(shop)) {
    RollCapture& seen = roll.captures.emplace_back();
    for (const auto& entry : manifests.at(capture.info.id)) seen.lines.push_back(entry.line);
    seen.info = std::move(capture.info);
  }
  std::sort(
      roll.captures.begin(), roll.captures.end(),
      [](const RollCapture& a, const RollCapture& b) { return capture_before(a.info, b.info); });
  roll.unsure = unsure_lines(book.database(), record->id);
  roll.decisions = book.link_decisions(shop);
  return roll;
}

std::vector<LineState> StoredLines::lines(std::uint32_t capture,
                                          const std::vector<std::uint32_t>& rows) {
  const auto found = at_hand_.find(capture);
  if (found == at_hand_.end()) {
    return read_lines(book_, roll_.captures[capture].info.id, as_places(rows));
  }
  std::vector<LineState> lines;
  lines.reserve(rows.size());
  for (const std::uint32_t row : rows) lines.push_back(found->second->lines[row]);
  return lines;
}

std::vector<LineDetail> StoredLines::details(std::uint32_t capture,
                                             const std::vector<std::uint32_t>& rows) {
  return read_details(book_, roll_.captures[capture].info.id, as_places(rows));
}

std::vector<std::uint64_t> StoredLines::hashes(std::uint32_t capture,
                                               const std::vector<std::uint32_t>& rows) {
  return read_card_hashes(book_, roll_.captures[capture].info.id, as_places(rows));
}

}  // namespace rangebook
