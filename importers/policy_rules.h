// The two sets of rules: what a sentence about returns, and one about delivery, claims.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "importers/policy_claims.h"
#include "importers/policy_sentence.h"

namespace rangebook {

/// What rules need to know besides the sentence.
struct PolicyFrame {
  std::string country;               ///< of the shop; empty if not known
  std::optional<Currency> currency;  ///< of the shop, for "free"
  std::optional<Day> observed;
};

/// True where a region is the shop's own country or a part of it.
bool is_home(std::string_view region, const PolicyFrame& frame);

/// "Swaps in our shops only, with the receipt": said of exchanges, not of what comes back for
/// money.
inline bool is_swap_only(const PolicySentence& s) {
  bool swap = false;
  for (const auto& mark : s.marks) {
    if (mark.role == PolicyRole::refund || mark.role == PolicyRole::refund_act ||
        mark.role == PolicyRole::returnable) {
      return false;
    }
    if (mark.role == PolicyRole::exchange) swap = true;
    if (mark.role != PolicyRole::returns) continue;
    const bool same = std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
      return one.role == PolicyRole::exchange && one.begin == mark.begin;
    });
    if (!same) return false;
  }
  return swap;
}
/// "You have 60 days, sale items included", "this also goes for reduced goods": all goods.
bool only_includes(const PolicySentence& s);

/// The places of items in the sentence, each item once; "non-sale items" are none.
std::vector<const PolicyMark*> items_of(const PolicySentence& s);

inline constexpr std::string_view kHedged = "It holds for some customers, orders or times only.";
inline constexpr std::string_view kSomeItems = "The sentence speaks of certain items.";
inline constexpr std::string_view kNarrowed = "The sentence may speak of some of these only.";
inline constexpr std::string_view kUnknownWay = "It is not clear what the figure is about.";
inline constexpr std::string_view kSwap = "It may hold for an exchange alone.";

/// Sentences about returns.
class ReturnRules {
 public:
  ReturnRules(PolicyFrame frame, PolicyClaims& claims)
      : frame_(std::move(frame)), claims_(claims) {}

  /// `goes_on`: it follows a sentence of the same line, whose method it may speak of.
  void read(const PolicySentence& sentence, bool goes_on = false);
  /// A row of a table under its header.
  void read_row(const PolicySentence& row, const PolicySentence& header);
  /// The question that the next sentence answers; nothing when it answers none.
  void ask(const PolicySentence* question);
  bool is_asked() const { return asked_; }
  /// A question that was answered with yes or no.
  void answer(const PolicySentence& question, bool yes, const PolicySentence& answer);
  /// A question that the answer takes up without a yes or no.
  void answer_freely(const PolicySentence& question, const PolicySentence& answer);
  /// A heading or a sentence that announces a list of what cannot be returned, then its lines.
  void open_list(const PolicySentence& sentence);
  void close_list() { in_list_ = false; }
  /// A heading: the methods it names hold for costs below it.
  void open_section(const PolicySentence& heading);
  /// The heading above is about something else.
  void set_aside(bool aside) { aside_ = aside; }
  /// What can be said once all is read.
  void finish();

