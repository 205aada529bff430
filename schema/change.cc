// Names of the kinds of change, as the JSON contract spells them.
#include "schema/change.h"

#include "schema/names.h"

namespace rangebook {
namespace {

constexpr NameTable<ChangeKind, kChangeKindCount> kKindNames{{
    {ChangeKind::line_new, "line-new"},
    {ChangeKind::line_dropped, "line-dropped"},
    {ChangeKind::line_returned, "line-returned"},
    {ChangeKind::line_renamed, "line-renamed"},
    {ChangeKind::line_recoded, "line-recoded"},
    {ChangeKind::line_not_covered, "line-not-covered"},
    {ChangeKind::colour_added, "colour-added"},
    {ChangeKind::colour_dropped, "colour-dropped"},
    {ChangeKind::sizes_widened, "sizes-widened"},
    {ChangeKind::sizes_narrowed, "sizes-narrowed"},
    {ChangeKind::size_gap_filled, "size-gap-filled"},
    {ChangeKind::size_gap_opened, "size-gap-opened"},
    {ChangeKind::fit_range_added, "fit-range-added"},
    {ChangeKind::fit_range_dropped, "fit-range-dropped"},
    {ChangeKind::price_up, "price-up"},
    {ChangeKind::price_down, "price-down"},
    {ChangeKind::marked_down, "marked-down"},
    {ChangeKind::markdown_changed, "markdown-changed"},
    {ChangeKind::markdown_ended, "markdown-ended"},
    {ChangeKind::composition_changed, "composition-changed"},
    {ChangeKind::category_moved, "category-moved"},
    {ChangeKind::stock_out, "stock-out"},
    {ChangeKind::stock_back, "stock-back"},
    {ChangeKind::terms_changed, "terms-changed"},
    {ChangeKind::reach_widened, "reach-widened"},
    {ChangeKind::reach_narrowed, "reach-narrowed"},
    {ChangeKind::entry_price_changed, "entry-price-changed"},
    {ChangeKind::price_index, "price-index"},
}};

constexpr NameTable<LinkEvidence, 5> kEvidenceNames{{
    {LinkEvidence::line_code, "line-code"},
    {LinkEvidence::gtin, "gtin"},
    {LinkEvidence::group_id, "group-id"},
    {LinkEvidence::address, "address"},
    {LinkEvidence::likeness, "likeness"},
}};

constexpr NameTable<LinkAuthority, 3> kAuthorityNames{{
    {LinkAuthority::code, "code"},
    {LinkAuthority::rule, "rule"},
    {LinkAuthority::stylist, "stylist"},
}};

constexpr NameTable<Relation, 4> kRelationNames{{
    {Relation::split_from, "split-from"},
    {Relation::split_into, "split-into"},
    {Relation::merged_into, "merged-into"},
    {Relation::merged_from, "merged-from"},
}};

}  // namespace

std::string_view to_string(ChangeKind kind) { return name_of(kKindNames, kind); }
std::optional<ChangeKind> parse_change_kind(std::string_view name) {
  return value_of(kKindNames, name);
}
std::string_view to_string(Relation relation) { return name_of(kRelationNames, relation); }
std::string_view to_string(LinkEvidence evidence) { return name_of(kEvidenceNames, evidence); }
std::string_view to_string(LinkAuthority authority) { return name_of(kAuthorityNames, authority); }

std::string_view to_string(TermsDirection direction) {
  switch (direction) {
    case TermsDirection::neutral:
      break;
    case TermsDirection::better:
      return "better";
    case TermsDirection::worse:
      return "worse";
  }
  return "neutral";
}

}  // namespace rangebook
