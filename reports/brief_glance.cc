// Both are made from what the brief says already: no figure is worked out here a second time.
#include "reports/brief_glance.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <unordered_set>

#include "reports/brief_terms.h"
#include "reports/category_figures.h"
#include "reports/change_groups.h"
#include "reports/spoken_words.h"
#include "reports/wording.h"
#include "schema/terms_fields.h"

namespace rangebook {
namespace {

/// Entry prices of so many categories, those with most lines first.
constexpr std::size_t kEntries = 6;

class Box {
 public:
  Box(const ChangeSet& set, const BriefOptions& options, SourceList& sources)
      : set_(set), options_(options), sources_(sources) {
    table_.key = "glance";
    table_.caption = "Now";
    table_.whole = true;
    table_.columns = {{"what", "What", false}, {"now", "Now", false}, {"as_of", "As of", false}};
  }

  BriefTable fill() {
    entry_prices();
    sizes();
    palette();
    terms();
    return std::move(table_);
  }

 private:
  void add(const Phrase& what, Phrase now, Day on) {
    table_.rows.push_back({what, std::move(now), Phrase{}.day(on)});
  }

  void entry_prices() {
    std::vector<const CategorySummary*> order = summaries_of(set_, {});
    if (order.size() > 1) {
      std::stable_sort(order.begin() + 1, order.end(), [](const auto* a, const auto* b) {
        return a->after.lines > b->after.lines;
      });
    }
    order.resize(std::min(order.size(), kEntries));
    for (const CategorySummary* each : order) {
      for (const PriceLadder& prices : each->after.prices) {
        Phrase what = Phrase{}.words("Entry price, ").name(category_words(each->category));
        add(what, Phrase{}.money({prices.entry, prices.currency}).note(sources_.now()), set_.to.on);
      }
    }
  }

  void sizes() {
    if (options_.stated) {
      add(Phrase{}.words("Sizes, as the shop states them"), Phrase{}.figure(options_.stated->words),
          options_.stated->on);
    }
    const CategorySummary* all = summary_of(set_, "all");
    if (all == nullptr) return;
    for (const SizeReach& reach : all->after.reach) {
      SizeFact fact{reach.system, reach.fit, {}, {}, {}};
      for (const ReachStep& step : reach.steps) {
        if (step.offering > 0) fact.labels.push_back(step.size.label);
      }
      if (fact.labels.empty() || reach.system == SizeSystem::one_size) continue;
      fact.min = fact.labels.front();
      fact.max = fact.labels.back();
      Phrase found = Phrase{}.figure(size_range_words(fact)).note(sources_.now());
      found.words(" on ").figure(lines_words(reach.lines));
      add(Phrase{}.words("Sizes, as found"), std::move(found), set_.to.on);
    }
  }

  void palette() {
    if (options_.palettes.empty()) return;
    const Palette& now = options_.palettes.front().after;
    if (now.known == 0) return;
    const auto count = [&now](Undertone tone) {
      return now.undertones.at(static_cast<std::size_t>(tone));
    };
    Phrase lean;
    const PaletteLean way = lean_of(now);
    const bool clear = way == PaletteLean::warm || way == PaletteLean::cool;
    lean.words(clear ? "leans " : "").words(to_string(way)).words(": ");
    lean.figure(fmt::format("{} warm, {} cool, {} neutral", count(Undertone::warm),
                            count(Undertone::cool), count(Undertone::neutral)));
    add(Phrase{}.words("Palette"), lean.words(" of the colourways known").note(sources_.now()),
        set_.to.on);
  }

  void terms() {
    if (!options_.terms) return;
    for (const TermsValue& value : stated_values(options_.terms->terms)) {
      const bool delivery = is_delivery_field(value.field);
      const auto& on = delivery ? options_.terms->delivery_on : options_.terms->returns_on;
      if (!on || !matters(value.field)) continue;
      Phrase what = Phrase{}.words(sentence_case(terms_field_words(value.field)));
      add(what, terms_value_phrase(value.text), *on);
    }
  }

  static std::string sentence_case(std::string words) {
    if (!words.empty() && words[0] >= 'a' && words[0] <= 'z') {
      words[0] = static_cast<char>(words[0] - 'a' + 'A');
    }
    return words;
  }

  /// What a customer asks first; everything else stands under delivery and returns.
  static bool matters(std::string_view field) {
    const auto ends = [field](std::string_view part) { return field.ends_with(part); };
    if (is_delivery_field(field)) return ends(".fee") || ends(".free-over") || ends(".free_over");
    return ends(".window") || ends(".post") || ends(".post.fee") || ends(".store");
  }

