// Shops, captures and what a capture looked at.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "schema/day.h"
#include "schema/money.h"
#include "schema/rejection.h"
#include "schema/size.h"
#include "schema/table_options.h"

namespace rangebook {

struct Shop {
  std::string slug;
  std::string name;
  std::string country;                     ///< ISO 3166-1 alpha-2, upper case; empty if not known
  std::optional<Currency> currency;        ///< home currency
  SizeSystem sizes = SizeSystem::unknown;  ///< what a bare number means here
  /// Where linking by likeness parts its bands here, in percent; nothing: as everywhere
  /// (LikenessOptions).
  std::optional<std::int64_t> link_above = {};
  std::optional<std::int64_t> ask_above = {};

  bool operator==(const Shop&) const = default;
};

/// What the capture looked at. A line can be called gone only inside a scope both captures cover.
struct Scope {
  enum class Kind : std::uint8_t { all, categories, picks };
  Kind kind = Kind::all;
  std::vector<std::string> categories;  ///< slugs of schema/tables/categories.tsv, sorted

  bool operator==(const Scope&) const = default;
};
std::string to_string(const Scope& scope);  ///< `all`, `picks`, `dresses,knitwear`

/// A document of a capture, without its bytes.
struct DocumentInfo {
  std::string name = {};    ///< file name without folders
  std::string sha256 = {};  ///< lower-case hex
  std::uint64_t bytes = 0;
  std::string importer = {};  ///< `table`, `page`
  std::string mapping = {};   ///< how columns were understood, for instance `line_code=1 name=2`
  std::string profile = {};   ///< name of the shop's profile that was used; empty: none
  TableOptions options = {};  ///< what was said besides

  bool operator==(const DocumentInfo&) const = default;
};

struct CaptureInfo {
  std::int64_t id = 0;
  std::string shop;    ///< slug
  std::string season;  ///< label
  Day on{};
  Scope scope;
  std::vector<DocumentInfo> documents;

  bool operator==(const CaptureInfo&) const = default;
};

}  // namespace rangebook
