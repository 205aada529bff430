// Read twice at the front: once to find the product element, once for the products.
#include "importers/xml_feed.h"

#include <fmt/format.h>

#include <algorithm>
#include <deque>
#include <utility>

#include "importers/byte_search.h"
#include "importers/decoded_source.h"
#include "importers/feed_paths.h"
#include "importers/feed_reader.h"
#include "importers/utf8.h"
#include "importers/xml_parser.h"

namespace rangebook {
namespace {

/// So much of a feed tells which element is a product.
constexpr std::size_t kFrontBytes = std::size_t{1} << 20U;
/// An XML declaration stands in so many first bytes.
constexpr std::size_t kDeclarationBytes = 256;
/// Attributes that say how an element is written, not what a product is.
bool is_technical(std::string_view attribute) {
  return attribute.starts_with("xmlns") || attribute.starts_with("xml:") ||
         attribute.starts_with("xsi:");
}

/// Counts the paths of the front and the names below them.
class FrontEvents final : public XmlEvents {
 public:
  void start(std::string_view name, const XmlAttributes& attributes) override {
    if (!open_.empty() && open_.back() != nullptr) open_.back()->see(std::string(name));
    if (!path_.empty()) path_ += '/';
    path_ += name;
    const bool room = sights.size() < kMaxPaths || sights.contains(path_);
    PathSight* const sight = room ? &sights[path_] : nullptr;
    open_.push_back(sight);
    if (sight == nullptr) return;
    ++sight->count;
    sight->depth = open_.size();
    for (const auto& attribute : attributes) {
      if (!is_technical(attribute.name)) sight->see(std::string(local_name(attribute.name)));
    }
  }
  void end(std::string_view name) override {
    open_.pop_back();
    path_.resize(path_.size() - std::min(path_.size(), name.size() + 1));
  }
  void text(std::string_view) override {}

  PathSights sights;

 private:
  std::string path_;
  std::vector<PathSight*> open_;
};

/// Builds the trees of the elements at one path.
class ItemEvents final : public XmlEvents {
 public:
  explicit ItemEvents(std::string path) : path_(std::move(path)) {}

  void start(std::string_view name, const XmlAttributes& attributes) override {
    if (open_.empty()) {
      if (!here_.empty()) here_ += '/';
      here_ += name;
      if (here_ != path_) return;
      item_ = {};
      item_.line = parser->line();
      item_.byte = parser->byte();
      nodes_ = 0;
      bytes_ = 0;
      fill(item_.node, name, attributes);
      open_.push_back(&item_.node);
    } else if (++nodes_ <= kMaxItemNodes && open_.size() < kMaxItemDepth) {
      FeedNode& node = open_.back()->parts.emplace_back();
      fill(node, name, attributes);
      open_.push_back(&node);
    } else {
      ++skipped_;
    }
  }

  void end(std::string_view name) override {
    if (skipped_ > 0) {
      --skipped_;
      return;
    }
    if (!open_.empty()) open_.pop_back();
    if (!open_.empty()) return;
    if (here_ == path_ && item_.node.name == name) finish();
    here_.resize(here_.size() - std::min(here_.size(), name.size() + 1));
  }

  void text(std::string_view text) override {
    if (open_.empty() || skipped_ > 0) return;
    bytes_ += text.size();
    if (bytes_ <= kMaxItemBytes) open_.back()->text += text;
  }

  std::deque<FeedItem> items;
  std::deque<std::pair<std::uint64_t, std::uint64_t>> over_long;  ///< line and offset
  const XmlParser* parser = nullptr;

 private:
  void fill(FeedNode& node, std::string_view name, const XmlAttributes& attributes) {
    node.name = name;
    for (const auto& attribute : attributes) {
      if (is_technical(attribute.name)) continue;
      FeedNode& part = node.parts.emplace_back();
      part.name = local_name(attribute.name);
      part.text = attribute.value;
      bytes_ += part.text.size();
      ++nodes_;
    }
  }

  void finish() {
    if (bytes_ > kMaxItemBytes || nodes_ > kMaxItemNodes) {
      over_long.emplace_back(item_.line, item_.byte);
    } else {
      items.push_back(std::move(item_));
    }
    item_ = {};
  }

  std::string path_;
  std::string here_;
  FeedItem item_;
  std::vector<FeedNode*> open_;  ///< the item and what is open in it
  std::size_t skipped_ = 0;      ///< open elements beyond a limit
  std::size_t nodes_ = 0;
  std::size_t bytes_ = 0;
};

/// The encoding an XML declaration names; empty where it names none.
std::string declared_encoding(std::string_view front) {
  front = front.substr(0, kDeclarationBytes);
  if (!front.starts_with("<?xml")) return {};
  front = front.substr(0, front.find("?>"));
  const std::size_t at = front.find("encoding");
  if (at == front.npos) return {};
  front.remove_prefix(at);
  const std::size_t open = front.find_first_of("\"'");
  if (open == front.npos) return {};
  const std::size_t close = front.find(front[open], open + 1);
  return close == front.npos ? std::string{}
                             : std::string(front.substr(open + 1, close - open - 1));
}

/// Gives back the first bytes, which were read ahead.
class ReplayedSource final : public ByteSource {
 public:
  explicit ReplayedSource(ByteSource& source) : source_(source) {
    for (auto chunk = source.next_chunk(); !chunk.empty(); chunk = source.next_chunk()) {
      first_ += chunk;
      if (first_.size() >= kDeclarationBytes) break;
    }
  }
  std::string_view first() const { return first_; }
  std::string_view next_chunk() override {
    if (!std::exchange(replayed_, true) && !first_.empty()) return first_;
    return source_.next_chunk();
  }

