// The preview key by key, for programs and pages.
#include "reports/json_writer.h"
#include "reports/mapping_preview.h"

namespace rangebook {
namespace {

std::string_view known_name(ColumnPreview::Known known) {
  switch (known) {
    case ColumnPreview::Known::by_name:
      return "name";
    case ColumnPreview::Known::by_choice:
      return "choice";
    case ColumnPreview::Known::by_values:
      return "values";
  }
  return "";
}

class PreviewWriter {
 public:
  std::string write(const MappingPreview& preview) {
    out_.begin_object();
    out_.member("format", "rangebook.preview/1");
    out_.member("shop", preview.capture.shop);
    out_.member("season", preview.capture.season);
    out_.member("date", to_string(preview.capture.on));
    out_.member("scope", to_string(preview.capture.scope));
    out_.member("lines", preview.lines);
    out_.member("variants", preview.variants);
    out_.member("new_lines", preview.new_lines);
    out_.member("same_lines", preview.same_lines);
    list("documents", preview.documents, [&](const auto& each) { document(each); });
    texts("notes", preview.notes);
    out_.line_break();
    out_.end_object();
    return out_.take() + "\n";
  }

 private:
  template <typename Values, typename Write>
  void list(std::string_view name, const Values& values, const Write& write) {
    out_.key(name);
    out_.begin_array();
    for (const auto& value : values) write(value);
    out_.end_array();
  }

  void texts(std::string_view name, const std::vector<std::string>& values) {
    list(name, values, [&](const std::string& text) { out_.value(text); });
  }

  void fields(const std::vector<Field>& values) {
    list("fields", values, [&](Field field) { out_.value(to_string(field)); });
  }

  void document(const DocumentPreview& document) {
    out_.line_break();
    out_.begin_object();
    out_.member("name", document.name);
    out_.member("importer", document.importer);
    out_.member("profile", document.profile);
    out_.member("rows", document.rows);
    out_.member("refused_rows", document.refused_rows);
    out_.member("refused_cells", document.refused_cells);
    out_.member("doubted", document.doubted);
    list("detected", document.detected, [&](const Detection& found) { detection(found); });
    list("columns", document.columns, [&](const ColumnPreview& each) { column(each); });
    list("syntaxes", document.syntaxes, [&](const SyntaxPreview& each) { syntax(each); });
    out_.member("conflict_count", document.conflict_count);
    list("conflicts", document.conflicts, [&](const SyntaxConflict& each) { conflict(each); });
    texts("doubts", document.doubts);
    out_.end_object();
  }

  void detection(const Detection& found) {
    out_.begin_object();
    out_.member("what", found.what);
    out_.member("value", found.value);
    out_.member("stated", found.stated);
    out_.end_object();
  }

  void column(const ColumnPreview& column) {
    out_.line_break();
    out_.begin_object();
    out_.key("place");
    if (column.place > 0) {
      out_.value(column.place);
    } else {
      out_.null();
    }
    out_.member("name", column.name);
    fields(column.fields);
    out_.member("known_by", column.fields.empty() ? "" : known_name(column.known));
    list("examples", column.examples, [&](const ColumnExample& each) { example(each); });
    texts("doubts", column.doubts);
    out_.end_object();
  }

  void example(const ColumnExample& example) {
    out_.begin_object();
    out_.member("text", example.text);
    out_.member("read", example.read);
    out_.end_object();
  }

  void syntax(const SyntaxPreview& syntax) {
    out_.begin_object();
    out_.member("syntax", syntax.syntax);
    out_.member("rows", syntax.rows);
    fields(syntax.fields);
    out_.end_object();
  }

  void conflict(const SyntaxConflict& conflict) {
    out_.line_break();
    out_.begin_object();
    out_.member("line", conflict.line);
    out_.member("field", to_string(conflict.field));
    out_.member("taken_from", conflict.taken_from);
    out_.member("taken", conflict.taken);
    out_.member("other_from", conflict.other_from);
    out_.member("other", conflict.other);
    out_.end_object();
  }

  JsonWriter out_;
};

}  // namespace

std::string preview_json(const MappingPreview& preview) { return PreviewWriter().write(preview); }

}  // namespace rangebook
