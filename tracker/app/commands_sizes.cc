// Size reach: of one shop, or one size across shops.
#include <fmt/format.h>

#include <cstdio>
#include <map>

#include "reports/size_report_forms.h"
#include "tracker/app/cli.h"
#include "tracker/app/commands.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/scope_words.h"
#include "tracker/size_report.h"

namespace rangebook {
namespace {

std::string sizes_in(const SizeReport& report, const OutputChoice& output) {
  if (output.format == "json") return sizes_json(report);
  if (output.format == "csv") return sizes_csv(report);
  return page_in(sizes_page(report), output);
}

std::string reaching_in(const ReachingReport& report, const OutputChoice& output) {
  if (output.format == "json") return reaching_json(report);
  if (output.format == "csv") return reaching_csv(report);
  return page_in(reaching_page(report), output);
}

/// What bare numbers mean in most shops of the book; the first by name of those that tie.
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

}  // namespace

int command_sizes(const std::string& book, const SizesRequest& request,
                  const OutputChoice& output) {
  const auto report = run_sizes(Book::open(book, false), request);
  if (const auto* missing = std::get_if<NotThere>(&report)) return not_there(*missing);
  write_output(sizes_in(std::get<SizeReport>(report), output), output);
  return kDone;
}

int command_reaching(const std::string& book, const std::string& label,
                     std::optional<SizeSystem> system, const std::string& category,
                     const OutputChoice& output) {
  const Book opened = Book::open(book, false);
  const SizeSystem meant = system.value_or(usual_system(opened));
  const auto size = size_in(label, meant);
  if (!size || (system && size->system != *system)) {
    const std::string known = joined(size_system_names());
    fmt::print(stderr,
               "rangebook: --reaching: \"{}\" is no size of {}. Systems for --system: {}.\n", label,
               meant == SizeSystem::unknown ? "a known system" : to_string(meant), known);
    return kUsage;
  }
  const auto report = run_reaching(opened, {*size, category.empty() ? "all" : category});
  write_output(reaching_in(report, output), output);
  return kDone;
}

}  // namespace rangebook
