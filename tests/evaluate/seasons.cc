// Rates of the levels, and the maker of captures.
#include "tests/evaluate/seasons.h"

#include <algorithm>
#include <stdexcept>

namespace rangebook::evaluate {
namespace {

/// Per cent of the lines that stay, if not said otherwise.
struct Rates {
  std::uint32_t recoded = 0;  ///< single lines; a re-coded range has all
  std::uint32_t reworded = 0;
  std::uint32_t renamed = 0;
  std::uint32_t rewritten = 0;
  std::uint32_t repriced = 0;
  std::uint32_t drift = 0;  ///< highest move of a price
  std::uint32_t marked = 0;
  std::uint32_t recoloured = 0;
  std::uint32_t resized = 0;
  std::uint32_t fabric = 0;
  std::uint32_t moved = 0;  ///< to another category
  std::uint32_t stock = 0;
  std::uint32_t split = 0;
  std::uint32_t refused = 0;
  std::uint32_t dropped = 0;
  std::uint32_t returning = 2;
  std::uint32_t added = 0;     ///< per cent of the range
  std::uint32_t reused = 0;    ///< of those: under the name of a line that went
  std::uint32_t followed = 0;  ///< of those: made after a line that stays
};

Rates rates_of(Level level) {
  switch (level) {
    case Level::easy:
      return {5, 5, 0, 5, 25, 5, 8, 8, 8, 2, 0, 3, 0, 1, 15, 2, 20, 3, 5};
    case Level::middle:
      return {15, 15, 2, 20, 40, 10, 12, 15, 12, 4, 2, 4, 2, 2, 20, 2, 25, 6, 10};
    case Level::hard:
      return {30, 35, 10, 45, 70, 15, 20, 25, 20, 8, 4, 6, 4, 3, 30, 3, 35, 12, 25};
  }
  throw std::logic_error("no such level");
}

const std::vector<std::string> kSlugs = {"dresses",  "tops",   "knitwear",
                                         "trousers", "skirts", "jackets-coats"};

class Maker {
 public:
  Maker(const Habits& habits, const Task& task)
      : habits_(habits),
        rates_(rates_of(task.level)),
        random_(task.seed, static_cast<std::uint64_t>(task.level), slug_number(task.generator)),
        recode_all_(task.seed % 2 == 1 && task.level != Level::easy),
        partial_(task.seed % 3 == 0),
        lines_(task.lines) {}

  Seasons make() {
    seasons_.shop = habits_.shop();
    seasons_.earlier = {"AW24", "2024-09-02"};
    seasons_.then = {"AW25", "2025-09-01"};
    seasons_.now = {"AW26", "2026-09-07"};
    if (partial_ && seasons_.shop.columns.contains("category"))
      seasons_.now.scope = "dresses,knitwear,skirts,tops";
    for (int i = 0; i < lines_; ++i) old_style();
    const auto added = static_cast<std::uint32_t>(lines_) * rates_.added / 100;
    for (std::uint32_t i = 0; i < added; ++i) new_style();
    for (Capture* capture : {&seasons_.earlier, &seasons_.then, &seasons_.now})
      shuffle(capture->lines);
    return std::move(seasons_);
  }

 private:
  static std::uint64_t slug_number(const std::string& text) {
    std::uint64_t number = 7;
    for (const char c : text) number = number * 31 + static_cast<unsigned char>(c);
    return number;
  }
  bool happens(std::uint32_t percent) { return random_.below(1000) < percent * 10; }

  /// Puts a line into a capture under the shop's style of the season, if its name is still free.
  bool place(Capture& capture, int season, Line line) {
    line.category_words = habits_.category_words(line);
    line.name = habits_.season_style(line.name, season);
    if (!names_[season].insert(line.name).second) return false;
    if (!line.code.empty() && !codes_[season].insert(line.code).second) {
      names_[season].erase(line.name);
      return false;
    }
    capture.lines.push_back(std::move(line));
    return true;
  }

  /// A code that no line of any season has.
  void label_anew(Line& line, int season) {
    for (;;) {
      habits_.label(line, season, true, random_);
      const bool taken = codes_[0].contains(line.code) || codes_[1].contains(line.code) ||
                         codes_[2].contains(line.code);
      if (line.code.empty() || !taken) return;
      line.code.clear();
    }
  }

  Line invented(int season) {
    for (;;) {
      Line line = habits_.invent(random_);
      if (names_[season].contains(habits_.season_style(line.name, season))) continue;
      line.style = ++styles_;
      return line;
    }
  }

