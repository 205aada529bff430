// From a document to rows: encoding, scan, JSON, products, and every refusal in words.
#include "importers/page_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <deque>
#include <optional>
#include <utility>

#include "importers/html_scan.h"
#include "importers/markup_source.h"
#include "importers/page_address.h"
#include "importers/page_encoding.h"
#include "importers/page_merge.h"
#include "importers/page_remarks.h"
#include "importers/page_sniff.h"
#include "importers/page_syntaxes.h"
#include "importers/saved_page.h"
#include "importers/utf8.h"
#include "importers/utf8_sequence.h"

namespace rangebook {
namespace {

constexpr std::size_t kDeclarationBytes = 4096;  // where a page declares its encoding
constexpr std::size_t kMaxNamedTypes = 8;

std::string excerpt(std::string_view text) {
  return excerpt_of(well_formed(text.substr(0, kExcerptBytes)), kExcerptBytes);
}

bool is_blank(const ProductRow& row) {
  return std::all_of(row.cells.begin(), row.cells.end(),
                     [](const std::string& cell) { return cell.empty(); });
}

class PageReader final : public RowReader {
 public:
  PageReader(std::string_view document, std::uint32_t index, PageOrigin origin)
      : document_(document), index_(index), origin_(std::move(origin)) {}

  Step next() override;
  const RawRow& row() const override { return row_; }
  const Rejection& rejection() const override { return rejection_; }
  std::string mapping() const override;
  void keep_examples() override { keep_ = true; }
  DocumentPreview preview() const override;

 private:
  using Output = std::variant<ProductRow, Rejection>;
  struct Place {
    std::uint64_t text_byte = 0;  ///< in the text
    std::uint64_t byte = 0;       ///< in the document, behind its byte order mark
    std::uint64_t line = 1;
  };

  void open();
  void read_text();
  void read_blocks();
  void add_block(const ScriptBlock& block);
  void find_products();
  PageFrame frame() const;
  bool lost_its_scripts() const;
  void read_all_syntaxes(std::vector<ProductRow> first);
  void refuse_tree(const TreeLimit& limit);
  void refuse(RejectionKind kind, std::string what, std::string how_to_fix);
  void refuse_block(const ScriptBlock& block, const JsonProblem& problem);
  void refuse_page_without_products();
  void note_bad_bytes(const ScriptBlock& block, std::size_t bytes);
  Rejection rejection_at(std::uint64_t byte);
  Rejection note_of(const ProductRow& row, const RowNote& note);
  void note_syntax(PageSyntax syntax, const std::vector<ProductRow>& rows);
  void give(ProductRow row);
  Rejection nameless(const ProductRow& row);
  bool refill();
  void show(ProductRow row);
  void move_to(std::uint64_t byte);

