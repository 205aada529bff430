// What is due: counted from the last capture of a shop, and from the review dates of picks.
#include <algorithm>
#include <utility>

#include "tracker/app/pick_desk.h"
#include "tracker/app/pick_follow_up.h"
#include "tracker/store/picks.h"

namespace rangebook {
namespace {

DueShop due_shop(const Shop& shop, const std::vector<CaptureRecord>& captures,
                 const DueRequest& request) {
  DueShop due{shop, {}, {}, request.on};
  for (const auto& record : captures) {
    if (record.info.on > request.on) break;
    due.last = record.info;
    if (record.info.scope.kind == Scope::Kind::all) due.whole = record.info;
  }
  if (due.last) due.due = due.last->on + date::days(request.every);
  return due;
}

void note_later(DueList& list, Day day) { list.next = std::min(list.next.value_or(day), day); }

using CapturesOfAll = std::map<std::string, std::vector<CaptureRecord>>;

void add_shops(DueList& list, const Book& book, const CapturesOfAll& captures, Day until) {
  static const std::vector<CaptureRecord> kNone;
  for (const auto& record : book.shops()) {
    const auto own = captures.find(record.shop.slug);
    DueShop due = due_shop(record.shop, own == captures.end() ? kNone : own->second, list.request);
    if (due.due <= until) {
      list.shops.push_back(std::move(due));
    } else {
      ++list.shops_later;
      note_later(list, due.due);
    }
  }
  std::stable_sort(list.shops.begin(), list.shops.end(), [](const DueShop& a, const DueShop& b) {
    if (a.last.has_value() != b.last.has_value()) return !a.last.has_value();
    return a.due < b.due;
  });
}

void add_picks(DueList& list, const Book& book, Day until) {
  FollowUp follow(book, list.request.on);
  for (const Pick& pick : kept_picks(book, "")) {
    if (pick.on > list.request.on) continue;
    if (!pick.review) {
      ++list.picks_undated;
    } else if (*pick.review <= until) {
      list.picks.push_back(follow.of(pick));
    } else {
      ++list.picks_later;
      note_later(list, *pick.review);
    }
  }
  std::stable_sort(
      list.picks.begin(), list.picks.end(),
      [](const FollowedPick& a, const FollowedPick& b) { return a.pick.review < b.pick.review; });
}

}  // namespace

DueList what_is_due(const Book& book, const DueRequest& request) {
  return what_is_due(book, book.captures_of_all(), request);
}

DueList what_is_due(const Book& book, const CapturesOfAll& captures, const DueRequest& request) {
  DueList list;
  list.request = request;
  const Day until = request.on + date::days(request.ahead);
  add_shops(list, book, captures, until);
  add_picks(list, book, until);
  return list;
}

}  // namespace rangebook
