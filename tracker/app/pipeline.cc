// The straight path, stage by stage, with the reason why each stands where it does.
#include "tracker/app/pipeline.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <ctime>
#include <future>
#include <set>

#include "schema/nearest_word.h"
#include "tracker/app/document_files.h"
#include "tracker/app/identity_stage.h"
#include "tracker/app/intake.h"
#include "tracker/app/terms_desk.h"
#include "tracker/differ.h"
#include "tracker/fibre_shares.h"
#include "tracker/identity/pair_links.h"
#include "tracker/palette.h"
#include "tracker/season_parser.h"
#include "tracker/store/snapshot_reader.h"
#include "tracker/store/stated_sizes.h"
#include "tracker/store/terms_store.h"
#include "tracker/terms_diff.h"
#include "tracker/was_price.h"

namespace rangebook {

Day today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return date::sys_days{date::year{local.tm_year + 1900} / (local.tm_mon + 1) / local.tm_mday};
}

namespace {

std::vector<std::string> slugs_of(const Book& book) {
  std::vector<std::string> slugs;
  for (const auto& record : book.shops()) slugs.push_back(record.shop.slug);
  return slugs;
}

/// A shop nobody described: its slug is its name until the stylist says otherwise.
Shop unknown_shop(const std::string& slug) {
  Shop shop;
  shop.slug = slug;
  shop.name = slug;
  return shop;
}

/// What the capture itself tells about a shop that is added with it.
void complete_new_shop(Book& book, const std::set<Currency>& currencies, Shop& shop) {
  if (!shop.currency && currencies.size() == 1) shop.currency = *currencies.begin();
  book.put_shop(shop);
}

void note_new_shop(CaptureReport& report) {
  const Shop& shop = report.shop;
  const std::string currency(shop.currency ? shop.currency->code() : "CCC");
  report.notes.push_back(
      fmt::format("The shop \"{}\" {} the book{}. Tell its country and what a bare size number "
                  "means: rangebook "
                  "shop add {} --name NAME --country CC --currency {} --sizes uk",
                  shop.slug, report.kept ? "was new to" : "is not in",
                  shop.currency ? ", its currency is " + currency : "", shop.slug, currency));
}

void note_other_captures(const Book& book, CaptureReport& report) {
  for (const auto& record : book.captures(report.info.shop)) {
    const auto& other = record.info;
    if (other.id == report.outcome.id || other.on != report.info.on ||
        other.season != report.info.season || other.scope != report.info.scope) {
      continue;
    }
    report.notes.push_back(fmt::format(
        "Capture {} of the same shop, season and date holds other documents; both are kept, and "
        "comparisons use the latest. If both belong together, undo them and give all files in "
        "one "
        "command.",
        other.id));
  }
}

CaptureInfo info_of(const CaptureRequest& request) {
  CaptureInfo info;
  info.shop = request.shop;
  info.season = parse_season(request.season).label;
  info.on = request.on.value_or(today());
  info.scope = request.scope;
  return info;
}

std::string captures_text(const std::vector<CaptureRecord>& records) {
  std::vector<std::string> parts;
  for (const auto& record : records) {
    parts.push_back(fmt::format("{} ({}, id {})", record.info.season, to_string(record.info.on),
                                record.info.id));
  }
  return parts.empty() ? "none yet" : fmt::format("{}", fmt::join(parts, ", "));
}

std::variant<CaptureInfo, NotThere> latest_before(const Book& book, const CaptureInfo& to) {
  const auto records = book.captures(to.shop);
  if (const CaptureInfo* found = season_before(records, to)) return *found;
  return NotThere{fmt::format("{} has no capture of another season before {} ({}). Captures: {}.",
                              to.shop, to.season, to_string(to.on), captures_text(records))};
}

bool names_capture(const CaptureInfo& info, const std::string& word) {
  if (const auto day = parse_day(word)) return info.on == *day;
  return std::to_string(info.id) == word || info.season == parse_season(word).label;
}

/// Lines by their lasting numbers instead of those they are stored under.
void number_lines(Snapshot& snapshot, const Identities& identities, std::uint32_t place) {
  for (std::uint32_t row = 0; row < snapshot.lines.size(); ++row) {
    snapshot.lines[row].id = identities.lines[identities.at({place, row})].id;
  }
}

NotThere nothing_to_save() {
  return {
      "--save-profile keeps what is said about tables with --column, --delimiter and their like; "
      "here nothing is said."};
}

/// What --save-profile keeps: all that was said, and the profile it was said upon.
Profile profile_to_save(const CaptureRequest& request, const TableWish& wish,
                        const Intake& intake) {
  const bool used = intake.used_profile();
  Profile profile;
  profile.name = request.save_profile;
  profile.options = used ? overlaid(wish.profile_options, wish.said) : wish.said;
  return profile;
}

/// Everything about a capture except whether it is kept. `previews`: see Intake.
std::variant<CaptureReport, NotThere> take_in(Book& book, const CaptureRequest& request,
                                              const ProgressCallback& progress, bool keep,
                                              std::vector<DocumentPreview>* previews) {
  CaptureReport report;
  // 1. Documents first: a mistyped path must not leave a shop behind.
  auto [files, left_aside] = find_documents(request.files);
  const auto named = name_documents(request.named);
  files.insert(files.end(), named.files.begin(), named.files.end());
  left_aside.insert(left_aside.end(), named.notes.begin(), named.notes.end());
  report.notes = left_aside;
  const auto record = book.find_shop(request.shop);
  report.new_shop = !record;
  report.shop = record ? record->shop : request.described.value_or(unknown_shop(request.shop));
  if (!request.save_profile.empty() && request.mapping.said.empty()) return nothing_to_save();
  const auto wished = wish_of(book, request.shop, request.mapping);
  if (const auto* missing = std::get_if<NotThere>(&wished)) return *missing;
  const auto& wish = std::get<TableWish>(wished);
  // 2. One transaction from here on: a capture is in the book whole, or not at all.
  CaptureWriter writer(book, report.shop, info_of(request), request.on.has_value());
  Intake intake(writer, report.shop, report, previews, progress);
  for (const auto& file : files) intake.expect_bytes(file.bytes);
  // 3. Document -> raw rows -> listings, one document after the other.
  for (const auto& file : files) intake.take_file(file, wish);
  if (auto missing = intake.missing(wish)) return std::move(*missing);
  if (report.new_shop) complete_new_shop(book, intake.currencies(), report.shop);
  if (keep && !request.save_profile.empty()) {
    report.saved = profile_to_save(request, wish, intake);
    book.put_profile(request.shop, *report.saved);
  }
  // 4. Listings -> store: pieces of a line are joined, and only what changed is written.
  report.outcome = writer.finish(keep);
  report.info = writer.info();
  report.kept = keep && !report.outcome.unchanged && report.outcome.lines > 0;
  if (!report.outcome.unchanged || !keep) {
    const auto notes = intake.profile_notes();
    report.notes.insert(report.notes.end(), notes.begin(), notes.end());
  }
  if (report.new_shop && !request.described && report.outcome.lines > 0) note_new_shop(report);
  if (report.kept) note_other_captures(book, report);
  if (!report.kept && !report.outcome.unchanged) report.saved.reset();
  return report;
}

}  // namespace

