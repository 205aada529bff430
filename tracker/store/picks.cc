// SQL of picks.
#include "tracker/store/picks.h"

#include <fmt/format.h>

#include <map>
#include <utility>

#include "schema/error.h"

namespace rangebook {
namespace {

Day day_at(const Statement& row, int column) {
  const auto day = parse_day(row.text(column));
  if (!day) throw Error(fmt::format("A date of pick {} is damaged.", row.integer(0)));
  return *day;
}

PickList list_at(const Statement& row, int column) {
  const auto list = parse_pick_list(row.text(column));
  if (!list) throw Error("A list of the vocabulary of picks is damaged.");
  return *list;
}

void bind_facts(Statement& row, const Pick& pick) {
  row.bind(1, to_string(pick.on)).bind(2, std::string_view(pick.theme));
  if (pick.review) {
    row.bind(3, to_string(*pick.review));
  } else {
    row.bind_null(3);
  }
  row.bind(4, std::string_view(pick.note));
}

void put_words(const Database& database, std::int64_t number, const std::vector<PickWord>& words) {
  database.prepare("DELETE FROM pick_word WHERE pick_id = ?1").bind(1, number).run();
  auto insert = database.prepare(
      "INSERT INTO pick_word (pick_id, word_id) "
      "SELECT ?1, id FROM pick_vocabulary WHERE list = ?2 AND word = ?3");
  for (const PickWord& word : words) {
    insert.bind(1, number).bind(2, to_string(word.list)).bind(3, std::string_view(word.word)).run();
  }
}

std::map<std::int64_t, std::vector<PickWord>> all_words(const Book& book) {
  auto rows = book.database().prepare(
      "SELECT w.pick_id, v.list, v.word FROM pick_word w "
      "JOIN pick_vocabulary v ON v.id = w.word_id");
  std::map<std::int64_t, std::vector<PickWord>> words;
  while (rows.step()) {
    words[rows.integer(0)].push_back({list_at(rows, 1), std::string(rows.text(2))});
  }
  for (auto& [number, each] : words) std::sort(each.begin(), each.end());
  return words;
}

void bind_word(Statement& row, const PickWord& word) {
  row.bind(1, to_string(word.list)).bind(2, std::string_view(word.word));
}

}  // namespace

std::int64_t add_pick(Book& book, const Pick& pick) {
  Transaction transaction(book.database());
  auto insert = book.database().prepare(
      "INSERT INTO pick (picked_on, theme, review_on, note, line_id, seen_on) "
      "VALUES (?1, ?2, ?3, ?4, ?5, ?6)");
  bind_facts(insert, pick);
  insert.bind(5, pick.line).bind(6, to_string(pick.seen_on)).run();
  const std::int64_t number = book.database().last_row_id();
  put_words(book.database(), number, pick.words);
  transaction.commit();
  return number;
}

void store_pick(Book& book, const Pick& pick) {
  Transaction transaction(book.database());
  auto update = book.database().prepare(
      "UPDATE pick SET picked_on = ?1, theme = ?2, review_on = ?3, note = ?4 WHERE id = ?5");
  bind_facts(update, pick);
  update.bind(5, pick.number).run();
  put_words(book.database(), pick.number, pick.words);
  transaction.commit();
}

void remove_picks(Book& book, const std::vector<std::int64_t>& numbers) {
  Transaction transaction(book.database());
  auto remove = book.database().prepare("DELETE FROM pick WHERE id = ?1");
  for (const std::int64_t number : numbers) remove.bind(1, number).run();
  transaction.commit();
}

std::vector<Pick> kept_picks(const Book& book, std::string_view shop) {
  auto words = all_words(book);
  auto rows = book.database().prepare(
      "SELECT p.id, s.slug, p.line_id, p.seen_on, p.picked_on, p.theme, p.review_on, p.note "
      "FROM pick p JOIN line l ON l.id = p.line_id JOIN shop s ON s.id = l.shop_id "
      "WHERE ?1 = '' OR s.slug = ?1 ORDER BY p.id");
  rows.bind(1, shop);
  std::vector<Pick> picks;
  while (rows.step()) {
    Pick pick;
    pick.number = rows.integer(0);
    pick.shop = rows.text(1);
    pick.line = rows.integer(2);
    pick.seen_on = day_at(rows, 3);
    pick.on = day_at(rows, 4);
    pick.theme = rows.text(5);
    if (!rows.is_null(6)) pick.review = day_at(rows, 6);
    pick.note = rows.text(7);
    pick.words = std::move(words[pick.number]);
    picks.push_back(std::move(pick));
  }
  return picks;
}

std::vector<PickWord> pick_vocabulary(const Book& book) {
  auto rows = book.database().prepare("SELECT list, word FROM pick_vocabulary");
  std::vector<PickWord> words;
  while (rows.step()) words.push_back({list_at(rows, 0), std::string(rows.text(1))});
  std::sort(words.begin(), words.end());
  return words;
}

bool add_pick_word(Book& book, const PickWord& word) {
  auto insert = book.database().prepare(
      "INSERT INTO pick_vocabulary (list, word) VALUES (?1, ?2) ON CONFLICT DO NOTHING "
      "RETURNING id");
  bind_word(insert, word);
  return insert.step();
}

std::int64_t uses_of(const Book& book, const PickWord& word) {
  auto row = book.database().prepare(
      "SELECT count(*) FROM pick_word w JOIN pick_vocabulary v ON v.id = w.word_id "
      "WHERE v.list = ?1 AND v.word = ?2");
  bind_word(row, word);
  row.step();
  return row.integer(0);
}

bool remove_pick_word(Book& book, const PickWord& word) {
  Transaction transaction(book.database());
  auto uses = book.database().prepare(
      "DELETE FROM pick_word WHERE word_id IN "
      "(SELECT id FROM pick_vocabulary WHERE list = ?1 AND word = ?2)");
  bind_word(uses, word);
  uses.run();
  auto entry = book.database().prepare(
      "DELETE FROM pick_vocabulary WHERE list = ?1 AND word = ?2 RETURNING id");
  bind_word(entry, word);
  const bool was_there = entry.step();
  entry.reset();
  transaction.commit();
  return was_there;
}

void rename_pick_word(Book& book, const PickWord& word, const std::string& now) {
  auto update =
      book.database().prepare("UPDATE pick_vocabulary SET word = ?3 WHERE list = ?1 AND word = ?2");
  bind_word(update, word);
  update.bind(3, std::string_view(now)).run();
}

}  // namespace rangebook
