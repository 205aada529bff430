// Makes season pairs with their truth, and judges what the program said of them.
//
//   evaluate make DIR GENERATOR LEVEL SEED     the tables and the truth
//   evaluate score DIR                         judges what was said of every pair below DIR
//   evaluate floors DIR                        the same as lines: what, value, least allowed value
#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>
#include <stdexcept>

#include "tests/evaluate/cosine.h"
#include "tests/evaluate/score.h"
#include "tests/evaluate/seasons.h"
#include "tests/evaluate/write_rows.h"

namespace rangebook::evaluate {
namespace {

namespace fs = std::filesystem;

const std::vector<std::string> kLevels = {"easy", "middle", "hard"};

void write(const fs::path& path, const std::string& text) {
  std::ofstream out(path, std::ios::binary);
  out << text;
  if (!out.flush()) throw std::runtime_error("cannot write " + path.string());
}
std::string read(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + path.string());
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

Task task_of(const std::string& generator, const std::string& level, const std::string& seed) {
  const auto found = std::find(kLevels.begin(), kLevels.end(), level);
  if (found == kLevels.end()) throw std::invalid_argument("no level " + level);
  return {generator, static_cast<Level>(found - kLevels.begin()), std::stoull(seed)};
}

std::string truth_text(const Seasons& seasons) {
  std::string text = "# style\tcapture\tcode\tname\tpiece\trefused\n";
  for (const auto& [name, capture] :
       {std::pair{"earlier", &seasons.earlier}, {"then", &seasons.then}, {"now", &seasons.now}}) {
    for (const Line& line : capture->lines)
      text += std::to_string(line.style) + "\t" + name + "\t" + line.code + "\t" + line.name +
              "\t" + std::to_string(line.piece) + "\t" + (line.refused ? "1" : "0") + "\n";
  }
  text += "# kind\tstyle\twhat\n";
  for (const Expected& change : truth_of(seasons).changes)
    text += change.kind + "\t" + std::to_string(change.style) + "\t" + change.what + "\n";
  return text;
}

void make_pair(const fs::path& folder, const Seasons& seasons) {
  fs::create_directories(folder);
  for (const Capture* capture : {&seasons.earlier, &seasons.then, &seasons.now})
    write(folder / (capture->season + ".csv"), csv_of(seasons.shop, *capture));
  write(folder / "truth.tsv", truth_text(seasons));
  write(folder / "shop", "--country " + seasons.shop.country + " --currency " +
                             seasons.shop.currency + " --sizes " + seasons.shop.system + "\n");
  write(folder / "scope", seasons.now.scope + "\n");
}

void make(const fs::path& folder, const Task& task) {
  const Seasons seasons = make_seasons(task);
  make_pair(folder / "all-columns", seasons);
  make_pair(folder / "names-only", names_only(seasons));
}

void print_links(const std::string& what, const Score& score) {
  const int pairs = score.links.right + score.links.missed;
  std::printf(
      "%-44s %6d pairs  precision %6.2f%%  recall %6.2f%%  F1 %.4f  asked %5.2f%%  by code %.4f\n",
      what.c_str(), pairs, 100 * score.links.precision(), 100 * score.links.recall(),
      score.links.f1(), 100 * score.asked_share(), score.by_code.f1());
}

/// GENERATOR/LEVEL/SEED/COLUMNS below the folder, in order.
class Scorer {
 public:
  explicit Scorer(const fs::path& folder) {
    std::vector<fs::path> said;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
      if (entry.path().filename() == "changes.json") said.push_back(entry.path());
    }
    std::sort(said.begin(), said.end());
    for (const fs::path& path : said) one(path, fs::relative(path.parent_path(), folder));
    if (said.empty()) throw std::runtime_error("no changes.json below " + folder.string());
  }

