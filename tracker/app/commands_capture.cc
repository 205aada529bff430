// Taking captures in, and telling what became of them.
#include <fmt/format.h>

#include <algorithm>
#include <cstdio>

#include "reports/mapping_preview.h"
#include "reports/rejection_list.h"
#include "tracker/app/cli.h"
#include "tracker/app/commands.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/progress.h"
#include "tracker/app/retry.h"
#include "tracker/app/table_words.h"

namespace rangebook {
namespace {

/// `1 line`, `2 lines`.
std::string counted(std::uint64_t count, std::string_view thing) {
  return fmt::format("{} {}{}", count, thing, count == 1 ? "" : "s");
}

std::uint64_t rejection_count(const CaptureOutcome& outcome) {
  return outcome.refused_rows + outcome.refused_cells + outcome.doubts;
}

/// The first rejections on stderr, and how many there are. `where`: how to see the others.
void print_rejections(const CaptureInfo& info, const std::vector<Rejection>& first,
                      std::uint64_t all, const std::string& where) {
  for (const auto& rejection : first) {
    fmt::print(stderr, "{}\n", rejection_line(info, rejection));
  }
  if (all > first.size()) fmt::print(stderr, "... and {} more{}.\n", all - first.size(), where);
}

void print_rejections(const CaptureReport& report) {
  print_rejections(
      report.info, report.first_rejections, rejection_count(report.outcome),
      report.kept ? fmt::format("; see: rangebook rejections {}", report.info.shop) : "");
}

void print_rejections(const MappingPreview& preview) {
  std::uint64_t all = 0;
  for (const auto& one : preview.documents) {
    all += one.refused_rows + one.refused_cells + one.doubted;
  }
  print_rejections(preview.capture, preview.rejections, all, "");
}

void print_outcome(const CaptureReport& report) {
  const auto& [info, outcome] = std::tie(report.info, report.outcome);
  if (outcome.unchanged) {
    const bool one = info.documents.size() == 1;
    fmt::print("Nothing changed: capture {} of {} already holds {}{}.\n", outcome.id, info.shop,
               one ? "this document" : "these documents",
               outcome.other_options ? ", read with another mapping" : "");
    if (!outcome.other_options) return;
    fmt::print(
        "To read {} again with this one: rangebook rejections {} --capture {} --retry, and "
        "the same words.\n",
        one ? "it" : "them", info.shop, outcome.id);
    return;
  }
  if (outcome.lines == 0) {
    fmt::print("Nothing was kept: no line could be read from {}.\n",
               info.documents.size() == 1 ? "this document" : "these documents");
    return;
  }
  fmt::print("{} {} {} of {}, scope {}: {}, {} ({} new to the book, {} as before).\n",
             fmt::format("Capture {}:", outcome.id), info.season, info.shop, to_string(info.on),
             to_string(info.scope), counted(outcome.lines, "line"),
             counted(outcome.variants, "variant"), counted(outcome.new_lines, "line"),
             outcome.same_lines);
  if (rejection_count(outcome) > 0) {
    fmt::print("Refused rows: {}. Refused cells: {}. Kept but doubted: {}.\n", outcome.refused_rows,
               outcome.refused_cells, outcome.doubts);
  }
}

void print_saved(const CaptureReport& report) {
  if (!report.saved) return;
  fmt::print("Kept as profile \"{}\" of {}: {}\n", report.saved->name, report.info.shop,
             said(report.saved->options));
}

std::uint64_t still_refused(const RetryReport& report) {
  return report.refused_before - report.cured + report.newly_refused;
}

void print_retry(const RetryReport& report, bool dry_run) {
  const auto& [info, outcome] = std::tie(report.capture.info, report.capture.outcome);
  if (outcome.lines == 0) {
    fmt::print("Nothing was changed: read like this, capture {} of {} would have no line.\n",
               info.id, info.shop);
    return;
  }
  if (outcome.unchanged) {
    fmt::print("Nothing changed: capture {} of {} reads as before, {}.\n", info.id, info.shop,
               report.refused_before == 0 ? "with nothing refused"
                                          : fmt::format("{} still refused", report.refused_before));
    return;
  }
  fmt::print(
      "{} {} of {}: {} of {} cured, {} still refused{}. {} (before: {}), {}.\n",
      dry_run ? "Dry run, nothing kept: capture" : "Read again: capture", info.id, info.shop,
      report.cured, counted(report.refused_before, "refusal"), report.refused_before - report.cured,
      report.newly_refused == 0 ? "" : fmt::format(", {} newly refused", report.newly_refused),
      counted(outcome.lines, "line"), report.lines_before, counted(outcome.variants, "variant"));
}

}  // namespace

int command_capture(const std::string& book, const CaptureRequest& request) {
  Book opened = Book::open(book, true);
  Progress progress;
  const auto taken = run_capture(
      opened, request, [&](std::uint64_t done, std::uint64_t all) { progress(done, all); });
  progress.clear();
  if (const auto* missing = std::get_if<NotThere>(&taken)) return not_there(*missing);
  const auto& report = std::get<CaptureReport>(taken);
  if (!report.outcome.unchanged) print_rejections(report);
  print_outcome(report);
  print_saved(report);
  for (const auto& note : report.notes) fmt::print("{}\n", note);
  const bool refused = report.outcome.refused_rows + report.outcome.refused_cells > 0;
  if (report.outcome.unchanged) return kDone;
  return refused || report.outcome.lines == 0 ? kDoneWithRejections : kDone;
}

int command_preview(const std::string& book, const CaptureRequest& request,
                    const OutputChoice& output) {
  Book opened = Book::open(book, true);
  Progress progress;
  const auto taken = preview_capture(
      opened, request, [&](std::uint64_t done, std::uint64_t all) { progress(done, all); });
  progress.clear();
  if (const auto* missing = std::get_if<NotThere>(&taken)) return not_there(*missing);
  const auto& preview = std::get<MappingPreview>(taken);
  print_rejections(preview);
  write_output(output.format == "json" ? preview_json(preview) : preview_text(preview), output);
  const bool refused = std::any_of(
      preview.documents.begin(), preview.documents.end(),
      [](const DocumentPreview& one) { return one.refused_rows + one.refused_cells > 0; });
  return refused || preview.lines == 0 ? kDoneWithRejections : kDone;
}

int command_rejections(const std::string& book, const std::string& shop, const std::string& capture,
                       const OutputChoice& output) {
  const Book opened = Book::open(book, false);
  const auto found = find_capture(opened, shop, capture);
  if (const auto* missing = std::get_if<NotThere>(&found)) return not_there(*missing);
  const auto& info = std::get<CaptureInfo>(found);
  const auto rejections = opened.rejections(info.id);
  write_output(output.format == "csv"    ? rejections_csv(info, rejections)
               : output.format == "json" ? rejections_json(info, rejections)
                                         : rejections_text(info, rejections),
               output);
  return kDone;
}

int command_retry(const std::string& book, const RetryRequest& request, bool dry_run) {
  Book opened = Book::open(book, false);
  Progress progress;
  const auto taken =
      retry_capture(opened, request, !dry_run,
                    [&](std::uint64_t done, std::uint64_t all) { progress(done, all); });
  progress.clear();
  if (const auto* missing = std::get_if<NotThere>(&taken)) return not_there(*missing);
  const auto& report = std::get<RetryReport>(taken);
  if (dry_run) fmt::print("{}", documents_text(report.documents));
  if (report.capture.outcome.lines > 0) print_rejections(report.capture);
  print_retry(report, dry_run);
  for (const auto& note : report.capture.notes) fmt::print("{}\n", note);
  return still_refused(report) > 0 ? kDoneWithRejections : kDone;
}

}  // namespace rangebook
