// Documents on disk: finding them, telling their kind, reading them once for importer and archive.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "importers/document_kind.h"
#include "importers/row_reader.h"
#include "tracker/app/request.h"

namespace rangebook {

/// Which importer a document is for.
enum class DocumentForm : std::uint8_t { table, page, mhtml, workbook, json, xml, archive };
std::string_view to_string(DocumentForm form);  ///< `workbook`: what the book calls the importer
std::optional<DocumentForm> parse_document_form(std::string_view name);

struct DocumentFile {
  std::string path;
  std::string name;  ///< below the folder that was given; of a file without folders
  std::uint64_t bytes = 0;
  DocumentForm form = DocumentForm::table;
};

/// By the kind its first bytes tell; the ending of the name decides between a page and a table,
/// which look alike. A zip archive does not tell a workbook from an archive of documents: the
/// ending does.
DocumentForm form_of(std::string_view name, DocumentKind kind);

struct FoundDocuments {
  std::vector<DocumentFile> files;
  std::vector<std::string> notes;  ///< sentences on what was left aside
};

/// The documents that files and folders name, each once, folders in order of names. The parts of
/// saved pages (`dress_files` beside `dress.html`) are left aside. Throws Error for a path that
/// does not exist or cannot be read.
FoundDocuments find_documents(const std::vector<std::string>& paths);

/// The same for files with names of their own: of those that lay in a folder, only documents.
FoundDocuments name_documents(const std::vector<NamedFile>& files);

/// Reads a file in chunks.
class FileSource final : public ByteSource {
 public:
  explicit FileSource(const std::string& path);
  ~FileSource() override;

  std::string_view next_chunk() override;

 private:
  std::string path_;
  std::string chunk_;
  int file_ = -1;
};

/// Hands each chunk of another source to `also` as well.
class TappedSource final : public ByteSource {
 public:
  using Tap = std::function<void(std::string_view)>;

  TappedSource(ByteSource& source, Tap also) : source_(source), also_(std::move(also)) {}

  std::string_view next_chunk() override;
  /// Reads on to the end, for `also` alone.
  void drain();
  /// The rest of the bytes, at most `limit` of them and one more; the others go to `also` alone.
  std::string read_all(std::uint64_t limit);

 private:
  ByteSource& source_;
  Tap also_;
};

}  // namespace rangebook
