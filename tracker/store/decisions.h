// The stylist's decisions in the book: a pile, so that taking one back gives the state before it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/day.h"
#include "schema/snapshot.h"
#include "tracker/linker.h"
#include "tracker/store/book.h"

namespace rangebook {

/// A decision with what the rules made of the pair when it was decided. `a_on` and `b_on` are the
/// days of the captures in which both lines were looked at.
struct KeptDecision {
  std::int64_t id = 0;  ///< grows with time
  LinkDecision about;
  double score = 0;
  std::string sentence;
};

/// What holds: the newest decision of each pair of a shop's lines, oldest first.
std::vector<KeptDecision> kept_decisions(const Book& book, std::string_view shop);

/// Keeps decisions on top of those before, all or none. Lines may come in either order.
void keep_decisions(Book& book, const std::vector<KeptDecision>& decisions);

/// Takes the newest decision about the pair back; the one before it, if any, holds again. Nothing
/// happens when there is none.
void drop_decision(Book& book, const LinkDecision& about);

/// The decision about the pair that holds if the newest one is taken back; nothing if none does.
std::optional<KeptDecision> decision_below(const Book& book, const LinkDecision& about);

struct NewestDecision {
  std::string shop;  ///< slug
  KeptDecision decision;
};
/// The newest decision about lines of a shop; with an empty slug, of the whole book.
std::optional<NewestDecision> newest_decision(const Book& book, std::string_view shop);

}  // namespace rangebook
