// Connected groups are independent, so each is solved alone: by shortest augmenting paths over the
// pairs there are (Jonker and Volgenant 1987, in the sparse form), each row having a column of its
// own that stands for staying alone.
#include "tracker/likeness/assignment.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <queue>
#include <unordered_map>
#include <utility>

namespace rangebook {
namespace {

using Chosen = std::vector<std::size_t>;

/// Union-find over rows and columns.
class Groups {
 public:
  explicit Groups(std::size_t size) : parent_(size) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
  }
  std::size_t find(std::size_t at) {
    while (parent_[at] != at) {
      parent_[at] = parent_[parent_[at]];
      at = parent_[at];
    }
    return at;
  }
  void join(std::size_t a, std::size_t b) {
    a = find(a);
    b = find(b);
    parent_[std::max(a, b)] = std::min(a, b);
  }

 private:
  std::vector<std::size_t> parent_;
};

/// Names of one group's rows or columns, as small numbers.
class Numbering {
 public:
  std::size_t number(std::uint32_t name) {
    return numbers_.try_emplace(name, numbers_.size()).first->second;
  }
  std::size_t size() const { return numbers_.size(); }

 private:
  std::unordered_map<std::uint32_t, std::size_t> numbers_;
};

/// Costs are whole: with rounded ones a path could become cheaper by going in a circle, for ever.
using Cost = std::int64_t;
constexpr double kCostUnit = 1e-9;

Cost cost_of(double weight) { return std::llround(weight / kCostUnit); }

struct Arc {
  std::size_t column = 0;
  Cost cost = 0;
  std::size_t pair = 0;
};

constexpr std::size_t kNone = std::numeric_limits<std::size_t>::max();
constexpr Cost kFar = std::numeric_limits<Cost>::max();

/// One group: every row ends at a column or at its own column of staying alone, at the least cost.
class GroupSolver {
 public:
  GroupSolver(const std::vector<WeightedPair>& pairs, const Chosen& group) {
    Cost most = 0;
    for (const std::size_t pair : group) most = std::max(most, cost_of(pairs[pair].weight));
    Numbering rows;
    Numbering columns;
    for (const std::size_t pair : group) {
      const std::size_t row = rows.number(pairs[pair].row);
      arcs_.resize(rows.size());
      const std::size_t column = columns.number(pairs[pair].column);
      arcs_[row].push_back({column, most - cost_of(pairs[pair].weight), pair});
    }
    for (std::size_t row = 0; row < arcs_.size(); ++row) {
      arcs_[row].push_back({columns.size() + row, most, kNone});
    }
    const std::size_t all = columns.size() + rows.size();
    row_of_.assign(all, kNone);
    column_price_.assign(all, 0);
    distance_.assign(all, kFar);
    reached_from_.assign(all, {});
    row_price_.assign(rows.size(), 0);
  }

  void solve(Chosen& chosen) {
    for (std::size_t row = 0; row < arcs_.size(); ++row) augment(row, shortest_path(row));
    for (std::size_t column = 0; column < row_of_.size(); ++column) {
      if (row_of_[column] == kNone) continue;
      for (const Arc& arc : arcs_[row_of_[column]]) {
        if (arc.column == column && arc.pair != kNone) chosen.push_back(arc.pair);
      }
    }
  }

 private:
  using Stop = std::pair<Cost, std::size_t>;  // distance, column

  void relax(std::size_t row, Cost so_far) {
    for (const Arc& arc : arcs_[row]) {
      const Cost distance = so_far + arc.cost - row_price_[row] - column_price_[arc.column];
      if (distance >= distance_[arc.column]) continue;
      if (distance_[arc.column] == kFar) touched_.push_back(arc.column);
      distance_[arc.column] = distance;
      reached_from_[arc.column] = row;
      queue_.emplace(distance, arc.column);
    }
  }

