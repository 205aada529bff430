// Lines to sentences to rules: what each sentence is about, and answers to questions.
#include "importers/policy_text.h"

#include <algorithm>
#include <optional>
#include <set>
#include <utility>
#include <variant>

#include "importers/html_scan.h"
#include "importers/page_encoding.h"
#include "importers/page_reader.h"
#include "importers/policy_claims.h"
#include "importers/policy_lines.h"
#include "importers/policy_own_goods.h"
#include "importers/policy_plausible.h"
#include "importers/policy_rules.h"
#include "importers/policy_sentence.h"
#include "importers/terms_markup.h"

namespace rangebook {
namespace {

using R = PolicyRole;

constexpr std::size_t kSniffBytes = 1024;
constexpr std::size_t kDeclarationBytes = 4096;
constexpr std::size_t kLongestHeading = 70;
constexpr std::size_t kShortRemark = 6;
constexpr std::size_t kLongestSentence = 2000;

enum class Topic : std::uint8_t { none, delivery, returns };

bool speaks_of_returns(const PolicySentence& s) {
  return s.has_any(R::returns, R::returnable, R::return_form, R::no_return, R::final_sale,
                   R::refund_act) ||
         (s.has(R::refund) && (!s.has(R::kind) || s.has(R::deduct))) ||
         (s.has(R::exchange) && !s.has(R::money));
}

bool speaks_of_delivery(const PolicySentence& s) {
  return s.has_any(R::delivery, R::kind, R::dispatch, R::all_orders, R::minimum_order,
                   R::first_delivery) ||
         ((s.has(R::per_parcel) || s.has(R::grams)) && s.has(R::money)) ||
         (s.has(R::region) && s.has_any(R::money, R::free)) ||
         (s.has(R::order) && s.has_any(R::money, R::free));
}

/// "When is it delivered?"
bool asks_of_arrival(const PolicySentence& s) {
  const auto* event = s.first(R::event);
  return event != nullptr && event->value == "delivery" && !s.has(R::aside);
}

PolicyFrame frame_of(const TermsContext& context) {
  PolicyFrame frame{context.country, context.currency, context.observed};
  if (frame.country.empty() && frame.currency && frame.currency->code() == "GBP") {
    frame.country = "GB";
  }
  return frame;
}

class PolicyReader {
 public:
  explicit PolicyReader(const TermsContext& context)
      : document_(context.document),
        frame_(frame_of(context)),
        returns_(frame_, claims_),
        delivery_(frame_, claims_) {}

  TermsReading read(const std::vector<PolicyLine>& lines) {
    note_goods(lines);
    for (const auto& line : lines) read_line(line);
    return finish();
  }

  TermsReading read_page(std::string_view html) {
    const auto built = HtmlTree::build(html);
    const auto* tree = std::get_if<HtmlTree>(&built);
    add_markup_claims(html, tree, frame_, claims_);
    return read(tree == nullptr ? std::vector<PolicyLine>{} : lines_of_page(*tree));
  }

 private:
  TermsReading finish() {
    delivery_.finish();
    returns_.finish();
    auto reading = claims_.resolve(document_);
    doubt_implausible(reading);
    return reading;
  }

  void note_goods(const std::vector<PolicyLine>& lines) {
    std::vector<PolicySentence> sentences;
    for (const auto& line : lines) {
      for (const auto& [begin, end] : sentence_bounds(line.text)) {
        auto s = sentence_of(line, begin, end);
        if (s.has(R::item)) sentences.push_back(std::move(s));
      }
    }
    goods_ = own_goods(sentences);
  }

  PolicySentence sentence_of(const PolicyLine& line, std::size_t begin, std::size_t end) const {
    PolicySentence s;
    s.text = line.text.substr(begin, std::min(end - begin, kLongestSentence));
    s.byte = line.byte + static_cast<std::uint32_t>(begin);
    s.kind = line.kind;
    s.tokens = policy_tokens(s.text);
    s.marks = policy_marks(s.text, s.tokens, frame_.currency);
    leave_out_goods(s, goods_);
    return s;
  }

