// Terms as text and JSON.
#include "reports/terms_report.h"

#include <fmt/format.h>

#include "reports/json_facts.h"
#include "reports/json_writer.h"
#include "reports/phrase.h"
#include "reports/wording.h"
#include "schema/terms_fields.h"

namespace rangebook {
namespace {

constexpr std::size_t kLongestSentence = 300;

const TermsEvidence* evidence_of(const Terms& terms, const std::string& field) {
  const auto found = terms.evidence.find(field);
  return found == terms.evidence.end() ? nullptr : &found->second;
}

std::string observed_words(const std::optional<Day>& on) {
  return on ? to_string(*on) : "not in the book";
}

/// `better for the customer: `, or nothing.
std::string direction_words(TermsDirection direction) {
  if (direction == TermsDirection::neutral) return {};
  return fmt::format(" ({} for the customer)", to_string(direction));
}

const TermsFact* fact_of(const std::optional<Fact>& side) {
  return side ? std::get_if<TermsFact>(&*side) : nullptr;
}

void add_step_line(const Change& change, std::string& text) {
  const TermsFact* then = fact_of(change.before);
  const TermsFact* now = fact_of(change.after);
  const TermsFact* either = now != nullptr ? now : then;
  if (either == nullptr) return;
  text += fmt::format(
      "  {}: {} -> {}{}\n", either->field, then != nullptr ? clean_line(then->value) : "not stated",
      now != nullptr ? clean_line(now->value) : "not stated", direction_words(either->direction));
  for (const auto& [word, side] : {std::pair("then", then), std::pair("now", now)}) {
    if (side == nullptr || side->sentence.empty()) continue;
    text += fmt::format("    {}: \"{}\"\n", word, one_line(side->sentence));
  }
}

void json_side(JsonWriter& json, std::string_view key, const TermsFact* fact) {
  json.key(key);
  if (fact == nullptr) return json.null();
  json.begin_object();
  json.member("value", fact->value);
  json.member("sentence", fact->sentence);
  json.end_object();
}

}  // namespace

std::string one_line(std::string_view text) {
  std::string line = clean_line(text);
  std::string folded;
  for (const char sign : line) {
    if (sign == ' ' && (folded.empty() || folded.back() == ' ')) continue;
    folded += sign;
  }
  if (folded.size() <= kLongestSentence) return folded;
  std::size_t end = kLongestSentence;
  while (end > 0 && (static_cast<unsigned char>(folded[end]) & 0xC0U) == 0x80U) --end;
  return folded.substr(0, end) + " ..";
}

std::string terms_in_force_text(const TermsInForce& in_force) {
  std::string text = fmt::format(
      "# Terms of {}: delivery as of {}, returns as of {}.\n"
      "# As captured; the shop may have changed them. Statutory rights differ: check local law.\n",
      clean_line(in_force.shop.name), observed_words(in_force.delivery_on),
      observed_words(in_force.returns_on));
  for (const TermsValue& value : stated_values(in_force.terms)) {
    text += fmt::format("{} = {}\n", value.field, value.text);
    const auto* source = evidence_of(in_force.terms, value.field);
    if (source == nullptr || source->sentence.empty()) continue;
    text +=
        fmt::format("#   {}: \"{}\"\n", clean_line(source->document), one_line(source->sentence));
  }
  return text;
}

std::string terms_json(const TermsInForce& in_force) {
  JsonWriter json;
  json.begin_object();
  json.member("format", "rangebook.terms/1");
  json.member("shop", in_force.shop.slug);
  write_day(json, "delivery_observed", in_force.delivery_on);
  write_day(json, "returns_observed", in_force.returns_on);
  json.key("fields");
  json.begin_array();
  for (const TermsValue& value : stated_values(in_force.terms)) {
    json.line_break();
    json.begin_object();
    json.member("field", value.field);
    json.member("value", value.text);
    const auto* source = evidence_of(in_force.terms, value.field);
    const TermsEvidence evidence = source == nullptr ? TermsEvidence{} : *source;
    json.member("sentence", evidence.sentence);
    json.member("document", evidence.document);
    json.member("byte", evidence.byte);
    json.member("confidence", to_string(evidence.confidence));
    json.end_object();
  }
  json.line_break();
  json.end_array();
  json.end_object();
  return json.take() + "\n";
}

std::string timeline_text(const std::vector<TermsStep>& steps) {
  if (steps.empty()) return "No terms yet.\n";
  std::string text;
  for (const TermsStep& step : steps) {
    const bool first = &step == &steps.front();
    text += fmt::format("{}: {}\n", day_words(step.on),
                        first ? "first terms in the book"
                              : counted(step.changes.size(), "field changed", "fields changed"));
    for (const Change& change : step.changes) add_step_line(change, text);
  }
  return text;
}

std::string timeline_json(std::string_view shop, const std::vector<TermsStep>& steps) {
  JsonWriter json;
  json.begin_object();
  json.member("format", "rangebook.terms-timeline/1");
  json.member("shop", shop);
  json.key("versions");
  json.begin_array();
  for (const TermsStep& step : steps) {
    json.line_break();
    json.begin_object();
    json.member("observed", to_string(step.on));
    json.key("changes");
    json.begin_array();
    for (const Change& change : step.changes) {
      const TermsFact* then = fact_of(change.before);
      const TermsFact* now = fact_of(change.after);
      if (then == nullptr && now == nullptr) continue;
      const TermsFact& either = now != nullptr ? *now : *then;
      json.begin_object();
      json.member("field", either.field);
      json.member("direction", to_string(either.direction));
      json_side(json, "before", then);
      json_side(json, "after", now);
      json.end_object();
    }
    json.end_array();
    json.end_object();
  }
  json.line_break();
  json.end_array();
  json.end_object();
  return json.take() + "\n";
}

}  // namespace rangebook
