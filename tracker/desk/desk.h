// The desk: what all its pages share while it is open. Nothing here knows of connections.
#pragma once

#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/size_report.h"
#include "tracker/desk/desk_values.h"
#include "tracker/desk/form_tokens.h"
#include "tracker/desk/held_uploads.h"
#include "tracker/desk/keep_work.h"
#include "tracker/desk/remembered.h"
#include "tracker/store/book.h"

namespace rangebook {

/// Safe to use from several threads at once. A book is opened for each request and closed after it,
/// so another command can use it between two pages.
class Desk {
 public:
  /// `feeds`: folder of the demonstration's documents; where there is none, no demo is offered.
  Desk(std::string book, std::string feeds);

  /// The stylist's own book, or the invented one while she tries the demo.
  std::string book_path() const;
  bool is_demo() const;
  bool has_demo() const;
  const std::string& feeds() const { return feeds_; }
  std::string demo_path() const { return own_ + ".demo"; }
  void show_demo(bool shown);
  /// Only one demo is made at a time.
  std::mutex& demo_making() { return demo_making_; }

  /// What waits beside the book that is shown.
  HeldUploads held() const { return HeldUploads(book_path() + ".held"); }
  /// Only one upload is kept at a time, or a double click would keep it twice.
  KeepWork& keeping() { return keeping_; }

  /// Nothing where there is no book yet.
  std::optional<Book> book() const;

  const FormTokens& tokens() const { return tokens_; }

  /// Reading every capture of every shop takes seconds in a large book; shops that did not change
  /// since a page asked the same are not read again. Keys begin with the path of the book.
  Remembered<std::vector<ReachingShop>>& reaching() const { return reaching_; }
  Remembered<std::size_t>& pairs() const { return pairs_; }
  /// What a brief would say first.
  Remembered<std::string>& news() const { return news_; }

 private:
  const std::string own_;
  const std::string feeds_;
  mutable std::mutex mutex_;
  std::mutex demo_making_;
  bool demo_ = false;
  FormTokens tokens_;
  mutable Remembered<std::vector<ReachingShop>> reaching_;
  mutable Remembered<std::size_t> pairs_;
  mutable Remembered<std::string> news_;
  KeepWork keeping_;  ///< last: its thread uses all others
};

/// A page of the desk: where it is, how it is asked for, what answers.
struct DeskRoute {
  enum class Method : unsigned char { get, post };
  Method method = Method::get;
  std::string_view path;
  DeskAnswer (*answer)(Desk& desk, const DeskAsk& ask);
};

/// Every page there is. A path that is not in it leads nowhere: no part of a request is ever taken
/// for the name of a file.
const std::vector<DeskRoute>& desk_routes();

}  // namespace rangebook
