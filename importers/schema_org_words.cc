// Turning property values into cells.
#include "importers/schema_org_words.h"

#include <algorithm>
#include <array>
#include <span>
#include <unordered_set>
#include <utility>
#include <vector>

#include "importers/char_refs.h"
#include "importers/html_tag.h"

namespace rangebook {
namespace {

using NamePair = std::pair<std::string_view, std::string_view>;

// SizeSystemEnumeration and WearableSizeSystemEnumeration of schema.org, as size labels write them.
// Systems without a customary mark (EN 13402, metric, continental) get none.
constexpr auto kSystems = std::to_array<NamePair>({{"WearableSizeSystemAU", "AU"},
                                                   {"WearableSizeSystemBR", "BR"},
                                                   {"WearableSizeSystemCN", "CN"},
                                                   {"WearableSizeSystemDE", "DE"},
                                                   {"WearableSizeSystemEurope", "EU"},
                                                   {"WearableSizeSystemFR", "FR"},
                                                   {"WearableSizeSystemIT", "IT"},
                                                   {"WearableSizeSystemJP", "JP"},
                                                   {"WearableSizeSystemMX", "MX"},
                                                   {"WearableSizeSystemUK", "UK"},
                                                   {"WearableSizeSystemUS", "US"}});

// WearableSizeGroupEnumeration: those that change the fit of a label.
constexpr auto kGroups = std::to_array<NamePair>({{"WearableSizeGroupPetite", "Petite"},
                                                  {"WearableSizeGroupTall", "Tall"},
                                                  {"WearableSizeGroupExtraTall", "Extra Tall"},
                                                  {"WearableSizeGroupPlus", "Plus"},
                                                  {"WearableSizeGroupBig", "Big"},
                                                  {"WearableSizeGroupShort", "Short"},
                                                  {"WearableSizeGroupExtraShort", "Extra Short"},
                                                  {"WearableSizeGroupMaternity", "Maternity"}});

// The mark of an enumeration member, or the plain text itself where `bare` (a shop may write
// "UK" or "petite" instead of the member).
std::string_view mark_of(std::span<const NamePair> table, std::string_view name) {
  name = schema_org_name(name);
  for (const auto& [member, mark] : table) {
    if (name == member || equals_ignoring_case(mark, clean_text(name))) return mark;
  }
  return {};
}

bool contains_word(std::string_view text, std::string_view word) {
  const auto same = [](char a, char b) { return ascii_lower(a) == ascii_lower(b); };
  const auto at = std::search(text.begin(), text.end(), word.begin(), word.end(), same);
  return at != text.end();
}

std::string_view identifier_text(const LinkedData& data, JsonId value) {
  const auto words = data.text(value);
  return words.empty() ? data.id(value) : words;
}

std::string_view size_system(const LinkedData& data, JsonId size) {
  const JsonId system = data.first(size, "sizeSystem");
  return system == 0 ? std::string_view{} : mark_of(kSystems, identifier_text(data, system));
}

bool is_bare_number(std::string_view label) {
  return !label.empty() && is_ascii_digit(label.front()) &&
         std::none_of(label.begin(), label.end(), is_ascii_letter);
}

// "12" in the UK system is "UK 12"; "3XL", or a label that names its system, stays.
std::string size_label(const LinkedData& data, JsonId size) {
  std::string label = clean_text(data.text(size));
  if (!data.is_object(size) || label.empty()) return label;
  const auto system = size_system(data, size);
  if (!system.empty() && is_bare_number(label)) label = std::string(system) + " " + label;
  for (const JsonId group : data.values(size, "sizeGroup")) {
    const auto mark = mark_of(kGroups, identifier_text(data, group));
    if (!mark.empty() && !contains_word(label, mark)) label += " " + std::string(mark);
  }
  return label;
}

// Texts in order, each once.
class Words {
 public:
  void add(std::string word) {
    if (!word.empty() && known_.insert(word).second) words_.push_back(std::move(word));
  }
  bool empty() const { return words_.empty(); }
  std::string joined(std::string_view separator) const {
    std::string out;
    for (const auto& word : words_) {
      if (!out.empty()) out += separator;
      out += word;
    }
    return out;
  }

 private:
  std::vector<std::string> words_;
  std::unordered_set<std::string> known_;
};

Words words_of(const LinkedData& data, JsonId thing, std::string_view property) {
  Words words;
  for (const JsonId value : data.values(thing, property)) words.add(clean_text(data.text(value)));
  return words;
}

bool is_space_or_control(char c) { return static_cast<unsigned char>(c) <= ' ' || c == 0x7F; }

}  // namespace

std::string clean_text(std::string_view text) {
  const bool refers = text.find('&') != text.npos;
  const std::string decoded = refers ? decode_text(text) : std::string(text);
  std::string out;
  out.reserve(decoded.size());
  for (const char c : decoded) {
    const bool space = is_space_or_control(c);
    if (!space) out += c;
    if (space && !out.empty() && out.back() != ' ') out += ' ';
  }
  if (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::string word_cell(const LinkedData& data, JsonId thing, std::string_view property) {
  return clean_text(data.text(thing, property));
}

std::string size_cell(const LinkedData& data, JsonId thing, bool whole_line) {
  Words labels;
  std::string_view first_system;
  for (const JsonId size : data.values(thing, "size")) {
    const auto system = size_system(data, size);
    if (labels.empty()) first_system = system;
    if (system == first_system) labels.add(size_label(data, size));
    if (!whole_line && !labels.empty()) break;
  }
  return labels.joined("|");
}

std::string colour_cell(const LinkedData& data, JsonId thing, bool whole_line) {
  return words_of(data, thing, "color").joined(whole_line ? "|" : " / ");
}

std::string composition_cell(const LinkedData& data, JsonId thing) {
  std::string cell = words_of(data, thing, "material").joined(", ");
  if (cell.empty()) cell = additional_cell(data, thing, "composition", "material");
  return cell;
}

std::string category_cell(const LinkedData& data, JsonId thing) {
  for (const JsonId value : data.values(thing, "category")) {
    std::string words = clean_text(data.text(value));
    if (words.empty()) words = word_cell(data, value, "codeValue");
    if (!words.empty()) return words;
  }
  return {};
}

std::string_view image_address(const LinkedData& data, JsonId thing) {
  for (const JsonId image : data.values(thing, "image")) {
    if (!data.is_object(image) && !data.text(image).empty()) return data.text(image);
    for (const std::string_view property : {"contentUrl", "url"}) {
      const auto address = data.text(image, property);
      if (!address.empty()) return address;
    }
    if (!data.id(image).empty()) return data.id(image);
  }
  return {};
}

std::string additional_cell(const LinkedData& data, JsonId thing, std::string_view name,
                            std::string_view other_name) {
  for (const JsonId property : data.values(thing, "additionalProperty")) {
    const std::string found = word_cell(data, property, "name");
    if (!equals_ignoring_case(found, name) && !equals_ignoring_case(found, other_name)) continue;
    std::string value = word_cell(data, property, "value");
    if (!value.empty()) return value;
  }
  return {};
}

}  // namespace rangebook