std::variant<CaptureReport, NotThere> run_capture(Book& book, const CaptureRequest& request,
                                                  const ProgressCallback& progress) {
  auto taken = take_in(book, request, progress, true, nullptr);
  const auto* report = std::get_if<CaptureReport>(&taken);
  // Nothing new to keep but the profile, which went with the transaction.
  if (report && report->saved && !report->kept) book.put_profile(request.shop, *report->saved);
  return taken;
}

std::variant<MappingPreview, NotThere> preview_capture(Book& book, const CaptureRequest& request,
                                                       const ProgressCallback& progress) {
  MappingPreview preview;
  auto taken = take_in(book, request, progress, false, &preview.documents);
  if (auto* missing = std::get_if<NotThere>(&taken)) return std::move(*missing);
  auto& report = std::get<CaptureReport>(taken);
  if (report.outcome.unchanged) {
    report.notes.push_back(
        fmt::format("Capture {} of {} holds {} already.", report.outcome.id, report.info.shop,
                    report.info.documents.size() == 1 ? "this document" : "these documents"));
  }
  preview.capture = std::move(report.info);
  preview.capture.id = 0;
  preview.lines = report.outcome.lines;
  preview.variants = report.outcome.variants;
  preview.new_lines = report.outcome.new_lines;
  preview.same_lines = report.outcome.same_lines;
  preview.rejections = std::move(report.first_rejections);
  preview.notes = std::move(report.notes);
  return preview;
}

namespace {

/// The capture whose "was" prices are checked, and its place in the roll.
struct ClaimsOf {
  std::uint32_t place = 0;
  const Snapshot& snapshot;
};

/// Captures before it, newest first, for as far back as its "was" prices need them.
WasPriceCheck check_was_prices(const Book& book, const Roll& roll, const Identities& identities,
                               const ClaimsOf& claims) {
  WasPriceChecker checker(claims.snapshot);
  for (std::uint32_t place = claims.place; place-- > 0;) {
    const auto from = checker.needs_from();
    const CaptureInfo& info = roll.captures[place].info;
    if (!from || info.on < *from) break;
    if (info.on == claims.snapshot.capture.on) continue;
    const Snapshot earlier = read_snapshot(book, info.id, SnapshotDetail::without);
    checker.add(earlier,
                links_between(roll, identities, {place, claims.place, earlier, claims.snapshot}));
  }
  return checker.result();
}

}  // namespace

