// Lays a report out as a page. The order of the functions is the order of the page.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "reports/brief_style.h"
#include "reports/chart_drawing.h"
#include "reports/chart_svg.h"
#include "reports/html_writer.h"
#include "reports/page_script.h"
#include "reports/page_words.h"
#include "reports/report_page.h"

namespace rangebook {
namespace {

/// Longer tables show their first rows and fold the rest.
constexpr std::size_t kOpenRows = 14;
constexpr std::size_t kShownRows = 10;
/// Figures and codes of up to so many bytes, lists aside, are not broken across lines.
constexpr std::size_t kWhole = 24;
constexpr std::string_view kEnglish = "en-GB";
/// Headlines set large.
constexpr std::size_t kLeads = 5;
/// More sources than this are listed by document; far more have no ways back.
constexpr std::size_t kListedSources = 60;
constexpr std::size_t kSourcesWithWaysBack = 1000;
/// Ways back from a source to the places that cite it; the rest are counted.
constexpr std::size_t kWaysBack = 12;

bool is_long(const BriefTable& table) {
  return !table.folded && !table.whole && table.rows.size() > kOpenRows;
}

bool has_long_list(const ReportPage& page) {
  return std::any_of(page.sections.begin(), page.sections.end(), [](const BriefSection& section) {
    return std::any_of(section.tables.begin(), section.tables.end(), is_long);
  });
}

/// What a list sorts by, where that cannot be read from the text: days, and figures of a locale.
std::string sort_key(const Phrase& cell, bool plain) {
  for (const Piece& piece : cell.pieces) {
    if (const auto* day = std::get_if<Day>(&piece.value)) {
      return std::to_string(day->time_since_epoch().count());
    }
    if (plain) continue;
    if (const auto* money = std::get_if<Money>(&piece.value)) return std::to_string(money->minor);
    if (const auto* step = std::get_if<MoneyStep>(&piece.value))
      return std::to_string(step->step.minor);
    if (const auto* share = std::get_if<Share>(&piece.value))
      return std::to_string(share->per_mille);
  }
  return {};
}

/// One figure that knows its value, and perhaps its sources.
bool is_one_value(const Phrase& cell) {
  std::size_t values = 0;
  for (const Piece& piece : cell.pieces) {
    if (piece.kind == Piece::Kind::note) continue;
    if (std::holds_alternative<std::monostate>(piece.value)) return false;
    ++values;
  }
  return values == 1;
}

/// Of a page with long lists; short ones have room in what stands around them.
std::size_t about_bytes(const ReportPage& page) {
  constexpr std::size_t kAround = 65'536;
  constexpr std::size_t kCell = 50;
  constexpr std::size_t kSource = 40;
  std::size_t bytes = kAround + kSource * page.sources.size();
  for (const BriefSection& section : page.sections) {
    for (const BriefTable& table : section.tables) {
      bytes += kCell * table.rows.size() * table.columns.size();
    }
  }
  return bytes;
}

class Page {
 public:
  explicit Page(const ReportPage& page, const ReportFrame* frame = nullptr)
      : page_(page), frame_(frame), cited_(page.sources.size()) {}

  std::string write() {
    html_.reserve(about_bytes(page_));
    html_.doctype();
    const std::string_view language = page_.words.language();
    const auto html = html_.in("html", {{"lang", language.empty() ? kEnglish : language}});
    head();
    {
      const auto body = html_.in("body");
      html_.element("a", {{"class", "skip"}, {"href", "#brief"}}, page_.skip);
      if (frame_) frame_->bar(html_);
      top();
      contents();
      {
        const auto main = html_.in("main", {{"id", "brief"}});
        if (frame_) frame_->before(html_);
        headlines();
        for (const BriefSection& each : page_.sections) section(each);
        sources();
      }
      foot();
      if (has_long_list(page_)) html_.script(page_script());
    }
    return html_.take();
  }

 private:
  std::string say(std::string_view english) const { return page_.words.text(english); }
  std::string fill(std::string_view english, const std::vector<std::string>& slots) const {
    return page_.words.filled(english, slots);
  }

