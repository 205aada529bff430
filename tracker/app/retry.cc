// The same way as a capture, from the documents in the book instead of files.
#include "tracker/app/retry.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <set>
#include <tuple>

#include "tracker/app/intake.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/table_wish.h"

namespace rangebook {
namespace {

/// A document of the book as bytes for an importer.
class BookSource final : public ByteSource {
 public:
  explicit BookSource(StoredDocument document) : document_(std::move(document)) {}
  std::string_view next_chunk() override { return document_.next_frame(); }

 private:
  StoredDocument document_;
};

/// Where a row or cell was refused.
using Place = std::tuple<std::uint32_t, std::uint64_t, std::uint64_t, std::string>;

std::set<Place> refused_places(const std::vector<Rejection>& rejections) {
  std::set<Place> places;
  for (const auto& one : rejections) {
    if (one.refused == Refused::nothing) continue;
    places.emplace(one.document, one.line.value_or(0), one.line ? 0 : one.byte,
                   one.refused == Refused::cell ? one.field : std::string{});
  }
  return places;
}

std::uint64_t without(const std::set<Place>& some, const std::set<Place>& others) {
  return static_cast<std::uint64_t>(std::count_if(
      some.begin(), some.end(), [&](const Place& place) { return !others.contains(place); }));
}

std::vector<Rejection> rejections_of(const std::vector<Rejection>& all, std::uint32_t document) {
  std::vector<Rejection> found;
  std::copy_if(all.begin(), all.end(), std::back_inserter(found),
               [&](const Rejection& one) { return one.document == document; });
  return found;
}

/// What was said about a document then, with what is said now on top. A profile it was read with
/// is used as it is now, unless another one is named.
TableWish wish_for(const Book& book, const std::string& shop, const DocumentInfo& document,
                   const MappingRequest& request, const TableWish& now) {
  TableWish wish = now;
  wish.said = overlaid(document.options, now.said);
  if (now.by_name || request.no_profile || document.profile.empty()) return wish;
  const auto then = book.find_profile(shop, document.profile);
  if (!then) return wish;
  wish.profile = then->name;
  wish.profile_options = then->options;
  return wish;
}

class Retry {
 public:
  Retry(Book& book, const RetryRequest& request, CaptureInfo info, TableWish now)
      : book_(book), request_(request), info_(std::move(info)), now_(std::move(now)) {}

  std::variant<RetryReport, NotThere> run(bool keep, const ProgressCallback& progress);

 private:
  void take(Intake& intake, std::uint32_t position);
  void count(const std::vector<Rejection>& after);

  Book& book_;
  const RetryRequest& request_;
  const CaptureInfo info_;
  const TableWish now_;
  std::vector<Rejection> before_;
  RetryReport report_;
};

std::variant<RetryReport, NotThere> Retry::run(bool keep, const ProgressCallback& progress) {
  before_ = book_.rejections(info_.id);
  auto& report = report_.capture;
  report.shop = book_.find_shop(request_.shop).value().shop;
  for (const auto& record : book_.captures(request_.shop)) {
    if (record.info.id == info_.id) report_.lines_before = static_cast<std::uint64_t>(record.lines);
  }
  CaptureWriter writer(book_, info_);
  Intake intake(writer, report.shop, report, keep ? nullptr : &report_.documents, progress);
  for (const auto& document : info_.documents) intake.expect_bytes(document.bytes);
  for (std::uint32_t i = 0; i < info_.documents.size(); ++i) take(intake, i);
  if (auto missing = intake.missing(now_)) return std::move(*missing);
  report.outcome = writer.finish(keep);
  report.info = writer.info();
  if (!report.outcome.unchanged || !keep) report.notes = intake.profile_notes();
  report.kept = keep && !report.outcome.unchanged && report.outcome.lines > 0;
  count(book_.rejections(info_.id));
  return std::move(report_);
}

void Retry::take(Intake& intake, std::uint32_t position) {
  const auto& document = info_.documents[position];
  const auto form = parse_document_form(document.importer).value_or(DocumentForm::table);
  if (form == DocumentForm::archive) {
    return intake.take_refused(document.name, rejections_of(before_, position));
  }
  BookSource source(book_.open_document(info_.id, position));
  intake.take_document(form, document.name, source,
                       wish_for(book_, request_.shop, document, request_.mapping, now_));
}

void Retry::count(const std::vector<Rejection>& after) {
  const auto then = refused_places(before_);
  const auto now = refused_places(after);
  report_.refused_before = then.size();
  report_.cured = without(then, now);
  report_.newly_refused = without(now, then);
}

}  // namespace

std::variant<RetryReport, NotThere> retry_capture(Book& book, const RetryRequest& request,
                                                  bool keep, const ProgressCallback& progress) {
  auto found = find_capture(book, request.shop, request.capture);
  if (auto* missing = std::get_if<NotThere>(&found)) return std::move(*missing);
  auto wish = wish_of(book, request.shop, request.mapping);
  if (auto* missing = std::get_if<NotThere>(&wish)) return std::move(*missing);
  return Retry(book, request, std::get<CaptureInfo>(std::move(found)),
               std::get<TableWish>(std::move(wish)))
      .run(keep, progress);
}

}  // namespace rangebook
