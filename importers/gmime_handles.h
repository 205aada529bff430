// What gmime hands out, given back when it goes out of scope.
#pragma once

#include <gmime/gmime.h>

#include <memory>
#include <string>

namespace rangebook {

struct GObjectUnref {
  void operator()(void* object) const { g_object_unref(object); }
};
template <typename Object>
using GObjectHandle = std::unique_ptr<Object, GObjectUnref>;

/// gmime, set up once for the process; nothing of it may be called before.
inline void start_gmime() {
  static const bool started = [] {
    g_mime_init();
    return true;
  }();
  static_cast<void>(started);
}

/// A text that gmime keeps; empty where it has none.
inline std::string text_of(const char* text) { return text == nullptr ? "" : text; }

/// A text that gmime gave away.
inline std::string take_text(char* text) {
  std::string out = text_of(text);
  g_free(text);
  return out;
}

}  // namespace rangebook
