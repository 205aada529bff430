// What every importer is: a reader that turns one document into raw rows, one at a time, so that
// memory does not grow with the document.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "schema/mapping_preview.h"
#include "schema/raw_row.h"
#include "schema/rejection.h"

namespace rangebook {

/// Pull reader over one document. Bad input never throws: it comes out as a rejection and reading
/// goes on with the next good row. Throws Error only when the environment breaks (a read fails).
class RowReader {
 public:
  enum class Step : std::uint8_t { row, rejection, end };

  virtual ~RowReader() = default;
  RowReader() = default;
  RowReader(const RowReader&) = delete;
  RowReader& operator=(const RowReader&) = delete;

  /// Moves to the next row or rejection. After `end` it stays at `end`.
  virtual Step next() = 0;
  /// The row of the last step; its views are valid until the next step.
  virtual const RawRow& row() const = 0;
  /// The rejection of the last step.
  virtual const Rejection& rejection() const = 0;
  /// How the document was understood, for the record: `delimiter=comma line_code=1 name=2`.
  virtual std::string mapping() const = 0;
  /// The decimal sign the user says the document has; nothing where the prices have to tell it.
  virtual std::optional<char> decimal_sign() const { return std::nullopt; }
  /// Keeps examples of each column for preview() from now on; before the first next().
  virtual void keep_examples() {}
  /// What was understood of the document: detections, columns, syntaxes, conflicts; whole once the
  /// reader is at its end. Without its name, its counts, and what the cells came to.
  virtual DocumentPreview preview() const { return {}; }
};

/// Where a reader gets the bytes of a document. The same bytes go to the document archive at the
/// same time, so a document is read once.
class ByteSource {
 public:
  virtual ~ByteSource() = default;
  /// The next chunk, empty at the end. The view is valid until the next call.
  virtual std::string_view next_chunk() = 0;
  /// True while everything handed out so far is known to be UTF-8 without NUL.
  virtual bool all_text() const { return false; }
};

}  // namespace rangebook
