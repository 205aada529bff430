// Writes a change set key by key in the order of schema/FORMAT.md.
#include "reports/changes_json.h"

#include <fmt/format.h>

#include "reports/json_facts.h"
#include "reports/json_writer.h"

namespace rangebook {
namespace {

constexpr std::size_t kBytesPerChange = 640;

class ChangesWriter {
 public:
  explicit ChangesWriter(const ChangeSet& set)
      : set_(set),
        from_day_(to_string(set.from.on)),
        to_day_(to_string(set.to.on)),
        json_(4096 + set.changes.size() * kBytesPerChange) {}

  std::string write() {
    json_.begin_object();
    json_.member("format", "rangebook.changes/1");
    section("shop");
    json_.value(set_.shop.slug);
    section("from");
    capture(set_.from);
    section("to");
    capture(set_.to);
    section("coverage");
    coverage();
    section("counts");
    counts();
    section("reconciliation");
    reconciliation();
    section("categories");
    list(set_.categories, [this](const CategorySummary& each) { category(each); });
    section("was_prices");
    write_was_prices(json_, set_, {});
    section("changes");
    list(set_.changes, [this](const Change& each) { change(each); });
    json_.line_break();
    json_.end_object();
    return json_.take() + '\n';
  }

  std::string write_one(const Change& each) {
    change(each);
    return json_.take();
  }

 private:
  void section(std::string_view name) {
    json_.line_break();
    json_.key(name);
  }

  /// An array with one element a line.
  template <typename List, typename Write>
  void list(const List& elements, Write write_one) {
    json_.begin_array();
    for (const auto& element : elements) {
      json_.line_break();
      write_one(element);
    }
    json_.end_array();
  }

  void strings(std::string_view name, const std::vector<std::string>& texts) {
    json_.key(name);
    json_.begin_array();
    for (const auto& text : texts) json_.value(text);
    json_.end_array();
  }

  template <typename Optional, typename Write>
  void nullable(std::string_view name, const Optional& content, Write write_one) {
    json_.key(name);
    if (content) {
      write_one(*content);
    } else {
      json_.null();
    }
  }

  void day(std::string_view name, Day on) {
    json_.key(name);
    if (on == set_.from.on) {
      json_.value(from_day_);
    } else if (on == set_.to.on) {
      json_.value(to_day_);
    } else {
      json_.value(to_string(on));
    }
  }

  void capture(const CaptureInfo& info) {
    json_.begin_object();
    json_.member("id", info.id);
    json_.member("season", info.season);
    day("date", info.on);
    json_.member("scope", to_string(info.scope));
    json_.key("documents");
    list(info.documents, [this](const DocumentInfo& each) { document(each); });
    json_.end_object();
  }

  void document(const DocumentInfo& info) {
    json_.begin_object();
    json_.member("name", info.name);
    json_.member("sha256", info.sha256);
    json_.member("bytes", info.bytes);
    json_.end_object();
  }

  void coverage() {
    const Coverage& covered = set_.coverage;
    json_.begin_object();
    json_.member("scope", to_string(covered.common));
    json_.member("lines_compared", covered.lines_compared);
    json_.member("rows_refused_then", covered.rows_refused_then);
    json_.member("rows_refused_now", covered.rows_refused_now);
    strings("notes", covered.notes);
    json_.end_object();
  }

  void counts() {
    json_.begin_object();
    for (std::size_t i = 0; i < kChangeKindCount; ++i) {
      json_.member(to_string(static_cast<ChangeKind>(i)), set_.counts[i]);
    }
    json_.end_object();
  }

  void reconciliation() {
    const Reconciliation& sums = set_.reconciliation;
    json_.begin_object();
    json_.member("lines_then", sums.lines_then);
    json_.member("lines_now", sums.lines_now);
    json_.member("carried", sums.carried);
    json_.member("new", sums.added);
    json_.member("returned", sums.returned);
    json_.member("unseen_then", sums.unseen_then);
    json_.member("dropped", sums.dropped);
    json_.member("not_covered", sums.not_covered);
    json_.end_object();
  }

  void category(const CategorySummary& summary) {
    json_.begin_object();
    json_.member("category", summary.category);
    json_.member("carried", summary.carried);
    json_.member("new", summary.added);
    json_.member("dropped", summary.dropped);
    json_.member("returned", summary.returned);
    json_.member("unseen_then", summary.unseen_then);
    json_.member("not_covered", summary.not_covered);
    json_.member("moved_in", summary.moved_in);
    json_.member("moved_out", summary.moved_out);
    json_.member("lines_then", summary.lines_then);
    json_.member("lines_now", summary.lines_now);
    nullable("index", summary.index, [this](const IndexFact& each) { fact(each); });
    json_.key("before");
    side(summary.before);
    json_.key("after");
    side(summary.after);
    json_.end_object();
  }

  void side(const CategorySide& state) {
    json_.begin_object();
    json_.member("lines", state.lines);
    json_.member("outside", state.outside);
    json_.member("unpriced", state.unpriced);
    json_.member("unsized", state.unsized);
    json_.member("partial", state.partial);
    json_.key("reach");
    json_.begin_array();
    for (const auto& each : state.reach) reach(each);
    json_.end_array();
    json_.key("prices");
    json_.begin_array();
    for (const auto& each : state.prices) write_ladder(json_, each);
    json_.end_array();
    json_.end_object();
  }

