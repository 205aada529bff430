// One pass over a page from "<" to "<".
#include "importers/html_scan.h"

#include <algorithm>
#include <array>

#include "importers/char_refs.h"
#include "importers/html_foreign.h"
#include "importers/html_raw_text.h"
#include "importers/html_tag.h"

namespace rangebook {
namespace {

constexpr std::uint64_t operator""_tag(const char* text, std::size_t size) {
  return tag_key({text, size});
}

std::string_view trim(std::string_view text) {
  while (!text.empty() && is_html_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_html_space(text.back())) text.remove_suffix(1);
  return text;
}

// True when a script's type is JSON-LD, with or without parameters.
bool is_json_ld(std::string_view inside) {
  const auto type = find_attribute(inside, "type");
  if (!type) return false;
  const std::string decoded = decode_attribute(*type);
  const std::string_view text = decoded;
  return equals_ignoring_case(trim(text.substr(0, text.find(';'))), "application/ld+json");
}

// True when `name` is one of the space-separated words of `text`.
bool has_word(std::string_view text, std::string_view name) {
  while (!(text = trim(text)).empty()) {
    const auto end = std::find_if(text.begin(), text.end(), is_html_space);
    if (equals_ignoring_case({text.begin(), end}, name)) return true;
    text.remove_prefix(static_cast<std::size_t>(end - text.begin()));
  }
  return false;
}

void keep_first(std::optional<std::string>& slot, std::optional<std::string_view> raw) {
  if (raw && !slot) slot = trim(decode_attribute(*raw));
}

// The charset named by a content type such as `text/html; charset="utf-8"`.
std::optional<std::string_view> charset_of(std::string_view content) {
  const auto at = std::search(content.begin(), content.end(), std::string_view("charset").begin(),
                              std::string_view("charset").end(),
                              [](char a, char b) { return ascii_lower(a) == b; });
  if (at == content.end()) return std::nullopt;
  std::string_view rest = trim({at + 7, content.end()});
  if (rest.empty() || rest.front() != '=') return std::nullopt;
  rest = trim(rest.substr(1));
  if (!rest.empty() && (rest.front() == '"' || rest.front() == '\'')) {
    return rest.substr(1, rest.substr(1).find(rest.front()));
  }
  return rest.substr(0, rest.find_first_of("; \t\r\n\f"));
}

// Bytes that end a tag's name. Names are short, so a table is faster than a search.
constexpr auto kEndsName = [] {
  std::array<bool, 256> ends{};
  for (const char c : {' ', '\n', '\t', '\r', '\f', '/', '>'})
    ends[static_cast<unsigned char>(c)] = true;
  return ends;
}();

class Scanner {
 public:
  explicit Scanner(std::string_view page)
      : begin_(page.data()), end_(begin_ + page.size()), counted_(begin_) {}

  PageScan run() {
    for (const char* at = begin_; (at = find_any<'<'>(at, end_)) != end_;) at = markup(at);
    return std::move(found_);
  }

 private:
  const char* markup(const char* at);
  const char* declaration(const char* at);
  const char* start_tag(const char* at);
  const char* end_tag(const char* at);
  const char* special(std::uint64_t key, std::string_view name, std::string_view inside,
                      const char* after);
  const char* script(std::string_view inside, const char* after);
  const char* title(const char* after);
  void meta(std::string_view inside);
  const char* behind(const char* gt) const { return gt == end_ ? end_ : gt + 1; }
  const char* name_end(const char* at) const {
    while (at != end_ && !kEndsName[static_cast<unsigned char>(*at)]) ++at;
    return at;
  }

