// A zip archive as a list of documents, each with its name and its bytes.
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
#include "importers/saved_page.h"

namespace rangebook {

/// Larger archives are refused unread.
inline constexpr std::uint64_t kMaxArchiveBytes = std::uint64_t{1} << 30U;

class Container {
 public:
  enum class Step : std::uint8_t { document, refused, end };

  Container() = default;
  Container(const Container&) = delete;
  Container& operator=(const Container&) = delete;
  virtual ~Container() = default;

  /// Moves to the next document, in the order of the archive. `refused`: the file or the rest of
  /// the archive cannot be taken; fault() says why.
  virtual Step next() = 0;
  /// Path of the current document inside the container, with `/`.
  virtual const std::string& name() const = 0;
  virtual DocumentKind kind() const = 0;
  /// The bytes of the current document from its first one; valid until next().
  virtual ByteSource& source() = 0;
  virtual const DocumentFault& fault() const = 0;
  /// What was passed over so far.
  virtual const LeftAside& left_aside() const = 0;
};

std::unique_ptr<Container> open_archive(std::string bytes);

/// Whether the bytes of a zip archive are a workbook rather than an archive of documents.
bool is_workbook(std::string_view bytes);

/// What systems and programs leave behind: hidden files, locks, lists of pictures.
bool is_leftover(std::string_view path);

/// Whether a path inside a container has the name of a document: by its ending, or without one.
bool has_document_name(std::string_view path);

}  // namespace rangebook
