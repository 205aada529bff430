// The table of words, loaded once.
#include "importers/page_words.h"

#include <algorithm>
#include <array>
#include <unordered_set>

#include "importers/byte_search.h"
#include "schema/embedded.h"

namespace rangebook {
namespace {

constexpr auto kRoles = std::to_array<std::string_view>(
    {"price_token",  "old_token",   "weak_old_token", "sale_token",   "saving_token",
     "unit_token",   "noise_token", "size_token",     "colour_token", "sold_token",
     "guide_token",  "crumb_token", "describe_token", "cents_token",  "title_token",
     "logo_token",   "sold_out",    "nearly_out",     "in_stock",     "buy",
     "related",      "choose",      "size_label",     "colour_label", "composition_label",
     "was",          "now",         "saving",         "from",         "other_amount",
     "behind_other", "other_stem",  "bundle",         "weak_was",     "approximately",
     "there_cell",   "gone_cell",   "stock_data"});

struct Words {
  std::unordered_set<std::string_view> set;
  std::vector<std::string_view> list;
};

const Words& words_of(PageWord role) {
  static const auto tables = [] {
    std::array<Words, kRoles.size()> all;
    for (const auto& row : table_rows("tables/page_words.tsv")) {
      const auto at = std::find(kRoles.begin(), kRoles.end(), row.at(0));
      if (at == kRoles.end()) continue;
      Words& words = all[static_cast<std::size_t>(at - kRoles.begin())];
      words.set.insert(row.at(1));
      words.list.push_back(row.at(1));
    }
    return all;
  }();
  return tables[static_cast<std::size_t>(role)];
}

bool is_letter_byte(char c) { return is_ascii_letter(c) || static_cast<unsigned char>(c) >= 0x80; }

// Chinese and Japanese are written without spaces.
bool is_without_spaces(std::string_view word) {
  const auto first = static_cast<unsigned char>(word.front());
  return first >= 0xE3 && first <= 0xE9;
}

bool stands_free(std::string_view text, std::size_t at, std::size_t size) {
  if (is_without_spaces(text.substr(at))) return true;
  const bool before = at == 0 || !is_letter_byte(text[at - 1]);
  return before && (at + size == text.size() || !is_letter_byte(text[at + size]));
}

}  // namespace

std::string folded_text(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const auto next = i + 1 < text.size() ? static_cast<unsigned char>(text[i + 1]) : 0U;
    const bool no_break = byte == 0xC2 && next == 0xA0;
    if (byte <= ' ' || no_break) {
      if (!out.empty() && out.back() != ' ') out += ' ';
      i += no_break ? 1 : 0;
    } else if (byte == 0xC3 && next >= 0x80 && next <= 0x9E && next != 0x97) {
      out += text[i++];
      out += static_cast<char>(next + 0x20);
    } else {
      out += ascii_lower(text[i]);
    }
  }
  if (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::vector<std::string> name_tokens(std::string_view value) {
  std::vector<std::string> tokens;
  std::string token;
  const auto end_token = [&] {
    if (!token.empty()) tokens.push_back(std::move(token));
    token.clear();
  };
  char before = ' ';
  for (const char c : value) {
    const bool upper = c >= 'A' && c <= 'Z';
    if (!is_letter_byte(c) || (upper && before >= 'a' && before <= 'z')) end_token();
    if (is_letter_byte(c)) token += ascii_lower(c);
    before = c;
  }
  end_token();
  return tokens;
}

bool is_word(std::string_view folded, PageWord role) { return words_of(role).set.contains(folded); }

bool has_phrase(std::string_view folded, PageWord role) {
  return std::any_of(
      words_of(role).list.begin(), words_of(role).list.end(), [&](std::string_view phrase) {
        for (auto at = folded.find(phrase); at != folded.npos; at = folded.find(phrase, at + 1)) {
          if (stands_free(folded, at, phrase.size())) return true;
        }
        return false;
      });
}

bool says_sold_out(std::string_view folded) {
  return has_phrase(folded, PageWord::sold_out) && !has_phrase(folded, PageWord::nearly_out);
}

bool starts_with_phrase(std::string_view folded, PageWord role) {
  return std::any_of(words_of(role).list.begin(), words_of(role).list.end(),
                     [&](std::string_view phrase) {
                       return folded.starts_with(phrase) && stands_free(folded, 0, phrase.size());
                     });
}

bool ends_with_phrase(std::string_view folded, PageWord role) {
  return std::any_of(words_of(role).list.begin(), words_of(role).list.end(),
                     [&](std::string_view phrase) {
                       return folded.ends_with(phrase) &&
                              stands_free(folded, folded.size() - phrase.size(), phrase.size());
                     });
}

bool has_stem(std::string_view folded, PageWord role) {
  return std::any_of(words_of(role).list.begin(), words_of(role).list.end(),
                     [&](std::string_view stem) {
                       const auto at = folded.find(stem);
                       return at != folded.npos && (at == 0 || !is_letter_byte(folded[at - 1]));
                     });
}

}  // namespace rangebook
