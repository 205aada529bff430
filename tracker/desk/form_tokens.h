// A secret for each form of the desk: a post that does not carry it was not made on our page.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

class FormTokens {
 public:
  explicit FormTokens(const std::vector<std::string_view>& paths);

  /// The token of the form that is sent to this path.
  const std::string& of(std::string_view path) const;
  bool holds(std::string_view path, std::string_view said) const;

 private:
  std::map<std::string, std::string, std::less<>> tokens_;
};

}  // namespace rangebook
