// The policy texts of tests/checks/policies and how what was read compares with their truth.
#pragma once

#include <algorithm>
#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "importers/policy_text.h"
#include "schema/terms_text.h"

namespace rangebook {

struct PolicyCase {
  std::string name;
  TermsContext context;
  std::string text;
  Terms truth;
  std::vector<TermsValue> may_ask;  ///< reading these is no fault as long as they are asked
};

inline void read_truth_line(PolicyCase& one, const std::string& line) {
  const bool ask = line.starts_with("? ");
  const std::string rest = ask ? line.substr(2) : line;
  const auto equals = rest.find(" = ");
  if (equals == rest.npos) throw std::runtime_error(one.name + ": " + line);
  const std::string field = rest.substr(0, equals);
  Terms scratch;
  Terms& target = ask ? scratch : one.truth;
  if (const auto bad = set_field(target, field, rest.substr(equals + 3))) {
    throw std::runtime_error(one.name + ": " + bad->what);
  }
  if (ask) one.may_ask.push_back({field, field_text(scratch, field).value()});
}

/// Throws when the file is missing or damaged, so that a test cannot pass on nothing.
inline std::vector<PolicyCase> policy_cases(const std::string& file_name) {
  std::ifstream file(std::string(RANGEBOOK_CHECKS) + "/policies/" + file_name);
  std::vector<PolicyCase> cases;
  bool truth = false;
  for (std::string line; std::getline(file, line);) {
    if (cases.empty() && line.starts_with("# ")) continue;
    if (line.starts_with("## ")) {
      std::istringstream head(line.substr(3));
      std::string currency;
      std::string day;
      auto& one = cases.emplace_back();
      head >> one.name >> one.context.country >> currency >> day;
      one.context.currency = Currency::from_code(currency);
      one.context.observed = parse_day(day);
      one.context.document = one.name;
      truth = false;
    } else if (line == "--") {
      truth = true;
    } else if (truth) {
      read_truth_line(cases.back(), line);
    } else {
      cases.back().text += line + "\n";
    }
  }
  if (cases.empty()) throw std::runtime_error("no cases in tests/checks/policies/" + file_name);
  return cases;
}

inline TermsReading read_case(const PolicyCase& one) {
  const bool page = one.text.starts_with('<');
  return page ? read_policy_page(one.text, one.context) : read_policy_text(one.text, one.context);
}

/// Counts of one kind of field.
struct PolicyScore {
  int truth = 0;  ///< stated by the texts
  int taken = 0;  ///< read without asking
  int right = 0;  ///< of those
  int asked = 0;  ///< in the truth and offered as a doubt
  double precision() const { return taken == 0 ? 1 : static_cast<double>(right) / taken; }
  double recall() const { return truth == 0 ? 1 : static_cast<double>(right) / truth; }
};

using PolicyScores = std::map<std::string, PolicyScore>;

/// Scores by kind of field, and under `all`. Every miss is a line of `misses`.
inline PolicyScores score_cases(const std::vector<PolicyCase>& cases, std::string& misses) {
  PolicyScores scores;
  const auto kind = [](const std::string& field) {
    const auto* known = find_terms_field(field);
    const std::string name = known == nullptr ? field : known->name;
    return name.starts_with("return.items.")   ? std::string("return.items.*")
           : name.starts_with("return.needs.") ? std::string("return.needs.*")
                                               : name;
  };
  const auto count = [&](const std::string& field, auto&& change) {
    change(scores[kind(field)]);
    change(scores["all"]);
  };
  for (const auto& one : cases) {
    const auto reading = read_case(one);
    for (const auto& [field, text] : stated_values(one.truth)) {
      count(field, [](PolicyScore& score) { ++score.truth; });
      const auto doubt = std::find_if(
          reading.doubts.begin(), reading.doubts.end(),
          [&, &f = field, &t = text](const TermsDoubt& x) { return x.field == f && x.text == t; });
      const auto got = field_text(reading.terms, field);
      if (got == text) continue;
      if (doubt != reading.doubts.end()) count(field, [](PolicyScore& score) { ++score.asked; });
      misses +=
          one.name + ": missed " + field + " = " + text + (got ? " (read: " + *got + ")" : "") +
          (doubt != reading.doubts.end() ? " (asked: " + doubt->evidence.doubt + ")" : "") + "\n";
    }
    for (const auto& [field, text] : stated_values(reading.terms)) {
      count(field, [](PolicyScore& score) { ++score.taken; });
      if (field_text(one.truth, field) == text) {
        count(field, [](PolicyScore& score) { ++score.right; });
      } else {
        misses += one.name + ": wrong " + field + " = " + text + " | " +
                  reading.terms.evidence.at(field).sentence + "\n";
      }
    }
  }
  return scores;
}

}  // namespace rangebook
