// Token by token: what a piece leaves unfinished waits for the next piece.
#include "importers/xml_scan.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "importers/byte_search.h"
#include "importers/char_refs.h"
#include "importers/utf8.h"

namespace rangebook {
namespace {

/// No part of a workbook gives an element more attributes.
constexpr std::size_t kMaxAttributes = 256;

std::string_view without_spaces(std::string_view text) {
  while (!text.empty() && is_html_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_html_space(text.back())) text.remove_suffix(1);
  return text;
}

std::size_t name_length(std::string_view text) {
  const char* const end = text.data() + text.size();
  return static_cast<std::size_t>(find_any<' ', '\t', '\n', '\r', '=', '/'>(text.data(), end) -
                                  text.data());
}

/// Past the `>` that ends the tag at the front, which may stand in an attribute's quotes as well;
/// npos when it is not there yet.
std::size_t tag_end(std::string_view text) {
  const char* at = text.data();
  const char* const end = at + text.size();
  while (true) {
    at = find_any<'>', '"', '\''>(at, end);
    if (at == end) return std::string_view::npos;
    if (*at == '>') return static_cast<std::size_t>(at - text.data()) + 1;
    at = std::find(at + 1, end, *at);
    if (at == end) return std::string_view::npos;
    ++at;
  }
}

/// Line ends as LF, all else as it stands (XML 1.0, 2.11).
std::string_view with_line_feeds(std::string_view text, std::string& out) {
  out.clear();
  for (std::size_t at = 0; at < text.size(); ++at) {
    out.push_back(text[at] == '\r' ? '\n' : text[at]);
    if (text[at] == '\r' && at + 1 < text.size() && text[at + 1] == '\n') ++at;
  }
  return out;
}

}  // namespace

bool XmlScan::feed(std::string_view piece, bool last) {
  if (!problem_.empty()) return false;
  buffer_.erase(0, at_);
  checked_ -= std::min(checked_, at_);
  at_ = 0;
  buffer_.append(piece);
  check_utf8(last);
  while (at_ < buffer_.size() && problem_.empty()) {
    if (token(std::string_view(buffer_).substr(at_), last) == Step::need_more) break;
  }
  if (problem_.empty() && buffer_.size() - at_ > kMaxXmlToken) stop("a tag or text has no end");
  const bool whole = root_seen_ && open_starts_.empty() &&
                     without_spaces(std::string_view(buffer_).substr(at_)).empty();
  if (problem_.empty() && last && !whole) stop("it ends too early");
  return problem_.empty();
}

/// Up to the last `>`, since no character is cut there.
void XmlScan::check_utf8(bool last) {
  const std::size_t mark = buffer_.rfind('>');
  const std::size_t end = last ? buffer_.size() : mark == std::string::npos ? 0 : mark + 1;
  if (end <= checked_) return;
  if (first_bad_byte(std::string_view(buffer_).substr(checked_, end - checked_))) {
    stop("it holds bytes that are not UTF-8");
  }
  checked_ = end;
}

XmlScan::Step XmlScan::token(std::string_view rest, bool last) {
  if (rest.front() == '<') return markup(rest);
  const std::size_t open = rest.find('<');
  if (open == rest.npos && !last) return Step::need_more;
  tell_text(rest.substr(0, open));
  at_ += std::min(open, rest.size());
  return Step::done;
}

XmlScan::Step XmlScan::markup(std::string_view rest) {
  if (rest.size() < 2) return Step::need_more;
  if (rest[1] == '?') return skip_past(rest, "?>");
  if (rest[1] != '!') return tag(rest);
  constexpr std::string_view kSection = "<![CDATA[";
  if (rest.size() < kSection.size()) return Step::need_more;
  if (rest.starts_with("<!--")) return skip_past(rest, "-->");
  if (rest.starts_with(kSection)) return section(rest.substr(kSection.size()));
  stop("it has a document type (DOCTYPE), which workbooks do not need");
  return Step::done;
}

XmlScan::Step XmlScan::skip_past(std::string_view rest, std::string_view end) {
  const std::size_t from = end == "-->" ? 4 : 2;
  const std::size_t at = rest.find(end, from);
  if (at == rest.npos) return Step::need_more;
  at_ += at + end.size();
  return Step::done;
}

XmlScan::Step XmlScan::section(std::string_view rest) {
  constexpr std::size_t kOpening = 9;
  const std::size_t end = rest.find("]]>");
  if (end == rest.npos) return Step::need_more;
  if (open_starts_.empty()) {
    stop("text stands outside the elements");
  } else {
    const std::string_view text = rest.substr(0, end);
    events_.text(text.find('\r') == text.npos ? text : with_line_feeds(text, text_));
  }
  at_ += kOpening + end + 3;
  return Step::done;
}

XmlScan::Step XmlScan::tag(std::string_view rest) {
  const std::size_t end = tag_end(rest);
  if (end == rest.npos) return Step::need_more;
  at_ += end;
  const std::string_view inside = rest.substr(1, end - 2);
  if (inside.starts_with('/')) {
    end_tag(without_spaces(inside.substr(1)));
  } else {
    start_tag(inside);
  }
  return Step::done;
}

void XmlScan::start_tag(std::string_view inside) {
  const bool empty = inside.ends_with('/');
  if (empty) inside.remove_suffix(1);
  const std::size_t length = name_length(inside);
  const std::string_view name = inside.substr(0, length);
  if (name.empty() || (open_starts_.empty() && root_seen_)) return stop("a tag is not well-formed");
  if (open_starts_.size() == kMaxXmlDepth) {
    return stop(fmt::format("elements are nested more than {} deep", kMaxXmlDepth));
  }
  if (!read_attributes(inside.substr(length))) return stop("an attribute is not well-formed");
  root_seen_ = true;
  events_.start(local_name(name), XmlAttributes(attributes_));
  if (empty) {
    events_.end(local_name(name));
    return;
  }
  open_starts_.push_back(open_.size());
  open_ += name;
}

void XmlScan::end_tag(std::string_view name) {
  if (open_starts_.empty() || std::string_view(open_).substr(open_starts_.back()) != name) {
    return stop(fmt::format("</{}> ends what is not open", excerpt_of(name, 40)));
  }
  open_.resize(open_starts_.back());
  open_starts_.pop_back();
  events_.end(local_name(name));
}

bool XmlScan::read_attributes(std::string_view text) {
  attributes_.clear();
  values_.clear();
  for (text = without_spaces(text); !text.empty(); text = without_spaces(text)) {
    const std::size_t length = name_length(text);
    const std::string_view name = text.substr(0, length);
    text = without_spaces(text.substr(length));
    if (name.empty() || !text.starts_with('=') || attributes_.size() == kMaxAttributes)
      return false;
    text = without_spaces(text.substr(1));
    if (!text.starts_with('"') && !text.starts_with('\'')) return false;
    const std::size_t close = text.find(text.front(), 1);
    if (close == text.npos) return false;
    std::string_view value = text.substr(1, close - 1);
    const char* const end = value.data() + value.size();
    if (find_any<'&', '\n', '\t', '\r'>(value.data(), end) != end) {
      if (values_.capacity() == 0) values_.reserve(kMaxAttributes);  // views into them must stay
      value = decoded(value, true, values_.emplace_back());
    }
    attributes_.push_back({name, value});
    text.remove_prefix(close + 1);
  }
  return problem_.empty();
}

void XmlScan::tell_text(std::string_view text) {
  if (open_starts_.empty()) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    if (!without_spaces(text).empty()) stop("text stands outside the elements");
    return;
  }
  const char* const end = text.data() + text.size();
  if (find_any<'&', '\r'>(text.data(), end) != end) text = decoded(text, false, text_);
  if (problem_.empty()) events_.text(text);
}

