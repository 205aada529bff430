// JSON-LD as pages use it: typed things with properties, in one or several blocks, that refer to
// each other by @id. This is the part of JSON-LD that schema.org markup needs; contexts are not
// fetched or expanded beyond the prefixes of schema.org.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "importers/json_tree.h"

namespace rangebook {

/// A schema.org name without its prefix: `https://schema.org/Offer`, `schema:Offer` -> `Offer`.
std::string_view schema_org_name(std::string_view name);

/// Reading access to all blocks of a page. The tree must outlive this and not change.
class LinkedData {
 public:
  explicit LinkedData(const JsonTree& tree);

  /// The values of a property, arrays taken apart (also nested ones) and references to other
  /// things of the page followed. A thing described in several places under one @id and type has
  /// the property of the first place that states it.
  std::vector<JsonId> values(JsonId thing, std::string_view property) const;
  /// The first value, or 0.
  JsonId first(JsonId thing, std::string_view property) const;

  /// The thing that a reference (`{"@id": ..}` or the bare id as text) stands for, in its fullest
  /// description; anything else is itself, also a thing whose @id others have too: careless pages
  /// give all their variants the same one.
  JsonId resolve(JsonId value) const;

  /// True for text and for an object that says nothing but what it is, its @id and its address.
  bool is_reference(JsonId thing) const;

  /// The words of a value: a text, number or boolean as written; `@value`, else `name` of an
  /// object. Empty when it has none. A view into the tree.
  std::string_view text(JsonId value) const;
  /// The words of the first value that has some; among texts marked with a language, the one in
  /// `language()`.
  std::string_view text(JsonId thing, std::string_view property) const;

  std::string_view id(JsonId thing) const;
  /// True when one of the types is `type`, in any spelling of its prefix and case.
  bool is_a(JsonId thing, std::string_view type) const;
  /// All type names without prefix, for messages.
  std::vector<std::string_view> types(JsonId thing) const;
  bool is_object(JsonId value) const { return tree_[value].kind == JsonKind::object; }
  const JsonNode& node(JsonId value) const { return tree_[value]; }
  std::size_t size() const { return tree_.size(); }

  /// The language of the page, such as `en-GB`; empty if not known.
  void set_language(std::string_view language) { language_ = language; }

 private:
  bool share_type(JsonId a, JsonId b) const;
  JsonId own(JsonId thing, std::string_view property) const;
  void spread(JsonId value, std::vector<JsonId>& out) const;
  std::size_t facts(JsonId thing) const;

  const JsonTree& tree_;
  std::string language_;
  /// Things by their @id, the fullest description first.
  std::unordered_map<std::string_view, std::vector<JsonId>> by_id_;
};

}  // namespace rangebook
