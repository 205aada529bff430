// Names of the kinds of rejection.
#include "schema/rejection.h"

#include "schema/names.h"

namespace rangebook {
namespace {

constexpr NameTable<RejectionKind, 15> kKindNames{{
    {RejectionKind::unreadable_document, "unreadable-document"},
    {RejectionKind::no_name_column, "no-name-column"},
    {RejectionKind::malformed_row, "malformed-row"},
    {RejectionKind::bad_encoding, "bad-encoding"},
    {RejectionKind::missing_name, "missing-name"},
    {RejectionKind::bad_price, "bad-price"},
    {RejectionKind::ambiguous_price, "ambiguous-price"},
    {RejectionKind::bad_currency, "bad-currency"},
    {RejectionKind::bad_size, "bad-size"},
    {RejectionKind::bad_stock, "bad-stock"},
    {RejectionKind::bad_gtin, "bad-gtin"},
    {RejectionKind::bad_composition, "bad-composition"},
    {RejectionKind::conflicting_rows, "conflicting-rows"},
    {RejectionKind::bad_markup, "bad-markup"},
    {RejectionKind::over_limit, "over-limit"},
}};

constexpr NameTable<Refused, 3> kRefusedNames{{
    {Refused::row, "row"},
    {Refused::cell, "cell"},
    {Refused::nothing, "nothing"},
}};

}  // namespace

std::string_view to_string(Refused refused) { return name_of(kRefusedNames, refused); }
std::optional<Refused> parse_refused(std::string_view name) {
  return value_of(kRefusedNames, name);
}
std::string_view to_string(RejectionKind kind) { return name_of(kKindNames, kind); }
std::optional<RejectionKind> parse_rejection_kind(std::string_view name) {
  return value_of(kKindNames, name);
}

}  // namespace rangebook
