// The sentence stands beside each value: nobody has to take the reader's word for it.
#include "tracker/desk/terms_parts.h"

#include <fmt/format.h>

#include "reports/brief_terms.h"
#include "reports/terms_report.h"
#include "reports/wording.h"
#include "schema/terms_fields.h"

namespace rangebook {
namespace {

std::string_view confidence_words(const TermsEvidence* evidence) {
  if (!evidence || evidence->document.empty()) return "typed in";
  switch (evidence->confidence) {
    case TermsConfidence::stated:
      return "stated";
    case TermsConfidence::confirmed:
      return "you said yes";
    case TermsConfidence::doubtful:
      return "in doubt";
  }
  return {};
}

void field_row(HtmlWriter& html, const TermsValue& value, const TermsEvidence* evidence) {
  const auto row = html.in("tr");
  html.element("th", {{"scope", "row"}}, terms_field_words(value.field));
  {
    const auto cell = html.in("td");
    html.element("bdi", {}, terms_value_words(value.text));
  }
  html.element("td", {}, confidence_words(evidence));
  const auto cell = html.in("td");
  if (evidence) terms_sentence(html, *evidence);
}

}  // namespace

std::string terms_value_words(std::string_view value) {
  return plain_text(terms_value_phrase(value), false);
}

void terms_sentence(HtmlWriter& html, const TermsEvidence& evidence) {
  if (evidence.sentence.empty()) return;
  html.element("q", {}, one_line(evidence.sentence));
  html.text(" ");
  html.element("small", {}, evidence.document);
}

void terms_fields_table(HtmlWriter& html, const Terms& terms, const std::string& caption) {
  wide_table(
      html, {caption, caption, {"Field", "Value", "How sure", "Sentence"}}, [&](HtmlWriter& body) {
        for (const TermsValue& value : stated_values(terms)) {
          const auto evidence = terms.evidence.find(value.field);
          field_row(body, value, evidence == terms.evidence.end() ? nullptr : &evidence->second);
        }
      });
}

void terms_doubt(HtmlWriter& html, const TermsDoubt& doubt) {
  {
    const auto line = html.in("p");
    html.element("strong", {}, terms_field_words(doubt.field));
    html.text(": ");
    html.element("bdi", {}, terms_value_words(doubt.text));
    html.text("?");
  }
  if (!doubt.evidence.doubt.empty()) {
    html.element("p", {{"class", "dates"}},
                 fmt::format("Asked because: {}.", doubt.evidence.doubt));
  }
  {
    const auto line = html.in("p");
    terms_sentence(html, doubt.evidence);
  }
  if (doubt.evidence.contradicts.empty()) return;
  const auto line = html.in("p");
  html.text("But: ");
  html.element("q", {}, one_line(doubt.evidence.contradicts));
}

void terms_understood(HtmlWriter& html, const TermsReading& reading) {
  const std::size_t stated = stated_values(reading.terms).size();
  if (stated > 0) {
    terms_fields_table(html, reading.terms,
                       counted(stated, "field understood", "fields understood"));
  }
  if (reading.doubts.empty()) return;
  html.element("h3", {},
               counted(reading.doubts.size(), "reading is not sure", "readings are not sure"));
  html.element("p", {}, "Once kept, these wait for your yes and count nowhere before it.");
  const auto list = html.in("ul", {{"class", "shops"}});
  for (const TermsDoubt& doubt : reading.doubts) {
    const auto item = html.in("li");
    terms_doubt(html, doubt);
  }
}

void terms_caution(HtmlWriter& html) {
  html.element("p", {{"class", "dates"}},
               "Terms as captured on the day shown. The law of a country may give more than a shop "
               "states (in the EU, Directive 2011/83/EU, article 9: withdrawal within 14 days from "
               "distance sales): check local law and the shop. This is no legal advice.");
}

}  // namespace rangebook
