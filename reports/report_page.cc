// Restyling: every phrase of a page, once.
#include "reports/report_page.h"

#include "reports/page_texts.h"

namespace rangebook {

ReportPage restyled(ReportPage page, const NumberStyle& numbers) {
  page.numbers = numbers;
  each_text(
      page, [](const std::string&) {}, [&numbers](Phrase& phrase) { restyle(phrase, numbers); });
  return page;
}

}  // namespace rangebook
