// A book in a folder of its own, gone with the test.
#pragma once

#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <string>

#include "tracker/store/book.h"

namespace rangebook {

class TempFolder {
 public:
  TempFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "rangebook-test-XXXXXX").string();
    path_ = ::mkdtemp(name.data());
  }
  ~TempFolder() { std::filesystem::remove_all(path_); }
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;

  std::string file(const std::string& name) const { return (path_ / name).string(); }

 private:
  std::filesystem::path path_;
};

inline Shop mill_shop() {
  Shop shop;
  shop.slug = "mill";
  shop.name = "Mill";
  shop.country = "GB";
  shop.currency = Currency::from_code("GBP");
  shop.sizes = SizeSystem::uk;
  return shop;
}

/// A listing of one colour with sizes at one price.
inline Listing plain_listing(const std::string& code, std::vector<std::string> sizes,
                             MinorUnits price) {
  Listing listing;
  listing.card.line_code = code;
  listing.card.name = "Line " + code;
  listing.offers.currency = Currency::from_code("GBP");
  listing.offers.colours = {"navy"};
  listing.offers.sizes = std::move(sizes);
  for (std::size_t i = 0; i < listing.offers.sizes.size(); ++i) {
    listing.offers.offers.push_back(
        {0, static_cast<std::uint16_t>(i), Stock::in_stock, price, std::nullopt});
  }
  return listing;
}

}  // namespace rangebook
