// An upload between handing over and keeping: every view reads it anew, keeping nothing.
#include <fmt/format.h>

#include <chrono>

#include "reports/rejection_list.h"
#include "reports/wording.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/terms_desk.h"
#include "tracker/desk/add_pages.h"
#include "tracker/desk/reading_form.h"
#include "tracker/desk/rejection_table.h"
#include "tracker/desk/terms_parts.h"
#include "tracker/desk/upload_form.h"
#include "tracker/desk/upload_request.h"

namespace rangebook {
namespace {

/// What keeping an upload would come to.
struct Understood {
  UploadRequest asked;
  std::optional<MappingPreview> preview;
  std::optional<ReadTerms> terms;
  std::vector<std::string> problems;

  bool can_be_kept() const {
    return problems.empty() && ((preview && preview->lines > 0) || (!preview && terms));
  }
};

bool has_terms(const ReadTerms& read) {
  return !stated_values(read.reading.terms).empty() || !read.reading.doubts.empty();
}

Understood understand(const Desk& desk, const HeldUpload& upload) {
  Understood out;
  std::optional<Book> book = Book::open(desk.book_path(), true);
  out.asked = request_of(book, upload);
  out.problems = out.asked.problems;
  if (!out.problems.empty()) return out;
  const CaptureRequest& request = out.asked.capture;
  if (!upload.documents.empty()) {
    auto preview = preview_capture(*book, request, {});
    if (const auto* missing = std::get_if<NotThere>(&preview)) {
      out.problems.push_back(without_options(missing->message));
    } else {
      out.preview = std::get<MappingPreview>(std::move(preview));
    }
  }
  if (!upload.policy.empty()) {
    const Shop shop = shop_of(book, request);
    out.terms = read_terms_files({upload.policy}, shop, request.on.value_or(today()));
  }
  return out;
}

/// What takes longer goes on behind a page that says so.
constexpr std::chrono::milliseconds kPatience{1500};

void counts(HtmlWriter& html, const MappingPreview& preview) {
  std::uint64_t rows = 0;
  std::uint64_t cells = 0;
  std::uint64_t doubted = 0;
  std::uint64_t conflicts = 0;
  for (const auto& document : preview.documents) {
    rows += document.refused_rows;
    cells += document.refused_cells;
    doubted += document.doubted;
    conflicts += document.conflict_count;
  }
  html.element("p", {{"class", "lead"}},
               fmt::format("{}, {}: {} new to the book, {} exactly as it knows them.",
                           counted(preview.lines, "line", "lines"),
                           counted(preview.variants, "variant", "variants"), preview.new_lines,
                           preview.same_lines));
  if (preview.lines == 0) {
    html.element("p", {},
                 "Not a single line could be read, so there is nothing to keep. Say below what "
                 "the columns mean and what it is, or hand over other files.");
  }
  if (rows + cells + doubted + conflicts > 0) {
    html.element("p", {},
                 fmt::format("Left out: {} and {}. Taken but doubted: {}. Contradictions within a "
                             "page: {}.",
                             counted(rows, "row", "rows"), counted(cells, "cell", "cells"), doubted,
                             conflicts));
  }
  for (const auto& note : preview.notes) html.element("p", {}, note);
}

void refused(HtmlWriter& html, const MappingPreview& preview) {
  std::uint64_t all = 0;
  for (const auto& one : preview.documents) {
    all += one.refused_rows + one.refused_cells + one.doubted;
  }
  if (all == 0) return;
  part(html, "refused", "Left out or doubted", [&](HtmlWriter& matter) {
    rejection_table(matter, preview.capture, preview.rejections, all);
  });
}

/// `delivery.standard.free_over` as words.
void terms_found(HtmlWriter& html, const ReadTerms& read) {
  part(html, "terms", "Delivery and returns", [&](HtmlWriter& matter) {
    for (const auto& fault : read.faults) matter.element("p", {}, fault);
    if (has_terms(read)) return terms_understood(matter, read.reading);
    matter.element("p", {}, "No terms were found in this text.");
  });
}

void keep_forms(HtmlWriter& html, const Desk& desk, const HeldUpload& upload,
                const Understood& understood) {
  if (understood.can_be_kept()) {
    post_form(html, desk, "/held/keep", [&](HtmlWriter& form) {
      hidden_field(form, "upload", upload.id);
      if (!upload.options.empty()) {
        tick_field(form, "as-usual", "Read tables of this shop like this from now on", true);
      }
      button(form, "Keep it in the book");
    });
  }
  post_form(html, desk, "/held/drop", [&](HtmlWriter& form) {
    hidden_field(form, "upload", upload.id);
    button(form, "Do not keep it");
  });
}

void words_form(HtmlWriter& html, const Desk& desk, const HeldUpload& upload) {
  part(html, "words", "What it is", [&](HtmlWriter& matter) {
    post_form(matter, desk, "/held/words", [&](HtmlWriter& form) {
      hidden_field(form, "upload", upload.id);
      upload_fields(form, desk.book(), upload.words);
      button(form, "Look again");
    });
  });
}

void reading_part(HtmlWriter& html, const Desk& desk, const HeldUpload& upload,
                  const std::vector<DocumentPreview>& documents, const DeskAsk& typed) {
  part(html, "reading", "How it was read", [&](HtmlWriter& matter) {
    post_form(matter, desk, "/held/reading", [&](HtmlWriter& form) {
      hidden_field(form, "upload", upload.id);
      reading_fields(form, documents, upload.options, typed);
      tick_field(form, "kept-reading", "Leave aside how tables of this shop are usually read",
                 field_said(upload.words, "kept-reading") == "no");
      button(form, "Read it like this");
    });
  });
}

DeskAnswer held_sheet(const Desk& desk, const HeldUpload& upload, const DeskAsk& typed,
                      const std::vector<std::string>& wrong) {
  Understood understood = understand(desk, upload);
  std::vector<std::string> problems = wrong;
  problems.insert(problems.end(), understood.problems.begin(), understood.problems.end());
  const SheetHead head{"/add", "Not in the book yet", "What was understood", held_words(upload)};
  return sheet(
      desk, head,
      [&](HtmlWriter& html) {
        problem_list(html, problems);
        const auto& preview = understood.preview;
        if (!understood.problems.empty()) words_form(html, desk, upload);
        if (!upload.documents.empty() && (preview || understood.asked.problems.empty())) {
          const auto documents = preview ? preview->documents : std::vector<DocumentPreview>{};
          if (preview) {
            part(html, "comes-to", "What it comes to", [&](HtmlWriter& matter) {
              counts(matter, *preview);
              keep_forms(matter, desk, upload, understood);
            });
            refused(html, *preview);
          }
          reading_part(html, desk, upload, documents, typed);
        }
        if (understood.terms) terms_found(html, *understood.terms);
        if (!preview) {
          part(html, "decide", "Keep it?",
               [&](HtmlWriter& matter) { keep_forms(matter, desk, upload, understood); });
        }
        if (understood.problems.empty()) words_form(html, desk, upload);
      },
      problems.empty() ? 200 : 400);
}

DeskAnswer not_held(const Desk& desk) {
  return trouble_sheet(desk, 404,
                       "This upload does not wait here any more: it was kept or dropped.");
}

DeskAnswer to(const std::string& address) {
  DeskAnswer answer;
  answer.go_to = address;
  return answer;
}

/// The shop's default is what is read unasked, so that is the one to keep.
std::string usual_profile(const Book& book, const std::string& shop) {
  for (const Profile& profile : book.profiles(shop)) {
    if (profile.is_default) return profile.name;
  }
  return "usual";
}

/// Terms in a transaction of their own: an upload of which only the capture was kept stays, and
/// keeping it again adds the terms.
void keep_policy(Book& book, const HeldUpload& upload, const CaptureRequest& request) {
  if (upload.policy.empty()) return;
  if (!book.find_shop(request.shop)) book.put_shop(request.described.value());
  const ShopRecord shop = book.find_shop(request.shop).value();
  const Day on = request.on.value_or(today());
  const ReadTerms read = read_terms_files({upload.policy}, shop.shop, on);
  if (has_terms(read)) keep_terms(book, shop, on, read.reading, read.documents);
}

DeskAnswer keep(const Desk& desk, const HeldUpload& upload, bool as_usual,
                const ProgressCallback& progress) {
  UploadRequest asked = request_of(desk.book(), upload);
  if (!asked.problems.empty()) return held_sheet(desk, upload, {}, {});
  CaptureRequest& request = asked.capture;
  Book book = Book::open(desk.book_path(), true);
  if (upload.documents.empty()) {
    keep_policy(book, upload, request);
    desk.held().drop(upload);
    return to(desk_address("/terms", {{"shop", request.shop, {}}}));
  }
  if (as_usual && !upload.options.empty()) {
    request.save_profile = usual_profile(book, request.shop);
  }
  const auto taken = run_capture(book, request, progress);
  if (const auto* missing = std::get_if<NotThere>(&taken)) {
    return held_sheet(desk, upload, {}, {without_options(missing->message)});
  }
  const auto& report = std::get<CaptureReport>(taken);
  if (report.outcome.lines == 0 && !report.outcome.unchanged)
    return held_sheet(desk, upload, {}, {});
  keep_policy(book, upload, request);
  desk.held().drop(upload);
  return to(desk_address("/kept", {{"shop", request.shop, {}},
                                   {"capture", std::to_string(report.outcome.id), {}},
                                   {"before", report.outcome.unchanged ? "yes" : "", {}},
                                   {"terms", upload.policy.empty() ? "" : "yes", {}}}));
}

}  // namespace

DeskAnswer held_page(Desk& desk, const DeskAsk& ask) {
  const auto upload = desk.held().find(ask.said("upload"));
  return upload ? held_sheet(desk, *upload, {}, {}) : not_held(desk);
}

DeskAnswer say_words(Desk& desk, const DeskAsk& ask) {
  auto upload = desk.held().find(ask.said("upload"));
  if (!upload) return not_held(desk);
  const std::string reading = field_said(upload->words, "kept-reading");
  upload->words = upload_words(ask);
  if (!reading.empty()) upload->words.push_back({"kept-reading", reading, {}});
  desk.held().say(*upload);
  return to(held_address(*upload));
}

DeskAnswer say_reading(Desk& desk, const DeskAsk& ask) {
  auto upload = desk.held().find(ask.said("upload"));
  if (!upload) return not_held(desk);
  const auto options = reading_of(ask);
  if (const auto* problem = std::get_if<std::string>(&options)) {
    return held_sheet(desk, *upload, ask, {*problem});
  }
  upload->options = std::get<TableOptions>(options);
  std::erase_if(upload->words, [](const auto& word) { return word.name == "kept-reading"; });
  if (!ask.said("kept-reading").empty()) upload->words.push_back({"kept-reading", "no", {}});
  desk.held().say(*upload);
  return to(held_address(*upload));
}

DeskAnswer keep_held(Desk& desk, const DeskAsk& ask) {
  if (!desk.held().find(ask.said("upload"))) return not_held(desk);
  const bool started = desk.keeping().start(
      [&desk, id = ask.said("upload"),
       as_usual = !ask.said("as-usual").empty()](const ProgressCallback& progress) {
        const auto upload = desk.held().find(id);
        return upload ? keep(desk, *upload, as_usual, progress) : not_held(desk);
      });
  if (!started) {
    return trouble_sheet(desk, 503, "Another upload is being kept. Try again in a moment.");
  }
  if (const auto answer = desk.keeping().wait(kPatience)) return *answer;
  return to("/keeping");  // a page with an address, so that the browser can look again
}

DeskAnswer keeping_page(Desk& desk, const DeskAsk& /*ask*/) {
  if (const auto answer = desk.keeping().wait(kPatience)) return *answer;
  if (!desk.keeping().goes_on()) return to("/add");
  DeskAnswer answer =
      sheet(desk, {"/add", "Not in the book yet", "It is being kept"}, [&](HtmlWriter& html) {
        html.element("p", {{"class", "lead"}, {"role", "status"}},
                     fmt::format("{} % is read. This page looks again by itself; you can leave it, "
                                 "or close the browser.",
                                 desk.keeping().share()));
        const auto way = html.in("p");
        link(html, "/keeping", "Look again");
      });
  answer.look_again = 2;
  return answer;
}

DeskAnswer drop_held(Desk& desk, const DeskAsk& ask) {
  const auto upload = desk.held().find(ask.said("upload"));
  if (!upload) return not_held(desk);
  if (desk.keeping().goes_on()) {
    return trouble_sheet(desk, 503, "An upload is being kept. Try again in a moment.");
  }
  desk.held().drop(*upload);
  return to("/add");
}

}  // namespace rangebook