  void read_line(const PolicyLine& line) {
    goes_on_ = false;
    example_ = false;
    delivery_.new_line();
    if (line.kind == PolicyLineKind::row) return read_row(line);
    const auto bounds = sentence_bounds(line.text);
    for (const auto& [begin, end] : bounds) {
      PolicySentence s = sentence_of(line, begin, end);
      const bool letter = s.tokens.size() <= 2 && s.word(0).size() == 1 && s.marks.empty();
      if (letter && bounds.size() > 1) continue;  // the "A." before an answer
      if (bounds.size() == 1 && is_heading(s)) return read_heading(s);
      read_sentence(std::move(s));
      goes_on_ = true;
    }
  }

  /// A heading by its element, or a short line that states no figure.
  bool is_heading(const PolicySentence& s) const {
    if (s.question()) return false;
    if (is_free_title(s)) return true;
    if (s.kind == PolicyLineKind::heading) return !s.has_any(R::money, R::span, R::day, R::free);
    return s.kind == PolicyLineKind::text && s.text.size() <= kLongestHeading &&
           !s.text.ends_with('.') && !s.text.ends_with('!') &&
           !s.has_any(R::money, R::span, R::day, R::free, R::item, R::payer, R::need, R::yes,
                      R::no) &&
           !s.has_any(R::negation, R::can);
  }

  /// "Free delivery" above "From 50.00, counted after discounts": states nothing by itself.
  static bool is_free_title(const PolicySentence& s) {
    constexpr std::size_t kTitle = 6;
    const bool plain = s.kind == PolicyLineKind::text || s.kind == PolicyLineKind::heading;
    return plain && s.tokens.size() <= kTitle && s.has(R::free) && s.has(R::delivery) &&
           !s.text.ends_with('.') && !s.text.ends_with('!') &&
           !s.has_any(R::money, R::span, R::day, R::kind, R::region, R::all_orders, R::over) &&
           !s.has_any(R::from, R::order, R::method, R::item, R::payer, R::negation);
  }

  /// About something else than getting an order and sending it back.
  static bool is_aside(const PolicySentence& s) {
    const bool other = s.has_any(R::other_service, R::faulty) && !s.has_any(R::kind, R::free);
    const auto* item = s.first(R::item);
    const bool gift_cards = s.kind != PolicyLineKind::item && !s.question() && item != nullptr &&
                            item->value == "gift-cards" && s.tokens.size() <= 4 &&
                            !s.text.ends_with('.');
    return s.has(R::aside) || other || gift_cards;
  }

  void read_heading(const PolicySentence& s) {
    question_.reset();
    const bool aside = is_aside(s) || s.has_any(R::hedge, R::example);
    returns_.set_aside(aside && !speaks_of_returns(s));
    delivery_.set_aside((aside || s.has(R::item)) && !speaks_of_delivery(s));
    returns_.open_list(s);
    returns_.open_section(s);
    const bool returns = speaks_of_returns(s);
    const bool delivery = speaks_of_delivery(s);
    if (returns || delivery) {
      topic_ = returns && !delivery   ? Topic::returns
               : delivery && !returns ? Topic::delivery
                                      : Topic::none;
    }
    if (!returns) delivery_.open_section(s);
  }

  void read_row(const PolicyLine& line) {
    PolicySentence s = sentence_of(line, 0, line.text.size());
    const PolicyLine head_line{line.header, line.byte, PolicyLineKind::heading, {}};
    const PolicySentence head = sentence_of(head_line, 0, line.header.size());
    if (question_ && speaks_of_delivery(*question_)) topic_ = Topic::delivery;
    if (question_ && speaks_of_returns(*question_)) topic_ = Topic::returns;
    Topic topic = topic_;
    if (speaks_of_returns(s) || s.has(R::return_form) || speaks_of_returns(head)) {
      topic = Topic::returns;
    } else if (speaks_of_delivery(head) || s.has_any(R::kind, R::region, R::grams)) {
      topic = Topic::delivery;
      if (topic_ == Topic::none) topic_ = topic;  // for the row "Store | free" as well
    }
    if (topic == Topic::returns) returns_.read_row(s, head);
    if (topic == Topic::delivery) delivery_.read(s, false);
  }

  /// "Yes", "No" at the front, also behind the "A:" of a list of questions.
  std::optional<bool> take_answer(PolicySentence& s) const {
    std::uint32_t at = 0;
    if (s.word(0).size() == 1 && s.word(1) == ":") at = 2;
    for (const auto& mark : s.marks) {
      const bool says = mark.begin == at && (mark.role == R::yes || mark.role == R::no);
      const bool regret = mark.begin == at && mark.role == R::negation && s.tokens.size() <= at + 4;
      if (!says && !regret) continue;
      const bool yes = mark.role == R::yes;
      const auto size = static_cast<std::uint32_t>(s.tokens.size());
      s = part_of(s, std::min(mark.end, size), size);
      return yes;
    }
    return std::nullopt;
  }

