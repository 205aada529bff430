// The one place where HTML is written. Text, attributes and addresses are escaped by what they
// are; there is no way to write raw markup, so nothing a shop writes can become part of the page.
#pragma once

#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// An attribute. Names are ours; values may hold anything.
struct HtmlAttribute {
  std::string_view name;
  std::string_view value;
};
using HtmlAttributes = std::initializer_list<HtmlAttribute>;

/// Writes a balanced tree of elements. Tag and attribute names are constants of ours; a name that
/// is not made of letters, digits, `-` and `:` is a defect in rangebook and throws Error, as do
/// event handlers (`on...`) and inline `style`. Addresses (`href`, `src`, `action`, ...) are kept
/// only when `is_safe_url` says so; otherwise the attribute is left out, as is an empty `class`,
/// `id` or `aria-label`. Bytes that are not UTF-8
/// and control characters become U+FFFD.
class HtmlWriter {
 public:
  /// Closes its element when it goes out of scope.
  class Scope {
   public:
    explicit Scope(HtmlWriter& writer) : writer_(writer) {}
    ~Scope() { writer_.close(); }
    Scope(const Scope&) = delete;
    Scope& operator=(const Scope&) = delete;

   private:
    HtmlWriter& writer_;
  };

  /// Makes room for a page of about so many bytes.
  void reserve(std::size_t bytes) { out_.reserve(bytes); }
  /// Writes `<!DOCTYPE html>`.
  void doctype() { out_ += "<!DOCTYPE html>"; }
  /// An element for the rest of the scope: `const auto row = html.in("tr");`.
  [[nodiscard]] Scope in(std::string_view tag, HtmlAttributes attributes = {});
  void open(std::string_view tag, HtmlAttributes attributes = {});
  void close();
  /// An element with nothing but text in it.
  void element(std::string_view tag, HtmlAttributes attributes, std::string_view content);
  /// `<meta>`, `<br>`, `<rect>`: an element without content.
  void single(std::string_view tag, HtmlAttributes attributes);
  void text(std::string_view content);
  /// A style sheet of our own; throws Error if it could end its own element.
  void stylesheet(std::string_view css);

  /// A script of our own, a constant; throws Error if it could end its own element.
  void script(std::string_view code);
  /// A script of our own that is served beside the page and runs when all of it is read; throws
  /// Error for an address that could be another server's.
  void script_at(std::string_view address);

  /// The page so far with all open elements closed; the writer is empty afterwards.
  std::string take();

 private:
  void start_tag(std::string_view tag, HtmlAttributes attributes);
  void attribute(const HtmlAttribute& each);
  void escaped(std::string_view content, bool quotes);

  std::string out_;
  std::vector<std::string_view> open_;
};

/// True for addresses a page may link to: `http`, `https`, `mailto`, a fragment, or a relative
/// path. Not for `javascript`, `data`, or anything hidden behind control characters (RFC 3986
/// section 3.1; browsers drop tabs and line breaks in addresses, so those are refused).
bool is_safe_url(std::string_view url);

}  // namespace rangebook
