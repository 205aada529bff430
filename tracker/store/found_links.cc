// Sightings as numbers of captures and lines, which stay when rows move.
#include "tracker/store/found_links.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "schema/error.h"

namespace rangebook {
namespace {

constexpr std::array kEvidence{LinkEvidence::line_code, LinkEvidence::gtin, LinkEvidence::group_id,
                               LinkEvidence::address, LinkEvidence::likeness};
constexpr std::array kAuthorities{LinkAuthority::code, LinkAuthority::rule, LinkAuthority::stylist};

std::string evidence_text(const std::vector<LinkEvidence>& evidence) {
  std::string text;
  for (const LinkEvidence each : evidence) {
    text.append(text.empty() ? "" : ",").append(to_string(each));
  }
  return text;
}

std::vector<LinkEvidence> parse_evidence(std::string_view text) {
  std::vector<LinkEvidence> evidence;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(','), text.size());
    for (const LinkEvidence each : kEvidence) {
      if (to_string(each) == text.substr(0, end)) evidence.push_back(each);
    }
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return evidence;
}

LinkAuthority parse_authority(std::string_view text) {
  const auto* const found =
      std::find_if(kAuthorities.begin(), kAuthorities.end(),
                   [&](LinkAuthority each) { return to_string(each) == text; });
  return found == kAuthorities.end() ? LinkAuthority::rule : *found;
}

std::optional<SightingAt> sighting(const Roll& roll, std::int64_t capture, LineId line) {
  for (std::uint32_t place = 0; place < roll.captures.size(); ++place) {
    if (roll.captures[place].info.id != capture) continue;
    const auto row = row_of(roll.captures[place], line);
    if (row) return SightingAt{place, *row};
  }
  return std::nullopt;
}

LineId line_at(const Roll& roll, SightingAt at) { return roll.captures[at.capture].lines[at.row]; }

void write_links(const Database& database, const Roll& roll, const CaptureFinds& finds) {
  auto insert = database.prepare(
      "INSERT INTO found_link (capture_id, position, line_id, then_capture_id, then_line_id, "
      "asked, authority, evidence, score, sentence) "
      "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)");
  std::int64_t position = 0;
  for (const auto* links : {&finds.links, &finds.ask}) {
    for (const FoundLink& link : *links) {
      insert.bind(1, roll.captures[link.to.capture].info.id).bind(2, position++);
      insert.bind(3, line_at(roll, link.to));
      insert.bind(4, roll.captures[link.from.capture].info.id);
      insert.bind(5, line_at(roll, link.from));
      insert.bind(6, std::int64_t{links == &finds.ask ? 1 : 0});
      insert.bind(7, to_string(link.authority));
      insert.bind(8, std::string_view(evidence_text(link.evidence)));
      insert.bind(9, link.score).bind(10, std::string_view(link.sentence)).run();
    }
  }
}

}  // namespace

std::optional<CaptureFinds> read_found(const Book& book, const Roll& roll, std::uint32_t place,
                                       std::string_view fingerprint) {
  const std::int64_t capture = roll.captures[place].info.id;
  auto known = book.database().prepare("SELECT fingerprint FROM found WHERE capture_id = ?1");
  if (!known.bind(1, capture).step() || known.text(0) != fingerprint) return std::nullopt;
  auto rows = book.database().prepare(
      "SELECT line_id, then_capture_id, then_line_id, asked, authority, evidence, score, sentence "
      "FROM found_link WHERE capture_id = ?1 ORDER BY position");
  rows.bind(1, capture);
  CaptureFinds finds;
  while (rows.step()) {
    const auto to = sighting(roll, capture, rows.integer(0));
    const auto from = sighting(roll, rows.integer(1), rows.integer(2));
    if (!to || !from) return std::nullopt;
    FoundLink link{*from,
                   *to,
                   parse_evidence(rows.text(5)),
                   parse_authority(rows.text(4)),
                   rows.real(6),
                   std::string(rows.text(7))};
    (rows.integer(3) != 0 ? finds.ask : finds.links).push_back(std::move(link));
  }
  return finds;
}

void keep_found(const Book& book, const Roll& roll, std::uint32_t place,
                std::string_view fingerprint, const CaptureFinds& finds) {
  const std::int64_t capture = roll.captures[place].info.id;
  try {
    Transaction transaction(book.database());
    book.database().prepare("DELETE FROM found WHERE capture_id = ?1").bind(1, capture).run();
    book.database()
        .prepare("INSERT INTO found (capture_id, fingerprint) VALUES (?1, ?2)")
        .bind(1, capture)
        .bind(2, fingerprint)
        .run();
    write_links(book.database(), roll, finds);
    transaction.commit();
  } catch (const Error&) {  // busy or not writable: nothing is lost, only not kept
    return;
  }
}

}  // namespace rangebook
