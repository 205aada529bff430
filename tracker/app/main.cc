// Entry point: the only place where a broken environment is caught.
#include <cstdio>
#include <exception>
#include <new>

#include "schema/error.h"
#include "tracker/app/cli.h"

int main(int argc, char** argv) {
  try {
    return rangebook::run_command_line({argv + 1, argv + argc});
  } catch (const rangebook::Error& error) {
    std::fprintf(stderr, "rangebook: %s\n", error.what());
  } catch (const std::bad_alloc&) {
    std::fprintf(stderr, "rangebook: Not enough memory. Nothing was changed.\n");
  } catch (const std::exception& error) {
    std::fprintf(stderr, "rangebook: Unexpected: %s. Nothing was changed.\n", error.what());
  }
  return rangebook::kEnvironment;
}
