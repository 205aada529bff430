// A turn of the season: events that change a range, each written down as it happens. What the
// program must find later is this list, not the result of comparing anything.
#pragma once

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "demo-feeds/invent.h"
#include "demo-feeds/range.h"

namespace demo {

/// One change the scenario made. `kind` is the word of the JSON contract.
struct Event {
  std::string kind{};
  int uid = 0;
  std::string colour{};        ///< for colour kinds
  System system = System::uk;  ///< for size kinds
  Fit fit = Fit::regular;
  std::vector<std::string> colours{};  ///< for markdown kinds: the colours concerned; empty for all
};

class Turn {
 public:
  using Test = std::function<bool(const Style&)>;

  Turn(Inventor& inventor, const Range& then) : inventor_(inventor), then_(then), now_(then) {}

  /// `count` styles of a department that no event has touched yet and that pass `test`, drawn at
  /// random. They count as touched from then on. Throws when there are too few.
  std::vector<int> draw(const std::string& department, int count, const Test& test = {});

  void drop(int uid);
  int add(const std::string& department);
  void add_style(Style style, const std::string& kind);  ///< `line-new` or `line-returned`
  void not_covered(int uid);
  void rename(int uid, const std::string& name);
  void recode(int uid, const std::string& code);
  void add_colour(int uid);
  void drop_colour(int uid);
  /// Adds all steps of the style's own system up or down to `low`..`high`.
  void widen(int uid, int low, int high);
  void narrow(int uid, int low, int high);
  void open_gap(int uid, int rank);
  void fill_gap(int uid, int rank);
  void add_fit(int uid, Fit fit, int low, int high);
  void drop_fit(int uid, Fit fit);
  void reprice(int uid, int percent);  ///< of the full price, 108 for 8 % up
  /// Marks down by `percent` off; only `colours` when given.
  void mark_down(int uid, int percent, const std::vector<std::string>& colours = {});
  void change_markdown(int uid, int percent);
  void end_markdown(int uid);
  void change_fabric(int uid);
  void move(int uid, const std::string& department);
  void sell_out(int uid);
  void restock(int uid);

  Style& style(int uid);
  const Range& then() const { return then_; }
  Range& now() { return now_; }
  const std::vector<Event>& events() const { return events_; }
  Inventor& inventor() { return inventor_; }

 private:
  void note(const std::string& kind, int uid) { events_.push_back({.kind = kind, .uid = uid}); }
  void note_size(const std::string& kind, int uid, Fit fit);
  void set_sale(Style& style, int percent, const std::vector<std::string>& colours);

  Inventor& inventor_;
  Range then_;
  Range now_;
  std::vector<Event> events_;
  std::set<int> touched_;
};

}  // namespace demo
