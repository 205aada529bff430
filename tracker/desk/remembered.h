// What was worked out from the book for one page and serves the next, for as long as it holds.
#pragma once

#include <map>
#include <mutex>
#include <string>
#include <utility>

namespace rangebook {

/// Safe to use from several threads. What is kept is a saving only: an answer that is not found, or
/// was kept in another state of the book, is worked out anew.
template <typename Value>
class Remembered {
 public:
  /// The value under `key` if it was kept in this `state`; else what `work` says, which is kept.
  /// `state` must have been read before `work` reads the book, so that a change in between makes
  /// the value be worked out again.
  template <typename Work>
  Value value(const std::string& key, const std::string& state, const Work& work) {
    {
      const std::lock_guard lock(mutex_);
      const auto found = kept_.find(key);
      if (found != kept_.end() && found->second.first == state) return found->second.second;
    }
    Value made = work();
    const std::lock_guard lock(mutex_);
    if (kept_.size() >= kRoom) kept_.clear();
    kept_.insert_or_assign(key, std::pair(state, made));
    return made;
  }

 private:
  static constexpr std::size_t kRoom = 4096;

  std::mutex mutex_;
  std::map<std::string, std::pair<std::string, Value>> kept_;
};

}  // namespace rangebook
