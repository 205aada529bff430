// The text of single values of terms, as a person types them: `3.95 GBP`, `28 days from delivery`,
// `up to 5 working days`. `value_text` writes one form; `read_value` takes it back, and looser
// ones.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/terms.h"

namespace rangebook {

/// Amounts above this are a slip of typing, in minor units.
inline constexpr MinorUnits kMaxTermsAmount = 100'000'000'000;
/// Numbers of days, weeks, months and grams are at most this.
inline constexpr int kMaxTermsCount = 100'000;
/// Longest text of one value, and most parts of a list.
inline constexpr std::size_t kMaxTermsText = 2000;
inline constexpr std::size_t kMaxTermsList = 100;

/// `free`, `3.95 GBP`, `£3.95`, `3,95 €`; a number alone takes `home`. Nothing for a text that is
/// no amount, is negative, or has no currency.
std::optional<Money> read_money(std::string_view text, std::optional<Currency> home);

/// A share with a per cent sign, in 1/100 per cent: `12.5%` is 1250. At most 100%.
std::optional<std::int32_t> read_share(std::string_view text);
std::string share_text(std::int32_t hundredths);

/// `31 Jan`, `31 January 2027`, `2027-01-31`.
std::optional<SeasonDay> read_season_day(std::string_view text);

std::string value_text(bool value);
std::string value_text(const std::string& value);
std::string value_text(const std::vector<std::string>& value);  ///< joined by commas
std::string value_text(const Money& value);
std::string value_text(const Threshold& value);                    ///< `over 50.00 GBP`
std::string value_text(const std::vector<ValueStep>& value);       ///< `4.95 GBP from 0.00 GBP; ..`
std::string value_text(const std::vector<WeightStep>& value);      ///< `3.95 GBP up to 2000 g; ..`
std::string value_text(const DaySpan& value);                      ///< `3-5 working days`
std::string value_text(const ReturnWindow& value);                 ///< `28 days from delivery`
std::string value_text(const std::vector<SeasonalWindow>& value);  ///< `bought 1 Nov to .., ..`
std::string value_text(const std::vector<RefundForm>& value);      ///< `original payment, credit`
std::string value_text(ThresholdBasis value);
std::string value_text(CountedFrom value);
std::string value_text(Payer value);
std::string value_text(ItemRule value);

/// Reads a text. Nothing: it is no such value, or passes a limit. `home` is the currency of an
/// amount that names none.
template <typename T>
std::optional<T> read_value(std::string_view text, std::optional<Currency> home);

template <>
std::optional<bool> read_value(std::string_view text, std::optional<Currency> home);
template <>
std::optional<std::string> read_value(std::string_view text, std::optional<Currency> home);
template <>
std::optional<std::vector<std::string>> read_value(std::string_view text,
                                                   std::optional<Currency> home);
template <>
std::optional<Money> read_value(std::string_view text, std::optional<Currency> home);
template <>
std::optional<Threshold> read_value(std::string_view text, std::optional<Currency> home);
template <>
std::optional<std::vector<ValueStep>> read_value(std::string_view text,
                                                 std::optional<Currency> home);
template <>
std::optional<std::vector<WeightStep>> read_value(std::string_view text,
                                                  std::optional<Currency> home);
template <>
std::optional<DaySpan> read_value(std::string_view text, std::optional<Currency> home);
template <>
std::optional<ReturnWindow> read_value(std::string_view text, std::optional<Currency> home);
template <>
std::optional<std::vector<SeasonalWindow>> read_value(std::string_view text,
                                                      std::optional<Currency> home);
template <>
std::optional<std::vector<RefundForm>> read_value(std::string_view text,
                                                  std::optional<Currency> home);
template <>
std::optional<ThresholdBasis> read_value(std::string_view text, std::optional<Currency> home);
template <>
std::optional<CountedFrom> read_value(std::string_view text, std::optional<Currency> home);
template <>
std::optional<Payer> read_value(std::string_view text, std::optional<Currency> home);
template <>
std::optional<ItemRule> read_value(std::string_view text, std::optional<Currency> home);

/// Lower case (ASCII), inner white space as one blank, none at the ends; `_` as `-`.
std::string plain_words(std::string_view text);
std::string_view trimmed(std::string_view text);

}  // namespace rangebook
