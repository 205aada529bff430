// The category tree and how lines are sorted into it. Common practice, no source; languages other
// than English from memory.
#include "tracker/category_parser.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace rangebook {
namespace {

struct Sorted {
  const char* text;
  const char* slug;
};

TEST(FindCategory, EverySlugIsItsOwnCategory) {
  for (const auto slug : all_categories()) EXPECT_EQ(find_category(slug, ""), slug);
}

TEST(FindCategory, AccessoriesInTheSingularAndPlural) {
  EXPECT_EQ(find_category("Accessories", "Item"), "accessories");
  EXPECT_EQ(find_category("Accessory", "Item"), "accessories");
}

TEST(FindCategory, TheSourcesCategory) {
  const Sorted cases[] = {{"Dresses", "dresses"},
                          {"DRESSES", "dresses"},
                          {"Women > Dresses > Midi", "dresses"},
                          {"Women/Dresses/Midi", "dresses"},
                          {"Home \xE2\x80\xBA Knitwear \xE2\x80\xBA Cardigans", "cardigans"},
                          {"Dresses > Shirt", "dresses"},
                          {"Dresses > Shirt Dresses", "dresses"},
                          {"Trousers > Jeans", "jeans"},
                          {"Women's Tops", "tops"},
                          {"Coats & Jackets", "jackets-coats"},
                          {"Jackets, Coats and Blazers", "jackets-coats"},
                          {"Tops & T-Shirts", "tops"},
                          {"Shirts & Blouses", "blouses-shirts"},
                          {"Lingerie & Nightwear", "lingerie-sleepwear"},
                          {"Shoes & Accessories > Bags", "bags"},
                          {"Apparel & Accessories > Clothing > Skirts", "skirts"},
                          {"Apparel & Accessories", "unsorted"},
                          {"Shorts", "shorts"}};
  for (const auto& [text, slug] : cases) EXPECT_EQ(find_category(text, ""), slug) << text;
}

TEST(FindCategory, TheHeadNounOfAName) {
  const Sorted cases[] = {{"Maya Midi Dress", "dresses"},
                          {"Shirt dress", "dresses"},
                          {"Dress shirt", "blouses-shirts"},
                          {"Jumper dress", "dresses"},
                          {"T-shirt dress", "dresses"},
                          {"Belted shirtdress", "dresses"},
                          {"Skirt in wool coating", "skirts"},
                          {"Dress with pockets and belt", "dresses"},
                          {"Dress, belt included", "dresses"},
                          {"Wide-leg trousers", "trousers"},
                          {"Trousers flat front", "trousers"},
                          {"2-in-1 shorts", "shorts"},
                          {"Skirt suit", "suits"},
                          {"Suit jacket", "blazers"},
                          {"Bikini top", "swimwear"},
                          {"Pyjama trousers", "sleepwear"},
                          {"Dress shoes", "shoes"},
                          {"Belt bag", "bags"},
                          {"Denim jacket", "jackets"},
                          {"Pull-on trousers", "trousers"},
                          {"Cashmere roll neck", "jumpers"},
                          {"Roll neck top", "tops"},
                          {"Fringed scarf", "scarves"},
                          {"Harbour", "unsorted"},
                          {"", "unsorted"}};
  for (const auto& [text, slug] : cases) EXPECT_EQ(find_category("", text), slug) << text;
}

TEST(FindCategory, OtherLanguages) {
  const Sorted cases[] = {{"Sommerkleid", "dresses"},
                          {"Hemdblusenkleid", "dresses"},
                          {"Strickjacke", "cardigans"},
                          {"Winterjacke", "jackets"},
                          {"Schuhe", "shoes"},
                          {"M\xC3\xA4ntel", "coats"},
                          {"Jupe en jean", "skirts"},
                          {"Pantalon de tailleur", "trousers"},
                          {"Chemise de nuit", "sleepwear"},
                          {"Vestido camisero", "dresses"},
                          {"Chaqueta de punto", "cardigans"},
                          {"Camicetta a righe", "blouses-shirts"},
                          {"Pantaloni larghi", "trousers"},
                          {"Zomerjurk", "dresses"},
                          {"Spijkerbroek", "jeans"}};
  for (const auto& [text, slug] : cases) EXPECT_EQ(find_category(text, ""), slug) << text;
}

TEST(FindCategory, TheCategoryWinsOverTheName) {
  EXPECT_EQ(find_category("Knitwear", "Jumper dress"), "knitwear");
  EXPECT_EQ(find_category("New in", "Jumper dress"), "dresses");
  EXPECT_EQ(find_category("Sale", "Harbour"), kUnsorted);
}

TEST(FindCategory, LongTextsAreReadToTheLimit) {
  EXPECT_EQ(find_category("", std::string(5000, 'x') + " dress"), kUnsorted);
  EXPECT_EQ(find_category(std::string(5000, '>'), "dress"), "dresses");
}

TEST(CategoryTree, ParentsAndDescent) {
  EXPECT_EQ(parent_category("t-shirts"), "tops");
  EXPECT_EQ(parent_category("tops"), "");
  EXPECT_EQ(parent_category("nothing"), "");
  EXPECT_TRUE(category_within("t-shirts", "tops"));
  EXPECT_TRUE(category_within("tops", "tops"));
  EXPECT_FALSE(category_within("tops", "t-shirts"));
  EXPECT_FALSE(category_within("dresses", "tops"));
  EXPECT_FALSE(is_category(kUnsorted));
  EXPECT_FALSE(is_category("Dresses"));
}

TEST(CategoryTree, EverySlugIsUniqueAndItsParentStandsAbove) {
  const auto all = all_categories();
  EXPECT_GE(all.size(), 30U);
  for (auto it = all.begin(); it != all.end(); ++it) {
    EXPECT_TRUE(is_category(*it)) << *it;
    EXPECT_EQ(std::count(all.begin(), all.end(), *it), 1) << *it;
    const auto parent = parent_category(*it);
    EXPECT_TRUE(parent.empty() || std::find(all.begin(), it, parent) != it) << *it;
  }
}

TEST(FindCategory, BreadcrumbsInSixLanguages) {
  const Sorted cases[] = {{"Home > Women > Coats & Jackets > Coats", "coats"},
                          {"Startseite > Damen > Jacken & M\xC3\xA4ntel > M\xC3\xA4ntel", "coats"},
                          {"Damen > Tops & Shirts > Blusen", "blouses-shirts"},
                          {"Damen > Anz\xC3\xBCge & Kost\xC3\xBCme", "suits"},
                          {"Damen > W\xC3\xA4sche > BHs", "lingerie"},
                          {"Accueil > Vestes & Manteaux > Manteaux", "coats"},
                          {"Femme > Combinaisons", "jumpsuits"},
                          {"Inicio > Mujer > Faldas > Midi", "skirts"},
                          {"Mujer > Monos", "jumpsuits"},
                          {"Donna > Abbigliamento > Abiti", "dresses"},
                          {"Donna > Mare > Costumi", "swimwear"},
                          {"Donna > Pigiami", "sleepwear"},
                          {"Dames > Truien & Vesten > Vesten", "cardigans"},
                          {"Dames > Accessories > Riemen", "belts"}};
  for (const auto& [text, slug] : cases) EXPECT_EQ(find_category(text, ""), slug) << text;
}

TEST(FindCategory, AKindOfTheStepBeforeIsTheCategory) {
  EXPECT_EQ(find_category("Jackets & Coats > Coat", ""), "coats");
  EXPECT_EQ(find_category("Tops > Shirt", ""), "blouses-shirts");
  EXPECT_EQ(find_category("Dresses > Shirt", ""), "dresses");
}

}  // namespace
}  // namespace rangebook