  const ChangeSet& set_;
  const BriefOptions& options_;
  SourceList& sources_;
  BriefTable table_;
};

/// Colour values (`#1f2a44`) are shown, never said.
bool is_said(const Piece& piece) {
  return piece.kind == Piece::Kind::figure && !piece.text.starts_with('#') &&
         std::any_of(piece.text.begin(), piece.text.end(),
                     [](char sign) { return sign >= '0' && sign <= '9'; });
}

class SpokenList {
 public:
  SpokenList(std::string key, std::string caption) {
    table_.key = std::move(key);
    table_.caption = std::move(caption);
    table_.columns = {
        {"written", "Written", false}, {"said", "Said", false}, {"about", "About", false}};
  }

  /// Every figure of the phrase that was not said of the same.
  void add(const Phrase& phrase, const Phrase& about) {
    for (std::size_t i = 0; i < phrase.pieces.size(); ++i) {
      const Piece& piece = phrase.pieces[i];
      if (!is_said(piece)) continue;
      if (!seen_.insert({piece.text, plain_text(about, false)}).second) continue;
      texts_.insert(piece.text);
      add_row(phrase, i, about);
    }
  }

  /// Every figure of the tables that was said neither here nor in `said`.
  void add_rest(const BriefSection& section, const SpokenList& said) {
    for (const BriefTable& table : section.tables) {
      for (const auto& row : table.rows) {
        for (const Phrase& cell : row) add_new(cell, said, section.heading);
      }
    }
  }

  BriefTable take() { return std::move(table_); }

 private:
  void add_new(const Phrase& cell, const SpokenList& said, const std::string& heading) {
    for (std::size_t i = 0; i < cell.pieces.size(); ++i) {
      const std::string& text = cell.pieces[i].text;
      if (!is_said(cell.pieces[i]) || !texts_.insert(text).second) continue;
      if (!said.texts_.contains(text)) add_row(cell, i, Phrase{}.words(heading));
    }
  }

  void add_row(const Phrase& phrase, std::size_t figure, const Phrase& about) {
    const Piece& piece = phrase.pieces[figure];
    Phrase written;
    written.pieces.push_back(piece);
    add_notes(written, phrase, figure);
    table_.rows.push_back({std::move(written), Phrase{}.figure(spoken_words(piece.text)), about});
  }

  /// The notes of a figure: those next after it, else the last ones before it.
  static void add_notes(Phrase& written, const Phrase& phrase, std::size_t figure) {
    const auto is_note = [&phrase](std::size_t at) {
      return phrase.pieces[at].kind == Piece::Kind::note;
    };
    std::size_t at = figure + 1;
    while (at < phrase.pieces.size() && !is_note(at)) ++at;
    if (at == phrase.pieces.size()) {
      at = figure;
      while (at > 0 && !is_note(at)) --at;
      while (at > 0 && is_note(at - 1)) --at;
    }
    for (; at < phrase.pieces.size() && is_note(at); ++at) written.note(phrase.pieces[at].note);
  }

  BriefTable table_;
  std::set<std::pair<std::string, std::string>> seen_;  // figure, about
  std::unordered_set<std::string> texts_;
};

}  // namespace

BriefSection glance_section(const ChangeSet& set, const BriefOptions& options,
                            SourceList& sources) {
  BriefSection section{"glance", "The shop at a glance", {}, {}};
  BriefTable table = Box(set, options, sources).fill();
  if (!table.rows.empty()) section.tables.push_back(std::move(table));
  return section;
}

BriefSection spoken_section(const std::vector<Headline>& headlines, const BriefSection& glance,
                            const std::vector<BriefSection>& sections) {
  BriefSection section{"say-it", "Say it right", {}, {}};
  SpokenList list("spoken", "Every figure of the headlines and of the box above, as it is said");
  for (const Headline& each : headlines) {
    list.add(each.sentence, Phrase{}.words(theme_words(each.theme)));
  }
  for (const BriefTable& table : glance.tables) {
    for (const auto& row : table.rows) list.add(row[1], row[0]);
  }
  SpokenList rest("spoken_rest", "Every other figure of this brief, as it is said");
  for (const BriefSection& each : sections) rest.add_rest(each, list);
  BriefTable others = rest.take();
  others.folded = true;
  for (BriefTable table : {list.take(), std::move(others)}) {
    if (!table.rows.empty()) section.tables.push_back(std::move(table));
  }
  return section;
}

}  // namespace rangebook
