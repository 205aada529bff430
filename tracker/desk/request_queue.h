// Connections that wait for one of a fixed number of threads. A full queue holds up whoever accepts
// connections, so that memory does not grow with the number of clients.
#pragma once

#include <httplib.h>

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

namespace rangebook {

class RequestQueue : public httplib::TaskQueue {
 public:
  RequestQueue(std::size_t threads, std::size_t most) : most_(most) {
    for (std::size_t i = 0; i < threads; ++i) {
      threads_.emplace_back([this] { work(); });
    }
  }

  void enqueue(std::function<void()> job) override {
    std::unique_lock lock(mutex_);
    room_.wait(lock, [this] { return jobs_.size() < most_; });
    jobs_.push_back(std::move(job));
    there_is_work_.notify_one();
  }

  void shutdown() override {
    {
      const std::lock_guard lock(mutex_);
      closed_ = true;
    }
    there_is_work_.notify_all();
    for (auto& thread : threads_) thread.join();
  }

 private:
  void work() {
    while (true) {
      std::function<void()> job;
      {
        std::unique_lock lock(mutex_);
        there_is_work_.wait(lock, [this] { return !jobs_.empty() || closed_; });
        if (jobs_.empty()) return;
        job = std::move(jobs_.front());
        jobs_.pop_front();
      }
      room_.notify_one();
      job();
    }
  }

  const std::size_t most_;
  std::mutex mutex_;
  std::condition_variable there_is_work_;
  std::condition_variable room_;
  std::deque<std::function<void()>> jobs_;
  std::vector<std::thread> threads_;
  bool closed_ = false;
};

}  // namespace rangebook
