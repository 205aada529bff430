// Terms between files, book and reports.
#include "tracker/app/terms_desk.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

#include "importers/policy_archive.h"
#include "importers/policy_text.h"
#include "importers/terms_table.h"
#include "schema/error.h"
#include "schema/terms_text.h"
#include "schema/terms_values.h"
#include "tracker/app/document_files.h"
#include "tracker/order_quote.h"
#include "tracker/terms_diff.h"

namespace rangebook {
namespace {

std::string bytes_of(const std::string& path) {
  FileSource source(path);
  std::string bytes;
  for (auto chunk = source.next_chunk(); !chunk.empty(); chunk = source.next_chunk()) {
    bytes.append(chunk);
    if (bytes.size() > kMaxTermsDocument) {
      throw Error(fmt::format(
          "{} is larger than 16 MiB: no policy is. Give the page or text alone.", path));
    }
  }
  return bytes;
}

/// True for the text form: its first line that says something sets a field that exists.
bool is_terms_form(std::string_view text) {
  while (!text.empty()) {
    const auto end = std::min(text.find('\n'), text.size());
    const auto line = trimmed(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.starts_with('#')) continue;
    const auto equals = line.find('=');
    if (equals == std::string_view::npos) return false;
    const auto name = trimmed(line.substr(0, equals));
    return name == "shop" || name == "observed" || find_terms_field(name) != nullptr;
  }
  return false;
}

/// What both say is taken once; where they say two things, the first stays and the other is asked.
void merge_reading(TermsReading& all, TermsReading more) {
  for (const TermsValue& value : stated_values(more.terms)) {
    const auto before = field_text(all.terms, value.field);
    const auto evidence = more.terms.evidence.find(value.field);
    TermsEvidence source =
        evidence == more.terms.evidence.end() ? TermsEvidence{} : evidence->second;
    if (before && *before != value.text) {
      source.confidence = TermsConfidence::doubtful;
      source.doubt = fmt::format("another document says \"{}\"", *before);
      all.doubts.push_back({value.field, value.text, std::move(source)});
    } else if (!before) {
      set_field(all.terms, value.field, value.text);
      all.terms.evidence[value.field] = std::move(source);
    }
  }
  std::move(more.doubts.begin(), more.doubts.end(), std::back_inserter(all.doubts));
}

TermsReading from_form(const std::string& name, ReadTermsText form,
                       std::vector<std::string>& faults) {
  for (const TermsFault& fault : form.faults) {
    faults.push_back(
        fmt::format("{}, line {}: {} {}", name, fault.line, fault.what, fault.how_to_fix));
  }
  for (const TermsValue& value : stated_values(form.terms)) {
    form.terms.evidence[value.field].document = name;
  }
  return {std::move(form.terms), {}};
}

TermsReading from_archive(const std::string& bytes, const TermsContext& context,
                          std::vector<std::string>& faults) {
  auto read = read_policy_archive(bytes, context);
  if (const auto* fault = std::get_if<DocumentFault>(&read)) {
    faults.push_back(fmt::format("{}: {} {}", context.document, fault->what, fault->how_to_fix));
    return {};
  }
  return std::get<TermsReading>(std::move(read));
}

TermsReading read_terms_document(const std::string& bytes, const TermsContext& context,
                                 std::vector<std::string>& faults) {
  if (is_policy_archive(bytes)) return from_archive(bytes, context, faults);
  if (is_terms_table(bytes)) {
    return from_form(context.document, read_terms_table(bytes, context.currency), faults);
  }
  if (is_terms_form(bytes)) {
    return from_form(context.document, read_terms_text(bytes, context.currency), faults);
  }
  return read_policy(bytes, context);
}

}  // namespace

std::variant<ShopRecord, NotThere> find_shop(const Book& book, const std::string& slug) {
  if (const auto record = book.find_shop(slug)) return *record;
  return no_shop(book, slug);
}

ReadTerms read_terms_documents(std::vector<TermsDocument> documents, const Shop& shop, Day on) {
  ReadTerms result;
  for (const TermsDocument& document : documents) {
    const TermsContext context{document.name, shop.country, shop.currency, on};
    merge_reading(result.reading, read_terms_document(document.bytes, context, result.faults));
  }
  result.documents = std::move(documents);
  return result;
}

ReadTerms read_terms_files(const std::vector<std::string>& files, const Shop& shop, Day on) {
  std::vector<TermsDocument> documents;
  for (const std::string& path : files) {
    documents.push_back({path.substr(path.rfind('/') + 1), bytes_of(path)});
  }
  return read_terms_documents(std::move(documents), shop, on);
}

std::variant<std::vector<TermsValue>, std::string> typed_fields(
    const std::vector<std::string>& assignments, std::optional<Currency> home) {
  Terms checked;
  std::vector<TermsValue> values;
  for (const std::string& assignment : assignments) {
    const auto equals = assignment.find('=');
    if (equals == assignment.npos) {
      return fmt::format(
          "\"{}\" sets nothing: write FIELD=VALUE, as in "
          "\"return.window=28 days from delivery\".",
          assignment);
    }
    const std::string field(trimmed(std::string_view(assignment).substr(0, equals)));
    const std::string text(trimmed(std::string_view(assignment).substr(equals + 1)));
    if (const auto fault = set_field(checked, field, text, home)) {
      return fault->what + " " + fault->how_to_fix;
    }
    values.push_back({field, text.empty() ? "" : field_text(checked, field).value_or(text)});
  }
  return values;
}

std::variant<Holidays, std::string> read_holidays(const std::string& path) {
  std::istringstream text(bytes_of(path));
  Holidays holidays;
  std::size_t number = 0;
  for (std::string line; std::getline(text, line);) {
    ++number;
    const auto word = trimmed(std::string_view(line).substr(0, line.find('#')));
    if (word.empty()) continue;
    const auto day = parse_day(word);
    if (!day) {
      return fmt::format("{}, line {}: \"{}\" is no date. Write one date a line, as 2026-12-25.",
                         path, number, word);
    }
    holidays.days.push_back(*day);
  }
  std::sort(holidays.days.begin(), holidays.days.end());
  holidays.days.erase(std::unique(holidays.days.begin(), holidays.days.end()), holidays.days.end());
  return holidays;
}

std::variant<OrderComparison, NotThere> compare_terms(const Book& book,
                                                      const std::vector<std::string>& shops,
                                                      const Order& order, Day on,
                                                      const Holidays& holidays) {
  std::vector<TermsInForce> in_force;
  for (const std::string& slug : shops) {
    const auto found = find_shop(book, slug);
    if (const auto* missing = std::get_if<NotThere>(&found)) return *missing;
    in_force.push_back(terms_in_force(book, std::get<ShopRecord>(found), on));
  }
  if (shops.empty()) {
    in_force = terms_in_force(book, book.shops(), on);
    std::erase_if(in_force,
                  [](const TermsInForce& one) { return !one.delivery_on && !one.returns_on; });
  }
  if (in_force.empty()) {
    return NotThere{
        "No shop of this book has terms yet on that day. Read a saved policy page with: "
        "rangebook terms read PAGE.html --shop SLUG"};
  }
  return compare_order(in_force, order, holidays);
}

std::vector<TermsStep> terms_timeline(const Book& book, const ShopRecord& shop) {
  std::vector<TermsStep> steps;
  const auto versions = terms_versions(book, shop);
  std::optional<TermsInForce> before;
  for (const TermsVersion& version : versions) {
    TermsInForce now = terms_in_force(shop.shop, versions, version.on);
    TermsStep step{version.on, {}};
    if (before) step.changes = diff_terms(*before, now, {}, {});
    steps.push_back(std::move(step));
    before = std::move(now);
  }
  return steps;
}

}  // namespace rangebook
