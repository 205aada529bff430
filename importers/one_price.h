// A price that several places of a page may state: certain only where they agree.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>

#include "importers/page_merge.h"

namespace rangebook {

/// Prices that were found, as far as they agree.
class OnePrice {
 public:
  void add(std::string text, std::string currency) {
    const auto amount = comparable_amount(text);
    if (!amount) return;
    several_ = several_ || (amount_ && *amount_ != *amount);
    several_ = several_ || (!currency_.empty() && !currency.empty() && currency_ != currency);
    amount_ = amount;
    if (text_.empty()) text_ = std::move(text);
    if (currency_.empty()) currency_ = std::move(currency);
  }
  bool is_certain() const { return amount_ && *amount_ > 0 && !several_; }
  const std::string& text() const { return text_; }
  const std::string& currency() const { return currency_; }

 private:
  std::optional<std::int64_t> amount_;
  std::string text_;
  std::string currency_;
  bool several_ = false;
};

}  // namespace rangebook
