// What was said on the command line, and the requests it stands for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "schema/capture.h"
#include "tracker/app/commands.h"
#include "tracker/app/request.h"
#include "tracker/app/table_words.h"

namespace rangebook {

/// Everything the command line can say.
struct Words {
  std::string book;
  std::string shop;
  std::string name;
  std::string country;
  std::string currency;
  std::string sizes;
  std::string link_above;
  std::string ask_above;
  std::vector<std::string> files;
  std::string season;
  std::string on;
  std::string scope = "all";
  TableWords table;
  std::string profile;
  bool no_profile = false;
  std::string save_profile;
  bool is_default = false;
  bool retry = false;
  bool dry_run = false;
  std::string from;
  std::string to;
  std::string capture;
  std::string category;
  std::string states_sizes;
  std::string reaching;
  std::string system;
  OutputChoice output;
  bool decided = false;
  std::vector<std::string> references;
  std::string reference;
  std::string line;
  std::string other_line;
  std::string backup;
  bool check_sizes = false;
  int port = 0;
  std::string feeds = "demo-feeds";
  std::string out = "rangebook-demo";
};

/// A usage error that is ours, not CLI11's.
struct UsageError {
  std::string message;
};

/// All throw UsageError for a word that cannot be taken.
Shop shop_of(const Words& words);
CaptureRequest capture_of(const Words& words);
MappingRequest mapping_of(const Words& words);
Profile profile_of(const Words& words);
/// What the shop states; the date it was read is today unless told.
std::optional<StatedSizes> stated_of(const Words& words);
/// The slug of `--category`; empty where none is asked for.
std::string category_of(const Words& words);
/// A size system named after `option`.
SizeSystem system_of(const std::string& option, const std::string& word);

}  // namespace rangebook
