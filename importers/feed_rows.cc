// A walk over the small tree of a product, variants as a list of work rather than by recursion.
#include "importers/feed_rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "importers/byte_search.h"
#include "importers/cell_split.h"
#include "importers/char_refs.h"
#include "importers/field_map.h"
#include "importers/header_words.h"

namespace rangebook {
namespace {

constexpr std::size_t kMaxUnknownNames = 40;

/// What a part of a product means.
struct PartMeaning {
  std::optional<ColumnMeaning> column;
  bool is(Field field) const {
    return column && column->role == ColumnRole::field && column->field == field;
  }
};

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_html_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_html_space(text.back())) text.remove_suffix(1);
  return text;
}

/// Text of a description without tags, references decoded, blanks as one.
std::string plain_text(std::string_view html) {
  if (html.find('<') == html.npos && html.find('&') == html.npos) return std::string(html);
  std::string text;
  bool in_tag = false;
  for (const char sign : html) {
    if (sign == '<') in_tag = true;
    if (!in_tag) text.push_back(sign);
    if (sign == '>' && in_tag) {
      in_tag = false;
      text.push_back(' ');
    }
  }
  std::string out;
  for (const char sign : decode_text(text)) {
    const bool space = is_html_space(sign);
    if (space && (out.empty() || out.back() == ' ')) continue;
    out.push_back(space ? ' ' : sign);
  }
  return std::string(trimmed(out));
}

const FeedNode* first_part(const FeedNode& node, std::initializer_list<std::string_view> names) {
  for (const auto name : names) {
    if (const FeedNode* part = node.part(name); part != nullptr && part->is_leaf()) return part;
  }
  return nullptr;
}

/// The text of an object in the place of a value: `{"amount": 79.9, "currency": "EUR"}`.
std::string object_text(const FeedNode& node) {
  const FeedNode* value = first_part(
      node, {"amount", "value", "price", "url", "src", "href", "name", "label", "title", "code"});
  std::string text(trimmed(value != nullptr ? value->text : node.text));
  const auto currency = std::find_if(node.parts.begin(), node.parts.end(), [](const auto& part) {
    return part.is_leaf() && field_named(part.name) == Field::currency;
  });
  if (currency != node.parts.end() && !text.empty()) text.append(" ").append(currency->text);
  return text;
}

std::string value_text(const FeedNode& node) {
  return node.is_leaf() ? std::string(trimmed(node.text)) : object_text(node);
}

std::string_view joint_of(Field field) {
  if (field == Field::category) return " > ";
  return field == Field::colour || field == Field::size ? "|" : ", ";
}

/// A second value of the same field: lists go together, of codes, pictures and prices the first
/// stays.
void add_value(std::string& cell, Field field, std::string text) {
  const bool list = field == Field::colour || field == Field::size || field == Field::composition ||
                    field == Field::category;
  if (cell.empty()) {
    cell = std::move(text);
  } else if (list && !text.empty() && cell != text) {
    cell.append(joint_of(field)).append(text);
  }
}

/// `{"name": "Colour", "value": "Navy"}` or `<attribute name="Colour">Navy</attribute>`.
std::optional<std::pair<std::string, std::string>> named_value(const FeedNode& node) {
  const FeedNode* name = first_part(node, {"name", "key", "label", "attribute"});
  const FeedNode* value = first_part(node, {"value", "values", "text"});
  if (name == nullptr || (value == nullptr && trimmed(node.text).empty())) return std::nullopt;
  return std::pair(name->text, std::string(trimmed(value != nullptr ? value->text : node.text)));
}

bool is_variant_field(Field field) {
  return field == Field::size || field == Field::colour || field == Field::price ||
         field == Field::full_price || field == Field::in_stock || field == Field::gtin ||
         field == Field::variant_code || field == Field::line_code;
}

