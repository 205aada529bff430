// Gathers what one document came to while it is read, for showing before anything is kept.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "schema/capture.h"
#include "schema/listing.h"
#include "schema/mapping_preview.h"
#include "schema/raw_row.h"
#include "schema/rejection.h"

namespace rangebook {

class PreviewBuilder {
 public:
  /// `shop` must outlive this.
  explicit PreviewBuilder(const Shop& shop) : shop_(shop) {}

  void row(const RawRow& row);
  void listing(const Listing& listing);
  void rejection(const Rejection& rejection);

  /// What the importer understood, completed: counts, what the examples came to, doubts.
  /// `decimal` is the sign that prices were read with.
  DocumentPreview finish(DocumentPreview found, std::optional<char> decimal, bool decimal_stated);

 private:
  /// The rejections of one field, or of whole rows.
  struct Refusals {
    std::uint64_t refused = 0;
    std::uint64_t doubted = 0;
    std::string first;  ///< `, first in line 3: what`
  };
  /// Texts without a meaning, and how many lines have them.
  struct Unknown {
    std::uint64_t lines = 0;
    std::vector<std::string> texts;  ///< the first few

    void add(const std::string& text);
  };

  void keep_example(Field field, const RawRow& row);
  void fill_columns(DocumentPreview& preview);
  void read_examples(DocumentPreview& preview, std::optional<char> decimal) const;
  void tell_decimal(DocumentPreview& preview, std::optional<char> decimal, bool stated) const;
  void doubt_fields(DocumentPreview& preview) const;
  void doubt_gaps(DocumentPreview& preview) const;
  void doubt_unknown(DocumentPreview& preview) const;
  std::uint64_t filled(Field field) const { return filled_[static_cast<std::size_t>(field)]; }

  const Shop& shop_;
  std::uint64_t rows_ = 0;
  std::uint64_t refused_rows_ = 0;
  std::uint64_t refused_cells_ = 0;
  std::uint64_t doubted_ = 0;
  std::array<std::uint64_t, kFieldCount> filled_{};  ///< rows that state the field
  std::array<std::vector<ColumnExample>, kFieldCount> examples_{};
  std::map<std::string, Refusals> refusals_;  ///< by field
  std::uint64_t points_ = 0;                  ///< prices that prove the decimal sign
  std::uint64_t commas_ = 0;
  Unknown sizes_;
  Unknown categories_;
};

}  // namespace rangebook
