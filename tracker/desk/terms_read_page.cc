// Taking terms in. What was sent for a look comes along with the look, so keeping it needs no
// second upload and nothing has to be remembered between the two.
#include <fmt/format.h>

#include <algorithm>

#include "reports/brief_terms.h"
#include "reports/wording.h"
#include "schema/shop_name.h"
#include "tracker/app/cli_words.h"
#include "tracker/app/terms_desk.h"
#include "tracker/desk/asked_shop.h"
#include "tracker/desk/form_fields.h"
#include "tracker/desk/terms_pages.h"
#include "tracker/desk/terms_parts.h"

namespace rangebook {
namespace {

/// Of a page that is looked at before it is kept: it comes along in the form, in hex.
constexpr std::size_t kMostLookedAt = std::size_t{4} << 20;
constexpr std::string_view kPasted = "pasted text";

/// Nothing where the text is no hex.
std::optional<std::string> from_hex(std::string_view text) {
  const auto digit = [](char sign) -> int {
    if (sign >= '0' && sign <= '9') return sign - '0';
    return sign >= 'a' && sign <= 'f' ? sign - 'a' + 10 : -1;
  };
  if (text.size() % 2 != 0) return std::nullopt;
  std::string bytes;
  for (std::size_t i = 0; i < text.size(); i += 2) {
    const int high = digit(text[i]);
    const int low = digit(text[i + 1]);
    if (high < 0 || low < 0) return std::nullopt;
    bytes += static_cast<char>(high * 16 + low);
  }
  return bytes;
}

/// Browsers of old send folders too.
std::string name_alone(const std::string& name) {
  const auto folder = name.find_last_of("/\\");
  return folder == std::string::npos ? name : name.substr(folder + 1);
}

/// The file that was sent now, else the one that came along, else the pasted text.
std::optional<TermsDocument> asked_document(const DeskAsk& ask) {
  for (const DeskField& field : ask.fields) {
    if (field.name != "file" || field.value.empty()) continue;
    if (field.value.size() > kMostLookedAt) {
      throw UsageError{
          fmt::format("{} is larger than {} MB: no policy is. Give the page or text alone.",
                      field.file_name, kMostLookedAt >> 20U)};
    }
    return TermsDocument{name_alone(field.file_name), field.value};
  }
  const std::string& along = ask.said("along");
  if (!along.empty()) {
    const auto bytes = from_hex(along);
    if (!bytes) throw UsageError{"The file did not come along. Choose it again."};
    return TermsDocument{name_alone(ask.said("along-name")), *bytes};
  }
  const std::string& text = ask.said("text");
  if (std::all_of(text.begin(), text.end(), [](char sign) { return sign <= ' ' && sign >= 0; })) {
    return std::nullopt;
  }
  return TermsDocument{std::string(kPasted), text};
}

void read_form(HtmlWriter& html, const Desk& desk, const DeskAsk& ask) {
  post_form(html, desk, "/terms/read", [&](HtmlWriter& form) {
    hidden_field(form, "shop", ask.said("shop"));
    {
      const auto field = form.in("div", {{"class", "field file"}});
      form.element("label", {{"for", "file"}}, "Saved page");
      form.single(
          "input",
          {{"type", "file"}, {"id", "file"}, {"name", "file"}, {"aria-describedby", "file-hint"}});
      form.element("small", {{"id", "file-hint"}}, "web page, MHTML, text, or CSV of field,value");
    }
    text_field(form, "on", "Seen on", ask.said("on"), "empty: today", "date");
    long_text_field(form, "text", "Or the policy as text", ask.said("text"),
                    "Copy delivery and returns from the shop's page.", 8);
    button(form, "Look at it");
  });
}

/// Sends the same again, to be kept.
void keep_form(HtmlWriter& html, const Desk& desk, const DeskAsk& ask,
               const TermsDocument& document) {
  post_form(html, desk, "/terms/read", [&](HtmlWriter& form) {
    hidden_field(form, "shop", ask.said("shop"));
    hidden_field(form, "on", ask.said("on"));
    hidden_field(form, "along", hex(document.bytes));
    hidden_field(form, "along-name", document.name);
    hidden_field(form, "keep", "yes");
    button(form, "Keep these terms");
  });
}

void look(HtmlWriter& html, const Desk& desk, const DeskAsk& ask, const ReadTerms& read) {
  part(html, "look", "What it says", [&](HtmlWriter& matter) {
    for (const auto& fault : read.faults) alert(matter, fault);
    terms_understood(matter, read.reading);
    matter.element("p", {}, "Nothing is kept yet.");
    keep_form(matter, desk, ask, read.documents.front());
    terms_caution(matter);
  });
}

DeskAnswer read_sheet(const Desk& desk, const Shop& shop, const DeskAsk& ask, const ReadTerms* read,
                      const std::string& wrong) {
  const SheetHead head{"/terms", "Read a policy", std::string(shop_name(shop))};
  return sheet(
      desk, head,
      [&](HtmlWriter& html) {
        alert(html, wrong);
        if (read) look(html, desk, ask, *read);
        part(html, "policy", read ? "Read another" : "The policy",
             [&](HtmlWriter& matter) { read_form(matter, desk, ask); });
      },
      wrong.empty() ? 200 : 400);
}

std::string nothing_found(const ReadTerms& read) {
  std::string text = "No terms were found in it.";
  for (const auto& fault : read.faults) text += " " + fault;
  return text + " Copy the sentences about delivery and returns alone, or type them.";
}

DeskAnswer to_terms(const std::string& slug) {
  return gone_to(desk_address("/terms", {{"shop", slug, {}}}));
}

DeskAnswer taken(const Desk& desk, Book& book, const ShopRecord& shop, const DeskAsk& ask) {
  const auto document = asked_document(ask);
  if (!document) {
    return read_sheet(desk, shop.shop, ask, nullptr, "Choose a saved page or paste the policy.");
  }
  const Day on = asked_day(ask, "on", "Seen on").value_or(today());
  const auto read = read_terms_documents({*document}, shop.shop, on);
  if (stated_values(read.reading.terms).empty() && read.reading.doubts.empty()) {
    return read_sheet(desk, shop.shop, ask, nullptr, nothing_found(read));
  }
  if (ask.said("keep") != "yes") return read_sheet(desk, shop.shop, ask, &read, "");
  keep_terms(book, shop, on, read.reading, read.documents);
  return to_terms(shop.shop.slug);
}

void field_kinds(HtmlWriter& html) {
  const auto details = html.in("details");
  html.element("summary", {}, "Fields there are, each with an example");
  const auto list = html.in("dl", {{"class", "facts"}});
  for (const TermsField& field : terms_fields()) {
    html.element("dt", {{"class", "as-is"}}, field.name);
    html.element("dd", {}, fmt::format("{}, such as {}", field.title, field.example));
  }
}

DeskAnswer type_sheet(const Desk& desk, const Shop& shop, const DeskAsk& ask,
                      const std::string& wrong) {
  const SheetHead head{"/terms", "Type terms", std::string(shop_name(shop))};
  return sheet(
      desk, head,
      [&](HtmlWriter& html) {
        alert(html, wrong);
        post_form(html, desk, "/terms/type", [&](HtmlWriter& form) {
          hidden_field(form, "shop", shop.slug);
          text_field(form, "on", "Seen on", ask.said("on"), "empty: today", "date");
          long_text_field(form, "lines", "Fields, one a line", ask.said("lines"),
                          "such as return.window = 28 days from delivery; nothing behind = makes "
                          "it not stated",
                          8);
          button(form, "Keep them");
        });
        field_kinds(html);
      },
      wrong.empty() ? 200 : 400);
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const auto end = std::min(text.find('\n', at), text.size());
    std::string line = text.substr(at, end - at);
    if (!line.empty() && line.back() == '\r') line.pop_back();
    const auto first = line.find_first_not_of(" \t");
    if (first != std::string::npos && line[first] != '#') lines.push_back(std::move(line));
    at = end + 1;
  }
  return lines;
}

/// The shop that is asked for and its book, or a page that says what is missing.
struct AskedShop {
  std::optional<Book> book;
  std::optional<ShopRecord> shop;
  DeskAnswer missing;
};
AskedShop asked_shop(const Desk& desk, const DeskAsk& ask) {
  AskedShop asked{desk.book(), {}, {}};
  if (!asked.book) {
    asked.missing = no_book(desk);
    return asked;
  }
  auto found = find_shop(*asked.book, ask.said("shop"));
  if (const auto* missing = std::get_if<NotThere>(&found)) {
    asked.missing = trouble_sheet(desk, 404, missing->message);
  } else {
    asked.shop = std::get<ShopRecord>(std::move(found));
  }
  return asked;
}

}  // namespace