/// Whether an object is one variant among its like: it names what variants differ in.
bool looks_like_variant(const FeedNode& node, bool in_list_of_sizes) {
  if (node.is_leaf()) return false;
  for (const auto& part : node.parts) {
    const auto meaning = column_meaning(part.name);
    if (meaning && is_variant_field(meaning->field)) return true;
    if (part.name.starts_with("option")) return true;
  }
  return in_list_of_sizes;
}

/// A node whose variants are still to be turned into rows.
struct Work {
  const FeedNode* node = nullptr;
  std::string path;                  ///< of its parts: empty, or `variants.`
  FeedRow row;                       ///< what holds for all of them
  std::optional<Field> group;        ///< the list it stands in is one of colours or sizes
  std::vector<std::string> options;  ///< names of `option1`, `option2`, ..
  bool is_variant = false;
};

/// A part that is a variant, the way to its parts, and the list it stands in, if of one field.
struct Variant {
  const FeedNode* node = nullptr;
  std::string path;
  std::optional<Field> group;
};

class ItemReader {
 public:
  explicit ItemReader(FeedNames& names) : names_(names) {}

  std::vector<FeedRow> read(const FeedNode& item) {
    todo_.push_back({.node = &item, .path = {}, .row = {}, .group = {}, .options = {}});
    while (!todo_.empty() && rows_.size() < kMaxRowsPerItem) {
      Work work = std::move(todo_.back());
      todo_.pop_back();
      take(std::move(work));
    }
    return std::move(rows_);
  }

 private:
  void take(Work work) {
    sale_.clear();
    FeedRow own;
    std::vector<Variant> variants;
    for (const auto& part : work.node->parts) {
      if (const FeedNode* name = option_name(part)) work.options.push_back(name->text);
    }
    for (const auto& part : work.node->parts) {
      if (option_name(part) == nullptr) take_part(part, work, own, variants);
    }
    take_ways(work, own);
    if (work.group) name_group(*work.node, *work.group, own);
    if (work.is_variant) settle_variant(own);
    settle_price(own);
    for (std::size_t i = 0; i < kFieldCount; ++i) {
      if (!own.cells[i].empty()) work.row.cells[i] = std::move(own.cells[i]);
    }
    if (variants.empty()) {
      rows_.push_back(std::move(work.row));
      return;
    }
    // Last first, since the list of work is a stack.
    for (std::size_t i = variants.size(); i-- > 0;) {
      todo_.push_back({.node = variants[i].node,
                       .path = variants[i].path,
                       .row = work.row,
                       .group = variants[i].group,
                       .options = work.options,
                       .is_variant = true});
    }
  }

  /// The name in `"options": [{"name": "Size"}, ..]`, which says what `option1` of a variant is.
  static const FeedNode* option_name(const FeedNode& part) {
    return part.name == "options" ? part.part("name") : nullptr;
  }

  /// What is said of a name, else what it means; the latter only where nothing else is said to be
  /// that.
  std::optional<ColumnMeaning> meant(const std::string& path, const std::string& name,
                                     std::optional<ColumnMeaning> by_name) {
    if (names_.choices.empty()) return by_name;
    if (const ColumnChoice* choice = names_.choices.find(path, name)) {
      names_.found.insert(choice->column);
      return rangebook::meaning_of(*choice);
    }
    if (!by_name || !names_.choices.takes(by_name->field)) return by_name;
    return std::nullopt;
  }
  bool is_chosen(const std::string& path, const std::string& name) const {
    return names_.choices.find(path, name) != nullptr;
  }

