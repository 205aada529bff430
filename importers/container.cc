// Names first, then the first bytes: most files of a saved page need not be unpacked at all.
#include "importers/container.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "importers/byte_search.h"
#include "importers/utf8.h"
#include "importers/zip_walk.h"

namespace rangebook {
namespace {

constexpr std::size_t kMaxNameBytes = 1024;

constexpr std::array<std::string_view, 16> kEndings{"csv",   "tsv", "txt",  "tab",  "xlsx", "xlsm",
                                                    "json",  "xml", "html", "htm",  "rss",  "jsonl",
                                                    "xhtml", "mht", "atom", "mhtml"};

std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), ascii_lower);
  return out;
}

/// A path that leads out of its container, or holds what no path should.
bool is_bad_path(std::string_view path) {
  if (path.empty() || path.front() == '/' || path.size() > kMaxNameBytes) return true;
  if (path.size() > 1 && path[1] == ':') return true;
  if (std::any_of(path.begin(), path.end(),
                  [](char sign) { return static_cast<unsigned char>(sign) < 0x20; })) {
    return true;
  }
  for (std::string_view rest = path; !rest.empty();) {
    const std::size_t end = std::min(rest.find('/'), rest.size());
    if (rest.substr(0, end) == "..") return true;
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return false;
}

bool is_read(DocumentKind kind) {
  return kind != DocumentKind::picture && kind != DocumentKind::pdf && kind != DocumentKind::other;
}

/// Reads ahead for the kind of a document and gives those bytes again.
class PeekedSource final : public ByteSource {
 public:
  explicit PeekedSource(std::unique_ptr<ByteSource> source) : source_(std::move(source)) {
    for (auto chunk = source_->next_chunk(); !chunk.empty(); chunk = source_->next_chunk()) {
      head_ += chunk;
      if (head_.size() >= kKindBytes) break;
    }
  }
  const std::string& head() const { return head_; }
  std::string_view next_chunk() override {
    if (!std::exchange(given_, true) && !head_.empty()) return head_;
    return source_->next_chunk();
  }

 private:
  std::unique_ptr<ByteSource> source_;
  std::string head_;
  bool given_ = false;
};

class Archive final : public Container {
 public:
  explicit Archive(std::string bytes) : bytes_(std::move(bytes)), walk_(bytes_) {
    if (bytes_.size() > kMaxArchiveBytes) return;
    ZipWalk names(bytes_);
    while (names.next()) pages_.add(names.path());
  }

  Step next() override {
    while (!done_) {
      source_.reset();
      if (bytes_.size() > kMaxArchiveBytes) return refuse_large();
      if (!walk_.next()) return end();
      const std::string path = walk_.path();
      if (is_bad_path(path)) {
        name_ = excerpt_of(path, kExcerptBytes);
        return refuse(RejectionKind::unreadable_document,
                      "The archive holds a file whose name leads out of it.",
                      "Do not unpack it; ask where it comes from.");
      }
      if (is_leftover(path)) continue;
      if (const auto page = pages_.page_of(path)) {
        ++left_aside_.parts;
        left_aside_.pages.insert(*page);
        continue;
      }
      if (!has_document_name(path) && !path.ends_with(".zip")) {
        ++left_aside_.others;
        continue;
      }
      const auto step = take(path, std::make_unique<ZipEntrySource>(walk_));
      if (walk_.fault()) return end();
      if (step && kind_ == DocumentKind::zip && !is_workbook(source_->head())) {
        return refuse(RejectionKind::unreadable_document,
                      fmt::format("{} is an archive within the archive.", path),
                      "Unpack it and give its files.");
      }
      if (step) return *step;
    }
    return Step::end;
  }
  const std::string& name() const override { return name_; }
  DocumentKind kind() const override { return kind_; }
  ByteSource& source() override { return *source_; }
  const DocumentFault& fault() const override { return fault_; }
  const LeftAside& left_aside() const override { return left_aside_; }

 private:
  Step refuse_large() {
    done_ = true;
    return refuse(RejectionKind::over_limit,
                  fmt::format("The archive is larger than {} GiB.", kMaxArchiveBytes >> 30U),
                  "Unpack it and give the files that matter.");
  }

  Step refuse(RejectionKind kind, std::string what, std::string how_to_fix) {
    fault_ = {kind, std::move(what), std::move(how_to_fix)};
    return Step::refused;
  }

  /// Nothing when the file is no document after all.
  std::optional<Step> take(std::string name, std::unique_ptr<ByteSource> bytes) {
    name_ = std::move(name);
    source_ = std::make_unique<PeekedSource>(std::move(bytes));
    kind_ = kind_of(source_->head());
    if (!is_read(kind_)) {
      ++left_aside_.others;
      return std::nullopt;
    }
    return Step::document;
  }

  Step end() {
    done_ = true;
    if (!walk_.fault()) return Step::end;
    fault_ = *walk_.fault();
    return Step::refused;
  }

  const std::string bytes_;
  ZipWalk walk_;
  SavedPages pages_;
  bool done_ = false;
  std::string name_;
  std::unique_ptr<PeekedSource> source_;
  DocumentKind kind_ = DocumentKind::text;
  DocumentFault fault_;
  LeftAside left_aside_;
};

}  // namespace

bool is_workbook(std::string_view bytes) {
  return bytes.find("xl/workbook") != bytes.npos || bytes.find("[Content_Types].xml") != bytes.npos;
}

bool is_leftover(std::string_view path) {
  if (path.starts_with("__MACOSX/")) return true;
  path.remove_prefix(path.find_last_of('/') + 1);
  return path.empty() || path.front() == '.' || path.starts_with("~$") || path == "Thumbs.db";
}

bool has_document_name(std::string_view path) {
  path.remove_prefix(path.find_last_of('/') + 1);
  const std::size_t dot = path.rfind('.');
  if (dot == path.npos) return true;
  const std::string ending = lower(path.substr(dot + 1));
  return std::find(kEndings.begin(), kEndings.end(), ending) != kEndings.end();
}

std::unique_ptr<Container> open_archive(std::string bytes) {
  return std::make_unique<Archive>(std::move(bytes));
}

}  // namespace rangebook
