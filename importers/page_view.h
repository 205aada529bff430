// A page as a reader sees it: which elements are shown, which stand aside of the product, what
// their names hint at, and the heading everything is judged from.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "importers/html_tree.h"
#include "importers/page_words.h"

namespace rangebook {

/// Over one tree, which must outlive it. All questions cost constant time or grow with the text
/// asked for.
class PageView {
 public:
  explicit PageView(const HtmlTree& tree);

  const HtmlTree& tree() const { return tree_; }
  /// The main heading: an h1, else an element named as the product's title, else one that says what
  /// the page's title says; 0 if none.
  HtmlId heading() const { return heading_; }
  std::string heading_text() const;
  /// The page's title and its parts ("Wool coat" of "Wool coat | Shop"), folded.
  std::vector<std::string> titles() const;

  bool hidden(HtmlId id) const { return flag(id, kHidden); }
  /// Aside of the product: navigation, footer, other products, reviews.
  bool aside(HtmlId id) const { return flag(id, kAside); }
  bool struck(HtmlId id) const { return flag(id, kStruck); }
  bool shown(HtmlId id) const { return !hidden(id) && !aside(id); }
  /// Shown, and not folded away by a style sheet. A folded tab still describes the product; a
  /// folded notice ("sold out") does not hold.
  bool displayed(HtmlId id) const { return shown(id) && !flag(id, kFolded); }
  bool in_link(HtmlId id) const { return flag(id, kInLink); }

  /// True when class, id, itemprop or a data name of the element has a token of the role.
  bool named(HtmlId id, PageWord role) const;
  /// The same for the element or one of the `levels` around it.
  bool named_near(HtmlId id, PageWord role, int levels) const;

  /// The shown text of an element, as one line. Between two numbers of different elements stands
  /// "|", or "." before raised cents.
  std::string line(HtmlId id) const;
  /// How many levels above `from` the nearest element around both stands.
  int levels_apart(HtmlId from, HtmlId other) const;
  bool inside(HtmlId id, HtmlId outer) const { return outer <= id && id < tree_[outer].end; }

 private:
  enum Flag : std::uint8_t { kHidden = 1, kAside = 2, kStruck = 4, kInLink = 8, kFolded = 16 };
  bool flag(HtmlId id, Flag which) const { return (flags_[id] & which) != 0; }
  void mark_own(HtmlId id);
  void mark_styled();
  int heading_rank(HtmlId h1) const;
  void find_heading();
  void find_titled();
  bool is_related_heading(HtmlId id) const;
  void mark_asides();
  HtmlId main_part() const;
  void spread();
  bool is_cents(HtmlId text) const;
  HtmlId block_of(HtmlId text) const;

  const HtmlTree& tree_;
  std::vector<std::uint8_t> flags_;
  HtmlId heading_ = 0;
};

}  // namespace rangebook
