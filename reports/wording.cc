// Plain words for values. No locale is asked: the same value reads the same on every machine.
#include "reports/wording.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <array>
#include <limits>

#include "schema/names.h"

namespace rangebook {
namespace {

constexpr NameTable<ChangeKind, kChangeKindCount> kKindWords{{
    {ChangeKind::line_new, "New lines"},
    {ChangeKind::line_dropped, "Lines gone"},
    {ChangeKind::line_returned, "Lines back"},
    {ChangeKind::line_renamed, "Renamed"},
    {ChangeKind::line_recoded, "New line code"},
    {ChangeKind::line_not_covered, "Not looked at this time"},
    {ChangeKind::colour_added, "Colour added"},
    {ChangeKind::colour_dropped, "Colour gone"},
    {ChangeKind::sizes_widened, "Sizes widened"},
    {ChangeKind::sizes_narrowed, "Sizes narrowed"},
    {ChangeKind::size_gap_filled, "Size between filled in"},
    {ChangeKind::size_gap_opened, "Size between gone"},
    {ChangeKind::fit_range_added, "Fit added"},
    {ChangeKind::fit_range_dropped, "Fit gone"},
    {ChangeKind::price_up, "Full price up"},
    {ChangeKind::price_down, "Full price down"},
    {ChangeKind::marked_down, "Marked down"},
    {ChangeKind::markdown_changed, "Markdown changed"},
    {ChangeKind::markdown_ended, "Markdown ended"},
    {ChangeKind::composition_changed, "Fabric changed"},
    {ChangeKind::category_moved, "Category changed"},
    {ChangeKind::stock_out, "Sold out"},
    {ChangeKind::stock_back, "Back in stock"},
    {ChangeKind::terms_changed, "Terms changed"},
    {ChangeKind::reach_widened, "Size range of a category widened"},
    {ChangeKind::reach_narrowed, "Size range of a category narrowed"},
    {ChangeKind::entry_price_changed, "Entry price changed"},
    {ChangeKind::price_index, "Like-for-like prices"},
}};

constexpr NameTable<SizeSystem, 15> kSystemWords{{
    {SizeSystem::unknown, ""},
    {SizeSystem::alpha, ""},
    {SizeSystem::uk, "UK"},
    {SizeSystem::au, "AU"},
    {SizeSystem::us, "US"},
    {SizeSystem::eu, "EU"},
    {SizeSystem::fr, "FR"},
    {SizeSystem::it, "IT"},
    {SizeSystem::jp, "JP"},
    {SizeSystem::waist_length, "waist and length"},
    {SizeSystem::bra, "bra"},
    {SizeSystem::footwear_uk, "shoe UK"},
    {SizeSystem::footwear_eu, "shoe EU"},
    {SizeSystem::footwear_us, "shoe US"},
    {SizeSystem::one_size, ""},
}};

constexpr std::array<std::string_view, 12> kMonths{"January",   "February", "March",    "April",
                                                   "May",       "June",     "July",     "August",
                                                   "September", "October",  "November", "December"};

/// The sign of a currency, where no other currency of the shops we expect shares it.
std::string_view currency_sign(std::string_view code) {
  if (code == "GBP") return "£";
  if (code == "EUR") return "€";
  return {};
}

/// Whether the labels name their fit themselves, as in `8 Petite`.
bool names_fit(const SizeFact& sizes) {
  std::string label = sizes.labels.empty() ? sizes.min : sizes.labels.front();
  for (char& sign : label) {
    if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
  }
  return label.find(to_string(sizes.fit)) != std::string::npos;
}

std::string size_prefix(const SizeFact& sizes) {
  std::string prefix;
  if (sizes.fit != FitRange::regular && !names_fit(sizes))
    prefix = fmt::format("{} ", to_string(sizes.fit));
  const auto system = system_words(sizes.system);
  if (!system.empty()) prefix += fmt::format("{} ", system);
  return prefix;
}

bool shows_every_label(ChangeKind kind) {
  return kind == ChangeKind::size_gap_filled || kind == ChangeKind::size_gap_opened;
}

void add_variants(Phrase& phrase, const PriceFact& price) {
  if (price.colours.empty() && price.sizes.empty()) return;
  phrase.words(" (").name(fmt::format("{}", fmt::join(price.colours, ", ")));
  if (!price.colours.empty() && !price.sizes.empty()) phrase.words("; ");
  if (!price.sizes.empty()) phrase.words("size ");
  phrase.name(fmt::format("{}", fmt::join(price.sizes, ", "))).words(")");
}

/// Builds the phrase of one side; one overload a shape.
struct SideWords {
  bool gaps = false;

