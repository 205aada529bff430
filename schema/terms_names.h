// The words by which the enumerations of terms are written and typed.
#pragma once

#include <array>
#include <string_view>

#include "schema/names.h"
#include "schema/terms.h"

namespace rangebook {

inline constexpr NameTable<DayUnit, 3> kDayUnits{{{DayUnit::days, "days"},
                                                  {DayUnit::working_days, "working days"},
                                                  {DayUnit::months, "months"}}};
inline constexpr NameTable<CountedFrom, 3> kCountedFroms{{{CountedFrom::purchase, "purchase"},
                                                          {CountedFrom::dispatch, "dispatch"},
                                                          {CountedFrom::delivery, "delivery"}}};
inline constexpr NameTable<ThresholdBasis, 2> kThresholdBases{
    {{ThresholdBasis::before_discount, "before discount"},
     {ThresholdBasis::after_discount, "after discount"}}};
inline constexpr NameTable<ReturnMethod, kReturnMethods> kReturnMethodNames{
    {{ReturnMethod::store, "store"},
     {ReturnMethod::post, "post"},
     {ReturnMethod::courier, "courier"},
     {ReturnMethod::drop_off, "drop-off"}}};
inline constexpr NameTable<Payer, 2> kPayers{
    {{Payer::shop, "shop"}, {Payer::customer, "customer"}}};
inline constexpr NameTable<RefundForm, 3> kRefundForms{
    {{RefundForm::original_payment, "original payment"},
     {RefundForm::credit, "credit"},
     {RefundForm::exchange, "exchange"}}};
inline constexpr NameTable<ReturnItem, 15> kReturnItems{
    {{ReturnItem::sale, "sale"},
     {ReturnItem::swimwear, "swimwear"},
     {ReturnItem::underwear, "underwear"},
     {ReturnItem::hosiery, "hosiery"},
     {ReturnItem::pierced_jewellery, "pierced-jewellery"},
     {ReturnItem::jewellery, "jewellery"},
     {ReturnItem::personalised, "personalised"},
     {ReturnItem::made_to_order, "made-to-order"},
     {ReturnItem::beauty, "beauty"},
     {ReturnItem::sealed, "sealed"},
     {ReturnItem::face_coverings, "face-coverings"},
     {ReturnItem::hats, "hats"},
     {ReturnItem::shoes, "shoes"},
     {ReturnItem::gift_cards, "gift-cards"},
     {ReturnItem::worn, "worn"}}};
inline constexpr NameTable<ItemRule, 6> kItemRules{
    {{ItemRule::returnable, "returnable"},
     {ItemRule::not_returnable, "not returnable"},
     {ItemRule::unopened_only, "unopened only"},
     {ItemRule::exchange_only, "exchange only"},
     {ItemRule::credit_only, "credit only"},
     {ItemRule::exchange_or_credit, "exchange or credit"}}};
inline constexpr NameTable<ReturnCondition, 9> kReturnConditions{
    {{ReturnCondition::tags_on, "tags-on"},
     {ReturnCondition::unworn, "unworn"},
     {ReturnCondition::unwashed, "unwashed"},
     {ReturnCondition::undamaged, "undamaged"},
     {ReturnCondition::original_packaging, "original-packaging"},
     {ReturnCondition::receipt, "receipt"},
     {ReturnCondition::returns_form, "returns-form"},
     {ReturnCondition::request_first, "request-first"},
     {ReturnCondition::hygiene_seal_on, "hygiene-seal-on"}}};
inline constexpr NameTable<TermsConfidence, 3> kTermsConfidences{
    {{TermsConfidence::stated, "stated"},
     {TermsConfidence::doubtful, "doubtful"},
     {TermsConfidence::confirmed, "confirmed"}}};
inline constexpr std::array<std::string_view, 12> kMonths{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                          "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

}  // namespace rangebook
