// Attributes from text. Common practice, no source; languages other than English from memory.
#include "tracker/attribute_reader.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "tests/check_rows.h"

namespace rangebook {
namespace {

/// `length=midi; pockets=with`
std::string stated(const Attributes& attributes) {
  std::string text;
  for (std::size_t i = 0; i < kAttributeCount; ++i) {
    for (const auto value : attributes.values(Attribute(i))) {
      if (!text.empty()) text += "; ";
      text += std::string(to_string(Attribute(i))) + "=" + std::string(value);
    }
  }
  return text;
}
std::string read(const std::string& text) { return stated(read_attributes("", text)); }

TEST(ReadAttributes, QuotesItsWords) {
  const std::string name = "Lilla Midi Dress";
  const std::string text = "With a V-neck, and Long sleeves.";
  const auto attributes = read_attributes(name, text);
  EXPECT_EQ(stated(attributes), "sleeve-length=long; neckline=v; length=midi");
  for (const auto& reading : attributes.readings) {
    const auto& field = reading.field == AttributeReading::Field::name ? name : text;
    EXPECT_EQ(field.substr(reading.begin, reading.end - reading.begin), reading.words);
  }
  EXPECT_EQ(attributes.readings.at(0).words, "Long sleeves");
  EXPECT_EQ(attributes.readings.at(1).words, "V-neck");
  EXPECT_EQ(attributes.readings.at(2).words, "Midi Dress");
}

TEST(ReadAttributes, SpellingsOfOneStatement) {
  for (const auto* text : {"3/4 sleeves", "\xC2\xBE sleeves", "three-quarter sleeves",
                           "Three quarter length sleeves", "3/4-Arm", "manches 3/4",
                           "Dreiviertelarm", "maniche a tre quarti", "mangas tres cuartos"}) {
    EXPECT_EQ(read(text), "sleeve-length=three-quarter") << text;
  }
  EXPECT_EQ(read("Sleeve: short. Neckline - round"), "sleeve-length=short; neckline=round");
}

TEST(ReadAttributes, Negation) {
  EXPECT_EQ(read("No pockets"), "pockets=without");
  EXPECT_EQ(read("without front or back pockets"), "pockets=without");
  EXPECT_EQ(read("ohne Taschen"), "pockets=without");
  EXPECT_EQ(read("sans poches ni boutons"), "pockets=without");
  EXPECT_EQ(read("Pockets: none"), "pockets=without");
  EXPECT_EQ(read("Taschen: keine"), "pockets=without");
  EXPECT_EQ(read("no zip or buttons"), "");
  EXPECT_EQ(read("No zip, but two pockets"), "pockets=with");
  EXPECT_EQ(read("button-free"), "");
  EXPECT_EQ(read("a zip instead of buttons"), "fastening=zip");
  EXPECT_EQ(read("ohne \xC3\x84rmel"), "sleeve-length=sleeveless");
  EXPECT_EQ(read("not fitted"), "");
  EXPECT_EQ(read_attributes("", "It has no pockets").readings.at(0).words, "no pockets");
}

TEST(ReadAttributes, Traps) {
  EXPECT_EQ(read("Sleeve length 62 cm"), "");
  EXPECT_EQ(read("comes with a pocket square"), "");
  EXPECT_EQ(read("\xC3\x84rmell\xC3\xA4nge 60 cm"), "");
  EXPECT_EQ(read("Team with wide-leg trousers and a striped shirt. Pockets."), "pockets=with");
  EXPECT_EQ(read("The model wears a size S and a belt"), "");
  EXPECT_EQ(read("no-fuss zip"), "fastening=zip");
  EXPECT_EQ(read("belt loops"), "");
  EXPECT_EQ(read(""), "");
  EXPECT_EQ(read("\xff\xfe -- //"), "");
}

TEST(ReadAttributes, BothAreListedAndNoneIsChosen) {
  const auto either = read_attributes("", "V-neck or round neck");
  EXPECT_EQ(stated(either), "neckline=round; neckline=v");
  EXPECT_TRUE(either.contradicts(Attribute::neckline));
  EXPECT_EQ(either.value(Attribute::neckline), std::nullopt);
  const auto fields = read_attributes("Long-sleeved top", "with short sleeves");
  EXPECT_TRUE(fields.contradicts(Attribute::sleeve_length));
  EXPECT_EQ(read("long or short sleeves"), "sleeve-length=long; sleeve-length=short");
  EXPECT_EQ(read("manches longues ou courtes"), "sleeve-length=long; sleeve-length=short");
  const auto zip_and_buttons = read_attributes("", "zip and buttons");
  EXPECT_FALSE(zip_and_buttons.contradicts(Attribute::fastening));
  EXPECT_EQ(zip_and_buttons.values(Attribute::fastening).size(), 2U);
}

TEST(ReadAttributes, TwoDescriptionsOfOneSleeve) {
  EXPECT_EQ(read("long puff sleeves"), "sleeve-length=long; sleeve-type=puff");
  EXPECT_EQ(read("short gathered sleeves"), "sleeve-length=short");
  EXPECT_EQ(read("long dress with puff sleeves"), "sleeve-type=puff");
}

TEST(ReadAttributes, AGeneralWordGivesWay) {
  EXPECT_EQ(read("our new print: floral"), "pattern=floral");
  EXPECT_EQ(read("an all over print"), "pattern=printed");
}

TEST(ReadAttributes, LongTextsAreReadUpToALimit) {
  EXPECT_EQ(read(std::string(kMaxAttributeBytes, ' ') + "zip"), "");
}

TEST(ReadAttributes, OrderOfFieldsAndSentencesDoesNotMatter) {
  EXPECT_EQ(read("Zip. Pockets. Long sleeves."), read("Long sleeves. Zip. Pockets."));
  EXPECT_EQ(stated(read_attributes("zip", "pockets")), stated(read_attributes("pockets", "zip")));
}

struct Score {
  int right = 0;
  int wrong = 0;
  int missed = 0;
};

std::set<std::string> parts_of(std::string text) {
  std::set<std::string> parts;
  for (std::size_t at = 0; at < text.size();) {
    const auto end = std::min(text.find("; ", at), text.size());
    parts.insert(text.substr(at, end - at));
    at = end + 2;
  }
  return parts;
}

int per_mille(int part, int rest) { return part * 1000 / std::max(1, part + rest); }

std::map<std::string, Score> held_out_scores() {
  std::map<std::string, Score> scores;
  for (const auto& row : check_rows("attributes_held_out.tsv")) {
    const auto wanted = parts_of(row.at(3));
    const auto found = parts_of(stated(read_attributes(row.at(1), row.at(2))));
    const auto note = [&scores](const std::string& part, int Score::*what) {
      ++(scores[part.substr(0, part.find('='))].*what);
      ++(scores["all"].*what);
    };
    for (const auto& part : found)
      note(part, wanted.contains(part) ? &Score::right : &Score::wrong);
    for (const auto& part : wanted) {
      if (!found.contains(part)) note(part, &Score::missed);
    }
  }
  return scores;
}

// tests/checks/attributes_held_out.tsv: 73 sentences, written before the table by the same hand.
// The first run on them gave 221 right, 9 wrong, 2 missed: precision 0.961, recall 0.991; by
// attribute (right, wrong, missed): collar 12 0 0, fastening 28 3 0, fit 11 1 0, length 18 0 0,
// neckline 30 0 1, pattern 25 0 0, pockets 23 0 0, shape 15 3 0, sleeve-length 27 0 0, sleeve-type
// 7 0 0, waist-detail 14 2 1, waist-position 11 0 0. Two faults it showed were put right since
// ("con cintura" read as a belt in Spanish, zipped pockets read as a zip); the bounds stay those of
// the first run.
TEST(ReadAttributes, HeldOutSentences) {
  auto scores = held_out_scores();
  EXPECT_EQ(scores.size(), kAttributeCount + 1);
  EXPECT_GE(per_mille(scores["all"].right, scores["all"].wrong), 960);
  EXPECT_GE(per_mille(scores["all"].right, scores["all"].missed), 990);
  for (const auto& [attribute, score] : scores) {
    EXPECT_GE(per_mille(score.right, score.wrong), 830) << attribute;
    EXPECT_GE(per_mille(score.right, score.missed), 930) << attribute;
  }
}

}  // namespace
}  // namespace rangebook
