// Two invented captures of one shop, a season apart, with the truth of which line is which. Shops
// differ in language, naming, codes, texts and pictures; levels differ in how much changes at once.
#pragma once

#include <algorithm>
#include <cstdlib>
#include <map>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "schema/snapshot.h"
#include "tests/tracker/likeness/invented_words.h"

namespace rangebook::testing {

enum class Naming { style_and_garment, garment_only, quoted_style, numbered };
enum class Texts { long_ones, short_ones, same_for_many, none };
enum class Pictures { by_code, by_name, hashed, none };

struct ShopKind {
  std::string label;
  const Wording* words = nullptr;
  Naming naming = Naming::style_and_garment;
  Texts texts = Texts::long_ones;
  Pictures pictures = Pictures::none;
  bool states_cloth = true;
  bool names_only = false;  ///< name, description and price are all there is
};

/// Changes in per cent of the carried lines.
struct Difficulty {
  int recoded = 100;
  int renamed = 0;
  int restyled = 0;  ///< of the renamed: another style name instead of another word
  int edited = 0;    ///< a part of the description
  int rewritten = 0;
  int repriced = 0;
  int far_price = 0;  ///< of the repriced: by up to a third instead of a tenth
  int recloth = 0;
  int recoloured = 0;
  int new_picture = 0;
  int split = 0;
  int dropped = 20;
  int added = 25;
  int reused = 0;        ///< of the added: with the name of a dropped line
  int followup = 0;      ///< of the added: a new style made after one that is there
  bool partial = false;  ///< the later capture looked at some categories only
};

struct Garment {
  int uid = 0;
  std::size_t kind = 0;
  std::size_t noun = 0;
  std::string style;
  std::string manner;
  std::string cloth;
  Words details;
  std::string occasion;
  std::string composition;
  Words colours;
  int first_size = 8;
  int sizes = 6;
  int price = 0;  ///< minor units
  std::string code;
  std::string picture;
};

struct SeasonPair {
  Snapshot from;
  Snapshot to;
  std::vector<std::pair<std::size_t, std::size_t>> truth;  ///< indices, by `from`
};

class SeasonMaker {
 public:
  SeasonMaker(const ShopKind& shop, const Difficulty& level, std::uint64_t seed)
      : shop_(shop), level_(level), words_(*shop.words), random_(seed) {}

  SeasonPair make(std::size_t lines) {
    std::vector<Garment> before;
    for (std::size_t i = 0; i < lines; ++i) before.push_back(invent());
    std::vector<Garment> after;
    std::vector<Garment> gone;
    for (const Garment& garment : before) {
      if (percent(level_.dropped)) {
        gone.push_back(garment);
      } else {
        carry(garment, after);
      }
    }
    const std::size_t added = lines * static_cast<std::size_t>(level_.added) / 100;
    for (std::size_t i = 0; i < added; ++i) after.push_back(add(before, gone));
    if (level_.partial) {
      std::erase_if(after, [](const Garment& g) { return g.kind >= 4; });
    }
    std::shuffle(before.begin(), before.end(), random_);
    std::shuffle(after.begin(), after.end(), random_);
    return {snapshot(before, 1), snapshot(after, 2), truth(before, after)};
  }

 private:
  std::size_t below(std::size_t bound) { return random_() % bound; }
  bool percent(int share) { return static_cast<int>(below(100)) < share; }
  const std::string& one_of(const Words& words) { return words[below(words.size())]; }

  std::string code() {
    static const char* const kStems[] = {"AB", "KD-", "7", "W25-"};
    return kStems[shop_.label.size() % 4] + std::to_string(10000 + below(90000));
  }

  /// The first words of a list are much more usual than its last ones.
  const std::string& usual_of(const Words& words) {
    return words[std::min(below(words.size()), below(words.size()))];
  }

  std::string composition() {
    static const int kShares[] = {95, 98, 65, 50, 80};
    const std::string first = usual_of(fibres());
    const std::string second = usual_of(fibres());
    if (first == second || percent(45)) return "100% " + first;
    const int share = kShares[std::min(below(5), below(5))];
    return std::to_string(share) + "% " + first + ", " + std::to_string(100 - share) + "% " +
           second;
  }

  int price(int base) {
    const int endings[] = {0, 50, 90, 95, 99};
    return base * (60 + static_cast<int>(below(90))) / 100 * 100 + endings[below(5)];
  }

  Words some(const Words& words, std::size_t count) {
    Words chosen;
    while (chosen.size() < count) {
      const std::string& word = usual_of(words);
      if (std::find(chosen.begin(), chosen.end(), word) == chosen.end()) chosen.push_back(word);
    }
    return chosen;
  }

