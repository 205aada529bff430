// The brief as JSON, in reading order.
#include "reports/brief_formats.h"
#include "reports/json_writer.h"

namespace rangebook {
namespace {

class BriefWriter {
 public:
  explicit BriefWriter(const Brief& brief) : brief_(brief) {}

  std::string write() {
    json_.begin_object();
    json_.member("format", "rangebook.brief/1");
    json_.member("title", brief_title(brief_));
    json_.member("shop", brief_.shop.slug);
    json_.member("invented", brief_.invented);
    json_.key("from");
    capture(brief_.from);
    json_.key("to");
    capture(brief_.to);
    list("headlines", brief_.headlines, [this](const Headline& each) { headline(each); });
    list("sections", brief_.sections, [this](const BriefSection& each) { section(each); });
    sources();
    list("cautions", brief_.cautions, [this](const std::string& each) { json_.value(each); });
    json_.line_break();
    json_.end_object();
    return json_.take() + '\n';
  }

 private:
  template <typename List, typename Write>
  void list(std::string_view name, const List& elements, Write write_one) {
    json_.line_break();
    json_.key(name);
    json_.begin_array();
    for (const auto& element : elements) {
      json_.line_break();
      write_one(element);
    }
    json_.end_array();
  }

  void capture(const CaptureInfo& info) {
    json_.begin_object();
    json_.member("id", info.id);
    json_.member("season", info.season);
    json_.member("date", to_string(info.on));
    json_.member("scope", to_string(info.scope));
    json_.end_object();
  }

  void text_members(const Phrase& phrase) {
    json_.member("text", plain_text(phrase, false));
    json_.key("notes");
    json_.begin_array();
    for (const std::size_t note : notes_of(phrase)) json_.value(note);
    json_.end_array();
  }

  void phrase(const Phrase& content) {
    json_.begin_object();
    text_members(content);
    json_.end_object();
  }

  void headline(const Headline& headline) {
    json_.begin_object();
    json_.member("theme", to_string(headline.theme));
    text_members(headline.sentence);
    json_.end_object();
  }

  void section(const BriefSection& section) {
    json_.begin_object();
    json_.member("id", section.id);
    json_.member("heading", section.heading);
    list("paragraphs", section.paragraphs, [this](const Phrase& each) { phrase(each); });
    list("tables", section.tables, [this](const BriefTable& each) { table(each); });
    json_.end_object();
  }

  void table(const BriefTable& table) {
    json_.begin_object();
    json_.member("key", table.key);
    json_.member("caption", table.caption);
    if (!table.charts.empty()) {
      list("findings", table.charts,
           [this](const Chart& each) { json_.value(plain_text(each.finding, false)); });
    }
    json_.key("columns");
    json_.begin_array();
    for (const BriefColumn& column : table.columns) {
      json_.begin_object();
      json_.member("key", column.key);
      json_.member("heading", column.heading);
      json_.end_object();
    }
    json_.end_array();
    list("rows", table.rows, [&](const std::vector<Phrase>& each) { row(table, each); });
    json_.end_object();
  }

  void row(const BriefTable& table, const std::vector<Phrase>& cells) {
    json_.begin_object();
    for (std::size_t i = 0; i < cells.size(); ++i) {
      json_.key(table.columns[i].key);
      phrase(cells[i]);
    }
    json_.end_object();
  }

  void sources() {
    std::size_t number = 0;
    list("sources", brief_.sources, [&](const Source& source) {
      json_.begin_object();
      json_.member("note", ++number);
      json_.member("capture", source.capture);
      json_.member("season", source.season);
      json_.member("date", to_string(source.on));
      json_.member("document", source.document);
      json_.key("line");
      if (source.line) {
        json_.value(*source.line);
      } else {
        json_.null();
      }
      json_.end_object();
    });
  }

  const Brief& brief_;
  JsonWriter json_;
};

}  // namespace

std::string brief_json(const Brief& brief) { return BriefWriter(brief).write(); }

}  // namespace rangebook
