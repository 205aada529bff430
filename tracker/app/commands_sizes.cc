// Size reach: of one shop, or one size across shops.
#include <fmt/format.h>

#include <cstdio>

#include "tracker/app/cli.h"
#include "tracker/app/commands.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/report_forms.h"
#include "tracker/app/scope_words.h"
#include "tracker/size_report.h"

namespace rangebook {
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
