// Fields by name, and addresses (RFC 3986, section 2).
#include "tracker/desk/desk_values.h"

#include <fmt/format.h>

namespace rangebook {
namespace {

bool is_unreserved(char sign) {
  return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z') ||
         (sign >= '0' && sign <= '9') || sign == '-' || sign == '.' || sign == '_' || sign == '~';
}

std::string encoded(std::string_view text) {
  std::string out;
  for (const char sign : text) {
    if (is_unreserved(sign)) {
      out += sign;
    } else {
      out += fmt::format("%{:02X}", static_cast<unsigned char>(sign));
    }
  }
  return out;
}

}  // namespace

const std::string& field_said(const std::vector<DeskField>& fields, std::string_view name) {
  static const std::string kNothing;
  for (const DeskField& field : fields) {
    if (field.name == name) return field.value;
  }
  return kNothing;
}

std::vector<std::string> DeskAsk::all(std::string_view name) const {
  std::vector<std::string> values;
  for (const DeskField& field : fields) {
    if (field.name == name && !field.value.empty()) values.push_back(field.value);
  }
  return values;
}

DeskAnswer gone_to(std::string address) {
  DeskAnswer answer;
  answer.go_to = std::move(address);
  return answer;
}

std::string desk_address(std::string_view path, const std::vector<DeskField>& fields) {
  std::string out(path);
  char mark = '?';
  for (const DeskField& field : fields) {
    if (field.value.empty()) continue;
    out += mark + encoded(field.name) + '=' + encoded(field.value);
    mark = '&';
  }
  return out;
}

}  // namespace rangebook
