// Text in the encodings of real exports comes out as UTF-8, whatever the chunks. The texts are
// invented; the conversions are ICU's.
#include "importers/decoded_source.h"

#include <gtest/gtest.h>

#include "tests/importers/recoded.h"
#include "tests/importers/text_source.h"

namespace rangebook {
namespace {

struct Decoded {
  std::string text;
  std::string encoding;
  bool all_text = false;
};

Decoded decode(const std::string& bytes, std::size_t chunk = 1 << 16, std::string_view named = "") {
  TextSource source(bytes, chunk);
  DecodedSource decoded(source, named);
  Decoded out;
  for (auto part = decoded.next_chunk(); !part.empty(); part = decoded.next_chunk()) {
    out.text += part;
  }
  out.encoding = decoded.encoding().name;
  out.all_text = decoded.all_text();
  return out;
}

const std::string kGerman =
    "Name;Größe;Preis\nKleid für Gäste;38;79,90 €\nMütze, schön;M;19,90 €\n";

TEST(DecodedSource, Utf16WithAndWithoutMark) {
  for (const char* name : {"UTF-16LE", "UTF-16BE"}) {
    for (const std::size_t chunk : {1U, 3U, 64U}) {
      EXPECT_EQ(decode(recoded(kGerman, name), chunk).text, kGerman) << name;
      EXPECT_EQ(decode(recoded("\uFEFF" + kGerman, name), chunk).text, kGerman) << name;
    }
  }
}

struct Sample {
  const char* encoding;
  std::string text;
};

TEST(DecodedSource, EncodingsOfOneByteAreGuessed) {
  const std::vector<Sample> samples{
      {"windows-1252", kGerman},
      {"windows-1252", "nom;prix\nRobe d’été à fleurs;79,90 €\nChemisier crêpe;59,90 €\n"},
      {"ISO-8859-1", "nombre;precio\nVestido niña pequeño;79\nPantalón bañador;20\n"},
      {"windows-1251",
       "название;цена\nПлатье летнее из хлопка с длинным рукавом;1990\n"
       "Юбка шерстяная с высокой талией;2990\n"},
      {"windows-1253", "όνομα;τιμή\nΦόρεμα βαμβακερό με μακριά μανίκια;79\nΦούστα μάλλινη;59\n"},
  };
  for (const auto& sample : samples) {
    for (const std::size_t chunk : {5U, 65536U}) {
      const Decoded found = decode(recoded(sample.text, sample.encoding), chunk);
      EXPECT_EQ(found.text, sample.text) << sample.encoding << " taken for " << found.encoding;
      EXPECT_TRUE(found.all_text);
    }
  }
}

TEST(DecodedSource, TheEuroSignOfOldLatinIsTakenWhenNamed) {
  const std::string bytes = recoded("79 €\n", "ISO-8859-15");
  EXPECT_EQ(decode(bytes, 64, "latin-9").text, "79 €\n");
}

TEST(DecodedSource, Utf8StaysAsItIs) {
  for (const std::size_t chunk : {1U, 2U, 7U, 65536U}) {
    const Decoded found = decode(kGerman, chunk);
    EXPECT_EQ(found.text, kGerman);
    EXPECT_EQ(found.encoding, "UTF-8");
    EXPECT_TRUE(found.all_text);
  }
}

TEST(DecodedSource, ABadByteInUtf8GoesThroughAndIsKnown) {
  const std::string text = kGerman + "caf\xE9\n";
  for (const std::size_t chunk : {1U, 7U, 65536U}) {
    EXPECT_EQ(decode(text, chunk).text, text);
    EXPECT_FALSE(decode(text, chunk).all_text);
  }
  EXPECT_FALSE(decode("Größe\xC3").all_text);
  EXPECT_FALSE(decode(std::string("a\0b", 3)).all_text);
}

TEST(DecodedSource, AnEncodingNobodyKnowsIsSaid) {
  TextSource source("a");
  EXPECT_TRUE(DecodedSource(source, "no-such-thing").unknown_name());
  EXPECT_EQ(encoding_named("latin1"), "ISO-8859-1");
}

TEST(DecodedSource, ThePlaceOfTheFirstForeignByteDoesNotMatter) {
  std::string text = "name,price\n";
  for (int i = 0; i < 20000; ++i) text += "Maya dress,79.90\n";
  text += "Crêpe blouse for 80 €,80\n";
  EXPECT_EQ(decode(recoded(text, "windows-1252"), 4096).text, text);
}

}  // namespace
}  // namespace rangebook
