// Parts, the page among them, its places in the file.
#include "importers/mhtml_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <deque>
#include <optional>
#include <utility>

#include "importers/html_scan.h"
#include "importers/mhtml_page.h"
#include "importers/mime_body.h"
#include "importers/mime_parts.h"
#include "importers/page_address.h"
#include "importers/page_reader.h"
#include "importers/record_source.h"
#include "importers/saved_page.h"
#include "importers/utf8.h"

namespace rangebook {
namespace {

constexpr std::string_view kSaveAsHtml =
    "Open the page in the browser and save it as \"Web page, HTML only\".";

class MhtmlReader final : public RowReader {
 public:
  MhtmlReader(std::string_view document, std::uint32_t index)
      : document_(document), index_(index) {}

  Step next() override;
  const RawRow& row() const override { return row_; }
  const Rejection& rejection() const override { return rejection_; }
  std::string mapping() const override;
  void keep_examples() override { examples_ = true; }
  DocumentPreview preview() const override;

 private:
  void open();
  void open_part(const MimePart& part);
  void note_damage(const MimePart& part);
  void refuse(RejectionKind kind, std::string what, std::string_view how_to_fix);
  void remark(std::string what);
  void show_row();
  void show_rejection();
  std::uint64_t place_of(std::uint64_t text_byte) const;
  std::uint64_t line_of(std::uint64_t byte);

  std::string_view document_;
  std::uint32_t index_;
  bool opened_ = false;
  bool examples_ = false;
  MimeDocument archive_;
  std::string address_;
  std::size_t frames_ = 0;
  std::uint64_t body_byte_ = 0;  ///< of the page's encoded body in the file
  MimeBody body_;
  std::unique_ptr<RowReader> page_;
  std::deque<Rejection> ready_;
  std::uint64_t counted_byte_ = 0;
  std::uint64_t counted_line_ = 1;
  RawRow row_;
  Rejection rejection_;
};

RowReader::Step MhtmlReader::next() {
  if (!std::exchange(opened_, true)) open();
  if (!ready_.empty()) {
    rejection_ = std::move(ready_.front());
    ready_.pop_front();
    return Step::rejection;
  }
  const Step step = page_ ? page_->next() : Step::end;
  if (step == Step::row) show_row();
  if (step == Step::rejection) show_rejection();
  return step;
}

void MhtmlReader::open() {
  if (document_.size() > kMaxMhtmlBytes) {
    return refuse(RejectionKind::over_limit,
                  fmt::format("The file has more than {} MiB.", kMaxMhtmlBytes >> 20U),
                  kSaveAsHtml);
  }
  auto read = read_mime(document_);
  if (auto* fault = std::get_if<DocumentFault>(&read)) {
    return refuse(fault->kind, std::move(fault->what), fault->how_to_fix);
  }
  archive_ = std::get<MimeDocument>(std::move(read));
  const MimePart* page = find_page_part(archive_);
  if (page == nullptr) {
    return refuse(RejectionKind::unreadable_document,
                  fmt::format("The file is no saved page (MHTML): none of its {} parts is an HTML "
                              "page.",
                              archive_.parts.size()),
                  kSaveAsHtml);
  }
  open_part(*page);
}

void MhtmlReader::open_part(const MimePart& part) {
  auto decoded = MimeBody::decode(part.body, part.encoding);
  if (!decoded) {
    return refuse(
        RejectionKind::unreadable_document,
        fmt::format("The page in the file is in the transfer encoding \"{}\", which is not known.",
                    excerpt_of(part.encoding, kExcerptBytes)),
        kSaveAsHtml);
  }
  body_ = *std::move(decoded);
  body_byte_ = static_cast<std::uint64_t>(part.body.data() - document_.data());
  if (body_.text().empty()) {
    return refuse(RejectionKind::unreadable_document, "The page in the file is empty.",
                  kSaveAsHtml);
  }
  frames_ = static_cast<std::size_t>(
                std::count_if(archive_.parts.begin(), archive_.parts.end(), is_html_part)) -
            1;
  address_ = resolve_address(part.location, archive_.location);
  if (!is_web_address(address_)) address_ = archive_.location;
  if (!is_web_address(address_)) address_.clear();
  note_damage(part);
  page_ = open_page(body_.text(), index_,
                    {.address = address_, .charset = part.charset, .web_archive = true});
  if (examples_) page_->keep_examples();
}

void MhtmlReader::note_damage(const MimePart& part) {
  if (body_.bad_signs() > 0) {
    remark(
        fmt::format("The encoded text of the page holds {} signs that do not belong there; they "
                    "were passed over.",
                    body_.bad_signs()));
  }
  if (part.cut_short) remark("The file breaks off within the page; what stood behind is missing.");
}

void MhtmlReader::refuse(RejectionKind kind, std::string what, std::string_view how_to_fix) {
  Rejection rejection;
  rejection.document = index_;
  rejection.kind = kind;
  rejection.what = std::move(what);
  rejection.how_to_fix = how_to_fix;
  ready_.push_back(std::move(rejection));
}

void MhtmlReader::remark(std::string what) {
  refuse(RejectionKind::bad_markup, std::move(what), "Save the page again.");
  ready_.back().refused = Refused::nothing;
  ready_.back().byte = body_byte_;
  ready_.back().line = line_of(body_byte_);
}

void MhtmlReader::show_row() {
  row_ = page_->row();
  row_.origin.byte = place_of(row_.origin.byte);
  row_.origin.line = line_of(row_.origin.byte);
}

void MhtmlReader::show_rejection() {
  rejection_ = page_->rejection();
  if (!rejection_.line) return;
  rejection_.byte = place_of(rejection_.byte);
  rejection_.line = line_of(rejection_.byte);
}

std::uint64_t MhtmlReader::place_of(std::uint64_t text_byte) const {
  return body_byte_ + body_.encoded_place(text_byte);
}

// Rows mostly come in the order of the page, so the way from the last place is short.
std::uint64_t MhtmlReader::line_of(std::uint64_t byte) {
  byte = std::min<std::uint64_t>(byte, document_.size());
  if (byte < counted_byte_) {
    counted_byte_ = 0;
    counted_line_ = 1;
  }
  counted_line_ += count_lines(document_.substr(counted_byte_, byte - counted_byte_));
  counted_byte_ = byte;
  return counted_line_;
}

std::string MhtmlReader::mapping() const {
  if (!page_) return "mhtml";
  return fmt::format("mhtml parts={} frames left aside={} address={} {}", archive_.parts.size(),
                     frames_, address_.empty() ? "unknown" : address_, page_->mapping());
}

DocumentPreview MhtmlReader::preview() const {
  DocumentPreview preview = page_ ? page_->preview() : DocumentPreview{};
  if (page_ && !address_.empty()) {
    preview.detected.insert(preview.detected.begin(), {"saved from", address_, false});
  }
  if (frames_ > 0) {
    preview.detected.push_back({"frames left aside", std::to_string(frames_), false});
  }
  return preview;
}

}  // namespace

std::unique_ptr<RowReader> open_mhtml(std::string_view document, std::uint32_t document_index) {
  return std::make_unique<MhtmlReader>(document, document_index);
}

}  // namespace rangebook
