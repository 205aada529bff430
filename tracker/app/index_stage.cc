// The straight path of the shop index: the latest snapshot and terms of every shop.
#include "tracker/app/pipeline.h"
#include "tracker/shop_index.h"
#include "tracker/store/snapshot_reader.h"
#include "tracker/store/stated_sizes.h"
#include "tracker/store/terms_store.h"

namespace rangebook {
namespace {

/// Later than any terms: the latest of every shop hold.
constexpr Day kLastDay = date::sys_days{date::year{9999} / 12 / 31};

}  // namespace

ShopIndex run_shop_index(const Book& book, const std::string& category) {
  ShopIndex index{category, {}};
  const auto shops = book.shops();
  const auto terms = terms_in_force(book, shops, kLastDay);
  for (std::size_t i = 0; i < shops.size(); ++i) {
    const ShopRecord& record = shops[i];
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
    entry.terms = terms[i];
  }
  return index;
}

}  // namespace rangebook
