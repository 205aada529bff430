// Shops, lists, and keeping the book sound.
#include <fmt/format.h>

#include <cstdio>

#include "reports/phrase.h"
#include "tracker/app/cli.h"
#include "tracker/app/commands.h"
#include "tracker/app/identity_stage.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/report_forms.h"
#include "tracker/size_parser.h"
#include "tracker/store/snapshot_reader.h"
#include "tracker/store/stated_sizes.h"

namespace rangebook {
namespace {

void print_capture(const CaptureRecord& record) {
  const auto& info = record.info;
  fmt::print("  {:>4}  {}  {:<6}  scope {}: {} line{} from {} document{}{}\n", info.id,
             to_string(info.on), info.season, to_string(info.scope), record.lines,
             record.lines == 1 ? "" : "s", info.documents.size(),
             info.documents.size() == 1 ? "" : "s",
             record.refused ? fmt::format(", {} refused", record.refused) : "");
}

void print_shop(const Shop& shop) {
  fmt::print("{}: {}{}{}, sizes {}{}{}\n", shop.slug, shop.name,
             shop.country.empty() ? "" : ", " + shop.country,
             shop.currency ? fmt::format(", {}", shop.currency->code()) : "", to_string(shop.sizes),
             shop.link_above ? fmt::format(", links above {}%", *shop.link_above) : "",
             shop.ask_above ? fmt::format(", asks above {}%", *shop.ask_above) : "");
}

void print_stated(const Book& book, const Shop& shop) {
  for (const auto& stated : stated_sizes(book, shop.slug)) {
    fmt::print("  states sizes {} ({})\n", clean_line(stated.words), to_string(stated.on));
  }
}

void print_sizes(const BookSizes& sizes) {
  fmt::print("documents {} bytes, line versions {} bytes, captures {} bytes, file {} bytes\n",
             sizes.documents, sizes.versions, sizes.captures, sizes.file);
}

}  // namespace

int command_shop_add(const std::string& book, const Shop& given,
                     const std::optional<StatedSizes>& stated) {
  Book opened = Book::open(book, true);
  const auto known = opened.find_shop(given.slug);
  Shop shop = known ? known->shop : given;
  if (!given.name.empty()) shop.name = given.name;
  if (!given.country.empty()) shop.country = given.country;
  if (given.currency) shop.currency = given.currency;
  if (given.sizes != SizeSystem::unknown) shop.sizes = given.sizes;
  if (given.link_above) shop.link_above = given.link_above;
  if (given.ask_above) shop.ask_above = given.ask_above;
  if (shop.name.empty()) shop.name = shop.slug;
  if (const LikenessOptions bounds = likeness_options(shop); bounds.ask_from > bounds.link_from) {
    return not_there(
        {"--ask-above cannot be higher than --link-above: pairs above both are linked "
         "and not asked about."});
  }
  if (stated) {
    const auto sizes = expand_sizes(stated->words, shop.sizes);
    if (const auto* problem = std::get_if<SizeProblem>(&sizes)) {
      fmt::print(stderr, "rangebook: --states-sizes: {} {}\n", problem->what, problem->how_to_fix);
      return kUsage;
    }
  }
  opened.put_shop(shop);
  if (stated) put_stated_sizes(opened, shop.slug, *stated);
  print_shop(shop);
  print_stated(opened, shop);
  return kDone;
}

int command_shop_list(const std::string& book) {
  const Book opened = Book::open(book, false);
  const auto shops = opened.shops();
  if (shops.empty()) fmt::print("No shops yet. Begin with: rangebook shop add SLUG --name NAME\n");
  for (const auto& record : shops) {
    print_shop(record.shop);
    print_stated(opened, record.shop);
    for (const auto& capture : opened.captures(record.shop.slug)) print_capture(capture);
  }
  return kDone;
}

int command_shop_index(const std::string& book, const std::string& category,
                       const OutputChoice& output) {
  const Book opened = Book::open(book, false);
  const ShopIndex index = run_shop_index(opened, category.empty() ? "all" : category);
  write_output(shop_index_in(index, output), output);
  return kDone;
}

int command_captures(const std::string& book, const std::string& shop) {
  const Book opened = Book::open(book, false);
  const auto newest = find_capture(opened, shop, "");
  if (const auto* missing = std::get_if<NotThere>(&newest)) return not_there(*missing);
  for (const auto& capture : opened.captures(shop)) print_capture(capture);
  return kDone;
}

int command_undo(const std::string& book, const std::string& shop) {
  Book opened = Book::open(book, false);
  const auto newest = find_capture(opened, shop, "");
  if (const auto* missing = std::get_if<NotThere>(&newest)) return not_there(*missing);
  const auto removed = opened.undo_capture(shop);
  if (!removed) return kDone;
  fmt::print("Removed capture {} of {} ({}, {}). Its documents stay in the book.\n", removed->id,
             shop, removed->season, to_string(removed->on));
  return kDone;
}

int command_check(const std::string& book, bool sizes) {
  const Book opened = Book::open(book, false);
  const auto findings = check_book(opened);
  for (const auto& finding : findings) fmt::print("{}\n", finding);
  if (findings.empty()) {
    fmt::print("Sound: every hash, reference and count agrees ({}).\n", opened.database().path());
  }
  if (sizes) print_sizes(opened.sizes());
  return findings.empty() ? kDone : kEnvironment;
}

int command_backup(const std::string& book, const std::string& file) {
  Book::open(book, false).backup(file);
  fmt::print("Copied to {}.\n", file);
  return kDone;
}

}  // namespace rangebook
