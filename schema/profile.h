// A profile: what the tables of a shop need said, kept under a name.
#pragma once

#include <string>

#include "schema/table_options.h"

namespace rangebook {

struct Profile {
  std::string name;
  bool is_default = false;  ///< used without being asked for, where the columns fit
  TableOptions options;

  bool operator==(const Profile&) const = default;
};

}  // namespace rangebook