const CaptureInfo* season_before(const std::vector<CaptureRecord>& records, const CaptureInfo& to) {
  const auto found = std::find_if(records.rbegin(), records.rend(), [&to](const auto& record) {
    return record.info.season != to.season && record.info.on < to.on;
  });
  return found == records.rend() ? nullptr : &found->info;
}

std::variant<ChangeSet, NotThere> run_comparison(const Book& book, const CompareRequest& request) {
  const auto to = find_capture(book, request.shop, request.to);
  if (const auto* missing = std::get_if<NotThere>(&to)) return *missing;
  const auto& to_info = std::get<CaptureInfo>(to);
  const auto from = request.from.empty() ? latest_before(book, to_info)
                                         : find_capture(book, request.shop, request.from);
  if (const auto* missing = std::get_if<NotThere>(&from)) return *missing;
  const auto& from_info = std::get<CaptureInfo>(from);
  // 1. Two snapshots, side by side.
  auto earlier_side = std::async(std::launch::async, [&] {
    return read_snapshot(book, from_info.id, SnapshotDetail::without);
  });
  Snapshot after = read_snapshot(book, to_info.id, SnapshotDetail::without);
  Snapshot before = earlier_side.get();
  // 2. Identity before differences: without knowing which line is which, every renamed line would
  //    be both new and dropped. All captures take part, since a line may have been renamed in
  //    between, and `history` has to say the same. Lines are read only where codes say nothing.
  const Roll roll = read_roll(book, request.shop);
  const std::uint32_t place_from = place_of(roll, from_info.id).value();
  const std::uint32_t place_to = place_of(roll, to_info.id).value();
  StoredLines lines(book, roll);
  lines.have(place_from, before);
  lines.have(place_to, after);
  const Identities identities =
      identify(book, roll, lines, std::max(place_from, place_to) + std::size_t{1});
  const LinkSet links = links_between(roll, identities, {place_from, place_to, before, after});
  const auto earlier = seen_earlier(roll, identities, lines, place_from, place_to);
  number_lines(before, identities, place_from);
  number_lines(after, identities, place_to);
  // 3. Differences. Earlier captures tell a returned line from a new one.
  ChangeSet set = diff_snapshots(before, after, links, earlier);
  // 4. Terms: the shop's, not a line's, and with days of their own.
  const ShopRecord shop = book.find_shop(request.shop).value();
  const auto versions = terms_versions(book, shop);
  add_terms_changes(terms_in_force(shop.shop, versions, from_info.on),
                    terms_in_force(shop.shop, versions, to_info.on), set);
  // 5. "Was" prices last: they need the later capture and those shortly before it, not the earlier
  //    one of the comparison.
  set.was_prices = check_was_prices(book, roll, identities, {place_to, after});
  return set;
}

// For those who read a brief: a range as a whole, which no single change shows, and what the shop
// says of itself.
BriefOptions run_brief_extras(const Book& book, const ChangeSet& set) {
  const auto shop = book.find_shop(set.shop.slug);
  BriefOptions extras;
  const Snapshot from = read_snapshot(book, set.from.id, SnapshotDetail::without);
  const Snapshot to = read_snapshot(book, set.to.id, SnapshotDetail::without);
  extras.palettes = compare_palettes(from, to, set.coverage.common);
  extras.fibres = compare_fibres(from, to, set.coverage.common);
  for (const StatedSizes& each : stated_sizes(book, set.shop.slug)) {
    if (each.on <= set.to.on) extras.stated = each;
  }
  if (!shop) return extras;
  extras.terms = terms_in_force(book, *shop, set.to.on);
  extras.terms_steps = terms_timeline(book, *shop);
  std::erase_if(extras.terms_steps, [&set](const TermsStep& step) { return step.on > set.to.on; });
  return extras;
}

NotThere no_shop(const Book& book, const std::string& slug) {
  const auto slugs = slugs_of(book);
  return {fmt::format("There is no shop \"{}\" in this book.{} It has: {}.", slug,
                      did_you_mean(slug, slugs),
                      slugs.empty() ? "no shops yet" : fmt::format("{}", fmt::join(slugs, ", ")))};
}

std::variant<CaptureInfo, NotThere> find_capture(const Book& book, const std::string& shop,
                                                 const std::string& word) {
  if (!book.find_shop(shop)) return no_shop(book, shop);
  const auto records = book.captures(shop);
  if (records.empty()) return NotThere{fmt::format("{} has no captures yet.", shop)};
  if (word.empty()) return records.back().info;
  std::optional<CaptureInfo> found;
  std::vector<std::string> seasons;
  for (const auto& record : records) {
    seasons.push_back(record.info.season);
    if (names_capture(record.info, word)) found = record.info;
  }
  if (found) return *found;
  return NotThere{fmt::format("{} has no capture \"{}\".{} Captures: {}.", shop, word,
                              did_you_mean(word, seasons), captures_text(records))};
}

}  // namespace rangebook