  void reach(const SizeReach& sizes) {
    json_.begin_object();
    json_.member("system", to_string(sizes.system));
    json_.member("fit", to_string(sizes.fit));
    json_.member("lines", sizes.lines);
    json_.key("steps");
    json_.begin_array();
    for (const auto& step : sizes.steps) {
      json_.begin_object();
      json_.member("label", step.size.label);
      json_.member("offering", step.offering);
      json_.member("in_stock", step.in_stock);
      json_.member("stock_unknown", step.stock_unknown);
      interval("offering_interval", step.offering_interval);
      interval("in_stock_interval", step.in_stock_interval);
      json_.end_object();
    }
    json_.end_array();
    json_.end_object();
  }

  void interval(std::string_view name, const std::optional<ShareInterval>& bounds) {
    if (!bounds) return;
    json_.key(name);
    write_interval(json_, *bounds);
  }

  void change(const Change& each) {
    json_.begin_object();
    json_.member("kind", to_string(each.kind));
    nullable("line", each.line, [this](const LineRef& ref) { line(ref); });
    if (!each.line) json_.member("category", each.category);
    nullable("before", each.before, [this](const Fact& side) { any_fact(side); });
    nullable("after", each.after, [this](const Fact& side) { any_fact(side); });
    json_.key("evidence");
    json_.begin_object();
    nullable("before", each.evidence.before, [this](const Sighting& seen) { sighting(seen); });
    nullable("after", each.evidence.after, [this](const Sighting& seen) { sighting(seen); });
    json_.member("link", each.evidence.link);
    json_.end_object();
    if (!each.related.empty()) related(each.related);
    json_.end_object();
  }

  void related(const std::vector<RelatedLine>& lines) {
    json_.key("related");
    json_.begin_array();
    for (const RelatedLine& each : lines) {
      json_.begin_object();
      json_.member("relation", to_string(each.relation));
      json_.member("colour", each.colour);
      json_.key("line");
      line(each.line);
      json_.end_object();
    }
    json_.end_array();
  }

  void line(const LineRef& ref) {
    json_.begin_object();
    json_.member("id", ref.id);
    json_.member("code", ref.code);
    json_.member("name", ref.name);
    json_.member("category", ref.category);
    json_.end_object();
  }

  void sighting(const Sighting& seen) {
    json_.begin_object();
    json_.member("capture", seen.capture);
    json_.member("season", seen.season);
    day("date", seen.on);
    json_.member("document", seen.document);
    nullable("line", seen.line, [this](std::uint64_t number) { json_.value(number); });
    json_.end_object();
  }

  void any_fact(const Fact& side) {
    json_.begin_object();
    std::visit([this](const auto& content) { members(content); }, side);
    json_.end_object();
  }

  void fact(const IndexFact& index) {
    json_.begin_object();
    members(index);
    json_.end_object();
  }

  void members(const NameFact& content) {
    json_.member("code", content.code);
    json_.member("name", content.name);
  }
  void members(const PriceFact& content) {
    json_.member("amount_minor", content.amount.minor);
    json_.member("currency", content.amount.currency.code());
    if (content.full) json_.member("full_amount_minor", content.full->minor);
    if (!content.colours.empty()) strings("colours", content.colours);
    if (!content.sizes.empty()) strings("sizes", content.sizes);
  }
  void members(const ColourFact& content) { json_.member("colour", content.colour); }
  void members(const SizeFact& content) {
    json_.member("system", to_string(content.system));
    json_.member("fit", to_string(content.fit));
    strings("labels", content.labels);
    json_.member("min", content.min);
    json_.member("max", content.max);
  }
  void members(const CompositionFact& content) { json_.member("composition", content.composition); }
  void members(const CategoryFact& content) { json_.member("category", content.category); }
  void members(const StockFact& content) {
    json_.member("in_stock", content.in_stock);
    json_.member("offered", content.offered);
  }
  void members(const IndexFact& content) {
    json_.member("jevons", index_text(content.jevons));
    json_.member("dutot", index_text(content.dutot));
    json_.member("carli", index_text(content.carli));
    json_.member("lines", content.lines);
  }
  void members(const TermsFact& content) {
    json_.member("field", content.field);
    json_.member("value", content.value);
    json_.member("sentence", content.sentence);
    json_.member("direction", to_string(content.direction));
  }

  const ChangeSet& set_;
  std::string from_day_;
  std::string to_day_;
  JsonWriter json_;
};

}  // namespace

std::string index_text(std::int64_t millionths) {
  constexpr std::uint64_t kOne = 1'000'000;
  const auto size = millionths < 0 ? 0 - static_cast<std::uint64_t>(millionths)
                                   : static_cast<std::uint64_t>(millionths);
  return fmt::format("{}{}.{:06}", millionths < 0 ? "-" : "", size / kOne, size % kOne);
}

std::string change_json(const Change& change) {
  const ChangeSet alone;
  return ChangesWriter(alone).write_one(change);
}

std::string changes_json(const ChangeSet& set) { return ChangesWriter(set).write(); }

}  // namespace rangebook
