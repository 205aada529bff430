// Turns events into the expected changes, and works out the figures of categories.
#include "demo-feeds/truth.h"

#include <algorithm>
#include <array>
#include <stdexcept>

#include "demo-feeds/category_truth.h"

namespace demo {
namespace {

using Json = nlohmann::ordered_json;

/// In the order of the report (design, section 6).
constexpr std::array<const char*, 28> kKinds{
    "line-new",        "line-dropped",        "line-returned",
    "line-renamed",    "line-recoded",        "line-not-covered",
    "colour-added",    "colour-dropped",      "sizes-widened",
    "sizes-narrowed",  "size-gap-filled",     "size-gap-opened",
    "fit-range-added", "fit-range-dropped",   "price-up",
    "price-down",      "marked-down",         "markdown-changed",
    "markdown-ended",  "composition-changed", "category-moved",
    "stock-out",       "stock-back",          "terms-changed",
    "reach-widened",   "reach-narrowed",      "entry-price-changed",
    "price-index"};

/// One side of a comparison, for writing facts.
struct Side {
  const Style& style;
  const Dialect& dialect;
  const std::string& currency;
};

Json name_fact(const Side& side) { return {{"code", side.style.code}, {"name", side.style.name}}; }

Json full_price(const Side& side) {
  return {{"amount_minor", side.style.full}, {"currency", side.currency}};
}

Json selling_price(const Side& side, const Event& event) {
  const std::string& colour =
      event.colours.empty() ? side.style.colours.front() : event.colours.front();
  Json fact{{"amount_minor", side.style.selling(colour)}, {"currency", side.currency}};
  if (side.style.sale.contains(colour)) fact["full_amount_minor"] = side.style.full;
  if (!event.colours.empty()) fact["colours"] = event.colours;
  return fact;
}

Json stock_fact(const Side& side) {
  const std::vector<VariantKey> keys = side.style.variants();
  const auto in_stock =
      std::ranges::count_if(keys, [&](const VariantKey& key) { return side.style.in_stock(key); });
  return {{"in_stock", in_stock}, {"offered", keys.size()}};
}

bool starts_with(const std::string& kind, const std::string& start) {
  return kind.rfind(start, 0) == 0;
}

Json fact_of(const Event& event, const Side& side) {
  const std::string& kind = event.kind;
  if (starts_with(kind, "line-")) return name_fact(side);
  if (starts_with(kind, "size") || starts_with(kind, "fit-range")) {
    return size_fact(sizes_of(side.style, event.system, event.fit));
  }
  if (starts_with(kind, "price-")) return full_price(side);
  if (starts_with(kind, "mark")) return selling_price(side, event);
  if (starts_with(kind, "colour-"))
    return Json::object({{"colour", spelled(event.colour, side.dialect)}});
  if (starts_with(kind, "stock-")) return stock_fact(side);
  if (kind == "composition-changed") {
    return Json::object({{"composition", composition(side.style.fabric, side.dialect.wording)}});
  }
  if (kind == "category-moved") return Json::object({{"category", side.style.category}});
  throw std::logic_error("no fact for " + kind);
}

/// The state a returned line was last seen in before the comparison.
const Style* last_seen(const Story& story, std::size_t before, int uid) {
  for (std::size_t i = before; i-- > 0;) {
    if (const Style* style = story.captures[i].range.find(uid)) return style;
  }
  return nullptr;
}

/// Kinds whose subject is on one side only.
bool only_after(const std::string& kind) {
  return kind == "line-new" || kind == "colour-added" || kind == "fit-range-added";
}
bool only_before(const std::string& kind) {
  return kind == "line-dropped" || kind == "line-not-covered" || kind == "colour-dropped" ||
         kind == "fit-range-dropped";
}

Json line_change(const Event& event, const Story& story, const Comparison& comparison) {
  const Capture& from = story.captures[comparison.from];
  const Capture& to = story.captures[comparison.to];
  const std::string& currency = story.house.currency;
  const Style* before = event.kind == "line-returned" ? last_seen(story, comparison.from, event.uid)
                                                      : from.range.find(event.uid);
  const Style* after = to.range.find(event.uid);
  const Style* shown = after != nullptr ? after : before;
  if (shown == nullptr) throw std::logic_error("an event about no style: " + event.kind);
  Json change{
      {"kind", event.kind},
      {"line", {{"code", shown->code}, {"name", shown->name}, {"category", shown->category}}},
      {"before", nullptr},
      {"after", nullptr}};
  if (before != nullptr && !only_after(event.kind)) {
    change["before"] = fact_of(event, {*before, from.dialect, currency});
  }
  if (after != nullptr && !only_before(event.kind)) {
    change["after"] = fact_of(event, {*after, to.dialect, currency});
  }
  return change;
}

std::size_t kind_order(const Json& change) {
  const auto found = std::ranges::find(kKinds, change.at("kind").get<std::string>());
  if (found == kKinds.end()) throw std::logic_error("unknown kind " + change.at("kind").dump());
  return static_cast<std::size_t>(found - kKinds.begin());
}

bool change_less(const Json& a, const Json& b) {
  if (kind_order(a) != kind_order(b)) return kind_order(a) < kind_order(b);
  if (a.at("line").is_null()) return false;  // already in the order of categories
  const auto key = [](const Json& change) {
    return std::pair{change.at("line").at("code").get<std::string>(),
                     change.at("line").at("name").get<std::string>()};
  };
  return key(a) < key(b);
}

Json counts(const Json& changes) {
  Json result;
  for (const char* kind : kKinds) {
    result[kind] = std::ranges::count_if(
        changes, [kind](const Json& change) { return change.at("kind") == kind; });
  }
  return result;
}

Json reconciliation(const Capture& from, const Capture& to, const Json& by_kind) {
  const auto carried = std::ranges::count_if(
      from.range.styles, [&](const Style& style) { return to.range.find(style.uid) != nullptr; });
  const auto count = [&](const char* kind) { return by_kind.at(kind).get<std::int64_t>(); };
  const auto then = static_cast<std::int64_t>(from.range.styles.size());
  const auto now = static_cast<std::int64_t>(to.range.styles.size());
  if (carried + count("line-new") + count("line-returned") != now ||
      carried + count("line-dropped") + count("line-not-covered") != then) {
    throw std::logic_error("the scenario does not add up");
  }
  return {{"lines_then", then},
          {"lines_now", now},
          {"carried", carried},
          {"new", count("line-new")},
          {"returned", count("line-returned")},
          {"unseen_then", 0},
          {"dropped", count("line-dropped")},
          {"not_covered", count("line-not-covered")}};
}

Json capture_json(const Capture& capture) {
  return {{"season", capture.season}, {"date", capture.date}, {"scope", capture.scope}};
}

}  // namespace

nlohmann::ordered_json truth(const Story& story, const Comparison& comparison) {
  const Capture& from = story.captures.at(comparison.from);
  const Capture& to = story.captures.at(comparison.to);
  Json changes = Json::array();
  for (const Event& event : comparison.events) {
    changes.push_back(line_change(event, story, comparison));
  }
  for (Json& change : category_changes(from, to, story.house.currency)) {
    changes.push_back(std::move(change));
  }
  std::stable_sort(changes.begin(), changes.end(), change_less);
  const Json by_kind = counts(changes);
  return {{"format", "rangebook.demo-truth/1"},
          {"note",
           "Invented: no shop, garment or price here is real. Written by "
           "demo-feeds/generate.cc from the scenario's events."},
          {"shop", story.house.slug},
          {"from", capture_json(from)},
          {"to", capture_json(to)},
          {"counts", by_kind},
          {"reconciliation", reconciliation(from, to, by_kind)},
          {"changes", changes}};
}

}  // namespace demo
