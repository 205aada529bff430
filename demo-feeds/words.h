// The word lists styles are invented from: given names, garments, fabrics, colours, details.
#pragma once

#include <string>
#include <vector>

#include "demo-feeds/range.h"

namespace demo {

/// What a shop's department holds and roughly costs.
struct Department {
  std::string slug{};     ///< category slug of the program's tree
  std::string wording{};  ///< how the shops call it: `Coats & Jackets`
  std::vector<std::string> garments{};
  std::vector<std::string> details{};
  std::vector<Fabric> fabrics{};
  int lowest = 0;  ///< whole pounds or euros
  int highest = 0;
};

const std::vector<Department>& departments();
const Department& department(const std::string& slug);
const std::vector<std::string>& given_names();
const std::vector<std::string>& colour_names();

}  // namespace demo
