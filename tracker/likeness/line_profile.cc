// Profiles of lines, field by field.
#include "tracker/likeness/line_profile.h"

#include <algorithm>

#include "tracker/category_parser.h"
#include "tracker/composition_parser.h"
#include "tracker/line_prices.h"

namespace rangebook {
namespace {

void sort_once(std::vector<WordKey>& keys) {
  std::sort(keys.begin(), keys.end());
  keys.erase(std::unique(keys.begin(), keys.end()), keys.end());
}

WordKey key_of_all(const std::vector<std::string>& words) {
  WordKey key = 0;
  for (const std::string& word : words) key = joined_key(key, word_key(word));
  return key;
}

bool is_in_name(const LineProfile& profile, WordKey key) {
  return std::any_of(profile.name.begin(), profile.name.end(),
                     [key](const NameWord& word) { return word.key == key; });
}

void sort_once(std::vector<TextWord>& words) {
  std::stable_sort(words.begin(), words.end(),
                   [](const TextWord& a, const TextWord& b) { return a.key < b.key; });
  const auto same = [](const TextWord& a, const TextWord& b) { return a.key == b.key; };
  words.erase(std::unique(words.begin(), words.end(), same), words.end());
}

void read_description(const std::string& text, LineProfile& profile) {
  WordKey before = 0;
  for (const std::string& word : likeness_words(text)) {
    const WordKey key = word_key(word);
    const bool in_name = is_in_name(profile, key);
    profile.description.push_back({key, before, in_name});
    profile.description_key = joined_key(profile.description_key, key);
    if (in_name) continue;
    if (before != 0) profile.phrases.push_back(joined_key(before, key));
    before = key;
  }
  sort_once(profile.description);
  sort_once(profile.phrases);
}

void add_pieces(std::string_view code, std::vector<WordKey>& keys) {
  for (const std::string& piece : code_pieces(code)) keys.push_back(word_key(piece));
}

void read_codes(const LineCard& card, LineProfile& profile) {
  add_pieces(card.line_code, profile.codes);
  add_pieces(card.group_id, profile.codes);
  add_pieces(file_stem(card.url), profile.codes);
  sort_once(profile.codes);
}

void read_picture(const std::string& image, LineProfile& profile) {
  const auto words = likeness_words(file_stem(image));
  profile.picture_key = key_of_all(words);
  for (const std::string& word : words) profile.picture.push_back(word_key(word));
  sort_once(profile.picture);
}

Fabric fabric_of(const Composition& composition) {
  Fabric fabric;
  fabric.text = to_string(composition);
  fabric.key = word_key(fabric.text);
  for (const FibreShare& share : composition.parts.front().fibres) {
    fabric.fibres.emplace_back(word_key(share.fibre), share.hundredths);
  }
  std::sort(fabric.fibres.begin(), fabric.fibres.end());
  return fabric;
}

}  // namespace

void ProfileBuilder::read_name(const std::string& name, LineProfile& profile) {
  const auto words = likeness_words(name);
  profile.name_key = key_of_all(words);
  for (const std::string& word : words)
    profile.name.push_back({word_key(word), word, garment(word)});
  const auto by_key = [](const NameWord& a, const NameWord& b) { return a.key < b.key; };
  const auto same = [](const NameWord& a, const NameWord& b) { return a.key == b.key; };
  std::sort(profile.name.begin(), profile.name.end(), by_key);
  profile.name.erase(std::unique(profile.name.begin(), profile.name.end(), same),
                     profile.name.end());
}

std::string_view ProfileBuilder::garment(const std::string& word) {
  const auto [found, added] = garments_.try_emplace(word);
  if (!added) return found->second;
  const std::string_view category = find_category("", word);
  if (category != kUnsorted) found->second = category;
  return found->second;
}

const Fabric* ProfileBuilder::fabric(const std::string& text) {
  const auto [found, added] = fabrics_.try_emplace(text);
  if (added) {
    const auto read = parse_composition(text);
    if (read && !read->parts.empty()) found->second = fabric_of(*read);
  }
  return found->second ? &*found->second : nullptr;
}

std::optional<SizeSpan> ProfileBuilder::size_span(const std::vector<std::string>& labels) {
  const SizeRun& run = interpreter_.size_run(labels);
  const SizeGroup* most = nullptr;
  for (const SizeGroup& group : run.groups) {
    if (most == nullptr || group.end - group.begin > most->end - most->begin) most = &group;
  }
  if (most == nullptr) return std::nullopt;
  return SizeSpan{most->system, most->fit, run.slots[most->smallest].low,
                  run.slots[most->largest].high};
}

LineProfile ProfileBuilder::build(const Listing& listing, const LineDetail& detail) {
  LineProfile profile;
  profile.category = interpreter_.category(listing.card);
  read_name(listing.card.name, profile);
  read_description(detail.description, profile);
  read_codes(listing.card, profile);
  read_picture(detail.image, profile);
  profile.fabric = fabric(listing.card.composition);
  for (const std::string& colour : listing.offers.colours) {
    if (!colour.empty()) profile.colours.push_back(word_key(interpreter_.colour_key(colour)));
  }
  sort_once(profile.colours);
  profile.sizes = size_span(listing.offers.sizes);
  profile.price = lowest_undiscounted(listing.offers);
  profile.currency = listing.offers.currency;
  return profile;
}

}  // namespace rangebook