  void take_part(const FeedNode& part, const Work& work, FeedRow& own,
                 std::vector<Variant>& variants) {
    const std::string path = work.path + part.name;
    const auto meaning = meant(path, part.name, meaning_of(part, work));
    if (!meaning && is_chosen(path, part.name))
      return names_.note(path, part.name, value_text(part), {});
    const bool list_of_sizes = meaning &&
                               (meaning->field == Field::size || meaning->field == Field::colour) &&
                               meaning->role == ColumnRole::field;
    if (looks_like_variant(part, list_of_sizes) && !is_value_object(part, meaning)) {
      variants.push_back(
          {&part, path + ".", list_of_sizes ? std::optional(meaning->field) : std::nullopt});
    } else if (meaning) {
      take_value(*meaning, path, part.name, value_text(part), own);
    } else if (!part.is_leaf()) {
      take_wrapper(part, path + ".", own, variants);
    } else if (!part.text.empty()) {
      if (names_.unknown.size() < kMaxUnknownNames) names_.unknown.insert(part.name);
      names_.note(path, part.name, part.text, {});
    }
  }

  /// What is said of a way of several names: it is gone where the names lead through objects that
  /// mean nothing themselves.
  void take_ways(const Work& work, FeedRow& own) {
    for (const auto& choice : names_.choices.ways()) {
      const auto meaning = rangebook::meaning_of(choice);
      const auto names = names_of_way(choice.column);
      if (!meaning || work.is_variant || names.size() < 3) continue;
      for (const FeedNode* node : nodes_at(*work.node, names)) {
        names_.found.insert(choice.column);
        take_value(*meaning, choice.column, names.back(), value_text(*node), own);
      }
    }
  }
  static std::vector<const FeedNode*> nodes_at(const FeedNode& root,
                                               const std::vector<std::string>& names) {
    std::vector<const FeedNode*> at{&root};
    for (const auto& name : names) {
      std::vector<const FeedNode*> next;
      for (const FeedNode* node : at) {
        for (const auto& part : node->parts) {
          const bool same = folded_header(part.name) == folded_header(name);
          if (same && next.size() < kMaxRowsPerItem) next.push_back(&part);
        }
      }
      at = std::move(next);
    }
    return at;
  }

  std::optional<ColumnMeaning> meaning_of(const FeedNode& part, const Work& work) const {
    constexpr std::string_view kOption = "option";
    const std::string_view name = part.name;
    if (name.size() == kOption.size() + 1 && name.starts_with(kOption)) {
      const auto index = static_cast<std::size_t>(name.back() - '1');
      if (index < work.options.size()) return column_meaning(work.options[index]);
    }
    return column_meaning(name);
  }

  /// A price with its currency, a picture with its address: an object in the place of a value.
  static bool is_value_object(const FeedNode& part, const std::optional<ColumnMeaning>& meaning) {
    if (!meaning || meaning->field == Field::size || meaning->field == Field::colour) return false;
    return meaning->role != ColumnRole::colour_size && !object_text(part).empty();
  }

  /// An object that means nothing itself: a list of variants, of named values, or a mere wrapper.
  void take_wrapper(const FeedNode& part, const std::string& path, FeedRow& own,
                    std::vector<Variant>& variants) {
    if (const auto named = named_value(part)) {
      take_named(path, *named, own);
      return;
    }
    for (const auto& inner : part.parts) {
      const std::string inner_path = path + inner.name;
      const auto meaning = meant(inner_path, inner.name, column_meaning(inner.name));
      const auto named = named_value(inner);
      if (named && take_named(path, *named, own)) continue;
      if (looks_like_variant(inner, false) && !is_value_object(inner, meaning)) {
        variants.push_back({&inner, inner_path + ".", std::nullopt});
      } else if (meaning && (inner.is_leaf() || is_chosen(inner_path, inner.name))) {
        take_value(*meaning, inner_path, inner.name, value_text(inner), own);
      } else if (inner.is_leaf() && !inner.text.empty()) {
        names_.note(inner_path, inner.name, inner.text, {});
      }
    }
  }

  bool take_named(const std::string& path, const std::pair<std::string, std::string>& named,
                  FeedRow& own) {
    const std::string own_path = path + named.first;
    const auto meaning = meant(own_path, named.first, column_meaning(named.first));
    if (meaning) {
      take_value(*meaning, own_path, named.first, named.second, own);
    } else {
      names_.note(own_path, named.first, named.second, {});
    }
    return meaning.has_value();
  }

