// Parts are closed when the next one begins; equal parts and equal fibres are merged.
#include "tracker/composition_builder.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace rangebook {
namespace {

constexpr std::int32_t kWhole = 10000;

void merge_into(std::vector<FibreShare>& fibres, const FibreShare& share) {
  for (auto& known : fibres) {
    if (known.fibre != share.fibre) continue;
    known.hundredths += share.hundredths;
    known.recycled += share.recycled;
    known.organic += share.organic;
    return;
  }
  fibres.push_back(share);
}

bool larger_share(const FibreShare& a, const FibreShare& b) {
  return std::tie(b.hundredths, a.fibre) < std::tie(a.hundredths, b.fibre);
}

bool earlier_part(const CompositionPart& a, const CompositionPart& b) {
  const bool a_main = a.part == kMainPart;
  const bool b_main = b.part == kMainPart;
  return a_main != b_main ? a_main : a.part < b.part;
}

}  // namespace

void CompositionBuilder::start_part(std::string name) {
  close(current_);
  current_ = std::move(name);
}

void CompositionBuilder::name_open_part(const std::string& name) { close(name); }

void CompositionBuilder::add(FibreShare share) {
  if (open_sum() == kWhole) close(current_);
  open_.push_back(std::move(share));
  ++shares_;
}

std::int32_t CompositionBuilder::open_sum() const {
  std::int32_t sum = 0;
  for (const auto& share : open_) sum += share.hundredths;
  return sum;
}

void CompositionBuilder::close(const std::string& name) {
  if (open_.empty()) return;
  auto part = std::find_if(parts_.begin(), parts_.end(),
                           [&](const CompositionPart& known) { return known.part == name; });
  if (part == parts_.end()) part = parts_.insert(parts_.end(), CompositionPart{name, {}});
  for (const auto& share : open_) merge_into(part->fibres, share);
  open_.clear();
}

Composition CompositionBuilder::finish() {
  close(current_);
  for (auto& part : parts_) std::sort(part.fibres.begin(), part.fibres.end(), larger_share);
  std::sort(parts_.begin(), parts_.end(), earlier_part);
  return {std::exchange(parts_, {})};
}

}  // namespace rangebook