  const char* begin_;
  const char* end_;
  const char* counted_;
  std::uint64_t line_ = 1;
  std::uint64_t templates_ = 0;  ///< open template elements
  ForeignContent foreign_;
  PageScan found_;
};

const char* Scanner::markup(const char* at) {
  if (end_ - at < 2) return end_;
  const char next = at[1];
  if (is_ascii_letter(next)) return start_tag(at);
  if (next == '/') return end_tag(at);
  if (next == '!') return declaration(at);
  if (next == '?') return behind(find_any<'>'>(at, end_));
  return at + 1;
}

const char* Scanner::declaration(const char* at) {
  const std::string_view rest(at, static_cast<std::size_t>(end_ - at));
  if (rest.starts_with("<!--")) return skip_comment(at, end_);
  if (foreign_.active() && rest.starts_with("<![CDATA[")) {
    const auto close = rest.find("]]>");
    return close == std::string_view::npos ? end_ : at + close + 3;
  }
  return behind(find_any<'>'>(at, end_));
}

const char* Scanner::end_tag(const char* at) {
  if (end_ - at < 3) return end_;
  if (!is_ascii_letter(at[2])) return behind(find_any<'>'>(at, end_));
  const char* const stop = name_end(at + 2);
  const char* const gt = find_tag_end(stop, end_);
  if (gt == end_) return end_;
  const std::string_view name(at + 2, static_cast<std::size_t>(stop - at - 2));
  if (!foreign_.active() && templates_ > 0 && equals_ignoring_case(name, "template")) {
    --templates_;
  }
  foreign_.end_tag(name);
  return gt + 1;
}

const char* Scanner::start_tag(const char* at) {
  const char* const stop = name_end(at + 1);
  const char* const gt = find_tag_end(stop, end_);
  if (gt == end_) return end_;
  const std::string_view name(at + 1, static_cast<std::size_t>(stop - at - 1));
  const std::string_view inside(stop, static_cast<std::size_t>(gt - stop));
  if (!foreign_.idle() && !foreign_.start_tag(name, inside)) {
    // JSON-LD is looked for here too; without the states of an HTML script.
    const bool block = equals_ignoring_case(name, "script") && is_json_ld(inside);
    return block ? script(inside, gt + 1) : gt + 1;
  }
  if (name.size() < 3 || name.size() > 9) return gt + 1;
  if (name.size() == 9) return equals_ignoring_case(name, "plaintext") ? end_ : gt + 1;
  return special(tag_key(name), name, inside, gt + 1);
}

const char* Scanner::special(std::uint64_t key, std::string_view name, std::string_view inside,
                             const char* after) {
  switch (key) {
    case "script"_tag:
      return script(inside, after);
    case "title"_tag:
      return title(after);
    case "style"_tag:
      return raw_text(after, end_, "style").after;
    case "textarea"_tag:
      return raw_text(after, end_, "textarea").after;
    case "xmp"_tag:
      return raw_text(after, end_, "xmp").after;
    case "iframe"_tag:
      return raw_text(after, end_, "iframe").after;
    case "noembed"_tag:
      return raw_text(after, end_, "noembed").after;
    case "noframes"_tag:
      return raw_text(after, end_, "noframes").after;
    case "svg"_tag:
    case "math"_tag:
      foreign_.start_tag(name, inside);
      break;
    case "template"_tag:
      ++templates_;
      break;
    case "meta"_tag:
      meta(inside);
      break;
    case "html"_tag:
      keep_first(found_.language, find_attribute(inside, "lang"));
      break;
    case "base"_tag:
      keep_first(found_.base, find_attribute(inside, "href"));
      break;
    case "link"_tag:
      if (has_word(find_attribute(inside, "rel").value_or(""), "canonical")) {
        keep_first(found_.canonical, find_attribute(inside, "href"));
      }
      break;
    default:
      break;
  }
  return after;
}

const char* Scanner::script(std::string_view inside, const char* after) {
  ++found_.scripts;
  const RawText raw =
      foreign_.active() ? raw_text(after, end_, "script") : script_text(after, end_);
  if (templates_ == 0 && is_json_ld(inside)) {
    line_ += count_lines({counted_, after});
    counted_ = after;
    found_.json_ld.push_back({.text = {after, raw.content_end},
                              .byte = static_cast<std::uint64_t>(after - begin_),
                              .line = line_,
                              .closed = raw.content_end != end_});
  }
  return raw.after;
}

const char* Scanner::title(const char* after) {
  const RawText raw = raw_text(after, end_, "title");
  if (!found_.title && templates_ == 0) {
    found_.title = trim(decode_text({after, raw.content_end}));
  }
  return raw.after;
}

void Scanner::meta(std::string_view inside) {
  keep_first(found_.charset, find_attribute(inside, "charset"));
  const auto content = find_attribute(inside, "content");
  if (!content) return;
  if (equals_ignoring_case(find_attribute(inside, "http-equiv").value_or(""), "content-type")) {
    keep_first(found_.charset, charset_of(*content));
  }
  const auto property = find_attribute(inside, "property");
  const auto named = property ? property : find_attribute(inside, "name");
  if (equals_ignoring_case(named.value_or(""), "og:url")) keep_first(found_.og_url, content);
}

}  // namespace

PageScan scan_page(std::string_view page) { return Scanner(page).run(); }

std::uint64_t count_lines(std::string_view text) {
  return static_cast<std::uint64_t>(std::count(text.begin(), text.end(), '\n'));
}

}  // namespace rangebook
