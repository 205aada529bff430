// A worklist of parts within parts, in the order of the document.
#include "importers/mime_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "importers/byte_search.h"
#include "importers/gmime_handles.h"
#include "importers/utf8.h"
#include "importers/utf8_sequence.h"

namespace rangebook {
namespace {

constexpr std::size_t kMaxBoundaryBytes = 70;  // RFC 2046, section 5.1.1
constexpr std::string_view kSaveAgain =
    "Save the page again, as \"Web page, HTML only\" if the browser offers it.";

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(), ascii_lower);
  return text;
}

/// A text in which no blank means anything: an address may be folded over lines.
std::string without_white_space(std::string text) {
  std::erase_if(text, is_html_space);
  return text;
}

DocumentFault fault(RejectionKind kind, std::string what) {
  return {kind, std::move(what), std::string(kSaveAgain)};
}

/// What stands before the first empty line, and what behind it.
struct HeaderAndBody {
  std::string_view header;
  std::string_view body;
};

HeaderAndBody split_header(std::string_view entity) {
  std::size_t line = 0;
  while (line < entity.size()) {
    const std::size_t end = std::min(entity.find('\n', line), entity.size());
    const auto text = entity.substr(line, end - line);
    const std::size_t next = std::min(end + 1, entity.size());
    if (text.empty() || text == "\r") return {entity.substr(0, line), entity.substr(next)};
    if (line > kMaxMimeHeaderBytes) break;
    line = next;
  }
  return {entity, {}};
}

/// The fields of a header that matter here.
struct Header {
  MimePart part;
  std::string boundary;
  std::string start;
  std::string whole_location;
  bool multipart = false;
};

std::string field(GMimeObject* object, const char* name) {
  return well_formed(text_of(g_mime_object_get_header(object, name)));
}

Header read_header(std::string_view text) {
  start_gmime();
  const std::string ended = std::string(text) + "\n\n";
  const GObjectHandle<GMimeStream> stream(
      g_mime_stream_mem_new_with_buffer(ended.data(), ended.size()));
  const GObjectHandle<GMimeParser> parser(g_mime_parser_new_with_stream(stream.get()));
  const GObjectHandle<GMimeObject> object(g_mime_parser_construct_part(parser.get(), nullptr));
  Header header;
  if (!object) return header;
  GMimeContentType* type = g_mime_object_get_content_type(object.get());
  const auto parameter = [type](const char* name) {
    return well_formed(text_of(g_mime_content_type_get_parameter(type, name)));
  };
  MimePart& part = header.part;
  part.type = lower(well_formed(take_text(g_mime_content_type_get_mime_type(type))));
  part.charset = parameter("charset");
  part.encoding = lower(without_white_space(field(object.get(), "Content-Transfer-Encoding")));
  part.id = well_formed(text_of(g_mime_object_get_content_id(object.get())));
  part.location = without_white_space(field(object.get(), "Content-Location"));
  header.boundary = text_of(g_mime_content_type_get_parameter(type, "boundary"));
  header.start = parameter("start");
  header.whole_location = without_white_space(field(object.get(), "Snapshot-Content-Location"));
  header.multipart = part.type.starts_with("multipart/");
  return header;
}

/// A delimiter line: where it begins, with the line end before it, and where the next part begins.
struct Delimiter {
  std::size_t begin = 0;
  std::size_t end = 0;
  bool last = false;
};

/// The line end before a line that begins at `at` belongs to a delimiter there.
std::size_t before_line_end(std::string_view body, std::size_t at, std::size_t from) {
  if (at > from && body[at - 1] == '\n') --at;
  if (at > from && body[at - 1] == '\r') --at;
  return at;
}

