// Filling the cells of rows from a product, its groups and its offers.
#include "importers/schema_org_rows.h"

#include <algorithm>
#include <utility>

#include "importers/html_tag.h"
#include "importers/page_address.h"
#include "importers/saved_page.h"
#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

constexpr auto kCodes = std::to_array<std::string_view>({"sku", "mpn", "productID"});
constexpr auto kGtins =
    std::to_array<std::string_view>({"gtin", "gtin14", "gtin13", "gtin12", "gtin8"});

template <typename Properties>
std::string first_word(const LinkedData& data, JsonId thing, const Properties& properties) {
  for (const auto property : properties) {
    std::string words = word_cell(data, thing, property);
    if (!words.empty()) return words;
  }
  return {};
}

// The nearest non-empty answer: of the product, else of the groups around it.
template <typename Read>
std::string inherited(const ProductLeaf& leaf, const Read& read) {
  std::string cell = read(leaf.product);
  for (std::size_t i = 0; cell.empty() && i < leaf.groups.size(); ++i) cell = read(leaf.groups[i]);
  return cell;
}

// The answer of the groups, else of the product: what names the line rather than the variant.
template <typename Read>
std::string of_the_line(const ProductLeaf& leaf, const Read& read) {
  std::string cell;
  for (std::size_t i = 0; cell.empty() && i < leaf.groups.size(); ++i) cell = read(leaf.groups[i]);
  return cell.empty() ? read(leaf.product) : cell;
}

bool varies_by(const LinkedData& data, JsonId group, std::string_view property) {
  for (const JsonId value : data.values(group, "variesBy")) {
    const auto words = data.text(value);
    if (schema_org_name(words.empty() ? data.id(value) : words) == property) return true;
  }
  return false;
}

// A size or colour that all variants of the group share. A group that varies by it, or lists
// several, says nothing about one variant.
template <typename Read>
std::string shared_by_group(const LinkedData& data, const ProductLeaf& leaf,
                            std::string_view property, const Read& read) {
  for (const JsonId group : leaf.groups) {
    if (varies_by(data, group, property) || data.values(group, property).size() > 1) return {};
    std::string cell = read(group);
    if (!cell.empty()) return cell;
  }
  return {};
}

// A variant of something, though its group may stand on another page.
bool is_variant(const LinkedData& data, const ProductLeaf& leaf) {
  return !leaf.groups.empty() || data.first(leaf.product, "inProductGroupWithID") != 0;
}

std::string colour_of(const LinkedData& data, const ProductLeaf& leaf) {
  const bool whole = !is_variant(data, leaf);
  std::string cell = colour_cell(data, leaf.product, whole);
  if (cell.empty()) cell = additional_cell(data, leaf.product, "color", "colour");
  if (!cell.empty() || whole) return cell;
  return shared_by_group(data, leaf, "color",
                         [&](JsonId group) { return colour_cell(data, group, false); });
}

std::string size_of(const LinkedData& data, const ProductLeaf& leaf) {
  const bool whole = !is_variant(data, leaf);
  std::string cell = size_cell(data, leaf.product, whole);
  if (cell.empty()) cell = additional_cell(data, leaf.product, "size", "size");
  if (!cell.empty() || whole) return cell;
  return shared_by_group(data, leaf, "size",
                         [&](JsonId group) { return size_cell(data, group, false); });
}

// What a start page is called on shops' breadcrumbs. Common practice, no source.
constexpr auto kHomeNames = std::to_array<std::string_view>(
    {"home", "homepage", "home page", "start", "startseite", "accueil", "inicio", "hem", "hjem",
     "etusivu", "forside", "strona główna"});

bool is_home(std::string_view name) {
  return std::any_of(kHomeNames.begin(), kHomeNames.end(),
                     [&](std::string_view home) { return equals_ignoring_case(name, home); });
}

struct Crumb {
  std::string position;
  std::string name;
};

// Positions are small whole numbers; shorter digits come first.
bool stands_before(const Crumb& a, const Crumb& b) {
  return std::pair(a.position.size(), a.position) < std::pair(b.position.size(), b.position);
}

void fill_if_empty(std::string& cell, std::string value) {
  if (cell.empty()) cell = std::move(value);
}

bool has_code_of_its_own(const ProductLeaf& leaf, const ProductRow& row, std::string_view code) {
  return leaf.offers.size() > 1 || row[Field::line_code] != code;
}

}  // namespace

std::string breadcrumb_path(const LinkedData& data, JsonId list, const std::string& product) {
  std::vector<Crumb> crumbs;
  for (const JsonId entry : data.values(list, "itemListElement")) {
    std::string name = word_cell(data, entry, "name");
    if (name.empty()) name = word_cell(data, entry, "item");
    if (is_absolute_address(name)) name.clear();
    if (!name.empty()) crumbs.push_back({word_cell(data, entry, "position"), std::move(name)});
  }
  std::stable_sort(crumbs.begin(), crumbs.end(), stands_before);
  if (!crumbs.empty() && is_home(crumbs.front().name)) crumbs.erase(crumbs.begin());
  if (!crumbs.empty() && equals_ignoring_case(crumbs.back().name, product)) crumbs.pop_back();
  std::string path;
  for (const auto& crumb : crumbs) path += (path.empty() ? "" : " > ") + crumb.name;
  return path;
}

ProductRows::ProductRows(const LinkedData& data, const ProductFinder& finder, PageFrame frame)
    : data_(data), finder_(finder), frame_(std::move(frame)) {
  std::unordered_set<JsonId> lines;
  for (const auto& leaf : finder_.leaves()) {
    lines.insert(leaf.groups.empty() ? leaf.product : leaf.groups.back());
  }
  one_line_ = lines.size() == 1;
}

