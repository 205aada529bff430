// Pairs of lines beside each other.
#include "reports/link_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "reports/csv_writer.h"
#include "reports/json_writer.h"
#include "reports/phrase.h"

namespace rangebook {
namespace {

/// Whole percents, downwards: a pair is never shown surer than it is.
int percent(double score) { return static_cast<int>(std::floor(score * 100 + 1e-9)); }

std::string_view decision_word(const LinkCase& pair) {
  return !pair.same ? "waits" : *pair.same ? "yes" : "no";
}

std::string price_text(const LineGlimpse& line) {
  return line.price ? ", " + to_string(*line.price) : "";
}

std::string seen_text(const LineGlimpse& line) {
  if (!line.seen) return "in no capture any more";
  return fmt::format("{} of {}", clean_line(line.seen->season), to_string(line.seen->on));
}

std::string line_row(const LineGlimpse& line) {
  const std::string code = clean_line(line.code);
  return fmt::format("{}{}{}{}  [{}]", code, code.empty() ? "" : "  ", clean_line(line.name),
                     price_text(line), seen_text(line));
}

std::string pair_text(const LinkCase& pair) {
  std::string out = fmt::format(
      "  {}  {:<5}", pair.reference,
      pair.same ? std::string(decision_word(pair)) : fmt::format("{}%", percent(pair.score)));
  const std::string indent(out.size() + 2, ' ');
  out += "  " + line_row(pair.then) + "\n" + indent + line_row(pair.now) + "\n";
  if (!pair.sentence.empty()) out += indent + clean_line(pair.sentence) + "\n";
  return out;
}

std::string pairs_text(std::size_t count) {
  return count == 1 ? "1 pair" : fmt::format("{} pairs", count);
}

std::string waiting_text(const LinkList& list) {
  if (list.waiting.empty()) {
    return fmt::format("{}: nothing waits for a yes or no.\n", list.shop);
  }
  std::string out =
      fmt::format("{}: {} for a yes or no. Are both the same line?\n", list.shop,
                  list.waiting.size() == 1 ? "1 pair waits"
                                           : fmt::format("{} pairs wait", list.waiting.size()));
  for (const LinkCase& pair : list.waiting) out += "\n" + pair_text(pair);
  const std::string& first = list.waiting.front().reference;
  return out + fmt::format("\nSay rangebook links yes {0}, or rangebook links no {0}.\n", first);
}

std::string decided_text(const LinkList& list) {
  if (list.decided.empty()) return fmt::format("{}: nothing was decided yet.\n", list.shop);
  std::string out =
      fmt::format("{}: {} decided, newest first.\n", list.shop, pairs_text(list.decided.size()));
  for (const LinkCase& pair : list.decided) out += "\n" + pair_text(pair);
  return out + fmt::format("\nTo take one back: rangebook links undo {}\n",
                           list.decided.front().reference);
}

class LinksWriter {
 public:
  std::string write(const LinkList& list) {
    json_.begin_object();
    json_.member("format", "rangebook.links/1");
    json_.line_break();
    json_.member("shop", list.shop);
    pairs("waiting", list.waiting);
    pairs("decided", list.decided);
    json_.line_break();
    json_.end_object();
    return json_.take() + '\n';
  }

 private:
  void pairs(std::string_view name, const std::vector<LinkCase>& cases) {
    json_.line_break();
    json_.key(name);
    json_.begin_array();
    for (const LinkCase& each : cases) {
      json_.line_break();
      pair(each);
    }
    json_.end_array();
  }

  void pair(const LinkCase& each) {
    json_.begin_object();
    json_.member("reference", each.reference);
    json_.key("then");
    line(each.then);
    json_.key("now");
    line(each.now);
    json_.key("same");
    each.same ? json_.value(*each.same) : json_.null();
    json_.member("score_per_mille", static_cast<int>(std::lround(each.score * 1000)));
    json_.member("sentence", each.sentence);
    json_.end_object();
  }

  void line(const LineGlimpse& line) {
    json_.begin_object();
    json_.member("code", line.code);
    json_.member("name", line.name);
    json_.key("amount_minor");
    line.price ? json_.value(line.price->minor) : json_.null();
    json_.key("currency");
    line.price ? json_.value(line.price->currency.code()) : json_.null();
    json_.key("seen");
    line.seen ? sighting(*line.seen) : json_.null();
    json_.end_object();
  }

  void sighting(const Sighting& seen) {
    json_.begin_object();
    json_.member("capture", seen.capture);
    json_.member("season", seen.season);
    json_.member("date", to_string(seen.on));
    json_.member("document", seen.document);
    json_.key("line");
    seen.line ? json_.value(*seen.line) : json_.null();
    json_.end_object();
  }

  JsonWriter json_;
};

void csv_line(CsvWriter& csv, const LineGlimpse& line) {
  csv.text(line.code);
  csv.text(line.name);
  csv.plain(line.price ? decimal_text(*line.price) : "");
  csv.plain(line.price ? line.price->currency.code() : "");
  csv.text(line.seen ? line.seen->season : "");
  csv.plain(line.seen ? to_string(line.seen->on) : "");
}

}  // namespace

std::string line_phrase(const LineGlimpse& line) {
  std::string text = clean_line(line.code);
  if (!line.name.empty()) {
    text += fmt::format("{}\"{}\"", text.empty() ? "" : " ", clean_line(line.name));
  }
  return line.seen ? fmt::format("{} ({})", text, clean_line(line.seen->season)) : text;
}

std::string links_text(const LinkList& list, LinkPart part) {
  if (part == LinkPart::decided) return decided_text(list);
  std::string out = waiting_text(list);
  if (!list.decided.empty()) {
    out += fmt::format("{} decided: rangebook links {} --decided\n",
                       pairs_text(list.decided.size()), list.shop);
  }
  return out;
}

std::string links_json(const LinkList& list) { return LinksWriter().write(list); }

std::string links_csv(const LinkList& list) {
  CsvWriter csv;
  for (const char* column :
       {"reference", "decision", "score_percent", "code_then", "name_then", "price_then",
        "currency_then", "season_then", "date_then", "code_now", "name_now", "price_now",
        "currency_now", "season_now", "date_now", "sentence"}) {
    csv.plain(column);
  }
  csv.end_row();
  for (const auto* cases : {&list.waiting, &list.decided}) {
    for (const LinkCase& pair : *cases) {
      csv.plain(pair.reference);
      csv.plain(decision_word(pair));
      csv.plain(fmt::format("{}", percent(pair.score)));
      csv_line(csv, pair.then);
      csv_line(csv, pair.now);
      csv.text(pair.sentence);
      csv.end_row();
    }
  }
  return csv.take();
}

}  // namespace rangebook
