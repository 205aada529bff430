// Names of size systems and fit ranges.
#include "schema/size.h"

#include "schema/names.h"

namespace rangebook {
namespace {

constexpr NameTable<SizeSystem, 17> kSystemNames{{
    {SizeSystem::unknown, "unknown"},
    {SizeSystem::alpha, "alpha"},
    {SizeSystem::uk, "uk"},
    {SizeSystem::au, "au"},
    {SizeSystem::us, "us"},
    {SizeSystem::eu, "eu"},
    {SizeSystem::fr, "fr"},
    {SizeSystem::it, "it"},
    {SizeSystem::jp, "jp"},
    {SizeSystem::waist_length, "waist-length"},
    {SizeSystem::bra, "bra"},
    {SizeSystem::bra_eu, "bra-eu"},
    {SizeSystem::bra_au, "bra-au"},
    {SizeSystem::footwear_uk, "footwear-uk"},
    {SizeSystem::footwear_eu, "footwear-eu"},
    {SizeSystem::footwear_us, "footwear-us"},
    {SizeSystem::one_size, "one-size"},
}};

constexpr NameTable<FitRange, 5> kFitNames{{
    {FitRange::regular, "regular"},
    {FitRange::petite, "petite"},
    {FitRange::tall, "tall"},
    {FitRange::plus, "plus"},
    {FitRange::maternity, "maternity"},
}};

}  // namespace

std::string_view to_string(SizeSystem system) { return name_of(kSystemNames, system); }
std::string_view to_string(FitRange fit) { return name_of(kFitNames, fit); }
std::optional<SizeSystem> parse_size_system(std::string_view name) {
  return value_of(kSystemNames, name);
}
std::optional<FitRange> parse_fit_range(std::string_view name) { return value_of(kFitNames, name); }

}  // namespace rangebook