 private:
  ByteSource& source_;
  std::string first_;
  bool replayed_ = false;
};

class XmlFeedItems final : public FeedItems {
 public:
  XmlFeedItems(ByteSource& source, const TableOptions& options)
      : replayed_(source),
        decoded_(replayed_, usable_encoding(replayed_.first())),
        choices_(options.columns) {}

  Step next() override;
  FeedItem& item() override { return item_; }
  std::optional<DocumentFault> fault() const override { return fault_; }
  Rejection place() const override { return place_; }
  std::string description() const override {
    return path_ ? fmt::format("products={}", *path_) : std::string{};
  }

 private:
  /// UTF-16 is told by its bytes, and a wrong name of an encoding is no reason to refuse a feed.
  static std::string usable_encoding(std::string_view first) {
    const std::string name = declared_encoding(first);
    const auto known = name.empty() ? std::nullopt : encoding_named(name);
    return known && known->find("UTF-16") == std::string::npos && *known != "UTF-8" ? name
                                                                                    : std::string{};
  }
  void open();
  void read_piece();
  void refuse(std::string_view front, std::string_view problem, const std::string& names);
  Step give_over_long();

  ReplayedSource replayed_;
  DecodedSource decoded_;
  FeedChoices choices_;
  bool open_ = false;
  bool at_end_ = false;
  std::string front_;
  std::optional<std::string> path_;
  std::unique_ptr<ItemEvents> events_;
  std::unique_ptr<XmlParser> parser_;
  FeedItem item_;
  std::optional<DocumentFault> fault_;
  Rejection place_;
};

FeedItems::Step XmlFeedItems::next() {
  if (!open_) open();
  if (!events_) return Step::end;
  while (events_->items.empty() && events_->over_long.empty() && !at_end_) read_piece();
  if (!events_->over_long.empty()) return give_over_long();
  if (events_->items.empty()) return Step::end;
  item_ = std::move(events_->items.front());
  events_->items.pop_front();
  return Step::item;
}

FeedItems::Step XmlFeedItems::give_over_long() {
  place_.line = events_->over_long.front().first;
  place_.byte = events_->over_long.front().second;
  events_->over_long.pop_front();
  fault_ = {RejectionKind::over_limit,
            fmt::format("The product is longer than {} MiB, or holds more than {} values.",
                        kMaxItemBytes >> 20U, kMaxItemNodes),
            "Check that the feed is a list of products."};
  return Step::bad_item;
}

void XmlFeedItems::open() {
  open_ = true;
  for (auto chunk = decoded_.next_chunk(); !chunk.empty(); chunk = decoded_.next_chunk()) {
    front_ += chunk;
    if (front_.size() >= kFrontBytes) break;
  }
  FrontEvents sights;
  XmlParser parser(sights);
  parser.feed(front_, false);
  path_ = choose_path(sights.sights, choices_);
  if (!path_) return refuse(front_, parser.problem(), frequent_names(sights.sights));
  events_ = std::make_unique<ItemEvents>(*path_);
  parser_ = std::make_unique<XmlParser>(*events_);
  events_->parser = parser_.get();
}

void XmlFeedItems::refuse(std::string_view front, std::string_view problem,
                          const std::string& names) {
  place_.excerpt = excerpt_of(front, kExcerptBytes);
  if (front.empty()) {
    fault_ = {RejectionKind::unreadable_document, "The file is empty.", "Export or save it again."};
  } else if (!problem.empty()) {
    fault_ = {RejectionKind::unreadable_document,
              fmt::format("The XML cannot be read: {}.", problem),
              "Download it again, or ask for a new export."};
  } else {
    fault_ = {
        RejectionKind::unreadable_document,
        "The XML holds no products: no element with a name beside a code, price, size, colour "
        "or address.",
        how_to_name(names,
                    "Give the feed of products, with elements such as title, price and size.")};
  }
}

void XmlFeedItems::read_piece() {
  fault_.reset();
  place_ = {};
  const std::string front = std::exchange(front_, {});
  const std::string_view piece = front.empty() ? decoded_.next_chunk() : std::string_view(front);
  at_end_ = piece.empty();
  if (parser_->feed(piece, at_end_)) return;
  at_end_ = true;
  place_.line = parser_->line();
  place_.byte = parser_->byte();
  fault_ = {RejectionKind::malformed_row,
            fmt::format("The XML cannot be read on: {}; what stands before was taken.",
                        parser_->problem()),
            "Download it again, or ask for a new export."};
}

}  // namespace

std::unique_ptr<RowReader> open_xml(ByteSource& source, std::uint32_t document,
                                    const TableOptions& options) {
  return open_feed(std::make_unique<XmlFeedItems>(source, options), document, options);
}

}  // namespace rangebook
