// Plain and Markdown forms of text that may hold anything.
#include "reports/phrase.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

const std::string kReplaced = "\xEF\xBF\xBD";

TEST(CleanLine, LeavesOrdinaryTextAlone) {
  EXPECT_EQ(clean_line("Vale – robe d'été, سترة, 裙, £79.90"),
            "Vale – robe d'été, سترة, 裙, £79.90");
}

TEST(CleanLine, TerminalEscapesAndLineBreaksBecomeSpaces) {
  EXPECT_EQ(clean_line("a\x1B[31mb\r\nc\td\x7F"), "a [31mb  c d ");
  EXPECT_EQ(clean_line("a\xC2\x9B"
                       "1mb\xE2\x80\xA8"
                       "c"),
            "a 1mb c");
}

TEST(CleanLine, ReorderingSignsAndBrokenBytesAreShown) {
  EXPECT_EQ(clean_line("dress \xE2\x80\xAE"
                       "09.97"),
            "dress " + kReplaced + "09.97");
  EXPECT_EQ(clean_line("\xE2\x81\xA6x\xFF"), kReplaced + "x" + kReplaced);
}

// CommonMark 0.31, section 2.4: a backslash before ASCII punctuation makes it literal.
TEST(MarkdownEscaped, NothingBecomesMarkup) {
  EXPECT_EQ(markdown_escaped("*a* _b_ [c](d) `e` <f> |g| #h"),
            "\\*a\\* \\_b\\_ \\[c\\](d) \\`e\\` \\<f\\> \\|g\\| \\#h");
  EXPECT_EQ(markdown_escaped("https://x.example www.x.example a@b"),
            "https\\://x.example www\\.x.example a\\@b");
  EXPECT_EQ(markdown_escaped("two\nlines"), "two lines");
}

TEST(Phrase, ShowsNotesAsAskedFor) {
  Phrase phrase;
  phrase.label("Price:").words(" of ").name("A*B").words(" is ").figure("£5.00").note(3).note(12);
  EXPECT_EQ(plain_text(phrase, false), "Price: of A*B is £5.00");
  EXPECT_EQ(plain_text(phrase, true), "Price: of A*B is £5.00[3][12]");
  EXPECT_EQ(markdown_text(phrase), "**Price:** of A\\*B is £5.00[^3][^12]");
  EXPECT_EQ(notes_of(phrase), (std::vector<std::size_t>{3, 12}));
}

}  // namespace
}  // namespace rangebook
