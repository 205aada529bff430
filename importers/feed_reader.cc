// Rows of one product at a time.
#include "importers/feed_reader.h"

#include <fmt/format.h>

namespace rangebook {
namespace {

class FeedReader final : public RowReader {
 public:
  FeedReader(std::unique_ptr<FeedItems> items, std::uint32_t document, const TableOptions& options)
      : items_(std::move(items)), document_(document), decimal_(options.decimal) {
    names_.choices = FeedChoices(options.columns);
    names_.keep_columns = !options.columns.empty();
  }

  Step next() override;
  const RawRow& row() const override { return row_; }
  const Rejection& rejection() const override { return rejection_; }
  std::string mapping() const override;
  std::optional<char> decimal_sign() const override { return decimal_; }
  void keep_examples() override {
    names_.keep_columns = true;
    names_.keep_examples = true;
  }
  DocumentPreview preview() const override;

 private:
  Step show_row();
  Step reject(DocumentFault fault, Rejection place);

  std::unique_ptr<FeedItems> items_;
  std::uint32_t document_;
  std::optional<char> decimal_;
  FeedNames names_;
  std::vector<FeedRow> rows_;
  std::size_t next_row_ = 0;
  Origin origin_;
  bool at_end_ = false;
  std::uint64_t items_read_ = 0;
  RawRow row_;
  Rejection rejection_;
};

RowReader::Step FeedReader::next() {
  while (next_row_ == rows_.size()) {
    if (at_end_) return Step::end;
    const auto step = items_->next();
    if (step == FeedItems::Step::bad_item) {
      return reject(items_->fault().value_or(DocumentFault{}), items_->place());
    }
    if (step == FeedItems::Step::end) {
      at_end_ = true;
      const auto fault = items_->fault();
      return fault ? reject(*fault, items_->place()) : Step::end;
    }
    const FeedItem& item = items_->item();
    ++items_read_;
    rows_ = feed_rows(item.node, names_);
    next_row_ = 0;
    origin_ = Origin{document_, item.line, item.byte};
  }
  return show_row();
}

RowReader::Step FeedReader::show_row() {
  const FeedRow& row = rows_[next_row_++];
  for (std::size_t i = 0; i < kFieldCount; ++i) row_.cells[i] = row.cells[i];
  row_.origin = origin_;
  return Step::row;
}

RowReader::Step FeedReader::reject(DocumentFault fault, Rejection place) {
  rejection_ = std::move(place);
  rejection_.document = document_;
  rejection_.kind = fault.kind;
  rejection_.what = std::move(fault.what);
  rejection_.how_to_fix = std::move(fault.how_to_fix);
  return Step::rejection;
}

std::string FeedReader::mapping() const {
  const std::string source = items_->description();
  if (source.empty()) return {};
  return fmt::format("{} {}", source, to_string(names_));
}

DocumentPreview FeedReader::preview() const {
  DocumentPreview preview;
  if (auto where = items_->description(); !where.empty()) {
    preview.detected.push_back({"products", where.substr(where.find('=') + 1), false});
  }
  preview.columns = columns_of(names_);
  preview.missing = names_.missing();
  return preview;
}

}  // namespace

std::string how_to_name(const std::string& names, std::string otherwise) {
  if (names.empty()) return otherwise;
  return fmt::format(
      "Say which of its names mean what, such as --column \"NAME=price\"; it has {}.", names);
}

std::unique_ptr<RowReader> open_feed(std::unique_ptr<FeedItems> items, std::uint32_t document,
                                     const TableOptions& options) {
  return std::make_unique<FeedReader>(std::move(items), document, options);
}

}  // namespace rangebook
