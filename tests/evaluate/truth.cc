// A plain comparison of what is known by its style.
#include "tests/evaluate/truth.h"

namespace rangebook::evaluate {
namespace {

using Sizes = std::set<SizeStep>;

std::string joined(const Shop& shop, const Sizes& sizes) {
  std::string text;
  for (const SizeStep step : sizes) text += (text.empty() ? "" : " ") + shop.label(step);
  return text;
}
/// The sizes of one fit, over all colours.
Sizes sizes_of(const Line& line, bool petite) {
  Sizes all;
  for (const Colourway& colour : line.colours) {
    for (const SizeStep step : colour.sizes) {
      if ((step >= kPetite) == petite) all.insert(step);
    }
  }
  return all;
}
/// Steps of `has` that `lacks` has not, strictly inside its first and last.
bool has_inside(const Sizes& has, const Sizes& lacks) {
  for (const SizeStep step : has) {
    if (step > *lacks.begin() && step < *lacks.rbegin() && !lacks.contains(step)) return true;
  }
  return false;
}
std::string letters(const std::string& name) {
  std::string out;
  for (const char c : name) {
    if (c != ' ') out += c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
  }
  return out;
}

class Comparer {
 public:
  explicit Comparer(const Seasons& seasons) : seasons_(seasons) {}

  Truth compare() {
    const auto then = by_style(seasons_.then);
    const auto now = by_style(seasons_.now);
    const auto earlier = by_style(seasons_.earlier);
    for (const auto& [style, line] : then) {
      if (const auto found = now.find(style); found == now.end() || found->second->refused) {
        const bool looked = found == now.end() && looked_at(line->category);
        if (!line->refused) say(looked ? "line-dropped" : "line-not-covered", style);
      } else if (!line->refused) {
        carried(style, *line, *found->second);
      }
    }
    for (const auto& [style, line] : now) {
      if (then.contains(style) || line->refused) continue;
      say(earlier.contains(style) ? "line-returned" : "line-new", style);
    }
    return std::move(truth_);
  }

 private:
  using ByStyle = std::map<int, const Line*>;
  ByStyle by_style(const Capture& capture) {
    ByStyle lines;
    for (const Line& line : capture.lines) {
      if (line.piece == 0) lines[line.style] = &line;
      if (line.piece != 0 && &capture != &seasons_.earlier) truth_.split.insert(line.style);
    }
    return lines;
  }
  bool looked_at(const std::string& category) const {
    const std::string& scope = seasons_.now.scope;
    return scope == "all" || ("," + scope + ",").find("," + category + ",") != std::string::npos;
  }
  void say(const std::string& kind, int style, const std::string& what = "") {
    truth_.changes.insert({kind, style, what});
  }

  void carried(int style, const Line& then, const Line& now) {
    if (then.name != now.name) {
      if (letters(then.name) == letters(now.name)) truth_.respelt.insert(style);
      say("line-renamed", style, then.name + " > " + now.name);
    }
    if (then.code != now.code) say("line-recoded", style, then.code + " > " + now.code);
    if (then.fibres != now.fibres && seasons_.shop.columns.contains("composition"))
      say("composition-changed", style);
    if (then.category != now.category) say("category-moved", style, now.category);
    colours(style, then, now);
    for (const bool petite : {false, true})
      sizes(style, sizes_of(then, petite), sizes_of(now, petite));
    stock(style, then, now);
  }
  void colours(int style, const Line& then, const Line& now) {
    std::map<std::string, const Colourway*> old;
    for (const Colourway& colour : then.colours) old[colour.name] = &colour;
    for (const Colourway& colour : now.colours) {
      const auto found = old.find(colour.name);
      if (found == old.end()) {
        say("colour-added", style, colour.name);
        continue;
      }
      if (share_a_size(*found->second, colour)) prices(style, *found->second, colour);
      old.erase(found);
    }
    for (const auto& [name, colour] : old) say("colour-dropped", style, name);
  }
  static bool share_a_size(const Colourway& a, const Colourway& b) {
    if (a.sizes.empty() && b.sizes.empty()) return true;
    for (const SizeStep step : a.sizes) {
      if (b.sizes.contains(step)) return true;
    }
    return false;
  }
  void prices(int style, const Colourway& then, const Colourway& now) {
    const auto moved = [](Amount a, Amount b) {
      return std::to_string(a) + " > " + std::to_string(b);
    };
    const Amount full = then.full_price.value_or(then.price);
    const Amount full_now = now.full_price.value_or(now.price);
    if (full_now != full)
      say(full_now > full ? "price-up" : "price-down", style, moved(full, full_now));
    const bool was = then.full_price.has_value();
    const bool is = now.full_price.has_value();
    const std::string paid = moved(then.price, now.price);
    if (!was && is) say("marked-down", style, paid);
    if (was && !is) say("markdown-ended", style, paid);
    if (was && is && then.price != now.price) say("markdown-changed", style, paid);
  }
  void sizes(int style, const Sizes& then, const Sizes& now) {
    const std::string what = joined(seasons_.shop, then) + " > " + joined(seasons_.shop, now);
    if (then.empty() && !now.empty()) say("fit-range-added", style, what);
    if (!then.empty() && now.empty()) say("fit-range-dropped", style, what);
    if (then.empty() || now.empty()) return;
    if (*now.begin() < *then.begin() || *now.rbegin() > *then.rbegin())
      say("sizes-widened", style, what);
    if (*now.begin() > *then.begin() || *now.rbegin() < *then.rbegin())
      say("sizes-narrowed", style, what);
    if (has_inside(now, then)) say("size-gap-filled", style, what);
    if (has_inside(then, now)) say("size-gap-opened", style, what);
  }
  void stock(int style, const Line& then, const Line& now) {
    if (!seasons_.shop.columns.contains("in_stock")) return;
    const auto there = [](const Line& line) {
      for (const Colourway& colour : line.colours) {
        if (colour.sold_out.size() < colour.sizes.size()) return true;
      }
      return false;
    };
    if (there(then) && !there(now)) say("stock-out", style);
    if (!there(then) && there(now)) say("stock-back", style);
  }

  const Seasons& seasons_;
  Truth truth_;
};

}  // namespace

Truth truth_of(const Seasons& seasons) { return Comparer(seasons).compare(); }

}  // namespace rangebook::evaluate
