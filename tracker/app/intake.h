// One document after the other on its way into the book: importer, normaliser, store.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "schema/capture.h"
#include "schema/mapping_preview.h"
#include "schema/rejection.h"
#include "tracker/app/capture_report.h"
#include "tracker/app/document_files.h"
#include "tracker/app/preview_builder.h"
#include "tracker/app/table_wish.h"
#include "tracker/normaliser.h"
#include "tracker/store/capture_writer.h"

namespace rangebook {

class Intake {
 public:
  /// All outlive this. `previews` collects what each document was understood as; null: nobody
  /// wants to see it.
  Intake(CaptureWriter& writer, const Shop& shop, CaptureReport& report,
         std::vector<DocumentPreview>* previews, const ProgressCallback& progress)
      : writer_(writer), shop_(shop), report_(report), previews_(previews), progress_(progress) {}

  void expect_bytes(std::uint64_t bytes) { bytes_all_ += bytes; }
  /// A file; of an archive, each document in it.
  void take_file(const DocumentFile& file, const TableWish& wish);
  /// One document, by the importer it is for.
  void take_document(DocumentForm form, const std::string& name, ByteSource& bytes,
                     const TableWish& wish);
  /// A document of an archive that could not be opened at all.
  void take_refused(const std::string& name, const std::vector<Rejection>& rejections);

  std::uint32_t documents() const { return index_; }
  /// After the last document: a column or a profile that was asked for and fits no table.
  std::optional<NotThere> missing(const TableWish& wish) const;
  const std::set<Currency>& currencies() const { return currencies_; }
  bool used_profile() const { return !fits_.empty(); }
  /// Sentences: for which tables a profile was used, and which it does not fit.
  std::vector<std::string> profile_notes() const;

 private:
  void take_archive(const DocumentFile& file, const TableWish& wish);
  void take_table(DocumentInfo document, DocumentForm form, ByteSource& bytes,
                  const TableWish& wish);
  void finish(DocumentInfo document, TappedSource& source, RowReader& rows);
  void end_document(DocumentInfo document, DocumentPreview found);
  void normalise(RowReader& rows, Normaliser& normaliser, PreviewBuilder* preview);
  void hand_over(Normaliser& normaliser, PreviewBuilder* preview);
  void reject(const Rejection& rejection, PreviewBuilder* preview);
  void keep(const KeyedListing& done, PreviewBuilder* preview);
  void keep_bytes(std::string_view chunk);

  CaptureWriter& writer_;
  const Shop& shop_;
  CaptureReport& report_;
  std::vector<DocumentPreview>* previews_;
  const ProgressCallback& progress_;
  std::uint64_t bytes_done_ = 0;
  std::uint64_t bytes_all_ = 0;
  std::uint32_t index_ = 0;  ///< of the document at hand
  DocumentPreview last_;     ///< the document before
  std::set<Currency> currencies_;
  ColumnSearch columns_;
  std::map<std::string, std::vector<std::string>> fits_;     ///< by profile: names of tables
  std::map<std::string, std::vector<std::string>> misfits_;  ///< likewise
};

}  // namespace rangebook
