// Documents on disk: finding them, telling their kind, reading them once for importer and archive.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "importers/row_reader.h"

namespace rangebook {

struct DocumentFile {
  std::string path;
  std::string name;  ///< without folders
  std::uint64_t bytes = 0;
  bool is_page = false;  ///< else a table
};

/// The documents that files and folders name, folders in order of names. Throws Error for a path
/// that does not exist or cannot be read.
std::vector<DocumentFile> find_documents(const std::vector<std::string>& paths);

/// Reads a file in chunks and hands each chunk to `also` as well.
class FileSource final : public ByteSource {
 public:
  using Tap = std::function<void(std::string_view)>;

  FileSource(const std::string& path, Tap also);
  ~FileSource() override;

  std::string_view next_chunk() override;
  /// Reads on to the end of the file, for `also` alone.
  void drain();

 private:
  std::string path_;
  Tap also_;
  std::string chunk_;
  int file_ = -1;
};

}  // namespace rangebook
