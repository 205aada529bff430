// From sRGB to CIELAB and the difference of two colours. Floating point stays behind this header's
// callers: what reaches a report is rounded first (see colour_traits.h).
#pragma once

#include "schema/colour.h"

namespace rangebook {

/// CIE 1976 L*a*b* under D65, 2 degree observer. Lightness 0 to 100.
struct Lab {
  double lightness = 0;
  double a = 0;
  double b = 0;
};

/// The same by chroma and hue angle in degrees, 0 up to 360; the hue of a grey means nothing.
struct Lch {
  double lightness = 0;
  double chroma = 0;
  double hue = 0;
};

/// White is exactly L* 100, a* 0, b* 0.
Lab lab_of(Srgb colour);
Lch lch_of(const Lab& lab);

/// CIEDE2000 with all weights 1 (CIE 142; Sharma, Wu & Dalal 2005). Symmetric, zero for equal
/// colours; about 1 is the smallest difference seen side by side.
double ciede2000(const Lab& one, const Lab& other);

}  // namespace rangebook
