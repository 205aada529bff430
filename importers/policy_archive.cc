// The page's part, decoded; places in it as places in the file.
#include "importers/policy_archive.h"

#include <fmt/format.h>

#include <utility>

#include "importers/document_kind.h"
#include "importers/mhtml_page.h"
#include "importers/mime_body.h"
#include "importers/policy_text.h"

namespace rangebook {
namespace {

DocumentFault unreadable(std::string what) {
  return {RejectionKind::unreadable_document, std::move(what),
          "Open the page in the browser and save it as \"Web page, HTML only\"."};
}

}  // namespace

bool is_policy_archive(std::string_view document) {
  return kind_of(document.substr(0, kKindBytes)) == DocumentKind::mail;
}

std::variant<TermsReading, DocumentFault> read_policy_archive(std::string_view document,
                                                              const TermsContext& context) {
  auto read = read_mime(document);
  if (auto* fault = std::get_if<DocumentFault>(&read)) return std::move(*fault);
  const auto& archive = std::get<MimeDocument>(read);
  const MimePart* page = find_page_part(archive);
  if (page == nullptr) {
    return unreadable(fmt::format("None of its {} parts is an HTML page.", archive.parts.size()));
  }
  const auto body = MimeBody::decode(page->body, page->encoding);
  if (!body) return unreadable("Its page is in a transfer encoding that is not known.");
  auto reading = read_policy(body->text(), context, page->charset);
  const auto begin = static_cast<std::uint64_t>(page->body.data() - document.data());
  const auto place = [&](std::uint64_t& byte) { byte = begin + body->encoded_place(byte); };
  for (auto& [field, evidence] : reading.terms.evidence) place(evidence.byte);
  for (auto& doubt : reading.doubts) place(doubt.evidence.byte);
  return reading;
}

}  // namespace rangebook
