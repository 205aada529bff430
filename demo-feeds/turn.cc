// Events of a turn. Each one changes the later range and notes its kind.
#include "demo-feeds/turn.h"

#include <algorithm>
#include <stdexcept>

namespace demo {
namespace {

System main_system(const Style& style) { return style.sizes.begin()->system; }

/// The list of events is the truth, so an event that would change nothing is a slip in the story.
void require(bool happens, const char* event, const Style& style) {
  if (!happens) throw std::logic_error(std::string(event) + " changes nothing: " + style.code);
}

void erase_sizes(Style& style, const std::function<bool(const SizeStep&)>& gone) {
  std::erase_if(style.sizes, gone);
  std::erase_if(style.gtins, [&](const auto& entry) { return gone(entry.first.second); });
}

}  // namespace

Style& Turn::style(int uid) {
  Style* found = now_.find(uid);
  if (found == nullptr) throw std::logic_error("no style " + std::to_string(uid));
  return *found;
}

std::vector<int> Turn::draw(const std::string& department, int count, const Test& test) {
  std::vector<int> fitting;
  for (const Style& style : now_.styles) {
    const bool wanted = department.empty() || style.category == department;
    if (wanted && !touched_.contains(style.uid) && (!test || test(style))) {
      fitting.push_back(style.uid);
    }
  }
  inventor_.random().shuffle(fitting);
  if (fitting.size() < static_cast<std::size_t>(count)) {
    throw std::logic_error("too few untouched styles in " + department);
  }
  fitting.resize(static_cast<std::size_t>(count));
  touched_.insert(fitting.begin(), fitting.end());
  return fitting;
}

void Turn::drop(int uid) {
  note("line-dropped", uid);
  std::erase_if(now_.styles, [uid](const Style& style) { return style.uid == uid; });
}

int Turn::add(const std::string& department) {
  Style style = inventor_.invent(department);
  const int uid = style.uid;
  add_style(std::move(style), "line-new");
  return uid;
}

void Turn::add_style(Style style, const std::string& kind) {
  note(kind, style.uid);
  touched_.insert(style.uid);
  now_.styles.push_back(std::move(style));
}

void Turn::not_covered(int uid) {
  note("line-not-covered", uid);
  std::erase_if(now_.styles, [uid](const Style& style) { return style.uid == uid; });
}

void Turn::rename(int uid, const std::string& name) {
  require(style(uid).name != name, "renaming", style(uid));
  style(uid).name = name;
  note("line-renamed", uid);
}

void Turn::recode(int uid, const std::string& code) {
  require(style(uid).code != code, "recoding", style(uid));
  style(uid).code = code;
  note("line-recoded", uid);
}

void Turn::add_colour(int uid) {
  Style& changed = style(uid);
  const std::string colour = inventor_.new_colour(changed);
  changed.colours.push_back(colour);
  inventor_.numbers().number_variants(changed);
  events_.push_back({.kind = "colour-added", .uid = uid, .colour = colour});
}

void Turn::drop_colour(int uid) {
  Style& changed = style(uid);
  require(changed.colours.size() > 1, "dropping the only colour", changed);
  const std::string colour = changed.colours.back();
  changed.colours.pop_back();
  changed.sale.erase(colour);
  std::erase_if(changed.gtins, [&](const auto& entry) { return entry.first.first == colour; });
  events_.push_back({.kind = "colour-dropped", .uid = uid, .colour = colour});
}

void Turn::note_size(const std::string& kind, int uid, Fit fit) {
  Event event{.kind = kind, .uid = uid};
  event.system = main_system(style(uid));
  event.fit = fit;
  events_.push_back(event);
}

void Turn::widen(int uid, int low, int high) {
  Style& changed = style(uid);
  const System system = main_system(changed);
  const std::vector<SizeStep> had = sizes_of(changed, system, Fit::regular);
  require(low < had.front().rank || high > had.back().rank, "widening", changed);
  for (const SizeStep& size : run(system, Fit::regular, low, high)) {
    if (size < had.front() || size > had.back()) changed.sizes.insert(size);
  }
  inventor_.numbers().number_variants(changed);
  note_size("sizes-widened", uid, Fit::regular);
}

void Turn::narrow(int uid, int low, int high) {
  const std::vector<SizeStep> had = sizes_of(style(uid), main_system(style(uid)), Fit::regular);
  require(low > had.front().rank || high < had.back().rank, "narrowing", style(uid));
  erase_sizes(style(uid), [&](const SizeStep& size) {
    return size.fit == Fit::regular && (size.rank < low || size.rank > high);
  });
  note_size("sizes-narrowed", uid, Fit::regular);
}

void Turn::open_gap(int uid, int rank) {
  const std::vector<SizeStep> had = sizes_of(style(uid), main_system(style(uid)), Fit::regular);
  require(std::ranges::count(had, rank, &SizeStep::rank) == 1 && rank > had.front().rank &&
              rank < had.back().rank,
          "opening a gap", style(uid));
  erase_sizes(style(uid),
              [&](const SizeStep& size) { return size.fit == Fit::regular && size.rank == rank; });
  note_size("size-gap-opened", uid, Fit::regular);
}

void Turn::fill_gap(int uid, int rank) {
  Style& changed = style(uid);
  const SizeStep missing{main_system(changed), Fit::regular, rank};
  require(changed.sizes.insert(missing).second, "filling a gap", changed);
  inventor_.numbers().number_variants(changed);
  note_size("size-gap-filled", uid, Fit::regular);
}

void Turn::add_fit(int uid, Fit fit, int low, int high) {
  Style& changed = style(uid);
  require(sizes_of(changed, main_system(changed), fit).empty(), "adding a fit range", changed);
  changed.sizes.merge(run(main_system(changed), fit, low, high));
  inventor_.numbers().number_variants(changed);
  note_size("fit-range-added", uid, fit);
}

void Turn::drop_fit(int uid, Fit fit) {
  require(!sizes_of(style(uid), main_system(style(uid)), fit).empty(), "dropping a fit range",
          style(uid));
  erase_sizes(style(uid), [&](const SizeStep& size) { return size.fit == fit; });
  note_size("fit-range-dropped", uid, fit);
}

void Turn::reprice(int uid, int percent) {
  Style& changed = style(uid);
  const Minor old = changed.full;
  changed.full = inventor_.tidy(old * percent / 100);
  require(changed.full != old, "repricing", changed);
  note(changed.full > old ? "price-up" : "price-down", uid);
}

void Turn::set_sale(Style& changed, int percent, const std::vector<std::string>& colours) {
  for (const std::string& colour : colours.empty() ? changed.colours : colours) {
    changed.sale[colour] = inventor_.tidy(changed.full * (100 - percent) / 100);
  }
}

void Turn::mark_down(int uid, int percent, const std::vector<std::string>& colours) {
  require(style(uid).sale.empty(), "marking down again", style(uid));
  set_sale(style(uid), percent, colours);
  events_.push_back({.kind = "marked-down", .uid = uid, .colours = colours});
}

void Turn::change_markdown(int uid, int percent) {
  const std::map<std::string, Minor> old = style(uid).sale;
  set_sale(style(uid), percent, {});
  require(!old.empty() && style(uid).sale != old, "changing a markdown", style(uid));
  note("markdown-changed", uid);
}

void Turn::end_markdown(int uid) {
  require(!style(uid).sale.empty(), "ending a markdown", style(uid));
  style(uid).sale.clear();
  note("markdown-ended", uid);
}

void Turn::change_fabric(int uid) {
  Style& changed = style(uid);
  const std::string noun = changed.fabric.noun;
  changed.fabric = inventor_.new_fabric(changed);
  const std::size_t place = changed.description.find(noun);
  if (place != std::string::npos) {
    changed.description.replace(place, noun.size(), changed.fabric.noun);
  }
  note("composition-changed", uid);
}

void Turn::move(int uid, const std::string& department) {
  require(style(uid).category != department, "moving", style(uid));
  style(uid).category = department;
  note("category-moved", uid);
}

void Turn::sell_out(int uid) {
  require(!style(uid).all_gone, "selling out", style(uid));
  style(uid).all_gone = true;
  note("stock-out", uid);
}

void Turn::restock(int uid) {
  require(style(uid).all_gone, "restocking", style(uid));
  style(uid).all_gone = false;
  note("stock-back", uid);
}

}  // namespace demo
