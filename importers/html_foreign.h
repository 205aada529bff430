// Which language an HTML page speaks at a point: HTML, or SVG and MathML inside it. There, style
// and title are no raw text and CDATA sections exist.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// Follows svg and math elements and the places inside them where HTML is allowed again. Only
/// those are remembered, no tree: HTML that is mis-nested inside such a place is not untangled. An
/// end tag of an HTML element leaves SVG and MathML, as it does where it closes one around them.
class ForeignContent {
 public:
  /// True between svg or math tags, where foreign rules hold.
  bool active() const { return !open_.empty() && !open_.back().html; }
  /// True when nothing needs to be followed.
  bool idle() const { return open_.empty(); }

  /// `inside` is the text between the tag's name and its ">". True when the tag is an HTML one.
  bool start_tag(std::string_view name, std::string_view inside);
  void end_tag(std::string_view name);

 private:
  struct Open {
    std::string name;  ///< lower case
    bool math = false;
    bool html = false;       ///< HTML stands inside
    bool only_text = false;  ///< of those, MathML text: mglyph and malignmark stay MathML
  };
  bool is_html_here(std::string_view name) const;
  void push(std::string_view name, std::string_view inside);
  void leave();

  std::vector<Open> open_;
};

}  // namespace rangebook
