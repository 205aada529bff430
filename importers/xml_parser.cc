// The calls expat makes, turned into events.
#include "importers/xml_parser.h"

#include <expat.h>
#include <fmt/format.h>

#include "schema/error.h"

namespace rangebook {

std::string_view local_name(std::string_view name) {
  const std::size_t colon = name.rfind(':');
  return colon == name.npos ? name : name.substr(colon + 1);
}

std::optional<std::string_view> XmlAttributes::find(std::string_view name) const {
  for (const auto& attribute : all_) {
    if (local_name(attribute.name) == name) return attribute.value;
  }
  return std::nullopt;
}

/// Static functions with the signatures of expat.
struct XmlParser::Calls {
  static void XMLCALL start(void* self, const char* name, const char** attributes) {
    auto& parser = *static_cast<XmlParser*>(self);
    if (!parser.problem_.empty()) return;
    if (++parser.depth_ > kMaxXmlDepth) {
      parser.stop(fmt::format("elements are nested more than {} deep", kMaxXmlDepth));
      return;
    }
    parser.attributes_.clear();
    for (; *attributes != nullptr; attributes += 2) {
      parser.attributes_.push_back({attributes[0], attributes[1]});
    }
    parser.events_.start(local_name(name), XmlAttributes(parser.attributes_));
  }
  static void XMLCALL end(void* self, const char* name) {
    auto& parser = *static_cast<XmlParser*>(self);
    if (!parser.problem_.empty()) return;
    --parser.depth_;
    parser.events_.end(local_name(name));
  }
  static void XMLCALL text(void* self, const char* text, int length) {
    auto& parser = *static_cast<XmlParser*>(self);
    if (!parser.problem_.empty()) return;
    parser.events_.text({text, static_cast<std::size_t>(length)});
  }
  static void XMLCALL document_type(void* self, const char*, const char*, const char*, int) {
    static_cast<XmlParser*>(self)->stop(
        "it has a document type (DOCTYPE), which feeds do not need");
  }
};

void XmlParser::Free::operator()(XML_ParserStruct* parser) const { XML_ParserFree(parser); }

XmlParser::XmlParser(XmlEvents& events) : events_(events), parser_(XML_ParserCreate("UTF-8")) {
  if (!parser_) throw Error("expat cannot be started: out of memory.");
  XML_SetUserData(parser_.get(), this);
  XML_SetElementHandler(parser_.get(), &Calls::start, &Calls::end);
  XML_SetCharacterDataHandler(parser_.get(), &Calls::text);
  XML_SetStartDoctypeDeclHandler(parser_.get(), &Calls::document_type);
}

XmlParser::~XmlParser() = default;

std::uint64_t XmlParser::line() const { return XML_GetCurrentLineNumber(parser_.get()); }

std::uint64_t XmlParser::byte() const {
  const auto at = XML_GetCurrentByteIndex(parser_.get());
  return at < 0 ? 0 : static_cast<std::uint64_t>(at);
}

bool XmlParser::feed(std::string_view piece, bool last) {
  // expat counts in int.
  constexpr std::size_t kPiece = std::size_t{1} << 20U;
  while (problem_.empty()) {
    const std::string_view part = piece.substr(0, kPiece);
    piece.remove_prefix(part.size());
    const bool ends = last && piece.empty();
    if (XML_Parse(parser_.get(), part.data(), static_cast<int>(part.size()),
                  static_cast<int>(ends)) != XML_STATUS_OK &&
        problem_.empty()) {
      problem_ =
          fmt::format("{} in line {}", XML_ErrorString(XML_GetErrorCode(parser_.get())), line());
    }
    if (piece.empty()) break;
  }
  return problem_.empty();
}

void XmlParser::stop(std::string problem) {
  problem_ = std::move(problem);
  XML_StopParser(parser_.get(), XML_FALSE);
}

}  // namespace rangebook
