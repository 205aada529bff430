// Escaping and balance of HTML.
#include "reports/html_writer.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "reports/utf8.h"
#include "schema/error.h"

namespace rangebook {
namespace {

constexpr std::array<std::string_view, 10> kUrlAttributes{
    "href",   "src",  "action",     "formaction", "cite",
    "poster", "data", "background", "xlink:href", "srcset"};

/// Elements that start on a line of their own, to keep the source readable.
constexpr std::array<std::string_view, 30> kBlocks{
    "html",   "head",       "body",  "header", "main",  "footer",  "nav",     "section",
    "h1",     "h2",         "h3",    "p",      "ol",    "ul",      "li",      "dl",
    "div",    "table",      "thead", "tbody",  "tr",    "caption", "details", "summary",
    "figure", "figcaption", "svg",   "meta",   "title", "style"};

constexpr std::size_t kBytes = 256;

/// Names to look for in every tag: most that are asked for differ from all of
/// them in length, first or last letter.
template <std::size_t N>
class NameSet {
 public:
  constexpr explicit NameSet(const std::array<std::string_view, N>& names) : names_(names) {
    for (const std::string_view name : names) begins_.at(place(name)) = true;
  }
  bool contains(std::string_view name) const {
    return begins_[place(name)] && std::find(names_.begin(), names_.end(), name) != names_.end();
  }

 private:
  static constexpr std::size_t place(std::string_view name) {
    constexpr std::size_t kPrime = 31;
    if (name.empty()) return 0;
    const std::size_t first = static_cast<unsigned char>(name.front());
    const std::size_t last = static_cast<unsigned char>(name.back());
    return ((name.size() * kPrime + first) * kPrime + last) % kBytes;
  }

  std::array<std::string_view, N> names_;
  std::array<bool, kBytes> begins_{};
};
constexpr NameSet kUrlNames(kUrlAttributes);
constexpr NameSet kBlockNames(kBlocks);

bool is_lower(char sign) { return sign >= 'a' && sign <= 'z'; }
bool is_capital(char sign) { return sign >= 'A' && sign <= 'Z'; }
bool is_letter(char sign) { return is_lower(sign) || is_capital(sign); }
bool is_digit(char sign) { return sign >= '0' && sign <= '9'; }

bool is_name(std::string_view name) {
  return !name.empty() && std::all_of(name.begin(), name.end(), [](char sign) {
    return is_letter(sign) || is_digit(sign) || sign == '-' || sign == ':';
  });
}

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& sign : out) {
    if (is_capital(sign)) sign = static_cast<char>(sign - 'A' + 'a');
  }
  return out;
}

/// What stands in for a byte; empty for those that stand for themselves.
std::string_view replacement(char sign, bool quotes) {
  if (sign == '&') return "&amp;";
  if (sign == '<') return "&lt;";
  if (sign == '>') return "&gt;";
  if (quotes && sign == '"') return "&quot;";
  if (quotes && sign == '\'') return "&#39;";
  const auto byte = static_cast<unsigned char>(sign);
  if ((byte < 0x20 && sign != '\n' && sign != '\t') || byte == 0x7F) return kReplacement;
  return {};
}

constexpr std::array<bool, kBytes> plain_bytes() {
  std::array<bool, kBytes> plain{};
  for (unsigned char byte = 0x20; byte < 0x7F; ++byte) plain.at(byte) = true;
  for (const char sign : {'&', '<', '>', '"', '\''}) {
    plain.at(static_cast<unsigned char>(sign)) = false;
  }
  return plain;
}
constexpr auto kPlain = plain_bytes();

/// Bytes from the start that stand for themselves everywhere: almost all of a page.
std::size_t plain_prefix(std::string_view text) {
  const auto special = std::find_if(text.begin(), text.end(), [](char sign) {
    return !kPlain[static_cast<unsigned char>(sign)];
  });
  return static_cast<std::size_t>(special - text.begin());
}

/// U+0080 to U+009F have no place in a page.
bool is_c1_control(std::string_view character) {
  return character.size() == 2 && character[0] == '\xC2' &&
         static_cast<unsigned char>(character[1]) < 0xA0;
}

}  // namespace

