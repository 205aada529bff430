// The words of a rejection were chosen where it arose; here they are only laid out.
#include "reports/rejection_list.h"

#include <fmt/format.h>

#include "reports/csv_writer.h"
#include "reports/json_writer.h"
#include "reports/phrase.h"

namespace rangebook {
namespace {

std::string document_name(const CaptureInfo& capture, const Rejection& rejection) {
  return rejection.document < capture.documents.size()
             ? capture.documents[rejection.document].name
             : fmt::format("document {}", rejection.document + 1);
}

}  // namespace

std::string rejection_line(const CaptureInfo& capture, const Rejection& rejection) {
  const std::string document = clean_line(document_name(capture, rejection));
  return fmt::format("{}: {}: {}{} {}",
                     rejection.line ? fmt::format("{}:{}", document, *rejection.line)
                                    : fmt::format("{}, byte {}", document, rejection.byte),
                     to_string(rejection.kind),
                     rejection.field.empty() ? "" : rejection.field + ": ",
                     clean_line(rejection.what), clean_line(rejection.how_to_fix));
}

std::string rejections_text(const CaptureInfo& capture, const std::vector<Rejection>& rejections) {
  std::string out;
  std::size_t counts[3] = {};
  for (const auto& rejection : rejections) {
    ++counts[static_cast<std::size_t>(rejection.refused)];
    out += rejection_line(capture, rejection) + "\n";
    if (!rejection.excerpt.empty()) out += "    " + clean_line(rejection.excerpt) + "\n";
  }
  out += fmt::format(
      "Capture {} ({}, {}). Refused rows: {}. Refused cells: {}. Kept but doubted: {}.\n",
      capture.id, capture.season, to_string(capture.on), counts[0], counts[1], counts[2]);
  return out;
}

std::string rejections_csv(const CaptureInfo& capture, const std::vector<Rejection>& rejections) {
  CsvWriter out;
  for (const char* column : {"document", "line", "byte", "field", "kind", "refused", "what",
                             "how_to_fix", "excerpt", "line_code", "name"}) {
    out.plain(column);
  }
  out.end_row();
  for (const auto& rejection : rejections) {
    out.text(document_name(capture, rejection));
    out.plain(rejection.line ? std::to_string(*rejection.line) : "");
    out.plain(std::to_string(rejection.byte));
    out.plain(rejection.field);
    out.plain(to_string(rejection.kind));
    out.plain(to_string(rejection.refused));
    out.text(rejection.what);
    out.text(rejection.how_to_fix);
    out.text(rejection.excerpt);
    out.text(rejection.line_code);
    out.text(rejection.name);
    out.end_row();
  }
  return out.take();
}

std::string rejections_json(const CaptureInfo& capture, const std::vector<Rejection>& rejections) {
  JsonWriter out;
  out.begin_object();
  out.member("format", "rangebook.rejections/1");
  out.member("shop", capture.shop);
  out.member("capture", capture.id);
  out.member("season", capture.season);
  out.member("date", to_string(capture.on));
  out.key("rejections");
  out.begin_array();
  for (const auto& rejection : rejections) {
    out.line_break();
    out.begin_object();
    out.member("document", document_name(capture, rejection));
    out.key("line");
    if (rejection.line) {
      out.value(*rejection.line);
    } else {
      out.null();
    }
    out.member("byte", rejection.byte);
    out.member("field", rejection.field);
    out.member("kind", to_string(rejection.kind));
    out.member("refused", to_string(rejection.refused));
    out.member("what", rejection.what);
    out.member("how_to_fix", rejection.how_to_fix);
    out.member("excerpt", rejection.excerpt);
    out.member("line_code", rejection.line_code);
    out.member("name", rejection.name);
    out.end_object();
  }
  out.end_array();
  out.line_break();
  out.end_object();
  return out.take() + "\n";
}

}  // namespace rangebook