  void read_sentence(PolicySentence s) {
    const bool condition =
        question_ && question_->has(R::money) && question_->has_any(R::over, R::from, R::or_more);
    // "Do you live in Belgium? Then it costs 6.50."
    const bool place = question_ && question_->has(R::region) && s.has_any(R::money, R::free) &&
                       word_between(s, 0, 1, {"then", "dann", "alors", "dan", "entonces"});
    if (question_ && (question_->has(R::day) || condition || place) && !s.question()) {
      s = joined(*question_, s);
      if (condition || place) question_.reset();
    }
    if (s.question()) {
      returns_.set_aside(false);
      delivery_.set_aside(false);
      question_ = std::move(s);
      return;
    }
    if (!question_ && !goes_on_) {
      skip_ = false;
      returns_.ask(nullptr);
      delivery_.ask(nullptr);
    }
    if (question_) {
      const PolicySentence question = *std::exchange(question_, std::nullopt);
      skip_ = is_aside(question);
      if (skip_) return;
      const bool about = speaks_of_delivery(question) || asks_of_arrival(question);
      topic_ = speaks_of_returns(question) ? Topic::returns : about ? Topic::delivery : topic_;
      returns_.ask(&question);
      returns_.open_list(question);
      delivery_.ask(about ? &question : nullptr);
      const auto yes = take_answer(s);
      if (topic_ == Topic::returns && yes) returns_.answer(question, *yes, s);
      if (topic_ == Topic::returns && !yes) returns_.answer_freely(question, s);
    }
    if (skip_) return;
    read_statement(s);
    if (s.text.ends_with(':')) returns_.open_list(s);
  }

  /// "Bought between .. and ..? Then you have until ..", "Over 50? Then we send it free": one
  /// statement.
  PolicySentence joined(const PolicySentence& first, const PolicySentence& second) const {
    PolicySentence s = second;
    s.text = first.text.substr(0, first.text.size() - 1) + ", " + second.text;
    s.byte = first.byte;
    s.tokens = policy_tokens(s.text);
    s.marks = policy_marks(s.text, s.tokens, frame_.currency);
    return s;
  }

  /// "If what you keep comes to less than 50.00"
  static bool is_kept(const PolicySentence& s) {
    return std::any_of(s.marks.begin(), s.marks.end(), [](const PolicyMark& one) {
      return one.role == R::kept_below && one.value == "kept";
    });
  }