 private:
  struct CostGroup;
  void claim(const PolicySentence& sentence, std::string_view name, std::string text,
             std::string doubt = {});
  void set_region(const PolicySentence& sentence);
  void answer_swap(const PolicySentence& both, const std::vector<const PolicyMark*>& items,
                   const PolicySentence& answer);
  void answer_payer(const PolicySentence& question, const PolicySentence& answer);
  void read_places(const PolicySentence& sentence, bool goes_on);
  void read_part(const PolicySentence& sentence, bool goes_on);
  void read_legal(const PolicySentence& sentence);
  bool read_start(const PolicySentence& sentence);
  bool read_send_back(const PolicySentence& sentence, const PolicyMark& span, bool window_seen);
  void read_rules(const PolicySentence& sentence);
  bool read_exceptions(const PolicySentence& sentence);
  std::optional<ItemRule> item_rule(const PolicySentence& part, const PolicyMark& item,
                                    bool whole) const;
  bool read_items(const PolicySentence& sentence);
  void note_title(const PolicySentence& sentence);
  void read_below_title(const PolicySentence& sentence);
  void read_needs(const PolicySentence& sentence);
  bool read_season(const PolicySentence& sentence);
  std::string doubt_of_season(const PolicySentence& sentence, const SeasonalWindow& season,
                              bool sold) const;
  void read_spans(const PolicySentence& sentence);
  bool read_refund_time(const PolicySentence& sentence, const PolicyMark& span,
                        const PolicyMark* event);
  std::string doubt_of_window(const PolicySentence& sentence, const PolicyMark& span,
                              const PolicyMark* event) const;
  void read_span(const PolicySentence& sentence, std::size_t mark, bool& window_seen);
  void read_costs(const PolicySentence& sentence);
  static std::vector<CostGroup> groups_of(const PolicySentence& sentence);
  struct Joint;
  static Joint joint_of(const std::vector<PolicySentence>& parts, std::size_t index,
                        const CostGroup& last);
  static bool parts_ways(const PolicySentence& part, const CostGroup& last, bool refused);
  std::string doubt_of_cost(const PolicySentence& sentence, const CostGroup& group,
                            bool told) const;
  std::vector<std::string> claim_ways(const PolicySentence& sentence, const CostGroup& group,
                                      const std::string& doubt, const std::string& handed_doubt,
                                      bool told);
  void claim_cost(const PolicySentence& sentence, const CostGroup& group, const std::string& place,
                  const std::string& doubt);
  void claim_group(const PolicySentence& sentence, const CostGroup& group);
  void claim_free(const PolicySentence& sentence, std::string_view prefix,
                  const std::string& doubt);
  void drop_prepaid();
  void read_legal_refund(const PolicySentence& sentence);
  void read_beside_season(const PolicySentence& sentence);
  void read_refund(const PolicySentence& sentence);
  void read_exchange(const PolicySentence& sentence);
  void claim_original(const PolicySentence& sentence);
  bool is_refunded_too(const PolicySentence& sentence) const;
  static bool is_conditional(const PolicySentence& sentence);
  void read_given_instead(const PolicySentence& sentence);
  void read_delivery_refund(const PolicySentence& sentence, const PolicySentence& part);
  void read_rest(const PolicySentence& sentence);

  PolicyFrame frame_;
  PolicyClaims& claims_;
  std::string prefix_ = "return.";
  std::vector<std::string> beside_;  ///< prefixes of more places the sentence names in one list
  std::string doubt_;                ///< of the sentence at hand
  std::optional<CountedFrom> from_;  ///< where the window of the line starts
  bool either_ = false;              ///< the sentence before names another way, not understood
  bool weak_ = false;                ///< what is claimed follows from a prepaid label
  bool goes_on_ = false;
  bool refunded_ = false;                  ///< the sentence read last speaks of money given back
  bool after_refund_ = false;              ///< the sentence before, in the same line, does
  bool carries_ = false;                   ///< the part before, of another place, spoke of returns
  std::vector<std::string_view> section_;  ///< methods of the heading above
  std::vector<std::string_view> methods_;  ///< of the sentence before, in the same line
  bool headed_ = false;                    ///< the heading above speaks of returns
  bool in_list_ = false;
  std::optional<PolicySentence> title_;  ///< goods named by the line before
  int title_age_ = 0;                    ///< in lines
  std::optional<ItemRule> last_rule_;    ///< of the items of the sentence before
  bool aside_ = false;
  bool asked_ = false;         ///< the sentence answers a question about returns
  bool asked_cost_ = false;    ///< .. about what a return costs
  bool asked_some_ = false;    ///< .. of some customers or orders only
  bool asked_refund_ = false;  ///< .. about when the money comes
  bool in_row_ = false;
};

/// Sentences about delivery. Facts for all options wait until `finish`.
class DeliveryRules {
 public:
  DeliveryRules(PolicyFrame frame, PolicyClaims& claims)
      : frame_(std::move(frame)), claims_(claims) {}

  /// `goes_on`: it follows a sentence of the same line, whose option it may speak of.
  void read(const PolicySentence& sentence, bool goes_on);
  /// A heading: its kind and places hold for what stands below.
  void open_section(const PolicySentence& heading);
  /// A question: holds like a heading for its answer. Nothing: the answer is over.
  void ask(const PolicySentence* question);
  /// The heading above is about something else.
  void set_aside(bool aside) { aside_ = aside; }
  void new_line();
  /// "If a return brings the order below .., the delivery fee is charged."
  void read_kept(const PolicySentence& sentence);
  void finish();

 private:
  struct Option {
    std::string kind;  ///< empty: not said
    std::vector<std::string> regions;
    bool vague = false;  ///< more is said of the regions than was understood
  };
  struct Step {
    std::optional<Money> from;  ///< nothing: from 0
    std::optional<int> grams;   ///< of a step by weight
    Money fee;
    PolicyClaim origin;
  };
  struct Clause;
  /// Where the shop says it delivers, and where not.
  struct Places {
    std::vector<std::string> to;
    std::vector<std::string> never;
    std::string sentence;
    std::uint64_t byte = 0;
  };

