// Zip archives of feeds, and whether two of them hold the same.
#pragma once

#include <ctime>
#include <map>
#include <string>

namespace demo {

/// Midnight of an ISO date, UTC.
std::time_t midnight(const std::string& date);

/// The files by path, all of one time.
std::string zip_of(const std::map<std::string, std::string>& files, std::time_t time);

/// The files in a zip archive or workbook. Another compression library packs the same files into
/// other bytes, so archives are compared by these.
std::map<std::string, std::string> unzipped(const std::string& bytes);

}  // namespace demo
