// A zip archive or a folder as a list of documents, each with its name and its bytes.
//
// Names that lead out of the archive, archives within archives and archives beyond the limits of
// importers/zip_walk.h are refused; nothing is ever unpacked to the disk. Files that are no
// documents (pictures, scripts, what systems leave behind) are passed over.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "importers/document_kind.h"
#include "importers/record_source.h"
#include "importers/row_reader.h"

namespace rangebook {

/// More files than this in a folder, with the folders inside, are refused.
inline constexpr std::size_t kMaxFolderFiles = 20'000;
/// Folders inside folders are looked into so deep.
inline constexpr std::size_t kMaxFolderDepth = 8;
/// Larger archives are refused unread.
inline constexpr std::uint64_t kMaxArchiveBytes = std::uint64_t{1} << 30U;

class Container {
 public:
  enum class Step : std::uint8_t { document, refused, end };

  Container() = default;
  Container(const Container&) = delete;
  Container& operator=(const Container&) = delete;
  virtual ~Container() = default;

  /// Moves to the next document, in the order of the archive, or of names in a folder. `refused`:
  /// the file or the rest of the archive cannot be taken; fault() says why. Throws Error when a
  /// file of a folder cannot be read.
  virtual Step next() = 0;
  /// Path of the current document inside the container, with `/`.
  virtual const std::string& name() const = 0;
  virtual DocumentKind kind() const = 0;
  /// The bytes of the current document from its first one; valid until next().
  virtual ByteSource& source() = 0;
  virtual const DocumentFault& fault() const = 0;
  /// How many files were passed over.
  virtual std::uint64_t passed_over() const = 0;
};

std::unique_ptr<Container> open_archive(std::string bytes);
/// Throws Error when the folder cannot be read. Links are not followed.
std::unique_ptr<Container> open_folder(const std::string& path);

/// Whether the bytes of a zip archive are a workbook rather than an archive of documents.
bool is_workbook(std::string_view bytes);

/// Whether a path inside a container has the name of a document: by its ending, or without one.
bool has_document_name(std::string_view path);

}  // namespace rangebook
