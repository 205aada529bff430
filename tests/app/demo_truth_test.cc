// The demo from feed to change: what the program reports is what the invented stories say happened.
// Source of the truth: demo-feeds/generate.cc, which shares no code with the program.
#include "tests/app/demo_truth.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <set>

namespace rangebook {
namespace {

namespace fs = std::filesystem;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

const fs::path kFeeds = fs::path(RANGEBOOK_SOURCE) / "demo-feeds";

/// A folder of this process that goes away with it.
class Folder {
 public:
  Folder() {
    static int count = 0;
    path_ = fs::temp_directory_path() /
            ("rangebook-demo-" + std::to_string(getpid()) + "-" + std::to_string(count++));
    fs::create_directories(path_);
  }
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

Json truth_of(const std::string& file) { return Json::parse(read_file(kFeeds / file)); }

const std::vector<std::string> kTruths{
    "skerrowby/truth-aw24-aw25.json", "skerrowby/truth-aw25-aw26.json",
    "tidewell-marr/truth-aw25-aw26.json", "ostrel-house/truth-aw25-aw26.json",
    "pellorie/truth-aw25-aw26.json"};

class DemoTruth : public testing::TestWithParam<std::string> {
 protected:
  DemoTruth() : book_(Book::open((folder_.path() / "demo.rangebook").string(), true)) {
    take_in(book_, kFeeds, truth_.at("shop"));
    actual_ = actual_changes(book_, truth_);
  }
  Folder folder_;
  Book book_;
  Json truth_ = truth_of(GetParam());
  Json actual_;
};

TEST_P(DemoTruth, EveryChangeIsFoundAndNoneInvented) {
  EXPECT_THAT(differences(truth_, actual_), IsEmpty());
}

TEST_P(DemoTruth, ChangesStandInTheStatedOrder) {
  EXPECT_EQ(bare_texts(truth_.at("changes")), bare_texts(actual_.at("changes")));
}

TEST_P(DemoTruth, CountsAndSumsAgree) {
  EXPECT_EQ(truth_.at("counts"), actual_.at("counts"));
  EXPECT_EQ(truth_.at("reconciliation"), actual_.at("reconciliation"));
}

INSTANTIATE_TEST_SUITE_P(Pairs, DemoTruth, testing::ValuesIn(kTruths), [](const auto& tested) {
  std::string name = tested.param.substr(0, tested.param.find('.'));
  std::ranges::replace_if(
      name, [](char c) { return c == '/' || c == '-'; }, '_');
  return name;
});

TEST(DemoTruthFiles, TogetherHoldEveryKindButTerms) {
  std::set<std::string> kinds;
  for (const std::string& file : kTruths) {
    const Json truth = truth_of(file);
    for (const Json& change : truth.at("changes")) kinds.insert(change.at("kind"));
  }
  for (std::size_t i = 0; i < kChangeKindCount; ++i) {
    const auto kind = static_cast<ChangeKind>(i);
    EXPECT_EQ(kinds.contains(std::string(to_string(kind))), kind != ChangeKind::terms_changed)
        << to_string(kind);
  }
}

TEST(DemoTruthFiles, EveryComparisonIsTested) {
  std::set<std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(kFeeds)) {
    const std::string name = fs::relative(entry.path(), kFeeds).generic_string();
    if (entry.path().filename().string().starts_with("truth-")) files.insert(name);
  }
  EXPECT_EQ(files, std::set<std::string>(kTruths.begin(), kTruths.end()));
}

/// Pellorie's feeds with the later one altered by hand: the comparison has to notice.
class AlteredFeed : public testing::Test {
 protected:
  AlteredFeed() {
    fs::copy(kFeeds / "pellorie", folder_.path() / "pellorie", fs::copy_options::recursive);
    fs::copy(kFeeds / "captures.tsv", folder_.path() / "captures.tsv");
  }
  /// Replaces the row of `code`; an empty text takes it out.
  void alter(const std::string& code, const std::string& old_text, const std::string& new_text) {
    std::string altered;
    for (std::string line : split(read_file(later_), '\n')) {
      if (line.starts_with(code + ",")) {
        const std::size_t at = line.find(old_text);
        if (at == std::string::npos) throw std::runtime_error("not in the row: " + old_text);
        line.replace(at, old_text.size(), new_text);
      }
      if (!line.empty()) altered += line + "\n";
    }
    std::ofstream(later_, std::ios::binary | std::ios::trunc) << altered;
  }
  std::string row(const std::string& code) const {
    for (const std::string& line : split(read_file(later_), '\n')) {
      if (line.starts_with(code + ",")) return line;
    }
    throw std::runtime_error("no row " + code);
  }
  std::vector<std::string> found() const {
    Book book = Book::open((folder_.path() / "altered.rangebook").string(), true);
    take_in(book, folder_.path(), "pellorie");
    return differences(truth_, actual_changes(book, truth_));
  }
  /// A line nothing happened to.
  std::string quiet_line() const {
    std::set<std::string> touched;
    for (const Json& change : truth_.at("changes")) {
      if (!change.at("line").is_null()) touched.insert(change.at("line").at("code"));
    }
    for (const std::string& line : split(read_file(later_), '\n')) {
      const std::string code = line.substr(0, line.find(','));
      if (code.starts_with("PE-") && !touched.contains(code)) return code;
    }
    throw std::runtime_error("no quiet line");
  }

  Folder folder_;
  fs::path later_ = folder_.path() / "pellorie" / "aw26.csv";
  Json truth_ = truth_of("pellorie/truth-aw25-aw26.json");
};

TEST_F(AlteredFeed, UnalteredCopyAgrees) { EXPECT_THAT(found(), IsEmpty()); }

TEST_F(AlteredFeed, OnePriceIsNoticed) {
  const std::string code = quiet_line();
  const std::string currency = ",,EUR,";  // an undiscounted row: the price stands before it
  const std::string before = row(code);
  const std::size_t end = before.find(currency);
  ASSERT_NE(end, std::string::npos);
  const std::size_t start = before.rfind(',', end - 1) + 1;
  alter(code, before.substr(start, end - start) + currency, "999.90" + currency);
  EXPECT_THAT(found(), Contains(AllOf(HasSubstr("surplus"), HasSubstr("price-up"), HasSubstr(code),
                                      HasSubstr("99990"))));
}

TEST_F(AlteredFeed, OneRemovedLineIsNoticed) {
  const std::string code = quiet_line();
  alter(code, row(code), "");
  EXPECT_THAT(found(),
              Contains(AllOf(HasSubstr("surplus"), HasSubstr("line-dropped"), HasSubstr(code))));
}

}  // namespace
}  // namespace rangebook
