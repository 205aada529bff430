// What became of a capture that was kept, and the way back.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "reports/wording.h"
#include "tracker/desk/add_pages.h"
#include "tracker/desk/asked_shop.h"
#include "tracker/desk/rejection_table.h"
#include "tracker/desk/upload_form.h"
#include "tracker/store/terms_store.h"

namespace rangebook {
namespace {

/// More are in the file that rangebook rejections writes.
constexpr std::size_t kShownRefusals = 200;

struct Kept {
  Shop shop;
  CaptureRecord record;
  bool newest = false;  ///< only the newest of a shop can be taken back
  bool first = false;   ///< there is nothing to compare it with
};

std::optional<Kept> kept_of(const Book& book, const DeskAsk& ask) {
  const auto shop = book.find_shop(ask.said("shop"));
  if (!shop) return std::nullopt;
  const auto captures = book.captures(shop->shop.slug);
  std::int64_t newest = 0;
  for (const auto& record : captures) newest = std::max(newest, record.info.id);
  for (const auto& record : captures) {
    if (std::to_string(record.info.id) != ask.said("capture")) continue;
    return Kept{shop->shop, record, record.info.id == newest, captures.size() == 1};
  }
  return std::nullopt;
}

void next_ways(HtmlWriter& html, const Kept& kept, bool with_terms) {
  const std::string& shop = kept.shop.slug;
  const auto list = html.in("ul", {{"class", "ways"}});
  const auto way = [&](const std::string& address, std::string_view words) {
    const auto item = html.in("li");
    link(html, address, words);
  };
  if (!kept.first) way(desk_address("/brief", {{"shop", shop, {}}}), "What changed");
  way(desk_address("/sizes", {{"shop", shop, {}}}), "Sizes");
  way(desk_address("/lines", {{"shop", shop, {}}}), "Line by line");
  if (with_terms) way(desk_address("/terms", {{"shop", shop, {}}}), "Terms");
  way("/add", "Add another capture");
  way("/", "To the shops");
}

void undo_part(HtmlWriter& html, const Desk& desk, const Kept& kept) {
  part(html, "undo", "Not right?", [&](HtmlWriter& matter) {
    matter.element("p", {},
                   "Taking it back removes the capture from the book; its documents wait here "
                   "again, to be read in another way or dropped.");
    post_form(matter, desk, "/kept/undo", [&](HtmlWriter& form) {
      hidden_field(form, "shop", kept.shop.slug);
      hidden_field(form, "capture", std::to_string(kept.record.info.id));
      button(form, "Take it back");
    });
  });
}

std::string looked_at(const Scope& scope) {
  switch (scope.kind) {
    case Scope::Kind::all:
      return "the whole range";
    case Scope::Kind::picks:
      return "picks only";
    case Scope::Kind::categories:
      return fmt::format("{}", fmt::join(scope.categories, ", "));
  }
  return {};
}

/// That terms were kept, and how many readings of the shop's terms wait.
void terms_part(HtmlWriter& html, const Book& book, const std::string& shop) {
  html.element("p", {}, "What the text says of delivery and returns is in the book, too.");
  const std::size_t doubts = open_doubts(book, book.find_shop(shop).value()).size();
  if (doubts == 0) return;
  const auto line = html.in("p");
  html.text(counted(doubts, "reading", "readings") + " of its terms ");
  link(html, desk_address("/terms", {{"shop", shop, {}}}),
       doubts == 1 ? "waits for a yes" : "wait for a yes");
  html.text(".");
}

void comes_to(HtmlWriter& html, const Book& book, const Kept& kept, const DeskAsk& ask) {
  const bool with_terms = !ask.said("terms").empty();
  if (!ask.said("before").empty()) {
    html.element("p", {}, "The book held exactly these documents already. Nothing was changed.");
  }
  html.element("p", {{"class", "lead"}},
               fmt::format("{} in {}; looked at: {}.",
                           lines_words(static_cast<std::size_t>(kept.record.lines)),
                           kept.record.info.season, looked_at(kept.record.info.scope)));
  if (with_terms) terms_part(html, book, kept.shop.slug);
  if (kept.first) {
    html.element("p", {},
                 "This is the first capture of the shop. The next one tells what changed.");
  }
  next_ways(html, kept, with_terms);
}

/// The capture's documents and what was said, as an upload again. Nothing where they are more than
/// an upload may hold, or none has bytes.
std::optional<HeldUpload> held_again(const Desk& desk, const Book& book, const Kept& kept) {
  constexpr std::uint64_t kMost = std::uint64_t{64} << 20U;
  const CaptureInfo& info = kept.record.info;
  std::vector<DeskField> documents;
  std::uint64_t bytes = 0;
  for (std::uint32_t i = 0; i < info.documents.size(); ++i) {
    bytes += info.documents[i].bytes;
    if (bytes > kMost) return std::nullopt;
    std::string text = book.document_bytes(info.id, i);
    if (!text.empty()) documents.push_back({{}, std::move(text), info.documents[i].name});
  }
  if (documents.empty()) return std::nullopt;
  UploadWords words{{"shop", info.shop, {}},
                    {"season", info.season, {}},
                    {"as-it-is", "yes", {}},
                    {"on", to_string(info.on), {}}};
  if (info.scope.kind == Scope::Kind::picks) words.push_back({"part", "picks", {}});
  if (info.scope.kind == Scope::Kind::categories) {
    words.push_back({"part", "some", {}});
    words.push_back({"categories", to_string(info.scope), {}});
  }
  const auto held = desk.held().hold(documents, "", words);
  const auto* upload = std::get_if<HeldUpload>(&held);
  if (!upload) return std::nullopt;
  HeldUpload again = *upload;
  for (const auto& document : info.documents) {
    again.options = overlaid(again.options, document.options);
  }
  desk.held().say(again);
  return again;
}

}  // namespace

DeskAnswer kept_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  const auto kept = kept_of(*book, ask);
  if (!kept) return trouble_sheet(desk, 404, "The book has no such capture.");
  const CaptureInfo& info = kept->record.info;
  const SheetHead head{"/add", "In the book", kept->shop.name.empty() ? info.shop : kept->shop.name,
                       fmt::format("{}, seen {}", info.season, day_words(info.on))};
  auto rejections = book->rejections(info.id);
  const auto all = rejections.size();
  rejections.resize(std::min(all, kShownRefusals));
  return sheet(desk, head, [&](HtmlWriter& html) {
    part(html, "kept", "Kept", [&](HtmlWriter& matter) { comes_to(matter, *book, *kept, ask); });
    if (all > 0) {
      part(html, "refused", "Left out or doubted",
           [&](HtmlWriter& matter) { rejection_table(matter, info, rejections, all); });
    }
    if (kept->newest) undo_part(html, desk, *kept);
  });
}

DeskAnswer undo_kept(Desk& desk, const DeskAsk& ask) {
  auto book = desk.book();
  if (!book) return no_book(desk);
  const auto kept = kept_of(*book, ask);
  if (!kept || !kept->newest) {
    return trouble_sheet(
        desk, 404, "Only the newest capture of a shop can be taken back, and this is not it.");
  }
  const auto again = held_again(desk, *book, *kept);
  if (!book->undo_capture(kept->shop.slug, kept->record.info.id)) {
    if (again) desk.held().drop(*again);
    return trouble_sheet(desk, 409, "Another capture was added meanwhile. Nothing was changed.");
  }
  DeskAnswer answer;
  answer.go_to = again ? held_address(*again) : "/";
  return answer;
}

}  // namespace rangebook
