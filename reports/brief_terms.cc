// Terms that changed, worst for the customer first.
#include "reports/brief_terms.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "reports/change_groups.h"
#include "reports/wording.h"
#include "schema/terms_fields.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

constexpr std::size_t kNamed = 3;  ///< fields a headline names

const TermsFact* fact_of(const std::optional<Fact>& side) {
  return side ? std::get_if<TermsFact>(&*side) : nullptr;
}

const TermsFact& either(const Change& change) {
  const TermsFact* now = fact_of(change.after);
  return now != nullptr ? *now : std::get<TermsFact>(change.before.value());
}

int weight(const Change& change) {
  switch (either(change).direction) {
    case TermsDirection::worse:
      return 0;
    case TermsDirection::better:
      return 1;
    case TermsDirection::neutral:
      break;
  }
  return 2;
}

ChangeList changed_terms(const ChangeSet& set) {
  ChangeList changes = of_kinds(set, {ChangeKind::terms_changed});
  std::stable_sort(changes.begin(), changes.end(),
                   [](const Change* a, const Change* b) { return weight(*a) < weight(*b); });
  return changes;
}

Phrase value_cell(const std::optional<Fact>& side, const std::optional<Sighting>& seen,
                  SourceList& sources) {
  const TermsFact* fact = fact_of(side);
  if (fact == nullptr) return Phrase{}.words("not stated");
  Phrase cell = terms_value_phrase(fact->value);
  sources.cite(cell, seen);
  return cell;
}

Phrase sentence_cell(const std::optional<Fact>& side) {
  const TermsFact* fact = fact_of(side);
  if (fact == nullptr) return Phrase{}.words("-");
  return fact->sentence.empty() ? Phrase{}.words("typed in") : Phrase{}.name(fact->sentence);
}

std::string_view direction_words(TermsDirection direction) {
  return direction == TermsDirection::neutral ? "depends" : to_string(direction);
}

std::string held_value(const TermsFact* fact) {
  return fact == nullptr ? "not stated" : fact->value;
}

/// One row a version of a term that ever changed: what held from which day on.
BriefTable timeline_table(const std::vector<TermsStep>& steps) {
  BriefTable table;
  table.key = "terms_over_time";
  table.caption = "Terms that changed, from the day each was captured";
  table.columns = {
      {"term", "Term", false}, {"from", "Captured on", false}, {"value", "Held", false}};
  table.folded = true;
  std::map<std::string, std::vector<TimelineChart::Stay>> stays;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    for (const Change& change : steps[i].changes) {
      const TermsFact* then = fact_of(change.before);
      const TermsFact* now = fact_of(change.after);
      auto& list = stays[either(change).field];
      if (list.empty()) {
        const Day since = change.evidence.before ? change.evidence.before->on : steps[0].on;
        list.push_back({since, held_value(then)});
      }
      list.push_back({steps[i].on, held_value(now)});
    }
  }
  TimelineChart chart;
  for (auto& [field, list] : stays) {
    const std::string words = terms_field_words(field);
    for (auto& stay : list) {
      Phrase held = terms_value_phrase(stay.words);
      stay.words = plain_text(held, false);
      table.add_row(Phrase{}.words(words), Phrase{}.day(stay.from), std::move(held));
    }
    chart.rows.push_back({words, std::move(list)});
  }
  if (chart.rows.empty()) return table;
  chart.last = steps.back().on;
  Phrase finding;
  finding.count(chart.rows.size()).words(chart.rows.size() == 1 ? " term" : " terms");
  finding.words(" changed between ").day(steps.front().on).words(" and ").day(chart.last);
  table.charts.push_back({finding.words("."), std::move(chart)});
  return table;
}

}  // namespace

Phrase terms_value_phrase(std::string_view text) {
  const auto money = read_money(text, std::nullopt);
  return money && to_string(*money) == text ? Phrase{}.money(*money) : Phrase{}.figure(text);
}

std::string terms_field_words(std::string_view field) {
  const TermsField* kind = find_terms_field(field);
  if (kind == nullptr) return std::string(field);
  if (is_delivery_field(field)) {
    const auto key = field.substr(9, field.rfind('.') - 9);
    return fmt::format("{} delivery: {}", key, kind->title);
  }
  const auto region = field.substr(std::min(field.size(), std::size_t{7}));
  const auto dot = region.find('.');
  const bool regional = dot != region.npos && dot > 0 && region[0] >= 'A' && region[0] <= 'Z';
  return regional ? fmt::format("{} ({})", kind->title, region.substr(0, dot))
                  : std::string(kind->title);
}

void add_terms_headline(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  const ChangeList changes = changed_terms(set);
  if (changes.empty()) return;
  Phrase sentence;
  sentence.words("Delivery and returns: ");
  for (std::size_t i = 0; i < std::min(kNamed, changes.size()); ++i) {
    const Change& change = *changes[i];
    if (i > 0) sentence.words("; ");
    sentence.words(terms_field_words(either(change).field)).words(" ");
    sentence.append(value_cell(change.after, change.evidence.after, sources)).words(", was ");
    sentence.append(value_cell(change.before, change.evidence.before, sources));
  }
  if (changes.size() > kNamed) {
    sentence.words("; and ").count(changes.size() - kNamed).words(" more");
  }
  out.push_back({Theme::terms, std::move(sentence.words("."))});
}

BriefSection terms_section(const ChangeSet& set, const std::vector<TermsStep>& steps,
                           SourceList& sources) {
  BriefSection section{"terms", "Delivery and returns", {}, {}};
  const ChangeList changes = changed_terms(set);
  BriefTable timeline = timeline_table(steps);
  if (changes.empty()) {
    if (!timeline.rows.empty()) section.tables.push_back(std::move(timeline));
    return section;
  }
  BriefTable values;
  values.key = "terms";
  values.caption = "Terms that changed, by the day each was captured";
  values.columns = {{"term", "Term", false},
                    {"then", "Then", false},
                    {"now", "Now", false},
                    {"direction", "For the customer", false}};
  BriefTable sentences;
  sentences.key = "terms_sentences";
  sentences.caption = "The sentences they were read from";
  sentences.columns = {{"term", "Term", false}, {"then", "Then", false}, {"now", "Now", false}};
  for (const Change* change : changes) {
    const Phrase term = Phrase{}.words(terms_field_words(either(*change).field));
    values.rows.push_back({term, value_cell(change->before, change->evidence.before, sources),
                           value_cell(change->after, change->evidence.after, sources),
                           Phrase{}.words(direction_words(either(*change).direction))});
    sentences.rows.push_back({term, sentence_cell(change->before), sentence_cell(change->after)});
  }
  section.tables = {std::move(values), std::move(sentences)};
  if (!timeline.rows.empty()) section.tables.push_back(std::move(timeline));
  return section;
}

}  // namespace rangebook
