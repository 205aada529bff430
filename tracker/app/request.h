// What a command asks for, after the command line was understood. Pages and tests use the same
// values, so they cannot ask for anything the command line cannot.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "schema/capture.h"
#include "schema/size.h"
#include "schema/table_options.h"

namespace rangebook {

/// How the tables of a capture are to be read.
struct MappingRequest {
  TableOptions said;        ///< for this capture alone; wins over a profile
  std::string profile;      ///< name of one of the shop's; empty: its default, where that fits
  bool no_profile = false;  ///< not even the default

  bool empty() const { return said.empty() && profile.empty() && !no_profile; }
};

/// A file that is called otherwise than on the disk, such as one that was uploaded.
struct NamedFile {
  std::string path;
  std::string name;  ///< with `/` where it lay in a folder
};

struct CaptureRequest {
  std::vector<std::string> files;  ///< files, or folders whose pages and tables are meant
  std::vector<NamedFile> named;    ///< further ones
  std::string shop;                ///< slug
  std::string season;
  std::optional<Day> on;  ///< absent: today
  Scope scope;
  MappingRequest mapping;
  std::string save_profile;       ///< keep what is said under this name; empty: do not
  std::optional<Shop> described;  ///< how a shop is added that the book does not have
};

/// A capture of the book whose documents are to be read again.
struct RetryRequest {
  std::string shop;
  std::string capture;     ///< season, date or id; empty: the latest
  MappingRequest mapping;  ///< what is said now, besides what was said then
};

/// Names one capture: a season (its latest capture), a date, or a capture id.
struct CompareRequest {
  std::string shop;
  std::string from;  ///< empty: the capture before `to` of another season
  std::string to;    ///< empty: the latest
};

/// The sizes of one capture.
struct SizesRequest {
  std::string shop;
  std::string capture;   ///< season, date or id; empty: the latest
  std::string category;  ///< slug; empty: all of them
};

/// One size across all shops, each by its latest capture.
struct ReachingRequest {
  Size size;
  std::string category;  ///< slug, or `all`
};

}  // namespace rangebook
