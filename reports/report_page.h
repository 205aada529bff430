// A report ready to be laid out: the same sentences, tables and notes for every form that people
// read. The brief, the prices and the sizes are all laid out from here, so they look alike.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "reports/brief.h"
#include "reports/number_style.h"
#include "reports/phrase.h"
#include "reports/phrase_book.h"

namespace rangebook {

struct ReportPage {
  std::string kind;       ///< what it is: `Range brief`
  std::string skip;       ///< words of the link past the contents: `Skip to the brief`
  std::string title;      ///< plain text: `Quillmere: AW26 against AW25`
  Phrase heading;         ///< set largest: the shop
  Phrase under;           ///< beneath it: the captures
  Phrase dates;           ///< the days of the captures, in text and Markdown
  Phrase captured;        ///< likewise, beneath the heading of a page
  Phrase headline_dates;  ///< likewise, beneath each headline of a page; may be empty
  bool invented = false;
  std::vector<Headline> headlines;
  std::vector<BriefSection> sections;
  std::vector<Source> sources;  ///< note N is sources[N - 1]
  std::vector<std::string> cautions;
  Day made{};           ///< day of the latest capture in it, for the properties of a workbook
  NumberStyle numbers;  ///< for figures that pictures write; see restyled
  PhraseBook words;     ///< for what stands around its sections; see translated
};

/// The same page with all its figures written in another way.
ReportPage restyled(ReportPage page, const NumberStyle& numbers);

/// For a terminal: headlines, sections with aligned columns, numbered sources.
std::string page_text(const ReportPage& page);
/// CommonMark with GFM tables and footnotes.
std::string page_markdown(const ReportPage& page);
/// One self-contained page: no outside address, no script. Readable at any width from 390 px, dark
/// and light by the reader's setting, printable on A4 with folded lists open.
std::string page_html(const ReportPage& page);

class HtmlWriter;
/// What stands around a report that is one page among others.
struct ReportFrame {
  std::string style;                        ///< address of the style sheet
  std::function<void(HtmlWriter&)> bar;     ///< written above the page
  std::function<void(HtmlWriter&)> before;  ///< written before its headlines
};
/// The same as page_html() for a page that is served: the policy is the server's.
std::string framed_page_html(const ReportPage& page, const ReportFrame& frame);

/// Sentences for the foot of every report.
std::vector<std::string> report_cautions(bool invented);

/// `AW26, 2 September 2026, range-aw26.csv, line 22`: what a note says.
Phrase source_phrase(const Source& source, const NumberStyle& numbers = {});

}  // namespace rangebook