  Garment invent() {
    Garment garment;
    garment.uid = next_uid_++;
    garment.kind = below(words_.garments.size());
    garment.noun = below(words_.garments[garment.kind].nouns.size());
    garment.style = one_of(words_.styles);
    garment.manner = one_of(words_.manners);
    garment.cloth = one_of(words_.clothes);
    garment.details = some(words_.details, 3);
    garment.occasion = one_of(words_.occasions);
    garment.composition = composition();
    garment.colours = some(colour_names(), 1 + below(4));
    garment.first_size = 6 + 2 * static_cast<int>(below(3));
    garment.sizes = 5 + static_cast<int>(below(5));
    garment.price = price(words_.garments[garment.kind].price);
    garment.code = code();
    garment.picture = std::to_string(random_());
    return garment;
  }

  void carry(const Garment& old, std::vector<Garment>& after) {
    Garment now = old;
    if (percent(level_.recoded)) now.code = code();
    if (percent(level_.renamed)) rename(now);
    change_text(now);
    change_values(now);
    if (percent(level_.new_picture)) now.picture = std::to_string(random_());
    if (percent(level_.split) && now.colours.size() > 1) {
      Garment part = now;
      part.uid = next_uid_++;
      part.code = code();
      part.colours = {now.colours.back()};
      part.manner = part.colours.front();
      now.colours.pop_back();
      after.push_back(part);
    }
    after.push_back(now);
  }

  void rename(Garment& garment) {
    if (percent(level_.restyled)) {
      garment.style = one_of(words_.styles);
      return;
    }
    const auto& nouns = words_.garments[garment.kind].nouns;
    if (percent(35) && nouns.size() > 1) {
      garment.noun = (garment.noun + 1) % nouns.size();
    } else {
      garment.manner = percent(30) ? "" : one_of(words_.manners);
    }
  }

  void change_text(Garment& garment) {
    if (percent(level_.rewritten)) {
      garment.details = some(words_.details, 3);
      garment.occasion = one_of(words_.occasions);
      garment.cloth = one_of(words_.clothes);
    } else if (percent(level_.edited)) {
      garment.details[below(3)] = one_of(words_.details);
      if (percent(50)) garment.occasion = one_of(words_.occasions);
    }
  }

  void change_values(Garment& garment) {
    if (percent(level_.repriced)) {
      const int reach = percent(level_.far_price) ? 33 : 10;
      const int change = static_cast<int>(below(static_cast<std::size_t>(2 * reach + 1))) - reach;
      garment.price = garment.price * (100 + change) / 10000 * 100 + 95;
    }
    if (percent(level_.recloth)) garment.composition = composition();
    if (percent(level_.recoloured)) {
      if (garment.colours.size() > 1 && percent(60)) garment.colours.erase(garment.colours.begin());
      if (percent(70)) garment.colours.push_back(one_of(colour_names()));
    }
    if (percent(15)) garment.sizes += 1;
  }

  Garment add(const std::vector<Garment>& before, const std::vector<Garment>& gone) {
    Garment garment = invent();
    if (percent(level_.reused) && !gone.empty()) {
      const Garment& old = gone[below(gone.size())];
      garment.kind = old.kind;
      garment.noun = old.noun;
      garment.style = old.style;
      garment.manner = old.manner;
      garment.price = price(words_.garments[garment.kind].price);
    } else if (percent(level_.followup)) {
      const Garment& old = before[below(before.size())];
      garment.kind = old.kind;
      garment.noun = old.noun;
      garment.cloth = old.cloth;
      garment.composition = old.composition;
      garment.details.front() = old.details.front();
      garment.price = old.price;
    }
    return garment;
  }

  std::string name(const Garment& garment) const {
    const std::string& noun = words_.garments[garment.kind].nouns[garment.noun];
    const std::string manner = garment.manner.empty() ? "" : garment.manner + " ";
    switch (shop_.naming) {
      case Naming::style_and_garment:
        return words_.noun_first ? noun + " " + manner + garment.style
                                 : garment.style + " " + manner + noun;
      case Naming::garment_only:
        return manner + noun + " " + words_.in + " " + garment.cloth;
      case Naming::quoted_style:
        return noun + " \"" + garment.style + "\"" + (manner.empty() ? "" : " - " + garment.manner);
      case Naming::numbered:
        return noun + " " + manner + words_.with + " " + garment.details.front();
    }
    return {};
  }

  std::string description(const Garment& garment) const {
    const std::string& noun = words_.garments[garment.kind].nouns[garment.noun];
    const std::string with = " " + words_.with + " ";
    switch (shop_.texts) {
      case Texts::long_ones:
        return garment.manner + " " + noun + " " + words_.in + " " + garment.cloth + with +
               garment.details[0] + ", " + garment.details[1] + ", " + garment.details[2] + ". " +
               words_.for_ + " " + garment.occasion + ". " + garment.style + ".";
      case Texts::short_ones:
        return noun + " " + words_.in + " " + garment.cloth + with + garment.details[0] + ".";
      case Texts::same_for_many:
        return noun + " " + words_.for_ + " " + garment.occasion + ".";
      case Texts::none:
        return {};
    }
    return {};
  }

