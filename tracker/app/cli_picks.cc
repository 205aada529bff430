// `picks` and its verbs, and `due`, with an example for each.
#include "tracker/app/cli_picks.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>

#include "schema/nearest_word.h"
#include "tracker/app/cli_output.h"
#include "tracker/app/cli_words.h"
#include "tracker/app/commands_picks.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/scope_words.h"

namespace rangebook {
namespace {

/// Everything that can be said of picks.
struct Said {
  PickWish wish;
  std::string on;
  std::string review;
  std::int64_t number = 0;
  std::vector<std::int64_t> numbers;
  PickFilter filter;
  std::string list;
  std::string word;
  std::string now;
  int every = kRevisitDays;
  int ahead = 0;
  OutputChoice output;
};

Day day_in(const std::string& word, std::string_view option) {
  const auto day = parse_day(word);
  if (day) return *day;
  throw UsageError{fmt::format("{}: \"{}\" is no date; write it as 2026-09-01.", option, word)};
}

Day day_or_today(const std::string& word) { return word.empty() ? today() : day_in(word, "--on"); }

PickWord word_of(const Said& said) {
  if (const auto list = parse_pick_list(said.list)) return {*list, said.word};
  const auto names = pick_list_names();
  throw UsageError{fmt::format("\"{}\" is no list of words.{} There are: {}.", said.list,
                               did_you_mean(said.list, names), joined(names))};
}

/// The lists that were named, without empty words: those clear a list.
PickWordChoice named_words(const CLI::App& sub, const Said& said) {
  PickWordChoice named;
  for (const auto& [list, words] : said.wish.words) {
    if (sub.count(fmt::format("--{}", to_string(list))) == 0) continue;
    named[list] = words;
    std::erase(named[list], "");
  }
  return named;
}

PickWish wish_of(const CLI::App& sub, const Said& said) {
  PickWish wish = said.wish;
  wish.on = day_or_today(said.on);
  if (!said.review.empty()) wish.review = day_in(said.review, "--review");
  wish.words = named_words(sub, said);
  return wish;
}

PickChange change_of(const CLI::App& sub, const Said& said) {
  PickChange change;
  change.words = named_words(sub, said);
  if (sub.count("--on") > 0) change.on = day_in(said.on, "--on");
  if (sub.count("--theme") > 0) change.theme = said.wish.theme;
  if (sub.count("--note") > 0) change.note = said.wish.note;
  if (sub.count("--review") > 0) {
    change.review = said.review == "none" ? std::optional<Day>() : day_in(said.review, "--review");
  }
  return change;
}

class PickCommands {
 public:
  PickCommands(CLI::App& app, const CliContext& context) : app_(app), context_(context) {}

  void add_all() {
    picks_ = app_.add_subcommand("picks", "Lines you recommended, and what became of them");
    picks_->require_subcommand(1);
    picks_->fallthrough();
    add_add();
    add_change();
    add_remove();
    add_view("list", "List the picks", "list --theme \"Harbour wedding\"", PickView::list);
    add_view("follow", "What became of each: there, sold out, dearer, marked down, gone",
             "follow harbour-loft", PickView::follow);
    add_view("notes", "Show notes: exact figures with their day, by theme and review date",
             "notes --theme \"Harbour wedding\" --format html --out notes.html", PickView::notes);
    add_words();
    add_due();
  }

 private:
  using Run = std::function<int(const std::string& book, const Said& said)>;

  CLI::App* verb(CLI::App& under, const std::string& name, const std::string& what,
                 const std::string& example, Run run) {
    CLI::App* sub = under.add_subcommand(name, what);
    sub->footer("Example: rangebook " + example);
    sub->fallthrough();
    sub->parse_complete_callback([context = context_, said = said_, run = std::move(run), sub] {
      if (!sub->get_subcommands().empty()) return;
      context.act([context, said, run] { return run(context.book(), *said); });
    });
    return sub;
  }
  void output(CLI::App* sub, const std::vector<std::string>& forms) {
    add_output(*sub, forms, said_->output);
  }
  /// What both `add` and `change` can say.
  void facts(CLI::App* sub, const std::string& day, const std::string& review) {
    sub->add_option("--on", said_->on, day)->type_name("DATE");
    sub->add_option("--theme", said_->wish.theme, "What it is for, such as \"Harbour wedding\"");
    sub->add_option("--review", said_->review, review)->type_name("DATE");
    sub->add_option("--note", said_->wish.note, "A sentence for the show notes");
    for (const auto& name : pick_list_names()) {
      sub->add_option("--" + name, said_->wish.words[parse_pick_list(name).value()],
                      "A word of the list " + name + "; can be said again")
          ->type_name("WORD");
    }
  }

