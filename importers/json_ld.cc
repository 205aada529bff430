// Properties, types and references of JSON-LD.
#include "importers/json_ld.h"

#include <algorithm>
#include <array>

#include "importers/html_tag.h"

namespace rangebook {
namespace {

constexpr auto kPrefixes = std::to_array<std::string_view>(
    {"https://schema.org/", "http://schema.org/", "schema:", "https://www.schema.org/",
     "http://www.schema.org/", "sdo:"});

// So many descriptions of one thing are looked through; a list of thousands of variants under one
// careless @id must not cost their square.
constexpr std::size_t kMaxPlaces = 8;

// `type` and `id` are other names of the keywords in schema.org's own context.
bool is_type_key(std::string_view key) { return key == "@type" || key == "type"; }
bool is_id_key(std::string_view key) { return key == "@id" || key == "id"; }

// "en" and "en-GB" are the same for choosing a text.
bool same_language(std::string_view a, std::string_view b) {
  return equals_ignoring_case(a.substr(0, a.find('-')), b.substr(0, b.find('-')));
}

}  // namespace

std::string_view schema_org_name(std::string_view name) {
  for (const auto prefix : kPrefixes) {
    if (name.starts_with(prefix)) return name.substr(prefix.size());
  }
  return name;
}

LinkedData::LinkedData(const JsonTree& tree) : tree_(tree) {
  for (JsonId thing = 1; thing < tree_.size(); ++thing) {
    if (!is_object(thing)) continue;
    const auto name = id(thing);
    if (!name.empty()) by_id_[name].push_back(thing);
  }
  for (auto& [name, things] : by_id_) {
    std::stable_sort(things.begin(), things.end(),
                     [&](JsonId a, JsonId b) { return facts(a) > facts(b); });
  }
}

std::size_t LinkedData::facts(JsonId thing) const {
  std::size_t count = 0;
  for (JsonId child = tree_[thing].first_child; child != 0; child = tree_[child].next) ++count;
  return count;
}

std::string_view LinkedData::id(JsonId thing) const {
  if (!is_object(thing)) return {};
  for (JsonId child = tree_[thing].first_child; child != 0; child = tree_[child].next) {
    const JsonNode& node = tree_[child];
    if (is_id_key(node.key) && node.kind == JsonKind::text) return node.text;
  }
  return {};
}

JsonId LinkedData::own(JsonId thing, std::string_view property) const {
  if (!is_object(thing)) return 0;
  for (JsonId child = tree_[thing].first_child; child != 0; child = tree_[child].next) {
    if (schema_org_name(tree_[child].key) == property) return child;
  }
  return 0;
}

bool LinkedData::is_reference(JsonId thing) const {
  if (tree_[thing].kind == JsonKind::text) return true;
  if (!is_object(thing)) return false;
  for (JsonId child = tree_[thing].first_child; child != 0; child = tree_[child].next) {
    const auto key = tree_[child].key;
    const bool says_where = is_id_key(key) || is_type_key(key) || schema_org_name(key) == "url";
    if (!key.starts_with('@') && !says_where) return false;
  }
  return true;
}

JsonId LinkedData::resolve(JsonId value) const {
  if (!is_reference(value)) return value;
  const JsonNode& node = tree_[value];
  const auto name = node.kind == JsonKind::text ? node.text : id(value);
  if (name.empty()) return value;
  const auto found = by_id_.find(name);
  return found == by_id_.end() ? value : found->second.front();
}

// Arrays in arrays are walked with a list of what is left, in order.
void LinkedData::spread(JsonId value, std::vector<JsonId>& out) const {
  if (tree_[value].kind != JsonKind::array) {
    out.push_back(is_object(value) ? resolve(value) : value);
    return;
  }
  std::vector<JsonId> left{tree_[value].first_child};
  while (!left.empty()) {
    const JsonId at = left.back();
    left.pop_back();
    if (at == 0) continue;
    left.push_back(tree_[at].next);
    if (tree_[at].kind == JsonKind::array) {
      left.push_back(tree_[at].first_child);
    } else {
      out.push_back(is_object(at) ? resolve(at) : at);
    }
  }
}

std::vector<JsonId> LinkedData::values(JsonId thing, std::string_view property) const {
  std::vector<JsonId> out;
  if (!is_object(thing)) return out;
  const auto take = [&](JsonId place) {
    for (JsonId child = tree_[place].first_child; child != 0; child = tree_[child].next) {
      if (schema_org_name(tree_[child].key) == property) spread(child, out);
    }
  };
  take(thing);
  if (!out.empty()) return out;
  const auto found = by_id_.find(id(thing));
  if (found == by_id_.end()) return out;
  const auto& places = found->second;
  for (std::size_t i = 0; out.empty() && i < std::min(places.size(), kMaxPlaces); ++i) {
    if (share_type(thing, places[i])) take(places[i]);
  }
  return out;
}

// Pages reuse an @id for the page and for the product on it; those are two things.
bool LinkedData::share_type(JsonId a, JsonId b) const {
  const auto of_a = types(a);
  const auto of_b = types(b);
  return std::any_of(of_a.begin(), of_a.end(), [&](std::string_view type) {
    return std::find(of_b.begin(), of_b.end(), type) != of_b.end();
  });
}

JsonId LinkedData::first(JsonId thing, std::string_view property) const {
  const auto all = values(thing, property);
  return all.empty() ? 0 : all.front();
}

std::string_view LinkedData::text(JsonId value) const {
  const JsonNode& node = tree_[value];
  if (node.kind != JsonKind::object) return node.text;
  for (const std::string_view key : {"@value", "name"}) {
    const JsonId inner = own(value, key);
    if (inner != 0 && tree_[inner].kind != JsonKind::object) return tree_[inner].text;
    if (inner != 0) {
      const JsonId words = own(inner, "@value");
      if (words != 0) return tree_[words].text;
    }
  }
  return {};
}

std::string_view LinkedData::text(JsonId thing, std::string_view property) const {
  std::string_view best;
  for (const JsonId value : values(thing, property)) {
    const auto words = text(value);
    if (words.empty()) continue;
    const JsonId language = own(value, "@language");
    const bool wanted = language != 0 && same_language(tree_[language].text, language_);
    if (wanted) return words;
    if (best.empty()) best = words;
  }
  return best;
}

std::vector<std::string_view> LinkedData::types(JsonId thing) const {
  std::vector<std::string_view> out;
  if (!is_object(thing)) return out;
  for (JsonId child = tree_[thing].first_child; child != 0; child = tree_[child].next) {
    const JsonNode& node = tree_[child];
    if (!is_type_key(node.key)) continue;
    if (node.kind == JsonKind::text) out.push_back(schema_org_name(node.text));
    if (node.kind != JsonKind::array) continue;
    for (JsonId entry = node.first_child; entry != 0; entry = tree_[entry].next) {
      out.push_back(schema_org_name(tree_[entry].text));
    }
  }
  return out;
}

bool LinkedData::is_a(JsonId thing, std::string_view type) const {
  const auto all = types(thing);
  return std::any_of(all.begin(), all.end(),
                     [&](std::string_view entry) { return equals_ignoring_case(entry, type); });
}

}  // namespace rangebook
