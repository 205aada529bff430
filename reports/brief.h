// The revisit brief: what a stylist needs to know before she goes back to a shop, as a value. The
// renderers (reports/brief_formats.h) only lay it out; every sentence, figure and note is made
// here once, so page, text, Markdown and JSON cannot disagree.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "reports/chart.h"
#include "reports/phrase.h"
#include "schema/change.h"
#include "schema/fibre_shares.h"
#include "schema/palette.h"
#include "schema/size_report.h"
#include "schema/terms_version.h"

namespace rangebook {

/// What a headline is about, in the order of how much it matters to someone who dresses people:
/// whether it comes in their size at all, then what it costs, then what there is.
enum class Theme : std::uint8_t {
  sizes,
  terms,
  prices,
  entry_prices,
  markdowns,
  new_lines,
  returned,
  gone,
  colours,
  fabric,
  stock,
  identity,  ///< renamed, new code, moved to another category
  nothing,   ///< the one headline of a comparison without changes
};
std::string_view to_string(Theme theme);    ///< `entry-prices`
std::string_view theme_words(Theme theme);  ///< `Entry prices`

struct Headline {
  Theme theme = Theme::nothing;
  Phrase sentence;
  bool operator==(const Headline&) const = default;
};

struct BriefColumn {
  std::string key;  ///< name in JSON
  std::string heading;
  bool numeric = false;  ///< set flush right
  bool operator==(const BriefColumn&) const = default;
};
/// The first cell of a row names it.
struct BriefTable {
  std::string key;  ///< name in JSON
  std::string caption;
  std::vector<BriefColumn> columns;
  std::vector<std::vector<Phrase>> rows;
  std::vector<Chart> charts;  ///< pictures of this table, drawn where pictures can be
  bool folded = false;        ///< detail: shown on demand on a screen, always in print
  bool whole = false;         ///< always shown whole, however long

  /// Moves its cells in; a list in braces would copy them.
  template <typename... Cells>
  void add_row(Cells&&... cells) {
    auto& row = rows.emplace_back();
    row.reserve(sizeof...(cells));
    (row.push_back(std::forward<Cells>(cells)), ...);
  }
  bool operator==(const BriefTable&) const = default;
};
struct BriefSection {
  std::string id;  ///< `sizes`: name in JSON and anchor in the page
  std::string heading;
  std::vector<Phrase> paragraphs;
  std::vector<BriefTable> tables;
  bool operator==(const BriefSection&) const = default;
};

/// What a note points to: a row of a document, or a capture as a whole (no document).
using Source = Sighting;

struct Brief {
  Shop shop;
  CaptureInfo from;
  CaptureInfo to;
  bool invented = false;
  std::vector<Headline> headlines;     ///< most important first, never empty
  std::vector<BriefSection> sections;  ///< in reading order; what was looked at comes first
  std::vector<Source> sources;         ///< note N is sources[N - 1]
  std::vector<std::string> cautions;   ///< sentences for the foot of every format

  bool operator==(const Brief&) const = default;
};

struct BriefOptions {
  bool invented = false;                    ///< the data is a demonstration; every format says so
  std::vector<PalettePair> palettes = {};   ///< `all` first; without them there is no such section
  std::optional<FibrePair> fibres = {};     ///< likewise
  std::optional<StatedSizes> stated = {};   ///< what the shop itself says its sizes are
  std::optional<TermsInForce> terms = {};   ///< on the day of the later capture
  std::vector<TermsStep> terms_steps = {};  ///< all versions up to that day
};

/// Notes are numbered in order of first mention, headlines first.
Brief make_brief(const ChangeSet& set, const BriefOptions& options = {});

/// The first `n` headlines as plain sentences without notes.
std::vector<std::string> top_sentences(const Brief& brief, std::size_t n);

/// `Quillmere: AW26 against AW25`.
std::string brief_title(const Brief& brief);

}  // namespace rangebook
