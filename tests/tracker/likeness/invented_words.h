// Words of invented shops in three languages and several ways of naming. All made up; no names of
// brands.
#pragma once

#include <string>
#include <vector>

namespace rangebook::testing {

using Words = std::vector<std::string>;

struct GarmentWords {
  std::string category;
  Words nouns;  ///< the first is usual; the others mean much the same
  int price = 0;
};

/// How one kind of shop words its range.
struct Wording {
  std::vector<GarmentWords> garments;
  Words styles;  ///< names given to styles; empty: the shop gives none
  Words manners;
  Words clothes;
  Words details;
  Words occasions;
  std::string in;  ///< "in" of "in soft jersey"
  std::string with;
  std::string for_;
  bool noun_first = false;
};

inline const Wording& english() {
  static const Wording words{
      {{"Dresses", {"dress", "frock", "gown"}, 79},
       {"Tops", {"top", "blouse", "tee", "shirt"}, 39},
       {"Knitwear", {"jumper", "sweater", "pullover", "cardigan"}, 59},
       {"Trousers", {"trousers", "pants", "culottes"}, 65},
       {"Skirts", {"skirt", "kilt"}, 49},
       {"Coats", {"coat", "parka", "mac"}, 149},
       {"Jackets", {"jacket", "blazer", "gilet"}, 99},
       {"Jeans", {"jeans"}, 69}},
      {"Maya",   "Ines",    "Ada",     "Brook",  "Cleo",   "Dora",  "Esme",   "Faye",   "Greta",
       "Hazel",  "Iris",    "Juno",    "Kit",    "Lotte",  "Mabel", "Nell",   "Opal",   "Petra",
       "Quinn",  "Rhea",    "Saskia",  "Tess",   "Una",    "Vera",  "Wilma",  "Xanthe", "Yara",
       "Zelda",  "Agnes",   "Beatrix", "Cora",   "Delia",  "Edith", "Flora",  "Gilda",  "Helga",
       "Imogen", "Jonquil", "Kerry",   "Lindis", "Maud",   "Nora",  "Olwen",  "Pearl",  "Romy",
       "Sybil",  "Thora",   "Ursa",    "Viola",  "Winnie", "Alba",  "Birgit", "Celia",  "Dilys"},
      {"midi",        "maxi",     "mini",         "belted",   "wrap",    "tiered",
       "pleated",     "ribbed",   "cropped",      "wide-leg", "slim",    "relaxed",
       "boxy",        "longline", "oversized",    "striped",  "checked", "floral",
       "puff-sleeve", "v-neck",   "high-waisted", "quilted",  "draped",  "smocked"},
      {"soft jersey", "crisp poplin", "brushed twill", "fluid satin", "washed linen", "fine merino",
       "chunky bouclé", "matte crêpe", "stretch denim", "double-faced wool", "slub cotton",
       "needlecord", "ponte", "chiffon", "Tencel twill", "seersucker"},
      {"a tie waist",          "patch pockets",    "a concealed zip",
       "covered buttons",      "turn-back cuffs",  "a back vent",
       "an elasticated waist", "side pockets",     "a keyhole neck",
       "gathered shoulders",   "a removable belt", "a full lining",
       "topstitching",         "a stand collar",   "pintucks",
       "a box pleat",          "balloon sleeves",  "a curved hem",
       "belt loops",           "press studs"},
      {"the office", "weekends", "weddings", "travel", "long lunches", "school runs",
       "evenings out", "the garden", "cold mornings", "warm days", "the city", "the coast"},
      "in",
      "with",
      "for",
      false};
  return words;
}

inline const Wording& german() {
  static const Wording words{
      {{"Kleider", {"Kleid", "Sommerkleid", "Hemdblusenkleid"}, 89},
       {"Oberteile", {"Bluse", "Tunika", "Shirt"}, 45},
       {"Strick", {"Pullover", "Strickjacke", "Strickpulli"}, 69},
       {"Hosen", {"Hose", "Stoffhose", "Culotte"}, 75},
       {"Röcke", {"Rock", "Faltenrock"}, 55},
       {"Mäntel", {"Mantel", "Wollmantel", "Trenchcoat"}, 179},
       {"Jacken", {"Jacke", "Blazer", "Steppjacke"}, 119}},
      {"Maja",  "Ilse", "Anke",   "Birte", "Cora",  "Dörte", "Elke",  "Frauke", "Gesa", "Heike",
       "Insa",  "Jule", "Katja",  "Lene",  "Merle", "Nele",  "Oda",   "Pia",    "Rike", "Svenja",
       "Tomke", "Uta",  "Wiebke", "Ylva",  "Antje", "Bente", "Carla", "Dagny",  "Edda", "Fenja"},
      {"lang", "kurz", "weit", "schmal", "gestreift", "geblümt", "kariert", "plissiert", "gerippt",
       "tailliert", "ärmellos", "gesteppt", "locker", "hochgeschnitten", "wattiert", "bestickt"},
      {"weichem Jersey", "fester Popeline", "fließendem Satin", "gewaschenem Leinen",
       "feiner Merinowolle", "grobem Bouclé", "dichtem Köper", "Cord", "Krepp", "Walkstoff"},
      {"Bindegürtel", "aufgesetzten Taschen", "verdecktem Reißverschluss", "Stoffknöpfen",
       "Umschlagmanschetten", "Gummibund", "Seitentaschen", "Stehkragen", "Biesen", "Kellerfalte",
       "Raglanärmeln", "abgerundetem Saum", "Steppnähten", "Futter", "Kapuze"},
      {"das Büro", "freie Tage", "Feste", "die Reise", "kühle Morgen", "warme Abende", "die Stadt",
       "den Garten"},
      "aus",
      "mit",
      "für",
      false};
  return words;
}

inline const Wording& french() {
  static const Wording words{
      {{"Robes", {"robe", "robe chemise"}, 85},
       {"Hauts", {"blouse", "top", "chemisier"}, 42},
       {"Maille", {"pull", "gilet", "cardigan"}, 65},
       {"Pantalons", {"pantalon", "pantalon large"}, 72},
       {"Jupes", {"jupe", "jupe plissée"}, 52},
       {"Manteaux", {"manteau", "caban"}, 169},
       {"Vestes", {"veste", "blazer"}, 110}},
      {"Aline",  "Brune",     "Clarisse", "Daphné",   "Élodie", "Fanny",    "Gaëlle",   "Hortense",
       "Inès",   "Joséphine", "Laure",    "Mathilde", "Noémie", "Odile",    "Perrine",  "Rosalie",
       "Solène", "Thaïs",     "Violette", "Yseult",   "Zélie",  "Apolline", "Bérénice", "Capucine"},
      {"longue", "courte", "ample", "droite", "cintrée", "rayée", "fleurie", "côtelée", "plissée",
       "croisée", "sans manches", "matelassée", "brodée", "évasée"},
      {"jersey doux", "popeline", "satin fluide", "lin lavé", "laine mérinos", "bouclette", "crêpe",
       "velours côtelé", "sergé", "mousseline"},
      {"ceinture à nouer", "poches plaquées", "zip invisible", "boutons recouverts",
       "taille élastiquée", "poches latérales", "col montant", "plis religieuse", "manches ballon",
       "ourlet arrondi", "doublure", "surpiqûres"},
      {"le bureau", "le week-end", "les mariages", "le voyage", "les soirées", "la ville"},
      "en",
      "avec",
      "pour",
      true};
  return words;
}

inline const Words& fibres() {
  static const Words words{"cotton",  "viscose", "linen",   "wool", "polyester",
                           "lyocell", "modal",   "acrylic", "silk", "polyamide"};
  return words;
}

inline const Words& colour_names() {
  static const Words words{"navy",   "black",   "ivory",   "camel", "stone",     "olive", "sage",
                           "teal",   "rust",    "berry",   "plum",  "blush",     "coral", "slate",
                           "cobalt", "mustard", "emerald", "lilac", "chocolate", "ink",   "cream"};
  return words;
}

}  // namespace rangebook::testing
