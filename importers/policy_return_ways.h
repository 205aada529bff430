// What a sentence below a heading of returns says of ways back and their cost, besides the words
// of the table.
#pragma once

#include "importers/policy_sentence.h"

namespace rangebook {

/// "Returns for credit are always free"
bool is_for_credit(const PolicySentence& s);
/// "Take it to a post office or to our shop", "print the label and leave it at a parcel shop",
/// below a heading of returns.
bool hands_over(const PolicySentence& s);
/// "Parcel shop: print a label", below a heading of returns.
bool is_labelled(const PolicySentence& s);
/// "Free, and the money is back at once": the cost of the way named by the sentence before.
bool begins_free(const PolicySentence& s);
/// "Both are free": of the two ways before.
bool means_both(const PolicySentence& s);
/// "It's free.": of the way back named in the sentence before.
bool is_short_free(const PolicySentence& s, bool after_way);
/// "A prepaid label is in every box", "the label is free"
bool names_free_label(const PolicySentence& s);
/// "We deduct 1.95", "1,95 are kept": behind the one way it is for.
bool deducts(const PolicySentence& s);
/// "We add 3.00 to your refund", "we refund postage up to 3.00"
bool gives_more(const PolicySentence& s);
/// "At a parcel shop, or have it fetched": the way behind was not understood.
bool has_other_way(const PolicySentence& s);
/// What sending by post costs.
bool is_postage(const PolicySentence& s);
/// "If you swap it, the postage is on us": nothing is said of what is sent back for good.
bool is_of_exchange(const PolicySentence& s);
/// "By courier or post": two ways side by side.
bool is_either(const PolicySentence& before, const PolicySentence& part);

}  // namespace rangebook