  void head() {
    const auto head = html_.in("head");
    html_.single("meta", {{"charset", "utf-8"}});
    html_.single("meta",
                 {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
    if (!frame_) {
      html_.single("meta", {{"http-equiv", "Content-Security-Policy"}, {"content", policy()}});
    }
    html_.element("title", {}, page_.title);
    if (frame_) {
      html_.single("link", {{"rel", "stylesheet"}, {"href", frame_->style}});
    } else {
      html_.stylesheet(brief_style());
    }
  }

  std::string policy() const {
    std::string words = "default-src 'none'; style-src 'unsafe-inline'; ";
    if (has_long_list(page_)) {
      words += fmt::format("script-src 'sha256-{}'; ", page_script_hash());
    }
    return words + "base-uri 'none'; form-action 'none'";
  }

  void top() {
    const auto header = html_.in("header", {{"class", "top"}});
    html_.element("p", {{"class", "kind"}}, page_.kind);
    {
      const auto heading = html_.in("h1");
      phrase(page_.heading);
    }
    {
      const auto against = html_.in("p", {{"class", "against"}});
      phrase(page_.under);
    }
    dates(page_.captured);
    if (page_.invented) html_.element("p", {{"class", "invented"}}, say(kInventedWord));
  }

  void contents() {
    const auto nav = html_.in("nav", {{"aria-label", say(kContentsWord)}});
    const auto list = html_.in("ul");
    content_link("in-short", say(kInShortWord));
    for (const BriefSection& each : page_.sections) content_link(each.id, each.heading);
    if (!page_.sources.empty()) content_link("sources", say(kSourcesWord));
  }

  void content_link(std::string_view id, std::string_view heading) {
    const auto item = html_.in("li");
    html_.element("a", {{"href", fmt::format("#{}", id)}}, heading);
  }

  void headlines() {
    const auto section = html_.in("section", {{"aria-labelledby", "in-short"}});
    html_.element("h2", {{"id", "in-short"}}, say(kInShortWord));
    const auto matter = html_.in("div", {{"class", "matter"}});
    const auto list = html_.in("ol", {{"class", "headlines"}});
    for (std::size_t i = 0; i < page_.headlines.size(); ++i) headline(page_.headlines[i], i);
  }

  void headline(const Headline& headline, std::size_t place) {
    const auto item = html_.in("li");
    html_.element("span", {{"class", "theme"}}, say(theme_words(headline.theme)));
    const auto block = html_.in("div");
    {
      const auto sentence = html_.in("p", {{"class", place < kLeads ? "lead" : "more"}});
      phrase(headline.sentence);
    }
    dates(page_.headline_dates);
  }

  void dates(const Phrase& days) {
    if (days.empty()) return;
    const auto line = html_.in("p", {{"class", "dates"}});
    phrase(days);
  }

  void section(const BriefSection& content) {
    const auto section = html_.in("section", {{"aria-labelledby", content.id}});
    html_.element("h2", {{"id", content.id}}, content.heading);
    const auto matter = html_.in("div", {{"class", "matter"}});
    for (const Phrase& each : content.paragraphs) {
      const auto paragraph = html_.in("p");
      phrase(each);
    }
    pictures(content);
    for (const BriefTable& each : content.tables) {
      if (each.charts.empty() || !each.folded) table(each);
    }
  }

  void pictures(const BriefSection& content) {
    const auto has_charts = [](const BriefTable& table) { return !table.charts.empty(); };
    if (std::none_of(content.tables.begin(), content.tables.end(), has_charts)) return;
    const auto group = html_.in("div", {{"class", "pictures"}});
    for (const BriefTable& each : content.tables) {
      for (std::size_t i = 0; i < each.charts.size(); ++i) {
        picture(each, each.charts[i], each.folded && i + 1 == each.charts.size());
      }
    }
  }

  /// With the table behind it, unless that stands in full below.
  void picture(const BriefTable& content, const Chart& chart, bool with_table) {
    const auto figure = html_.in("figure");
    {
      const auto caption = html_.in("figcaption");
      phrase(chart.finding);
      const std::string reading = say(reading_of(chart.shows));
      if (read_.insert(reading).second) html_.element("span", {{"class", "reading"}}, reading);
    }
    write_chart(html_, chart, fmt::format("picture-{}", ++pictures_), page_.numbers);
    if (with_table) folded(content, 0, say(kFiguresWord));
  }

  /// A short table whole; of a long one the first rows, the rest folded.
  void table(const BriefTable& content) {
    const std::size_t rows = content.rows.size();
    const std::string all = std::to_string(rows);
    if (content.folded) return folded(content, 0, fill(kCaptionAndRows, {content.caption, all}));
    if (!is_long(content)) return rows_table(content, 0, rows, content.caption);
    const auto list =
        html_.in("div", {{"class", "list"}, {"data-rows", all}, {"data-caption", content.caption}});
    rows_table(content, 0, kShownRows,
               fill(kCaptionAndPart, {content.caption, std::to_string(kShownRows), all}));
    folded(content, kShownRows,
           fill(kCaptionAndMore, {content.caption, std::to_string(rows - kShownRows)}));
  }

  void folded(const BriefTable& content, std::size_t first, std::string_view summary) {
    const auto details = html_.in("details");
    html_.element("summary", {}, summary);
    rows_table(content, first, content.rows.size(), content.caption);
  }

  HtmlWriter::Scope scroller(std::string_view label) {
    return html_.in(
        "div", {{"class", "scroll"}, {"role", "group"}, {"tabindex", "0"}, {"aria-label", label}});
  }

  void rows_table(const BriefTable& content, std::size_t first, std::size_t last,
                  std::string_view caption) {
    const auto scroll = scroller(fill(
        kCaptionAndSpan, {std::string(caption), std::to_string(first + 1), std::to_string(last)}));
    const auto table = html_.in("table");
    html_.element("caption", {}, caption);
    {
      const auto head = html_.in("thead");
      const auto row = html_.in("tr");
      for (const BriefColumn& column : content.columns) {
        html_.element("th", {{"scope", "col"}, {"class", cell_class(column)}}, column.heading);
      }
    }
    const auto body = html_.in("tbody");
    for (std::size_t i = first; i < last; ++i) row(content, content.rows[i]);
  }

  static std::string_view cell_class(const BriefColumn& column) {
    return column.numeric ? "figures" : "";
  }

  void row(const BriefTable& table, const std::vector<Phrase>& cells) {
    const auto row = html_.in("tr");
    const bool sorts = is_long(table);
    for (std::size_t i = 0; i < cells.size(); ++i) {
      in_number_ = table.columns[i].numeric && is_one_value(cells[i]);
      const auto style = in_number_ ? "n" : cell_class(table.columns[i]);
      const std::string key = sorts ? sort_key(cells[i], page_.numbers.plain()) : "";
      if (i == 0) {
        html_.open("th", {{"scope", "row"}, {"class", style}});
      } else if (key.empty()) {
        html_.open("td", {{"class", style}});
      } else {
        html_.open("td", {{"class", style}, {"data-v", key}});
      }
      phrase(cells[i]);
      in_number_ = false;
      html_.close();
    }
  }

  void phrase(const Phrase& content) {
    for (const Piece& piece : content.pieces) {
      switch (piece.kind) {
        case Piece::Kind::words:
          html_.text(piece.text);
          break;
        case Piece::Kind::label:
          html_.element("strong", {}, piece.text);
          break;
        case Piece::Kind::name:
          name(piece.text);
          break;
        case Piece::Kind::figure:
          figure(piece);
          break;
        case Piece::Kind::code:
          name(piece.text, "code");
          break;
        case Piece::Kind::note:
          note(piece.note);
          break;
      }
    }
  }

  /// A value is written by us and cannot reorder anything.
  void figure(const Piece& piece) {
    if (!std::holds_alternative<std::monostate>(piece.value)) {
      if (in_number_) return html_.text(piece.text);
      return html_.element("span", {{"class", "whole"}}, piece.text);
    }
    name(piece.text, "");
  }

  /// Text that is not ours, kept from reordering what stands beside it.
  void name(std::string_view content) {
    if (!content.empty()) html_.element("bdi", {}, content);
  }
  /// Short ones stay on one line.
  void name(std::string_view content, std::string_view style) {
    if (content.empty()) return;
    const bool whole = content.size() <= kWhole && content.find(',') == std::string_view::npos;
    const std::string_view both = style.empty() ? "whole" : "code whole";
    const std::string_view classes = whole ? both : style;
    html_.element("bdi", {{"class", classes}}, content);
  }

  void note(std::size_t number) {
    if (number == 0 || number > cited_.size()) return;
    const std::size_t place = ++cited_[number - 1];
    const auto sup = html_.in("sup");
    html_.element("a",
                  {{"href", fmt::format("#s{}", number)},
                   {"id", ways_back_ ? fmt::format("c{}-{}", number, place) : ""},
                   {"aria-label", ways_back_ ? fill(kSourceNumber, {std::to_string(number)}) : ""}},
                  std::to_string(number));
  }

  /// A list by document where there are many: saying document and day each time would be most of
  /// the page.
  void sources() {
    if (page_.sources.empty()) return;
    const auto section = html_.in("section", {{"aria-labelledby", "sources"}});
    html_.element("h2", {{"id", "sources"}}, say(kSourcesWord));
    const auto matter = html_.in("div", {{"class", "matter"}});
    if (page_.sources.size() <= kListedSources) {
      const auto list = html_.in("ol", {{"class", "sources"}});
      for (std::size_t i = 0; i < page_.sources.size(); ++i) {
        const auto item = html_.in("li", {{"id", fmt::format("s{}", i + 1)}});
        phrase(page_.words.phrase(source_phrase(page_.sources[i], page_.numbers)));
        ways_back(i + 1);
      }
      return;
    }
    std::map<std::tuple<std::int64_t, Day, std::string_view>, std::vector<std::size_t>> documents;
    for (std::size_t i = 0; i < page_.sources.size(); ++i) {
      const Source& source = page_.sources[i];
      documents[{source.capture, source.on, source.document}].push_back(i + 1);
    }
    for (const auto& [document, numbers] : documents) lines_of_document(numbers);
  }

  void lines_of_document(const std::vector<std::size_t>& numbers) {
    Source document = page_.sources[numbers.front() - 1];
    document.line.reset();
    {
      const auto heading = html_.in("h3");
      phrase(page_.words.phrase(source_phrase(document, page_.numbers)));
    }
    const auto list = html_.in("ol", {{"class", "sources"}});
    for (const std::size_t number : numbers) {
      const auto item =
          html_.in("li", {{"id", fmt::format("s{}", number)}, {"value", std::to_string(number)}});
      const auto& line = page_.sources[number - 1].line;
      html_.text(line ? fill(kSourceLine, {std::to_string(*line)}) : say(kSourceWhole));
      ways_back(number);
    }
  }

  void ways_back(std::size_t number) {
    if (!ways_back_) return;
    const std::size_t places = cited_[number - 1];
    for (std::size_t place = 1; place <= std::min(places, kWaysBack); ++place) {
      html_.text(" ");
      html_.element(
          "a",
          {{"class", "back"},
           {"href", fmt::format("#c{}-{}", number, place)},
           {"aria-label", fill(kPlaceOfSource, {std::to_string(place), std::to_string(number)})}},
          places == 1 ? "↑" : fmt::format("↑{}", place));
    }
    if (places <= kWaysBack) return;
    html_.text(" ");
    html_.text(fill(kMorePlaces, {std::to_string(places - kWaysBack)}));
  }

  void foot() {
    const auto footer = html_.in("footer");
    for (const auto& caution : page_.cautions) html_.element("p", {}, caution);
  }

  const ReportPage& page_;
  const ReportFrame* frame_;
  const bool ways_back_ = page_.sources.size() <= kSourcesWithWaysBack;
  std::vector<std::size_t> cited_;  // by source: how many places cite it so far
  std::set<std::string> read_;      // kinds of picture explained so far
  std::size_t pictures_ = 0;
  bool in_number_ = false;  // inside a cell that stays on one line as a whole
  HtmlWriter html_;
};

}  // namespace

std::string page_html(const ReportPage& page) { return Page(page).write(); }
std::string framed_page_html(const ReportPage& page, const ReportFrame& frame) {
  return Page(page, &frame).write();
}

}  // namespace rangebook
