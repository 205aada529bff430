// XML as a stream of events (expat), guarded: no document type, so no entities to expand, and no
// endless nesting.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

struct XML_ParserStruct;

namespace rangebook {

/// Deeper elements are refused.
inline constexpr std::size_t kMaxXmlDepth = 128;

struct XmlAttribute {
  std::string_view name;  ///< with its prefix
  std::string_view value;
};

/// Attributes of one element, valid during the event.
class XmlAttributes {
 public:
  explicit XmlAttributes(const std::vector<XmlAttribute>& all) : all_(all) {}
  /// The value of the attribute with this local name; nothing if there is none.
  std::optional<std::string_view> find(std::string_view local_name) const;
  auto begin() const { return all_.begin(); }
  auto end() const { return all_.end(); }

 private:
  const std::vector<XmlAttribute>& all_;
};

/// What a document does while it is read. Names are local: without `x:`.
class XmlEvents {
 public:
  virtual ~XmlEvents() = default;
  virtual void start(std::string_view name, const XmlAttributes& attributes) = 0;
  virtual void end(std::string_view name) = 0;
  virtual void text(std::string_view text) = 0;
};

class XmlParser {
 public:
  /// `events` must outlive this. Pieces are UTF-8, whatever the document declares.
  explicit XmlParser(XmlEvents& events);
  ~XmlParser();
  XmlParser(const XmlParser&) = delete;
  XmlParser& operator=(const XmlParser&) = delete;

  /// Hands on what the piece holds; false once the document cannot be read on.
  bool feed(std::string_view piece, bool last);
  /// What is wrong, with the line; empty while all is well.
  const std::string& problem() const { return problem_; }
  /// Of the event that is being told.
  std::uint64_t line() const;
  std::uint64_t byte() const;

 private:
  struct Calls;
  struct Free {
    void operator()(XML_ParserStruct* parser) const;
  };

  void stop(std::string problem);

  XmlEvents& events_;
  std::unique_ptr<XML_ParserStruct, Free> parser_;
  std::vector<XmlAttribute> attributes_;
  std::size_t depth_ = 0;
  std::string problem_;
};

/// Without a namespace prefix.
std::string_view local_name(std::string_view name);

}  // namespace rangebook
