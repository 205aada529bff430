// All that is wrong is said at once, so that a form is sent twice at most.
#include "tracker/desk/upload_request.h"

#include <fmt/format.h>

#include "tracker/app/cli_words.h"
#include "tracker/app/scope_words.h"
#include "tracker/desk/desk_sheet.h"
#include "tracker/season_parser.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

constexpr std::size_t kLongestSlug = 40;

class Reader {
 public:
  Reader(const std::optional<Book>& book, const HeldUpload& upload)
      : book_(book), upload_(upload) {}

  UploadRequest read() {
    out_.capture.named = upload_.documents;
    out_.capture.mapping.said = upload_.options;
    out_.capture.mapping.no_profile = said("kept-reading") == "no";
    take_shop();
    if (!upload_.documents.empty()) take_season();
    take_day();
    take_scope();
    return std::move(out_);
  }

 private:
  std::string said(std::string_view name) const {
    return std::string(trim_text(field_said(upload_.words, name)));
  }
  void wrong(std::string sentence) { out_.problems.push_back(std::move(sentence)); }

  void take_shop() {
    const std::string chosen = said("shop");
    const std::string name = said("name");
    if (chosen.empty() && name.empty()) {
      return wrong("Choose the shop, or write the name of one that is new.");
    }
    if (!chosen.empty() && !name.empty()) {
      return wrong(
          fmt::format("A shop is chosen and the name of a new one, \"{}\", is written: leave one "
                      "of them empty.",
                      name));
    }
    out_.capture.shop = chosen.empty() ? slug_of(name) : chosen;
    if (book_ && book_->find_shop(out_.capture.shop)) return;
    if (!chosen.empty()) return wrong("That shop is not in the book. Choose another one.");
    describe(name);
  }

  void describe(const std::string& name) {
    Words words;
    words.shop = out_.capture.shop;
    words.name = name;
    words.country = said("country");
    words.currency = said("currency");
    words.sizes = said("sizes");
    try {
      out_.capture.described = rangebook::shop_of(words);
    } catch (const UsageError& error) {
      wrong("Of the new shop, " + without_options(error.message));
    }
  }

  void take_season() {
    const std::string season = said("season");
    if (season.empty()) return wrong("Write the season, such as AW26.");
    const Season read = parse_season(season);
    const bool known = read.year && read.half;
    if (!known && said("as-it-is").empty()) {
      return wrong(fmt::format(
          "\"{}\" is not read as a season. Write it as AW26 or Spring/Summer 2026, or tick that "
          "it is a name of its own.",
          season));
    }
    out_.capture.season = season;
  }

  void take_day() {
    const std::string day = said("on");
    if (day.empty()) return;
    out_.capture.on = parse_day(day);
    if (!out_.capture.on) {
      wrong(fmt::format("\"{}\" is no date. Write it as 2026-09-01.", day));
    }
  }

  void take_scope() {
    const std::string part = said("part");
    const std::string categories = said("categories");
    if (part != "some" && !categories.empty()) {
      return wrong("Categories are written: choose that only they were looked at, or empty them.");
    }
    if (part == "some" && categories.empty()) {
      return wrong("Write the categories that were looked at, such as dresses, knitwear.");
    }
    const auto scope = parse_scope(part == "some" ? categories : part == "picks" ? part : "all");
    if (const auto* problem = std::get_if<std::string>(&scope)) {
      wrong("What was looked at: " + without_options(*problem));
    } else {
      out_.capture.scope = std::get<Scope>(scope);
    }
  }

  const std::optional<Book>& book_;
  const HeldUpload& upload_;
  UploadRequest out_;
};

}  // namespace

UploadWords upload_words(const DeskAsk& ask) {
  UploadWords words;
  for (const auto name : kUploadWords) {
    if (!ask.said(name).empty()) words.push_back({std::string(name), ask.said(name), {}});
  }
  return words;
}

UploadRequest request_of(const std::optional<Book>& book, const HeldUpload& upload) {
  return Reader(book, upload).read();
}

Shop shop_of(const std::optional<Book>& book, const CaptureRequest& request) {
  const auto record = book ? book->find_shop(request.shop) : std::nullopt;
  return record ? record->shop : request.described.value_or(Shop{});
}

std::string slug_of(std::string_view name) {
  std::string slug;
  for (const char sign : fold_text(name)) {
    if (is_ascii_letter(sign) || is_ascii_digit(sign)) {
      slug += sign;
    } else if (!slug.empty() && slug.back() != '-' && sign != '\'') {
      slug += '-';
    }
  }
  slug = slug.substr(0, kLongestSlug);
  while (slug.ends_with('-')) slug.pop_back();
  return slug.empty() ? "shop" : slug;
}

}  // namespace rangebook
