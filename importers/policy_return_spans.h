// What a time in a sentence about returns is a time of: validities, ways, money, swaps.
#pragma once

#include "importers/policy_sentence.h"

namespace rangebook {

/// "A voucher, valid for a year"
bool is_validity(const PolicySentence& s, const PolicyMark& span);
/// "The return label can be used for 21 days"
bool is_of_label(const PolicySentence& s, const PolicyMark& span);
/// "Returns get you a voucher, and you have a year to spend it"
bool is_of_credit(const PolicySentence& s, const PolicyMark& span);
/// "Within two weeks we return the whole amount"
bool gives_back(const PolicySentence& s);
/// "Exchanges must be requested within 7 days", but not the words of other languages that mean
/// returns as well, nor "Exchanges: 14 days".
bool is_exchange_alone(const PolicySentence& s);
/// "Once you have registered it, you have 14 days": counted from something not understood.
bool follows_something(const PolicySentence& s, const PolicyMark& span);
/// "The amount is back on your account within 10 days": what goes back is money.
bool tells_of_money(const PolicySentence& s);
/// "A return takes 5 days to reach us", "returns are checked within 5 days"
bool tells_of_way(const PolicySentence& s);
/// "30 days", "14 days, UK only": nothing else is said.
bool is_bare(const PolicySentence& s);
/// "The money goes back to your card. Allow 5 days.": behind a sentence about a refund.
bool waits(const PolicySentence& s);
/// "Refunds take 5 days"
bool lasts(const PolicySentence& s, const PolicyMark& span);
/// "Up to 14 days from the day you send it back"
bool is_from_sending(const PolicySentence& s, const PolicyMark& span);
/// "Bring it back within 28 days of receiving it and we'll refund you": the time is over where the
/// refund begins.
bool ends_before_refund(const PolicySentence& s, const PolicyMark& span);
/// "Send it back and, within 5 days, we refund you"
bool leads_to_refund(const PolicySentence& s, const PolicyMark& span);

}  // namespace rangebook