  /// The nearest column without a row; prices are moved so that chosen arcs stay the cheapest.
  std::size_t shortest_path(std::size_t start) {
    relax(start, 0);
    std::vector<std::size_t> passed;
    while (true) {
      const auto [distance, column] = queue_.top();
      queue_.pop();
      if (distance > distance_[column]) continue;
      if (row_of_[column] == kNone) {
        move_prices(start, passed, distance);
        return column;
      }
      passed.push_back(column);
      relax(row_of_[column], distance);
    }
  }

  void move_prices(std::size_t start, const std::vector<std::size_t>& passed, Cost end) {
    row_price_[start] += end;
    for (const std::size_t column : passed) {
      row_price_[row_of_[column]] += end - distance_[column];
      column_price_[column] -= end - distance_[column];
    }
  }

  void augment(std::size_t start, std::size_t column) {
    for (std::size_t row = kNone; row != start;) {
      row = reached_from_[column];
      row_of_[column] = row;
      std::swap(column, column_of(row));
    }
    for (const std::size_t touched : touched_) distance_[touched] = kFar;
    touched_.clear();
    queue_ = {};
  }

  std::size_t& column_of(std::size_t row) {
    if (columns_.size() <= row) columns_.resize(arcs_.size(), kNone);
    return columns_[row];
  }

  std::vector<std::vector<Arc>> arcs_;  // by row
  std::vector<std::size_t> row_of_;     // by column
  std::vector<std::size_t> columns_;    // by row
  std::vector<Cost> row_price_;
  std::vector<Cost> column_price_;
  std::vector<Cost> distance_;             // by column, of the path at hand
  std::vector<std::size_t> reached_from_;  // by column: a row
  std::vector<std::size_t> touched_;
  std::priority_queue<Stop, std::vector<Stop>, std::greater<>> queue_;
};

void take_heaviest(const std::vector<WeightedPair>& pairs, Chosen group, Chosen& chosen) {
  std::stable_sort(group.begin(), group.end(),
                   [&](std::size_t a, std::size_t b) { return pairs[a].weight > pairs[b].weight; });
  std::unordered_map<std::uint32_t, bool> rows;
  std::unordered_map<std::uint32_t, bool> columns;
  for (const std::size_t pair : group) {
    if (rows.contains(pairs[pair].row) || columns.contains(pairs[pair].column)) continue;
    rows[pairs[pair].row] = columns[pairs[pair].column] = true;
    chosen.push_back(pair);
  }
}

/// Pairs by connected group, in the order of their first pairs.
std::vector<Chosen> groups_of(const std::vector<WeightedPair>& pairs) {
  std::size_t rows = 0;
  std::size_t columns = 0;
  for (const WeightedPair& pair : pairs) {
    rows = std::max<std::size_t>(rows, pair.row + 1);
    columns = std::max<std::size_t>(columns, pair.column + 1);
  }
  Groups joined(rows + columns);
  for (const WeightedPair& pair : pairs) joined.join(pair.row, rows + pair.column);
  std::vector<Chosen> groups;
  std::unordered_map<std::size_t, std::size_t> place;
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    const auto [found, added] = place.try_emplace(joined.find(pairs[i].row), groups.size());
    if (added) groups.emplace_back();
    groups[found->second].push_back(i);
  }
  return groups;
}

std::size_t rows_in(const std::vector<WeightedPair>& pairs, const Chosen& group) {
  std::vector<std::uint32_t> rows;
  for (const std::size_t pair : group) rows.push_back(pairs[pair].row);
  std::sort(rows.begin(), rows.end());
  return static_cast<std::size_t>(std::unique(rows.begin(), rows.end()) - rows.begin());
}

}  // namespace

std::vector<std::size_t> assign(const std::vector<WeightedPair>& pairs,
                                std::size_t max_exact_work) {
  Chosen chosen;
  for (const Chosen& group : groups_of(pairs)) {
    if (rows_in(pairs, group) * group.size() > max_exact_work) {
      take_heaviest(pairs, group, chosen);
    } else {
      GroupSolver(pairs, group).solve(chosen);
    }
  }
  std::sort(chosen.begin(), chosen.end());
  return chosen;
}

}  // namespace rangebook
