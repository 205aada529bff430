// Elements named as breadcrumbs first, then what looks like them.
#include "importers/visible_crumbs.h"

#include <algorithm>
#include <array>
#include <vector>

#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

constexpr std::size_t kMostTries = 30;  // elements named alike that are looked into
constexpr std::uint32_t kMostNodes = 40;
constexpr std::size_t kLongestName = 60;
constexpr auto kSigns = std::to_array<std::string_view>(
    {" / ", " > ", " \u203a ", " \u00bb ", " \u2192 ", " | ", " - ", " \u2013 "});

bool is_sign(std::string_view text) {
  return text.size() <= 3 && std::none_of(text.begin(), text.end(), is_ascii_letter);
}

/// The names of one trail and how many signs stand between them.
struct Trail {
  std::vector<std::string> names;
  std::size_t signs = 0;
  std::size_t arrows = 0;  ///< of the signs
};

bool is_arrow(std::string_view sign) {
  return sign == ">" || sign == "\u203a" || sign == "\u00bb" || sign == "\u2192";
}

void add_names(Trail& trail, std::string text) {
  for (const auto sign : kSigns) {
    for (auto at = text.find(sign); at != text.npos; at = text.find(sign)) {
      text.replace(at, sign.size(), "\n");
      trail.arrows += is_arrow(clean_text(sign)) ? 1 : 0;
    }
  }
  std::size_t from = 0;
  while (from <= text.size()) {
    const auto end = std::min(text.find('\n', from), text.size());
    std::string name = clean_text(text.substr(from, end - from));
    if (is_sign(name)) {
      trail.signs += name.empty() ? 0 : 1;
      trail.arrows += is_arrow(name) ? 1 : 0;
    } else {
      trail.names.push_back(std::move(name));
    }
    trail.signs += end < text.size() ? 1 : 0;
    from = end + 1;
  }
}

Trail trail_in(const PageView& view, HtmlId id) {
  const HtmlTree& tree = view.tree();
  Trail trail;
  for (HtmlId at = id + 1; at < tree[id].end; ++at) {
    // The spaces beside a sign may be the ends of the text.
    if (tree[at].is_text) add_names(trail, " " + clean_text(tree[at].text) + " ");
  }
  return trail;
}

std::string path_of(std::vector<std::string> names, const std::string& product) {
  if (!names.empty() && names.front().ends_with(':')) names.erase(names.begin());  // "You are in:"
  if (!names.empty() && is_start_page(names.front())) names.erase(names.begin());
  if (!names.empty() && folded_text(names.back()) == folded_text(product)) names.pop_back();
  std::string path;
  for (const auto& name : names) path += (path.empty() ? "" : " > ") + name;
  return path;
}

// A menu may begin with the start page too, but has no signs between its names and does not end
// with the product.
bool is_trail(const Trail& trail, const std::string& product) {
  if (trail.names.size() < 2) return false;
  const bool from_start_to_product =
      is_start_page(trail.names.front()) && folded_text(trail.names.back()) == folded_text(product);
  if (trail.signs + 1 < trail.names.size() && !from_start_to_product) return false;
  const bool wide = std::any_of(trail.names.begin(), trail.names.end(),
                                [](const auto& name) { return name.size() > kLongestName; });
  return !wide && (trail.arrows + 1 >= trail.names.size() || is_start_page(trail.names.front()) ||
                   folded_text(trail.names.back()) == folded_text(product));
}

// Links each of which leads below the one before: /dresses, /dresses/maxi.
Trail nested_links(const PageView& view, HtmlId id) {
  const HtmlTree& tree = view.tree();
  Trail trail;
  std::string before;
  for (HtmlId at = id + 1; at < tree[id].end; ++at) {
    const auto address = tree.is(at, "a") ? tree.attribute(at, "href") : std::nullopt;
    if (!address) continue;
    std::string path(address->substr(0, address->find_first_of("?#")));
    if (path == "/") continue;
    while (path.ends_with('/')) path.pop_back();
    if (path.empty() || (!before.empty() && !path.starts_with(before + "/"))) return {};
    before = std::move(path);
    trail.names.push_back(view.line(at));
  }
  return trail;
}

std::string unnamed_trail(const PageView& view, const std::string& product) {
  const HtmlTree& tree = view.tree();
  for (HtmlId id = 1; id < view.heading(); ++id) {
    const bool small = tree[id].end - id <= kMostNodes && !view.inside(view.heading(), id);
    if (tree[id].is_text || !small || view.hidden(id)) continue;
    Trail trail = trail_in(view, id);
    if (is_trail(trail, product)) return path_of(std::move(trail.names), product);
    Trail nested = nested_links(view, id);
    if (nested.names.size() > 1) return path_of(std::move(nested.names), product);
  }
  return {};
}

}  // namespace

bool is_start_page(std::string_view name) {
  constexpr auto kNames = std::to_array<std::string_view>({"home",
                                                           "homepage",
                                                           "home page",
                                                           "start",
                                                           "startseite",
                                                           "accueil",
                                                           "inicio",
                                                           "hem",
                                                           "hjem",
                                                           "etusivu",
                                                           "forside",
                                                           "strona główna",
                                                           "domů",
                                                           "hlavní strana",
                                                           "início",
                                                           "pagina inicial",
                                                           "accueil du site",
                                                           "kezdőlap",
                                                           "acasă",
                                                           "αρχική",
                                                           "главная",
                                                           "ana sayfa",
                                                           "ホーム",
                                                           "home page",
                                                           "homepagina",
                                                           "startsida",
                                                           "shop"});
  return std::find(kNames.begin(), kNames.end(), folded_text(name)) != kNames.end();
}

std::string visible_breadcrumbs(const PageView& view, const std::string& product) {
  const HtmlTree& tree = view.tree();
  std::size_t tries = 0;
  for (HtmlId id = 1; id < tree.size() && tries < kMostTries; ++id) {
    if (tree[id].is_text || view.hidden(id) || !view.named(id, PageWord::crumb_token)) continue;
    ++tries;
    std::string path = path_of(trail_in(view, id).names, product);
    if (!path.empty()) return path;
  }
  return unnamed_trail(view, product);
}

}  // namespace rangebook
