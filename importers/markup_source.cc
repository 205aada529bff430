// Values to products to rows, for one syntax.
#include "importers/markup_source.h"

#include <iterator>
#include <utility>

#include "importers/older_vocabularies.h"

namespace rangebook {

void MarkupSource::add(MarkupItems items) {
  const auto added = add_items(tree, in_schema_org_terms(std::move(items)));
  roots.insert(roots.end(), added.begin(), added.end());
}

void MarkupSource::find_products(std::string_view language) {
  data_.emplace(tree);
  data_->set_language(language);
  finder_.emplace(*data_, roots);
}

void MarkupSource::open_rows(const PageFrame& frame) {
  if (finder_) rows_.emplace(*data_, *finder_, frame);
}

std::vector<std::string_view> MarkupSource::other_types() const {
  return finder_ ? finder_->other_types() : std::vector<std::string_view>{};
}

std::string MarkupSource::breadcrumbs(const std::string& product) const {
  if (!finder_) return {};
  for (const JsonId list : finder_->breadcrumbs()) {
    std::string path = breadcrumb_path(*data_, list, product);
    if (!path.empty()) return path;
  }
  return {};
}

std::optional<std::vector<ProductRow>> MarkupSource::next() {
  return rows_ ? rows_->next() : std::nullopt;
}

std::vector<ProductRow> MarkupSource::rest() {
  std::vector<ProductRow> all;
  while (auto rows = next()) {
    all.insert(all.end(), std::make_move_iterator(rows->begin()),
               std::make_move_iterator(rows->end()));
  }
  return all;
}

}  // namespace rangebook