  std::string_view document_;
  std::uint32_t index_;
  PageOrigin origin_;
  bool opened_ = false;
  bool bad_block_ = false;
  std::size_t repaired_ = 0;
  PageText page_;
  Place place_;
  PageScan scan_;
  MarkupSource json_;
  std::string others_;  ///< what was read besides JSON-LD, for the mapping
  std::deque<Output> ready_;
  ProductRow shown_;
  RawRow row_;
  Rejection rejection_;
  bool keep_ = false;        ///< what preview() is to tell
  DocumentPreview preview_;  ///< syntaxes and conflicts so far
};

RowReader::Step PageReader::next() {
  if (!std::exchange(opened_, true)) open();
  while (ready_.empty()) {
    if (!refill()) return Step::end;
  }
  Output output = std::move(ready_.front());
  ready_.pop_front();
  if (auto* rejection = std::get_if<Rejection>(&output)) {
    rejection_ = std::move(*rejection);
    return Step::rejection;
  }
  show(std::get<ProductRow>(std::move(output)));
  return Step::row;
}

void PageReader::open() {
  const WrongDocument wrong = wrong_document(document_);
  if (document_.size() > kMaxPageBytes) {
    return refuse(RejectionKind::over_limit,
                  fmt::format("The page has {} MiB; the limit is {} MiB.", document_.size() >> 20U,
                              kMaxPageBytes >> 20U),
                  "Save the page as \"Web page, HTML only\", without its pictures.");
  }
  if (!wrong.what.empty()) {
    return refuse(RejectionKind::unreadable_document, std::string(wrong.what),
                  std::string(wrong.how_to_fix));
  }
  read_text();
}

void PageReader::read_text() {
  const auto declared = origin_.charset.empty()
                            ? scan_page(document_.substr(0, kDeclarationBytes)).charset
                            : std::optional(origin_.charset);
  auto page = decode_page(document_, find_encoding(document_, declared));
  if (!page) {
    return refuse(RejectionKind::bad_encoding,
                  fmt::format("The page says it is in the encoding \"{}\", which is not known.",
                              excerpt(declared.value_or(""))),
                  "Save the page again in UTF-8.");
  }
  page_ = std::move(*page);
  if (!page_.converted.empty()) page_.text = page_.converted;
  scan_ = scan_page(page_.text);
  read_blocks();
}

void PageReader::read_blocks() {
  for (const auto& block : scan_.json_ld) add_block(block);
  find_products();
}

void PageReader::add_block(const ScriptBlock& block) {
  const bool blank = block.text.find_first_not_of(" \t\r\n\f") == block.text.npos;
  if (blank) return;
  const auto result = json_.tree.add(block.text, block.byte);
  if (const auto* problem = std::get_if<JsonProblem>(&result)) return refuse_block(block, *problem);
  const auto& added = std::get<JsonBlock>(result);
  json_.roots.push_back(added.root);
  repaired_ += added.repaired ? 1 : 0;
  if (added.bad_bytes > 0) note_bad_bytes(block, added.bad_bytes);
}

PageFrame PageReader::frame() const {
  PageFrame frame;
  const std::string shared = well_formed(scan_.og_url.value_or(""));
  const std::string stated = well_formed(scan_.canonical.value_or(shared));
  const std::string own = saved_from(page_.text).value_or(origin_.address);
  frame.address = resolve_address(stated, is_web_address(shared) ? shared : own);
  if (!is_web_address(frame.address)) frame.address = own;
  const std::string_view at = own.empty() ? frame.address : own;
  frame.base = resolve_address(well_formed(scan_.base.value_or(std::string(at))), at);
  return frame;
}

// A tree costs fifty times the scan, so it is built only where JSON-LD leaves something open or is
// not alone.
void PageReader::find_products() {
  json_.find_products(scan_.language.value_or(""));
  json_.open_rows(frame());
  auto first = json_.next();
  const bool enough = first && states_the_essentials(*first) && !mentions_other_markup(page_.text);
  if (!enough && json_.products() <= kMaxMergedProducts) {
    return read_all_syntaxes(first ? std::move(*first) : std::vector<ProductRow>{});
  }
  if (!first) return;
  note_syntax(PageSyntax::json_ld, *first);
  if (keep_ && enough) {
    preview_.detected.push_back(
        {"other markup", "not looked at: JSON-LD states price and stock of all", false});
  }
  for (auto& row : *first) give(std::move(row));
}

void PageReader::read_all_syntaxes(std::vector<ProductRow> first) {
  auto others = read_syntaxes(page_.text, frame(), scan_);
  const auto* read = std::get_if<PageSyntaxes>(&others);
  if (read == nullptr && first.empty()) return refuse_tree(std::get<TreeLimit>(others));
  if (read == nullptr) {
    note_syntax(PageSyntax::json_ld, first);
    for (auto& row : first) give(std::move(row));
    return;
  }
  others_ = read->summary;
  std::vector<SyntaxRows> all = read->rows;
  auto& json =
      all.emplace_back(SyntaxRows{.syntax = PageSyntax::json_ld, .rows = std::move(first)});
  for (auto& row : json_.rest()) json.rows.push_back(std::move(row));
  note_syntax(PageSyntax::json_ld, json.rows);
  for (const auto& other : read->rows) note_syntax(other.syntax, other.rows);
  const std::string priced = first_with_prices(all);
  auto merged = merge_page(std::move(all));
  const std::string shared = json_.breadcrumbs("");
  fill_category(merged, shared.empty() ? read->breadcrumbs : shared);
  if (merged.empty() && !bad_block_) return refuse_page_without_products();
  if (lost_its_scripts()) {
    ready_.emplace_back(missing_scripts(priced));
    std::get<Rejection>(ready_.back()).document = index_;
  }
  for (const auto& row : merged) give(row);
}

bool PageReader::refill() {
  auto rows = json_.next();
  if (!rows) return false;
  note_syntax(PageSyntax::json_ld, *rows);
  for (auto& row : *rows) give(std::move(row));
  return true;
}

void PageReader::note_syntax(PageSyntax syntax, const std::vector<ProductRow>& rows) {
  if (!keep_ || rows.empty()) return;
  const auto name = to_string(syntax);
  auto& known = preview_.syntaxes;
  auto at = std::find_if(known.begin(), known.end(),
                         [&](const SyntaxPreview& one) { return one.syntax == name; });
  if (at == known.end()) at = known.insert(at, {std::string(name), 0, {}});
  at->rows += rows.size();
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    const auto field = static_cast<Field>(i);
    const bool has = std::any_of(rows.begin(), rows.end(),
                                 [&](const ProductRow& row) { return !row[field].empty(); });
    const bool told = std::find(at->fields.begin(), at->fields.end(), field) != at->fields.end();
    if (has && !told) at->fields.push_back(field);
  }
}

void PageReader::give(ProductRow row) {
  if (is_blank(row)) {
    ready_.emplace_back(nameless(row));
    return;
  }
  std::vector<Rejection> said;
  if (row.doubt) {
    said.push_back(note_of(row, {.kind = RejectionKind::ambiguous_price,
                                 .refused = Refused::cell,
                                 .field = Field::price,
                                 .what = row.doubt->what,
                                 .how_to_fix = row.doubt->how_to_fix,
                                 .excerpt = row.doubt->excerpt}));
  }
  for (const auto& note : row.notes) {
    said.push_back(note_of(row, note));
    if (!keep_ || !note.conflict || ++preview_.conflict_count > kPreviewConflicts) continue;
    preview_.conflicts.push_back(*note.conflict);
  }
  ready_.emplace_back(std::move(row));
  for (auto& rejection : said) ready_.emplace_back(std::move(rejection));
}

void PageReader::show(ProductRow row) {
  shown_ = std::move(row);
  for (std::size_t i = 0; i < kFieldCount; ++i) row_.cells[i] = shown_.cells[i];
  move_to(shown_.byte);
  row_.origin = {
      .document = index_, .line = place_.line, .byte = byte_order_mark(document_) + place_.byte};
}

// Rows mostly come in the order of the page, so the way from the last place is short.
void PageReader::move_to(std::uint64_t byte) {
  if (byte < place_.text_byte) place_ = {};
  const auto between = page_.text.substr(place_.text_byte, byte - place_.text_byte);
  place_.line += count_lines(between);
  place_.byte += page_.converted.empty() ? between.size() : encoded_size(between, page_.encoding);
  place_.text_byte = byte;
}

Rejection PageReader::rejection_at(std::uint64_t byte) {
  move_to(byte);
  Rejection rejection;
  rejection.document = index_;
  rejection.line = place_.line;
  rejection.byte = byte_order_mark(document_) + place_.byte;
  return rejection;
}

Rejection PageReader::nameless(const ProductRow& row) {
  Rejection rejection = rejection_at(row.byte);
  rejection.field = to_string(Field::name);
  rejection.kind = RejectionKind::missing_name;
  rejection.what = "The page marks up a product, but states neither its name nor anything else.";
  rejection.how_to_fix = "Type the line into a CSV.";
  return rejection;
}

Rejection PageReader::note_of(const ProductRow& row, const RowNote& note) {
  Rejection rejection = rejection_at(row.byte);
  rejection.field = to_string(note.field);
  rejection.kind = note.kind;
  rejection.refused = note.refused;
  rejection.what = note.what;
  rejection.how_to_fix = note.how_to_fix;
  rejection.excerpt = excerpt(note.excerpt);
  rejection.line_code = row[Field::line_code];
  rejection.name = row[Field::name];
  return rejection;
}

void PageReader::refuse(RejectionKind kind, std::string what, std::string how_to_fix) {
  Rejection rejection;
  rejection.document = index_;
  rejection.kind = kind;
  rejection.what = std::move(what);
  rejection.how_to_fix = std::move(how_to_fix);
  ready_.emplace_back(std::move(rejection));
}

void PageReader::refuse_block(const ScriptBlock& block, const JsonProblem& problem) {
  bad_block_ = true;
  Rejection rejection = rejection_at(block.byte + problem.byte);
  rejection.excerpt = excerpt(block.text.substr(std::min(problem.byte, block.text.size())));
  explain(problem, problem.at_end || !block.closed, rejection);
  ready_.emplace_back(std::move(rejection));
}

void PageReader::note_bad_bytes(const ScriptBlock& block, std::size_t bytes) {
  Rejection rejection = rejection_at(block.byte + utf8_prefix(block.text));
  rejection.kind = RejectionKind::bad_encoding;
  rejection.refused = Refused::cell;
  rejection.what = fmt::format(
      "{} bytes of the product markup are not UTF-8; they were read as \"\uFFFD\".", bytes);
  rejection.how_to_fix = "Save the page again; check the names and colours of this page.";
  rejection.excerpt = excerpt(block.text.substr(utf8_prefix(block.text)));
  ready_.emplace_back(std::move(rejection));
}

void PageReader::refuse_tree(const TreeLimit& limit) {
  refuse(RejectionKind::over_limit, limit_sentence(limit),
         "Save the page of a single product as \"Web page, HTML only\", or type the line into a "
         "CSV.");
}

void PageReader::refuse_page_without_products() {
  std::string types;
  std::size_t named = 0;
  for (const auto type : json_.other_types()) {
    if (named++ < kMaxNamedTypes) types += (types.empty() ? "" : ", ") + std::string(type);
  }
  const std::string found = lost_its_scripts() ? "its scripts, and any JSON-LD with them, were "
                                                 "left out when it was saved"
                            : scan_.json_ld.empty()
                                ? "it has no JSON-LD"
                                : fmt::format("its {} JSON-LD blocks hold {}", scan_.json_ld.size(),
                                              types.empty() ? "nothing typed" : excerpt(types));
  refuse(RejectionKind::unreadable_document,
         fmt::format("The page shows no product: looked for a schema.org Product or ProductGroup "
                     "in JSON-LD, microdata and RDFa, for product tags in its head and for a "
                     "heading with a price, but {}.",
                     found),
         "Save the page of a single product as \"Web page, HTML only\", or type the line into a "
         "CSV.");
}

bool PageReader::lost_its_scripts() const { return origin_.web_archive && scan_.scripts == 0; }

std::string PageReader::mapping() const {
  return fmt::format("json-ld blocks={} repaired={} products={}{} encoding={}",
                     scan_.json_ld.size(), repaired_, json_.products(), others_,
                     page_.encoding.empty() ? "unknown" : page_.encoding);
}

DocumentPreview PageReader::preview() const {
  DocumentPreview preview = preview_;
  for (auto& one : preview.syntaxes) std::sort(one.fields.begin(), one.fields.end());
  if (!page_.encoding.empty()) {
    preview.detected.insert(preview.detected.begin(), {"encoding", page_.encoding, false});
  }
  if (repaired_ > 0) {
    preview.detected.push_back(
        {"JSON-LD repaired", fmt::format("{} blocks that were no valid JSON", repaired_), false});
  }
  return preview;
}

}  // namespace

std::unique_ptr<RowReader> open_page(std::string_view html, std::uint32_t document_index,
                                     PageOrigin origin) {
  return std::make_unique<PageReader>(html, document_index, std::move(origin));
}

}  // namespace rangebook
