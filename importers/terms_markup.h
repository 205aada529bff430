// Delivery and return terms from schema.org markup: OfferShippingDetails, ShippingRateSettings,
// DeliveryTimeSettings, ShippingService, MerchantReturnPolicy with its seasonal overrides, in
// JSON-LD, microdata or RDFa.
#pragma once

#include <optional>
#include <string_view>

#include "importers/html_tree.h"
#include "importers/policy_claims.h"
#include "importers/policy_rules.h"

namespace rangebook {

/// Adds what the page's markup claims. Terms for members only, percentages and other conditions
/// that terms do not hold are claimed as doubts. `tree` may be nothing: then JSON-LD alone is read.
void add_markup_claims(std::string_view html, const HtmlTree* tree, const PolicyFrame& frame,
                       PolicyClaims& claims);

/// An ISO 8601 duration of whole days, weeks, months or years, or of hours (a begun day counts):
/// `P3D`, `P2W`, `P1M`, `PT24H`. Nothing for any other text.
std::optional<DaySpan> read_iso_duration(std::string_view text);

}  // namespace rangebook