DeskAnswer read_terms_page(Desk& desk, const DeskAsk& ask) {
  const AskedShop asked = asked_shop(desk, ask);
  if (!asked.shop) return asked.missing;
  return read_sheet(desk, asked.shop->shop, ask, nullptr, "");
}

DeskAnswer read_terms_form(Desk& desk, const DeskAsk& ask) {
  AskedShop asked = asked_shop(desk, ask);
  if (!asked.shop) return asked.missing;
  try {
    return taken(desk, *asked.book, *asked.shop, ask);
  } catch (const UsageError& wrong) {
    return read_sheet(desk, asked.shop->shop, ask, nullptr, wrong.message);
  }
}

DeskAnswer type_terms_page(Desk& desk, const DeskAsk& ask) {
  const AskedShop asked = asked_shop(desk, ask);
  if (!asked.shop) return asked.missing;
  return type_sheet(desk, asked.shop->shop, ask, "");
}

DeskAnswer type_terms_form(Desk& desk, const DeskAsk& ask) {
  AskedShop asked = asked_shop(desk, ask);
  if (!asked.shop) return asked.missing;
  const Shop& shop = asked.shop->shop;
  try {
    const auto lines = lines_of(ask.said("lines"));
    if (lines.empty()) return type_sheet(desk, shop, ask, "Type at least one field.");
    const auto fields = typed_fields(lines, shop.currency);
    if (const auto* fault = std::get_if<std::string>(&fields)) {
      return type_sheet(desk, shop, ask, *fault);
    }
    const Day on = asked_day(ask, "on", "Seen on").value_or(today());
    type_terms(*asked.book, *asked.shop, on, std::get<std::vector<TermsValue>>(fields));
    return to_terms(shop.slug);
  } catch (const UsageError& wrong) {
    return type_sheet(desk, shop, ask, wrong.message);
  }
}

}  // namespace rangebook
