// Signatures of file formats as their own documents publish them (PNG, JPEG, GIF, PDF, ZIP, OLE2,
// gzip, SQLite, RIFF).
#include "importers/document_kind.h"

#include <algorithm>
#include <array>

#include "importers/byte_search.h"
#include "importers/text_encoding.h"

namespace rangebook {
namespace {

using namespace std::string_view_literals;

struct Signature {
  std::string_view bytes;
  DocumentKind kind;
};
constexpr std::array<Signature, 13> kSignatures{{
    {"PK\x03\x04"sv, DocumentKind::zip},
    {"PK\x05\x06"sv, DocumentKind::zip},
    {"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"sv, DocumentKind::old_workbook},
    {"%PDF-"sv, DocumentKind::pdf},
    {"\x89PNG\r\n\x1A\n"sv, DocumentKind::picture},
    {"\xFF\xD8\xFF"sv, DocumentKind::picture},
    {"GIF8"sv, DocumentKind::picture},
    {"RIFF"sv, DocumentKind::picture},
    {"\x1F\x8B"sv, DocumentKind::other},
    {"SQLite format 3\0"sv, DocumentKind::other},
    {"7z\xBC\xAF\x27\x1C"sv, DocumentKind::other},
    {"Rar!\x1A\x07"sv, DocumentKind::other},
    {"\x7F"
     "ELF"sv,
     DocumentKind::other},
}};

bool starts_with_word(std::string_view text, std::string_view word) {
  if (text.size() < word.size()) return false;
  return std::equal(word.begin(), word.end(), text.begin(),
                    [](char a, char b) { return a == ascii_lower(b); });
}

/// Past blanks, comments and the XML declaration: what the first element is.
DocumentKind markup_kind(std::string_view text) {
  const bool declared = starts_with_word(text, "<?xml");
  while (true) {
    const std::size_t open = text.find('<');
    if (open == text.npos) break;
    text.remove_prefix(open);
    if (starts_with_word(text, "<!doctype html") || starts_with_word(text, "<html")) {
      return DocumentKind::page;
    }
    const bool skipped = starts_with_word(text, "<?") || starts_with_word(text, "<!");
    if (!skipped) break;
    const std::string_view end = starts_with_word(text, "<!--") ? "-->"sv : ">"sv;
    const std::size_t at = text.find(end);
    if (at == text.npos) break;
    text.remove_prefix(at + end.size());
  }
  constexpr std::array<std::string_view, 6> kHtml{"<head",   "<body", "<div",
                                                  "<script", "<main", "<meta"};
  const bool html = std::any_of(kHtml.begin(), kHtml.end(),
                                [&](auto word) { return starts_with_word(text, word); });
  return html && !declared ? DocumentKind::page : DocumentKind::xml;
}

bool looks_like_mail(std::string_view head) {
  constexpr std::array<std::string_view, 5> kHeaders{
      "mime-version:", "from:", "content-type:", "snapshot-content-location:", "date:"};
  const bool header = std::any_of(kHeaders.begin(), kHeaders.end(),
                                  [&](auto word) { return starts_with_word(head, word); });
  return header && head.find("multipart/related") != head.npos;
}

/// An object or array, not a table whose first cell opens with a bracket.
bool looks_like_json(std::string_view text) {
  const char first = text.front();
  if (first != '{' && first != '[') return false;
  text.remove_prefix(1);
  while (!text.empty() && is_html_space(text.front())) text.remove_prefix(1);
  if (text.empty()) return false;
  const std::string_view wanted = first == '{' ? "\"}"sv : "{[\"]-0123456789tfn"sv;
  return wanted.find(text.front()) != wanted.npos;
}

}  // namespace

DocumentKind kind_of(std::string_view head) {
  head = head.substr(0, kKindBytes);
  for (const auto& signature : kSignatures) {
    if (head.starts_with(signature.bytes)) return signature.kind;
  }
  const auto proven = proven_encoding(head);
  if (proven) head.remove_prefix(proven->mark_bytes);
  if (proven && !proven->is_utf8()) return DocumentKind::text;
  if (is_binary(head)) return DocumentKind::other;
  while (!head.empty() && is_html_space(head.front())) head.remove_prefix(1);
  if (head.empty()) return DocumentKind::text;
  if (head.front() == '<') return markup_kind(head);
  if (looks_like_mail(head)) return DocumentKind::mail;
  return looks_like_json(head) ? DocumentKind::json : DocumentKind::text;
}

std::string_view spoken(DocumentKind kind) {
  switch (kind) {
    case DocumentKind::text:
      return "a text";
    case DocumentKind::page:
      return "a page";
    case DocumentKind::mail:
      return "a page saved as one file (MHTML)";
    case DocumentKind::json:
      return "JSON";
    case DocumentKind::xml:
      return "XML";
    case DocumentKind::zip:
      return "a zip archive or a workbook";
    case DocumentKind::old_workbook:
      return "an old workbook (.xls) or one with a password";
    case DocumentKind::pdf:
      return "a PDF";
    case DocumentKind::picture:
      return "a picture";
    case DocumentKind::other:
      return "a binary file";
  }
  return "a file";
}

}  // namespace rangebook