std::optional<std::vector<ProductRow>> ProductRows::next() {
  if (next_ == finder_.leaves().size()) return std::nullopt;
  const ProductLeaf& leaf = finder_.leaves()[next_++];
  const ProductRow common = common_cells(leaf);
  std::vector<ProductRow> rows;
  if (leaf.offers.empty()) {
    ProductRow row = common;
    if (leaf.undecided != 0 && doubted_.insert(leaf.undecided).second) {
      row.doubt = {
          "The page has several offers for this line, but does not say which variant each "
          "is for.",
          "Type the price of each variant into a CSV.", row[Field::name]};
    }
    keep(std::move(row), rows);
  }
  for (const auto& place : leaf.offers) {
    ProductRow row = common;
    fill_offer(leaf, place, row);
    keep(std::move(row), rows);
  }
  return rows;
}

// Two blocks of a page often say the same; a row with the same cells says nothing new.
void ProductRows::keep(ProductRow row, std::vector<ProductRow>& rows) {
  std::string key;
  for (const auto& cell : row.cells) key.append(cell).push_back('\0');
  if (known_.insert(std::move(key)).second || row.doubt) rows.push_back(std::move(row));
}

ProductRow ProductRows::common_cells(const ProductLeaf& leaf) const {
  const auto words = [&](std::string_view property) {
    return [this, property](JsonId thing) { return word_cell(data_, thing, property); };
  };
  ProductRow row;
  row.byte = data_.node(leaf.product).byte;
  row[Field::name] = of_the_line(leaf, words("name"));
  row[Field::category] = inherited(leaf, [&](JsonId thing) { return category_cell(data_, thing); });
  fill_if_empty(row[Field::category], breadcrumb_category(row[Field::name]));
  row[Field::colour] = colour_of(data_, leaf);
  row[Field::size] = size_of(data_, leaf);
  row[Field::composition] =
      inherited(leaf, [&](JsonId thing) { return composition_cell(data_, thing); });
  row[Field::description] = of_the_line(leaf, words("description"));
  row[Field::url] = address_cell(leaf);
  row[Field::image] = inherited(leaf, [&](JsonId thing) {
    return picture_address(image_address(data_, thing), frame_.base);
  });
  row[Field::gtin] = first_word(data_, leaf.product, kGtins);
  fill_codes(leaf, row);
  return row;
}

void ProductRows::fill_codes(const ProductLeaf& leaf, ProductRow& row) const {
  const auto own_code = first_word(data_, leaf.product, kCodes);
  std::string& code = row[Field::line_code];
  for (const std::string_view property : {"productGroupID", "inProductGroupWithID"}) {
    fill_if_empty(code,
                  inherited(leaf, [&](JsonId thing) { return word_cell(data_, thing, property); }));
  }
  const bool grouped = is_variant(data_, leaf);
  if (grouped) row[Field::variant_code] = own_code;
  for (const JsonId group : leaf.groups) fill_if_empty(code, first_word(data_, group, kCodes));
  if (!grouped) fill_if_empty(code, own_code);
  if (!code.empty() || leaf.groups.empty()) return;
  const auto id = data_.id(leaf.groups.back());
  const bool blank = id.starts_with("_:");  // a name that means nothing outside the page
  if (!blank) row[Field::group_id] = id;
}

std::string ProductRows::address_cell(const ProductLeaf& leaf) const {
  const auto url = [this](JsonId thing) {
    const std::string stated = clean_text(data_.text(thing, "url"));
    return is_saved_copy(stated) ? std::string() : stated;
  };
  std::string address;
  for (const JsonId group : leaf.groups) fill_if_empty(address, url(group));
  if (!leaf.groups.empty() && one_line_) fill_if_empty(address, frame_.address);
  fill_if_empty(address, url(leaf.product));
  if (one_line_) fill_if_empty(address, frame_.address);
  return resolve_address(address, frame_.base);
}

std::string ProductRows::breadcrumb_category(const std::string& name) const {
  for (const JsonId list : finder_.breadcrumbs()) {
    std::string path = breadcrumb_path(data_, list, name);
    if (!path.empty()) return path;
  }
  return {};
}

void ProductRows::fill_offer(const ProductLeaf& leaf, const OfferPlace& place, ProductRow& row) {
  OfferFacts facts = read_offer(data_, place);
  row[Field::price] = std::move(facts.price);
  row[Field::full_price] = std::move(facts.full_price);
  row[Field::currency] = std::move(facts.currency);
  row[Field::in_stock] = std::move(facts.in_stock);
  if (facts.doubt && doubted_.insert(place.offer).second) row.doubt = std::move(facts.doubt);
  // An offer has no colour or size in schema.org, but shops put them there.
  fill_if_empty(row[Field::colour], word_cell(data_, place.offer, "color"));
  fill_if_empty(row[Field::size], size_cell(data_, place.offer, false));
  fill_if_empty(row[Field::gtin], first_word(data_, place.offer, kGtins));
  fill_if_empty(row[Field::name], word_cell(data_, place.offer, "name"));
  if (row[Field::url].empty()) {
    row[Field::url] = link_address(clean_text(data_.text(place.offer, "url")), frame_.base);
  }
  std::string code = first_word(data_, place.offer, kCodes);
  if (code.empty()) return;
  const bool grouped = is_variant(data_, leaf);
  if (!grouped && leaf.offers.size() == 1) fill_if_empty(row[Field::line_code], code);
  if (grouped || has_code_of_its_own(leaf, row, code)) {
    fill_if_empty(row[Field::variant_code], std::move(code));
  }
}

}  // namespace rangebook
