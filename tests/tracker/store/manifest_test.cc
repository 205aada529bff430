// Manifests and origins read back; deltas rebuild their target.
#include "tracker/store/manifest.h"

#include <gtest/gtest.h>

#include <random>

namespace rangebook {
namespace {

Manifest random_manifest(std::mt19937& random) {
  Manifest manifest;
  LineId line = 0;
  for (auto i = random() % 30; i > 0; --i) {
    line += 1 + static_cast<LineId>(random() % 3);
    manifest.push_back({line, 1 + random() % 9, 1 + random() % 9, 1 + random() % 900});
  }
  return manifest;
}

TEST(Manifest, ReadsBack) {
  std::mt19937 random(1);
  for (int round = 0; round < 200; ++round) {
    const Manifest manifest = random_manifest(random);
    ASSERT_EQ(decode_manifest(encode_manifest(manifest)), manifest);
  }
}

TEST(Manifest, ADeltaRebuildsItsTarget) {
  std::mt19937 random(2);
  for (int round = 0; round < 500; ++round) {
    const Manifest base = random_manifest(random);
    const Manifest target = random_manifest(random);
    ASSERT_EQ(apply_manifest_delta(base, encode_manifest_delta(base, target)), target);
  }
}

TEST(Manifest, AnUnchangedRangeCostsNextToNothing) {
  Manifest manifest;
  for (LineId line = 1; line <= 10'000; ++line) {
    const auto version = static_cast<Version>(line);
    manifest.push_back({line, version, version, version});
  }
  EXPECT_LT(encode_manifest_delta(manifest, manifest).size(), 32U);
}

TEST(Origins, ReadBack) {
  const std::vector<LineOrigin> origins{{0, 2}, {0, 32}, {1, 5}, {0, 900}};
  const auto read = decode_origins(encode_origins(origins), 4);
  ASSERT_TRUE(read);
  for (std::size_t i = 0; i < origins.size(); ++i) {
    EXPECT_EQ((*read)[i].document, origins[i].document);
    EXPECT_EQ((*read)[i].line, origins[i].line);
  }
  EXPECT_EQ(decode_origins(encode_origins(origins), 5), std::nullopt);
}

}  // namespace
}  // namespace rangebook
