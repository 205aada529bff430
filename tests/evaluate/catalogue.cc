// A mail-order house without style names: a name says what the garment is, in many words; one row a
// line with lists of colours and sizes; long descriptions with paragraphs that many lines share.
#include <array>

#include "tests/evaluate/habits.h"

namespace rangebook::evaluate {
namespace {

struct Kind {
  const char* noun;
  const char* other;
  const char* category;
  Amount price;
};
const std::vector<Kind> kKinds = {
    {"midi dress", "dress in midi length", "dresses", 7995},
    {"shift dress", "straight-cut dress", "dresses", 6995},
    {"tunic", "long top", "tops", 3995},
    {"long-sleeved top", "top with long sleeves", "tops", 2995},
    {"roll-neck jumper", "polo-neck jumper", "knitwear", 4995},
    {"cardigan", "knitted jacket", "knitwear", 5495},
    {"wide-leg trousers", "trousers with a wide leg", "trousers", 5995},
    {"slim-leg trousers", "narrow trousers", "trousers", 5495},
    {"pencil skirt", "narrow skirt", "skirts", 4495},
    {"pleated skirt", "skirt with pleats", "skirts", 4995},
    {"quilted coat", "padded coat", "jackets-coats", 12995},
    {"short jacket", "cropped jacket", "jackets-coats", 8995}};
const std::vector<std::pair<const char*, const char*>> kCloth = {
    {"Linen-blend", "linen blend"},   {"Cotton", "pure cotton"},  {"Jersey", "soft jersey"},
    {"Merino", "merino wool"},        {"Crêpe", "flowing crêpe"}, {"Velvet", "cotton velvet"},
    {"Corduroy", "fine corduroy"},    {"Twill", "stretch twill"}, {"Gauze", "double gauze"},
    {"Seersucker", "airy seersucker"}};
const std::vector<std::string> kWith = {
    "tie belt",      "patch pockets", "button placket", "stand-up collar", "side slits",
    "elastic waist", "lace trim",     "V-neckline",     "boat neckline",   "pleat details",
    "zip fastening", "turn-up cuffs", "frill hem",      "drawstring hem"};
const std::vector<std::string> kPattern = {"floral",  "striped", "checked", "plain",
                                           "spotted", "paisley", "",        ""};
const std::vector<std::string> kColours = {"Marine", "Anthracite", "Ecru",  "Bordeaux", "Petrol",
                                           "Olive",  "Rosewood",   "Camel", "Black",    "Sky blue"};
const std::vector<std::string> kCare = {
    "Wash inside out with similar colours. Do not tumble dry. Iron at medium heat.",
    "We look after the people who make our clothes. Every mill is visited twice a year.",
    "Model is 178 cm tall and wears size M."};
const std::vector<std::string> kLengths = {"58", "62", "66", "70", "74", "98", "104", "112", "118"};
const std::vector<std::string> kFirst = {"cotton", "viscose",   "linen",
                                         "wool",   "polyester", "modal"};
const std::vector<std::string> kSecond = {"elastane", "polyamide", "linen"};

class Catalogue : public Habits {
 public:
  explicit Catalogue(std::uint64_t seed) : says_fabric_(seed % 3 != 0) {
    shop_.country = "IE";
    shop_.currency = "EUR";
    shop_.system = "alpha";
    shop_.ladder = {"XXS", "XS", "S", "M", "L", "XL", "XXL", "3XL", "4XL", "5XL"};
    shop_.layout = Layout::row_a_line;
    shop_.separator = '\t';
    shop_.columns = {"line_code", "name",       "category", "colour",     "size",
                     "price",     "full_price", "in_stock", "description"};
    if (says_fabric_) shop_.columns.insert("composition");
  }
  const Shop& shop() const override { return shop_; }
  const std::vector<std::string>& colours() const override { return kColours; }
  Amount rounded(Amount price) const override { return (price + 250) / 500 * 500 - 5; }

