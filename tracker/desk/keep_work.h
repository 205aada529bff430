// Keeping a large upload takes a while: it goes on by itself, one at a time, while pages tell how
// far it is. Closing the browser does not stop it.
#pragma once

#include <atomic>
#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <exception>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>

#include "tracker/app/capture_report.h"
#include "tracker/desk/desk_values.h"

namespace rangebook {

class KeepWork {
 public:
  using Work = std::function<DeskAnswer(const ProgressCallback&)>;

  KeepWork() = default;
  /// Waits for what goes on: half a capture is never in the book.
  ~KeepWork();
  KeepWork(const KeepWork&) = delete;
  KeepWork& operator=(const KeepWork&) = delete;

  /// False while another one goes on.
  bool start(Work work);
  bool goes_on() const;
  /// What the last one came to, also when asked again; nothing while it goes on for longer than
  /// this, and before the first. Throws what it threw.
  std::optional<DeskAnswer> wait(std::chrono::milliseconds most);
  /// Whole per cents of the bytes.
  std::uint64_t share() const { return share_; }

 private:
  void run(const Work& work);

  mutable std::mutex mutex_;
  std::condition_variable done_;
  std::thread thread_;
  bool goes_on_ = false;
  std::atomic<std::uint64_t> share_{0};
  std::optional<DeskAnswer> answer_;
  std::exception_ptr fault_;
};

}  // namespace rangebook
