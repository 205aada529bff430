// The words by which the visible text of a shop page is understood, and text folded for comparing
// with them.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// What a word says. `_token`: in class, id and similar names of elements; the others: in the text.
enum class PageWord : std::uint8_t {
  price_token,
  old_token,
  weak_old_token,  ///< `regular`: former where another price stands beside it
  sale_token,
  saving_token,
  unit_token,  ///< no price of the thing: per unit, by instalments, for members
  noise_token,
  size_token,
  colour_token,
  sold_token,
  guide_token,
  crumb_token,
  describe_token,
  cents_token,
  title_token,
  logo_token,
  sold_out,
  nearly_out,  ///< "almost sold out": can still be had
  in_stock,
  buy,
  related,  ///< headings of what else the shop offers
  choose,
  size_label,
  colour_label,
  composition_label,
  was,
  now,
  saving,
  from,
  other_amount,
  behind_other,  ///< what follows an amount that is no price: `a month`, `off`
  other_stem,    ///< how words before such an amount begin: `Versandkosten`
  bundle,        ///< `2 for 30`
  weak_was,      ///< `regular price`: former where another price stands beside it
  approximately,
  there_cell,  ///< all that a cell says of a size that can be had: `yes`
  gone_cell,
  stock_data,  ///< in the name of a data attribute that says what is in stock
};

/// Lower case for ASCII and the Latin letters of western Europe; white space, also unbreakable, as
/// one space, none at the ends.
std::string folded_text(std::string_view text);

/// The words of an attribute such as class (`price-item--sale`, `priceOld`), lower case.
std::vector<std::string> name_tokens(std::string_view value);

bool is_word(std::string_view folded, PageWord role);
/// True when one of the role's phrases stands in a folded text, not inside another word.
bool has_phrase(std::string_view folded, PageWord role);
/// A word for sold out, and none for nearly so.
bool says_sold_out(std::string_view folded);
bool starts_with_phrase(std::string_view folded, PageWord role);
bool ends_with_phrase(std::string_view folded, PageWord role);
/// True when a word of the text begins with one of the role's stems.
bool has_stem(std::string_view folded, PageWord role);

}  // namespace rangebook
