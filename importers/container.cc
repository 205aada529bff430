// Names first, then the first bytes: most files of a saved page need not be unpacked at all.
#include "importers/container.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <utility>
#include <vector>

#include "importers/byte_search.h"
#include "importers/utf8.h"
#include "importers/zip_walk.h"
#include "schema/error.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kChunkBytes = std::size_t{256} << 10U;
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

/// What systems and programs leave behind.
bool is_leftover(std::string_view path) {
  if (path.starts_with("__MACOSX/")) return true;
  path.remove_prefix(path.find_last_of('/') + 1);
  return path.empty() || path.front() == '.' || path.starts_with("~$") || path == "Thumbs.db";
}

/// The folder a browser puts the parts of a saved page into.
bool is_page_folder(std::string_view path) {
  for (const std::string_view ending : {"_files", "-files", "_Dateien", "-Dateien", "_fichiers",
                                        "_archivos", "_bestanden", "_file"}) {
    if (path.ends_with(ending) || path.find(std::string(ending) + '/') != path.npos) return true;
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

class OpenFile final : public ByteSource {
 public:
  explicit OpenFile(std::string path)
      : path_(std::move(path)), file_(std::fopen(path_.c_str(), "rb")) {
    if (file_ == nullptr) fail();
  }
  ~OpenFile() override { std::fclose(file_); }
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;

  std::string_view next_chunk() override {
    chunk_.resize(kChunkBytes);
    const std::size_t got = std::fread(chunk_.data(), 1, chunk_.size(), file_);
    if (got == 0 && std::ferror(file_) != 0) fail();
    return std::string_view(chunk_).substr(0, got);
  }

 private:
  [[noreturn]] void fail() const {
    throw Error(fmt::format("Cannot read {}: {}.", path_, std::strerror(errno)));  // NOLINT
  }

  std::string path_;
  std::FILE* file_;
  std::string chunk_;
};

/// What archives and folders share: the current document.
class ContainerBase : public Container {
 public:
  const std::string& name() const override { return name_; }
  DocumentKind kind() const override { return kind_; }
  ByteSource& source() override { return *source_; }
  const DocumentFault& fault() const override { return fault_; }
  std::uint64_t passed_over() const override { return passed_over_; }

 protected:
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
      ++passed_over_;
      return std::nullopt;
    }
    return Step::document;
  }

  std::string name_;
  std::unique_ptr<PeekedSource> source_;
  DocumentKind kind_ = DocumentKind::text;
  DocumentFault fault_;
  std::uint64_t passed_over_ = 0;
};

class Archive final : public ContainerBase {
 public:
  explicit Archive(std::string bytes) : bytes_(std::move(bytes)), walk_(bytes_) {}

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
      if (is_leftover(path) || is_page_folder(path)) continue;
      if (!has_document_name(path) && !path.ends_with(".zip")) {
        ++passed_over_;
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

 private:
  Step refuse_large() {
    done_ = true;
    return refuse(RejectionKind::over_limit,
                  fmt::format("The archive is larger than {} GiB.", kMaxArchiveBytes >> 30U),
                  "Unpack it and give the files that matter.");
  }

  Step end() {
    done_ = true;
    if (!walk_.fault()) return Step::end;
    fault_ = *walk_.fault();
    return Step::refused;
  }

  const std::string bytes_;
  ZipWalk walk_;
  bool done_ = false;
};

class Folder final : public ContainerBase {
 public:
  explicit Folder(const std::string& path) : root_(path) { list(); }

  Step next() override {
    if (std::exchange(too_many_, false)) {
      return refuse(RejectionKind::over_limit,
                    fmt::format("The folder holds more than {} files.", kMaxFolderFiles),
                    "Give the folder or the files that matter.");
    }
    while (next_ < paths_.size()) {
      const fs::path& path = paths_[next_++];
      const auto step = take(path.lexically_relative(root_).generic_string(),
                             std::make_unique<OpenFile>(path.string()));
      if (step) return *step;
    }
    source_.reset();
    return Step::end;
  }

 private:
  void list() {
    std::error_code error;
    fs::recursive_directory_iterator at(root_, error);
    for (; !error && at != fs::recursive_directory_iterator(); at.increment(error)) {
      const std::string relative = at->path().lexically_relative(root_).generic_string();
      const bool is_link = at->is_symlink(error);
      const bool is_folder = !error && !is_link && at->is_directory(error);
      const bool is_file = !error && !is_link && at->is_regular_file(error);
      if (error) break;
      if (is_folder && (is_leftover(relative) || is_page_folder(relative) ||
                        at.depth() + 1 >= static_cast<int>(kMaxFolderDepth))) {
        at.disable_recursion_pending();
      }
      if (!is_file || is_leftover(relative)) continue;
      if (!has_document_name(relative)) {
        ++passed_over_;
        continue;
      }
      paths_.push_back(at->path());
      too_many_ = paths_.size() > kMaxFolderFiles;
      if (too_many_) break;
    }
    if (error) throw Error(fmt::format("Cannot read {}: {}.", root_.string(), error.message()));
    if (too_many_) paths_.clear();
    std::sort(paths_.begin(), paths_.end());
  }

  fs::path root_;
  std::vector<fs::path> paths_;
  std::size_t next_ = 0;
  bool too_many_ = false;
};

}  // namespace

bool is_workbook(std::string_view bytes) {
  return bytes.find("xl/workbook") != bytes.npos || bytes.find("[Content_Types].xml") != bytes.npos;
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

std::unique_ptr<Container> open_folder(const std::string& path) {
  return std::make_unique<Folder>(path);
}

}  // namespace rangebook
