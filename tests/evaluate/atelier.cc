// A small label: capitals, a house name before every style, model numbers, abbreviations, no
// categories; a row a colour with a range of sizes; texts are short or missing.
#include "tests/evaluate/habits.h"

namespace rangebook::evaluate {
namespace {

const std::vector<std::string> kStart = {"Ta", "Ve",  "Ru",  "Sol", "Mir", "Kai", "Lo", "En",
                                         "Os", "Fal", "Bre", "Hal", "Ny",  "Um",  "Is", "Pel"};
const std::vector<std::string> kEnd = {"ra",  "lo", "nea", "stad", "vik", "mo", "lin",
                                       "ska", "ru", "des", "ko",   "ma",  "ve", "tis"};
struct Piece {
  const char* full;
  const char* brief;
  const char* category;
  Amount price;
};
const std::vector<Piece> kPieces = {{"Merino rollneck", "Mer. rollneck", "knitwear", 14000},
                                    {"Wool jumper", "Wl jumper", "knitwear", 16000},
                                    {"Silk shirt", "Slk shirt", "tops", 18000},
                                    {"Cotton T-shirt", "Ctn tee", "tops", 6500},
                                    {"Shirt dress", "Shrt dress", "dresses", 22000},
                                    {"Column dress", "Col. dress", "dresses", 26000},
                                    {"Pleat trousers", "Plt trousers", "trousers", 19000},
                                    {"Raw denim jeans", "Raw dnm jeans", "trousers", 17500},
                                    {"Bias skirt", "Bias skrt", "skirts", 15000},
                                    {"Double-face coat", "Dbl-face coat", "jackets-coats", 52000},
                                    {"Boxy blazer", "Bxy blazer", "jackets-coats", 34000}};
const std::vector<std::pair<const char*, const char*>> kTails = {{"long sleeve", "L/S"},
                                                                 {"short sleeve", "S/S"},
                                                                 {"high waist", "HW"},
                                                                 {"three-quarter", "3/4"},
                                                                 {"extra long", "XL length"},
                                                                 {"", ""},
                                                                 {"", ""}};
const std::vector<std::string> kColours = {"ink", "bone", "clay", "moss", "ash", "rust", "chalk"};
const std::vector<std::string> kNotes = {
    "Made in small runs.", "Garment-washed.", "Cut from deadstock cloth.",
    "Dry clean.",          "Horn buttons.",   "Raw edges.",
    "French seams."};
const std::vector<std::string> kFirst = {"wool", "silk", "cotton", "cashmere", "linen"};

class Atelier : public Habits {
 public:
  explicit Atelier(std::uint64_t seed) : capitals_(seed % 2 == 0), has_codes_(seed % 3 != 2) {
    shop_.country = "US";
    shop_.currency = "USD";
    shop_.system = "us";
    for (int size = 0; size <= 22; size += 2) shop_.ladder.push_back(std::to_string(size));
    shop_.layout = Layout::row_a_colour;
    shop_.columns = {"name",     "colour",      "size",        "price",
                     "currency", "composition", "description", "image"};
    if (has_codes_) shop_.columns.insert("line_code");
  }
  const Shop& shop() const override { return shop_; }
  const std::vector<std::string>& colours() const override { return kColours; }
  Amount rounded(Amount price) const override { return (price + 250) / 500 * 500; }

