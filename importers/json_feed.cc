// The front tells the path of the products; then they are read one by one.
#include "importers/json_feed.h"

#include <fmt/format.h>

#include "importers/decoded_source.h"
#include "importers/feed_reader.h"
#include "importers/json_items.h"
#include "importers/utf8.h"

namespace rangebook {
namespace {

/// So much of a feed tells where its products are.
constexpr std::size_t kFrontBytes = std::size_t{1} << 20U;

class JsonFeedItems final : public FeedItems {
 public:
  JsonFeedItems(ByteSource& source, const TableOptions& options)
      : decoded_(source, {}), items_(decoded_), choices_(options.columns) {}

  Step next() override;
  FeedItem& item() override { return item_; }
  std::optional<DocumentFault> fault() const override { return fault_; }
  Rejection place() const override { return place_; }
  std::string description() const override {
    return path_ ? fmt::format("products={}", path_->empty() ? "one a line" : *path_)
                 : std::string{};
  }

 private:
  bool open();
  Step bad_item(const JsonItem& item);
  Step end();

  DecodedSource decoded_;
  JsonItems items_;
  FeedChoices choices_;
  bool open_ = false;
  std::optional<std::string> path_;
  FeedItem item_;
  std::optional<DocumentFault> fault_;
  Rejection place_;
};

FeedItems::Step JsonFeedItems::next() {
  fault_.reset();
  place_ = {};
  if (!open_ && !open()) return Step::end;
  if (!path_) return Step::end;
  JsonItem found;
  if (!items_.next(found)) return end();
  if (found.cut || found.over_long) return bad_item(found);
  auto node = read_json_item(found.text);
  if (!node) return bad_item(found);
  item_ = {std::move(*node), found.line, found.byte};
  return Step::item;
}

bool JsonFeedItems::open() {
  open_ = true;
  const std::string_view front = items_.peek(kFrontBytes);
  auto found = find_json_items(front.substr(0, kFrontBytes), choices_);
  path_ = std::move(found.path);
  if (path_) {
    items_.set_path(*path_);
    return true;
  }
  place_.excerpt = excerpt_of(front, kExcerptBytes);
  fault_ = {RejectionKind::unreadable_document,
            front.empty()
                ? "The file is empty."
                : "The JSON holds no list of products: no object with a name beside a code, "
                  "price, size, colour or address.",
            how_to_name(found.names,
                        "Give the feed of products, with members such as name, price and "
                        "size.")};
  return false;
}

FeedItems::Step JsonFeedItems::bad_item(const JsonItem& found) {
  place_.line = found.line;
  place_.byte = found.byte;
  place_.excerpt = excerpt_of(found.text, kExcerptBytes);
  if (found.over_long) {
    fault_ = {RejectionKind::over_limit,
              fmt::format("The product is longer than {} MiB.", kMaxItemBytes >> 20U),
              "Check that the feed is a list of products."};
  } else if (found.cut) {
    fault_ = {RejectionKind::malformed_row, "The file breaks off within this product.",
              "Download or copy it again; it is cut short."};
  } else {
    fault_ = {RejectionKind::malformed_row, "The product is no well-formed JSON.",
              "Repair it, or ask for a new export."};
  }
  return Step::bad_item;
}

FeedItems::Step JsonFeedItems::end() {
  if (items_.too_deep()) {
    fault_ = {RejectionKind::over_limit,
              fmt::format("The JSON is nested more than {} deep; nothing behind that was read.",
                          kMaxFeedDepth),
              "Check that the feed is a list of products."};
  }
  return Step::end;
}

}  // namespace

std::unique_ptr<RowReader> open_json(ByteSource& source, std::uint32_t document,
                                     const TableOptions& options) {
  return open_feed(std::make_unique<JsonFeedItems>(source, options), document, options);
}

}  // namespace rangebook
