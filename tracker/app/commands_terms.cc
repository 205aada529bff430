// Terms on the command line.
#include "tracker/app/commands_terms.h"

#include <fmt/format.h>

#include "reports/terms_report.h"
#include "tracker/app/cli.h"
#include "tracker/app/report_forms.h"
#include "tracker/app/terms_desk.h"

namespace rangebook {
namespace {

int wrong(const std::string& message) {
  fmt::print(stderr, "rangebook: {}\n", message);
  return kUsage;
}

void print_doubt(const OpenDoubt& doubt) {
  const TermsEvidence& source = doubt.reading.evidence;
  fmt::print("{}  {} = {}\n", doubt.id, doubt.reading.field, doubt.reading.text);
  fmt::print("    {} ({})\n", source.doubt, to_string(doubt.on));
  if (!source.sentence.empty()) {
    fmt::print("    {}, byte {}: \"{}\"\n", source.document, source.byte,
               one_line(source.sentence));
  }
  if (!source.contradicts.empty()) fmt::print("    but: \"{}\"\n", one_line(source.contradicts));
}

void print_reading(const TermsReading& reading) {
  for (const TermsValue& value : stated_values(reading.terms)) {
    fmt::print("{} = {}\n", value.field, value.text);
    const auto source = reading.terms.evidence.find(value.field);
    if (source != reading.terms.evidence.end() && !source->second.sentence.empty()) {
      fmt::print("    \"{}\"\n", one_line(source->second.sentence));
    }
  }
  for (const TermsDoubt& doubt : reading.doubts) {
    fmt::print("? {} = {}\n    {}: \"{}\"\n", doubt.field, doubt.text, doubt.evidence.doubt,
               one_line(doubt.evidence.sentence));
  }
}

int nothing_read(const ReadTerms& read) {
  for (const auto& fault : read.faults) fmt::print(stderr, "{}\n", fault);
  fmt::print(stderr,
             "No terms were found in {}. Type them with: rangebook terms set SHOP "
             "\"return.window=28 days from delivery\"\n",
             read.documents.size() == 1 ? read.documents.front().name : "these files");
  return kDoneWithRejections;
}

}  // namespace

int command_terms_show(const std::string& book, const TermsRequest& request,
                       const OutputChoice& output) {
  const Book opened = Book::open(book, false);
  const auto found = find_shop(opened, request.shop);
  if (const auto* missing = std::get_if<NotThere>(&found)) return not_there(*missing);
  const auto terms =
      terms_in_force(opened, std::get<ShopRecord>(found), request.on.value_or(today()));
  write_output(output.format == "json" ? terms_json(terms) : terms_in_force_text(terms), output);
  return kDone;
}

int command_terms_read(const std::string& book, const TermsRequest& request) {
  Book opened = Book::open(book, false);
  const auto found = find_shop(opened, request.shop);
  if (const auto* missing = std::get_if<NotThere>(&found)) return not_there(*missing);
  const auto& shop = std::get<ShopRecord>(found);
  const Day on = request.on.value_or(today());
  const auto read = read_terms_files(request.files, shop.shop, on);
  if (stated_values(read.reading.terms).empty() && read.reading.doubts.empty()) {
    return nothing_read(read);
  }
  print_reading(read.reading);
  for (const auto& fault : read.faults) fmt::print(stderr, "{}\n", fault);
  if (request.dry_run) {
    fmt::print("Nothing was kept (--dry-run).\n");
    return read.faults.empty() ? kDone : kDoneWithRejections;
  }
  const auto outcome = keep_terms(opened, shop, on, read.reading, read.documents);
  fmt::print("Terms of {} as of {}: {} new, {} as before.\n", request.shop, to_string(on),
             outcome.added, outcome.same);
  if (outcome.doubts > 0) {
    fmt::print("{} wait for a yes: rangebook terms doubts {}\n", outcome.doubts, request.shop);
  }
  return read.faults.empty() ? kDone : kDoneWithRejections;
}

int command_terms_set(const std::string& book, const TermsRequest& request) {
  Book opened = Book::open(book, false);
  const auto found = find_shop(opened, request.shop);
  if (const auto* missing = std::get_if<NotThere>(&found)) return not_there(*missing);
  const auto& shop = std::get<ShopRecord>(found);
  const auto fields = typed_fields(request.fields, shop.shop.currency);
  if (const auto* fault = std::get_if<std::string>(&fields)) return wrong(*fault);
  const Day on = request.on.value_or(today());
  const auto outcome = type_terms(opened, shop, on, std::get<std::vector<TermsValue>>(fields));
  fmt::print("Terms of {} as of {}: {} new, {} changed, {} as before.\n", request.shop,
             to_string(on), outcome.added, outcome.changed, outcome.same);
  return kDone;
}

int command_terms_doubts(const std::string& book, const std::string& shop) {
  const Book opened = Book::open(book, false);
  const auto found = find_shop(opened, shop);
  if (const auto* missing = std::get_if<NotThere>(&found)) return not_there(*missing);
  const auto doubts = open_doubts(opened, std::get<ShopRecord>(found));
  if (doubts.empty()) fmt::print("Nothing waits.\n");
  for (const OpenDoubt& doubt : doubts) print_doubt(doubt);
  if (!doubts.empty()) {
    fmt::print("Say which hold: rangebook terms yes {0} {1}, or: rangebook terms no {0} {1}\n",
               shop, doubts.front().id);
  }
  return kDone;
}

int command_terms_answer(const std::string& book, const std::string& shop,
                         const std::vector<std::int64_t>& doubts, bool yes) {
  Book opened = Book::open(book, false);
  const auto found = find_shop(opened, shop);
  if (const auto* missing = std::get_if<NotThere>(&found)) return not_there(*missing);
  int status = kDone;
  for (const std::int64_t doubt : doubts) {
    if (answer_doubt(opened, std::get<ShopRecord>(found), doubt, yes)) {
      fmt::print("{}: {}.\n", doubt, yes ? "taken" : "left out");
      continue;
    }
    status = wrong(fmt::format("Nothing of {0} waits under {1}. See: rangebook terms doubts {0}",
                               shop, doubt));
  }
  return status;
}

int command_terms_timeline(const std::string& book, const std::string& shop,
                           const OutputChoice& output) {
  const Book opened = Book::open(book, false);
  const auto found = find_shop(opened, shop);
  if (const auto* missing = std::get_if<NotThere>(&found)) return not_there(*missing);
  const auto steps = terms_timeline(opened, std::get<ShopRecord>(found));
  write_output(output.format == "json" ? timeline_json(shop, steps) : timeline_text(steps), output);
  return kDone;
}

int command_terms_compare(const std::string& book, const TryRequest& request,
                          const OutputChoice& output) {
  const Book opened = Book::open(book, false);
  Holidays holidays;
  if (!request.holidays.empty()) {
    auto read = read_holidays(request.holidays);
    if (const auto* fault = std::get_if<std::string>(&read)) return wrong(*fault);
    holidays = std::get<Holidays>(std::move(read));
  }
  const auto compared =
      compare_terms(opened, request.shops, request.order, request.on.value_or(today()), holidays);
  if (const auto* missing = std::get_if<NotThere>(&compared)) return not_there(*missing);
  const auto& comparison = std::get<OrderComparison>(compared);
  write_output(order_in(comparison, output), output);
  return kDone;
}

}  // namespace rangebook
