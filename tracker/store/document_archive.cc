// SHA-256 (OpenSSL, which uses the processor's own instructions) and zstd frames. The worker owns
// both; the caller's thread owns the database.
#include "tracker/store/document_archive.h"

#include <openssl/evp.h>

#include <condition_variable>
#include <deque>
#include <exception>
#include <mutex>
#include <thread>
#include <utility>

#include "schema/error.h"
#include "tracker/store/zstd_frame.h"

namespace rangebook {
namespace {

constexpr int kDocumentLevel = 3;
constexpr std::size_t kMaxWaiting = 4;  ///< frames on their way, so memory stays bounded
constexpr std::string_view kPendingHash = "pending";

class Sha256 {
 public:
  Sha256() : context_(EVP_MD_CTX_new()) { begin(); }
  ~Sha256() { EVP_MD_CTX_free(context_); }
  Sha256(const Sha256&) = delete;
  Sha256& operator=(const Sha256&) = delete;

  void add(std::string_view bytes) {
    if (EVP_DigestUpdate(context_, bytes.data(), bytes.size()) != 1) fail();
  }
  std::string finish() {
    std::string hash(32, '\0');
    if (EVP_DigestFinal_ex(context_, reinterpret_cast<unsigned char*>(hash.data()), nullptr) != 1) {
      fail();
    }
    begin();
    return hash;
  }

 private:
  void begin() {
    if (!context_ || EVP_DigestInit_ex(context_, EVP_sha256(), nullptr) != 1) fail();
  }
  [[noreturn]] static void fail() { throw Error("SHA-256 is not available on this system."); }

  EVP_MD_CTX* context_;
};

}  // namespace

/// Hashes and compresses frames in order, on its own thread once `start` was called.
class DocumentArchive::Worker {
 public:
  ~Worker() { stop(); }

  /// Hands a frame over; waits while kMaxWaiting are on their way.
  void push(std::string bytes) {
    if (!thread_.joinable()) thread_ = std::thread([this] { run(); });
    std::unique_lock lock(mutex_);
    room_.wait(lock, [&] { return in_.size() < kMaxWaiting || failure_; });
    rethrow();
    in_.push_back(std::move(bytes));
    work_.notify_one();
  }

  /// A finished frame; with `wait`, the next one as long as any is on its way.
  bool pop(std::string& frame, bool wait) {
    std::unique_lock lock(mutex_);
    if (wait) done_.wait(lock, [&] { return !out_.empty() || idle() || failure_; });
    rethrow();
    if (out_.empty()) return false;
    frame = std::move(out_.front());
    out_.pop_front();
    return true;
  }

  std::string compress_here(std::string_view bytes) {
    hash_.add(bytes);
    return frames_.compress(bytes);
  }

  /// Only when no frame is on its way.
  std::string finish_hash() { return hash_.finish(); }

 private:
  bool idle() const { return in_.empty() && !busy_; }
  void rethrow() {
    if (failure_) std::rethrow_exception(failure_);
  }

  void run() {
    std::unique_lock lock(mutex_);
    while (true) {
      work_.wait(lock, [&] { return !in_.empty() || stopping_; });
      if (stopping_) return;
      const std::string bytes = std::move(in_.front());
      in_.pop_front();
      busy_ = true;
      lock.unlock();
      room_.notify_one();
      std::string frame;
      std::exception_ptr failure;
      try {
        frame = compress_here(bytes);
      } catch (...) {
        failure = std::current_exception();
      }
      lock.lock();
      busy_ = false;
      if (failure) failure_ = failure;
      out_.push_back(std::move(frame));
      done_.notify_one();
      room_.notify_one();
    }
  }

  void stop() {
    {
      const std::lock_guard lock(mutex_);
      stopping_ = true;
    }
    work_.notify_one();
    if (thread_.joinable()) thread_.join();
  }

  Sha256 hash_;
  FrameWriter frames_{kDocumentLevel};
  std::mutex mutex_;
  std::condition_variable work_;
  std::condition_variable room_;
  std::condition_variable done_;
  std::deque<std::string> in_;
  std::deque<std::string> out_;
  std::exception_ptr failure_;
  bool busy_ = false;
  bool stopping_ = false;
  std::thread thread_;
};

DocumentArchive::DocumentArchive(const Database& database)
    : database_(database), worker_(std::make_unique<Worker>()) {}

DocumentArchive::~DocumentArchive() = default;

void DocumentArchive::add(std::string_view bytes) {
  bytes_ += bytes.size();
  while (!bytes.empty()) {
    if (pending_.size() == kFrameBytes) push_frame();
    if (pending_.empty()) pending_.reserve(std::min(kFrameBytes, bytes.size()));
    const std::size_t take = std::min(bytes.size(), kFrameBytes - pending_.size());
    pending_.append(bytes.substr(0, take));
    bytes.remove_prefix(take);
  }
}

void DocumentArchive::push_frame() {
  worker_->push(std::exchange(pending_, {}));
  std::string frame;
  while (worker_->pop(frame, false)) store(frame);
}

void DocumentArchive::begin_document() {
  database_.prepare("INSERT INTO document (sha256, bytes) VALUES (?1, 0)")
      .bind_blob(1, kPendingHash)
      .run();
  document_ = database_.last_row_id();
  position_ = 0;
}

void DocumentArchive::store(const std::string& frame) {
  if (document_ == 0) begin_document();
  database_.prepare("INSERT INTO document_chunk (document_id, position, frame) VALUES (?1, ?2, ?3)")
      .bind(1, document_)
      .bind(2, position_++)
      .bind_blob(3, frame)
      .run();
}

ArchivedDocument DocumentArchive::finish() {
  std::string frame;
  while (worker_->pop(frame, true)) store(frame);
  store(worker_->compress_here(std::exchange(pending_, {})));
  ArchivedDocument done;
  done.sha256 = worker_->finish_hash();
  done.bytes = std::exchange(bytes_, 0);
  done.id = std::exchange(document_, 0);
  auto known = database_.prepare("SELECT id FROM document WHERE sha256 = ?1");
  done.was_known = known.bind_blob(1, done.sha256).step();
  if (done.was_known) {
    database_.prepare("DELETE FROM document WHERE id = ?1").bind(1, done.id).run();
    done.id = known.integer(0);
    return done;
  }
  database_.prepare("UPDATE document SET sha256 = ?2, bytes = ?3 WHERE id = ?1")
      .bind(1, done.id)
      .bind_blob(2, done.sha256)
      .bind(3, static_cast<std::int64_t>(done.bytes))
      .run();
  return done;
}

}  // namespace rangebook
