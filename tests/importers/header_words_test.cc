// Names of columns in six languages. Common practice, no source (from memory).
#include "importers/header_words.h"

#include <gtest/gtest.h>

#include <map>
#include <string>

#include "importers/field_map.h"
#include "schema/embedded.h"

namespace rangebook {
namespace {

TEST(HeaderWords, FoldingTakesOffCaseAndAccents) {
  EXPECT_EQ(folded_header("  GRÖSSE "), "grosse");
  EXPECT_EQ(folded_header("Größe"), "grosse");
  EXPECT_EQ(folded_header("Prix d'origine"), "prix_dorigine");
  EXPECT_EQ(folded_header("Stock-Status (qty)"), "stock_status_qty");
}

TEST(HeaderWords, SixLanguages) {
  EXPECT_EQ(field_named("Bezeichnung"), Field::name);
  EXPECT_EQ(field_named("Désignation"), Field::name);
  EXPECT_EQ(field_named("Couleur"), Field::colour);
  EXPECT_EQ(field_named("TALLA"), Field::size);
  EXPECT_EQ(field_named("Prezzo di listino"), Field::full_price);
  EXPECT_EQ(field_named("Adviesprijs"), Field::full_price);
  EXPECT_EQ(field_named("Verfügbarkeit"), Field::in_stock);
  EXPECT_EQ(field_named("Matière"), Field::composition);
}

TEST(HeaderWords, UnitsAndCurrencies) {
  EXPECT_EQ(column_meaning("Price (EUR)")->currency, "EUR");
  EXPECT_EQ(column_meaning("Preis in €").has_value(), false);
  EXPECT_EQ(column_meaning("Preis €")->currency, "EUR");
  EXPECT_EQ(column_meaning("RRP GBP")->field, Field::full_price);
  EXPECT_EQ(column_meaning("Size (UK)")->field, Field::size);
  EXPECT_EQ(column_meaning("Size (UK)")->currency, "");
}

TEST(HeaderWords, NoNameMeansTwoFields) {
  std::map<std::string, std::string> seen;
  for (const auto& row : table_rows("tables/fields.tsv")) {
    const auto [at, fresh] = seen.emplace(folded_header(row.at(1)), row.at(0));
    EXPECT_EQ(at->second, row.at(0)) << row.at(1);
    if (fresh && row.at(0) != "colour_size" && row.at(0) != "sale_price") {
      EXPECT_EQ(to_string(*field_named(row.at(1))), row.at(0));
    }
  }
}

TEST(HeaderWords, SentencesAreNoHeaders) {
  EXPECT_FALSE(column_meaning(std::string(1000, 'x')).has_value());
  EXPECT_FALSE(column_meaning("").has_value());
  EXPECT_FALSE(column_meaning("\xE4").has_value());
}

}  // namespace
}  // namespace rangebook
