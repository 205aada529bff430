// One pass in document order; what is in force at an element (vocabulary, prefixes, the thing
// described) is kept on a stack of the elements that change it.
#include "importers/rdfa.h"

#include <algorithm>
#include <array>
#include <unordered_map>
#include <utility>

#include "importers/microdata.h"

namespace rangebook {
namespace {

constexpr std::size_t kMaxPrefixes = 1000;

constexpr auto kAttributes = std::to_array<std::string_view>(
    {"property", "typeof", "vocab", "prefix", "about", "resource", "rel"});

// Those of the RDFa initial context (W3C, rdfa-1.1) under which product facts are written.
constexpr auto kInitialPrefixes = std::to_array<std::pair<std::string_view, std::string_view>>(
    {{"schema", "http://schema.org/"},
     {"gr", "http://purl.org/goodrelations/v1#"},
     {"v", "http://rdf.data-vocabulary.org/#"},
     {"foaf", "http://xmlns.com/foaf/0.1/"},
     {"rdfs", "http://www.w3.org/2000/01/rdf-schema#"},
     {"dc", "http://purl.org/dc/terms/"}});

struct Prefix {
  std::string name;  ///< lower case
  std::string address;
};

/// What holds inside an element.
struct Scope {
  HtmlId end = 0;
  std::string vocabulary = {};
  std::size_t prefixes = 0;               ///< how many of the list hold here
  std::optional<std::size_t> item = {};   ///< what properties describe
  std::vector<std::string> pending = {};  ///< `rel` that waits for the things inside
};

std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), ascii_lower);
  return out;
}

class Reader {
 public:
  explicit Reader(const HtmlTree& tree) : tree_(tree) {
    for (const auto& [name, address] : kInitialPrefixes) {
      prefixes_.push_back({std::string(name), std::string(address)});
    }
    scopes_.push_back({.end = static_cast<HtmlId>(tree.size()), .prefixes = prefixes_.size()});
  }

  MarkupItems run() {
    for (HtmlId at = 1; at < tree_.size(); ++at) {
      while (at >= scopes_.back().end) leave();
      if (!tree_[at].is_text && tree_[at].attributes > 0) visit(at);
    }
    return std::move(items_);
  }

 private:
  void leave() {
    scopes_.pop_back();
    prefixes_.resize(scopes_.back().prefixes);
  }
  void visit(HtmlId at);
  void read_prefixes(std::string_view value);
  std::string full_name(std::string_view name, const std::string& vocabulary) const;
  std::vector<std::string> names(HtmlId at, std::string_view attribute,
                                 const std::string& vocabulary) const;
  std::optional<std::size_t> thing_at(HtmlId at, std::vector<std::string> types);
  std::vector<std::string> relations(HtmlId at, const std::string& vocabulary) const;
  std::optional<std::string_view> address_of(HtmlId at) const;
  bool matters(HtmlId at) const;
  void declare_namespaces(HtmlId at);
  void relate(HtmlId at, Scope& scope, std::optional<std::size_t> thing);
  void state(HtmlId at, std::size_t subject, std::vector<std::string> properties,
             std::optional<std::size_t> thing, bool related);
  void add(std::size_t item, MarkupValue value) {
    if (!value.names.empty()) items_[item].values.push_back(std::move(value));
  }

  const HtmlTree& tree_;
  MarkupItems items_;
  std::vector<Prefix> prefixes_;
  std::vector<Scope> scopes_;
  std::unordered_map<std::string, std::size_t> by_id_;
};

void Reader::read_prefixes(std::string_view value) {
  const auto words = attribute_words(value);
  for (std::size_t i = 0; i + 1 < words.size() && prefixes_.size() < kMaxPrefixes; i += 2) {
    std::string name = lower(words[i]);
    if (!name.empty() && name.back() == ':') name.pop_back();
    prefixes_.push_back({std::move(name), words[i + 1]});
  }
}

// `xmlns:gr="..."`, how prefixes were declared before `prefix`.
void Reader::declare_namespaces(HtmlId at) {
  constexpr std::string_view kStart = "xmlns:";
  for (const auto& attribute : tree_.attributes(at)) {
    if (!attribute.name.starts_with(kStart) || prefixes_.size() >= kMaxPrefixes) continue;
    prefixes_.push_back(
        {lower(attribute.name.substr(kStart.size())), std::string(attribute.value)});
  }
}

std::string Reader::full_name(std::string_view name, const std::string& vocabulary) const {
  const auto colon = name.find(':');
  if (colon == name.npos) return vocabulary + std::string(name);
  const std::string prefix = lower(name.substr(0, colon));
  for (auto known = prefixes_.rbegin(); known != prefixes_.rend(); ++known) {
    if (known->name == prefix) return known->address + std::string(name.substr(colon + 1));
  }
  return std::string(name);
}

std::vector<std::string> Reader::names(HtmlId at, std::string_view attribute,
                                       const std::string& vocabulary) const {
  std::vector<std::string> out = attribute_words(tree_.attribute(at, attribute).value_or(""));
  for (auto& name : out) name = full_name(name, vocabulary);
  return out;
}

