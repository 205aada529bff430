// One thread for each piece of work; the next one joins it.
#include "tracker/desk/keep_work.h"

#include <algorithm>

namespace rangebook {

KeepWork::~KeepWork() {
  if (thread_.joinable()) thread_.join();
}

bool KeepWork::start(Work work) {
  const std::lock_guard lock(mutex_);
  if (goes_on_) return false;
  if (thread_.joinable()) thread_.join();
  goes_on_ = true;
  share_ = 0;
  answer_.reset();
  fault_ = nullptr;
  thread_ = std::thread([this, work = std::move(work)] { run(work); });
  return true;
}

void KeepWork::run(const Work& work) {
  std::optional<DeskAnswer> answer;
  std::exception_ptr fault;
  try {
    answer = work([this](std::uint64_t done, std::uint64_t all) {
      share_ = all == 0 ? 0 : std::min<std::uint64_t>(done * 100 / all, 100);
    });
  } catch (...) {
    fault = std::current_exception();
  }
  const std::lock_guard lock(mutex_);
  answer_ = std::move(answer);
  fault_ = fault;
  goes_on_ = false;
  done_.notify_all();
}

bool KeepWork::goes_on() const {
  const std::lock_guard lock(mutex_);
  return goes_on_;
}

std::optional<DeskAnswer> KeepWork::wait(std::chrono::milliseconds most) {
  std::unique_lock lock(mutex_);
  if (!done_.wait_for(lock, most, [this] { return !goes_on_; })) return std::nullopt;
  if (fault_) std::rethrow_exception(fault_);
  return answer_;
}

}  // namespace rangebook
