// One walk over all that a page says, in its order.
#pragma once

#include "reports/report_page.h"

namespace rangebook {

/// Calls `texts` with each text of ours and `phrases` with each phrase; both may change them.
template <typename Texts, typename Phrases>
void each_text(ReportPage& page, const Texts& texts, const Phrases& phrases) {
  for (std::string* each : {&page.kind, &page.skip, &page.title}) texts(*each);
  for (Phrase* each :
       {&page.heading, &page.under, &page.dates, &page.captured, &page.headline_dates}) {
    phrases(*each);
  }
  for (Headline& each : page.headlines) phrases(each.sentence);
  for (BriefSection& section : page.sections) {
    texts(section.heading);
    for (Phrase& each : section.paragraphs) phrases(each);
    for (BriefTable& table : section.tables) {
      texts(table.caption);
      for (BriefColumn& column : table.columns) texts(column.heading);
      for (Chart& each : table.charts) phrases(each.finding);
      for (auto& row : table.rows) {
        for (Phrase& cell : row) phrases(cell);
      }
    }
  }
  for (std::string& each : page.cautions) texts(each);
}

}  // namespace rangebook
