// A visitor who does not send what it said it would.
#pragma once

#include <arpa/inet.h>
#include <gtest/gtest.h>
#include <sys/socket.h>
#include <unistd.h>

#include <string>

namespace rangebook {

/// A connection that sends as much as it is told, and then nothing.
class SlowClient {
 public:
  SlowClient(int port, const std::string& bytes) : socket_(::socket(AF_INET, SOCK_STREAM, 0)) {
    sockaddr_in place{};
    place.sin_family = AF_INET;
    place.sin_port = htons(static_cast<std::uint16_t>(port));
    place.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    // The interface of the system takes every kind of address by one type.
    EXPECT_EQ(::connect(socket_, reinterpret_cast<const sockaddr*>(&place), sizeof place), 0);
    EXPECT_EQ(::send(socket_, bytes.data(), bytes.size(), MSG_NOSIGNAL),
              static_cast<ssize_t>(bytes.size()));
  }
  ~SlowClient() { ::close(socket_); }
  SlowClient(const SlowClient&) = delete;
  SlowClient& operator=(const SlowClient&) = delete;

 private:
  int socket_;
};

}  // namespace rangebook