  Line invent(Random& random) const override {
    const Kind& kind = one_of(kKinds, random);
    const auto& cloth = one_of(kCloth, random);
    Line line;
    line.category = kind.category;
    line.words = {{"noun", kind.noun},
                  {"other", kind.other},
                  {"cloth", cloth.first},
                  {"in", cloth.second},
                  {"with", one_of(kWith, random)},
                  {"pattern", one_of(kPattern, random)},
                  {"length", one_of(kLengths, random)},
                  {"also", one_of(kWith, random)},
                  {"care", one_of(kCare, random)}};
    line.name = plain_name(line);
    change_fabric(line, random);
    line.description = described(line);
    const auto first = static_cast<SizeStep>(random.below(3));
    const Amount price = rounded(kind.price * (70 + random.below(70)) / 100);
    line.colours = colourways(kColours, 1 + random.below(3), first,
                              first + 4 + static_cast<SizeStep>(random.below(3)), price, random);
    return line;
  }
  Line follow_up(const Line& model, Random& random) const override {
    Line line = invent(random);
    line.category = model.category;
    for (const char* same : {"noun", "other", "cloth", "in", "care"})
      line.words[same] = model.words.at(same);
    while (line.words["with"] == model.words.at("with")) line.words["with"] = one_of(kWith, random);
    line.name = plain_name(line);
    line.description = described(line);
    return line;
  }
  void reword_name(Line& line, Random& random) const override {
    const auto& words = line.words;
    const std::string pattern = words.at("pattern").empty() ? "" : words.at("pattern") + " ";
    switch (random.below(5)) {
      case 0:  // another order
        line.name = capitalised(pattern + words.at("noun")) + " in " + words.at("in") + " with " +
                    words.at("with");
        break;
      case 1:  // less
        line.name = words.at("cloth") + " " + words.at("noun") + " with " + words.at("with");
        if (pattern.empty()) line.name = std::string(words.at("cloth")) + " " + words.at("noun");
        break;
      case 2:  // more
        line.name = plain_name(line) + " and " + words.at("also");
        break;
      case 3:  // other words
        line.name = words.at("cloth") + " " + pattern + words.at("other") + ", " + words.at("with");
        break;
      case 4:
        line.name = plain_name(line);
        mistype(line.name, random);
        break;
    }
  }
  void rename(Line& line, Random& random) const override {
    reword_name(line, random);
    replace_once(line.name, line.words["cloth"] + " ", "");
    line.name = "New: " + capitalised(line.name);
  }
  void rewrite(Line& line, Random& random) const override {
    if (random.below(3) == 0) line.words["care"] = one_of(kCare, random);
    const auto& words = line.words;
    line.description = words.at("care") + " Length " + words.at("length") +
                       " cm. Details: " + words.at("also") + ", " + words.at("with") + ".";
  }
  void change_fabric(Line& line, Random& random) const override {
    line.fibres.clear();
    const int share = 55 + static_cast<int>(random.below(8)) * 5;
    line.fibres = {{one_of(kFirst, random), share}};
    line.fibres[one_of(kSecond, random)] += 100 - share;
    line.composition.clear();
    for (const auto& [fibre, part] : line.fibres)
      line.composition += (line.composition.empty() ? "" : " ") + capitalised(fibre) + " " +
                          std::to_string(part) + "%";
  }
  std::string category_words(const Line& line) const override {
    return line.category == "jackets-coats" ? "Women > Coats & Jackets"
                                            : "Women > " + capitalised(line.category);
  }
  void label(Line& line, int season, bool fresh, Random& random) const override {
    // The season stands in front of every number.
    if (fresh || line.code.empty())
      line.code = std::to_string(24 + season) + std::to_string(100000 + random.below(900000));
  }
  std::string season_style(const std::string& name, int) const override { return name; }

 private:
  static std::string plain_name(const Line& line) {
    const auto& words = line.words;
    return words.at("cloth") + " " +
           (words.at("pattern").empty() ? "" : words.at("pattern") + " ") + words.at("noun") +
           " with " + words.at("with");
  }
  static std::string described(const Line& line) {
    const auto& words = line.words;
    return "This " + words.at("noun") + " in " + words.at("in") + " has " + words.at("with") +
           " and " + words.at("also") + ". It is " + words.at("length") + " cm long. " +
           words.at("care");
  }
  Shop shop_;
  bool says_fabric_;
};

}  // namespace

std::unique_ptr<Habits> catalogue(std::uint64_t seed) { return std::make_unique<Catalogue>(seed); }

}  // namespace rangebook::evaluate
