// Taking captures in, and telling what became of them.
#include <fmt/format.h>
#include <unistd.h>

#include <chrono>
#include <cstdio>

#include "reports/phrase.h"
#include "reports/rejection_list.h"
#include "tracker/app/cli.h"
#include "tracker/app/commands.h"
#include "tracker/app/pipeline.h"

namespace rangebook {
namespace {

constexpr auto kQuietTime = std::chrono::milliseconds(500);

/// A line on stderr that says how far the work is, when somebody is watching and it takes long.
class Progress {
 public:
  void operator()(std::uint64_t done, std::uint64_t all) {
    const auto now = Clock::now();
    if (!watched_ || now - last_ < kQuietTime) return;
    last_ = now;
    shown_ = true;
    const double seconds = std::chrono::duration<double>(now - start_).count();
    const double rate = static_cast<double>(done) / seconds;
    const double left = rate > 0 ? static_cast<double>(all - std::min(done, all)) / rate : 0;
    fmt::print(stderr, "\r{:3}% of {} MB read, {:.0f} MB/s, {:.0f} s left \x1b[K",
               all ? done * 100 / all : 100, all / 1'000'000, rate / 1e6, left);
  }
  void clear() const {
    if (shown_) fmt::print(stderr, "\r\x1b[K");
  }

 private:
  using Clock = std::chrono::steady_clock;
  bool watched_ = ::isatty(STDERR_FILENO) == 1;
  bool shown_ = false;
  Clock::time_point start_ = Clock::now();
  Clock::time_point last_ = start_;
};

/// `1 line`, `2 lines`.
std::string counted(std::uint64_t count, std::string_view thing) {
  return fmt::format("{} {}{}", count, thing, count == 1 ? "" : "s");
}

std::uint64_t rejection_count(const CaptureOutcome& outcome) {
  return outcome.refused_rows + outcome.refused_cells + outcome.doubts;
}

void print_rejections(const CaptureReport& report) {
  for (const auto& rejection : report.first_rejections) {
    fmt::print(stderr, "{}\n", rejection_line(report.info, rejection));
  }
  const std::uint64_t all = rejection_count(report.outcome);
  if (all <= report.first_rejections.size()) return;
  fmt::print(stderr, "... and {} more{}.\n", all - report.first_rejections.size(),
             report.kept ? fmt::format("; see: rangebook rejections {}", report.info.shop) : "");
}

void print_outcome(const CaptureReport& report) {
  const auto& [info, outcome] = std::tie(report.info, report.outcome);
  if (outcome.unchanged) {
    fmt::print("Nothing changed: capture {} of {} already holds {}.\n", outcome.id, info.shop,
               info.documents.size() == 1 ? "this document" : "these documents");
    return;
  }
  if (outcome.lines == 0) {
    fmt::print("Nothing was kept: no line could be read from {}.\n",
               info.documents.size() == 1 ? "this document" : "these documents");
    return;
  }
  fmt::print(
      "{} {} {} of {}, scope {}: {}, {} ({} new to the book, {} as before).\n",
      report.kept ? fmt::format("Capture {}:", outcome.id) : "Dry run, nothing kept:", info.season,
      info.shop, to_string(info.on), to_string(info.scope), counted(outcome.lines, "line"),
      counted(outcome.variants, "variant"), counted(outcome.new_lines, "line"), outcome.same_lines);
  if (rejection_count(outcome) > 0) {
    fmt::print("Refused rows: {}. Refused cells: {}. Kept but doubted: {}.\n", outcome.refused_rows,
               outcome.refused_cells, outcome.doubts);
  }
}

void print_documents(const CaptureReport& report) {
  for (const auto& document : report.info.documents) {
    fmt::print("{}: {}\n", clean_line(document.name), clean_line(document.mapping));
  }
}

}  // namespace

int command_capture(const std::string& book, const CaptureRequest& request) {
  Book opened = Book::open(book, true);
  Progress progress;
  const CaptureReport report = run_capture(
      opened, request, [&](std::uint64_t done, std::uint64_t all) { progress(done, all); });
  progress.clear();
  if (request.dry_run) print_documents(report);
  if (!report.outcome.unchanged) print_rejections(report);
  print_outcome(report);
  for (const auto& note : report.notes) fmt::print("{}\n", note);
  const bool refused = report.outcome.refused_rows + report.outcome.refused_cells > 0;
  if (report.outcome.unchanged) return kDone;
  return refused || report.outcome.lines == 0 ? kDoneWithRejections : kDone;
}

int command_rejections(const std::string& book, const std::string& shop, const std::string& capture,
                       const OutputChoice& output) {
  const Book opened = Book::open(book, false);
  const auto found = find_capture(opened, shop, capture);
  if (const auto* missing = std::get_if<NotThere>(&found)) return not_there(*missing);
  const auto& info = std::get<CaptureInfo>(found);
  const auto rejections = opened.rejections(info.id);
  write_output(
      output.format == "csv" ? rejections_csv(info, rejections) : rejections_text(info, rejections),
      output);
  return kDone;
}

}  // namespace rangebook
