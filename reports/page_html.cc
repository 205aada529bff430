// Lays a report out as a page. The order of the functions is the order of the page.
#include <fmt/format.h>

#include <algorithm>

#include "reports/brief_chart.h"
#include "reports/brief_style.h"
#include "reports/html_writer.h"
#include "reports/report_page.h"

namespace rangebook {
namespace {

/// Longer tables show their first rows and fold the rest.
constexpr std::size_t kOpenRows = 14;
constexpr std::size_t kShownRows = 10;
/// Figures and codes of up to so many bytes, lists aside, are not broken across lines.
constexpr std::size_t kWhole = 24;
/// Headlines set large.
constexpr std::size_t kLeads = 5;
/// Ways back from a source to the places that cite it; the rest are counted.
constexpr std::size_t kWaysBack = 12;

class Page {
 public:
  explicit Page(const ReportPage& page) : page_(page), cited_(page.sources.size()) {}

  std::string write() {
    html_.doctype();
    const auto html = html_.in("html", {{"lang", "en-GB"}});
    head();
    {
      const auto body = html_.in("body");
      html_.element("a", {{"class", "skip"}, {"href", "#brief"}}, page_.skip);
      top();
      contents();
      {
        const auto main = html_.in("main", {{"id", "brief"}});
        headlines();
        for (const BriefSection& each : page_.sections) section(each);
        sources();
      }
      foot();
    }
    return html_.take();
  }

 private:
  void head() {
    const auto head = html_.in("head");
    html_.single("meta", {{"charset", "utf-8"}});
    html_.single("meta",
                 {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
    html_.single("meta", {{"http-equiv", "Content-Security-Policy"},
                          {"content",
                           "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; "
                           "form-action 'none'"}});
    html_.element("title", {}, page_.title);
    html_.stylesheet(brief_style());
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
    if (page_.invented) html_.element("p", {{"class", "invented"}}, "This data is invented");
  }

  void contents() {
    const auto nav = html_.in("nav", {{"aria-label", "Contents"}});
    const auto list = html_.in("ul");
    content_link("in-short", "In short");
    for (const BriefSection& each : page_.sections) content_link(each.id, each.heading);
    if (!page_.sources.empty()) content_link("sources", "Sources");
  }

  void content_link(std::string_view id, std::string_view heading) {
    const auto item = html_.in("li");
    html_.element("a", {{"href", fmt::format("#{}", id)}}, heading);
  }

  void headlines() {
    const auto section = html_.in("section", {{"aria-labelledby", "in-short"}});
    html_.element("h2", {{"id", "in-short"}}, "In short");
    const auto matter = html_.in("div", {{"class", "matter"}});
    const auto list = html_.in("ol", {{"class", "headlines"}});
    for (std::size_t i = 0; i < page_.headlines.size(); ++i) headline(page_.headlines[i], i);
  }

  void headline(const Headline& headline, std::size_t place) {
    const auto item = html_.in("li");
    html_.element("span", {{"class", "theme"}}, theme_words(headline.theme));
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
    for (const BriefTable& each : content.tables) {
      if (each.bars.empty()) table(each);
    }
    pictures(content);
  }

  void pictures(const BriefSection& content) {
    const auto has_bars = [](const BriefTable& table) { return !table.bars.empty(); };
    if (std::none_of(content.tables.begin(), content.tables.end(), has_bars)) return;
    html_.element("h3", {}, "Size by size");
    html_.element(
        "p", {{"class", "dates"}},
        "Bars above the line are now, below it then; a bar of full height is every line.");
    const auto group = html_.in("div", {{"class", "reaches"}});
    for (const BriefTable& each : content.tables) {
      if (has_bars(each)) picture(each);
    }
  }

  void picture(const BriefTable& content) {
    const auto figure = html_.in("figure");
    html_.element("figcaption", {}, content.caption);
    {
      const auto scroll = scroller("Picture: " + content.caption);
      write_reach_picture(html_, content);
    }
    folded(content, 0, "The figures");
  }

  /// A short table whole; of a long one the first rows, the rest folded.
  void table(const BriefTable& content) {
    const std::size_t rows = content.rows.size();
    if (!content.folded && rows <= kOpenRows) {
      rows_table(content, 0, rows, content.caption);
      return;
    }
    const std::size_t shown = content.folded ? 0 : kShownRows;
    if (shown > 0) {
      rows_table(content, 0, shown, fmt::format("{} ({} of {})", content.caption, shown, rows));
    }
    folded(content, shown, fmt::format("{} {} more", content.caption + ":", rows - shown));
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
    const auto scroll = scroller(fmt::format("{}, rows {} to {}", caption, first + 1, last));
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
    return column.numeric ? "figures" : "words";
  }

  void row(const BriefTable& table, const std::vector<Phrase>& cells) {
    const auto row = html_.in("tr");
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const auto style = cell_class(table.columns[i]);
      const auto cell = i == 0 ? html_.in("th", {{"scope", "row"}, {"class", style}})
                               : html_.in("td", {{"class", style}});
      phrase(cells[i]);
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
          name(piece.text, "figure");
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

  /// Text that is not ours, kept from reordering what stands beside it.
  void name(std::string_view content) {
    if (!content.empty()) html_.element("bdi", {}, content);
  }
  /// Short ones stay on one line.
  void name(std::string_view content, std::string_view style) {
    if (content.empty()) return;
    const bool whole = content.size() <= kWhole && content.find(',') == std::string_view::npos;
    const std::string classes = whole ? fmt::format("{} whole", style) : std::string(style);
    html_.element("bdi", {{"class", classes}}, content);
  }

  void note(std::size_t number) {
    if (number == 0 || number > cited_.size()) return;
    const std::size_t place = ++cited_[number - 1];
    const auto sup = html_.in("sup");
    html_.element("a",
                  {{"href", fmt::format("#source-{}", number)},
                   {"id", fmt::format("cited-{}-{}", number, place)},
                   {"aria-label", fmt::format("Source {}", number)}},
                  std::to_string(number));
  }

  void sources() {
    if (page_.sources.empty()) return;
    const auto section = html_.in("section", {{"aria-labelledby", "sources"}});
    html_.element("h2", {{"id", "sources"}}, "Sources");
    const auto matter = html_.in("div", {{"class", "matter"}});
    const auto list = html_.in("ol", {{"class", "sources"}});
    for (std::size_t i = 0; i < page_.sources.size(); ++i) source(i + 1);
  }

  void source(std::size_t number) {
    const auto item = html_.in("li", {{"id", fmt::format("source-{}", number)}});
    phrase(source_phrase(page_.sources[number - 1]));
    const std::size_t places = cited_[number - 1];
    for (std::size_t place = 1; place <= std::min(places, kWaysBack); ++place) {
      html_.text(" ");
      html_.element("a",
                    {{"class", "back"},
                     {"href", fmt::format("#cited-{}-{}", number, place)},
                     {"aria-label", fmt::format("Back to place {} of source {}", place, number)}},
                    places == 1 ? "↑" : fmt::format("↑{}", place));
    }
    if (places > kWaysBack) html_.text(fmt::format(" and {} more places", places - kWaysBack));
  }

  void foot() {
    const auto footer = html_.in("footer");
    for (const auto& caution : page_.cautions) html_.element("p", {}, caution);
  }

  const ReportPage& page_;
  std::vector<std::size_t> cited_;  // by source: how many places cite it so far
  HtmlWriter html_;
};

}  // namespace

std::string page_html(const ReportPage& page) { return Page(page).write(); }

}  // namespace rangebook
