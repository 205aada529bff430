// What the brief says, and that every format of it says the same.
#include "reports/brief.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <nlohmann/json.hpp>
#include <string_view>

#include "reports/brief_formats.h"
#include "tests/reports/fixture/change_set.h"
#include "tests/reports/fixture/read_json.h"

namespace rangebook {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

TEST(Brief, TopSentencesNameTheMostImportantChangesFirst) {
  EXPECT_THAT(
      top_sentences(make_brief(fixture::rich()), 5),
      ElementsAre(
          "Sizes in dresses now run UK 6–24; in AW25 they ran UK 6–18. Size 24 is offered in 4 of "
          "24 "
          "lines.",
          "Sizes in trousers now run UK 8–14; in AW25 they ran UK 6–16. No longer offered: 6 and "
          "16.",
          "Like for like, full prices of the 58 lines priced in both captures are up 3.1% (Jevons "
          "index 1.0312). The largest move is in dresses: up 5.2% on 21 lines.",
          "The entry price in dresses is now £59.00; in AW25 it was £49.00.",
          "9 lines are new: 6 in dresses, 2 in knitwear and 1 in trousers."));
}

TEST(Brief, FewerSentencesThanAskedForIsNoError) {
  EXPECT_EQ(top_sentences(make_brief(fixture::unchanged()), 5).size(), 1U);
  EXPECT_TRUE(top_sentences(make_brief(fixture::rich()), 0).empty());
}

TEST(Brief, ARecodedRangeIsNewsOfTheFirstRank) {
  ChangeSet set = fixture::rich();
  set.reconciliation.carried = 1;
  const auto sentences = top_sentences(make_brief(set), 5);
  EXPECT_EQ(
      sentences.back(),
      "Known again: 1 line with a new name, 1 line with a new line code and 1 line in another "
      "category.");
}

TEST(Brief, NothingChangedIsSaidAndCited) {
  const Brief brief = make_brief(fixture::unchanged());
  ASSERT_EQ(brief.headlines.size(), 1U);
  EXPECT_EQ(brief.headlines[0].theme, Theme::nothing);
  EXPECT_EQ(plain_text(brief.headlines[0].sentence, true),
            "Nothing changed on the 70 lines that both captures hold[1][2].");
}

TEST(Brief, WhatWasNotLookedAtStandsRightBelowTheBoxAtAGlance) {
  const Brief brief = make_brief(fixture::rich());
  EXPECT_EQ(brief.sections.front().id, "glance");
  const BriefSection& section = brief.sections.at(1);
  EXPECT_EQ(section.id, "looked-at");
  std::vector<std::string> sentences;
  for (const Phrase& each : section.paragraphs) sentences.push_back(plain_text(each, false));
  EXPECT_THAT(sentences, Contains("58 carried + 9 new + 1 back = 68 lines now."));
  EXPECT_THAT(sentences, Contains("58 carried + 9 gone + 3 not looked at now = 70 lines then."));
  EXPECT_THAT(sentences[1], HasSubstr("Not looked at or not stated: The later capture"));
  EXPECT_EQ(section.tables.back().rows.size(), 3U);
}

/// Calls `visit` for every phrase in reading order.
void each_phrase(const Brief& brief, const std::function<void(const Phrase&)>& visit) {
  for (const Headline& each : brief.headlines) visit(each.sentence);
  for (const BriefSection& section : brief.sections) {
    for (const Phrase& each : section.paragraphs) visit(each);
    for (const BriefTable& table : section.tables) {
      for (const auto& row : table.rows) {
        for (const Phrase& cell : row) visit(cell);
      }
    }
  }
}

TEST(Brief, EveryNoteHasASourceAndEverySourceIsCited) {
  const Brief brief = make_brief(fixture::rich());
  std::vector<bool> cited(brief.sources.size());
  each_phrase(brief, [&](const Phrase& phrase) {
    for (const std::size_t note : notes_of(phrase)) {
      ASSERT_GE(note, 1U);
      ASSERT_LE(note, brief.sources.size());
      cited[note - 1] = true;
    }
  });
  EXPECT_THAT(cited, Not(Contains(false)));
}

TEST(Brief, EveryHeadlineCarriesANote) {
  for (const Headline& each : make_brief(fixture::rich()).headlines) {
    EXPECT_FALSE(notes_of(each.sentence).empty()) << plain_text(each.sentence, false);
  }
}

TEST(Brief, APriceCitesTheRowItWasReadFrom) {
  const Brief brief = make_brief(fixture::rich());
  const auto& section = *std::find_if(brief.sections.begin(), brief.sections.end(),
                                      [](const BriefSection& each) { return each.id == "prices"; });
  const auto& moves =
      *std::find_if(section.tables.begin(), section.tables.end(),
                    [](const BriefTable& each) { return each.key == "full_prices"; });
  const auto& row = moves.rows.at(0);
  EXPECT_EQ(plain_text(row[0], false), "Tarn shirt dress DR-1002");
  EXPECT_EQ(plain_text(row[1], false), "£79.90");
  EXPECT_EQ(plain_text(row[3], false), "+£10.00 (+12.5%)");
  EXPECT_EQ(brief.sources[notes_of(row[1]).at(0) - 1], fixture::seen_then(21));
  EXPECT_EQ(brief.sources[notes_of(row[2]).at(0) - 1], fixture::seen_now(22));
}

TEST(Brief, OnlyInventedDataIsCalledInvented) {
  EXPECT_THAT(brief_text(make_brief(fixture::rich(), {true})), HasSubstr("This data is invented."));
  for (auto* format : {&brief_text, &brief_markdown, &brief_html}) {
    EXPECT_THAT((*format)(make_brief(fixture::rich())), Not(HasSubstr("This data is invented")));
    EXPECT_THAT((*format)(make_brief(fixture::rich())), HasSubstr("Statutory rights differ"));
  }
}

/// Without what stands between a pair of marks, and the marks; what must not hold a line end.
std::string without(std::string text, std::string_view open, std::string_view close) {
  for (std::size_t at = 0; (at = text.find(open, at)) != text.npos;) {
    const std::size_t end = text.find(close, at + open.size());
    if (end == text.npos) break;
    text.erase(at, end + close.size() - at);
  }
  return text;
}

std::string plain_of_markdown(const std::string& text) {
  std::string out;
  for (const char sign : without(text, "[^", "]")) {
    if (sign != '\\' && sign != '*') out += sign;
  }
  return out;
}

std::string plain_of_html(const std::string& page) {
  std::string text = without(without(page, "<sup>", "</sup>"), "<", ">");
  const std::pair<std::string_view, char> signs[] = {{"&lt;", '<'}, {"&gt;", '>'}, {"&amp;", '&'}};
  for (const auto& [code, sign] : signs) {
    for (std::size_t at = 0; (at = text.find(code, at)) != text.npos; ++at) {
      text.replace(at, code.size(), 1, sign);
    }
  }
  return text;
}

/// Every phrase of the brief stands in `text`. The page shows tables with pictures last in their
/// section, so order is not asked for.
void expect_all_phrases(const Brief& brief, const std::string& text) {
  std::size_t phrases = 0;
  each_phrase(brief, [&](const Phrase& phrase) {
    const std::string plain = plain_text(phrase, false);
    EXPECT_THAT(text, HasSubstr(plain)) << plain;
    ++phrases;
  });
  EXPECT_GT(phrases, 100U);
}

TEST(Brief, TextMarkdownAndPageHoldTheSameFigures) {
  const Brief brief = make_brief(fixture::rich());
  expect_all_phrases(brief, without(brief_text(brief), "[", "]"));
  expect_all_phrases(brief, plain_of_markdown(brief_markdown(brief)));
  expect_all_phrases(brief, plain_of_html(brief_html(brief)));
}

TEST(Brief, JsonHoldsEveryPhraseInOrder) {
  const Brief brief = make_brief(fixture::rich());
  const auto read = fixture::read_ordered_json(brief_json(brief));
  std::vector<std::string> texts;
  std::vector<std::vector<std::size_t>> notes;
  const auto take = [&](const nlohmann::ordered_json& phrase) {
    texts.push_back(phrase.at("text"));
    notes.push_back(phrase.at("notes"));
  };
  for (const auto& headline : read.at("headlines")) take(headline);
  for (const auto& section : read.at("sections")) {
    for (const auto& paragraph : section.at("paragraphs")) take(paragraph);
    for (const auto& table : section.at("tables")) {
      for (const auto& row : table.at("rows")) {
        for (const auto& [key, cell] : row.items()) take(cell);
      }
    }
  }
  std::size_t at = 0;
  each_phrase(brief, [&](const Phrase& phrase) {
    ASSERT_LT(at, texts.size());
    EXPECT_EQ(texts[at], plain_text(phrase, false));
    EXPECT_EQ(notes[at++], notes_of(phrase));
  });
  EXPECT_EQ(at, texts.size());
  EXPECT_EQ(read.at("format"), "rangebook.brief/1");
  EXPECT_EQ(read.at("sources").size(), brief.sources.size());
  EXPECT_EQ(read.at("sources").at(3).at("document"), brief.sources[3].document);
}

TEST(Brief, EqualValuesGiveEqualBytes) {
  const auto made = [] { return make_brief(fixture::rich()); };
  for (auto* format : {&brief_text, &brief_markdown, &brief_html}) {
    EXPECT_EQ((*format)(made()), (*format)(made()));
  }
  EXPECT_EQ(brief_json(made()), brief_json(made()));
}

TEST(Brief, FiveThousandChangesKeepTheirOrderAndSources) {
  const Brief brief = make_brief(fixture::large(5000));
  EXPECT_EQ(brief.sources.size(), 10002U);
  EXPECT_THAT(top_sentences(brief, 1)[0],
              HasSubstr("The full price is up on 5000 lines and down on none"));
}

}  // namespace
}  // namespace rangebook
