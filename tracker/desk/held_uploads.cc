// An upload is written beside its place and moved there when it is whole.
#include "tracker/desk/held_uploads.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "schema/error.h"
#include "schema/one_line.h"
#include "tracker/desk/desk_guard.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kIdSigns = 16;
constexpr std::size_t kLongestName = 200;
constexpr const char* kAbout = "about";
constexpr const char* kPolicy = "policy.txt";

bool is_id(const std::string& name) {
  return name.size() == kIdSigns && name.find_first_not_of("0123456789abcdef") == name.npos;
}

void write_file(const fs::path& path, const std::string& bytes) {
  std::ofstream out(path, std::ios::binary);
  out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  out.close();
  if (!out) throw Error(fmt::format("Cannot write {}: is the disk full?", path.string()));
}

/// A folder that goes again unless it is moved to its place: half an upload takes room and is shown
/// nowhere.
class Unfinished {
 public:
  explicit Unfinished(fs::path place) : place_(std::move(place)) { fs::create_directories(place_); }
  ~Unfinished() {
    std::error_code moved_or_stuck;
    fs::remove_all(place_, moved_or_stuck);
  }
  Unfinished(const Unfinished&) = delete;
  Unfinished& operator=(const Unfinished&) = delete;

  void put(const std::string& name, const std::string& bytes) const {
    write_file(place_ / name, bytes);
  }
  void move_to(const fs::path& place) const { fs::rename(place_, place); }

 private:
  const fs::path place_;
};

/// `kind=text` a line; of a word and an option the text is `name=value` again.
std::string about_text(const HeldUpload& upload) {
  std::string out;
  const auto line = [&out](std::string_view kind, const std::string& text) {
    out += fmt::format("{}={}\n", kind, on_one_line(text));
  };
  for (const auto& document : upload.documents) line("document", document.name);
  if (!upload.policy.empty()) line("policy", "");
  for (const auto& word : upload.words) line("word", fmt::format("{}={}", word.name, word.value));
  for (const auto& [name, word] : option_words(upload.options))
    line("option", fmt::format("{}={}", name, word));
  return out;
}

void take_line(const std::string& line, const fs::path& place, HeldUpload& upload) {
  const auto at = std::min(line.find('='), line.size());
  const std::string kind = line.substr(0, at);
  const std::string text =
      off_one_line(std::string_view(line).substr(std::min(at + 1, line.size())));
  const auto equals = std::min(text.find('='), text.size());
  const std::string value = text.substr(std::min(equals + 1, text.size()));
  if (kind == "document") {
    const std::string number = std::to_string(upload.documents.size() + 1);
    upload.documents.push_back({(place / number).string(), text});
  }
  if (kind == "policy") upload.policy = (place / kPolicy).string();
  if (kind == "word") upload.words.push_back({text.substr(0, equals), value, {}});
  if (kind == "option") set_option(upload.options, text.substr(0, equals), value);
}

/// Letters of UTF-8 are not cut through.
std::string end_of(const std::string& text, std::size_t bytes) {
  if (text.size() <= bytes) return text;
  std::size_t from = text.size() - bytes;
  while (from < text.size() && (static_cast<unsigned char>(text[from]) & 0xC0U) == 0x80U) ++from;
  return text.substr(from);
}

}  // namespace

std::string shown_name(const std::string& said) {
  std::vector<std::string> parts;
  std::string part;
  for (const char sign : said + '/') {
    if (sign != '/' && sign != '\\') {
      part += sign;
      continue;
    }
    if (!part.empty() && part != "." && part != ".." && !part.ends_with(':')) parts.push_back(part);
    part.clear();
  }
  const std::string name = end_of(fmt::format("{}", fmt::join(parts, "/")), kLongestName);
  return name.empty() ? "document" : name;
}

std::variant<HeldUpload, std::string> HeldUploads::hold(const std::vector<DeskField>& documents,
                                                        const std::string& policy,
                                                        const UploadWords& words) const {
  if (ids().size() >= kMostHeld) {
    return fmt::format("{} uploads wait already. Keep or drop one of them first.", kMostHeld);
  }
  const std::string id = new_secret().substr(0, kIdSigns);
  const Unfinished place(fs::path(folder_) / (id + ".new"));
  fs::permissions(folder_, fs::perms::owner_all);
  HeldUpload upload;
  upload.words = words;
  for (const auto& document : documents) {
    upload.documents.push_back({{}, shown_name(document.file_name)});
    place.put(std::to_string(upload.documents.size()), document.value);
  }
  if (!policy.empty()) {
    upload.policy = kPolicy;
    place.put(kPolicy, policy);
  }
  place.put(kAbout, about_text(upload));
  place.move_to(fs::path(folder_) / id);
  return read(id).value();
}

std::vector<std::string> HeldUploads::ids() const {
  std::vector<std::string> ids;
  std::error_code none_yet;
  for (const auto& entry : fs::directory_iterator(folder_, none_yet)) {
    std::string name = entry.path().filename().string();
    if (is_id(name)) ids.push_back(std::move(name));
  }
  std::sort(ids.begin(), ids.end());
  return ids;
}

std::optional<HeldUpload> HeldUploads::read(const std::string& id) const {
  const fs::path place = fs::path(folder_) / id;
  std::ifstream in(place / kAbout);
  if (!in) return std::nullopt;
  HeldUpload upload;
  upload.id = id;
  for (std::string line; std::getline(in, line);) take_line(line, place, upload);
  return upload;
}

std::optional<HeldUpload> HeldUploads::find(const std::string& id) const {
  for (const std::string& each : ids()) {
    if (each == id) return read(each);
  }
  return std::nullopt;
}

std::vector<HeldUpload> HeldUploads::all() const {
  std::vector<HeldUpload> all;
  for (const std::string& id : ids()) {
    if (auto upload = read(id)) all.push_back(*std::move(upload));
  }
  const auto first_name = [](const HeldUpload& upload) {
    return upload.documents.empty() ? std::string{} : upload.documents.front().name;
  };
  std::stable_sort(all.begin(), all.end(), [&](const HeldUpload& a, const HeldUpload& b) {
    return first_name(a) < first_name(b);
  });
  return all;
}

void HeldUploads::say(const HeldUpload& upload) const {
  const fs::path place = fs::path(folder_) / upload.id;
  write_file(place / "about.new", about_text(upload));
  fs::rename(place / "about.new", place / kAbout);
}

void HeldUploads::drop(const HeldUpload& upload) const {
  fs::remove_all(fs::path(folder_) / upload.id);
}

}  // namespace rangebook
