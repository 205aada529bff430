// `rangebook desk`: opens the desk and closes it on Ctrl-C.
#include <fmt/format.h>
#include <pthread.h>

#include <csignal>
#include <cstdio>
#include <thread>

#include "tracker/app/cli.h"
#include "tracker/app/commands.h"
#include "tracker/desk/desk_server.h"

namespace rangebook {

int command_desk(const std::string& book, int port, const std::string& feeds) {
  Desk desk(book, feeds);
  DeskServer server(desk, port);
  // Blocked in every thread, awaited in one: a handler could do nothing safely.
  sigset_t ends;
  sigemptyset(&ends);
  sigaddset(&ends, SIGINT);
  sigaddset(&ends, SIGTERM);
  pthread_sigmask(SIG_BLOCK, &ends, nullptr);
  std::thread([&server, ends] {
    int which = 0;
    sigwait(&ends, &which);
    server.stop();
  }).detach();
  fmt::print("The desk is open. Go to {}\nOnly this machine can reach it. Ctrl-C closes it.\n",
             server.entrance());
  std::fflush(stdout);
  server.serve();
  return kDone;
}

}  // namespace rangebook
