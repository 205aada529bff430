// Lines are read as stored and told in full only where they are shown.
#include "tracker/app/line_shelf.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "tracker/app/identity_stage.h"
#include "tracker/app/line_lookup.h"
#include "tracker/app/shop_lines.h"
#include "tracker/interpreter.h"
#include "tracker/line_history.h"
#include "tracker/reference.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

bool has_words(const Listing& listing, std::string_view category,
               const std::vector<std::string>& words) {
  if (words.empty()) return true;
  const LineCard& card = listing.card;
  std::string text = card.name + '\n' + card.line_code + '\n' + card.category + '\n' +
                     card.composition + '\n' + std::string(category);
  for (const std::string& colour : listing.offers.colours) text += '\n' + colour;
  const std::string folded = fold_text(text);
  return std::all_of(words.begin(), words.end(), [&](const std::string& word) {
    return folded.find(word) != std::string::npos;
  });
}

}  // namespace

std::variant<LineShelf, NotThere> lines_on_shelf(const Book& book, const ShelfRequest& request) {
  const auto found = find_capture(book, request.shop, request.capture);
  if (const auto* missing = std::get_if<NotThere>(&found)) return *missing;
  ShopLines lines(book, request.shop);
  LineShelf shelf{lines.roll().shop, std::get<CaptureInfo>(found), {}, 0, {}};
  const auto place = place_of(lines.roll(), shelf.capture.id);
  if (!place) return shelf;
  std::vector<std::uint32_t> rows(lines.roll().captures[*place].lines.size());
  for (std::uint32_t row = 0; row < rows.size(); ++row) rows[row] = row;
  auto states = lines.source().lines(*place, rows);
  Interpreter interpreter(shelf.shop.sizes);
  std::set<std::string> categories;
  const auto words = words_in(fold_text(request.words));
  std::erase_if(rows, [&](std::uint32_t row) {
    const std::string_view category = interpreter.category(states[row].listing.card);
    categories.emplace(category);
    return (!request.category.empty() && category != request.category) ||
           !has_words(states[row].listing, category, words);
  });
  shelf.categories.assign(categories.begin(), categories.end());
  shelf.found = rows.size();
  std::sort(rows.begin(), rows.end(), [&](std::uint32_t a, std::uint32_t b) {
    const auto key = [&](const std::uint32_t& row) {
      const LineCard& card = states[row].listing.card;
      return std::tie(card.name, card.line_code, row);
    };
    return key(a) < key(b);
  });
  rows.resize(std::min(rows.size(), request.most));
  const Identities& all = lines.identities();
  for (const std::uint32_t row : rows) {
    HistoryCapture capture{shelf.capture, {}, std::move(states[row])};
    ShelfLine& shown = shelf.lines.emplace_back();
    shown.line = tell_history(shelf.shop, {std::move(capture)}).front().line.value();
    shown.reference =
        lines.line_reference(all.lines[all.at({*place, row})]).substr(0, kReferenceSigns);
  }
  return shelf;
}

}  // namespace rangebook
