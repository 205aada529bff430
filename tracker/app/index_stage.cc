// The straight path of the shop index: the latest snapshot and terms of every shop.
#include "tracker/app/pipeline.h"
#include "tracker/shop_index.h"
#include "tracker/store/snapshot_reader.h"
#include "tracker/store/stated_sizes.h"
#include "tracker/store/terms_store.h"

namespace rangebook {
namespace {

TermsInForce latest_terms(const Book& book, const ShopRecord& record) {
  const auto versions = terms_versions(book, record);
  if (versions.empty()) return {record.shop, {}, {}, {}};
  return terms_in_force(record.shop, versions, versions.back().on);
}

}  // namespace

ShopIndex run_shop_index(const Book& book, const std::string& category) {
  ShopIndex index{category, {}};
  for (const ShopRecord& record : book.shops()) {
    ShopEntry& entry = index.shops.emplace_back();
    entry.shop = record.shop;
    const auto captures = book.captures(record.shop.slug);
    entry.captures = static_cast<std::uint32_t>(captures.size());
    if (!captures.empty()) {
      read_entry(read_snapshot(book, captures.back().info.id, SnapshotDetail::without), category,
                 entry);
    }
    const auto stated = stated_sizes(book, record.shop.slug);
    if (!stated.empty()) entry.stated = stated.back();
    entry.terms = latest_terms(book, record);
  }
  return index;
}

}  // namespace rangebook
