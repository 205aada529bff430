// Comparing captures, and writing what came of it.
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>

#include "reports/brief.h"
#include "reports/price_report.h"
#include "reports/snapshot_csv.h"
#include "schema/error.h"
#include "tracker/app/cli.h"
#include "tracker/app/commands.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/report_forms.h"
#include "tracker/store/snapshot_reader.h"

namespace rangebook {
namespace {

[[noreturn]] void cannot_write(const std::string& path) {
  throw Error(fmt::format("Cannot write {}: {}.", path, std::strerror(errno)));  // NOLINT
}

void write_all(int file, std::string_view text, const std::string& path) {
  while (!text.empty()) {
    const ssize_t wrote = ::write(file, text.data(), text.size());
    if (wrote < 0 && errno == EINTR) continue;
    if (wrote < 0) cannot_write(path);
    text.remove_prefix(static_cast<std::size_t>(wrote));
  }
}

/// Beside the file first, then in its place: never a half-written report.
void write_file(const std::string& path, std::string_view text) {
  const std::string half = path + ".part";
  const int file = ::open(half.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
  if (file < 0) cannot_write(path);
  try {
    write_all(file, text, path);
  } catch (const Error&) {
    ::close(file);
    std::remove(half.c_str());
    throw;
  }
  if (::close(file) != 0 || std::rename(half.c_str(), path.c_str()) != 0) cannot_write(path);
}

}  // namespace

int not_there(const NotThere& missing) {
  fmt::print(stderr, "rangebook: {}\n", missing.message);
  return kUsage;
}

void write_output(const std::string& content, const OutputChoice& output) {
  const bool marked = output.bom && output.format == "csv";
  const std::string& text = marked ? "\xEF\xBB\xBF" + content : content;
  if (output.file.empty()) {
    write_all(STDOUT_FILENO, text, "the output");
  } else {
    write_file(output.file, text);
  }
}

int command_changes(const std::string& book, const CompareRequest& request,
                    const OutputChoice& output) {
  const auto set = run_comparison(Book::open(book, false), request);
  if (const auto* missing = std::get_if<NotThere>(&set)) return not_there(*missing);
  write_output(changes_in(std::get<ChangeSet>(set), output.format), output);
  return kDone;
}

int command_revisit(const std::string& book, const CompareRequest& request,
                    const OutputChoice& output) {
  const Book opened = Book::open(book, false);
  const auto compared = run_comparison(opened, request);
  if (const auto* missing = std::get_if<NotThere>(&compared)) return not_there(*missing);
  const auto& set = std::get<ChangeSet>(compared);
  const Brief brief = make_brief(set, run_brief_extras(opened, set));
  write_output(brief_in(brief, output), output);
  return kDone;
}

int command_prices(const std::string& book, const CompareRequest& request,
                   const std::string& category, const OutputChoice& output) {
  const auto set = run_comparison(Book::open(book, false), request);
  if (const auto* missing = std::get_if<NotThere>(&set)) return not_there(*missing);
  PriceReportOptions options;
  options.category = category;
  write_output(prices_in(std::get<ChangeSet>(set), options, output), output);
  return kDone;
}

int command_export(const std::string& book, const std::string& shop, const std::string& capture,
                   const OutputChoice& output) {
  const Book opened = Book::open(book, false);
  const auto info = find_capture(opened, shop, capture);
  if (const auto* missing = std::get_if<NotThere>(&info)) return not_there(*missing);
  const auto id = std::get<CaptureInfo>(info).id;
  write_output(snapshot_csv(read_snapshot(opened, id, SnapshotDetail::with)), output);
  return kDone;
}

}  // namespace rangebook
