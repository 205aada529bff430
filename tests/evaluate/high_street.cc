// A British shop with given names for its styles, a row per variant and long descriptions.
#include "tests/evaluate/habits.h"

namespace rangebook::evaluate {
namespace {

struct Garment {
  const char* name;
  const char* other;  ///< what the shop may call it next season
  const char* category;
  Amount price;
};
const std::vector<Garment> kGarments = {
    {"Dress", "Frock", "dresses", 5900},          {"Shirt Dress", "Shirtdress", "dresses", 6500},
    {"Tea Dress", "Dress", "dresses", 5500},      {"Blouse", "Shirt", "tops", 3500},
    {"Top", "Shell Top", "tops", 2200},           {"T-Shirt", "Tee", "tops", 1600},
    {"Jumper", "Sweater", "knitwear", 4200},      {"Cardigan", "Cardi", "knitwear", 4500},
    {"Trousers", "Pants", "trousers", 4900},      {"Culottes", "Wide Trousers", "trousers", 4600},
    {"Jeans", "Denim Jeans", "trousers", 4800},   {"Skirt", "Day Skirt", "skirts", 3900},
    {"Coat", "Overcoat", "jackets-coats", 12900}, {"Blazer", "Jacket", "jackets-coats", 7900}};
const std::vector<std::string> kGiven = {
    "Maya",   "Clara",   "Edith",    "Nora",     "Ines",  "Tilda",  "Romy",  "Alba",     "Greta",
    "Hester", "Juno",    "Kezia",    "Leonie",   "Mabel", "Nell",   "Orla",  "Petra",    "Queenie",
    "Rhoda",  "Sylvie",  "Thea",     "Una",      "Vera",  "Willa",  "Xenia", "Yara",     "Zelda",
    "Agnes",  "Bettina", "Cordelia", "Delphine", "Esme",  "Flora",  "Gwen",  "Harriet",  "Ida",
    "Josie",  "Kitty",   "Lottie",   "Minna",    "Nadia", "Odette", "Pearl", "Rosalind", "Saskia"};
const std::vector<std::string> kManners = {
    "Wrap",  "Belted", "Pleated", "Ruched",   "Tiered",         "Smocked", "Linen",
    "Satin", "Ribbed", "Printed", "Tie-Neck", "Button-Through", "Cropped", ""};
const std::vector<std::string> kFits = {"Midi", "Relaxed", "Longline", "Slim", "Easy-Fit"};
const std::vector<std::string> kColours = {"navy",   "black", "ivory", "sage", "rust",    "plum",
                                           "cobalt", "stone", "blush", "teal", "mustard", "berry"};
const std::vector<std::string> kDetails = {
    "a curved hem",         "covered buttons", "deep side pockets",   "a back vent",
    "turn-back cuffs",      "a hidden zip",    "contrast piping",     "a keyhole back",
    "an elasticated waist", "balloon sleeves", "a detachable collar", "pintucks at the front"};
const std::vector<std::string> kOccasions = {"the office",      "garden parties", "long weekends",
                                             "winter evenings", "the school run", "a day in town"};
const std::vector<std::string> kFirst = {"cotton", "viscose",   "linen",
                                         "wool",   "polyester", "lyocell"};
const std::vector<std::string> kSecond = {"elastane", "polyamide", "silk"};

class HighStreet : public Habits {
 public:
  explicit HighStreet(std::uint64_t seed) : by_stem_(seed % 2 == 1) {
    shop_.country = "GB";
    shop_.currency = "GBP";
    shop_.system = "uk";
    for (int size = 6; size <= 30; size += 2) shop_.ladder.push_back(std::to_string(size));
    shop_.petite = " Petite";
    shop_.columns = {"line_code",   "name",       "category", "colour",   "size",
                     "price",       "full_price", "currency", "in_stock", "composition",
                     "description", "url",        "image"};
  }
  const Shop& shop() const override { return shop_; }
  const std::vector<std::string>& colours() const override { return kColours; }
  Amount rounded(Amount price) const override { return (price + 50) / 100 * 100; }

