// A zip archive in memory, of parts given by path, in their order.
#pragma once

#include <archive.h>
#include <archive_entry.h>

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace rangebook {

using ZipParts = std::vector<std::pair<std::string, std::string>>;

inline std::string zip_of(const ZipParts& parts) {
  std::size_t room = 1 << 16;
  for (const auto& part : parts) room += part.second.size() + part.first.size() * 2 + 512;
  std::string out(room, '\0');
  std::size_t used = 0;
  archive* writer = archive_write_new();
  archive_write_set_format_zip(writer);
  archive_write_set_bytes_in_last_block(writer, 1);
  if (archive_write_open_memory(writer, out.data(), out.size(), &used) != ARCHIVE_OK) {
    throw std::runtime_error("cannot write an archive");
  }
  for (const auto& [path, text] : parts) {
    archive_entry* entry = archive_entry_new();
    archive_entry_set_pathname(entry, path.c_str());
    archive_entry_set_size(entry, static_cast<la_int64_t>(text.size()));
    archive_entry_set_filetype(entry, AE_IFREG);
    archive_entry_set_perm(entry, 0644);
    archive_write_header(writer, entry);
    archive_write_data(writer, text.data(), text.size());
    archive_entry_free(entry);
  }
  archive_write_close(writer);
  archive_write_free(writer);
  out.resize(used);
  return out;
}

/// A workbook of one sheet, `Range`, with the rows as SpreadsheetML.
inline std::string workbook_of(const std::string& rows, const ZipParts& more = {}) {
  ZipParts parts{
      {"xl/workbook.xml",
       "<workbook xmlns:r='r'><sheets><sheet name='Range' sheetId='1' r:id='rId1'/></sheets>"
       "</workbook>"},
      {"xl/_rels/workbook.xml.rels",
       "<Relationships><Relationship Id='rId1' Type='http://x/worksheet' "
       "Target='worksheets/sheet1.xml'/></Relationships>"},
      {"xl/worksheets/sheet1.xml", "<worksheet><sheetData>" + rows + "</sheetData></worksheet>"}};
  parts.insert(parts.end(), more.begin(), more.end());
  return zip_of(parts);
}

}  // namespace rangebook