  /// "Within 4 days of your order you have it at home": on the way to her.
  static bool is_arrival(const PolicySentence& s) {
    return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
      return one.role == R::delivery &&
             std::none_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& event) {
               return event.role == R::event && event.begin <= one.begin && one.end <= event.end;
             });
    });
  }

  /// "The period of 20 days begins when we send it"
  static bool is_period(const PolicySentence& s) {
    return s.has(R::span) &&
           word_between(s, 0, 5,
                        {"period", "window", "frist", "delai", "termijn", "plazo", "bedenktijd"});
  }

  void read_statement(const PolicySentence& s) {
    if (s.kind == PolicyLineKind::text && !s.text.ends_with(':') && !s.has(R::item)) {
      returns_.close_list();
    }
    const bool way_back =
        topic_ == Topic::returns && !s.has_any(R::kept_below, R::order) &&
        (s.has(R::payer) || (s.has(R::method) && !s.has_any(R::delivery, R::dispatch)));
    const bool arrival = topic_ != Topic::returns && is_arrival(s) && !speaks_of_returns(s);
    const bool given = s.has(R::have) && s.has(R::span) && s.has(R::event) && !arrival &&
                       !s.has_any(R::money, R::kind, R::dispatch);
    const bool kept =
        given || (topic_ == Topic::returns && !s.has_any(R::money, R::kind, R::refund) &&
                  (s.has(R::need) || (s.has(R::have) && s.has(R::span)) || is_period(s) ||
                   (returns_.is_asked() && s.has(R::span) && s.has(R::event))));
    const bool legal = s.has(R::statutory) && s.has(R::span) && !s.has_any(R::kind, R::dispatch);
    // "Drop it at a parcel shop. It's free."
    const bool free = topic_ == Topic::returns && goes_on_ && s.has(R::free) &&
                      s.tokens.size() <= kShortRemark && !speaks_of_delivery(s);
    const bool returns = speaks_of_returns(s) || way_back || kept || legal || free;
    // "We charge 2.00 per parcel", below a heading of returns
    const bool place = s.has(R::region) && !(goes_on_ && topic_ == Topic::returns);
    const bool named =
        names_delivery(s) || place || s.has_any(R::order, R::all_orders, R::minimum_order);
    const bool delivery = speaks_of_delivery(s) && (named || topic_ != Topic::returns);
    if (s.has(R::kept_below) && (returns || delivery) && s.has(R::charged_after) &&
        s.has_any(R::first_delivery, R::delivery, R::order, R::money) &&
        (s.has(R::returns) || is_kept(s))) {
      return delivery_.read_kept(s);
    }
    const bool given_back =
        s.has_any(R::refund, R::refund_act) && s.has(R::first_delivery) && !s.has(R::money);
    if (returns && !way_back && !kept && !given_back && s.has_any(R::delivery, R::kind) &&
        s.has_any(R::money, R::free, R::span)) {
      return read_mixed(s);
    }
    if (returns) return read_returns(s);
    if (delivery) return read_delivery(s);
    // "Heavier than that (usually coats): 6.20"
    const bool next_fee = topic_ == Topic::delivery && goes_on_ && s.has(R::money);
    if (topic_ == Topic::returns || (s.has_any(R::item, R::need) && !next_fee)) {
      return read_returns(s);
    }
    if (topic_ == Topic::delivery) read_delivery(s);
  }

  /// By a word of its own, not only "it takes", "at your door", which a way back has as well.
  static bool names_delivery(const PolicySentence& s) {
    static constexpr std::string_view kStems[] = {
        "deliver", "shipp",   "ship",    "postage", "p&p",   "carriage", "liefer",  "versand",
        "versend", "zustell", "porto",   "livr",    "exped", "envoi",    "port",    "achemin",
        "lever",   "bezorg",  "verzend", "verstu",  "envi",  "entreg",   "dispatch"};
    if (s.has_any(R::dispatch, R::first_delivery)) return true;
    const auto* kind = s.first(R::kind);
    const bool fetched = kind != nullptr && kind->value == "collection" &&
                         word_between(s, kind->begin, kind->end,
                                      {"collection", "abholung", "ophalen", "recogida"}) &&
                         kind->end == kind->begin + 1;  // "collection", below a heading of returns
    // "Locker: 2.00", "at home: 5.00": a way back as well
    const bool loose =
        kind != nullptr && (kind->value == "pickup-point" ||
                            word_between(s, kind->begin, kind->end,
                                         {"domicile", "chez", "home", "hause", "thuis", "huis",
                                          "domicilio", "casa", "maison"}));
    if (kind != nullptr && !fetched && !loose && !s.has(R::method)) return true;
    return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
      if (one.role != R::delivery && one.role != R::kind) return false;
      return std::any_of(
          s.tokens.begin() + one.begin, s.tokens.begin() + one.end, [](const PolicyToken& token) {
            return std::any_of(std::begin(kStems), std::end(kStems), [&](std::string_view stem) {
              return token.word.find(stem) != std::string::npos;
            });
          });
    });
  }

  /// "Say you order two. Then you pay 5.00": the second of them.
  bool goes_on_in_example(const PolicySentence& s) {
    const bool before = std::exchange(example_, example_ || s.has(R::example));
    return before && s.has(R::money);
  }

  void read_returns(const PolicySentence& s) {
    if (goes_on_in_example(s)) return;
    if (!goes_on_ || speaks_of_returns(s)) topic_ = Topic::returns;
    returns_.read(s, goes_on_);
  }

  void read_delivery(const PolicySentence& s) {
    if (goes_on_in_example(s)) return;
    topic_ = Topic::delivery;
    delivery_.read(s, goes_on_);
  }

  /// "Free delivery over 50 and free returns": part by part, where each part speaks of one of them.
  void read_mixed(const PolicySentence& s) {
    if (s.has(R::hedge)) return read_returns(s);  // its parts may not say of whom it holds
    if (s.has(R::example)) return;
    // "Exchanges: we send the new size free of charge within 3 days"
    if (s.has(R::exchange) && !s.has(R::money)) return read_returns(s);
    const auto size = static_cast<std::uint32_t>(s.tokens.size());
    std::uint32_t begin = 0;
    std::vector<std::pair<std::uint32_t, std::uint32_t>> parts;
    for (std::uint32_t at = 0; at <= size; ++at) {
      const bool stop = at == size || is_stop(s.word(at)) || is_joint(s, at);
      if (!stop) continue;
      if (at > begin) parts.emplace_back(begin, at);
      begin = at + 1;
    }
    std::vector<Topic> topics;
    bool both = false;
    bool stated = false;  // "we refund you, postage included, within 14 days" states none
    for (const auto& [from, to] : parts) {
      const auto part = part_of(s, from, to);
      // "Returns within 21 days, postage is paid by the customer"
      const bool way_back = !topics.empty() && topics.back() == Topic::returns &&
                            part.has(R::payer) && !part.has_any(R::money, R::free);
      const bool returns = speaks_of_returns(part) || way_back;
      // "Post it back for 3.50, collection by courier 6.00"
      const auto* kind = part.first(R::kind);
      const bool point = kind != nullptr && kind->value == "pickup-point";
      const bool about =
          topic_ == Topic::returns ? names_delivery(part) && !point : part.has(R::delivery);
      const bool shop = kind != nullptr && kind->value == "collection";
      const bool way = kind != nullptr && !point && (!shop || names_delivery(part));
      const bool delivery = (about || way) && !way_back;
      stated = stated || (delivery && part.has_any(R::money, R::free, R::span));
      both = both || (returns && (about || kind != nullptr) && !way_back);
      topics.push_back(returns          ? Topic::returns
                       : delivery       ? Topic::delivery
                       : topics.empty() ? Topic::none
                                        : topics.back());
    }
    const bool split =
        !both && stated && std::find(topics.begin(), topics.end(), Topic::delivery) != topics.end();
    if (!split) return read_returns(s);
    std::replace(topics.begin(), topics.end(), Topic::none, topics.back());
    for (std::size_t i = 0; i < parts.size();) {
      std::size_t last = i;
      while (last + 1 < parts.size() && topics[last + 1] == topics[i]) ++last;
      const auto part = part_of(s, parts[i].first, parts[last].second);
      if (topics[i] == Topic::delivery) delivery_.read(part, goes_on_);
      if (topics[i] == Topic::returns) returns_.read(part);
      i = last + 1;
    }
  }

  std::string document_;
  std::set<std::string_view> goods_;  ///< what the shop sells, where it sells one kind
  PolicyFrame frame_;
  PolicyClaims claims_;
  ReturnRules returns_;
  DeliveryRules delivery_;
  Topic topic_ = Topic::none;
  std::optional<PolicySentence> question_;
  bool goes_on_ = false;
  bool example_ = false;  ///< the line tells an example
  bool skip_ = false;     ///< the line answers a question about something else
};

}  // namespace

