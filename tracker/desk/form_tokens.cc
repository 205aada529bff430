// Tokens by the path of their form.
#include "tracker/desk/form_tokens.h"

#include "schema/error.h"
#include "tracker/desk/desk_guard.h"

namespace rangebook {

FormTokens::FormTokens(const std::vector<std::string_view>& paths) {
  for (const std::string_view path : paths) tokens_.emplace(path, new_secret());
}

const std::string& FormTokens::of(std::string_view path) const {
  const auto found = tokens_.find(path);
  if (found == tokens_.end()) throw Error("the desk has no form " + std::string(path));
  return found->second;
}

bool FormTokens::holds(std::string_view path, std::string_view said) const {
  const auto found = tokens_.find(path);
  return found != tokens_.end() && same_secret(said, found->second);
}

}  // namespace rangebook
