// XML as a stream of events for the parts of workbooks, which programs write and whose cells run
// into millions: a scan over tags that checks their nesting and little else. Measured on a sheet of
// 300,000 rows, expat takes two thirds of the time of reading it, most of that for checks of names
// and attributes. What this scan does not know (other encodings, document types) it refuses.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "importers/xml_parser.h"

namespace rangebook {

/// A tag or a stretch of text is held as a whole; longer ones are refused.
inline constexpr std::size_t kMaxXmlToken = std::size_t{8} << 20U;

/// Where expat takes a document, this gives the same events (text may come in other pieces).
class XmlScan {
 public:
  /// `events` must outlive this. Pieces are UTF-8.
  explicit XmlScan(XmlEvents& events) : events_(events) {}

  /// Hands on what the piece holds; false once the document cannot be read on.
  bool feed(std::string_view piece, bool last);
  /// What is wrong; empty while all is well.
  const std::string& problem() const { return problem_; }

 private:
  enum class Step : std::uint8_t { done, need_more };

  void check_utf8(bool last);
  Step token(std::string_view rest, bool last);
  Step markup(std::string_view rest);
  Step skip_past(std::string_view rest, std::string_view end);
  Step section(std::string_view rest);
  Step tag(std::string_view rest);
  void start_tag(std::string_view inside);
  void end_tag(std::string_view name);
  bool read_attributes(std::string_view text);
  void tell_text(std::string_view text);
  std::string_view decoded(std::string_view text, bool attribute, std::string& out);
  bool append_reference(std::string_view name, std::string& out);
  void stop(std::string problem);

  XmlEvents& events_;
  std::string buffer_;
  std::size_t at_ = 0;
  std::size_t checked_ = 0;               ///< so much of the buffer is known to be UTF-8
  std::string open_;                      ///< names of open elements, one after the other
  std::vector<std::size_t> open_starts_;  ///< of each of them
  bool root_seen_ = false;
  std::vector<XmlAttribute> attributes_;
  std::vector<std::string> values_;  ///< attribute values that are not in the buffer as they read
  std::string text_;
  std::string problem_;
};

}  // namespace rangebook
