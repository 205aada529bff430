// All words are plain trade and everyday words; what they are combined into is invented.
#include "demo-feeds/words.h"

#include <algorithm>
#include <stdexcept>

namespace demo {
namespace {

Fabric plain(std::string noun, std::vector<Fibre> main) {
  return {std::move(noun), std::move(main), {}};
}
Fabric lined(std::string noun, std::vector<Fibre> main, std::vector<Fibre> lining) {
  return {std::move(noun), std::move(main), std::move(lining)};
}

Department dresses() {
  return {
      "dresses",
      "Dresses",
      {"wrap dress", "shirt dress", "midi dress", "tea dress", "column dress", "tiered dress",
       "pinafore dress", "jersey dress", "belted dress"},
      {"with a tie waist and long sleeves", "with a V-neck and three-quarter sleeves",
       "with a round neck, side pockets and a full skirt", "cut below the knee with a slit",
       "with a stand collar and buttoned cuffs"},
      {plain("viscose crepe", {{"Viscose", 100}}),
       plain("cotton poplin", {{"Cotton", 97}, {"Elastane", 3}}),
       plain("soft jersey", {{"Viscose", 94}, {"Elastane", 6}}),
       lined("printed georgette", {{"Polyester", 100}}, {{"Polyester", 100}}),
       lined("wool blend", {{"Wool", 55}, {"Polyester", 42}, {"Elastane", 3}}, {{"Viscose", 100}}),
       plain("fine corduroy", {{"Cotton", 100}})},
      65,
      145};
}

Department tops() {
  return {"tops",
          "Tops",
          {"blouse", "shirt", "tunic", "T-shirt", "breton top", "peplum top", "polo top"},
          {"with a soft collar", "with a boat neck", "with gathered shoulders",
           "with short sleeves and a curved hem", "with a tie neck and full sleeves"},
          {plain("organic cotton", {{"Cotton", 100}}),
           plain("cotton modal jersey", {{"Cotton", 50}, {"Modal", 50}}),
           plain("linen blend", {{"Linen", 55}, {"Viscose", 45}}),
           plain("silky twill", {{"Polyester", 100}}), plain("lyocell twill", {{"Lyocell", 100}})},
          24,
          68};
}

Department knitwear() {
  return {"knitwear",
          "Knitwear",
          {"cardigan", "crew-neck jumper", "roll-neck jumper", "cable jumper", "V-neck jumper",
           "longline cardigan"},
          {"with ribbed cuffs and hem", "in a relaxed shape", "with horn-look buttons",
           "in a fine gauge", "with dropped shoulders"},
          {plain("lambswool", {{"Wool", 100}}),
           plain("merino blend", {{"Wool", 70}, {"Polyamide", 30}}),
           plain("cotton knit", {{"Cotton", 100}}),
           plain("wool and alpaca", {{"Wool", 45}, {"Alpaca", 35}, {"Polyamide", 20}}),
           plain("soft-touch yarn", {{"Acrylic", 60}, {"Polyamide", 40}})},
          45,
          110};
}

Department trousers() {
  return {"trousers",
          "Trousers",
          {"wide-leg trousers", "tapered trousers", "straight trousers", "culottes",
           "pull-on trousers", "cropped trousers"},
          {"with a high waist", "with pressed creases", "with an elastic back waist",
           "with deep side pockets", "with turn-ups"},
          {plain("stretch cotton", {{"Cotton", 98}, {"Elastane", 2}}),
           plain("ponte", {{"Viscose", 68}, {"Polyamide", 27}, {"Elastane", 5}}),
           lined("flannel", {{"Wool", 50}, {"Polyester", 50}}, {{"Polyester", 100}}),
           plain("fine corduroy", {{"Cotton", 99}, {"Elastane", 1}})},
          45,
          98};
}

Department skirts() {
  return {"skirts",
          "Skirts",
          {"pleated skirt", "A-line skirt", "pencil skirt", "bias skirt", "kilt skirt",
           "button-front skirt"},
          {"with a side zip", "with a wide waistband", "with a lining to the knee",
           "with an elastic back waist"},
          {plain("satin", {{"Polyester", 100}}),
           lined("wool check", {{"Wool", 60}, {"Polyester", 40}}, {{"Viscose", 100}}),
           plain("denim", {{"Cotton", 100}}),
           plain("ponte", {{"Viscose", 66}, {"Polyamide", 30}, {"Elastane", 4}})},
          40,
          88};
}

Department coats() {
  return {"jackets-coats",
          "Coats & Jackets",
          {"wool coat", "trench coat", "blazer", "quilted jacket", "boiled-wool jacket",
           "duffle coat", "parka"},
          {"with two welt pockets", "with a storm flap and belt", "with a notched lapel",
           "with a hood and zip", "with a single row of buttons"},
          {lined("wool coating", {{"Wool", 75}, {"Polyamide", 25}}, {{"Viscose", 100}}),
           lined("water-repellent cotton", {{"Cotton", 100}}, {{"Polyester", 100}}),
           lined("recycled twill", {{"Polyester", 100}}, {{"Polyester", 100}}),
           plain("boiled wool", {{"Wool", 100}})},
          95,
          240};
}

Department scarves() {
  return {"scarves",
          "Scarves",
          {"scarf", "fringed scarf", "wrap shawl", "snood"},
          {"with hand-rolled edges", "with a short fringe", "in a double layer"},
          {plain("brushed wool", {{"Wool", 100}}), plain("modal", {{"Modal", 100}}),
           plain("wool and silk", {{"Wool", 70}, {"Silk", 30}})},
          18,
          48};
}

}  // namespace

const std::vector<Department>& departments() {
  static const std::vector<Department> all{dresses(), tops(),  knitwear(), trousers(),
                                           skirts(),  coats(), scarves()};
  return all;
}

const Department& department(const std::string& slug) {
  const auto found = std::ranges::find(departments(), slug, &Department::slug);
  if (found == departments().end()) throw std::logic_error("no department " + slug);
  return *found;
}

const std::vector<std::string>& given_names() {
  static const std::vector<std::string> names{
      "Maya",      "Orla",      "Tamsin",  "Greta",    "Inga",     "Nora",    "Petra",   "Wilma",
      "Saskia",    "Linnea",    "Imogen",  "Dervla",   "Bronagh",  "Runa",    "Edith",   "Freya",
      "Cleo",      "Agnes",     "Bettina", "Corinna",  "Delphine", "Elspeth", "Flora",   "Gwen",
      "Hedda",     "Isolde",    "Jorid",   "Katrin",   "Leonie",   "Mabel",   "Nell",    "Odette",
      "Pia",       "Romy",      "Sunniva", "Thea",     "Ursula",   "Vera",    "Winnie",  "Yvonne",
      "Zelda",     "Astrid",    "Birte",   "Carys",    "Dagny",    "Enya",    "Fenja",   "Gisela",
      "Hilda",     "Iris",      "Juno",    "Kerstin",  "Lotte",    "Marit",   "Niamh",   "Oda",
      "Pauline",   "Ragna",     "Solveig", "Tilda",    "Una",      "Vivian",  "Wanda",   "Ylva",
      "Alder",     "Birch",     "Clover",  "Dune",     "Elm",      "Fern",    "Gorse",   "Heath",
      "Ivy",       "Juniper",   "Kelp",    "Lichen",   "Moss",     "Nettle",  "Oak",     "Plover",
      "Quince",    "Rowan",     "Sorrel",  "Teasel",   "Umber",    "Vetch",   "Willow",  "Yarrow",
      "Avocet",    "Bittern",   "Curlew",  "Dunlin",   "Eider",    "Fulmar",  "Gannet",  "Heron",
      "Jackdaw",   "Kittiwake", "Lapwing", "Merlin",   "Nuthatch", "Osprey",  "Petrel",  "Redwing",
      "Siskin",    "Tern",      "Wren",    "Anchor",   "Breaker",  "Capstan", "Dory",    "Estuary",
      "Foreshore", "Galley",    "Harbour", "Inlet",    "Jetty",    "Keel",    "Lantern", "Mooring",
      "Neap",      "Offing",    "Pier",    "Quayside", "Rigging",  "Shoal",   "Tiller",  "Undertow",
      "Voyage",    "Wharf",     "Yawl",    "Ashlar",   "Bramble",  "Cinder",  "Drift",   "Ember",
      "Frost",     "Gale",      "Hail",    "Icicle",   "Meridian", "Nimbus",  "Orbit",   "Prism",
      "Ripple",    "Squall",    "Thaw",    "Vesper",   "Zephyr",   "Alma",    "Berit",   "Celia",
      "Dora",      "Emmeline",  "Frieda",  "Gudrun",   "Hanne",    "Ida",     "Johanna", "Karin"};
  return names;
}

const std::vector<std::string>& colour_names() {
  static const std::vector<std::string> names{
      "Navy",         "Ecru",       "Black",       "Ivory",     "Charcoal", "Rust",
      "Forest Green", "Burgundy",   "Camel",       "Teal",      "Plum",     "Slate Blue",
      "Ochre",        "Dusty Pink", "Petrol",      "Chocolate", "Oatmeal",  "Cobalt",
      "Olive",        "Mulberry",   "Silver Grey", "Ink"};
  return names;
}

}  // namespace demo