  void print() const {
    for (const auto& [what, score] : by_group_) print_links(what, score);
    for (const auto& [what, count] : cosine_)
      std::printf("%-44s by TF-IDF cosine: precision %6.2f%%  recall %6.2f%%  F1 %.4f\n",
                  what.c_str(), 100 * count.precision(), 100 * count.recall(), count.f1());
    for (const auto& [level, score] : by_level_) {
      for (const auto& [kind, count] : score.kinds)
        std::printf("%-24s %-20s right %5d  wrong %4d  missed %4d  F1 %.4f\n", level.c_str(),
                    kind.c_str(), count.right, count.wrong, count.missed, count.f1());
    }
  }

  /// For the set of --check. What a change of the code may cost before somebody has to look.
  void print_floors() const {
    const auto line = [](const std::string& what, double value, double floor) {
      std::printf("%s\t%.4f\t%.4f\n", what.c_str(), value, floor);
    };
    const Score& all = by_group_.at("all-columns middle ~ together");
    line("linking precision", all.links.precision(), 0.99);
    line("linking recall", all.links.recall(), 0.98);
    line("lines with equal codes", all.by_code.f1(), 1);
    const Count& names = by_group_.at("names-only middle ~ together").links;
    line("names alone: precision", names.precision(), 0.985);
    line("names alone: F1", names.f1(), 0.965);
    line("names alone: share not asked about",
         1 - by_group_.at("names-only middle ~ together").asked_share(), 0.96);
    line("names alone: F1 beyond a TF-IDF cosine",
         names.f1() - cosine_.at("middle ~ together").f1(), 0.05);
    for (const auto& [kind, count] : by_level_.at("all-columns middle").kinds)
      line("kind " + kind, count.f1(), floor_of(kind));
  }

 private:
  void one(const fs::path& path, const fs::path& name) {
    std::vector<std::string> parts;
    for (const fs::path& part : name) parts.push_back(part.string());
    if (parts.size() != 4) throw std::runtime_error("not a made pair: " + path.string());
    Seasons seasons = make_seasons(task_of(parts[0], parts[1], parts[2]));
    const bool names = parts[3] == "names-only";
    if (names) seasons = names_only(seasons);
    const Score score = score_of(seasons, read(path));
    std::string remarks;
    for (const std::string& remark : score.remarks) remarks += remark + "\n";
    write(path.parent_path() / "remarks.txt", remarks);
    by_group_[parts[3] + " " + parts[1] + " " + parts[0]].add(score);
    by_group_[parts[3] + " " + parts[1] + " ~ together"].add(score);
    by_level_[parts[3] + " " + parts[1]].add(score);
    if (names) {
      const Count cosine = link_by_cosine(seasons, 0.5);
      cosine_[parts[1] + " " + parts[0]].add(cosine);
      cosine_[parts[1] + " ~ together"].add(cosine);
    }
  }

  static double floor_of(const std::string& kind) {
    // Of rare kinds one case is more than the hundredth.
    static const std::map<std::string, double> kLower = {{"category-moved", 0.9}};
    const auto found = kLower.find(kind);
    return found == kLower.end() ? 0.97 : found->second;
  }

  std::map<std::string, Score> by_group_;
  std::map<std::string, Score> by_level_;
  std::map<std::string, Count> cosine_;
};

int run(const std::vector<std::string>& words) {
  if (words.size() == 5 && words[0] == "make") {
    make(words[1], task_of(words[2], words[3], words[4]));
  } else if (words.size() == 2 && words[0] == "score") {
    Scorer(words[1]).print();
  } else if (words.size() == 2 && words[0] == "floors") {
    Scorer(words[1]).print_floors();
  } else {
    std::cerr << "usage: evaluate make DIR GENERATOR LEVEL SEED | evaluate score|floors DIR\n";
    return 2;
  }
  return 0;
}

}  // namespace
}  // namespace rangebook::evaluate

int main(int argc, char** argv) {
  try {
    return rangebook::evaluate::run({argv + 1, argv + argc});
  } catch (const std::exception& failure) {
    std::cerr << "evaluate: " << failure.what() << '\n';
    return 3;
  }
}
