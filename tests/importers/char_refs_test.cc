// Character references are replaced as a full HTML parser replaces them.
#include "importers/char_refs.h"

#include <gtest/gtest.h>
#include <gumbo.h>

#include "schema/embedded.h"

namespace rangebook {
namespace {

// What gumbo makes of `text` as the value of an attribute and as the text of a paragraph.
std::pair<std::string, std::string> gumbo_decode(const std::string& text) {
  const std::string page = "<!doctype html><body><textarea a=\"" + text + "\">" + text;
  GumboOutput* parsed = gumbo_parse_with_options(&kGumboDefaultOptions, page.data(), page.size());
  const auto* html = static_cast<const GumboNode*>(parsed->root);
  const auto* body = static_cast<const GumboNode*>(html->v.element.children.data[1]);
  const auto* area = static_cast<const GumboNode*>(body->v.element.children.data[0]);
  std::pair<std::string, std::string> out;
  out.first = gumbo_get_attribute(&area->v.element.attributes, "a")->value;
  if (area->v.element.children.length > 0) {
    out.second = static_cast<const GumboNode*>(area->v.element.children.data[0])->v.text.text;
  }
  gumbo_destroy_output(&kGumboDefaultOptions, parsed);
  return out;
}

void expect_agreement(const std::string& text) {
  const auto [attribute, plain] = gumbo_decode(text);
  EXPECT_EQ(decode_attribute(text), attribute) << text;
  EXPECT_EQ(decode_text(text), plain) << text;
}

TEST(CharRefs, EveryNameReadsAsAFullParserReadsIt) {
  std::size_t names = 0;
  for (const auto& row : table_rows("tables/character_references.tsv")) {
    const std::string name(row[0]);
    // Gumbo drops a line feed at the beginning of a textarea, so nothing may stand first.
    for (const char* after : {"", ".", "x", "=", " "}) expect_agreement("a&" + name + after);
    ++names;
  }
  EXPECT_EQ(names, 2231U);  // the count in the standard
}

TEST(CharRefs, NumbersReadAsAFullParserReadsThem) {
  for (const char* text :
       {"&#65;",  "&#65",   "&#x41;b", "&#X41;",   "&#8364;",    "&#128;",
        "&#150;", "&#x9f;", "&#0;",    "&#xD800;", "&#x110000;", "&#99999999999;",
        "&#;",    "&#x;",   "&#",      "&",        "&&amp;",     "&a",
        "&;",     "a&ampb", "&notit;", "&notin;",  "&#x1F457;"}) {
    expect_agreement(std::string("a") + text);
  }
}

}  // namespace
}  // namespace rangebook
