// Restyling: every phrase of a page, once.
#include "reports/report_page.h"

namespace rangebook {

ReportPage restyled(ReportPage page, const NumberStyle& numbers) {
  page.numbers = numbers;
  for (Phrase* each :
       {&page.heading, &page.under, &page.dates, &page.captured, &page.headline_dates}) {
    restyle(*each, numbers);
  }
  for (Headline& each : page.headlines) restyle(each.sentence, numbers);
  for (BriefSection& section : page.sections) {
    for (Phrase& each : section.paragraphs) restyle(each, numbers);
    for (BriefTable& table : section.tables) {
      for (Chart& each : table.charts) restyle(each.finding, numbers);
      for (auto& row : table.rows) {
        for (Phrase& cell : row) restyle(cell, numbers);
      }
    }
  }
  return page;
}

}  // namespace rangebook
