// How one invented shop names, codes and describes its lines, and how it words them anew a season
// later. Each generator is written for itself, with words and habits of its own.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "tests/bench/random.h"
#include "tests/evaluate/range_model.h"

namespace rangebook::evaluate {

using bench::Random;

class Habits {
 public:
  virtual ~Habits() = default;
  virtual const Shop& shop() const = 0;
  /// A new style with name, texts, colours, sizes and prices; without code, address and picture.
  virtual Line invent(Random& random) const = 0;
  /// A style made after another one that stays in the range.
  virtual Line follow_up(const Line& model, Random& random) const = 0;
  /// The same style under a name in other words.
  virtual void reword_name(Line& line, Random& random) const = 0;
  /// The same style under a new name, as far as the shop ever does that.
  virtual void rename(Line& line, Random& random) const = 0;
  /// The description in other words, or none.
  virtual void rewrite(Line& line, Random& random) const = 0;
  /// Another fabric.
  virtual void change_fabric(Line& line, Random& random) const = 0;
  /// Names the line's category as the shop does.
  virtual std::string category_words(const Line& line) const = 0;
  /// Code, address and picture for one season; `fresh`: the code has to be another one.
  virtual void label(Line& line, int season, bool fresh, Random& random) const = 0;
  /// What the shop does to all names at once from one season to the next.
  virtual std::string season_style(const std::string& name, int season) const = 0;
  virtual const std::vector<std::string>& colours() const = 0;
  /// A price as the shop sets it.
  virtual Amount rounded(Amount price) const = 0;
};

/// Which generators there are; the last is kept aside when the linker is worked on.
std::unique_ptr<Habits> high_street(std::uint64_t seed);
std::unique_ptr<Habits> catalogue(std::uint64_t seed);
std::unique_ptr<Habits> atelier(std::uint64_t seed);
std::unique_ptr<Habits> marche(std::uint64_t seed);

template <class T>
const T& one_of(const std::vector<T>& choices, Random& random) {
  return choices[random.below(static_cast<std::uint32_t>(choices.size()))];
}

/// `text` with `old` replaced once; unchanged when it does not occur.
inline bool replace_once(std::string& text, std::string_view old, std::string_view now) {
  const auto at = text.find(old);
  if (at == std::string::npos) return false;
  text.replace(at, old.size(), now);
  return true;
}

/// A slip of the keyboard: two neighbouring small letters of a longer word change places.
inline bool mistype(std::string& text, Random& random) {
  std::vector<std::size_t> places;
  const auto small = [&](std::size_t i) { return text[i] >= 'a' && text[i] <= 'z'; };
  for (std::size_t i = 1; i + 2 < text.size(); ++i) {
    if (small(i - 1) && small(i) && small(i + 1) && small(i + 2) && text[i] != text[i + 1])
      places.push_back(i);
  }
  if (places.empty()) return false;
  const std::size_t at = one_of(places, random);
  std::swap(text[at], text[at + 1]);
  return true;
}

inline std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 32);
  return text;
}

inline std::string slug(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const char low = c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
    if ((low >= 'a' && low <= 'z') || (low >= '0' && low <= '9')) {
      out += low;
    } else if (!out.empty() && out.back() != '-') {
      out += '-';
    }
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out;
}

/// `count` colourways over one run of sizes at one price.
inline std::vector<Colourway> colourways(const std::vector<std::string>& names, std::size_t count,
                                         SizeStep first, SizeStep last, Amount price,
                                         Random& random) {
  std::vector<Colourway> made;
  std::set<std::string> used;
  std::set<SizeStep> sizes;
  for (SizeStep step = first; step <= last; ++step) sizes.insert(step);
  while (made.size() < count) {
    const std::string& name = one_of(names, random);
    if (used.insert(name).second) made.push_back({name, sizes, {}, price, {}});
  }
  return made;
}

}  // namespace rangebook::evaluate
