// The first bytes of a document against the tables of the WHATWG MIME sniffing standard.
#include "importers/page_sniff.h"

#include <algorithm>
#include <array>

#include "importers/html_tag.h"
#include "importers/page_encoding.h"
#include "importers/page_reader.h"

namespace rangebook {
namespace {

// Section 7.1: each must be followed by a space or ">".
constexpr auto kPageTags = std::to_array<std::string_view>(
    {"<!doctype html", "<html", "<head", "<script", "<iframe", "<h1", "<div", "<font", "<table",
     "<a", "<style", "<title", "<b", "<body", "<br", "<p", "<meta", "<link", "<base"});

constexpr std::size_t kSniffedBytes = 4096;

bool begins_with_tag(std::string_view text, std::string_view tag) {
  if (text.size() <= tag.size() || !equals_ignoring_case(text.substr(0, tag.size()), tag)) {
    return false;
  }
  return is_html_space(text[tag.size()]) || text[tag.size()] == '>';
}

std::string_view behind_space(std::string_view text) {
  while (!text.empty() && is_html_space(text.front())) text.remove_prefix(1);
  return text;
}

bool contains_page_tag(std::string_view text) {
  for (auto at = text.find('<'); at != text.npos; at = text.find('<', at + 1)) {
    if (begins_with_tag(text.substr(at), "<html")) return true;
  }
  return false;
}

// ASCII of a text in UTF-16, enough to see its first tags.
std::string without_zero_bytes(std::string_view text) {
  std::string out(text.substr(0, kSniffedBytes));
  std::erase(out, '\0');
  return out;
}

// "Binary data bytes" of the standard, section 3, with the NUL that broken pages contain.
bool is_binary_byte(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte <= 0x08 || byte == 0x0B || (byte >= 0x0E && byte <= 0x1A) ||
         (byte >= 0x1C && byte <= 0x1F);
}

struct Signature {
  std::string_view bytes;
  WrongDocument wrong;
};

constexpr std::string_view kSavePage =
    "Open the page in the browser and save it as \"Web page, HTML only\".";
constexpr WrongDocument kWebArchive{
    "The document is a web archive (MHTML), from which browsers leave out the product markup.",
    kSavePage};
constexpr auto kSignatures = std::to_array<Signature>(
    {{"%PDF-", {"The document is a PDF, not an HTML page.", kSavePage}},
     {"PK\x03\x04",
      {"The document is a zip archive or a workbook, not an HTML page.",
       "Unpack it and capture the files inside."}},
     {"\x1F\x8B", {"The document is compressed with gzip, not an HTML page.", "Unpack it first."}},
     {"\x89PNG", {"The document is a picture, not an HTML page.", kSavePage}},
     {"\xFF\xD8\xFF", {"The document is a picture, not an HTML page.", kSavePage}},
     {"GIF8", {"The document is a picture, not an HTML page.", kSavePage}},
     {"RIFF", {"The document is a picture or a sound, not an HTML page.", kSavePage}},
     {"SQLite format 3", {"The document is a database, not an HTML page.", kSavePage}},
     {"From: <", kWebArchive},
     {"MIME-Version:", kWebArchive}});

bool is_mostly_binary(std::string_view head) {
  constexpr std::ptrdiff_t kTolerated = 16;  // one in so many bytes
  const auto binary = std::count_if(head.begin(), head.end(), is_binary_byte);
  return binary * kTolerated > static_cast<std::ptrdiff_t>(head.size());
}

}  // namespace

bool looks_like_page(std::string_view first_bytes) {
  const std::string utf16 =
      find_encoding(first_bytes.substr(0, 4), "x").starts_with("UTF-16")
          ? without_zero_bytes(first_bytes.substr(byte_order_mark(first_bytes)))
          : "";
  const std::string_view text =
      behind_space(utf16.empty() ? first_bytes.substr(byte_order_mark(first_bytes)) : utf16);
  if (text.starts_with("<!--") || text.starts_with("<?xml")) return contains_page_tag(text);
  return std::any_of(kPageTags.begin(), kPageTags.end(),
                     [&](std::string_view tag) { return begins_with_tag(text, tag); });
}

WrongDocument wrong_document(std::string_view document) {
  if (document.empty()) return {"The document is empty.", "Save the page again."};
  for (const auto& signature : kSignatures) {
    if (document.starts_with(signature.bytes)) return signature.wrong;
  }
  const bool utf16 = find_encoding(document.substr(0, 4), "x").starts_with("UTF-16");
  if (!utf16 && is_mostly_binary(document.substr(0, kSniffedBytes))) {
    return {"The document is binary data, not an HTML page.", kSavePage};
  }
  return {};
}

}  // namespace rangebook
