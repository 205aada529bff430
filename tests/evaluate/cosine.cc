// Word vectors, cosines, and the choice one by one.
#include "tests/evaluate/cosine.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace rangebook::evaluate {
namespace {

using Vector = std::map<std::string, double>;

Vector words_of(const Line& line) {
  Vector counts;
  std::string word;
  for (const char c : line.name + " " + line.description + " ") {
    const auto byte = static_cast<unsigned char>(c);
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || byte >= 0x80) {
      word += c;
    } else if (c >= 'A' && c <= 'Z') {
      word += static_cast<char>(c + 32);
    } else if (!word.empty()) {
      ++counts[word];
      word.clear();
    }
  }
  return counts;
}

std::vector<Vector> vectors_of(const Seasons& seasons) {
  std::vector<Vector> vectors;
  for (const Capture* capture : {&seasons.then, &seasons.now}) {
    for (const Line& line : capture->lines) vectors.push_back(words_of(line));
  }
  Vector lines_with;
  for (const Vector& vector : vectors) {
    for (const auto& [word, count] : vector) ++lines_with[word];
  }
  for (Vector& vector : vectors) {
    double norm = 0;
    for (auto& [word, weight] : vector) {
      weight *= std::log(static_cast<double>(vectors.size()) / lines_with[word]);
      norm += weight * weight;
    }
    for (auto& [word, weight] : vector) weight /= std::max(std::sqrt(norm), 1e-12);
  }
  return vectors;
}

double dot(const Vector& a, const Vector& b) {
  double sum = 0;
  for (const auto& [word, weight] : a) {
    if (const auto found = b.find(word); found != b.end()) sum += weight * found->second;
  }
  return sum;
}

}  // namespace

Count link_by_cosine(const Seasons& seasons, double threshold) {
  const std::vector<Vector> vectors = vectors_of(seasons);
  const auto& then = seasons.then.lines;
  const auto& now = seasons.now.lines;
  std::vector<std::tuple<double, std::size_t, std::size_t>> pairs;
  for (std::size_t i = 0; i < then.size(); ++i) {
    for (std::size_t j = 0; j < now.size(); ++j) {
      const double cosine = dot(vectors[i], vectors[then.size() + j]);
      if (cosine >= threshold) pairs.emplace_back(-cosine, i, j);
    }
  }
  std::sort(pairs.begin(), pairs.end());
  std::set<std::size_t> taken_then;
  std::set<std::size_t> taken_now;
  std::set<int> right;
  Count count;
  for (const auto& [cosine, i, j] : pairs) {
    if (taken_then.contains(i) || taken_now.contains(j)) continue;
    taken_then.insert(i);
    taken_now.insert(j);
    if (then[i].style != now[j].style) {
      ++count.wrong;
    } else if (right.insert(then[i].style).second) {
      ++count.right;
    }
  }
  std::set<int> there;
  for (const Line& line : now) there.insert(line.style);
  std::set<int> missed;
  for (const Line& line : then) {
    if (there.contains(line.style) && !right.contains(line.style)) missed.insert(line.style);
  }
  count.missed = static_cast<int>(missed.size());
  return count;
}

}  // namespace rangebook::evaluate
