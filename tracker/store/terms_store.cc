// SQL of terms.
#include "tracker/store/terms_store.h"

#include <algorithm>
#include <utility>

#include "schema/error.h"
#include "schema/terms_fields.h"
#include "tracker/store/document_archive.h"

namespace rangebook {
namespace {

std::optional<std::int64_t> version_id(const Database& database, std::int64_t shop, Day on) {
  auto row = database.prepare("SELECT id FROM terms WHERE shop_id = ?1 AND observed_on = ?2");
  if (!row.bind(1, shop).bind(2, to_string(on)).step()) return std::nullopt;
  return row.integer(0);
}

std::int64_t new_version(const Database& database, std::int64_t shop, Day on) {
  database.prepare("INSERT INTO terms (shop_id, observed_on) VALUES (?1, ?2)")
      .bind(1, shop)
      .bind(2, to_string(on))
      .run();
  return database.last_row_id();
}

void set_stored_field(Terms& terms, std::string_view field, std::string_view value) {
  if (const auto fault = set_field(terms, field, value)) {
    throw Error("The book holds a term that cannot be read, " + std::string(field) + ": " +
                fault->what);
  }
}

/// One row of `field, value, sentence, document, byte, confidence`.
void take_field(Terms& terms, const Statement& row) {
  const std::string field(row.text(0));
  set_stored_field(terms, field, row.text(1));
  TermsEvidence evidence;
  evidence.sentence = row.text(2);
  evidence.document = row.text(3);
  evidence.byte = static_cast<std::uint64_t>(row.integer(4));
  evidence.confidence = parse_terms_confidence(row.text(5)).value_or(TermsConfidence::stated);
  terms.evidence[field] = std::move(evidence);
}

Terms read_version(const Database& database, std::int64_t version) {
  Terms terms;
  auto rows = database.prepare(
      "SELECT field, value, sentence, document, byte, confidence FROM terms_field "
      "WHERE terms_id = ?1 ORDER BY field");
  rows.bind(1, version);
  while (rows.step()) take_field(terms, rows);
  return terms;
}

/// The fields of one part, as the newest version up to a day that speaks of it has it; `delivery.`
/// to `delivery/` are the fields of delivery.
Statement prepare_part(const Database& database) {
  return database.prepare(
      "SELECT f.field, f.value, f.sentence, f.document, f.byte, f.confidence, v.observed_on "
      "FROM (SELECT id, observed_on FROM terms WHERE shop_id = ?1 AND observed_on <= ?2 AND EXISTS "
      "  (SELECT 1 FROM terms_field WHERE terms_id = id AND (field >= 'delivery.' AND "
      "   field < 'delivery/') = ?3) ORDER BY observed_on DESC LIMIT 1) v "
      "JOIN terms_field f ON f.terms_id = v.id "
      "WHERE (f.field >= 'delivery.' AND f.field < 'delivery/') = ?3 ORDER BY f.field");
}

/// Adds one part. The day of its version; nothing where there is none.
std::optional<Day> read_part(Statement& rows, std::int64_t shop, Day on, bool delivery,
                             Terms& terms) {
  rows.reset();
  rows.bind(1, shop).bind(2, to_string(on)).bind(3, std::int64_t{delivery});
  std::optional<Day> day;
  while (rows.step()) {
    take_field(terms, rows);
    if (!day) day = parse_day(rows.text(6));
  }
  return day;
}

/// Replaces what the version says of a field; an empty value removes it.
void put_field(const Database& database, std::int64_t version, const TermsValue& value,
               const TermsEvidence& evidence) {
  database.prepare("DELETE FROM terms_field WHERE terms_id = ?1 AND field = ?2")
      .bind(1, version)
      .bind(2, value.field)
      .run();
  if (value.text.empty()) return;
  database
      .prepare(
          "INSERT INTO terms_field (terms_id, field, value, sentence, document, byte, confidence) "
          "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)")
      .bind(1, version)
      .bind(2, value.field)
      .bind(3, value.text)
      .bind(4, evidence.sentence)
      .bind(5, evidence.document)
      .bind(6, static_cast<std::int64_t>(evidence.byte))
      .bind(7, to_string(evidence.confidence))
      .run();
}

/// True when the doubt is new to the book.
bool put_doubt(const Database& database, std::int64_t version, const TermsDoubt& doubt) {
  auto insert = database.prepare(
      "INSERT INTO terms_doubt (terms_id, field, value, sentence, document, byte, doubt, "
      "contradicts, answer) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, 'open') "
      "ON CONFLICT DO NOTHING RETURNING id");
  insert.bind(1, version)
      .bind(2, doubt.field)
      .bind(3, doubt.text)
      .bind(4, doubt.evidence.sentence)
      .bind(5, doubt.evidence.document)
      .bind(6, static_cast<std::int64_t>(doubt.evidence.byte))
      .bind(7, doubt.evidence.doubt)
      .bind(8, doubt.evidence.contradicts);
  return insert.step();
}

TermsEvidence evidence_of(const Terms& terms, const std::string& field) {
  const auto found = terms.evidence.find(field);
  return found == terms.evidence.end() ? TermsEvidence{} : found->second;
}

/// A value beside another one of the same day.
TermsDoubt contradiction(const Terms& day, const TermsValue& value, TermsEvidence evidence) {
  evidence.confidence = TermsConfidence::doubtful;
  evidence.doubt =
      "the terms of this day say \"" + field_text(day, value.field).value_or("") + "\" already";
  evidence.contradicts = evidence_of(day, value.field).sentence;
  return {value.field, value.text, std::move(evidence)};
}

void keep_documents(const Database& database, std::int64_t version,
                    const std::vector<TermsDocument>& documents) {
  DocumentArchive archive(database);
  for (const TermsDocument& document : documents) {
    archive.add(document.bytes);
    database
        .prepare(
            "INSERT INTO terms_document (terms_id, document_id, name) VALUES (?1, ?2, ?3) "
            "ON CONFLICT DO NOTHING")
        .bind(1, version)
        .bind(2, archive.finish().id)
        .bind(3, document.name)
        .run();
  }
}

/// Copies the fields of one part, with their evidence, from `source`.
void copy_part(TermsInForce& target, const TermsVersion& source, bool delivery) {
  for (const TermsValue& value : stated_values(source.terms)) {
    if (is_delivery_field(value.field) != delivery) continue;
    set_stored_field(target.terms, value.field, value.text);
    target.terms.evidence[value.field] = evidence_of(source.terms, value.field);
  }
}

}  // namespace

TermsOutcome keep_terms(Book& book, const ShopRecord& shop, Day on, const TermsReading& reading,
                        const std::vector<TermsDocument>& documents) {
  const Database& database = book.database();
  Transaction transaction(database);
  TermsOutcome outcome;
  const auto known = version_id(database, shop.id, on);
  const std::int64_t version = known ? *known : new_version(database, shop.id, on);
  const Terms day = read_version(database, version);
  for (const TermsValue& value : stated_values(reading.terms)) {
    const auto before = field_text(day, value.field);
    if (before == value.text) {
      ++outcome.same;
    } else if (before) {
      outcome.doubts += put_doubt(
          database, version, contradiction(day, value, evidence_of(reading.terms, value.field)));
    } else {
      put_field(database, version, value, evidence_of(reading.terms, value.field));
      ++outcome.added;
    }
  }
  for (const TermsDoubt& doubt : reading.doubts) {
    outcome.doubts += put_doubt(database, version, doubt);
  }
  keep_documents(database, version, documents);
  transaction.commit();
  return outcome;
}

TermsOutcome type_terms(Book& book, const ShopRecord& shop, Day on,
                        const std::vector<TermsValue>& fields) {
  const Database& database = book.database();
  Transaction transaction(database);
  TermsOutcome outcome;
  auto version = version_id(database, shop.id, on);
  Terms day;
  if (version) {
    day = read_version(database, *version);
  } else {
    day = terms_in_force(book, shop, on).terms;
    version = new_version(database, shop.id, on);
    for (const TermsValue& value : stated_values(day)) {
      put_field(database, *version, value, evidence_of(day, value.field));
    }
  }
  for (const TermsValue& value : fields) {
    const auto before = field_text(day, value.field);
    if (before.value_or("") == value.text) {
      ++outcome.same;
      continue;
    }
    ++(before ? outcome.changed : outcome.added);
    put_field(database, *version, value, {});
  }
  transaction.commit();
  return outcome;
}

std::vector<TermsVersion> terms_versions(const Book& book, const ShopRecord& shop) {
  auto rows = book.database().prepare(
      "SELECT id, observed_on FROM terms WHERE shop_id = ?1 ORDER BY observed_on");
  rows.bind(1, shop.id);
  std::vector<TermsVersion> versions;
  while (rows.step()) {
    TermsVersion version;
    version.on = parse_day(rows.text(1)).value_or(Day{});
    version.terms = read_version(book.database(), rows.integer(0));
    version.terms.shop = shop.shop.slug;
    version.terms.observed = version.on;
    versions.push_back(std::move(version));
  }
  return versions;
}

std::string terms_state(const Book& book, std::string_view slug) {
  auto rows = book.database().prepare(
      "SELECT t.observed_on, f.field, f.value, f.sentence FROM terms t "
      "JOIN terms_field f ON f.terms_id = t.id JOIN shop s ON s.id = t.shop_id "
      "WHERE s.slug = ?1 ORDER BY t.observed_on, f.field");
  rows.bind(1, slug);
  std::string state;
  while (rows.step()) {
    for (int column = 0; column < 4; ++column) state.append(rows.text(column)).append("\n");
  }
  return state;
}

TermsInForce terms_in_force(const Shop& shop, const std::vector<TermsVersion>& versions, Day on) {
  TermsInForce result;
  result.shop = shop;
  result.terms.shop = shop.slug;
  const TermsVersion* delivery = nullptr;
  const TermsVersion* returns = nullptr;
  for (const TermsVersion& version : versions) {
    if (version.on > on) break;
    if (!version.terms.delivery.empty()) delivery = &version;
    if (!version.terms.returns.empty()) returns = &version;
  }
  if (delivery != nullptr) {
    result.delivery_on = delivery->on;
    copy_part(result, *delivery, true);
  }
  if (returns != nullptr) {
    result.returns_on = returns->on;
    copy_part(result, *returns, false);
  }
  result.terms.observed = std::max(result.delivery_on, result.returns_on);
  return result;
}

TermsInForce terms_in_force(const Book& book, const ShopRecord& shop, Day on) {
  return std::move(terms_in_force(book, std::span(&shop, 1), on).front());
}

std::vector<TermsInForce> terms_in_force(const Book& book, std::span<const ShopRecord> shops,
                                         Day on) {
  Statement rows = prepare_part(book.database());
  std::vector<TermsInForce> all;
  for (const ShopRecord& shop : shops) {
    TermsInForce& one = all.emplace_back();
    one.shop = shop.shop;
    one.terms.shop = shop.shop.slug;
    one.delivery_on = read_part(rows, shop.id, on, true, one.terms);
    one.returns_on = read_part(rows, shop.id, on, false, one.terms);
    one.terms.observed = std::max(one.delivery_on, one.returns_on);
  }
  return all;
}

std::vector<OpenDoubt> open_doubts(const Book& book, const ShopRecord& shop) {
  auto rows = book.database().prepare(
      "SELECT d.id, t.observed_on, d.field, d.value, d.sentence, d.document, d.byte, d.doubt, "
      "d.contradicts FROM terms_doubt d JOIN terms t ON t.id = d.terms_id "
      "WHERE t.shop_id = ?1 AND d.answer = 'open' ORDER BY t.observed_on, d.id");
  rows.bind(1, shop.id);
  std::vector<OpenDoubt> doubts;
  while (rows.step()) {
    OpenDoubt open;
    open.id = rows.integer(0);
    open.on = parse_day(rows.text(1)).value_or(Day{});
    open.reading.field = rows.text(2);
    open.reading.text = rows.text(3);
    open.reading.evidence.sentence = rows.text(4);
    open.reading.evidence.document = rows.text(5);
    open.reading.evidence.byte = static_cast<std::uint64_t>(rows.integer(6));
    open.reading.evidence.confidence = TermsConfidence::doubtful;
    open.reading.evidence.doubt = rows.text(7);
    open.reading.evidence.contradicts = rows.text(8);
    doubts.push_back(std::move(open));
  }
  return doubts;
}

bool answer_doubt(Book& book, const ShopRecord& shop, std::int64_t doubt, bool yes) {
  const Database& database = book.database();
  Transaction transaction(database);
  auto row = database.prepare(
      "SELECT d.terms_id, d.field, d.value, d.sentence, d.document, d.byte FROM terms_doubt d "
      "JOIN terms t ON t.id = d.terms_id WHERE d.id = ?1 AND t.shop_id = ?2 AND d.answer = 'open'");
  if (!row.bind(1, doubt).bind(2, shop.id).step()) return false;
  const std::int64_t version = row.integer(0);
  const TermsValue value{std::string(row.text(1)), std::string(row.text(2))};
  TermsEvidence evidence;
  evidence.sentence = row.text(3);
  evidence.document = row.text(4);
  evidence.byte = static_cast<std::uint64_t>(row.integer(5));
  evidence.confidence = TermsConfidence::confirmed;
  row.reset();
  if (yes) put_field(database, version, value, evidence);
  // A yes to one value of a field is a no to the others that wait.
  database
      .prepare(
          "UPDATE terms_doubt SET answer = CASE WHEN id = ?1 THEN ?2 ELSE 'no' END "
          "WHERE id = ?1 OR (?2 = 'yes' AND terms_id = ?3 AND field = ?4 AND answer = 'open')")
      .bind(1, doubt)
      .bind(2, yes ? "yes" : "no")
      .bind(3, version)
      .bind(4, value.field)
      .run();
  transaction.commit();
  return true;
}

}  // namespace rangebook
