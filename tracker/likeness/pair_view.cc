// The steps of each trait. Their bounds cut the range of each similarity where lines that are the
// same and lines that are not part; they are judged from invented ranges, and the weights that are
// counted per capture make up for a bound that fits a shop less well.
#include "tracker/likeness/pair_view.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "tracker/category_parser.h"

namespace rangebook {
namespace {

/// Two different words count as spellings of one from this trigram likeness on.
constexpr double kSameWord = 0.55;
/// How much of its weight another spelling of a word keeps, and another word for the garment.
constexpr double kSpelling = 0.8;
constexpr double kSynonym = 0.6;
/// Texts with this share of their word pairs in common are made by one pattern ("This .. in .. has
/// .. and .."); where what fills it differs, they tell of different lines.
constexpr double kOnePattern = 0.45;
/// Words shared by chance come in company ("wide leg trousers"), so their rarities do not quite add
/// up.
constexpr double kCompany = 0.9;
constexpr double kRarestName = 9.5;  ///< nats
/// Other lines that share all words of a name mostly have further words of their own.
constexpr double kNothingElse = 0.6;
/// Likewise for texts, whose words keep more company.
constexpr double kTextCompany = 0.6;
constexpr double kRarestText = 8;

/// The step of `value` given ascending lower bounds of steps 1, 2, ..
std::uint8_t step_of(double value, std::initializer_list<double> bounds) {
  std::uint8_t step = 0;
  for (const double bound : bounds) step = static_cast<std::uint8_t>(step + (value >= bound));
  return step;
}

WordKey key_of(WordKey key) { return key; }
WordKey key_of(const TextWord& word) { return word.key; }

/// Sum over the keys both lists hold of `at(i, j)`.
template <typename Word, typename At>
double sum_shared(const std::vector<Word>& a, const std::vector<Word>& b, At at) {
  double sum = 0;
  for (std::size_t i = 0, j = 0; i < a.size() && j < b.size();) {
    const WordKey key_a = key_of(a[i]);
    const WordKey key_b = key_of(b[j]);
    if (key_a == key_b) {
      sum += at(i, j);
      ++i;
      ++j;
    } else if (key_a < key_b) {
      ++i;
    } else {
      ++j;
    }
  }
  return sum;
}

double cosine(const std::vector<WordKey>& a, std::span<const double> weights, double norm_a,
              const std::vector<WordKey>& b, double norm_b) {
  if (norm_a <= 0 || norm_b <= 0) return 0;
  return sum_shared(a, b, [&](std::size_t i, std::size_t) { return weights[i] * weights[i]; }) /
         (norm_a * norm_b);
}

// --- Name

bool spellings_of_one(const std::string& a, const std::string& b) {
  const auto& [shorter, longer] =
      std::minmax(a, b, [](const auto& x, const auto& y) { return x.size() < y.size(); });
  if (is_abbreviation(shorter, longer)) return true;
  if (shorter.size() < 4) return false;
  return longer.starts_with(shorter) || longer.ends_with(shorter) || is_slip(a, b) ||
         trigram_likeness(a, b) >= kSameWord;
}

/// How far two lone words say the same: 0 when they do not.
double same_word(const NameWord& a, const NameWord& b) {
  if (spellings_of_one(a.text, b.text)) return kSpelling;
  return !a.garment.empty() && a.garment == b.garment ? kSynonym : 0;
}

/// Weights of the words of two names: in both, and in one only.
struct NameOverlap {
  double shared = 0;
  double alone = 0;
};

struct LoneWord {
  const NameWord* word;
  double weight;
};

/// Words of one name only that spell words of the other, "Shirtdress" and "shirt dress", or name
/// the same garment, "jumper" and "sweater".
void pair_spellings(std::vector<LoneWord>& a, std::vector<LoneWord>& b, NameOverlap& overlap) {
  for (LoneWord& mine : a) {
    for (LoneWord& other : b) {
      if (mine.weight <= 0 || other.weight <= 0) continue;
      const double same = same_word(*mine.word, *other.word);
      if (same == 0) continue;
      const double less = same * std::min(mine.weight, other.weight);
      overlap.shared += less;
      mine.weight -= less;
      other.weight -= less;
      overlap.alone += mine.weight + other.weight;
      mine.weight = other.weight = 0;
    }
  }
  for (const LoneWord& word : a) overlap.alone += word.weight;
  for (const LoneWord& word : b) overlap.alone += word.weight;
}

NameOverlap name_overlap(const WeighedLine& a, const WeighedLine& b) {
  const auto& words_a = a.profile->name;
  const auto& words_b = b.profile->name;
  NameOverlap overlap;
  std::vector<LoneWord> lone_a;
  std::vector<LoneWord> lone_b;
  std::size_t i = 0;
  std::size_t j = 0;
  while (i < words_a.size() || j < words_b.size()) {
    if (j == words_b.size() || (i < words_a.size() && words_a[i].key < words_b[j].key)) {
      lone_a.push_back({&words_a[i], a.name[i]});
      ++i;
    } else if (i == words_a.size() || words_b[j].key < words_a[i].key) {
      lone_b.push_back({&words_b[j], b.name[j]});
      ++j;
    } else {
      overlap.shared += std::min(a.name[i], b.name[j]);
      ++i;
      ++j;
    }
  }
  pair_spellings(lone_a, lone_b, overlap);
  return overlap;
}

// Steps by the weight shared of all weight; the last is an equal name. The chance that another line
// shares as much is that of sharing these very words.
TraitView view_name(const WeighedLine& a, const WeighedLine& b) {
  if (a.profile->name.empty() || b.profile->name.empty()) return {};
  const bool equal = a.profile->name_key == b.profile->name_key;
  const NameOverlap overlap = name_overlap(a, b);
  const double all = overlap.shared + overlap.alone / 2;
  const double likeness = all > 0 ? overlap.shared / all : 1;
  const std::uint8_t step =
      equal ? steps::kNameEqual : step_of(likeness, {0.15, 0.35, 0.55, 0.75, 0.93});
  const double rarity = std::min(kCompany * overlap.shared, kRarestName);
  return {step, (equal ? kNothingElse : 1) * 0.85 * std::exp(-rarity)};
}

// --- Texts

bool of_one_pattern(const LineProfile& a, const LineProfile& b) {
  const double shared =
      sum_shared(a.phrases, b.phrases, [](std::size_t, std::size_t) { return 1.0; });
  return shared >=
             kOnePattern * static_cast<double>(std::max(a.phrases.size(), b.phrases.size())) &&
         shared > 0;
}

struct TextOverlap {
  double shared = 0;  ///< weights of the words in both
  double cosine = 0;
};

/// Words of both names are left out: they would count twice, and make the text of a new style that
/// took over an old name look like the old text. A word of one name counts where the other text
/// has it too, as when the text still calls the line by its old name.
TextOverlap text_overlap(const WeighedLine& a, const WeighedLine& b) {
  const auto& words_a = a.profile->description;
  const auto& words_b = b.profile->description;
  TextOverlap overlap;
  double squares_a = a.description_norm * a.description_norm;
  double squares_b = b.description_norm * b.description_norm;
  const double product = sum_shared(words_a, words_b, [&](std::size_t i, std::size_t j) {
    if (words_a[i].in_name && words_b[j].in_name) return 0.0;
    const double weight_a = a.description[i];
    const double weight_b = b.description[j];
    if (words_a[i].in_name) squares_a += weight_a * weight_a;
    if (words_b[j].in_name) squares_b += weight_b * weight_b;
    overlap.shared += std::min(weight_a, weight_b);
    return weight_a * weight_b;
  });
  const double norms = std::sqrt(squares_a * squares_b);
  if (norms > 0) overlap.cosine = product / norms;
  return overlap;
}

/// Steps by cosine; the last is an equal text; the first also is another text by the same pattern.
/// Where much is shared, it counts how rare that is: the same ten rare words are no chance, the
/// same three common ones may be.
TraitView view_description(const WeighedLine& a, const WeighedLine& b, const WordRates& rates) {
  const LineProfile& x = *a.profile;
  const LineProfile& y = *b.profile;
  if (x.description.empty() || y.description.empty()) return {};
  if (x.description_key == y.description_key) {
    return {steps::kDescriptionEqual, rates.description(x)};
  }
  const TextOverlap overlap = text_overlap(a, b);
  const std::uint8_t step = step_of(overlap.cosine, {0.08, 0.2, 0.35, 0.55, 0.8});
  if (step < steps::kDescriptionMuch && of_one_pattern(x, y)) return {0, std::nullopt};
  if (step < steps::kDescriptionMuch) return {step, std::nullopt};
  return {step, std::exp(-std::min(kTextCompany * overlap.shared, kRarestText))};
}

TraitView view_picture(const WeighedLine& a, const WeighedLine& b, const WordRates& rates) {
  const LineProfile& x = *a.profile;
  const LineProfile& y = *b.profile;
  if (x.picture.empty() || y.picture.empty()) return {};
  if (x.picture_key == y.picture_key) return {steps::kPictureEqual, rates.picture(x)};
  return {step_of(cosine(x.picture, a.picture, a.picture_norm, y.picture, b.picture_norm), {0.5}),
          std::nullopt};
}

TraitView view_code(const LineProfile& a, const LineProfile& b, const WordRates& rates) {
  if (a.codes.empty() || b.codes.empty()) return {};
  double rarest = 1;
  sum_shared(a.codes, b.codes, [&](std::size_t i, std::size_t) {
    rarest = std::min(rarest, rates.code_piece(a.codes[i]));
    return 0.0;
  });
  if (rarest > 0.05) return {0, std::nullopt};
  return {1, rarest};
}

// --- Values

/// Steps: other cloth, a third in common, nearly the same shares, equal.
TraitView view_composition(const LineProfile& a, const LineProfile& b, const WordRates& rates) {
  if (a.fabric == nullptr || b.fabric == nullptr) return {};
  if (a.fabric->key == b.fabric->key) {
    return {steps::kCompositionEqual, std::max(rates.fabric(a), rates.fabric(b))};
  }
  std::int32_t shared = 0;
  for (const auto& [fibre, share] : a.fabric->fibres) {
    for (const auto& [other, other_share] : b.fabric->fibres) {
      if (fibre == other) shared += std::min(share, other_share);
    }
  }
  return {step_of(shared, {3000, 8800}), std::nullopt};
}

/// Steps: none in common; one of several; one and nearly all; the same single one; several; all.
TraitView view_colours(const LineProfile& a, const LineProfile& b) {
  if (a.colours.empty() || b.colours.empty()) return {};
  const double shared =
      sum_shared(a.colours, b.colours, [](std::size_t, std::size_t) { return 1.0; });
  const double all = static_cast<double>(a.colours.size() + b.colours.size()) - shared;
  if (shared == 0) return {0, std::nullopt};
  if (shared == 1) return {step_of(shared / all, {0, 0.5, 1}), std::nullopt};
  return {static_cast<std::uint8_t>(shared / all < 0.6 ? 4 : 5), std::nullopt};
}

TraitView view_price(const LineProfile& a, const LineProfile& b) {
  if (!a.price || !b.price || *a.price <= 0 || *b.price <= 0 || a.currency != b.currency) return {};
  const double distance =
      std::abs(std::log(static_cast<double>(*a.price) / static_cast<double>(*b.price)));
  return {step_of(-distance, {-0.7, -0.35, -0.2, -0.1, -0.03, 0}), std::nullopt};
}

/// Steps: apart or of another system, overlapping, one end in common, equal.
TraitView view_sizes(const LineProfile& a, const LineProfile& b) {
  if (!a.sizes || !b.sizes) return {};
  const SizeSpan& x = *a.sizes;
  const SizeSpan& y = *b.sizes;
  if (x == y) return {3, std::nullopt};
  if (x.system != y.system || x.fit != y.fit || x.high < y.low || y.high < x.low) {
    return {0, std::nullopt};
  }
  return {static_cast<std::uint8_t>(x.low == y.low || x.high == y.high ? 2 : 1), std::nullopt};
}

/// Steps: other, below or beside each other, same. Where nothing is known nothing is said.
TraitView view_category(const LineProfile& a, const LineProfile& b) {
  if (a.category == kUnsorted || b.category == kUnsorted) return {};
  if (a.category == b.category) return {steps::kCategorySame, std::nullopt};
  const std::string_view above = parent_category(a.category);
  const bool near = category_within(a.category, b.category) ||
                    category_within(b.category, a.category) ||
                    (!above.empty() && above == parent_category(b.category));
  return {static_cast<std::uint8_t>(near ? 1 : 0), std::nullopt};
}

double norm(const std::vector<double>& weights) {
  double sum = 0;
  for (const double weight : weights) sum += weight * weight;
  return std::sqrt(sum);
}

WeighedLine weighed(const LineProfile& profile, const WordRates& rates) {
  WeighedLine line;
  line.profile = &profile;
  for (const NameWord& word : profile.name) {
    line.name.push_back(-std::log(rates.name_word(word.key, profile.category)));
  }
  double squares = 0;
  for (const TextWord& word : profile.description) {
    const double weight = rates.description_weight(word);
    line.description.push_back(weight);
    if (!word.in_name) squares += weight * weight;
  }
  for (const WordKey word : profile.picture) line.picture.push_back(rates.picture_weight(word));
  line.description_norm = std::sqrt(squares);
  line.picture_norm = norm(line.picture);
  return line;
}

}  // namespace

std::vector<WeighedLine> weigh(const std::vector<LineProfile>& profiles, const WordRates& rates) {
  std::vector<WeighedLine> lines;
  lines.reserve(profiles.size());
  for (const LineProfile& profile : profiles) lines.push_back(weighed(profile, rates));
  return lines;
}

PairView view_pair(const WeighedLine& a, const WeighedLine& b, const WordRates& rates) {
  const LineProfile& x = *a.profile;
  const LineProfile& y = *b.profile;
  return {view_name(a, b),
          view_description(a, b, rates),
          view_composition(x, y, rates),
          view_colours(x, y),
          view_price(x, y),
          view_sizes(x, y),
          view_picture(a, b, rates),
          view_code(x, y, rates),
          view_category(x, y)};
}

}  // namespace rangebook
