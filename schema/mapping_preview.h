// What an import understood, before anything is kept: every column with its meaning, examples and
// doubts, and how the document itself was read. Importers fill in what they found, the pipeline
// what it came to; reports and pages show it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "schema/capture.h"
#include "schema/raw_row.h"
#include "schema/rejection.h"

namespace rangebook {

/// How the document was read: `delimiter`, `semicolon`.
struct Detection {
  std::string what;
  std::string value;
  bool stated = false;  ///< by the user or a profile; else found in the document
};

/// What an importer takes from a cell for one field.
struct FieldText {
  Field field = Field::name;
  std::string text;
};

struct ColumnExample {
  std::string text;               ///< as it stands in the document
  std::vector<FieldText> fields;  ///< more than one where the cell holds more: `€ 80 (was € 99)`
  std::string currency;           ///< of its row, where the row states one
  std::string read;               ///< what it came to, in words: `79.90 EUR`; empty: as it stands
};

/// A column of a table, or a name of a feed.
struct ColumnPreview {
  enum class Known : std::uint8_t {
    by_name,    ///< the header names the field
    by_choice,  ///< the user or a profile says so
    by_values,  ///< guessed from the cells
  };
  std::size_t place = 0;      ///< from 1; 0 where the document has no columns
  std::string name;           ///< empty where the table has no header
  std::vector<Field> fields;  ///< empty: not used
  Known known = Known::by_name;
  std::vector<ColumnExample> examples;  ///< at most kPreviewExamples, different from each other
  std::vector<std::string> doubts;      ///< sentences
};
inline constexpr std::size_t kPreviewExamples = 3;

/// One of the ways in which a page states its products.
struct SyntaxPreview {
  std::string syntax;  ///< `JSON-LD`, `visible text`
  std::uint64_t rows = 0;
  std::vector<Field> fields;  ///< those it gives
};

/// Two syntaxes of a page that contradict each other. The first one was taken.
struct SyntaxConflict {
  std::string line;  ///< name of the line
  Field field = Field::price;
  std::string taken_from;
  std::string taken;
  std::string other_from;
  std::string other;

  bool operator==(const SyntaxConflict&) const = default;
};

struct DocumentPreview {
  std::string name;
  std::string importer;  ///< `table`, `page`
  std::string profile;   ///< whose options were used; empty: none
  std::vector<Detection> detected;
  std::vector<ColumnPreview> columns;     ///< of a table in its order; else by field
  std::vector<std::string> missing;       ///< columns that the options name and it does not have
  std::vector<SyntaxPreview> syntaxes;    ///< of a page, in the order in which they decide
  std::vector<SyntaxConflict> conflicts;  ///< at most kPreviewConflicts
  std::uint64_t conflict_count = 0;
  std::vector<std::string> doubts;  ///< about the document as a whole
  std::uint64_t rows = 0;           ///< that the importer gave
  std::uint64_t refused_rows = 0;
  std::uint64_t refused_cells = 0;
  std::uint64_t doubted = 0;
};
inline constexpr std::size_t kPreviewConflicts = 20;

struct MappingPreview {
  CaptureInfo capture;  ///< without an id
  std::vector<DocumentPreview> documents;
  std::uint64_t lines = 0;
  std::uint64_t variants = 0;
  std::uint64_t new_lines = 0;  ///< never seen in this book before
  std::uint64_t same_lines = 0;
  std::vector<Rejection> rejections;  ///< the first few
  std::vector<std::string> notes;     ///< sentences worth knowing
};

}  // namespace rangebook
