// Plain POSIX reads: sequential, large, without a second buffer.
#include "tracker/app/document_files.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <set>
#include <utility>

#include "importers/container.h"
#include "importers/saved_page.h"
#include "schema/error.h"
#include "schema/names.h"
#include "tracker/app/folder_listing.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kChunkBytes = std::size_t{256} << 10U;

constexpr NameTable<DocumentForm, 7> kFormNames{{{DocumentForm::table, "table"},
                                                 {DocumentForm::page, "page"},
                                                 {DocumentForm::mhtml, "mhtml"},
                                                 {DocumentForm::workbook, "workbook"},
                                                 {DocumentForm::json, "json"},
                                                 {DocumentForm::xml, "xml"},
                                                 {DocumentForm::archive, "archive"}}};

[[noreturn]] void cannot_read(const std::string& path, int reason) {
  throw Error(fmt::format("Cannot read {}: {}.", path, std::strerror(reason)));  // NOLINT
}

std::string lower_extension(const fs::path& path) {
  std::string extension = path.extension().string();
  std::transform(extension.begin(), extension.end(), extension.begin(), [](char sign) {
    return sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign + 32) : sign;
  });
  return extension;
}

std::string first_bytes(const std::string& path) {
  FileSource source(path);
  return std::string(source.next_chunk().substr(0, kKindBytes));
}

DocumentFile describe(const std::string& path, std::string name) {
  DocumentFile file;
  file.path = path;
  file.name = std::move(name);
  std::error_code error;
  file.bytes = fs::file_size(path, error);
  if (error) cannot_read(file.path, error.value());
  file.form = form_of(file.name, kind_of(first_bytes(file.path)));
  return file;
}

/// Collects documents, each once, however often it is named.
class Finder {
 public:
  void take(const std::string& path) {
    std::error_code error;
    const bool is_folder = fs::is_directory(path, error);
    const std::string page = page_beside(is_folder ? path : fs::path(path).parent_path().string());
    if (!page.empty()) return leave_aside(path, page);
    if (is_folder) return take_folder(path);
    add(path, fs::path(path).filename().string());
  }

  FoundDocuments finish() {
    if (found_.files.empty() && !page_.empty()) {
      throw Error(fmt::format("{} is a part of the saved page {}; give that page.", part_, page_));
    }
    return std::move(found_);
  }

 private:
  void take_folder(const std::string& path) {
    const FolderListing inside = list_folder(path);
    if (inside.documents.empty()) {
      throw Error(fmt::format("The folder {} holds no page (.html) and no table (.csv).", path));
    }
    for (const auto& name : inside.documents) add((fs::path(path) / name).string(), name);
    if (inside.left_aside.empty()) return;
    found_.notes.push_back(
        fmt::format("Left aside in {}: {}.", path, inside.left_aside.sentence()));
  }

  void leave_aside(const std::string& path, const std::string& page) {
    part_ = path;
    page_ = page;
    found_.notes.push_back(fmt::format("Left aside: {}, a part of the saved page {}.", path, page));
  }

  void add(const std::string& path, std::string name) {
    std::error_code error;
    const fs::path real = fs::weakly_canonical(path, error);
    if (!error && !seen_.insert(real.string()).second) return;
    found_.files.push_back(describe(path, std::move(name)));
  }

  FoundDocuments found_;
  std::set<std::string> seen_;
  std::string part_;  ///< the last that was left aside
  std::string page_;  ///< whose part it is
};

}  // namespace

std::string_view to_string(DocumentForm form) { return name_of(kFormNames, form); }
std::optional<DocumentForm> parse_document_form(std::string_view name) {
  return value_of(kFormNames, name);
}

DocumentForm form_of(std::string_view name, DocumentKind kind) {
  const std::string extension = lower_extension(fs::path(name));
  if (kind == DocumentKind::zip) {
    return extension == ".zip" ? DocumentForm::archive : DocumentForm::workbook;
  }
  if (kind == DocumentKind::old_workbook) return DocumentForm::workbook;
  const bool named_mhtml = extension == ".mhtml" || extension == ".mht";
  if (kind == DocumentKind::mail || (named_mhtml && kind != DocumentKind::page)) {
    return DocumentForm::mhtml;
  }
  const bool named_page = extension == ".html" || extension == ".htm" || extension == ".xhtml";
  const bool named_table = extension == ".csv" || extension == ".tsv";
  if (named_page || (!named_table && kind == DocumentKind::page)) {
    return DocumentForm::page;
  }
  if (named_table) return DocumentForm::table;
  if (kind == DocumentKind::json) return DocumentForm::json;
  return kind == DocumentKind::xml ? DocumentForm::xml : DocumentForm::table;
}

FoundDocuments find_documents(const std::vector<std::string>& paths) {
  Finder finder;
  for (const auto& path : paths) finder.take(path);
  return finder.finish();
}

FoundDocuments name_documents(const std::vector<NamedFile>& files) {
  SavedPages pages;
  for (const auto& file : files) pages.add(file.name);
  FoundDocuments found;
  LeftAside left_aside;
  for (const auto& [path, name] : files) {
    const bool chosen = name.find('/') == name.npos;
    if (const auto page = pages.page_of(name)) {
      ++left_aside.parts;
      left_aside.pages.insert(*page);
    } else if (chosen || (!is_leftover(name) && is_folder_document(name))) {
      found.files.push_back(describe(path, name));
    } else {
      ++left_aside.others;
    }
  }
  if (!left_aside.empty()) {
    found.notes.push_back(fmt::format("Left aside: {}.", left_aside.sentence()));
  }
  return found;
}

FileSource::FileSource(const std::string& path) : path_(path) {
  file_ = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file_ < 0) cannot_read(path, errno);
}

FileSource::~FileSource() { ::close(file_); }

std::string_view FileSource::next_chunk() {
  chunk_.resize(kChunkBytes);
  ssize_t got = -1;
  do {
    got = ::read(file_, chunk_.data(), chunk_.size());
  } while (got < 0 && errno == EINTR);
  if (got < 0) cannot_read(path_, errno);
  return {chunk_.data(), static_cast<std::size_t>(got)};
}

std::string_view TappedSource::next_chunk() {
  const std::string_view chunk = source_.next_chunk();
  if (!chunk.empty()) also_(chunk);
  return chunk;
}

void TappedSource::drain() {
  while (!next_chunk().empty()) continue;
}

std::string TappedSource::read_all(std::uint64_t limit) {
  std::string bytes;
  for (auto chunk = next_chunk(); !chunk.empty(); chunk = next_chunk()) {
    const std::uint64_t room = limit + 1 - std::min<std::uint64_t>(limit + 1, bytes.size());
    bytes.append(chunk.substr(0, room));
  }
  return bytes;
}

}  // namespace rangebook
