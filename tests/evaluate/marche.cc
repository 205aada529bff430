// A French shop: garment first, the style in quotes, decimal commas, EU sizes, categories in its
// own language. Kept aside while the linker is worked on: it shows whether a change helps in
// general.
#include "tests/evaluate/habits.h"

namespace rangebook::evaluate {
namespace {

struct Piece {
  const char* noun;
  const char* other;
  const char* category;
  Amount price;
};
const std::vector<Piece> kPieces = {{"Robe", "Robe longue", "dresses", 8900},
                                    {"Robe chemise", "Robe-chemise", "dresses", 9500},
                                    {"Jupe", "Jupe midi", "skirts", 6500},
                                    {"Pantalon", "Pantalon droit", "trousers", 7500},
                                    {"Pantalon large", "Pantalon", "trousers", 7900},
                                    {"Pull", "Pullover", "knitwear", 6900},
                                    {"Gilet en maille", "Cardigan", "knitwear", 7900},
                                    {"Manteau", "Manteau long", "jackets-coats", 18900},
                                    {"Veste", "Veste courte", "jackets-coats", 11900},
                                    {"Top", "Haut", "tops", 3900}};
const std::vector<std::string> kStyles = {
    "Aurore",   "Bérénice", "Capucine", "Désirée",   "Églantine", "Faustine",
    "Gaëlle",   "Hélène",   "Inès",     "Joséphine", "Léonore",   "Mélusine",
    "Ninon",    "Océane",   "Perrine",  "Quitterie", "Romane",    "Solène",
    "Thaïs",    "Violaine", "Yseult",   "Zoé",       "Anouk",     "Blandine",
    "Clarisse", "Daphné",   "Élise",    "Flavie",    "Garance",   "Honorine"};
const std::vector<std::string> kManners = {"plissée", "à fleurs", "en lin",    "en velours",
                                           "croisée", "rayée",    "à volants", "brodée",
                                           "fluide",  "ajourée",  "en tweed",  "satinée"};
const std::vector<std::string> kColours = {"marine",     "noir",      "écru",        "kaki",
                                           "bordeaux",   "camel",     "rose poudré", "bleu canard",
                                           "gris chiné", "terracotta"};
const std::vector<std::string> kDetails = {
    "col rond",          "col montant",     "manches ballon", "manches trois quarts",
    "taille élastiquée", "poches plaquées", "dos boutonné",   "ceinture amovible",
    "bas arrondi",       "doublure douce",  "coupe en biais", "fermeture invisible"};
const std::vector<std::string> kFirst = {"cotton", "viscose", "linen", "wool", "polyester"};
const std::vector<std::string> kSecond = {"elastane", "polyamide", "silk"};
const std::map<std::string, std::string> kFrench = {
    {"cotton", "coton"},        {"viscose", "viscose"},
    {"linen", "lin"},           {"wool", "laine"},
    {"polyester", "polyester"}, {"elastane", "élasthanne"},
    {"polyamide", "polyamide"}, {"silk", "soie"}};

class Marche : public Habits {
 public:
  explicit Marche(std::uint64_t seed) : quotes_(seed % 2 == 0) {
    shop_.country = "FR";
    shop_.currency = "EUR";
    shop_.system = "fr";
    for (int size = 34; size <= 56; size += 2) shop_.ladder.push_back(std::to_string(size));
    shop_.separator = ';';
    shop_.decimal_sign = ',';
    shop_.columns = {"line_code",  "name",     "category",    "colour",      "size", "price",
                     "full_price", "in_stock", "composition", "description", "url"};
  }
  const Shop& shop() const override { return shop_; }
  const std::vector<std::string>& colours() const override { return kColours; }
  Amount rounded(Amount price) const override { return (price + 50) / 100 * 100 - 1; }

