// The desk on the wire: cpp-httplib carries bytes, this file decides who is answered and how much
// is taken in. It listens on 127.0.0.1 only.
#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <string>

#include "tracker/desk/desk.h"

namespace rangebook {

/// Bounds of one request. Pages that only ask send no body at all.
struct DeskLimits {
  std::size_t body = std::size_t{64} << 20;       ///< bytes of a form with its files
  std::size_t small_body = std::size_t{1} << 20;  ///< larger ones are taken one at a time
  std::size_t fields = 4096;                      ///< of a form or an address, with files
  int patience = 5;                               ///< seconds without a byte
  int body_seconds = 120;                         ///< for a body as a whole
  std::size_t threads = 8;
  std::size_t waiting = 256;  ///< connections that wait for a thread; more wait in the system
};

class DeskServer {
 public:
  /// Binds the port; 0: any that is free. Throws Error when it is taken.
  DeskServer(Desk& desk, int port, const DeskLimits& limits = {});
  ~DeskServer();
  DeskServer(const DeskServer&) = delete;
  DeskServer& operator=(const DeskServer&) = delete;

  int port() const;
  /// The address that opens the desk: with the key of this session.
  std::string entrance() const;
  /// Answers until stop() is called from another thread.
  void serve();
  void stop();

 private:
  class Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace rangebook
