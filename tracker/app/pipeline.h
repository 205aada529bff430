// The straight path of the whole program: every stage once, in order.
#pragma once

#include <functional>
#include <string>
#include <variant>
#include <vector>

#include "reports/brief.h"
#include "schema/change.h"
#include "schema/mapping_preview.h"
#include "schema/shop_index.h"
#include "schema/size_report.h"
#include "tracker/app/capture_report.h"
#include "tracker/app/request.h"
#include "tracker/store/book.h"

namespace rangebook {

/// Documents -> raw rows -> listings -> store. One capture, one transaction.
std::variant<CaptureReport, NotThere> run_capture(Book& book, const CaptureRequest& request,
                                                  const ProgressCallback& progress);

/// The same, keeping nothing: what every document was understood as, and what it would come to.
std::variant<MappingPreview, NotThere> preview_capture(Book& book, const CaptureRequest& request,
                                                       const ProgressCallback& progress);

/// The latest of a shop's captures that is of another season and before `to`: what a comparison
/// begins with unless told. Null when there is none.
const CaptureInfo* season_before(const std::vector<CaptureRecord>& records, const CaptureInfo& to);

/// Two snapshots -> links -> changes.
std::variant<ChangeSet, NotThere> run_comparison(const Book& book, const CompareRequest& request);

/// What a brief says besides the changes: palettes and fibres of both captures, sizes the shop
/// states, and its terms.
BriefOptions run_brief_extras(const Book& book, const ChangeSet& set);

/// That there is no such shop, and which ones there are.
NotThere no_shop(const Book& book, const std::string& slug);

/// A snapshot -> its size reach, and back through earlier captures for since when it holds.
std::variant<SizeReport, NotThere> run_sizes(const Book& book, const SizesRequest& request);

/// The latest snapshot of a shop -> whether it reaches a size, a row for each fit.
std::vector<ReachingShop> shop_reaching(const Book& book, const Shop& shop,
                                        const ReachingRequest& request);
/// Every shop, in the order of how far they reach. `rows_of` tells of one shop.
using ShopReaching = std::function<std::vector<ReachingShop>(const Shop& shop)>;
ReachingReport run_reaching(const Book& book, const ReachingRequest& request,
                            const ShopReaching& rows_of);
/// The same, each shop read anew.
ReachingReport run_reaching(const Book& book, const ReachingRequest& request);

/// The latest snapshot and terms of every shop, side by side. `category`: a slug, or `all`.
ShopIndex run_shop_index(const Book& book, const std::string& category);

/// What bare numbers mean in most shops of the book; the first by name of those that tie.
SizeSystem usual_system(const Book& book);

/// The stylist's own date, by the clock and time zone of this machine.
Day today();

/// The capture a word names: a date, an id, or a season (its latest capture); empty: the latest.
std::variant<CaptureInfo, NotThere> find_capture(const Book& book, const std::string& shop,
                                                 const std::string& word);

}  // namespace rangebook
