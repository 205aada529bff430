// What the pages share, and the list of all of them.
#include "tracker/desk/desk.h"

#include <filesystem>

#include "tracker/desk/add_pages.h"
#include "tracker/desk/link_pages.h"
#include "tracker/desk/pages.h"
#include "tracker/desk/pick_pages.h"
#include "tracker/desk/terms_pages.h"

namespace rangebook {
namespace {

std::vector<std::string_view> form_paths() {
  std::vector<std::string_view> paths;
  for (const DeskRoute& route : desk_routes()) {
    if (route.method == DeskRoute::Method::post) paths.push_back(route.path);
  }
  return paths;
}

}  // namespace

const std::vector<DeskRoute>& desk_routes() {
  using Method = DeskRoute::Method;
  static const std::vector<DeskRoute> kRoutes{
      {Method::get, "/", start_page},
      {Method::get, "/desk.css", style_sheet},
      {Method::get, "/desk.js", script},
      {Method::post, "/demo", try_demo},
      {Method::post, "/own", leave_demo},
      {Method::get, "/add", add_page},
      {Method::get, "/add.js", add_script},
      {Method::post, "/add", take_upload},
      {Method::get, "/held", held_page},
      {Method::post, "/held/words", say_words},
      {Method::post, "/held/reading", say_reading},
      {Method::post, "/held/keep", keep_held},
      {Method::post, "/held/drop", drop_held},
      {Method::get, "/keeping", keeping_page},
      {Method::get, "/kept", kept_page},
      {Method::post, "/kept/undo", undo_kept},
      {Method::get, "/brief", brief_page},
      {Method::get, "/moves", moves_page},
      {Method::get, "/line", line_page},
      {Method::get, "/prices", prices_page},
      {Method::get, "/sizes", sizes_of_shop_page},
      {Method::get, "/links", links_page},
      {Method::get, "/links/said", links_said_page},
      {Method::post, "/links/answer", answer_link},
      {Method::post, "/links/back", take_link_back},
      {Method::get, "/lines", lines_page},
      {Method::get, "/picks", picks_desk_page},
      {Method::get, "/picks/follow", pick_follow_page},
      {Method::get, "/picks/notes", pick_notes_page},
      {Method::get, "/picks/keep", keep_pick_page},
      {Method::post, "/picks/keep", keep_pick_form},
      {Method::get, "/picks/change", change_pick_page},
      {Method::post, "/picks/change", change_pick_form},
      {Method::get, "/picks/drop", drop_pick_page},
      {Method::post, "/picks/drop", drop_pick_form},
      {Method::get, "/picks/words", pick_words_page},
      {Method::get, "/picks/word", pick_word_page},
      {Method::post, "/picks/words/add", add_pick_word_form},
      {Method::post, "/picks/words/rename", rename_pick_word_form},
      {Method::post, "/picks/words/remove", remove_pick_word_form},
      {Method::get, "/due", due_desk_page},
      {Method::get, "/terms", terms_page},
      {Method::get, "/terms/read", read_terms_page},
      {Method::post, "/terms/read", read_terms_form},
      {Method::get, "/terms/type", type_terms_page},
      {Method::post, "/terms/type", type_terms_form},
      {Method::post, "/terms/answer", answer_terms_doubt},
      {Method::get, "/reach", reach_page},
      {Method::get, "/order", order_cost_page},
  };
  return kRoutes;
}

Desk::Desk(std::string book, std::string feeds)
    : own_(std::move(book)), feeds_(std::move(feeds)), tokens_(form_paths()) {}

bool Desk::is_demo() const {
  const std::lock_guard lock(mutex_);
  return demo_;
}

void Desk::show_demo(bool shown) {
  const std::lock_guard lock(mutex_);
  demo_ = shown;
}

bool Desk::has_demo() const {
  std::error_code error;
  return !feeds_.empty() &&
         std::filesystem::exists(std::filesystem::path(feeds_) / "captures.tsv", error);
}

std::string Desk::book_path() const { return is_demo() ? demo_path() : own_; }

std::optional<Book> Desk::book() const {
  const std::string path = book_path();
  std::error_code error;
  if (!std::filesystem::exists(path, error)) return std::nullopt;
  return Book::open(path, false);
}

}  // namespace rangebook
