// A scale of prices across or up a sheet.
#pragma once

#include "reports/chart_drawing.h"

namespace rangebook {

/// A scale whose marks, written out, fit side by side into `room`.
Scale price_scale(MinorUnits low, MinorUnits high, Currency currency, int room,
                  const NumberStyle& numbers);

/// The scale across the sheet at `y`, labels above it.
void draw_scale(Drawing& sheet, const Scale& scale, Currency currency, int from, int to, int y,
                const NumberStyle& numbers);

/// `£35`: without decimals where they are zero, for the marks of a scale.
std::string round_money(const Money& money, const NumberStyle& numbers);

}  // namespace rangebook
