// What JSON and XML feeds share: products in, rows and rejections out.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "importers/feed_node.h"
#include "importers/feed_rows.h"
#include "importers/record_source.h"
#include "importers/row_reader.h"
#include "schema/table_options.h"

namespace rangebook {

/// The products of a feed, one by one.
class FeedItems {
 public:
  enum class Step : std::uint8_t { item, bad_item, end };

  FeedItems() = default;
  FeedItems(const FeedItems&) = delete;
  FeedItems& operator=(const FeedItems&) = delete;
  virtual ~FeedItems() = default;
  virtual Step next() = 0;
  /// Of the last step, where it gave an item; may be moved from.
  virtual FeedItem& item() = 0;
  /// What is wrong with a bad item; at the end, what is wrong with the document, if anything.
  virtual std::optional<DocumentFault> fault() const = 0;
  /// Line, offset and text of a bad item, for its rejection.
  virtual Rejection place() const = 0;
  /// How the document was understood: `products=data.products[]`.
  virtual std::string description() const = 0;
};

/// What to do about a feed without known names: say what its own mean, else `otherwise`.
std::string how_to_name(const std::string& names, std::string otherwise);

/// `document` is its index among the documents of the capture. Of `options` the meanings of names
/// and the decimal sign are used.
std::unique_ptr<RowReader> open_feed(std::unique_ptr<FeedItems> items, std::uint32_t document,
                                     const TableOptions& options);

}  // namespace rangebook
