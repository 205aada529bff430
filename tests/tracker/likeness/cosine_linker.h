// A plain linker to measure against: words of name and description weighted by rarity, the cosine
// of both lines, and a fixed threshold. One-to-one, the most alike pairs first.
#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <vector>

#include "schema/link.h"
#include "schema/snapshot.h"
#include "tracker/likeness/likeness_words.h"

namespace rangebook::testing {

using WordVector = std::map<std::string, double>;

inline WordVector word_counts(const LineState& line) {
  WordVector counts;
  const Listing& listing = line.listing;
  for (const std::string& word :
       likeness_words(listing.card.name + " " + listing.detail.description))
    ++counts[word];
  return counts;
}

/// Unit vectors of term frequency times the log of inverse document frequency.
inline std::vector<std::vector<WordVector>> unit_vectors(const Snapshot& from, const Snapshot& to) {
  std::vector<std::vector<WordVector>> sides(2);
  for (const LineState& line : from.lines) sides[0].push_back(word_counts(line));
  for (const LineState& line : to.lines) sides[1].push_back(word_counts(line));
  std::map<std::string, double> lines_with;
  for (const auto& side : sides) {
    for (const WordVector& line : side) {
      for (const auto& [word, count] : line) ++lines_with[word];
    }
  }
  const auto all = static_cast<double>(from.lines.size() + to.lines.size());
  for (auto& side : sides) {
    for (WordVector& line : side) {
      double norm = 0;
      for (auto& [word, weight] : line) {
        weight *= std::log(all / lines_with[word]);
        norm += weight * weight;
      }
      for (auto& [word, weight] : line) weight /= std::max(std::sqrt(norm), 1e-12);
    }
  }
  return sides;
}

inline double dot(const WordVector& a, const WordVector& b) {
  double sum = 0;
  for (const auto& [word, weight] : a) {
    if (const auto found = b.find(word); found != b.end()) sum += weight * found->second;
  }
  return sum;
}

/// All pairs, the most alike first: cosine, then indices.
using CosinePairs = std::vector<std::tuple<double, std::size_t, std::size_t>>;

inline CosinePairs cosine_pairs(const Snapshot& from, const Snapshot& to) {
  const auto sides = unit_vectors(from, to);
  CosinePairs pairs;
  for (std::size_t i = 0; i < sides[0].size(); ++i) {
    for (std::size_t j = 0; j < sides[1].size(); ++j) {
      const double cosine = dot(sides[0][i], sides[1][j]);
      if (cosine > 0.1) pairs.emplace_back(-cosine, i, j);
    }
  }
  std::sort(pairs.begin(), pairs.end());
  for (auto& [cosine, i, j] : pairs) cosine = -cosine;
  return pairs;
}

inline LinkSet link_by_cosine(const CosinePairs& pairs, double threshold) {
  LinkSet links;
  std::set<std::size_t> from;
  std::set<std::size_t> to;
  for (const auto& [cosine, i, j] : pairs) {
    if (cosine < threshold) break;
    if (from.contains(i) || to.contains(j)) continue;
    from.insert(i);
    to.insert(j);
    links.links.push_back({i, j, {}, LinkAuthority::rule, cosine, {}});
  }
  return links;
}

}  // namespace rangebook::testing
