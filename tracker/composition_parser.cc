// Tokens are gathered into runs between stops; each run is read share-first or name-first.
#include "tracker/composition_parser.h"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "tracker/composition_builder.h"
#include "tracker/composition_tokens.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

using Tokens = std::vector<CompositionToken>;
using Type = CompositionToken::Type;

constexpr std::array<std::string_view, 20> kConnectives{
    "and", "of", "from", "the", "made", "with", "in",  "und", "aus", "mit",
    "et",  "de", "en",   "y",   "e",    "di",   "con", "van", "met", "avec"};
constexpr std::array<std::string_view, 9> kExceptions{
    "exclusive", "excluding", "excl", "except", "ohne", "hors", "sauf", "excepto", "escluso"};
constexpr std::size_t kMaxFibreBytes = 60;
constexpr std::size_t kMaxPartBytes = 40;

bool is_one_of(std::string_view word, const auto& list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

/// Where in a phrase a fibre is named.
struct FoundFibre {
  Fibre fibre;
  std::size_t begin = 0;
  std::size_t end = 0;
};

std::optional<FoundFibre> first_fibre(FibreWords words) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    std::size_t length = 0;
    if (const auto fibre = fibre_at_start(words.subspan(i), length)) {
      return FoundFibre{*fibre, i, i + length};
    }
  }
  return std::nullopt;
}

std::optional<FoundFibre> last_fibre(FibreWords words) {
  std::optional<FoundFibre> last;
  for (std::size_t from = 0; from < words.size();) {
    auto next = first_fibre(words.subspan(from));
    if (!next) break;
    last = FoundFibre{next->fibre, from + next->begin, from + next->end};
    from = last->end;
  }
  return last;
}

/// The words as written, without connectives at both ends; empty when too long to be a name.
std::string verbatim(FibreWords words, std::size_t limit) {
  while (!words.empty() && is_one_of(words.front().folded, kConnectives)) words = words.subspan(1);
  while (!words.empty() && is_one_of(words.back().folded, kConnectives)) {
    words = words.first(words.size() - 1);
  }
  if (words.empty()) return {};
  const char* begin = words.front().raw.data();
  const char* end = words.back().raw.data() + words.back().raw.size();
  const auto length = static_cast<std::size_t>(end - begin);
  return length > limit ? std::string() : std::string(begin, length);
}

/// Name of the part a label stands for: its word in the table, numbered from 2 on (`fabric 2`), or
/// the label itself.
std::string part_name(FibreWords label) {
  std::size_t length = 0;
  const auto part = part_at_start(label, length);
  if (!part || length < label.size()) {
    const bool numbered = part && length + 1 == label.size() && label.back().raw.size() == 1 &&
                          is_ascii_digit(label.back().raw.front());
    if (!numbered) return fold_text(verbatim(label, kMaxPartBytes));
    if (label.back().raw != "1") return std::string(part->name) + " " + label.back().folded;
  }
  return std::string(part->name);
}

// Common practice, no source; languages other than English from memory. Word beginnings.
constexpr std::array<std::string_view, 7> kRecycled{"recycl",  "recycelt", "recykl",   "recicla",
                                                    "ricicla", "gerecycl", "herwonnen"};
constexpr std::array<std::string_view, 7> kOrganic{"organi",  "bio",      "biologi", "ecologi",
                                                   "okologi", "oekologi", "kba"};

bool claims(FibreWords words, const auto& beginnings) {
  return std::any_of(words.begin(), words.end(), [&](const FibreWord& word) {
    return std::any_of(beginnings.begin(), beginnings.end(),
                       [&](std::string_view begin) { return word.folded.starts_with(begin); });
  });
}

/// `words` are all that stands around the fibre: "wool (recycled)", "bio-baumwolle".
FibreShare claimed(FibreShare share, FibreWords words) {
  if (claims(words, kRecycled)) share.recycled = share.hundredths;
  if (claims(words, kOrganic)) share.organic = share.hundredths;
  return share;
}

FibreShare share_of(const Fibre& fibre, std::int32_t hundredths) {
  return {std::string(fibre.name), true, fibre.origin, hundredths, 0, 0};
}

/// Reads runs into a builder.
class RunReader {
 public:
  explicit RunReader(CompositionBuilder& builder) : builder_(builder) {}

  /// A share stood apart from any fibre, so that no share is certain: `wool/silk 90%/10%`.
  bool has_orphans() const { return orphans_; }

  void read(std::span<const CompositionToken> run) {
    if (run.empty()) return;
    orphans_ = orphans_ || (run.size() == 1 && ends_with_share(run));
    FibreWords front;
    if (run.front().type == Type::phrase) {
      front = take_part(run.front().words, run.size() == 1);
      run = run.subspan(1);
    }
    if (run.empty()) return;
    if (!front.empty() && (ends_with_share(run) || first_fibre(front))) {
      read_names_first(front, run);
    } else {
      read_shares_first(run);
    }
  }

 private:
  static bool ends_with_share(std::span<const CompositionToken> run) {
    return run.back().type == Type::share;
  }

  /// Takes a part's name off the front of a phrase: `Lining viscose`. Alone it must be all there
  /// is.
  FibreWords take_part(FibreWords words, bool alone) {
    std::size_t length = 0;
    const auto part = part_at_start(words, length);
    if (!part || (alone && length != words.size())) return words;
    builder_.start_part(std::string(part->name));
    return words.subspan(length);
  }

