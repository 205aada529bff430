// What a page is asked and what it answers: values, so that pages know nothing of connections.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// A field of a form or of an address.
struct DeskField {
  std::string name;
  std::string value;      ///< of a file: its bytes
  std::string file_name;  ///< as the browser says it; only for showing
};

/// The first value of that name; empty where there is none.
const std::string& field_said(const std::vector<DeskField>& fields, std::string_view name);

struct DeskAsk {
  std::string path;
  std::vector<DeskField> fields;

  const std::string& said(std::string_view name) const { return field_said(fields, name); }
  /// All values of that name that are not empty, as sent.
  std::vector<std::string> all(std::string_view name) const;
};

struct DeskAnswer {
  int status = 200;
  std::string type = "text/html; charset=utf-8";
  std::string body;
  std::string go_to;      ///< another page to show instead; empty: this one
  std::string file_name;  ///< kept as a file under this name; empty: shown
  int look_again = 0;     ///< the browser asks again after so many seconds; 0: it does not
};

/// Shows another page instead.
DeskAnswer gone_to(std::string address);

/// `/brief?shop=a%20b`: an address of the desk. Fields without a value are left out.
std::string desk_address(std::string_view path, const std::vector<DeskField>& fields);

}  // namespace rangebook
