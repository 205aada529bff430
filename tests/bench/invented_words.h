// The words invented lines are made of: common trade words, no names of brands.
#pragma once

#include <cstdint>
#include <string_view>

namespace rangebook::bench {

struct Garment {
  std::string_view name;
  std::string_view category;
  std::uint32_t base_price;  ///< minor units
};

inline constexpr Garment kGarments[] = {
    {"wrap dress", "dresses", 6900},
    {"shirt dress", "dresses", 7900},
    {"slip dress", "dresses", 5900},
    {"pinafore dress", "dresses", 6400},
    {"tiered dress", "dresses", 8500},
    {"blouse", "tops", 3900},
    {"tunic", "tops", 4200},
    {"camisole", "tops", 2400},
    {"T-shirt", "tops", 1800},
    {"peplum top", "tops", 3400},
    {"cardigan", "knitwear", 5400},
    {"jumper", "knitwear", 4900},
    {"roll neck", "knitwear", 4500},
    {"tank", "knitwear", 3600},
    {"wide trousers", "trousers", 5900},
    {"tapered trousers", "trousers", 5200},
    {"cropped trousers", "trousers", 4800},
    {"culottes", "trousers", 4600},
    {"straight jeans", "jeans", 5500},
    {"bootcut jeans", "jeans", 5700},
    {"pencil skirt", "skirts", 4200},
    {"pleated skirt", "skirts", 4900},
    {"A-line skirt", "skirts", 4400},
    {"blazer", "jackets & coats", 9900},
    {"trench coat", "jackets & coats", 14900},
    {"wool coat", "jackets & coats", 18900},
    {"quilted jacket", "jackets & coats", 8900},
    {"jumpsuit", "jumpsuits", 7400},
};

inline constexpr std::string_view kNames[] = {
    "Alder",  "Amble",  "Aster",   "Barley", "Bracken", "Briar",     "Bryony", "Burr",
    "Cairn",  "Cedar",  "Clover",  "Copse",  "Corrie",  "Dapple",    "Dell",   "Drift",
    "Ember",  "Fallow", "Fern",    "Fjord",  "Flint",   "Glade",     "Gorse",  "Harbour",
    "Haze",   "Heath",  "Juniper", "Kelp",   "Larch",   "Lichen",    "Linnet", "Marram",
    "Meadow", "Merle",  "Mallow",  "Moss",   "Nettle",  "Oriel",     "Osier",  "Pebble",
    "Petrel", "Quarry", "Reed",    "Rowan",  "Rush",    "Saltmarsh", "Sedge",  "Shale",
    "Skerry", "Sorrel", "Spindle", "Tansy",  "Teasel",  "Thistle",   "Tide",   "Umber",
    "Vetch",  "Weir",   "Willow",  "Wren",   "Yarrow",  "Zephyr",    "Tarn",   "Brook"};

inline constexpr std::string_view kManners[] = {
    "belted",       "button-front", "V-neck",       "square-neck", "boat-neck",   "long-sleeved",
    "puff-sleeved", "sleeveless",   "half-sleeved", "cropped",     "longline",    "midi",
    "maxi",         "knee-length",  "relaxed",      "fitted",      "draped",      "gathered",
    "panelled",     "ruched",       "side-slit",    "cable-knit",  "ribbed",      "striped",
    "spotted",      "checked",      "floral",       "plain",       "embroidered", "smocked",
    "pocketed",     "high-waisted"};

inline constexpr std::string_view kColours[] = {
    "navy",  "black",      "ivory",     "écru",   "camel",    "stone",   "olive",
    "sage",  "teal",       "rust",      "berry",  "plum",     "blush",   "coral",
    "crème", "slate",      "charcoal",  "cobalt", "mustard",  "emerald", "cherry",
    "lilac", "denim blue", "chocolate", "ink",    "off-white"};

inline constexpr std::string_view kFibres[] = {"cotton",    "viscose", "linen", "wool",
                                               "polyester", "lyocell", "modal", "acrylic",
                                               "polyamide", "silk",    "cupro", "cashmere"};
inline constexpr std::string_view kSecondFibres[] = {"elastane", "polyamide", "polyester",
                                                     "linen",    "viscose",   "silk"};

inline constexpr std::string_view kFeels[] = {
    "soft",       "crisp",    "fluid",    "brushed",   "light",        "weighty", "springy",
    "smooth",     "textured", "washed",   "matt",      "glossy",       "dry",     "fine",
    "dense",      "airy",     "sturdy",   "supple",    "slubby",       "cool",    "warm",
    "breathable", "stretchy", "crinkled", "combed",    "double-faced", "bonded",  "garment-dyed",
    "yarn-dyed",  "peached",  "boiled",   "open-weave"};

inline constexpr std::string_view kDetails[] = {"a tie at the waist",
                                                "two patch pockets",
                                                "a concealed zip",
                                                "covered buttons",
                                                "a soft collar",
                                                "turn-back cuffs",
                                                "a back vent",
                                                "darts at the bust",
                                                "an elasticated back",
                                                "a curved hem",
                                                "side pockets",
                                                "a keyhole at the neck",
                                                "gathers at the shoulder",
                                                "a dropped shoulder",
                                                "a removable belt",
                                                "a storm flap",
                                                "a full lining",
                                                "a half lining",
                                                "contrast topstitching",
                                                "adjustable straps",
                                                "a stand collar",
                                                "pintucks down the front",
                                                "a yoke at the back",
                                                "horn-look buttons",
                                                "a box pleat",
                                                "knife pleats",
                                                "a crossover front",
                                                "a flat waistband",
                                                "belt loops",
                                                "a coin pocket",
                                                "ribbed trims",
                                                "a split at the side",
                                                "a facing that stays put",
                                                "bound seams",
                                                "a hook and bar",
                                                "raglan sleeves",
                                                "bishop sleeves",
                                                "a funnel neck",
                                                "a shawl collar",
                                                "welt pockets",
                                                "a tab at the cuff",
                                                "scalloped edges",
                                                "lace at the hem",
                                                "a pleated front",
                                                "a flounce at the hem",
                                                "shirred cuffs",
                                                "a V at the back",
                                                "a hanging loop"};

inline constexpr std::string_view kOccasions[] = {
    "the office",          "a long lunch",   "travelling",
    "a summer wedding",    "school runs",    "weekends",
    "an evening out",      "garden parties", "the theatre",
    "working from home",   "cool mornings",  "late summer",
    "a city break",        "an interview",   "days by the sea",
    "a christening",       "layering",       "warm evenings",
    "presenting",          "the market",     "a dinner at home",
    "the first cold days", "long flights",   "a gallery visit"};

inline constexpr std::string_view kPartners[] = {
    "flat boots",      "a fine knit",    "trainers",       "a short jacket", "heeled sandals",
    "opaque tights",   "wide trousers",  "a long coat",    "loafers",        "a silk scarf",
    "straight jeans",  "ankle boots",    "a denim jacket", "ballet flats",   "a chunky cardigan",
    "a plain T-shirt", "a leather belt", "court shoes",    "a slim skirt",   "knee boots",
    "a camisole",      "a crisp shirt",  "a wool wrap",    "bare legs"};

inline constexpr std::string_view kCare[] = {"Machine wash at 30.",  "Hand wash cold.",
                                             "Dry clean only.",      "Wash inside out at 40.",
                                             "Cool iron if needed.", "Dry flat away from sun.",
                                             "Do not tumble dry.",   "Wash with like colours."};

inline constexpr std::string_view kFits[] = {
    "true to size",   "generously",       "close to the body",      "a little long",
    "a little short", "roomy at the hip", "narrow at the shoulder", "easy through the waist"};

}  // namespace rangebook::bench
