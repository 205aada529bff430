// The page lets its own script run and no other: Content Security Policy Level 3, section 2.3.1.
#include "reports/page_script.h"

#include <gtest/gtest.h>
#include <openssl/evp.h>

#include <array>
#include <string>

namespace rangebook {
namespace {

TEST(PageScript, ThePolicyNamesItsHash) {
  std::array<unsigned char, 32> digest{};
  unsigned length = 0;
  const auto script = page_script();
  ASSERT_EQ(EVP_Digest(script.data(), script.size(), digest.data(), &length, EVP_sha256(), nullptr),
            1);
  std::array<unsigned char, 45> base64{};
  EVP_EncodeBlock(base64.data(), digest.data(), static_cast<int>(length));
  EXPECT_EQ(page_script_hash(), std::string(base64.begin(), base64.end() - 1))
      << "write this hash into page_script.cc";
}

}  // namespace
}  // namespace rangebook
