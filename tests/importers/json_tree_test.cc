// JSON is read strictly, then with slips put right, and refused with the place of the fault.
#include "importers/json_tree.h"

#include <gtest/gtest.h>

#include <string>

#include "importers/json_repair.h"

namespace rangebook {
namespace {

std::variant<JsonBlock, JsonProblem> add(JsonTree& tree, std::string_view text) {
  return tree.add(text, 1000);
}

// The tree written out again: keys and texts in quotes, numbers as they were written.
std::string print(const JsonTree& tree, JsonId id) {
  const JsonNode& node = tree[id];
  if (node.kind == JsonKind::text) return "'" + std::string(node.text) + "'";
  if (node.kind == JsonKind::null) return "null";
  if (node.kind == JsonKind::number || node.kind == JsonKind::boolean)
    return std::string(node.text);
  const bool object = node.kind == JsonKind::object;
  std::string out;
  for (JsonId child = node.first_child; child != 0; child = tree[child].next) {
    if (!out.empty()) out += ",";
    if (object) out += std::string(tree[child].key) + ":";
    out += print(tree, child);
  }
  return object ? "{" + out + "}" : "[" + out + "]";
}

std::string read(std::string_view text) {
  JsonTree tree;
  const auto result = add(tree, text);
  const auto* block = std::get_if<JsonBlock>(&result);
  if (block == nullptr) return "refused";
  return (block->repaired ? "repaired " : "") + print(tree, block->root);
}

TEST(JsonTree, KeepsNumbersAsWritten) {
  EXPECT_EQ(read("[49.90, 1299, -0.5, 4.99e1, 12345678901231, 123456789012345678901234]"),
            "[49.90,1299,-0.5,4.99e1,12345678901231,123456789012345678901234]");
}

TEST(JsonTree, KeepsStructureAndOrder) {
  EXPECT_EQ(read(R"({"a":[{},[],{"b":"c"}],"a":null,"d":true,"\u00e9":"\ud83d\udc57\n"})"),
            "{a:[{},[],{b:'c'}],a:null,d:true,\u00e9:'\U0001F457\n'}");
}

TEST(JsonTree, BlocksShareATree) {
  JsonTree tree;
  const auto first = std::get<JsonBlock>(add(tree, R"({"a":"x"})")).root;
  ASSERT_TRUE(std::holds_alternative<JsonProblem>(add(tree, R"({"b":)")));
  const auto second = std::get<JsonBlock>(add(tree, R"(["y"])")).root;
  EXPECT_EQ(print(tree, first), "{a:'x'}");
  EXPECT_EQ(print(tree, second), "['y']");
}

TEST(JsonTree, ObjectsKnowTheirPlace) {
  JsonTree tree;
  const auto root = std::get<JsonBlock>(add(tree, R"([1, {"a": "{", "b": {}}])")).root;
  const JsonId outer = tree[tree[root].first_child].next;
  EXPECT_EQ(tree[outer].byte, 1004U);
  EXPECT_EQ(tree[tree[tree[outer].first_child].next].byte, 1020U);
}

TEST(JsonTree, ObjectsKnowTheirPlaceInARepairedText) {
  JsonTree tree;
  const std::string text = "/* c */ [\"a\nb\", {\"x\": 1,}]";
  const auto root = std::get<JsonBlock>(add(tree, text)).root;
  const JsonId object = tree[tree[root].first_child].next;
  EXPECT_EQ(tree[object].byte, 1000U + text.find('{'));
}

struct Slip {
  const char* what;
  std::string text;
  std::string expected;
};

TEST(JsonTree, PutsSlipsRight) {
  using namespace std::string_literals;
  const std::vector<Slip> slips{
      {"comma before a bracket", R"({"a":[1,2,],})", "{a:[1,2]}"},
      {"two commas", R"([1,,2])", "[1,2]"},
      {"line break in a text", "[\"a\nb\r\nc\td\"]", "['a\nb\r\nc\td']"},
      {"control characters", "[\"a\x01z\",\x02 1\f]", "['a z',1]"},
      {"NUL", "[\"a\0b\"\0]"s, "['a b']"},
      {"escaped apostrophe", R"(["it\'s \x 1"])", "['it's x 1']"},
      {"half an escape", R"(["\u12 x"])", "['u12 x']"},
      {"comments", "// a\n[1 /* ] */, 2] // end", "[1,2]"},
      {"an address is no comment", R"(["https://shop.example",])", "['https://shop.example']"},
      {"HTML comment", "<!--\n{\"a\":1}\n-->", "{a:1}"},
      {"CDATA", "<![CDATA[{\"a\":\"]]>\"}]]>", "{a:']]>'}"},
      {"hidden CDATA", "//<![CDATA[\n{\"a\":1}\n//]]>", "{a:1}"},
      {"semicolon", "{\"a\":1};", "{a:1}"},
      {"byte order mark and no-break space", "\xEF\xBB\xBF{\xC2\xA0\"a\":1,}", "{a:1}"},
      {"quotes as references", "{&quot;a&quot;:&quot;b &amp; c&quot;}", "{a:'b &amp; c'}"},
      {"not UTF-8", "[\"caf\xE9\"]", "['caf\uFFFD']"},
  };
  for (const auto& slip : slips)
    EXPECT_EQ(read(slip.text), "repaired " + slip.expected) << slip.what;
}

TEST(JsonTree, LeavesWhatIsRightAlone) {
  EXPECT_EQ(read(R"({"a":"// , } <!-- &quot; ; \" \\"})"), R"({a:'// , } <!-- &quot; ; " \'})");
}

struct Fault {
  std::string text;
  std::size_t byte;
  bool at_end;
};

TEST(JsonTree, SaysWhereTheFaultIs) {
  for (const auto& fault : std::vector<Fault>{{R"({"a":1 "b":2})", 7, false},
                                              {R"({'a':1})", 1, false},
                                              {R"({"a":[1,2)", 9, true},
                                              {R"({"a":"b)", 7, true},
                                              {"/* c */ {\"a\" 1}", 13, false},
                                              {"{\"a\":\"x\ny\" 1}", 11, false},
                                              {"var x = 1", 0, false},
                                              {"", 0, true},
                                              {"{}{}", 2, false}}) {
    JsonTree tree;
    const auto result = add(tree, fault.text);
    const auto* problem = std::get_if<JsonProblem>(&result);
    ASSERT_NE(problem, nullptr) << fault.text;
    EXPECT_EQ(problem->kind, JsonProblem::Kind::not_json);
    EXPECT_EQ(problem->byte, fault.byte) << fault.text;
    EXPECT_EQ(problem->at_end, fault.at_end) << fault.text;
    EXPECT_EQ(tree.size(), 1U);
  }
}

TEST(JsonTree, RefusesDeepNesting) {
  for (const std::size_t depth : {kMaxJsonDepth, kMaxJsonDepth + 1, std::size_t{100'000}}) {
    for (const char* open : {"[", "{\"a\":"}) {
      std::string text;
      for (std::size_t i = 0; i < depth; ++i) text += open;
      text += "1";
      for (std::size_t i = 0; i < depth; ++i) text += *open == '[' ? "]" : "}";
      JsonTree tree;
      const auto result = add(tree, text);
      const auto* problem = std::get_if<JsonProblem>(&result);
      EXPECT_EQ(problem != nullptr, depth > kMaxJsonDepth) << depth;
      if (problem == nullptr) continue;
      EXPECT_EQ(problem->kind, JsonProblem::Kind::too_deep);
      EXPECT_EQ(problem->byte, kMaxJsonDepth * std::string_view(open).size());
    }
  }
}

TEST(JsonTree, RefusesTooMuch) {
  JsonTree tree;
  const auto text = std::get<JsonProblem>(add(tree, std::string(kMaxJsonBytes + 1, ' ')));
  EXPECT_EQ(text.kind, JsonProblem::Kind::too_large);
  std::string values = "[0";
  for (std::size_t i = 0; i < kMaxJsonValues; ++i) values += ",0";
  EXPECT_EQ(std::get<JsonProblem>(add(tree, values + "]")).kind, JsonProblem::Kind::too_large);
  EXPECT_EQ(tree.size(), 1U);
}

TEST(RepairedJson, CountsBytesThatAreNotUtf8) {
  EXPECT_EQ(RepairedJson("[\"caf\xE9 \xE2\x82\",\"\u20ac\"]").bad_bytes(), 3U);
}

}  // namespace
}  // namespace rangebook