  bool is_about(const PolicySentence& sentence, bool goes_on) const;
  std::string key_of(const Option& option) const;
  void claim(const PolicySentence& sentence, const Option& option, std::string_view name,
             const std::string& text, std::string doubt = {}, bool weak = false);
  std::vector<Clause> clauses_of(const PolicySentence& sentence) const;
  static void leave_out_asides(std::vector<Clause>& clauses);
  void begin(const PolicySentence& sentence, bool goes_on);
  Option name_options(const PolicySentence& sentence, Option option, std::vector<Clause>& clauses);
  void note_places(const PolicySentence& sentence);
  void note_title(const PolicySentence& sentence);
  bool is_of_both(const PolicySentence& sentence) const;
  void read_same_day(const PolicySentence& sentence, const Clause& clause);
  Option option_before(const PolicySentence& sentence, bool goes_on) const;
  void leave_out_remarks(const PolicySentence& sentence, std::vector<Clause>& clauses);
  void give_to_excepted(std::vector<Clause>& clauses);
  static bool is_fast_unnamed(const Clause& clause);
  static void give_to_next_day(std::vector<Clause>& clauses);
  void give_to_faster(const PolicySentence& sentence, std::vector<Clause>& clauses) const;
  void read_context(const Clause& clause, Option& option, bool named_before) const;
  void read_money(const PolicySentence& sentence, std::vector<Clause>& clauses);
  struct Amounts;
  static void weigh_amount(const PolicySentence& sentence, Clause& clause, const Amounts& amounts,
                           std::size_t index);
  void weigh_money(const PolicySentence& sentence, Clause& clause) const;
  void pair_up(const PolicySentence& sentence, Clause& limits, Clause& costs);
  static void carry_limits(std::vector<Clause>& clauses);
  void read_minimum(const PolicySentence& sentence, Clause& clause);
  void claim_alone(const PolicySentence& sentence, const Clause& clause);
  void read_spans(const PolicySentence& sentence, const Clause& clause);
  void read_next_day(const PolicySentence& sentence, const Clause& clause, const PolicyMark& mark);
  void read_span(const PolicySentence& sentence, const Clause& clause, const PolicyMark& mark);
  void claim_handling(const PolicySentence& sentence, const Option& option, const DaySpan& span);
  void read_per_parcel(const PolicySentence& sentence, const std::vector<Clause>& clauses);
  void read_extras(const PolicySentence& sentence, const Option& option);
  void add_step(const PolicySentence& sentence, const Option& option, std::optional<Money> from,
                const Money& fee);
  void finish_steps_of(const std::string& key, std::vector<Step> steps);
  void finish_option(const std::string& key);
  void read_weights(const PolicySentence& sentence, const std::vector<Clause>& clauses);
  void finish_steps();
  void finish_weights();
  void finish_shared();
  void finish_options();
  void read_places(const PolicySentence& sentence, const std::vector<Clause>& clauses);
  void finish_places();

  PolicyFrame frame_;
  PolicyClaims& claims_;
  Option section_;
  std::vector<std::string> home_above_;  ///< the home country, of the heading above this one
  std::optional<Option> outer_;          ///< the section around a question
  bool asked_ = false;
  bool aside_ = false;
  bool headed_ = false;          ///< the heading above speaks of delivery
  bool headed_free_ = false;     ///< .. of free delivery
  bool weighed_ = false;         ///< the line states steps by weight
  bool excepted_ = false;        ///< a place left out has a figure of its own
  bool in_example_ = false;      ///< the line gave an example
  bool labelled_ = false;        ///< the line begins with the name of a way
  std::optional<Option> title_;  ///< of the line above
  bool title_line_ = false;      ///< the line is one
  bool below_title_ = false;
  bool left_ = false;     ///< the sentence before said when orders leave
  bool strange_ = false;  ///< much of the sentence was not understood
  Option last_;
  std::vector<std::string> stated_places_;  ///< "We deliver within ..", in the line so far
  std::optional<std::string> free_beyond_;  ///< text of the value that small orders stay below
  std::set<std::string> line_keys_;         ///< of options whose places the line names
  std::set<std::string> line_kinds_;        ///< of options that a sentence of the line prices
  std::string doubt_;
  std::map<std::string, std::vector<Step>> steps_;  ///< by option key
  std::map<std::string, std::vector<Step>> weights_;
  std::map<std::string, std::vector<std::string>> regions_;  ///< by option key
  std::map<std::string, std::vector<std::string>> shared_;   ///< places of one time, by option key
  std::set<std::string> vague_;                              ///< keys of options whose regions are
  std::map<std::string, std::string> kinds_;                 ///< by option key
  Places stated_;
  std::vector<PolicyClaim> for_all_;  ///< handling, threshold rules: of every option
};

}  // namespace rangebook
