// What an XML reader tells, as text: for comparing two readers.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>

#include "importers/xml_parser.h"

namespace rangebook {

class TraceEvents final : public XmlEvents {
 public:
  void start(std::string_view name, const XmlAttributes& attributes) override {
    end_text();
    out.append("(").append(name);
    for (const auto& one : attributes) {
      out.append(" ").append(one.name).append("=").append(one.value);
    }
  }
  void end(std::string_view name) override {
    end_text();
    out.append(")").append(name);
  }
  void text(std::string_view text) override { text_ += text; }

  std::string out;

 private:
  void end_text() {
    if (!text_.empty()) out.append("[").append(text_).append("]");
    text_.clear();
  }

  std::string text_;
};

template <typename Reader>
std::string trace(std::string_view text, std::size_t piece) {
  TraceEvents events;
  Reader reader(events);
  for (; !text.empty(); text.remove_prefix(std::min(piece, text.size()))) {
    if (!reader.feed(text.substr(0, piece), false)) break;
  }
  if (!reader.feed({}, true)) return events.out + " problem: " + reader.problem();
  return events.out;
}

}  // namespace rangebook
