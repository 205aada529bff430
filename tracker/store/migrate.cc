// schema/migrations/NNNN_name.sql in order; `user_version` counts those that have run.
#include "tracker/store/migrate.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "schema/embedded.h"
#include "schema/error.h"

namespace rangebook {
namespace {

std::vector<EmbeddedFile> migrations() {
  std::vector<EmbeddedFile> found;
  for (const auto& file : embedded_files()) {
    if (file.name.starts_with("migrations/")) found.push_back(file);
  }
  std::sort(found.begin(), found.end(),
            [](const auto& a, const auto& b) { return a.name < b.name; });
  return found;
}

int pragma(const Database& database, std::string_view name) {
  auto row = database.prepare(fmt::format("PRAGMA {}", name));
  row.step();
  return static_cast<int>(row.integer(0));
}

bool has_tables(const Database& database) {
  return database.prepare("SELECT 1 FROM sqlite_schema LIMIT 1").step();
}

}  // namespace

int newest_version() { return static_cast<int>(migrations().size()); }

void migrate(const Database& database) {
  const int id = pragma(database, "application_id");
  if (id != kApplicationId && (id != 0 || has_tables(database))) {
    throw Error(
        fmt::format("{} is a database of another program, not a rangebook file.", database.path()));
  }
  const auto steps = migrations();
  int version = pragma(database, "user_version");
  if (version > static_cast<int>(steps.size())) {
    throw Error(
        fmt::format("{} was written by a newer rangebook (version {} of the tables, this "
                    "program knows {}). Update rangebook.",
                    database.path(), version, steps.size()));
  }
  while (version < static_cast<int>(steps.size())) {
    Transaction transaction(database);
    database.execute(std::string(steps[static_cast<std::size_t>(version)].text));
    ++version;
    database.execute(fmt::format("PRAGMA application_id = {}; PRAGMA user_version = {}",
                                 kApplicationId, version));
    transaction.commit();
  }
}

}  // namespace rangebook
