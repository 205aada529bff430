// Collecting fibres into the parts of a composition.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "schema/composition.h"

namespace rangebook {

/// Fibres are added in the order of the text. They belong to the part named last before them, or to
/// the one named right behind them.
class CompositionBuilder {
 public:
  /// The part of the fibres that follow.
  void start_part(std::string name);
  /// The part of the fibres since the last part began or the last 100 % were full.
  void name_open_part(const std::string& name);
  void add(FibreShare share);
  std::size_t shares() const { return shares_; }
  /// Canonical: equal fibres added up, largest share first; `main` first, then parts by name.
  Composition finish();

 private:
  void close(const std::string& name);
  std::int32_t open_sum() const;

  std::string current_{kMainPart};
  std::vector<FibreShare> open_;
  std::vector<CompositionPart> parts_;
  std::size_t shares_ = 0;
};

}  // namespace rangebook
