// A line as likeness sees it: its texts as weighted words, its values in comparable form.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "schema/listing.h"
#include "tracker/interpreter.h"
#include "tracker/likeness/likeness_words.h"

namespace rangebook {

struct NameWord {
  WordKey key = 0;
  std::string text;
  std::string_view garment = {};  ///< the category the word alone names; empty for other words
};

/// A word of a description where it stands first.
struct TextWord {
  WordKey key = 0;
  WordKey before = 0;  ///< the word ahead of it that is not of the name; 0 at the beginning
  bool in_name = false;
};

/// Fibres of the main part with their shares in hundredths of a percent, and the whole as a key.
struct Fabric {
  WordKey key = 0;  ///< of the canonical text of all parts
  std::string text;
  std::vector<std::pair<WordKey, std::int32_t>> fibres;  ///< sorted by key
};

/// The reach of the sizes in the system that has most of them.
struct SizeSpan {
  SizeSystem system = SizeSystem::unknown;
  FitRange fit = FitRange::regular;
  std::int32_t low = 0;
  std::int32_t high = 0;

  bool operator==(const SizeSpan&) const = default;
};

/// All key lists are sorted and hold each key once. An empty list or a nothing means: not stated.
struct LineProfile {
  std::string_view category;
  std::vector<NameWord> name;
  WordKey name_key = 0;  ///< of all words of the name in their order
  std::vector<TextWord> description;
  std::vector<WordKey> phrases;  ///< two neighbouring words of the description, without the name's
  WordKey description_key = 0;   ///< of the whole text, its words in their order
  std::vector<WordKey> codes;    ///< pieces of line code, group id and address
  std::vector<WordKey> picture;  ///< words of the picture's file name
  WordKey picture_key = 0;
  const Fabric* fabric = nullptr;
  std::vector<WordKey> colours;
  std::optional<SizeSpan> sizes;
  std::optional<MinorUnits> price;  ///< lowest without markdowns
  std::optional<Currency> currency;
};

/// Makes profiles of one shop's lines. Profiles point into the builder and must not outlive it.
class ProfileBuilder {
 public:
  explicit ProfileBuilder(SizeSystem shop_sizes) : interpreter_(shop_sizes) {}
  ProfileBuilder(const ProfileBuilder&) = delete;
  ProfileBuilder& operator=(const ProfileBuilder&) = delete;

  LineProfile build(const Listing& listing, const LineDetail& detail);

 private:
  void read_name(const std::string& name, LineProfile& profile);
  std::string_view garment(const std::string& word);
  const Fabric* fabric(const std::string& text);
  std::optional<SizeSpan> size_span(const std::vector<std::string>& labels);

  Interpreter interpreter_;
  std::unordered_map<std::string, std::optional<Fabric>> fabrics_;
  std::unordered_map<std::string, std::string_view> garments_;
};

}  // namespace rangebook
