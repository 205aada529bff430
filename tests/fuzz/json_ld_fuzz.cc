// JSON of any kind: it is read or refused, a fault lies inside the text, and reading what was
// repaired needs no second repair.
#include <cstddef>
#include <cstdint>
#include <string>

#include "importers/json_repair.h"
#include "importers/json_tree.h"
#include "tests/fuzz/require.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const auto text = as_text(data, size);
  JsonTree tree;
  const auto result = tree.add(text, 0);
  if (const auto* problem = std::get_if<JsonProblem>(&result)) {
    require(problem->byte <= size, "a fault lies inside the text");
    require(tree.size() == 1, "a refused text leaves nothing behind");
    return 0;
  }
  for (JsonId id = 1; id < tree.size(); ++id) {
    require(tree[id].next == 0 || tree[id].next > id, "values point forward");
    require(tree[id].kind != JsonKind::object || tree[id].byte < size, "objects lie in the text");
  }
  if (!std::get<JsonBlock>(result).repaired) return 0;
  JsonTree again;
  const auto second = again.add(RepairedJson(text).text(), 0);
  const auto* block = std::get_if<JsonBlock>(&second);
  require(block != nullptr && !block->repaired, "a repaired text is strict JSON");
  require(again.size() == tree.size(), "both trees are the same");
  return 0;
}
