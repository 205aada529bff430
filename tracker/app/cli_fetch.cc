// `fetch`: pages she names become files of hers, to be looked at and captured like saved ones.
#include "tracker/app/cli_fetch.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

#include "reports/phrase.h"
#include "schema/error.h"
#include "tracker/app/cli.h"
#include "tracker/app/commands.h"
#include "tracker/app/page_fetch.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;

struct Said {
  std::vector<std::string> addresses;
  std::string into = "pages";
};

bool holds(const fs::path& file, const std::string& bytes) {
  if (!fs::is_regular_file(file)) return false;
  std::ifstream in(file, std::ios::binary);
  return std::string(std::istreambuf_iterator<char>(in), {}) == bytes;
}

/// The page's own name; with a number where a file of that name holds something else.
fs::path place_of(const fs::path& into, const FetchedPage& page) {
  const fs::path name = fetched_name(page.address, page.type);
  fs::path place = into / name;
  for (int number = 2; fs::exists(place) && !holds(place, page.bytes); ++number) {
    place = into / fmt::format("{}-{}{}", name.stem().string(), number, name.extension().string());
  }
  return place;
}

void keep_page(const fs::path& into, const FetchedPage& page) {
  const fs::path place = place_of(into, page);
  const bool known = fs::exists(place);
  if (!known) write_output(page.bytes, {"", place.string()});
  fmt::print("{}: {} bytes from {}{}\n", place.string(), page.bytes.size(),
             clean_line(page.address), known ? ", as kept before" : "");
}

int command_fetch(const Said& said) {
  std::error_code fault;
  fs::create_directories(said.into, fault);
  if (fault) throw Error(fmt::format("{} cannot be made: {}", said.into, fault.message()));
  PageFetcher fetcher;
  int missing = 0;
  for (const auto& address : said.addresses) {
    const auto fetched = fetcher.fetch(address);
    if (const auto* page = std::get_if<FetchedPage>(&fetched)) {
      keep_page(said.into, *page);
      continue;
    }
    ++missing;
    fmt::print(stderr, "rangebook: {}\n", clean_line(std::get<std::string>(fetched)));
  }
  return missing == 0 ? kDone : kDoneWithRejections;
}

}  // namespace

void add_fetch_command(CLI::App& app, const CliContext& context) {
  const auto said = std::make_shared<Said>();
  CLI::App* sub = app.add_subcommand(
      "fetch", "Ask a shop for single pages, as its robots.txt allows, and keep them as files");
  sub->footer(
      "Respect the shop's terms of use, too. What scripts would add to a page is not in the file.\n"
      "Example: rangebook fetch https://shop.example/dresses/maya --into pages");
  sub->fallthrough();
  sub->add_option("addresses", said->addresses, "Addresses of the pages")
      ->required()
      ->type_name("ADDRESS");
  sub->add_option("--into", said->into, "Folder for the files")
      ->type_name("FOLDER")
      ->capture_default_str();
  sub->parse_complete_callback(
      [context, said] { context.act([said] { return command_fetch(*said); }); });
}

}  // namespace rangebook
