// Inventing styles.
#include "demo-feeds/invent.h"

#include <algorithm>
#include <stdexcept>

#include "demo-feeds/words.h"

namespace demo {
namespace {

std::string sentence_case(std::string text) {
  if (text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

}  // namespace

Inventor::Inventor(const House& house, int shop_digit, std::uint64_t seed)
    : house_(house),
      random_(seed),
      numbers_(shop_digit),
      names_(given_names()),
      next_code_(house.first_code) {
  random_.shuffle(names_);
}

std::string Inventor::next_code() {
  next_code_ += random_.between(1, 7);
  return house_.code_prefix + std::to_string(next_code_);
}

Minor Inventor::tidy(Minor amount) const {
  if (!house_.ninety_endings) return (amount + 25) / 50 * 50;
  const Minor whole = (amount + 50) / 100 * 100;
  return whole / 100 % 2 == 0 ? whole : whole - 10;
}

Minor Inventor::shelf_price(int lowest, int highest) {
  const Minor amount = Minor{random_.between(lowest, highest)} * house_.price_percent;
  if (house_.ninety_endings) return tidy(amount);
  const Minor round = (amount + 250) / 500 * 500;  // shops like 65 and 80, and 79.50
  return random_.percent(30) ? round - 50 : round;
}

std::vector<std::string> Inventor::pick_colours() {
  std::vector<std::string> all = colour_names();
  random_.shuffle(all);
  all.resize(static_cast<std::size_t>(random_.between(1, 3)));
  return all;
}

std::string Inventor::new_colour(const Style& style) {
  for (;;) {
    const std::string& colour = random_.one_of(colour_names());
    if (std::ranges::find(style.colours, colour) == style.colours.end()) return colour;
  }
}

Fabric Inventor::new_fabric(const Style& style) {
  for (;;) {
    const Fabric& fabric = random_.one_of(department(style.category).fabrics);
    if (composition(fabric, Wording::share_first) !=
        composition(style.fabric, Wording::share_first)) {
      return fabric;
    }
  }
}

std::set<SizeStep> run(System system, Fit fit, int low, int high) {
  std::set<SizeStep> sizes;
  for (int rank = low; rank <= high; rank += step_between(system)) {
    sizes.insert({system, fit, rank});
  }
  return sizes;
}

std::set<SizeStep> Inventor::size_run(const std::string& department) {
  if (department == "scarves") return {{System::one_size, Fit::regular, 0}};
  const bool short_run = random_.percent(25);
  if (department == "knitwear") return run(System::alpha, Fit::regular, 0, short_run ? 3 : 4);
  return run(System::uk, Fit::regular, house_.size_low, house_.size_high - (short_run ? 2 : 0));
}

Style Inventor::invent(const std::string& slug) {
  if (next_name_ == names_.size()) throw std::logic_error("more styles than given names");
  const Department& from = department(slug);
  Style style;
  style.uid = numbers_.next_uid();
  style.code = next_code();
  const std::string garment = random_.one_of(from.garments);
  style.name = names_[next_name_++] + " " + garment;
  style.category = slug;
  style.fabric = random_.one_of(from.fabrics);
  style.description = sentence_case(garment) + " in " + style.fabric.noun + " " +
                      random_.one_of(from.details) + ". Invented for a demonstration.";
  style.colours = pick_colours();
  style.sizes = size_run(slug);
  style.full = shelf_price(from.lowest, from.highest);
  numbers_.number_variants(style);
  return style;
}

Range Inventor::invent_range(const std::map<std::string, int>& counts) {
  Range range;
  for (const auto& [slug, count] : counts) {
    for (int i = 0; i < count; ++i) range.styles.push_back(invent(slug));
  }
  return range;
}

void scatter_sold_out(Range& range, Random& random, int percent) {
  for (Style& style : range.styles) {
    style.sold_out.clear();
    const std::vector<VariantKey> keys = style.variants();
    for (std::size_t i = 1; i < keys.size(); ++i) {  // the first stays in stock
      if (random.percent(percent)) style.sold_out.insert(keys[i]);
    }
  }
}

}  // namespace demo