// Things under one name are one thing, wherever they stand.
std::optional<std::size_t> Reader::thing_at(HtmlId at, std::vector<std::string> types) {
  std::string id;
  for (const std::string_view attribute : {"about", "resource", "href", "src"}) {
    if (id.empty()) id = tree_.attribute(at, attribute).value_or("");
  }
  if (const auto known = by_id_.find(id); !id.empty() && known != by_id_.end()) {
    auto& all = items_[known->second].types;
    all.insert(all.end(), types.begin(), types.end());
    return known->second;
  }
  if (items_.size() == kMaxItems) return std::nullopt;
  if (!id.empty()) by_id_.emplace(id, items_.size());
  items_.push_back({.types = std::move(types), .id = std::move(id), .byte = tree_[at].byte});
  return items_.size() - 1;
}

// RDFa takes an address from any element, also where HTML gives it no meaning (`<img href>`).
std::optional<std::string_view> Reader::address_of(HtmlId at) const {
  const auto href = tree_.attribute(at, "href");
  return href ? href : tree_.attribute(at, "src");
}

// Beside `rel` (`related`) a property has the text, since the address belongs to the relation.
void Reader::state(HtmlId at, std::size_t subject, std::vector<std::string> properties,
                   std::optional<std::size_t> thing, bool related) {
  if (properties.empty()) return;
  MarkupValue value{.names = std::move(properties)};
  const auto content = tree_.attribute(at, "content");
  const auto resource = tree_.attribute(at, "resource");
  if (thing && *thing != subject) {
    value.item = thing;
  } else if (content) {
    value.text = *content;
  } else if (resource && !related) {
    value.text = *resource;
    value.reference = true;
  } else if (const auto address = address_of(at); address && !related) {
    value.text = *address;
  } else {
    value.text = related ? tree_.text(at) : element_value(tree_, at);
  }
  add(subject, std::move(value));
}

// A `rel` without a vocabulary is about links (`nofollow`), not about things.
std::vector<std::string> Reader::relations(HtmlId at, const std::string& vocabulary) const {
  const bool stated = tree_.has(at, "property");
  auto out = names(at, "rel", stated ? std::string() : vocabulary);
  std::erase_if(out, [](const std::string& name) { return name.find(':') == name.npos; });
  return out;
}

bool Reader::matters(HtmlId at) const {
  const auto all = tree_.attributes(at);
  const bool declares = std::any_of(all.begin(), all.end(), [](const HtmlAttribute& attribute) {
    return attribute.name.starts_with("xmlns:");
  });
  return declares || std::any_of(kAttributes.begin(), kAttributes.end(),
                                 [&](std::string_view name) { return tree_.has(at, name); });
}

void Reader::relate(HtmlId at, Scope& scope, std::optional<std::size_t> thing) {
  const auto outer = scopes_.back().item;
  if (thing) {
    if (outer && !scope.pending.empty()) {
      add(*outer, {.names = scope.pending, .text = {}, .item = thing});
    }
    scope.item = thing;
    scope.pending.clear();
  }
  auto found = relations(at, scope.vocabulary);
  const bool about = tree_.has(at, "about");
  const auto subject = about ? thing : outer;
  if (!subject || found.empty()) return;
  const auto resource = tree_.attribute(at, "resource");
  if (thing && !about) {
    add(*subject, {.names = std::move(found), .text = {}, .item = thing});
  } else if (resource) {
    add(*subject, {.names = std::move(found), .text = std::string(*resource), .reference = true});
  } else if (const auto address = address_of(at)) {
    add(*subject, {.names = std::move(found), .text = std::string(*address)});
  } else {
    scope.pending = std::move(found);
  }
}

void Reader::visit(HtmlId at) {
  if (!matters(at)) return;
  Scope scope = scopes_.back();
  scope.end = tree_[at].end;
  declare_namespaces(at);
  if (const auto prefix = tree_.attribute(at, "prefix")) read_prefixes(*prefix);
  scope.prefixes = prefixes_.size();
  if (const auto vocabulary = tree_.attribute(at, "vocab")) {
    scope.vocabulary = *vocabulary;
    // A slash that is forgotten, as in schema.org's own examples; `schema.orgProduct` means
    // nothing.
    if (vocabulary->ends_with("://schema.org")) scope.vocabulary += '/';
  }
  const bool typed = tree_.has(at, "typeof");
  const bool about = tree_.has(at, "about");
  const bool named = tree_.has(at, "resource") && !tree_.has(at, "property");
  std::optional<std::size_t> thing;
  if (typed || about || named) thing = thing_at(at, names(at, "typeof", scope.vocabulary));
  auto properties = names(at, "property", scope.vocabulary);
  const bool related = !relations(at, scope.vocabulary).empty();
  relate(at, scope, thing);
  // Beside `about`, a property is one of the thing named there.
  const auto subject = about && !typed ? thing : scopes_.back().item;
  scopes_.push_back(std::move(scope));
  if (!subject) return;
  state(at, *subject, std::move(properties), typed && !about ? thing : std::nullopt, related);
}

}  // namespace

MarkupItems read_rdfa(const HtmlTree& tree) { return Reader(tree).run(); }

}  // namespace rangebook
