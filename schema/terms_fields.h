// Terms field by field: a list of all fields, and each field as a name and a text. Editing,
// storing and comparing terms go through here, so that no part of the program lists the fields
// again.
//
// Names: `delivery.KEY.fee`, where KEY is the option's (`standard`); `return.window`, and
// `return.EU.window` for the policy of one region; `return.post`, `return.post.fee`;
// `return.items.swimwear`; `return.needs.tags-on`.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/terms.h"

namespace rangebook {

/// One kind of field.
struct TermsField {
  std::string name;          ///< `delivery.*.fee`, `return.window`; `*` stands for the option's key
  std::string_view title;    ///< in plain words: `delivery fee`
  std::string_view example;  ///< a text it takes
  std::string_view expects;  ///< what to write, for messages: `an amount with its currency`
};

/// All kinds, in the order in which terms are written.
const std::vector<TermsField>& terms_fields();

/// The kind of a field by its full name (`delivery.express.fee`, `return.EU.window`).
const TermsField* find_terms_field(std::string_view name);

/// True for fields of delivery; all others are of returns.
inline bool is_delivery_field(std::string_view field) { return field.starts_with("delivery."); }

/// A field that has a value.
struct TermsValue {
  std::string field;  ///< full name
  std::string text;   ///< canonical

  bool operator==(const TermsValue&) const = default;
};

/// Everything the terms state: options by key, policies by region, fields in the order of
/// `terms_fields`. Equal terms give equal lists.
std::vector<TermsValue> stated_values(const Terms& terms);

/// The canonical text of one field; nothing where it is not stated.
std::optional<std::string> field_text(const Terms& terms, std::string_view field);

/// What is wrong with a typed field.
struct TermsFault {
  std::size_t line = 0;    ///< of the text form, from 1; 0 where there is none
  std::string what;        ///< one sentence
  std::string how_to_fix;  ///< one sentence

  bool operator==(const TermsFault&) const = default;
};

/// Sets a field by its text; an empty text makes it "not stated". Makes the option or policy when
/// it is the first of its fields, and removes it with the last one. The field's evidence goes: what
/// is typed is its own. `home` is the currency of an amount that names none. On a fault nothing
/// changes.
std::optional<TermsFault> set_field(Terms& terms, std::string_view field, std::string_view text,
                                    std::optional<Currency> home = {});

}  // namespace rangebook
