// From kept picks to what became of them.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>

#include "schema/pick.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/shop_lines.h"

namespace rangebook {

class FollowUp {
 public:
  /// Captures after `until` are left out. The book must outlive it.
  FollowUp(const Book& book, Day until) : book_(book), until_(until) {}

  FollowedPick of(const Pick& pick);

 private:
  /// Nothing where one of the captures is gone in the meantime.
  const ChangeSet* between(const CaptureInfo& from, const CaptureInfo& to);

  const Book& book_;
  Day until_;
  std::map<std::string, std::unique_ptr<ShopLines>> shops_;
  std::map<std::pair<std::int64_t, std::int64_t>, std::optional<ChangeSet>> sets_;
};

}  // namespace rangebook