  /// `around`: the fibre with the words that may claim something of it.
  void add_named(FibreWords name, FibreWords around, const std::optional<FoundFibre>& fibre,
                 std::int32_t share) {
    if (builder_.shares() >= kMaxFibreShares) return;
    if (fibre) {
      builder_.add(claimed(share_of(fibre->fibre, share), around));
    } else if (auto words = verbatim(name, kMaxFibreBytes); !words.empty()) {
      builder_.add(claimed({std::move(words), false, FibreOrigin::other, share, 0, 0}, around));
    }
  }

  void read_names_first(FibreWords name, std::span<const CompositionToken> rest) {
    for (const auto& token : rest) {
      if (token.type == Type::share) {
        add_named(name, name, last_fibre(name), token.hundredths);
        name = {};
      } else {
        name = take_part(token.words, false);
      }
    }
  }

  void read_shares_first(std::span<const CompositionToken> run) {
    for (std::size_t i = 0; i + 1 < run.size(); ++i) {
      if (run[i].type != Type::share || run[i + 1].type != Type::phrase) continue;
      const FibreWords words(run[i + 1].words);
      const auto fibre = first_fibre(words);
      const auto name_end = fibre ? fibre->end : part_begin(words);
      add_named(words.first(name_end), words, fibre, run[i].hundredths);
      read_behind(words.subspan(name_end), i + 2 == run.size());
    }
  }

  /// Where a part's name begins behind an unknown fibre; the words' end when there is none.
  static std::size_t part_begin(FibreWords words) {
    for (std::size_t i = 1; i < words.size(); ++i) {
      std::size_t length = 0;
      const auto part = part_at_start(words.subspan(i), length);
      if (part && part->trailing) return i;
    }
    return words.size();
  }

  /// What stands behind a fibre: the part of the shares so far (at the end of a run or in
  /// brackets), or of the shares that follow.
  void read_behind(FibreWords words, bool last) {
    for (std::size_t i = 0; i < words.size(); ++i) {
      if (is_one_of(words[i].folded, kExceptions)) return;
      std::size_t length = 0;
      const auto part = part_at_start(words.subspan(i), length);
      if (!part || !part->trailing) continue;
      const std::string name(part->name);
      if (last || words[i].bracketed) {
        builder_.name_open_part(name);
      } else {
        builder_.start_part(name);
      }
      return;
    }
  }

  CompositionBuilder& builder_;
  bool orphans_ = false;
};

/// What a phrase before a colon is: a label behind the last fibre of a run, or, alone with nothing
/// but a fibre, the name of the share that follows (`Cotton: 65%`).
std::size_t label_begin(const CompositionToken& phrase) {
  const auto fibre = last_fibre(phrase.words);
  return fibre ? fibre->end : 0;
}

/// False when the shares cannot be told apart.
bool read_tokens(Tokens tokens, CompositionBuilder& builder) {
  RunReader reader(builder);
  Tokens run;
  for (auto& token : tokens) {
    if (token.type == Type::stop) {
      reader.read(run);
      run.clear();
    } else if (token.type != Type::colon) {
      run.push_back(std::move(token));
    } else if (!run.empty() && run.back().type == Type::phrase) {
      auto& words = run.back().words;
      const auto begin = label_begin(run.back());
      if (begin == words.size()) continue;
      const std::vector<FibreWord> label(words.begin() + static_cast<std::ptrdiff_t>(begin),
                                         words.end());
      words.resize(begin);
      if (words.empty()) run.pop_back();
      reader.read(run);
      run.clear();
      if (auto name = part_name(label); !name.empty()) builder.start_part(std::move(name));
    }
  }
  reader.read(run);
  return !reader.has_orphans();
}

/// Signs of other scripts and typographic ones, as their plain forms.
constexpr std::array<std::pair<std::string_view, std::string_view>, 14> kPlainSigns{{
    {"\xC2\xA0", " "},
    {"\xE2\x80\xAF", " "},
    {"\xE2\x80\x89", " "},
    {"\xE2\x80\x8B", " "},
    {"\xE2\x80\x90", "-"},
    {"\xE2\x80\x91", "-"},
    {"\xE2\x80\x93", "-"},
    {"\xE2\x80\x94", "-"},
    {"\xE2\x80\x98", "'"},
    {"\xE2\x80\x99", "'"},
    {"\xE2\x80\xA2", ";"},
    {"\xC2\xB7", ";"},
    {"\xC2\xAE", " "},
    {"\xEF\xBC\x85", "%"},
}};

std::string plain_signs(std::string_view text) {
  std::string plain;
  plain.reserve(text.size());
  while (!text.empty()) {
    std::size_t length = 1;
    std::string_view sign = text.substr(0, 1);
    if (static_cast<unsigned char>(text.front()) >= 0x80) {
      for (const auto& [fancy, ascii] : kPlainSigns) {
        if (!text.starts_with(fancy)) continue;
        length = fancy.size();
        sign = ascii;
      }
    }
    plain += sign;
    text.remove_prefix(length);
  }
  return plain;
}

bool is_certain(const Composition& composition) {
  return std::all_of(composition.parts.begin(), composition.parts.end(), [](const auto& part) {
    return part.sums_to_100() && std::all_of(part.fibres.begin(), part.fibres.end(),
                                             [](const auto& share) { return share.known; });
  });
}

}  // namespace

std::optional<Composition> parse_composition(std::string_view text) {
  if (text.size() > kMaxCompositionBytes) return std::nullopt;
  const auto plain = plain_signs(text);
  const auto style = has_percent(plain) ? ShareStyle::percent : ShareStyle::bare;
  CompositionBuilder builder;
  if (!read_tokens(composition_tokens(plain, style), builder)) return std::nullopt;
  auto composition = builder.finish();
  if (composition.parts.empty()) return std::nullopt;
  if (style == ShareStyle::bare && !is_certain(composition)) return std::nullopt;
  return composition;
}

}  // namespace rangebook
