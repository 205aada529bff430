// The seam for other languages. Language tags: RFC 5646 (BCP 47), `und` from its section 4.1. The
// German words are our own, from memory.
#include "reports/phrase_book.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reports/brief_formats.h"
#include "reports/report_page.h"
#include "reports/workbook.h"
#include "tests/reports/fixture/change_set.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

PhraseBook book_of(std::string_view lines) {
  std::vector<std::string> faults;
  PhraseBook book = PhraseBook::read("english\tde\n" + std::string(lines), faults);
  EXPECT_THAT(faults, IsEmpty());
  return book;
}

std::vector<std::string> faults_of(std::string_view table) {
  std::vector<std::string> faults;
  PhraseBook::read(table, faults);
  return faults;
}

std::string said(const PhraseBook& book, const Phrase& phrase) {
  return plain_text(book.phrase(phrase), true);
}

Phrase rise() {
  Phrase phrase;
  phrase.name("Maya Dress").words(" is up ").share(125).note(3).words(" to ");
  return phrase.money({7990, fixture::currency("GBP")}).words(".");
}

TEST(PhraseBook, GivesAPhraseItsOtherOrder) {
  const PhraseBook book = book_of("{} is up {} to {}.\tUm {2} auf {3} gestiegen: {1}.\n");
  EXPECT_EQ(pattern_of(rise()), "{} is up {} to {}.");
  EXPECT_EQ(said(book, rise()), "Um 12.5%[3] auf £79.90 gestiegen: Maya Dress.");
  EXPECT_EQ(book.language(), "de");
}

TEST(PhraseBook, KeepsFiguresAsValues) {
  const Phrase other = book_of("{} is up {} to {}.\t{} {} {}\n").phrase(rise());
  std::vector<PieceValue> before;
  std::vector<PieceValue> after;
  for (const Piece& piece : rise().pieces) {
    if (piece.value.index() != 0) before.push_back(piece.value);
  }
  for (const Piece& piece : other.pieces) {
    if (piece.value.index() != 0) after.push_back(piece.value);
  }
  EXPECT_EQ(before, after);
}

TEST(PhraseBook, FallsBackToTheTextsOfAPhrase) {
  Phrase list;
  list.name("dresses").words(", ").name("tops").words(" and ").name("skirts");
  EXPECT_EQ(said(book_of("and\tund\n"), list), "dresses, tops und skirts");
  EXPECT_EQ(said(book_of("or\toder\n"), list), "dresses, tops and skirts");
}

TEST(PhraseBook, NeverTouchesWhatTheShopWrote) {
  Phrase phrase;
  phrase.name("New").words(": ").code("New");
  EXPECT_EQ(said(book_of("New\tNeu\n"), phrase), "New: New");
  EXPECT_EQ(said(book_of("none\tkeine\n"), Phrase{}.figure("none")), "keine");
}

TEST(PhraseBook, FillsSlots) {
  EXPECT_EQ(PhraseBook{}.filled("{}: {} more", {"New {x}", "12"}), "New {x}: 12 more");
  EXPECT_EQ(book_of("{}: {} more\tnoch {2} zu {1}\n").filled("{}: {} more", {"A", "12"}),
            "noch 12 zu A");
}

TEST(PhraseBook, SaysWhatIsWrongAndKeepsTheRest) {
  EXPECT_THAT(
      faults_of("english\tde\nno tab\n# a remark\n\nup {}\tauf\nup {}\tauf {\n"
                "Sizes\tGrößen\nSizes\tMaße\n"),
      ElementsAre("line 2: no tab; write the English text, a tab, and its translation",
                  HasSubstr("line 5: 1 in English, 0 in the translation"),
                  HasSubstr("line 6: a brace"), "line 8: this English text stands above already"));
  EXPECT_THAT(faults_of(""), ElementsAre(HasSubstr("line 1: no first line")));
  EXPECT_THAT(faults_of("Sizes\tGrößen\n"), ElementsAre(HasSubstr("line 1: not a first line")));
  EXPECT_THAT(faults_of("\xEF\xBB\xBF"
                        "english\tfr-CA\r\nSizes\tTailles\r\n"),
              IsEmpty());
}

TEST(PhraseBook, TranslatesAPageInEveryForm) {
  const PhraseBook book = book_of(
      "Prices\tPreise\nSources\tQuellen\nLine\tZeile\n"
      "In short\tIn Kürze\n"
      "the whole capture\tdie ganze Aufnahme\n");
  const ReportPage english = page_of(make_brief(fixture::rich(), {true}));
  const ReportPage page = translated(english, book);
  EXPECT_THAT(page_html(page), HasSubstr("<html lang=\"de\">"));
  for (const auto& form : {page_html(page), page_text(page), page_markdown(page)}) {
    EXPECT_THAT(form, HasSubstr("Preise"));
    EXPECT_THAT(form, HasSubstr("Zeile"));
  }
  EXPECT_THAT(page_html(page), Not(HasSubstr(">Sources<")));
  EXPECT_THAT(page_text(page), HasSubstr("\nQuellen\n"));
  EXPECT_EQ(page_text(translated(english, PhraseBook{})), page_text(english));
}

// Filled in with the English itself, the table must change nothing but the language.
TEST(PhraseBook, ATableOfAPageFitsThatPage) {
  const ReportPage english = page_of(make_brief(fixture::rich(), {true}));
  const std::string empty = phrase_table(english);
  std::string table;
  std::size_t lines = 0;
  for (std::size_t from = 0; from < empty.size();) {
    const std::size_t tab = empty.find('\t', from);
    const std::string text = empty.substr(from, tab - from);
    table += text + '\t' + (lines++ == 0 ? "en" : text) + '\n';
    from = empty.find('\n', tab) + 1;
  }
  EXPECT_GT(lines, 60U);
  std::vector<std::string> faults;
  const PhraseBook book = PhraseBook::read(table, faults);
  EXPECT_THAT(faults, IsEmpty());
  EXPECT_EQ(page_text(translated(english, book)), page_text(english));
  EXPECT_EQ(page_markdown(translated(english, book)), page_markdown(english));
}

}  // namespace
}  // namespace rangebook