  void add_add() {
    auto sub = std::make_shared<CLI::App*>();
    *sub = verb(*picks_, "add", "Keep a line as a pick",
                "picks add \"Maya Dress\" --shop harbour-loft --theme \"Harbour wedding\" "
                "--review 2026-12-01 --palette warm --caution creases",
                [sub](const auto& book, const Said& said) {
                  return command_pick_add(book, wish_of(**sub, said));
                });
    (*sub)->add_option("line", said_->wish.line, "Code, name or reference of the line")->required();
    (*sub)->add_option("--shop", said_->wish.shop, "The shop's short name (default: every shop)");
    (*sub)->add_option("--capture", said_->wish.capture,
                       "Season, date or id it was picked from (default: the latest by then)");
    facts(*sub, "Day you recommended it (default: today)", "Day to look at it again");
  }
  void add_change() {
    auto sub = std::make_shared<CLI::App*>();
    *sub = verb(*picks_, "change", "Change what is said of a pick; the rest stays",
                "picks change 3 --review 2027-03-01 --palette warm --palette deep",
                [sub](const auto& book, const Said& said) {
                  return command_pick_change(book, said.number, change_of(**sub, said));
                });
    (*sub)->add_option("number", said_->number, "As picks list shows it")->required();
    facts(*sub, "Day you recommended it", "Day to look at it again, or none");
  }
  void add_remove() {
    CLI::App* sub = verb(
        *picks_, "remove", "Forget picks", "picks remove 3 4",
        [](const auto& book, const Said& said) { return command_pick_remove(book, said.numbers); });
    sub->add_option("numbers", said_->numbers, "As picks list shows them")->required();
  }
  void add_view(const std::string& name, const std::string& what, const std::string& example,
                PickView view) {
    CLI::App* sub =
        verb(*picks_, name, what, "picks " + example, [view](const auto& book, const Said& said) {
          return command_picks(book, said.filter, view, said.output);
        });
    sub->add_option("shop", said_->filter.shop, "The shop's short name (default: every shop)");
    sub->add_option("--theme", said_->filter.theme, "Only picks of this theme");
    output(sub, {"text", "md", "json", "csv", "html", "xlsx"});
  }
  void add_words() {
    CLI::App* words = verb(
        *picks_, "words", "Your own words for picks, list by list", "picks words",
        [](const auto& book, const Said& said) { return command_pick_words(book, said.output); });
    output(words, {"text", "json"});
    const auto edit = [this, words](const std::string& name, const std::string& what,
                                    const std::string& example, Run run) {
      CLI::App* sub = verb(*words, name, what, "picks words " + example, std::move(run));
      sub->add_option("list", said_->list, joined(pick_list_names()))->required();
      sub->add_option("word", said_->word, "The word")->required();
      return sub;
    };
    edit("add", "Add a word to a list", "add palette \"jewel tones\"",
         [](const auto& book, const Said& said) {
           return command_pick_word_add(book, word_of(said));
         });
    edit("remove", "Take a word out of a list and off the picks", "remove palette muted",
         [](const auto& book, const Said& said) {
           return command_pick_word_remove(book, word_of(said));
         });
    edit("rename", "Word it otherwise, on the picks too", "rename palette deep rich",
         [](const auto& book, const Said& said) {
           return command_pick_word_rename(book, word_of(said), said.now);
         })
        ->add_option("now", said_->now, "What it is to be called")
        ->required();
  }
  void add_due() {
    CLI::App* sub = verb(
        app_, "due", "What is due: shops to go back to, picks to look at again", "due --ahead 14",
        [](const auto& book, const Said& said) {
          return command_due(book, {day_or_today(said.on), said.every, said.ahead}, said.output);
        });
    sub->add_option("--on", said_->on, "As of this day (default: today)")->type_name("DATE");
    sub->add_option("--every", said_->every, "A shop is due this many days after its last capture")
        ->check(CLI::Range(1, 3660))
        ->type_name("DAYS")
        ->capture_default_str();
    sub->add_option("--ahead", said_->ahead, "Also what falls due in the days after")
        ->check(CLI::Range(0, 3660))
        ->type_name("DAYS")
        ->capture_default_str();
    output(sub, {"text", "md", "json", "csv", "html", "xlsx"});
  }

  CLI::App& app_;
  CliContext context_;
  std::shared_ptr<Said> said_ = std::make_shared<Said>();
  CLI::App* picks_ = nullptr;
};

}  // namespace

void add_pick_commands(CLI::App& app, const CliContext& context) {
  PickCommands(app, context).add_all();
}

}  // namespace rangebook
