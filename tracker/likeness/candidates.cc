// The inverted index: feature keys of one side, sorted, with the lines that have them.
#include "tracker/likeness/candidates.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace rangebook {
namespace {

/// Features of different fields never meet.
enum class Field : WordKey {
  name_word = 1,
  name_gram,
  name_pair,
  description,
  phrase,
  picture,
  code,
  fabric_colour,
  fabric_price,
  colour_price,
  name_fabric,
  category_price,
};

WordKey feature(Field field, WordKey key) { return joined_key(static_cast<WordKey>(field), key); }

/// Steps of a fifth; with half a step of shift, prices within a tenth share one of both.
WordKey price_step(MinorUnits price, double shift) {
  return static_cast<WordKey>(std::llround(std::log(static_cast<double>(price)) * 5 + shift));
}

void add_grams(const std::string& word, std::vector<WordKey>& features) {
  const std::string padded = ' ' + word + ' ';
  for (std::size_t at = 0; at + 4 <= padded.size(); ++at) {
    features.push_back(feature(Field::name_gram, word_key(std::string_view(padded).substr(at, 4))));
  }
}

void add_name(const LineProfile& line, std::vector<WordKey>& features) {
  for (const NameWord& word : line.name) {
    features.push_back(feature(Field::name_word, word.key));
    add_grams(word.text, features);
    for (const NameWord& other : line.name) {
      if (word.key < other.key)
        features.push_back(feature(Field::name_pair, joined_key(word.key, other.key)));
    }
    if (line.fabric != nullptr)
      features.push_back(feature(Field::name_fabric, joined_key(word.key, line.fabric->key)));
  }
}

/// Values that are common alone but rare together; they find lines with another name and text.
void add_value_pairs(const LineProfile& line, std::vector<WordKey>& features) {
  const WordKey category = word_key(line.category);
  for (const double shift : {0.0, 0.5}) {
    if (!line.price || *line.price <= 0) break;
    const WordKey price = joined_key(price_step(*line.price, shift), shift > 0 ? 1 : 0);
    features.push_back(feature(Field::category_price, joined_key(category, price)));
    if (line.fabric != nullptr)
      features.push_back(feature(Field::fabric_price, joined_key(line.fabric->key, price)));
    for (const WordKey colour : line.colours)
      features.push_back(feature(Field::colour_price, joined_key(colour, price)));
  }
  if (line.fabric == nullptr) return;
  for (const WordKey colour : line.colours) {
    features.push_back(feature(Field::fabric_colour, joined_key(colour, line.fabric->key)));
  }
}

void add_all(Field field, const std::vector<WordKey>& keys, std::vector<WordKey>& features) {
  for (const WordKey key : keys) features.push_back(feature(field, key));
}

std::vector<WordKey> features_of(const LineProfile& line) {
  std::vector<WordKey> features;
  add_name(line, features);
  for (const TextWord& word : line.description) {
    if (!word.in_name) features.push_back(feature(Field::description, word.key));
  }
  add_all(Field::phrase, line.phrases, features);
  add_all(Field::picture, line.picture, features);
  add_all(Field::code, line.codes, features);
  add_value_pairs(line, features);
  std::sort(features.begin(), features.end());
  features.erase(std::unique(features.begin(), features.end()), features.end());
  return features;
}

struct Entry {
  WordKey feature = 0;
  std::uint32_t line = 0;

  bool operator<(const Entry& other) const {
    return feature != other.feature ? feature < other.feature : line < other.line;
  }
};

/// The lines that have one feature: a stretch of the sorted entries.
struct Posting {
  std::uint32_t begin = 0;
  std::uint32_t size = 0;
};

class FeatureIndex {
 public:
  explicit FeatureIndex(const std::vector<std::vector<WordKey>>& lines) {
    std::size_t all = 0;
    for (const auto& features : lines) all += features.size();
    entries_.reserve(all);
    for (std::uint32_t line = 0; line < lines.size(); ++line) {
      for (const WordKey key : lines[line]) entries_.push_back({key, line});
    }
    std::sort(entries_.begin(), entries_.end());
    postings_.reserve(all);
    for (std::uint32_t i = 0; i < entries_.size(); ++i) {
      Posting& posting = postings_.try_emplace(entries_[i].feature, Posting{i, 0}).first->second;
      ++posting.size;
    }
  }

