// libarchive both ways.
#include "demo-feeds/archive.h"

#include <archive.h>
#include <archive_entry.h>

#include <charconv>
#include <chrono>
#include <stdexcept>

namespace demo {
namespace {

la_ssize_t append(archive* /*writer*/, void* out, const void* bytes, std::size_t size) {
  static_cast<std::string*>(out)->append(static_cast<const char*>(bytes), size);
  return static_cast<la_ssize_t>(size);
}

std::string contents(archive* reader) {
  std::string text;
  char buffer[4096];
  for (la_ssize_t got = 1; got > 0;) {
    got = archive_read_data(reader, buffer, sizeof buffer);
    if (got > 0) text.append(buffer, static_cast<std::size_t>(got));
  }
  return text;
}

}  // namespace

std::time_t midnight(const std::string& date) {
  const auto number = [&](std::size_t at, std::size_t size) {
    int value = 0;
    std::from_chars(date.data() + at, date.data() + at + size, value);
    return value;
  };
  const std::chrono::month month{static_cast<unsigned>(number(5, 2))};
  const std::chrono::day of_month{static_cast<unsigned>(number(8, 2))};
  const std::chrono::sys_days day{std::chrono::year{number(0, 4)} / month / of_month};
  return std::chrono::system_clock::to_time_t(day);
}

std::string zip_of(const std::map<std::string, std::string>& files, std::time_t time) {
  std::string bytes;
  archive* writer = archive_write_new();
  archive_write_set_format_zip(writer);
  archive_write_set_bytes_in_last_block(writer, 1);
  if (archive_write_open(writer, &bytes, nullptr, append, nullptr) != ARCHIVE_OK) {
    throw std::runtime_error("cannot write an archive");
  }
  for (const auto& [path, text] : files) {
    archive_entry* entry = archive_entry_new();
    archive_entry_set_pathname(entry, path.c_str());
    archive_entry_set_size(entry, static_cast<la_int64_t>(text.size()));
    archive_entry_set_filetype(entry, AE_IFREG);
    archive_entry_set_perm(entry, 0644);
    archive_entry_set_mtime(entry, time, 0);
    archive_write_header(writer, entry);
    archive_write_data(writer, text.data(), text.size());
    archive_entry_free(entry);
  }
  archive_write_close(writer);
  archive_write_free(writer);
  return bytes;
}

std::map<std::string, std::string> unzipped(const std::string& bytes) {
  std::map<std::string, std::string> files;
  archive* reader = archive_read_new();
  archive_read_support_format_zip(reader);
  if (archive_read_open_memory(reader, bytes.data(), bytes.size()) == ARCHIVE_OK) {
    archive_entry* entry = nullptr;
    while (archive_read_next_header(reader, &entry) == ARCHIVE_OK) {
      const std::string path = archive_entry_pathname(entry);
      files[path] = contents(reader);
    }
  }
  archive_read_free(reader);
  return files;
}

}  // namespace demo
