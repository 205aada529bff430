// The commands about delivery and return terms. As in commands.h: each returns the exit code.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "schema/order.h"
#include "tracker/app/commands.h"

namespace rangebook {

struct TermsRequest {
  std::string shop;
  std::vector<std::string> files;
  std::vector<std::string> fields;  ///< `field=value`
  std::optional<Day> on;            ///< absent: today
  bool dry_run = false;
};

/// An order across shops, as typed.
struct TryRequest {
  std::vector<std::string> shops;  ///< empty: all that have terms
  Order order;
  std::optional<Day> on;  ///< terms as of this day; absent: today
  std::string holidays;   ///< path; empty: none
};

int command_terms_show(const std::string& book, const TermsRequest& request,
                       const OutputChoice& output);
int command_terms_read(const std::string& book, const TermsRequest& request);
int command_terms_set(const std::string& book, const TermsRequest& request);
int command_terms_doubts(const std::string& book, const std::string& shop);
int command_terms_answer(const std::string& book, const std::string& shop,
                         const std::vector<std::int64_t>& doubts, bool yes);
int command_terms_timeline(const std::string& book, const std::string& shop,
                           const OutputChoice& output);
int command_terms_compare(const std::string& book, const TryRequest& request,
                          const OutputChoice& output);

}  // namespace rangebook
