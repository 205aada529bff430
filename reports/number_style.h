// How figures are written: decimal sign, currency and dates by a locale, or in rangebook's own
// plain English form. The words around them stay English.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "reports/phrase.h"
#include "schema/day.h"
#include "schema/money.h"

namespace rangebook {

/// A BCP 47 tag such as `de-DE` or `en-IE`; empty for the plain form of reports/wording.h, which is
/// the same on every machine whatever its locale. The environment is never asked.
class NumberStyle {
 public:
  NumberStyle() = default;
  /// Nothing for a tag that ICU has no data for.
  static std::optional<NumberStyle> of(std::string_view tag);

  std::string money(const Money& money) const;
  /// With a sign for a rise: `+£10.00`.
  std::string money_step(const Money& step) const;
  std::string day(Day day) const;
  /// Tenths of a percent.
  std::string percent(std::int64_t per_mille, bool signs) const;

  bool plain() const { return tag_.empty(); }
  /// What to say of the language of the page's figures: `de-DE`.
  const std::string& tag() const { return tag_; }
  bool operator==(const NumberStyle&) const = default;

 private:
  explicit NumberStyle(std::string tag) : tag_(std::move(tag)) {}
  std::string tag_;
};

/// A figure as text; empty for one that has no value.
std::string figure_text(const PieceValue& value, const NumberStyle& numbers);

/// Writes every figure of a phrase anew that knows its value.
void restyle(Phrase& phrase, const NumberStyle& numbers);

}  // namespace rangebook