  Line invent(Random& random) const override {
    const Piece& piece = one_of(kPieces, random);
    Line line;
    line.category = piece.category;
    line.words = {{"noun", piece.noun},
                  {"other", piece.other},
                  {"style", one_of(kStyles, random)},
                  {"manner", one_of(kManners, random)},
                  {"one", one_of(kDetails, random)},
                  {"two", one_of(kDetails, random)},
                  {"three", one_of(kDetails, random)}};
    set_name(line);
    change_fabric(line, random);
    describe(line, false);
    const auto first = static_cast<SizeStep>(random.below(2));
    const Amount price = rounded(piece.price * (80 + random.below(60)) / 100);
    line.colours = colourways(kColours, 1 + random.below(4), first,
                              first + 5 + static_cast<SizeStep>(random.below(4)), price, random);
    return line;
  }
  Line follow_up(const Line& model, Random& random) const override {
    Line line = invent(random);
    line.category = model.category;
    for (const char* same : {"noun", "other", "style"}) line.words[same] = model.words.at(same);
    while (line.words["manner"] == model.words.at("manner"))
      line.words["manner"] = one_of(kManners, random);
    set_name(line);
    describe(line, false);
    return line;
  }
  void reword_name(Line& line, Random& random) const override {
    const std::string before = line.name;
    for (int tries = 0; tries < 20 && line.name == before; ++tries) {
      switch (random.below(4)) {
        case 0:
          line.words["manner"] = "";
          break;
        case 1:
          line.words["noun"] = line.words["other"];
          break;
        case 2:
          line.words["manner"] = line.words["one"];
          break;
        case 3:
          mistype(line.words["noun"], random);
          break;
      }
      set_name(line);
    }
  }
  void rename(Line& line, Random& random) const override {
    const std::string before = line.words["style"];
    while (line.words["style"] == before) line.words["style"] = one_of(kStyles, random);
    set_name(line);
  }
  void rewrite(Line& line, Random& random) const override {
    if (random.below(3) == 0) {
      line.description.clear();
    } else {
      describe(line, true);
    }
  }
  void change_fabric(Line& line, Random& random) const override {
    const int share = 50 + static_cast<int>(random.below(9)) * 5;
    line.fibres = {{one_of(kFirst, random), share}, {one_of(kSecond, random), 100 - share}};
    line.composition.clear();
    for (const auto& [fibre, part] : line.fibres)
      line.composition +=
          (line.composition.empty() ? "" : ", ") + std::to_string(part) + " % " + kFrench.at(fibre);
  }
  std::string category_words(const Line& line) const override {
    static const std::map<std::string, std::string> kWords = {
        {"dresses", "Robes"},      {"tops", "Hauts"},   {"knitwear", "Maille"},
        {"trousers", "Pantalons"}, {"skirts", "Jupes"}, {"jackets-coats", "Manteaux & vestes"}};
    return kWords.at(line.category);
  }
  void label(Line& line, int season, bool fresh, Random& random) const override {
    if (fresh || line.code.empty())
      line.code = (season == 2 ? "H26." : "H25.") + std::to_string(100 + random.below(900)) + "." +
                  std::to_string(10 + random.below(90));
    line.url = "https://marche.invalid/article/" + line.code;
  }
  std::string season_style(const std::string& name, int) const override { return name; }

 private:
  void set_name(Line& line) const {
    line.name = line.words["noun"] + " ";
    if (!line.words["manner"].empty()) line.name += line.words["manner"] + " ";
    line.name += quotes_ ? "« " + line.words["style"] + " »" : line.words["style"];
  }
  static void describe(Line& line, bool again) {
    const auto& words = line.words;
    line.description = again ? capitalised(words.at("three")) + " et " + words.at("one") +
                                   " pour cette pièce. Lavage à froid."
                             : capitalised(words.at("one")) + ", " + words.at("two") + " et " +
                                   words.at("three") + ". À porter en toute saison.";
  }
  Shop shop_;
  bool quotes_;
};

}  // namespace

std::unique_ptr<Habits> marche(std::uint64_t seed) { return std::make_unique<Marche>(seed); }

}  // namespace rangebook::evaluate
