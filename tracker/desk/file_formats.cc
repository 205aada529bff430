// Names of formats as the command line knows them, and words for people.
#include "tracker/desk/file_formats.h"

namespace rangebook {

const std::vector<Choice>& paper_formats() {
  static const std::vector<Choice> kFormats{{"html", "one page"},
                                            {"xlsx", "workbook"},
                                            {"text", "plain text"},
                                            {"md", "Markdown"},
                                            {"json", "JSON"}};
  return kFormats;
}

const std::vector<Choice>& paper_and_csv() {
  static const std::vector<Choice> kFormats = [] {
    auto formats = paper_formats();
    formats.push_back({"csv", "CSV"});
    return formats;
  }();
  return kFormats;
}

std::string asked_format(const DeskAsk& ask, const std::vector<Choice>& formats) {
  for (const Choice& format : formats) {
    if (format.value == ask.said("format")) return format.value;
  }
  return {};
}

OutputChoice as_file(const std::string& format) {
  OutputChoice output;
  output.format = format;
  return output;
}

}  // namespace rangebook
