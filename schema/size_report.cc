// Names of the verdicts about one size.
#include "schema/size_report.h"

#include "schema/names.h"

namespace rangebook {
namespace {

constexpr NameTable<Reaching, 4> kReachingNames{{
    {Reaching::reaches, "reaches"},
    {Reaching::not_found, "not-found"},
    {Reaching::other_system, "other-system"},
    {Reaching::not_seen, "not-seen"},
}};

}  // namespace

std::string_view to_string(Reaching reaching) { return name_of(kReachingNames, reaching); }

}  // namespace rangebook
