// Bytes are read once: by the importer and, through the tap, by the archive.
#include "tracker/app/intake.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "importers/container.h"
#include "importers/csv_reader.h"
#include "importers/json_feed.h"
#include "importers/mhtml_reader.h"
#include "importers/page_reader.h"
#include "importers/table_fit.h"
#include "importers/xlsx_reader.h"
#include "importers/xml_feed.h"

namespace rangebook {
namespace {

/// A document of an archive that cannot be taken.
Rejection unreadable(const DocumentFault& fault, std::uint32_t document) {
  Rejection rejection;
  rejection.document = document;
  rejection.kind = fault.kind;
  rejection.what = fault.what;
  rejection.how_to_fix = fault.how_to_fix;
  return rejection;
}

/// The shop's profile, where it is used, and what was said besides.
TableOptions options_of(const TableWish& wish, bool with_profile) {
  return with_profile ? overlaid(wish.profile_options, wish.said) : wish.said;
}

/// Whether a document, by its front (a workbook: whole), has the names that a profile speaks of.
bool fits(DocumentForm form, std::string_view front, const TableOptions& options,
          const std::vector<ColumnChoice>& columns) {
  if (form == DocumentForm::workbook) return workbook_fits(std::string(front), options, columns);
  if (form == DocumentForm::json) return json_fits(front, options, columns);
  if (form == DocumentForm::xml) return xml_fits(front, options, columns);
  return table_fits(front, options, columns);
}

std::unique_ptr<RowReader> open_rows(DocumentForm form, ByteSource& source, std::uint32_t index,
                                     const TableOptions& options) {
  if (form == DocumentForm::json) return open_json(source, index, options);
  if (form == DocumentForm::xml) return open_xml(source, index, options);
  return open_csv(source, index, options);
}

/// The first few names, and how many more.
std::string list_of(const std::vector<std::string>& names) {
  constexpr std::size_t kShown = 5;
  const auto shown = std::vector<std::string>(
      names.begin(), names.begin() + static_cast<std::ptrdiff_t>(std::min(kShown, names.size())));
  return fmt::format(
      "{}{}", fmt::join(shown, ", "),
      names.size() > kShown ? fmt::format(" and {} more", names.size() - kShown) : std::string{});
}

}  // namespace

void Intake::take_file(const DocumentFile& file, const TableWish& wish) {
  if (file.form == DocumentForm::archive) return take_archive(file, wish);
  FileSource source(file.path);
  take_document(file.form, file.name, source, wish);
}

/// The documents in a zip archive, each kept as a document of its own.
void Intake::take_archive(const DocumentFile& file, const TableWish& wish) {
  FileSource source(file.path);
  std::string bytes;
  for (auto chunk = source.next_chunk(); !chunk.empty(); chunk = source.next_chunk()) {
    if (bytes.size() <= kMaxArchiveBytes) bytes.append(chunk);
  }
  const auto archive = open_archive(std::move(bytes));
  for (auto step = archive->next(); step != Container::Step::end; step = archive->next()) {
    const std::string name = file.name + "/" + archive->name();
    if (step == Container::Step::document) {
      take_document(form_of(archive->name(), archive->kind()), name, archive->source(), wish);
    } else {
      take_refused(name, {unreadable(archive->fault(), index_)});
    }
  }
  if (archive->left_aside().empty()) return;
  report_.notes.push_back(
      fmt::format("Left aside in {}: {}.", file.name, archive->left_aside().sentence()));
}

void Intake::take_refused(const std::string& name, const std::vector<Rejection>& rejections) {
  PreviewBuilder preview(shop_);
  for (const auto& rejection : rejections) reject(rejection, &preview);
  end_document({.name = name, .importer = std::string(to_string(DocumentForm::archive))},
               preview.finish({}, std::nullopt, false));
}

void Intake::take_document(DocumentForm form, const std::string& name, ByteSource& bytes,
                           const TableWish& wish) {
  const auto importer = form == DocumentForm::archive ? DocumentForm::table : form;
  DocumentInfo document{.name = name, .importer = std::string(to_string(importer))};
  TappedSource source(bytes, [&](std::string_view chunk) { keep_bytes(chunk); });
  switch (form) {
    case DocumentForm::table:
    case DocumentForm::archive:  // an archive within an archive: refused as no table
    case DocumentForm::workbook:
    case DocumentForm::json:
    case DocumentForm::xml:
      return take_table(std::move(document), form, bytes, wish);
    case DocumentForm::page: {
      const std::string html = source.read_all(kMaxPageBytes);
      return finish(std::move(document), source, *open_page(html, index_));
    }
    case DocumentForm::mhtml: {
      const std::string file = source.read_all(kMaxMhtmlBytes);
      return finish(std::move(document), source, *open_mhtml(file, index_));
    }
  }
}

/// Tables and feeds are what options and profiles are about. A profile is tried on the front of the
/// document first: in a folder of many tables it is rarely meant for all.
void Intake::take_table(DocumentInfo document, DocumentForm form, ByteSource& bytes,
                        const TableWish& wish) {
  FrontSource front(bytes);
  TappedSource source(front, [&](std::string_view chunk) { keep_bytes(chunk); });
  const bool workbook = form == DocumentForm::workbook;
  std::string held = workbook ? source.read_all(kMaxWorkbookBytes) : std::string{};
  bool with_profile = false;
  if (!wish.profile.empty()) {
    const auto options = options_of(wish, true);
    with_profile = fits(form, workbook ? std::string_view(held) : front.front(), options,
                        wish.profile_options.columns);
    (with_profile ? fits_ : misfits_)[wish.profile].push_back(document.name);
  }
  const auto options = options_of(wish, with_profile);
  if (with_profile) document.profile = wish.profile;
  document.options = wish.said;
  const auto rows = workbook ? open_xlsx(std::move(held), index_, options)
                             : open_rows(form, source, index_, options);
  finish(std::move(document), source, *rows);
  columns_.saw(options, last_);
}

std::vector<std::string> Intake::profile_notes() const {
  std::vector<std::string> notes;
  for (const auto& [profile, tables] : fits_) {
    notes.push_back(fmt::format("Read with the profile \"{}\" of {}: {}.", profile, shop_.slug,
                                list_of(tables)));
  }
  for (const auto& [profile, tables] : misfits_) {
    notes.push_back(
        fmt::format("The profile \"{}\" of {} was not used for {}: columns it names are not there.",
                    profile, shop_.slug, list_of(tables)));
  }
  return notes;
}

std::optional<NotThere> Intake::missing(const TableWish& wish) const {
  if (auto column = columns_.missing(wish.said)) return column;
  if (!wish.by_name || !fits_.empty()) return std::nullopt;
  std::vector<std::string> names;
  for (const auto& choice : wish.profile_options.columns) names.push_back(choice.column);
  return NotThere{fmt::format(
      "The profile \"{}\" fits no table among these documents{}.", wish.profile,
      names.empty() ? "" : fmt::format("; it names the columns {}", fmt::join(names, ", ")))};
}

void Intake::finish(DocumentInfo document, TappedSource& source, RowReader& rows) {
  if (previews_ != nullptr) rows.keep_examples();
  PreviewBuilder preview(shop_);
  Normaliser normaliser(shop_, rows.decimal_sign());
  normalise(rows, normaliser, previews_ != nullptr ? &preview : nullptr);
  source.drain();  // what the importer did not need is kept all the same
  document.mapping = rows.mapping();
  auto found = rows.preview();
  if (previews_ != nullptr) {
    found = preview.finish(std::move(found), normaliser.decimal_sign(),
                           rows.decimal_sign().has_value());
  }
  end_document(std::move(document), std::move(found));
}

void Intake::end_document(DocumentInfo document, DocumentPreview found) {
  found.name = document.name;
  found.importer = document.importer;
  found.profile = document.profile;
  writer_.end_document(std::move(document));
  last_ = std::move(found);
  if (previews_ != nullptr) previews_->push_back(last_);
  ++index_;
}

/// Raw rows -> listings: all rows of a document, in its order.
void Intake::normalise(RowReader& rows, Normaliser& normaliser, PreviewBuilder* preview) {
  for (auto step = rows.next(); step != RowReader::Step::end; step = rows.next()) {
    if (step == RowReader::Step::rejection) {
      reject(rows.rejection(), preview);
      continue;
    }
    if (preview != nullptr) preview->row(rows.row());
    if (const auto done = normaliser.add(rows.row())) keep(*done, preview);
    hand_over(normaliser, preview);
  }
  for (const auto& done : normaliser.finish()) keep(done, preview);
  hand_over(normaliser, preview);
}

void Intake::hand_over(Normaliser& normaliser, PreviewBuilder* preview) {
  for (const auto& rejection : normaliser.take_rejections()) reject(rejection, preview);
}

void Intake::reject(const Rejection& rejection, PreviewBuilder* preview) {
  writer_.reject(rejection);
  if (preview != nullptr) preview->rejection(rejection);
  auto& shown = report_.first_rejections;
  if (shown.size() < kShownRejections) shown.push_back(rejection);
}

void Intake::keep(const KeyedListing& done, PreviewBuilder* preview) {
  writer_.add(done.key, done.listing);
  if (preview != nullptr) preview->listing(done.listing);
  if (done.listing.offers.currency) currencies_.insert(*done.listing.offers.currency);
}

void Intake::keep_bytes(std::string_view chunk) {
  writer_.add_bytes(chunk);
  bytes_done_ += chunk.size();
  if (progress_) progress_(bytes_done_, bytes_all_);
}

}  // namespace rangebook