  Posting find(WordKey key) const {
    const auto found = postings_.find(key);
    return found == postings_.end() ? Posting{} : found->second;
  }
  std::uint32_t line_at(std::uint32_t entry) const { return entries_[entry].line; }

 private:
  std::vector<Entry> entries_;
  std::unordered_map<WordKey, Posting> postings_;
};

/// Reads the index for one line after the other; keeps its memory.
class Search {
 public:
  Search(const FeatureIndex& index, std::size_t lines, const CandidateLimits& limits)
      : index_(index), lines_(static_cast<double>(lines)), limits_(limits), weights_(lines, 0.0F) {}

  /// The kept lines, best first.
  const std::vector<std::uint32_t>& run(const std::vector<WordKey>& features) {
    collect(features);
    const auto better = [this](std::uint32_t a, std::uint32_t b) {
      return weights_[a] != weights_[b] ? weights_[a] > weights_[b] : a < b;
    };
    const std::size_t kept = std::min(limits_.kept, touched_.size());
    std::partial_sort(touched_.begin(), touched_.begin() + static_cast<std::ptrdiff_t>(kept),
                      touched_.end(), better);
    for (const std::uint32_t line : touched_) weights_[line] = 0;
    touched_.resize(kept);
    return touched_;
  }

 private:
  void collect(const std::vector<WordKey>& features) {
    touched_.clear();
    postings_.clear();
    for (const WordKey key : features) {
      if (const Posting posting = index_.find(key); posting.size > 0) postings_.push_back(posting);
    }
    std::sort(postings_.begin(), postings_.end(), [](const Posting& a, const Posting& b) {
      return a.size != b.size ? a.size < b.size : a.begin < b.begin;
    });
    std::size_t budget = limits_.entries;
    for (const Posting& posting : postings_) {
      if (posting.size > budget) break;
      budget -= posting.size;
      add(posting);
    }
  }

  void add(const Posting& posting) {
    const double rarity = std::log((lines_ + 20) / posting.size);
    const auto weight = static_cast<float>(rarity * rarity);
    for (std::uint32_t i = 0; i < posting.size; ++i) {
      const std::uint32_t line = index_.line_at(posting.begin + i);
      if (weights_[line] == 0) touched_.push_back(line);
      weights_[line] += weight;
    }
  }

  const FeatureIndex& index_;
  double lines_;
  CandidateLimits limits_;
  std::vector<float> weights_;
  std::vector<std::uint32_t> touched_;
  std::vector<Posting> postings_;
};

std::vector<std::vector<WordKey>> all_features(const std::vector<LineProfile>& lines) {
  std::vector<std::vector<WordKey>> features;
  features.reserve(lines.size());
  for (const LineProfile& line : lines) features.push_back(features_of(line));
  return features;
}

/// Calls `found(line, candidate)` for each line of `asking`.
template <typename Found>
void search_all(const std::vector<std::vector<WordKey>>& asking,
                const std::vector<std::vector<WordKey>>& asked, const CandidateLimits& limits,
                Found found) {
  const FeatureIndex index(asked);
  Search search(index, asked.size(), limits);
  for (std::uint32_t line = 0; line < asking.size(); ++line) {
    for (const std::uint32_t other : search.run(asking[line])) found(line, other);
  }
}

}  // namespace

std::vector<Candidate> find_candidates(const std::vector<LineProfile>& from,
                                       const std::vector<LineProfile>& to,
                                       const CandidateLimits& limits) {
  const auto features_from = all_features(from);
  const auto features_to = all_features(to);
  std::vector<Candidate> candidates;
  search_all(features_from, features_to, limits, [&](std::uint32_t i, std::uint32_t j) {
    candidates.push_back({i, j});
  });
  search_all(features_to, features_from, limits, [&](std::uint32_t j, std::uint32_t i) {
    candidates.push_back({i, j});
  });
  std::sort(candidates.begin(), candidates.end());
  candidates.erase(std::unique(candidates.begin(), candidates.end()), candidates.end());
  return candidates;
}

}  // namespace rangebook