  Line invent(Random& random) const override {
    const Piece& piece = one_of(kPieces, random);
    const auto& tail = one_of(kTails, random);
    Line line;
    line.category = piece.category;
    line.words = {{"style", one_of(kStart, random) + one_of(kEnd, random)},
                  {"number", number(random)},
                  {"full", piece.full},
                  {"brief", piece.brief},
                  {"tail", tail.first},
                  {"short tail", tail.second}};
    line.name = named(line, false);
    change_fabric(line, random);
    if (random.below(2) == 0)
      line.description = one_of(kNotes, random) + " " + one_of(kNotes, random);
    const auto first = static_cast<SizeStep>(random.below(3));
    const Amount price = rounded(piece.price * (80 + random.below(50)) / 100);
    line.colours = colourways(kColours, 1 + random.below(3), first,
                              first + 4 + static_cast<SizeStep>(random.below(4)), price, random);
    return line;
  }
  Line follow_up(const Line& model, Random& random) const override {
    Line line = invent(random);
    line.category = model.category;
    for (const char* same : {"style", "full", "brief"}) line.words[same] = model.words.at(same);
    while (line.words["number"] == model.words.at("number")) line.words["number"] = number(random);
    line.name = named(line, false);
    return line;
  }
  void reword_name(Line& line, Random& random) const override {
    const std::string before = line.name;
    for (int tries = 0; tries < 20 && line.name == before; ++tries) {
      switch (random.below(4)) {
        case 0:
          line.name = named(line, true);
          break;
        case 1:
          line.words["tail"] = "";
          line.name = named(line, false);
          break;
        case 2:
          mistype(line.words["full"], random);
          line.name = named(line, false);
          break;
        case 3:
          line.name = line.words["full"] + " " + line.words["style"] + " " + line.words["number"];
          break;
      }
    }
  }
  void rename(Line& line, Random& random) const override {
    const std::string before = line.words["style"];
    while (line.words["style"] == before)
      line.words["style"] = one_of(kStart, random) + one_of(kEnd, random);
    line.name = named(line, false);
  }
  void rewrite(Line& line, Random& random) const override {
    line.description = random.below(2) == 0 ? "" : one_of(kNotes, random);
  }
  void change_fabric(Line& line, Random& random) const override {
    const std::string first = one_of(kFirst, random);
    const std::string second = one_of(kFirst, random);
    line.fibres.clear();
    if (first == second) {
      line.fibres[first] = 100;
    } else {
      const int share = 60 + static_cast<int>(random.below(4)) * 10;
      line.fibres = {{first, share}, {second, 100 - share}};
    }
    line.composition.clear();
    for (const auto& [fibre, share] : line.fibres)
      line.composition +=
          (line.composition.empty() ? "" : " / ") + std::to_string(share) + "% " + fibre;
  }
  std::string category_words(const Line&) const override { return ""; }
  void label(Line& line, int season, bool fresh, Random& random) const override {
    if (has_codes_ && (fresh || line.code.empty())) {
      static constexpr char kLetters[] = "ABCDEFGHJKLMNPQRSTUVWXYZ";
      line.code.clear();
      for (int i = 0; i < 3; ++i) line.code += kLetters[random.below(24)];
      line.code += std::to_string(season) + std::to_string(1000 + random.below(9000));
    }
    line.image =
        "shots/s" + std::to_string(season) + "/" + std::to_string(random.below(1000000)) + ".png";
  }
  std::string season_style(const std::string& name, int season) const override {
    const std::string full = season < 2 ? "Vellamo – " + name : name;  // the house name goes
    if (!capitals_ || season < 2) return full;
    std::string loud = full;
    for (char& c : loud) c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c;
    return loud;
  }

 private:
  static std::string number(Random& random) {
    const std::uint32_t value = 1 + random.below(24);
    return (value < 10 ? "0" : "") + std::to_string(value);
  }
  static std::string named(const Line& line, bool brief) {
    const auto& words = line.words;
    const std::string& tail = words.at(brief ? "short tail" : "tail");
    return words.at("style") + " " + words.at("number") + " " + words.at(brief ? "brief" : "full") +
           (words.at("tail").empty() ? "" : ", " + tail);
  }
  Shop shop_;
  bool capitals_;
  bool has_codes_;
};

}  // namespace

std::unique_ptr<Habits> atelier(std::uint64_t seed) { return std::make_unique<Atelier>(seed); }

}  // namespace rangebook::evaluate