  Phrase operator()(const NameFact& fact) const {
    Phrase phrase;
    phrase.name(fact.name);
    if (!fact.code.empty()) phrase.words(fact.name.empty() ? "" : " ").code(fact.code);
    return phrase;
  }
  Phrase operator()(const PriceFact& fact) const {
    Phrase phrase;
    phrase.money(fact.amount);
    if (fact.full) phrase.words(", full price ").money(*fact.full);
    add_variants(phrase, fact);
    return phrase;
  }
  Phrase operator()(const ColourFact& fact) const { return Phrase{}.name(fact.colour); }
  Phrase operator()(const SizeFact& fact) const {
    return Phrase{}.figure(gaps ? size_list_words(fact) : size_range_words(fact));
  }
  Phrase operator()(const CompositionFact& fact) const { return Phrase{}.name(fact.composition); }
  Phrase operator()(const CategoryFact& fact) const {
    return Phrase{}.name(category_words(fact.category));
  }
  Phrase operator()(const StockFact& fact) const {
    return Phrase{}.figure(fmt::format("{} of {}", fact.in_stock, fact.offered)).words(" in stock");
  }
  Phrase operator()(const IndexFact& fact) const {
    if (fact.jevons == IndexFact{}.jevons) return Phrase{}.figure("1.0000");
    return Phrase{}.figure(index_words(fact.jevons)).words(" on ").figure(lines_words(fact.lines));
  }
  Phrase operator()(const TermsFact& fact) const {
    return Phrase{}.words(fact.field).words(": ").figure(fact.value);
  }
};

struct Addend {
  std::uint32_t count = 0;
  std::string_view what;
};

/// `58 carried + 9 new = 67 lines now`. Addends of 0 are left out, except the first.
Phrase sum_phrase(const std::vector<Addend>& addends, std::uint32_t total, std::string_view when,
                  bool right) {
  Phrase phrase;
  for (const Addend& each : addends) {
    if (each.count == 0 && !phrase.empty()) continue;
    if (!phrase.empty()) phrase.words(" + ");
    phrase.count(each.count).words(fmt::format(" {}", each.what));
  }
  phrase.words(right ? " = " : ", which does not add up to the ").figure(lines_words(total));
  return phrase.words(fmt::format(" {}", when));
}

}  // namespace

std::string money_words(const Money& money) {
  const auto sign = currency_sign(money.currency.code());
  if (sign.empty()) return to_string(money);
  const std::string digits = decimal_text(money);
  if (digits.starts_with('-')) return fmt::format("-{}{}", sign, digits.substr(1));
  return fmt::format("{}{}", sign, digits);
}

std::string money_step_words(const Money& step) {
  return step.minor > 0 ? "+" + money_words(step) : money_words(step);
}

std::string day_words(Day day) {
  const date::year_month_day parts{day};
  return fmt::format("{} {} {}", static_cast<unsigned>(parts.day()),
                     kMonths[static_cast<unsigned>(parts.month()) - 1],
                     static_cast<int>(parts.year()));
}

std::string category_words(std::string_view slug) {
  if (slug == "all") return "the whole range";
  if (slug == "unsorted" || slug.empty()) return "lines without a category";
  if (slug.starts_with("t-")) return fmt::format("T{}", slug.substr(1));
  std::string words;
  for (const char sign : slug) {
    if (sign == '-') {
      words += " & ";
    } else {
      words += sign;
    }
  }
  return words;
}

std::string category_words(std::string_view slug, const Scope& scope) {
  if (slug == "all" && scope.kind != Scope::Kind::all) return "all that was looked at";
  return category_words(slug);
}

std::string_view kind_words(ChangeKind kind) { return name_of(kKindWords, kind); }
std::string_view change_words(ChangeKind kind) {
  if (kind == ChangeKind::line_new) return "New line";
  if (kind == ChangeKind::line_dropped) return "Line gone";
  if (kind == ChangeKind::line_returned) return "Line back";
  return kind_words(kind);
}
std::string_view system_words(SizeSystem system) { return name_of(kSystemWords, system); }

std::string size_range_words(const SizeFact& sizes) {
  if (sizes.labels.empty() && sizes.min.empty()) return "none";
  if (sizes.system == SizeSystem::unknown) return size_list_words(sizes);
  if (sizes.min == sizes.max) return size_prefix(sizes) + sizes.min;
  return fmt::format("{}{}–{}", size_prefix(sizes), sizes.min, sizes.max);
}

std::string size_list_words(const SizeFact& sizes) {
  if (sizes.labels.empty()) return "none";
  return fmt::format("{}{}", size_prefix(sizes), fmt::join(sizes.labels, ", "));
}

std::string percent_words(std::int64_t per_mille, bool signs) {
  const auto size = per_mille < 0 ? -per_mille : per_mille;
  const std::string_view sign = per_mille < 0 ? "-" : signs && per_mille > 0 ? "+" : "";
  return fmt::format("{}{}.{}%", sign, size / 10, size % 10);
}

std::optional<std::int64_t> per_mille_change(std::int64_t before, std::int64_t after) {
  constexpr std::int64_t kSafe = std::numeric_limits<std::int64_t>::max() / 4000;
  if (before <= 0 || before > kSafe || after > kSafe || after < -kSafe) return std::nullopt;
  const std::int64_t doubled = (after - before) * 2000;
  return (doubled + (doubled < 0 ? -before : before)) / (2 * before);
}

std::string index_words(std::int64_t millionths) {
  constexpr std::int64_t kOne = 1'000'000;
  if (millionths == kOne) return "unchanged";
  const std::string_view way = millionths > kOne ? "up" : "down";
  const std::int64_t change = per_mille_change(kOne, millionths).value_or(0);
  if (change == 0) return fmt::format("{} less than 0.1%", way);
  return fmt::format("{} {}", way, percent_words(change < 0 ? -change : change, false));
}

std::string counted(std::size_t count, std::string_view singular, std::string_view plural) {
  return fmt::format("{} {}", count, count == 1 ? singular : plural);
}

std::string lines_words(std::size_t count) { return counted(count, "line", "lines"); }

std::string capture_words(const CaptureInfo& capture, const CaptureInfo& other) {
  if (capture.season.empty() || capture.season == other.season) return day_words(capture.on);
  return capture.season;
}

std::string_view line_words(const LineRef& line) {
  if (!line.name.empty()) return line.name;
  return line.code.empty() ? std::string_view("(no name)") : std::string_view(line.code);
}

Phrase fact_phrase(const Fact& fact, bool gaps) { return std::visit(SideWords{gaps}, fact); }

Phrase side_phrase(ChangeKind kind, const std::optional<Fact>& fact) {
  return fact ? fact_phrase(*fact, shows_every_label(kind)) : Phrase{};
}

Phrase lines_now_phrase(const Reconciliation& sums) {
  const bool right =
      std::uint64_t{sums.carried} + sums.added + sums.returned + sums.unseen_then == sums.lines_now;
  return sum_phrase({{sums.carried, "carried"},
                     {sums.added, "new"},
                     {sums.returned, "back"},
                     {sums.unseen_then, "not looked at then"}},
                    sums.lines_now, "now", right);
}

Phrase lines_then_phrase(const Reconciliation& sums) {
  const bool right =
      std::uint64_t{sums.carried} + sums.dropped + sums.not_covered == sums.lines_then;
  return sum_phrase(
      {{sums.carried, "carried"}, {sums.dropped, "gone"}, {sums.not_covered, "not looked at now"}},
      sums.lines_then, "then", right);
}

Phrase related_phrase(const Change& change) {
  Phrase phrase;
  for (const RelatedLine& each : change.related) {
    phrase.words(phrase.empty() ? " (" : "; ");
    const bool is_part =
        each.relation == Relation::split_from || each.relation == Relation::merged_into;
    const bool was =
        each.relation == Relation::split_from || each.relation == Relation::merged_from;
    phrase.words(was ? "was " : "now ");
    if (is_part) phrase.words("the colour ").name(each.colour).words(" of ");
    phrase.name(line_words(each.line));
    if (!each.line.code.empty() && line_words(each.line) != each.line.code) {
      phrase.words(" ").code(each.line.code);
    }
  }
  return phrase.empty() ? phrase : phrase.words(")");
}

}  // namespace rangebook
