// The straight path of the size reports: snapshots, newest first, for as long as one needs them.
#include <map>
#include <tuple>
#include <utility>

#include "tracker/app/pipeline.h"
#include "tracker/size_report.h"
#include "tracker/store/snapshot_reader.h"
#include "tracker/store/stated_sizes.h"

namespace rangebook {
namespace {

/// Hands `search` the captures before `capture`, newest first, for as long as it wants more.
template <typename Search>
void search_back(const Book& book, const CaptureInfo& capture, Search& search) {
  const auto records = book.captures(capture.shop);
  for (auto record = records.rbegin(); record != records.rend() && search.wants_more(); ++record) {
    const auto& info = record->info;
    if (std::tie(info.on, info.id) >= std::tie(capture.on, capture.id)) continue;
    search.add(read_snapshot(book, info.id, SnapshotDetail::without));
  }
}

}  // namespace

SizeSystem usual_system(const Book& book) {
  std::map<SizeSystem, std::size_t> shops;
  for (const auto& record : book.shops()) {
    if (record.shop.sizes != SizeSystem::unknown) ++shops[record.shop.sizes];
  }
  SizeSystem usual = SizeSystem::unknown;
  std::size_t most = 0;
  for (const auto& [system, count] : shops) {
    if (count > most) usual = system;
    most = std::max(most, count);
  }
  return usual;
}

std::variant<SizeReport, NotThere> run_sizes(const Book& book, const SizesRequest& request) {
  const auto found = find_capture(book, request.shop, request.capture);
  if (const auto* missing = std::get_if<NotThere>(&found)) return *missing;
  const auto& capture = std::get<CaptureInfo>(found);
  SizeReporter reporter(read_snapshot(book, capture.id, SnapshotDetail::without),
                        stated_sizes(book, request.shop), request.category);
  search_back(book, capture, reporter);
  return reporter.take();
}

std::vector<ReachingShop> shop_reaching(const Book& book, const Shop& shop,
                                        const ReachingRequest& request) {
  const auto records = book.captures(shop.slug);
  if (records.empty()) {
    std::vector<ReachingShop> unseen(1);
    unseen.front().shop = shop;
    unseen.front().fit = request.size.fit;
    return unseen;
  }
  const CaptureInfo& latest = records.back().info;
  ReachingSearch search(read_snapshot(book, latest.id, SnapshotDetail::without), request.size,
                        request.category);
  search_back(book, latest, search);
  return search.take();
}

ReachingReport run_reaching(const Book& book, const ReachingRequest& request,
                            const ShopReaching& rows_of) {
  ReachingReport report{request.size, request.category, {}};
  for (const auto& record : book.shops()) {
    for (ReachingShop& row : rows_of(record.shop)) report.shops.push_back(std::move(row));
  }
  sort_reaching(report.shops);
  return report;
}

ReachingReport run_reaching(const Book& book, const ReachingRequest& request) {
  return run_reaching(book, request,
                      [&](const Shop& shop) { return shop_reaching(book, shop, request); });
}

}  // namespace rangebook