  void old_style() {
    Line line = invented(1);
    label_anew(line, 1);
    if (happens(3)) sell_out(line);
    if (happens(rates_.marked)) mark_down(line);
    if (happens(rates_.returning)) return returning_style(line);
    if (!place(seasons_.then, 1, line)) return;
    if (happens(70)) place(seasons_.earlier, 0, line);
    if (happens(rates_.dropped)) {
      gone_.push_back(line);
    } else {
      carry(std::move(line));
    }
  }
  /// Seen a season before, absent, and back: under its code or its name, never without both.
  void returning_style(Line& line) {
    if (!place(seasons_.earlier, 0, line)) return;
    Line back = line;
    reprice(back);
    if (recode_all_) label_anew(back, 2);
    place_now(back);
  }

  void carry(Line line) {
    const std::size_t at = seasons_.then.lines.size() - 1;
    const Line before = line;
    change(line);
    const bool recoded = recode_all_ || happens(rates_.recoded);
    const std::string image = line.image;
    recoded ? label_anew(line, 2) : habits_.label(line, 2, false, random_);
    if (recoded && happens(30)) line.image = image;  // the old picture is still there
    if (happens(rates_.refused)) refuse(line, before);
    if (line.colours.size() > 1 && happens(rates_.split)) return split(std::move(line), at);
    if (!place_now(line)) {  // another line has the name: the old one stays
      line.name = before.name;
      place_now(std::move(line));
    } else {
      kept_.push_back(before);
    }
  }
  /// Unreadable rows still name their line: by its code, or by its name.
  void refuse(Line& line, const Line& before) {
    line.refused = true;
    if (line.code.empty() || line.code != before.code) line.name = before.name;
  }
  bool place_now(Line line) {
    if (!in_scope(line)) return false;
    return place(seasons_.now, 2, std::move(line));
  }
  bool in_scope(const Line& line) const {
    return seasons_.now.scope == "all" ||
           ("," + seasons_.now.scope + ",").find("," + line.category + ",") != std::string::npos;
  }

  /// A colourway stands as a line of its own now, or did so then.
  void split(Line line, std::size_t at) {
    line.refused = false;
    Line piece = line;
    piece.piece = 1;
    piece.colours = {line.colours.back()};
    piece.name += " " + capitalised(piece.colours[0].name);
    line.colours.pop_back();
    if (random_.below(2) == 0) {
      piece.code.clear();
      label_anew(piece, 2);
      place_now(std::move(line));
      place_now(std::move(piece));
    } else {
      Line& whole = seasons_.then.lines[at];
      piece.name = whole.name + " " + capitalised(whole.colours.back().name);
      piece.colours = {whole.colours.back()};
      piece.code = "";
      if (whole.colours.size() > 1) {
        Line back = line;
        back.colours = whole.colours;
        whole.colours.pop_back();
        label_anew(piece, 1);
        if (!names_[1].contains(piece.name)) {
          names_[1].insert(piece.name);
          codes_[1].insert(piece.code);
          seasons_.then.lines.push_back(std::move(piece));
        }
        place_now(std::move(back));
      }
    }
  }

  void new_style() {
    Line line = invented(2);
    if (!gone_.empty() && happens(rates_.reused)) {
      take_name(line, gone_.back());
      gone_.pop_back();
    } else if (!kept_.empty() && happens(rates_.followed)) {
      const int style = line.style;
      line = habits_.follow_up(one_of(kept_, random_), random_);
      line.style = style;
    }
    label_anew(line, 2);
    place_now(std::move(line));
  }
  /// Another garment under a name that was free again: other fabric, other text, other price.
  void take_name(Line& line, const Line& old) {
    const int style = line.style;
    line = habits_.follow_up(old, random_);
    line.style = style;
    line.name = old.name;
    for (int tries = 0; tries < 50 && line.fibres == old.fibres; ++tries)
      habits_.change_fabric(line, random_);
    const Amount price =
        habits_.rounded(old.colours[0].price * (random_.below(2) == 0 ? 60 : 150) / 100);
    for (Colourway& colour : line.colours) colour.price = price;
  }