  static std::vector<FieldText> fields_in(const ColumnMeaning& meaning, const std::string& text) {
    if (meaning.role != ColumnRole::colour_size) return {{meaning.field, text}};
    const auto parts = split_colour_size(text);
    return {{Field::colour, std::string(parts.colour)}, {Field::size, std::string(parts.size)}};
  }

  void take_value(const ColumnMeaning& meaning, const std::string& path, const std::string& name,
                  std::string text, FeedRow& own) {
    if (text.empty()) return;
    names_.read[meaning.field].insert(name);
    if (names_.keep_columns) names_.note(path, name, text, fields_in(meaning, text));
    if (meaning.role == ColumnRole::sale_price) {
      if (sale_.empty()) sale_ = std::move(text);
    } else if (meaning.role == ColumnRole::colour_size) {
      const auto parts = split_colour_size(text);
      add_value(own[Field::colour], Field::colour, std::string(parts.colour));
      add_value(own[Field::size], Field::size, std::string(parts.size));
    } else {
      if (meaning.field == Field::description) text = plain_text(text);
      add_value(own[meaning.field], meaning.field, std::move(text));
    }
  }

  /// `{"name": "navy"}` in a list of colours names the colour, not the line.
  static void name_group(const FeedNode& node, Field group, FeedRow& own) {
    if (!own[group].empty()) return;
    const FeedNode* name = first_part(node, {"name", "label", "value", "title", "code"});
    own[group] = name != nullptr ? std::string(trimmed(name->text)) : object_text(node);
    own[Field::name].clear();
    if (name != nullptr && own[Field::line_code] == trimmed(name->text))
      own[Field::line_code].clear();
  }

  /// A variant's code is its own; its title says what it differs in.
  static void settle_variant(FeedRow& own) {
    if (own[Field::variant_code].empty()) own[Field::variant_code] = own[Field::line_code];
    own[Field::line_code].clear();
    if (own[Field::colour].empty() && own[Field::size].empty() && !own[Field::name].empty()) {
      const auto parts = split_colour_size(own[Field::name]);
      if (!parts.size.empty()) {
        own[Field::colour] = parts.colour;
        own[Field::size] = parts.size;
      }
    }
    own[Field::name].clear();
  }

  void settle_price(FeedRow& own) {
    if (sale_.empty()) return;
    if (own[Field::full_price].empty()) own[Field::full_price] = own[Field::price];
    own[Field::price] = std::move(sale_);
  }

  FeedNames& names_;
  std::vector<Work> todo_;
  std::vector<FeedRow> rows_;
  std::string sale_;
};

}  // namespace

const FeedNode* FeedNode::part(std::string_view folded_name) const {
  const auto found = std::find_if(parts.begin(), parts.end(), [&](const FeedNode& one) {
    return folded_header(one.name) == folded_name;
  });
  return found == parts.end() ? nullptr : &*found;
}

std::vector<FeedRow> feed_rows(const FeedNode& item, FeedNames& names) {
  auto rows = ItemReader(names).read(item);
  if (!names.keep_examples || rows.empty()) return rows;
  for (auto& column : names.columns) {
    for (auto& example : column.examples) {
      if (example.currency.empty()) example.currency = rows.front()[Field::currency];
    }
  }
  return rows;
}

std::optional<std::size_t> product_fields(const std::set<std::string>& part_names,
                                          const FeedChoices& choices) {
  std::set<Field> fields = choices.fields_of(part_names);
  for (const auto& name : part_names) {
    const auto meaning = column_meaning(name);
    if (!meaning || meaning->role == ColumnRole::colour_size) continue;
    fields.insert(meaning->field);
  }
  const bool article = std::any_of(fields.begin(), fields.end(), [](Field field) {
    return field != Field::name && field != Field::currency && field != Field::category &&
           field != Field::description;
  });
  if (!article || !fields.contains(Field::name)) return std::nullopt;
  return fields.size();
}

}  // namespace rangebook