/// Looks at the beginning of each line once, so that no body can make this slow.
std::optional<Delimiter> find_delimiter(std::string_view body, std::string_view dashed,
                                        std::size_t from) {
  for (std::size_t at = from; at < body.size();) {
    const std::size_t line_end = std::min(body.find('\n', at), body.size());
    std::string_view line = body.substr(at, line_end - at);
    const std::size_t next = std::min(line_end + 1, body.size());
    if (line.starts_with(dashed)) {
      line.remove_prefix(dashed.size());
      const bool last = line.starts_with("--");
      if (last) line.remove_prefix(2);
      // Anything else behind it: another, longer boundary.
      if (std::all_of(line.begin(), line.end(), is_html_space)) {
        return Delimiter{.begin = before_line_end(body, at, from), .end = next, .last = last};
      }
    }
    at = next;
  }
  return std::nullopt;
}

/// A part still to be looked into.
struct Entity {
  std::string_view text;
  std::size_t depth = 0;
  bool cut_short = false;
};

class MimeReader {
 public:
  explicit MimeReader(std::string_view document) { waiting_.push_back({.text = document}); }

  std::variant<MimeDocument, DocumentFault> read() {
    while (!waiting_.empty()) {
      const Entity entity = waiting_.back();
      waiting_.pop_back();
      if (auto problem = take(entity)) return std::move(*problem);
    }
    return std::move(found_);
  }

 private:
  std::optional<DocumentFault> take(const Entity& entity) {
    const auto [text, body] = split_header(entity.text);
    if (text.size() > kMaxMimeHeaderBytes) {
      return fault(
          RejectionKind::over_limit,
          fmt::format("A header in the file is longer than {} KiB.", kMaxMimeHeaderBytes >> 10U));
    }
    if (++seen_ > kMaxMimeParts) {
      return fault(RejectionKind::over_limit,
                   fmt::format("The file consists of more than {} parts.", kMaxMimeParts));
    }
    Header header = read_header(text);
    if (entity.depth == 0) {
      found_.location =
          header.whole_location.empty() ? header.part.location : header.whole_location;
    }
    if (header.multipart) return open(header, body, entity);
    header.part.body = body;
    header.part.cut_short = entity.cut_short;
    found_.parts.push_back(std::move(header.part));
    return std::nullopt;
  }

  std::optional<DocumentFault> open(const Header& header, std::string_view body,
                                    const Entity& entity) {
    if (entity.depth == kMaxMimeDepth) {
      return fault(
          RejectionKind::over_limit,
          fmt::format("The parts of the file are nested more than {} deep.", kMaxMimeDepth));
    }
    if (header.boundary.empty() || header.boundary.size() > kMaxBoundaryBytes) {
      return fault(RejectionKind::unreadable_document,
                   "The file is to consist of parts, but does not say what stands between them "
                   "(it states no usable boundary).");
    }
    if (found_.start.empty()) found_.start = header.start;
    auto inside = split(body, "--" + header.boundary, entity.depth + 1);
    if (inside.empty()) {
      return fault(RejectionKind::unreadable_document,
                   fmt::format("The file is to consist of parts, but no line \"--{}\" begins one: "
                               "it is cut short or damaged.",
                               excerpt_of(well_formed(header.boundary), kExcerptBytes)));
    }
    waiting_.insert(waiting_.end(), inside.rbegin(), inside.rend());
    return std::nullopt;
  }

  /// At most one part more than is allowed: the limit speaks when it is taken.
  static std::vector<Entity> split(std::string_view body, std::string_view dashed,
                                   std::size_t depth) {
    std::vector<Entity> inside;
    auto at = find_delimiter(body, dashed, 0);
    while (at && !at->last && inside.size() <= kMaxMimeParts) {
      const auto next = find_delimiter(body, dashed, at->end);
      const std::size_t end = next ? next->begin : body.size();
      inside.push_back({.text = body.substr(at->end, end - std::min(at->end, end)),
                        .depth = depth,
                        .cut_short = !next});
      at = next;
    }
    return inside;
  }

  MimeDocument found_;
  std::vector<Entity> waiting_;
  std::size_t seen_ = 0;
};

}  // namespace

std::variant<MimeDocument, DocumentFault> read_mime(std::string_view document) {
  while (!document.empty() && is_html_space(document.front())) document.remove_prefix(1);
  return MimeReader(document).read();
}

}  // namespace rangebook
