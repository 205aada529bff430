// ICU for a locale that was asked for, wording.h otherwise.
#include "reports/number_style.h"

#include <unicode/datefmt.h>
#include <unicode/locid.h>
#include <unicode/numberformatter.h>
#include <unicode/simpletz.h>
#include <unicode/smpdtfmt.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <memory>
#include <vector>

#include "reports/wording.h"
#include "schema/error.h"

namespace rangebook {
namespace {

icu::Locale locale_of(const std::string& tag) {
  UErrorCode status = U_ZERO_ERROR;
  auto locale = icu::Locale::forLanguageTag(tag, status);
  if (U_FAILURE(status)) throw Error("ICU does not know the locale " + tag);
  return locale;
}

std::string utf8(const icu::UnicodeString& text) {
  std::string out;
  text.toUTF8String(out);
  return out;
}

std::string formatted(const icu::number::LocalizedNumberFormatter& formatter,
                      const std::string& decimal) {
  UErrorCode status = U_ZERO_ERROR;
  const auto result = formatter.formatDecimal(decimal, status);
  const icu::UnicodeString text = result.toString(status);
  if (U_FAILURE(status)) throw Error("ICU cannot write the number " + decimal);
  return utf8(text);
}

std::string money_in(const std::string& tag, const Money& money, UNumberSignDisplay sign) {
  UErrorCode status = U_ZERO_ERROR;
  const std::string code(money.currency.code());
  const icu::CurrencyUnit unit(icu::StringPiece(code), status);
  const auto formatter =
      icu::number::NumberFormatter::withLocale(locale_of(tag))
          .unit(unit)
          .precision(icu::number::Precision::fixedFraction(money.currency.exponent()))
          .sign(sign);
  if (U_FAILURE(status)) throw Error("ICU does not know the currency " + code);
  return formatted(formatter, decimal_text(money));
}

}  // namespace

std::optional<NumberStyle> NumberStyle::of(std::string_view tag) {
  UErrorCode status = U_ZERO_ERROR;
  const auto locale = icu::Locale::forLanguageTag(
      icu::StringPiece(tag.data(), static_cast<int>(tag.size())), status);
  if (U_FAILURE(status) || *locale.getLanguage() == '\0') return std::nullopt;
  const auto canonical = locale.toLanguageTag<std::string>(status);
  if (U_FAILURE(status) || canonical.find("-x-") != std::string::npos) return std::nullopt;
  std::int32_t count = 0;
  const icu::Locale* available = icu::Locale::getAvailableLocales(count);
  const bool known = std::any_of(available, available + count, [&locale](const icu::Locale& each) {
    return std::string_view(each.getLanguage()) == locale.getLanguage() &&
           (*locale.getCountry() == '\0' ||
            std::string_view(each.getCountry()) == locale.getCountry());
  });
  if (!known) return std::nullopt;
  return NumberStyle(canonical);
}

std::string NumberStyle::money(const Money& money) const {
  return plain() ? money_words(money) : money_in(tag_, money, UNUM_SIGN_AUTO);
}

std::string NumberStyle::money_step(const Money& step) const {
  return plain() ? money_step_words(step) : money_in(tag_, step, UNUM_SIGN_EXCEPT_ZERO);
}

std::string NumberStyle::percent(std::int64_t per_mille, bool signs) const {
  if (plain()) return percent_words(per_mille, signs);
  const auto size = per_mille < 0 ? -per_mille : per_mille;
  const auto formatter = icu::number::NumberFormatter::withLocale(locale_of(tag_))
                             .unit(icu::MeasureUnit::getPercent())
                             .precision(icu::number::Precision::fixedFraction(1))
                             .sign(signs ? UNUM_SIGN_EXCEPT_ZERO : UNUM_SIGN_AUTO);
  return formatted(formatter, (per_mille < 0 ? "-" : "") + std::to_string(size / 10) + "." +
                                  std::to_string(size % 10));
}

std::string NumberStyle::day(Day day) const {
  if (plain()) return day_words(day);
  const std::unique_ptr<icu::DateFormat> format(
      icu::DateFormat::createDateInstance(icu::DateFormat::kLong, locale_of(tag_)));
  if (format == nullptr) throw Error("ICU cannot write dates in " + tag_);
  // A day has no time zone: midnight and the format both go by UTC.
  format->adoptTimeZone(
      new icu::SimpleTimeZone(0, "UTC"));  // NOLINT(cppcoreguidelines-owning-memory)
  constexpr double kMilliseconds = 86'400'000.0;
  icu::UnicodeString text;
  format->format(static_cast<double>(day.time_since_epoch().count()) * kMilliseconds, text);
  return utf8(text);
}

std::string figure_text(const PieceValue& value, const NumberStyle& numbers) {
  struct Text {
    const NumberStyle& numbers;
    std::string operator()(std::monostate) const { return {}; }
    std::string operator()(const Money& money) const { return numbers.money(money); }
    std::string operator()(const MoneyStep& step) const { return numbers.money_step(step.step); }
    std::string operator()(Day day) const { return numbers.day(day); }
    std::string operator()(Count count) const { return std::to_string(count.number); }
    std::string operator()(Share share) const {
      return numbers.percent(share.per_mille, share.signs);
    }
  };
  return std::visit(Text{numbers}, value);
}

void restyle(Phrase& phrase, const NumberStyle& numbers) {
  for (Piece& piece : phrase.pieces) {
    if (!std::holds_alternative<std::monostate>(piece.value)) {
      piece.text = figure_text(piece.value, numbers);
    }
  }
}

}  // namespace rangebook
