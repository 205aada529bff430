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

#include "importers/page_reader.h"
#include "schema/error.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kChunkBytes = std::size_t{256} << 10U;
constexpr std::size_t kSniffBytes = 4096;

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
  constexpr std::array<std::string_view, 6> kKnown{".html", ".htm", ".xhtml",
                                                   ".csv",  ".tsv", ".txt"};
  return std::find(kKnown.begin(), kKnown.end(), lower_extension(path)) != kKnown.end();
}

std::string first_bytes(const std::string& path) {
  FileSource source(path, [](std::string_view) {});
  return std::string(source.next_chunk().substr(0, kSniffBytes));
}

DocumentFile describe(const fs::path& path) {
  DocumentFile file;
  file.path = path.string();
  file.name = path.filename().string();
  std::error_code error;
  file.bytes = fs::file_size(path, error);
  if (error) cannot_read(file.path, error.value());
  const std::string extension = lower_extension(path);
  const bool named_page = extension == ".html" || extension == ".htm" || extension == ".xhtml";
  const bool named_table = extension == ".csv" || extension == ".tsv";
  file.is_page = named_page || (!named_table && looks_like_page(first_bytes(file.path)));
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

FileSource::FileSource(const std::string& path, Tap also) : path_(path), also_(std::move(also)) {
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
  const std::string_view chunk(chunk_.data(), static_cast<std::size_t>(got));
  if (!chunk.empty()) also_(chunk);
  return chunk;
}

void FileSource::drain() {
  while (!next_chunk().empty()) continue;
}

}  // namespace rangebook