TermsReading read_policy_text(std::string_view text, const TermsContext& context) {
  return PolicyReader(context).read(lines_of_text(text.substr(0, kMaxPolicyBytes)));
}

TermsReading read_policy_page(std::string_view html, const TermsContext& context) {
  return PolicyReader(context).read_page(html.substr(0, kMaxPolicyBytes));
}

TermsReading read_policy(std::string_view document, const TermsContext& context,
                         std::string_view charset) {
  document = document.substr(0, kMaxPolicyBytes);
  const bool is_page = looks_like_page(document.substr(0, kSniffBytes));
  auto declared = is_page ? scan_page(document.substr(0, kDeclarationBytes)).charset : std::nullopt;
  if (!charset.empty()) declared = charset;
  auto page = decode_page(document, find_encoding(document, declared));
  if (!page) return {};
  const std::string_view text = page->converted.empty() ? page->text : page->converted;
  auto reading = is_page ? read_policy_page(text, context) : read_policy_text(text, context);
  const std::size_t mark = byte_order_mark(document);
  const auto place = [&](std::uint64_t& byte) {
    if (!page->converted.empty()) byte = encoded_size(text.substr(0, byte), page->encoding);
    byte += mark;
  };
  for (auto& [field, evidence] : reading.terms.evidence) place(evidence.byte);
  for (auto& doubt : reading.doubts) place(doubt.evidence.byte);
  return reading;
}

}  // namespace rangebook