bool is_safe_url(std::string_view url) {
  const bool clean = std::all_of(url.begin(), url.end(), [](char sign) {
    return static_cast<unsigned char>(sign) > 0x20 && sign != 0x7F && sign != '\\';
  });
  if (url.empty() || !clean) return false;
  const auto colon = url.find(':');
  const auto path = url.find_first_of("/?#");
  if (colon == std::string_view::npos || path < colon) return !url.starts_with("//");
  const std::string scheme = lower(url.substr(0, colon));
  return scheme == "http" || scheme == "https" || scheme == "mailto";
}

HtmlWriter::Scope HtmlWriter::in(std::string_view tag, HtmlAttributes attributes) {
  open(tag, attributes);
  return Scope(*this);
}

void HtmlWriter::open(std::string_view tag, HtmlAttributes attributes) {
  start_tag(tag, attributes);
  open_.push_back(tag);
}

void HtmlWriter::close() {
  if (open_.empty()) return;
  out_ += "</";
  out_ += open_.back();
  out_ += '>';
  open_.pop_back();
}

void HtmlWriter::element(std::string_view tag, HtmlAttributes attributes,
                         std::string_view content) {
  open(tag, attributes);
  text(content);
  close();
}

void HtmlWriter::single(std::string_view tag, HtmlAttributes attributes) {
  start_tag(tag, attributes);
  const bool in_svg = std::find(open_.begin(), open_.end(), "svg") != open_.end();
  if (!in_svg) return;
  out_.back() = '/';
  out_ += '>';
}

void HtmlWriter::text(std::string_view content) { escaped(content, false); }

void HtmlWriter::stylesheet(std::string_view css) {
  if (css.find("</") != std::string_view::npos) throw Error("a style sheet must not hold markup");
  open("style");
  out_ += css;
  close();
}

void HtmlWriter::script(std::string_view code) {
  if (code.find("</") != std::string_view::npos || code.find("<!--") != std::string_view::npos) {
    throw Error("a script must not hold markup");
  }
  out_ += "\n<script>";
  out_ += code;
  out_ += "</script>";
}

void HtmlWriter::script_at(std::string_view address) {
  if (!address.starts_with('/') || !is_safe_url(address)) {
    throw Error("a script must be our own: " + std::string(address));
  }
  out_ += "\n<script defer";
  attribute({"src", address});
  out_ += "></script>";
}

std::string HtmlWriter::take() {
  while (!open_.empty()) close();
  out_ += '\n';
  return std::move(out_);
}

void HtmlWriter::start_tag(std::string_view tag, HtmlAttributes attributes) {
  if (!is_name(tag) || tag == "script") {
    throw Error("rangebook does not write the element " + std::string(tag));
  }
  if (!out_.empty() && kBlockNames.contains(tag)) out_ += '\n';
  out_ += '<';
  out_ += tag;
  for (const HtmlAttribute& each : attributes) attribute(each);
  out_ += '>';
}

void HtmlWriter::attribute(const HtmlAttribute& each) {
  const bool is_small = std::none_of(each.name.begin(), each.name.end(), is_capital);
  const std::string lowered = is_small ? std::string{} : lower(each.name);
  const std::string_view name = is_small ? each.name : std::string_view(lowered);
  if (!is_name(name) || name.starts_with("on") || name == "style") {
    throw Error(fmt::format("rangebook does not write the attribute {}", name));
  }
  if (each.value.empty() && (name == "class" || name == "id" || name == "aria-label")) return;
  if (kUrlNames.contains(name) && !is_safe_url(each.value)) return;
  out_ += ' ';
  out_ += each.name;
  out_ += "=\"";
  escaped(each.value, true);
  out_ += '"';
}

void HtmlWriter::escaped(std::string_view content, bool quotes) {
  while (!content.empty()) {
    const std::size_t plain = plain_prefix(content);
    out_ += content.substr(0, plain);
    content.remove_prefix(plain);
    if (content.empty()) break;
    const Utf8Step step = utf8_step(content);
    const std::string_view character = content.substr(0, step.bytes);
    const auto instead = step.bytes == 1 ? replacement(character[0], quotes) : std::string_view{};
    if (!step.valid || is_c1_control(character)) {
      out_ += kReplacement;
    } else {
      out_ += instead.empty() ? character : instead;
    }
    content.remove_prefix(step.bytes);
  }
}

}  // namespace rangebook
