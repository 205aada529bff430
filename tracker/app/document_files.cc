// Plain POSIX reads: sequential, large, without a second buffer.
#include "tracker/app/document_files.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>

#include "schema/error.h"
#include "schema/names.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kChunkBytes = std::size_t{256} << 10U;

constexpr NameTable<DocumentForm, 6> kFormNames{{{DocumentForm::table, "table"},
                                                 {DocumentForm::page, "page"},
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

bool is_document_name(const fs::path& path) {
  constexpr std::array<std::string_view, 10> kKnown{".html", ".htm",  ".xhtml", ".csv", ".tsv",
                                                    ".txt",  ".xlsx", ".json",  ".xml", ".zip"};
  return std::find(kKnown.begin(), kKnown.end(), lower_extension(path)) != kKnown.end();
}

std::string first_bytes(const std::string& path) {
  FileSource source(path);
  return std::string(source.next_chunk().substr(0, kKindBytes));
}

DocumentFile describe(const fs::path& path) {
  DocumentFile file;
  file.path = path.string();
  file.name = path.filename().string();
  std::error_code error;
  file.bytes = fs::file_size(path, error);
  if (error) cannot_read(file.path, error.value());
  file.form = form_of(file.name, kind_of(first_bytes(file.path)));
  return file;
}

std::vector<fs::path> documents_in(const fs::path& folder) {
  std::vector<fs::path> found;
  for (const auto& entry : fs::directory_iterator(folder)) {
    if (entry.is_regular_file() && is_document_name(entry.path())) found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

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
  const bool named_page = extension == ".html" || extension == ".htm" || extension == ".xhtml";
  const bool named_table = extension == ".csv" || extension == ".tsv";
  if (named_page || (!named_table && kind == DocumentKind::page)) {
    return DocumentForm::page;
  }
  if (named_table) return DocumentForm::table;
  if (kind == DocumentKind::json) return DocumentForm::json;
  return kind == DocumentKind::xml ? DocumentForm::xml : DocumentForm::table;
}

std::vector<DocumentFile> find_documents(const std::vector<std::string>& paths) {
  std::vector<DocumentFile> files;
  for (const auto& path : paths) {
    std::error_code error;
    if (fs::is_directory(path, error)) {
      const auto inside = documents_in(path);
      if (inside.empty()) {
        throw Error(fmt::format("The folder {} holds no page (.html) and no table (.csv).", path));
      }
      for (const auto& file : inside) files.push_back(describe(file));
    } else {
      files.push_back(describe(path));
    }
  }
  return files;
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
