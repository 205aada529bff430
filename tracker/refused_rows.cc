// Names without the words of the house.
#include "tracker/refused_rows.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

#include "tracker/likeness/likeness_words.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

/// A word in this share of the names says nothing of a line. Fewer names than kNames cannot tell.
constexpr double kHouseWord = 0.9;
constexpr std::size_t kNames = 10;

class BareNames {
 public:
  explicit BareNames(const std::vector<LineState>& lines) {
    if (lines.size() < kNames) return;
    std::unordered_map<std::string, std::size_t> counts;
    for (const LineState& line : lines) {
      const auto words = likeness_words(line.listing.card.name);
      for (const std::string& word : std::unordered_set<std::string>(words.begin(), words.end()))
        ++counts[word];
    }
    for (const auto& [word, count] : counts) {
      if (static_cast<double>(count) >= kHouseWord * static_cast<double>(lines.size()))
        house_.insert(word);
    }
  }

  std::string bare(std::string_view name) const {
    std::string text;
    for (const std::string& word : likeness_words(name)) {
      if (!house_.contains(word)) text += word + ' ';
    }
    return text;
  }

 private:
  std::unordered_set<std::string> house_;
};

std::unordered_set<std::string_view> codes_of(const Snapshot& snapshot) {
  std::unordered_set<std::string_view> codes;
  for (const LineState& line : snapshot.lines) codes.insert(trim_text(line.listing.card.line_code));
  return codes;
}

bool told_by_name(const RefusedLine& row, const std::unordered_set<std::string_view>& known) {
  const std::string_view code = trim_text(row.line_code);
  return code.empty() || !known.contains(code);
}

}  // namespace

std::vector<RefusedLine> refused_for(const Snapshot& refusing, const Snapshot& other) {
  std::vector<RefusedLine> rows = refusing.refused;
  if (rows.empty()) return rows;
  const auto known = codes_of(other);
  std::unordered_set<std::string> wanted;
  const BareNames names(refusing.lines);
  for (const RefusedLine& row : refusing.refused) {
    if (told_by_name(row, known)) wanted.insert(names.bare(row.name));
  }
  wanted.erase("");
  if (wanted.empty()) return rows;
  const BareNames other_names(other.lines);
  for (const LineState& line : other.lines) {
    const std::string& name = line.listing.card.name;
    if (wanted.contains(other_names.bare(name))) rows.push_back({"", name});
  }
  return rows;
}

}  // namespace rangebook