  std::string picture(const Garment& garment) const {
    switch (shop_.pictures) {
      case Pictures::by_code:
        return "https://invented.example/img/" + garment.code + "_1.jpg";
      case Pictures::by_name:
        return "https://invented.example/img/" + name(garment) + "-front.jpg";
      case Pictures::hashed:
        return "https://invented.example/img/" + garment.picture + ".jpg?w=800";
      case Pictures::none:
        return {};
    }
    return {};
  }

  Listing listing(const Garment& garment) const {
    Listing listing;
    listing.card.name = name(garment);
    listing.detail.description = description(garment);
    LineOffers& offers = listing.offers;
    offers.currency = Currency::from_code("EUR");
    offers.colours = {""};
    offers.sizes = {""};
    if (!shop_.names_only) {
      listing.card.line_code = garment.code;
      listing.card.category = words_.garments[garment.kind].category;
      if (shop_.states_cloth) listing.card.composition = garment.composition;
      listing.detail.image = picture(garment);
      offers.colours = garment.colours;
      offers.sizes.clear();
      for (int i = 0; i < garment.sizes; ++i)
        offers.sizes.push_back(std::to_string(garment.first_size + 2 * i));
    }
    for (Words* labels : {&offers.colours, &offers.sizes}) {
      std::sort(labels->begin(), labels->end());
      labels->erase(std::unique(labels->begin(), labels->end()), labels->end());
    }
    for (std::uint16_t colour = 0; colour < offers.colours.size(); ++colour) {
      for (std::uint16_t size = 0; size < offers.sizes.size(); ++size)
        offers.offers.push_back({colour, size, Stock::unknown, garment.price, std::nullopt});
    }
    return listing;
  }

  Snapshot snapshot(const std::vector<Garment>& garments, int capture) const {
    Snapshot snapshot;
    snapshot.shop.slug = "invented";
    snapshot.shop.sizes = SizeSystem::uk;
    snapshot.capture.id = capture;
    snapshot.capture.season = capture == 1 ? "AW25" : "AW26";
    snapshot.capture.on = date::sys_days(date::year(2024 + capture) / 9 / 1);
    for (const Garment& garment : garments) {
      LineState line;
      line.id = static_cast<LineId>(snapshot.lines.size()) + 100000 * capture;
      line.listing = listing(garment);
      snapshot.lines.push_back(std::move(line));
    }
    return snapshot;
  }

  static std::vector<std::pair<std::size_t, std::size_t>> truth(const std::vector<Garment>& before,
                                                                const std::vector<Garment>& after) {
    std::map<int, std::size_t> place;
    for (std::size_t j = 0; j < after.size(); ++j) place[after[j].uid] = j;
    std::vector<std::pair<std::size_t, std::size_t>> pairs;
    for (std::size_t i = 0; i < before.size(); ++i) {
      if (const auto found = place.find(before[i].uid); found != place.end())
        pairs.emplace_back(i, found->second);
    }
    return pairs;
  }

  ShopKind shop_;
  Difficulty level_;
  const Wording& words_;
  std::mt19937_64 random_;
  int next_uid_ = 0;
};

/// RANGEBOOK_SEED if set, else `fixed`: other seasons for whoever wants to see more than ours.
inline std::uint64_t season_seed(std::uint64_t fixed) {
  const char* const text = std::getenv("RANGEBOOK_SEED");
  if (text == nullptr) return fixed;
  std::uint64_t seed = fixed;
  for (const char* at = text; *at >= '0' && *at <= '9'; ++at)
    seed = seed * 10 + static_cast<std::uint64_t>(*at - '0');
  return seed;
}

inline Difficulty easy() {
  Difficulty level;
  level.renamed = 5;
  level.edited = 15;
  level.repriced = 30;
  level.recoloured = 30;
  level.reused = 5;
  return level;
}

inline Difficulty middle() {
  Difficulty level;
  level.recoded = 60;
  level.renamed = 20;
  level.restyled = 30;
  level.edited = 30;
  level.rewritten = 8;
  level.repriced = 50;
  level.far_price = 20;
  level.recloth = 6;
  level.recoloured = 50;
  level.new_picture = 40;
  level.split = 4;
  level.reused = 12;
  level.followup = 10;
  return level;
}

inline Difficulty hard() {
  Difficulty level = middle();
  level.recoded = 100;
  level.renamed = 45;
  level.restyled = 45;
  level.rewritten = 30;
  level.repriced = 75;
  level.far_price = 40;
  level.recloth = 15;
  level.recoloured = 70;
  level.new_picture = 80;
  level.split = 8;
  level.dropped = 35;
  level.added = 45;
  level.reused = 25;
  level.followup = 25;
  level.partial = true;
  return level;
}

}  // namespace rangebook::testing