  void change(Line& line) {
    if (happens(rates_.renamed)) {
      habits_.rename(line, random_);
    } else if (happens(rates_.reworded)) {
      habits_.reword_name(line, random_);
    }
    if (happens(rates_.rewritten)) habits_.rewrite(line, random_);
    if (happens(rates_.fabric)) habits_.change_fabric(line, random_);
    if (happens(rates_.repriced)) reprice(line);
    if (happens(rates_.marked)) {
      mark_down(line);
    } else {
      for (Colourway& colour : line.colours) {
        if (colour.full_price) colour.price = *colour.full_price;
        colour.full_price.reset();
      }
    }
    if (happens(rates_.moved) && seasons_.now.scope == "all" &&
        seasons_.shop.columns.contains("category"))
      line.category = one_of(kSlugs, random_);
    if (happens(rates_.recoloured)) recolour(line);
    if (happens(rates_.resized)) resize(line);
    for (Colourway& colour : line.colours) colour.sold_out.clear();
    if (happens(rates_.stock)) sell_out(line);
  }
  void reprice(Line& line) {
    const auto step = static_cast<Amount>(random_.below(rates_.drift * 2 + 1));
    const Amount percent = 100 - static_cast<Amount>(rates_.drift) / 2 + step * 3 / 4;
    for (Colourway& colour : line.colours) {
      Amount& amount = colour.full_price ? *colour.full_price : colour.price;
      amount = habits_.rounded(amount * percent / 100);
      if (colour.full_price) colour.price = std::min(colour.price, *colour.full_price);
      if (colour.full_price == colour.price) colour.full_price.reset();
    }
  }
  void mark_down(Line& line) {
    if (!seasons_.shop.columns.contains("full_price")) return;
    const Amount share = 60 + static_cast<Amount>(random_.below(3)) * 10;
    for (Colourway& colour : line.colours) {
      const Amount full = colour.full_price.value_or(colour.price);
      colour.price = habits_.rounded(full * share / 100);
      colour.full_price = full;
    }
  }
  void recolour(Line& line) {
    if (line.colours.size() > 1 && random_.below(2) == 0) {
      line.colours.erase(line.colours.begin());
      return;
    }
    Colourway more = line.colours[0];
    for (;;) {
      more.name = one_of(habits_.colours(), random_);
      const bool there = std::any_of(line.colours.begin(), line.colours.end(),
                                     [&](const Colourway& c) { return c.name == more.name; });
      if (!there) break;
    }
    line.colours.push_back(more);
  }
  void resize(Line& line) {
    const std::set<SizeStep> old = line.colours[0].sizes;
    std::set<SizeStep> sizes = old;
    const auto top = static_cast<SizeStep>(seasons_.shop.ladder.size()) - 1;
    const std::uint32_t draw = random_.below(seasons_.shop.petite.empty() ? 4 : 5);
    if (draw == 0 && *sizes.begin() > 0) sizes.insert(*sizes.begin() - 1);
    if (draw <= 1) {
      for (SizeStep more = 1; more <= 2 && *old.rbegin() + more <= top; ++more)
        sizes.insert(*old.rbegin() + more);
    }
    if (draw == 2) sizes.erase(*old.rbegin());
    if (draw == 3 && seasons_.shop.layout != Layout::row_a_colour)
      sizes.erase(std::next(sizes.begin(), 2));
    if (draw == 4) {
      for (const SizeStep step : old) {
        if (step < kPetite && step <= *old.begin() + 3) sizes.insert(step + kPetite);
      }
    }
    for (Colourway& colour : line.colours) colour.sizes = sizes;
  }
  static void sell_out(Line& line) {
    for (Colourway& colour : line.colours) colour.sold_out = colour.sizes;
  }
  void shuffle(std::vector<Line>& lines) {
    for (std::size_t i = lines.size(); i > 1; --i)
      std::swap(lines[i - 1], lines[random_.below(static_cast<std::uint32_t>(i))]);
  }

  const Habits& habits_;
  Rates rates_;
  Random random_;
  bool recode_all_;
  bool partial_;
  int lines_;
  int styles_ = 0;
  Seasons seasons_;
  std::vector<Line> gone_;
  std::vector<Line> kept_;
  std::map<int, std::set<std::string>> names_;
  std::map<int, std::set<std::string>> codes_;
};

void strip(Capture& capture) {
  capture.scope = "all";
  std::erase_if(capture.lines, [](const Line& line) { return line.refused; });
  for (Line& line : capture.lines) {
    line.code.clear();
    line.category.clear();
    line.category_words.clear();
    line.fibres.clear();
    line.composition.clear();
    line.url.clear();
    line.image.clear();
    line.colours = {{"", {}, {}, line.colours[0].price, {}}};
  }
}

}  // namespace

std::unique_ptr<Habits> habits_of(const Task& task) {
  if (task.generator == "high-street") return high_street(task.seed);
  if (task.generator == "catalogue") return catalogue(task.seed);
  if (task.generator == "atelier") return atelier(task.seed);
  if (task.generator == "marche") return marche(task.seed);
  return nullptr;
}

Seasons make_seasons(const Task& task) {
  const auto habits = habits_of(task);
  if (!habits) throw std::invalid_argument("no generator " + task.generator);
  return Maker(*habits, task).make();
}

Seasons names_only(const Seasons& seasons) {
  Seasons less = seasons;
  less.shop.layout = Layout::row_a_line;
  less.shop.columns = {"name", "description", "price"};
  for (Capture* capture : {&less.earlier, &less.then, &less.now}) strip(*capture);
  return less;
}

}  // namespace rangebook::evaluate
