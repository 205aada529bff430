// Names of folders, schemes of addresses.
#include "importers/saved_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "importers/byte_search.h"
#include "importers/html_tag.h"
#include "importers/page_address.h"
#include "importers/utf8_sequence.h"

namespace rangebook {
namespace {

// The names Windows keeps for folders that belong to a page ("connected files" in the
// documentation of its shell); browsers use those of their language.
constexpr auto kFolderEndings = std::to_array<std::string_view>(
    {"_files",     "-files",    ".files",    "_file",      "-Dateien",  "_Dateien", "_fichiers",
     "_bestanden", "_archivos", "_arquivos", "_ficheiros", "-filer",    "_filer",   "_tiedostot",
     "_pliki",     "_soubory",  "_elemei",   "_dosyalar",  "_datoteke", "_fitxers", "_fitxategiak",
     "_failid",    "_fails",    "_bylos",    "_fajlovi"});

constexpr std::size_t kCommentBytes = 4096;  // the comment stands before the first element
constexpr std::string_view kSavedFrom = "saved from url=(";

bool ends_with_ignoring_case(std::string_view text, std::string_view ending) {
  return text.size() >= ending.size() &&
         equals_ignoring_case(text.substr(text.size() - ending.size()), ending);
}

bool begins_with_ignoring_case(std::string_view text, std::string_view beginning) {
  return equals_ignoring_case(text.substr(0, beginning.size()), beginning);
}

bool is_on_the_disk(std::string_view reference) {
  if (begins_with_ignoring_case(reference, "file:")) return true;
  if (reference.starts_with("./")) reference.remove_prefix(2);
  const auto slash = reference.find('/');
  return slash != reference.npos && page_of_parts_folder(reference.substr(0, slash)).has_value();
}

bool is_in_the_document(std::string_view reference) {
  constexpr auto kSchemes = std::to_array<std::string_view>({"cid:", "data:", "blob:", "mhtml:"});
  return std::any_of(kSchemes.begin(), kSchemes.end(), [&](std::string_view scheme) {
    return begins_with_ignoring_case(reference, scheme);
  });
}

std::string counted(std::uint64_t count, std::string_view thing) {
  return fmt::format("{} {}{}", count, thing, count == 1 ? "" : "s");
}

}  // namespace

std::optional<std::string_view> page_of_parts_folder(std::string_view folder) {
  for (const auto ending : kFolderEndings) {
    if (folder.size() > ending.size() && ends_with_ignoring_case(folder, ending)) {
      return folder.substr(0, folder.size() - ending.size());
    }
  }
  return std::nullopt;
}

void SavedPages::add(std::string_view path) {
  for (const std::string_view ending : {".html", ".htm", ".xhtml", ".xht"}) {
    if (!ends_with_ignoring_case(path, ending)) continue;
    pages_.emplace(path.substr(0, path.size() - ending.size()));
  }
}

std::optional<std::string> SavedPages::page_of(std::string_view path) const {
  for (auto slash = path.find('/'); slash != path.npos; slash = path.find('/', slash + 1)) {
    const auto page = page_of_parts_folder(path.substr(0, slash));
    if (page && pages_.contains(std::string(*page))) return std::string(*page);
  }
  return std::nullopt;
}

std::string LeftAside::sentence() const {
  std::string text;
  if (parts > 0) {
    text = fmt::format("{} of {} (pictures, scripts, styles, frames)", counted(parts, "part"),
                       counted(pages.size(), "saved page"));
  }
  if (others == 0) return text;
  return fmt::format("{}{}{} no document{}", text, text.empty() ? "" : " and ",
                     counted(others, "file") + (others == 1 ? " that is" : " that are"),
                     others == 1 ? "" : "s");
}

std::optional<std::string> saved_from(std::string_view page) {
  page = page.substr(0, kCommentBytes);
  const auto mark = page.find(kSavedFrom);
  if (mark == page.npos) return std::nullopt;
  const std::string_view before = page.substr(0, mark);
  const bool in_comment = before.rfind("<!--") != before.npos &&
                          before.substr(before.rfind("<!--")).find("-->") == before.npos;
  const auto begin = page.find(')', mark);
  if (!in_comment || begin == page.npos) return std::nullopt;
  std::string_view address = page.substr(begin + 1);
  address = address.substr(0, address.find("-->"));
  address = address.substr(0, address.find_first_of(" \t\r\n\f"));
  if (!is_web_address(address)) return std::nullopt;
  return well_formed(address);
}

bool is_saved_copy(std::string_view reference) {
  return is_on_the_disk(reference) || is_in_the_document(reference);
}

std::string picture_address(std::string_view reference, std::string_view base) {
  if (is_in_the_document(reference)) return {};
  if (!is_on_the_disk(reference)) return resolve_address(reference, base);
  reference = reference.substr(0, reference.find_first_of("?#"));
  return std::string(reference.substr(reference.find_last_of("/\\") + 1));
}

std::string link_address(std::string_view reference, std::string_view base) {
  return is_saved_copy(reference) ? "" : resolve_address(reference, base);
}

bool is_web_address(std::string_view address) {
  return begins_with_ignoring_case(address, "https://") ||
         begins_with_ignoring_case(address, "http://");
}

}  // namespace rangebook