  Line invent(Random& random) const override {
    Line line;
    const Garment& garment = one_of(kGarments, random);
    line.category = garment.category;
    line.words = {{"given", one_of(kGiven, random)},
                  {"manner", one_of(kManners, random)},
                  {"garment", garment.name},
                  {"other", garment.other},
                  {"detail", one_of(kDetails, random)},
                  {"detail2", one_of(kDetails, random)},
                  {"for", one_of(kOccasions, random)}};
    set_name(line);
    change_fabric(line, random);
    describe(line, 0);
    const auto first = static_cast<SizeStep>(random.below(3));
    const Amount price = rounded(garment.price * (80 + random.below(60)) / 100);
    line.colours = colourways(kColours, 1 + random.below(4), first,
                              first + 5 + static_cast<SizeStep>(random.below(4)), price, random);
    return line;
  }
  Line follow_up(const Line& model, Random& random) const override {
    Line line = invent(random);
    line.category = model.category;
    for (const char* same : {"given", "garment", "other"}) line.words[same] = model.words.at(same);
    while (line.words["manner"] == model.words.at("manner"))
      line.words["manner"] = one_of(kManners, random);
    set_name(line);
    describe(line, 0);
    return line;
  }
  void reword_name(Line& line, Random& random) const override {
    const std::string before = line.name;
    for (int tries = 0; tries < 20 && line.name == before; ++tries) {
      switch (random.below(5)) {
        case 0:
          line.words["fit"] = one_of(kFits, random);
          break;
        case 1:
          line.words["manner"] = "";
          break;
        case 2:
          line.words["garment"] = line.words["other"];
          break;
        case 3:
          line.words["fit"] = "";
          break;
        case 4:
          mistype(line.words["garment"], random);
          break;
      }
      set_name(line);
    }
  }
  void rename(Line& line, Random& random) const override {
    const std::string before = line.words["given"];
    while (line.words["given"] == before) line.words["given"] = one_of(kGiven, random);
    set_name(line);
  }
  void rewrite(Line& line, Random& random) const override {
    const std::uint32_t draw = random.below(4);
    if (draw == 0) {
      line.description.clear();
    } else if (draw == 1) {
      line.words["for"] = one_of(kOccasions, random);
      describe(line, 1);
    } else {
      describe(line, 1);
    }
  }
  void change_fabric(Line& line, Random& random) const override {
    const std::string first = one_of(kFirst, random);
    line.fibres.clear();
    if (random.below(3) == 0) {
      line.fibres[first] = 100;
    } else {
      const int share = 50 + static_cast<int>(random.below(9)) * 5;
      line.fibres = {{first, share}, {one_of(kSecond, random), 100 - share}};
    }
    line.composition.clear();
    for (const auto& [fibre, share] : line.fibres) {
      if (!line.composition.empty()) line.composition += ", ";
      line.composition += std::to_string(share) + "% " + fibre;
    }
  }
  std::string category_words(const Line& line) const override {
    return line.category == "jackets-coats" ? "Jackets & Coats" : capitalised(line.category);
  }
  void label(Line& line, int season, bool fresh, Random& random) const override {
    if (fresh || line.code.empty()) {
      const std::string number = std::to_string(10000 + random.below(90000));
      // Half of the shops keep the number of a re-coded line and change what stands before it.
      const bool keeps = by_stem_ && !line.code.empty();
      line.code = (season % 2 == 0 ? "HS-" : "HX-") + (keeps ? line.code.substr(3) : number);
    }
    line.url = "https://highstreet.invalid/p/" + slug(line.name) + "-" + slug(line.code);
    line.image = "https://img.highstreet.invalid/" + slug(line.code) + "_1.jpg";
  }
  std::string season_style(const std::string& name, int) const override { return name; }

 private:
  static void set_name(Line& line) {
    line.name.clear();
    for (const char* part : {"given", "manner", "fit", "garment"}) {
      const std::string word = line.words[part];
      if (word.empty()) continue;
      if (!line.name.empty()) line.name += ' ';
      line.name += word;
    }
  }
  static void describe(Line& line, int wording) {
    const auto& words = line.words;
    line.description = wording == 0
                           ? "The " + words.at("given") + " is made for " + words.at("for") +
                                 ", with " + words.at("detail") + " and " + words.at("detail2") +
                                 ". Machine wash at 30."
                           : "Cut with " + words.at("detail2") + " and " + words.at("detail") +
                                 ", this one takes you through " + words.at("for") + ".";
  }
  Shop shop_;
  bool by_stem_;
};

}  // namespace

std::unique_ptr<Habits> high_street(std::uint64_t seed) {
  return std::make_unique<HighStreet>(seed);
}

}  // namespace rangebook::evaluate