/// References replaced; line ends as LF, in attributes every blank as a space (XML 1.0, 2.11
/// and 3.3.3).
std::string_view XmlScan::decoded(std::string_view text, bool attribute, std::string& out) {
  out.clear();
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char sign = text[at];
    if (sign == '&') {
      const std::size_t end = text.find(';', at);
      if (end == text.npos || !append_reference(text.substr(at + 1, end - at - 1), out)) {
        stop("a reference (&..;) is not known");
        return {};
      }
      at = end;
    } else if (sign == '\r') {
      out.push_back(attribute ? ' ' : '\n');
      if (at + 1 < text.size() && text[at + 1] == '\n') ++at;
    } else {
      const bool blank = sign == '\n' || sign == '\t';
      out.push_back(attribute && blank ? ' ' : sign);
    }
  }
  return out;
}

/// The five references of XML and those by number.
bool XmlScan::append_reference(std::string_view name, std::string& out) {
  if (name.starts_with('#')) {
    const bool hex = name.starts_with("#x");
    name.remove_prefix(hex ? 2 : 1);
    std::uint32_t code = 0;
    const char* const end = name.data() + name.size();
    const auto [at, error] = std::from_chars(name.data(), end, code, hex ? 16 : 10);
    if (error != std::errc{} || at != end || code == 0) return false;
    append_utf8(out, code);
    return true;
  }
  const char sign = name == "amp"    ? '&'
                    : name == "lt"   ? '<'
                    : name == "gt"   ? '>'
                    : name == "quot" ? '"'
                    : name == "apos" ? '\''
                                     : '\0';
  if (sign != '\0') out.push_back(sign);
  return sign != '\0';
}

void XmlScan::stop(std::string problem) {
  if (problem_.empty()) problem_ = std::move(problem);
}

}  // namespace rangebook
