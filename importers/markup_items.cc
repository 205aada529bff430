// Items become objects first, so that values can be linked in any order without recursion.
#include "importers/markup_items.h"

#include <string_view>

namespace rangebook {
namespace {

// Blank node names, as RDF writes them, for items that are the value of several properties.
std::string blank_name(std::size_t item) { return "_:item" + std::to_string(item); }

class Writer {
 public:
  Writer(JsonTree& tree, const MarkupItems& items) : tree_(tree), items_(items) {
    for (const auto& item : items) objects_.push_back(tree.add_object(item.byte));
    placed_.resize(items.size(), false);
    named_.resize(items.size(), false);
  }

  void write(std::size_t index) {
    const MarkupItem& item = items_[index];
    for (const auto& type : item.types) put_text(index, "@type", type);
    if (!item.id.empty()) put_text(index, "@id", item.id);
    for (const auto& value : item.values) {
      for (const auto& name : value.names) put_value(index, name, value);
    }
  }

  std::vector<JsonId> roots() const {
    std::vector<JsonId> out;
    for (const std::size_t item : top_items(items_)) {
      if (objects_[item] != 0) out.push_back(objects_[item]);
    }
    return out;
  }

 private:
  void put_text(std::size_t index, std::string_view key, std::string_view text) {
    tree_.put(objects_[index], key, tree_.add_text(text));
  }
  void put_value(std::size_t index, std::string_view name, const MarkupValue& value) {
    if (value.item) return put_item(index, name, *value.item);
    if (!value.reference) return put_text(index, name, value.text);
    put_reference(index, name, value.text);
  }
  void put_item(std::size_t index, std::string_view name, std::size_t target) {
    if (target == index) return;
    if (!placed_[target]) {
      placed_[target] = true;
      return tree_.put(objects_[index], name, objects_[target]);
    }
    const std::string& id = items_[target].id;
    const std::string reference = id.empty() ? blank_name(target) : id;
    if (id.empty() && !named_[target]) {
      named_[target] = true;
      put_text(target, "@id", reference);
    }
    put_reference(index, name, reference);
  }
  void put_reference(std::size_t index, std::string_view name, std::string_view id) {
    const JsonId object = tree_.add_object(items_[index].byte);
    tree_.put(object, "@id", tree_.add_text(id));
    tree_.put(objects_[index], name, object);
  }

  JsonTree& tree_;
  const MarkupItems& items_;
  std::vector<JsonId> objects_;
  std::vector<bool> placed_;
  std::vector<bool> named_;
};

}  // namespace

std::vector<std::size_t> top_items(const MarkupItems& items) {
  std::vector<bool> inner(items.size(), false);
  for (const auto& item : items) {
    for (const auto& value : item.values) {
      if (value.item && !value.names.empty()) inner[*value.item] = true;
    }
  }
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (!inner[i]) out.push_back(i);
  }
  return out;
}

std::vector<JsonId> add_items(JsonTree& tree, const MarkupItems& items) {
  Writer writer(tree, items);
  for (std::size_t i = 0; i < items.size(); ++i) writer.write(i);
  return writer.roots();
}

}  // namespace rangebook
