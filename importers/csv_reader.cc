// Decoding, then the dialect, then the table.
#include "importers/csv_reader.h"

#include <fmt/format.h>

#include "importers/csv_records.h"
#include "importers/decoded_source.h"
#include "importers/table_reader.h"

namespace rangebook {
namespace {

/// So much of a document tells its dialect.
constexpr std::size_t kSampleBytes = 32768;

/// The decoder stands before the records that read from it.
struct Decoder {
  DecodedSource decoded;

  Decoder(ByteSource& source, std::string_view encoding) : decoded(source, encoding) {}
};

class CsvDocument final : private Decoder, public CsvRecords {
 public:
  CsvDocument(ByteSource& source, const TableOptions& options)
      : Decoder(source, options.encoding), CsvRecords(decoded), options_(options) {}

  bool next(Record& record) override;
  std::optional<DocumentFault> fault() const override { return fault_; }
  std::string description() const override;
  std::vector<Detection> detections() const override;

 private:
  bool open();

  const TableOptions options_;
  std::optional<DocumentFault> fault_;
  bool open_ = false;
};

bool CsvDocument::next(Record& record) {
  if (!open_ && !open()) return false;
  return CsvRecords::next(record);
}

/// False when the document is no table of text.
bool CsvDocument::open() {
  if (decoded.unknown_name()) {
    fault_ = {RejectionKind::bad_encoding,
              fmt::format("There is no encoding called \"{}\".", options_.encoding),
              "Name one such as UTF-8, UTF-16 or windows-1252, or leave it to detection."};
    return false;
  }
  const std::string_view sample = peek(kSampleBytes);
  const DocumentKind kind = decoded.kind();
  if (kind == DocumentKind::zip || kind == DocumentKind::old_workbook ||
      kind == DocumentKind::pdf || kind == DocumentKind::picture || kind == DocumentKind::other) {
    fault_ = {RejectionKind::unreadable_document,
              fmt::format("This is no table of text but {}.", spoken(kind)),
              "Give a table (CSV, XLSX), a feed (JSON, XML), or a saved page that ends in .html."};
    return false;
  }
  set_dialect(
      detect_dialect(sample, at_end(), {options_.delimiter, options_.quote, options_.no_quotes}));
  open_ = true;
  return true;
}

std::string CsvDocument::description() const {
  std::string text = CsvRecords::description();
  if (!decoded.encoding().is_utf8()) text += " encoding=" + decoded.encoding().name;
  return text;
}

std::vector<Detection> CsvDocument::detections() const {
  if (!open_) return {};
  const auto& encoding = decoded.encoding();
  std::vector<Detection> found{
      {"delimiter", delimiter_name(dialect()), options_.delimiter.has_value()},
      {"quote", quote_name(dialect()), options_.quote || options_.no_quotes},
      {"encoding", encoding.name, !options_.encoding.empty()}};
  if (encoding.mark_bytes > 0) found.back().value += " with byte order mark";
  return found;
}

}  // namespace

std::unique_ptr<RecordSource> open_csv_records(ByteSource& source, const TableOptions& options) {
  return std::make_unique<CsvDocument>(source, options);
}

std::unique_ptr<RowReader> open_csv(ByteSource& source, std::uint32_t document,
                                    const TableOptions& options) {
  return open_table(open_csv_records(source, options), document, options);
}

}  // namespace rangebook
