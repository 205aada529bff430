// Bringing a book to the newest version of its tables.
#pragma once

#include "tracker/store/sqlite.h"

namespace rangebook {

/// Marks a file as a rangebook: SQLite's application id, "RBK1" in ASCII.
inline constexpr int kApplicationId = 0x52424B31;

/// The version this program writes: the number of migrations it carries.
int newest_version();

/// Runs the migrations that `database` lacks, each in a transaction of its own. Throws Error for
/// a file of a newer version or of another program.
void migrate(const Database& database);

}  // namespace rangebook
