// Decisions, one row each; what holds is the newest row of a pair.
#include "tracker/store/decisions.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "schema/error.h"

namespace rangebook {
namespace {

constexpr char kColumns[] =
    "SELECT d.id, d.line_a, d.on_a, d.line_b, d.on_b, d.same, d.score, d.sentence ";

Day day_of(std::string_view text, std::int64_t decision) {
  const auto day = parse_day(text);
  if (!day) throw Error(fmt::format("The date of decision {} is damaged.", decision));
  return *day;
}

KeptDecision read_row(const Statement& row) {
  KeptDecision kept;
  kept.id = row.integer(0);
  kept.about.a = row.integer(1);
  kept.about.a_on = day_of(row.text(2), kept.id);
  kept.about.b = row.integer(3);
  kept.about.b_on = day_of(row.text(4), kept.id);
  kept.about.same = row.integer(5) != 0;
  kept.score = row.real(6);
  kept.sentence = row.text(7);
  return kept;
}

/// The smaller line first; of one line the earlier day.
LinkDecision ordered(LinkDecision about) {
  if (std::tie(about.b, about.b_on) < std::tie(about.a, about.a_on)) {
    std::swap(about.a, about.b);
    std::swap(about.a_on, about.b_on);
  }
  return about;
}

/// Of two lines any decision about them; of one line only that about the same two days.
constexpr char kOfPair[] =
    "WHERE line_a = ?1 AND line_b = ?2 AND (?1 <> ?2 OR (on_a = ?3 AND on_b = ?4)) ";

void bind_pair(Statement& statement, const LinkDecision& about) {
  const LinkDecision pair = ordered(about);
  statement.bind(1, pair.a).bind(2, pair.b);
  statement.bind(3, std::string_view(to_string(pair.a_on)));
  statement.bind(4, std::string_view(to_string(pair.b_on)));
}

/// What two decisions about the same pair have in common.
std::tuple<LineId, LineId, Day, Day> pair_key(const LinkDecision& about) {
  const bool itself = about.a == about.b;
  return {about.a, about.b, itself ? about.a_on : Day{}, itself ? about.b_on : Day{}};
}

}  // namespace

std::vector<KeptDecision> kept_decisions(const Book& book, std::string_view shop) {
  auto rows = book.database().prepare(
      std::string(kColumns) +
      "FROM decision d JOIN line l ON l.id = d.line_a JOIN shop s ON s.id = l.shop_id "
      "WHERE s.slug = ?1 ORDER BY d.id");
  rows.bind(1, shop);
  std::map<std::tuple<LineId, LineId, Day, Day>, KeptDecision> newest;
  while (rows.step()) {
    KeptDecision next = read_row(rows);
    newest[pair_key(next.about)] = std::move(next);
  }
  std::vector<KeptDecision> found;
  for (auto& [pair, decision] : newest) found.push_back(std::move(decision));
  std::sort(found.begin(), found.end(),
            [](const KeptDecision& x, const KeptDecision& y) { return x.id < y.id; });
  return found;
}

void keep_decisions(Book& book, const std::vector<KeptDecision>& decisions) {
  Transaction transaction(book.database());
  auto insert = book.database().prepare(
      "INSERT INTO decision (line_a, on_a, line_b, on_b, same, score, sentence) "
      "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)");
  for (const KeptDecision& decision : decisions) {
    const LinkDecision about = ordered(decision.about);
    insert.bind(1, about.a).bind(2, std::string_view(to_string(about.a_on)));
    insert.bind(3, about.b).bind(4, std::string_view(to_string(about.b_on)));
    insert.bind(5, std::int64_t{about.same ? 1 : 0}).bind(6, decision.score);
    insert.bind(7, std::string_view(decision.sentence)).run();
  }
  transaction.commit();
}

void drop_decision(Book& book, const LinkDecision& about) {
  auto remove =
      book.database().prepare("DELETE FROM decision WHERE id = (SELECT max(id) FROM decision " +
                              std::string(kOfPair) + ")");
  bind_pair(remove, about);
  remove.run();
}

std::optional<KeptDecision> decision_below(const Book& book, const LinkDecision& about) {
  auto row = book.database().prepare(std::string(kColumns) + "FROM decision d " + kOfPair +
                                     "ORDER BY d.id DESC LIMIT 1 OFFSET 1");
  bind_pair(row, about);
  if (!row.step()) return std::nullopt;
  return read_row(row);
}

std::optional<NewestDecision> newest_decision(const Book& book, std::string_view shop) {
  auto row = book.database().prepare(
      std::string(kColumns) +
      ", s.slug FROM decision d JOIN line l ON l.id = d.line_a JOIN shop s ON s.id = l.shop_id "
      "WHERE ?1 = '' OR s.slug = ?1 ORDER BY d.id DESC LIMIT 1");
  if (!row.bind(1, shop).step()) return std::nullopt;
  return NewestDecision{std::string(row.text(8)), read_row(row)};
}

}  // namespace rangebook
