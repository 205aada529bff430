// CLI11 reads the words; this file says which words there are, with an example for each.
#include "tracker/app/cli.h"

#include <CLI/CLI.hpp>
#include <cstdlib>
#include <iostream>

#include "schema/error.h"
#include "schema/nearest_word.h"
#include "tracker/app/cli_completion.h"
#include "tracker/app/cli_fetch.h"
#include "tracker/app/cli_output.h"
#include "tracker/app/cli_picks.h"
#include "tracker/app/cli_terms.h"
#include "tracker/app/cli_words.h"
#include "tracker/app/commands.h"
#include "tracker/app/scope_words.h"

namespace rangebook {
namespace {

class CommandLine {
 public:
  CommandLine() {
    app_.name("rangebook");
    app_.require_subcommand(1);
    app_.fallthrough();
    app_.set_version_flag("--version", "rangebook " RANGEBOOK_VERSION);
    app_.add_option("--book", words_.book, "The book (default: $RANGEBOOK, else your data folder)")
        ->type_name("FILE");
    add_shop();
    add_capture();
    add_compare();
    add_links();
    add_history();
    add_sizes();
    add_lists();
    add_profiles();
    const CliContext context{[this] { return book(); },
                             [this](Action action) { action_ = std::move(action); }};
    add_fetch_command(app_, context);
    add_terms_commands(app_, context);
    add_pick_commands(app_, context);
    add_upkeep();
    add_completion_command(app_, context);
  }

  int run(std::vector<std::string> args);

 private:
  using Action = std::function<int()>;
  CLI::App* command(CLI::App& under, const std::string& verb, const std::string& what,
                    const std::string& example, Action action) {
    CLI::App* sub = under.add_subcommand(verb, what);
    sub->footer("Example: rangebook " + example);
    sub->fallthrough();
    sub->parse_complete_callback([this, action = std::move(action)] { action_ = action; });
    return sub;
  }
  void add_output(CLI::App* sub, const std::vector<std::string>& formats) {
    rangebook::add_output(*sub, formats, words_.output);
  }
  void add_profile(CLI::App* sub) {
    sub->add_option("--profile", words_.profile,
                    "Read tables with this profile of the shop (default: the shop's own, where its "
                    "columns fit)")
        ->type_name("NAME");
    sub->add_flag("--no-profile", words_.no_profile, "Read tables without the shop's profile");
  }
  void add_category(CLI::App* sub) {
    sub->add_option("--category", words_.category, "Only this category, such as dresses");
  }
  std::string book() const { return words_.book.empty() ? default_book_path() : words_.book; }
  CompareRequest comparison() const { return {words_.shop, words_.from, words_.to}; }

  void add_shop();
  void add_capture();
  void add_compare();
  void add_links();
  void add_history();
  void add_links_verbs(CLI::App& links);
  void add_sizes();
  void add_lists();
  void add_rejections();
  int rejections_or_retry() const;
  void add_profiles();
  void add_upkeep();
  int sizes() const;
  std::vector<std::string> known_words(const CLI::App* app) const;
  int usage_error(const std::string& message, const std::string& word) const;
  int no_such_command(const std::vector<std::string>& args) const;
  const CLI::App* deepest() const;
  std::string path_of_deepest() const;

  CLI::App app_{"Keeps every capture of a shop's range and says what changed."};
  Words words_;
  Action action_;
};

void CommandLine::add_shop() {
  CLI::App* shop = app_.add_subcommand("shop", "The shops of the book");
  shop->require_subcommand(1);
  shop->fallthrough();
  CLI::App* add =
      command(*shop, "add", "Add a shop, or change what is known of it",
              "shop add harbour-loft --name \"Harbour Loft\" --country IE "
              "--currency EUR --sizes uk",
              [this] { return command_shop_add(book(), shop_of(words_), stated_of(words_)); });
  add->add_option("slug", words_.shop, "Short name used in commands")->required();
  add->add_option("--name", words_.name, "Name as the shop writes it");
  add->add_option("--country", words_.country, "ISO 3166 code, such as IE")->type_name("CC");
  add->add_option("--currency", words_.currency, "ISO 4217 code, such as EUR")->type_name("CCC");
  add->add_option("--sizes", words_.sizes, "What a bare size number means, such as uk")
      ->type_name("SYSTEM");
  add->add_option("--states-sizes", words_.states_sizes,
                  "The sizes the shop itself says it has, such as 8-26")
      ->type_name("SIZES");
  add->add_option("--on", words_.on, "Date that was read (default: today)")->type_name("DATE");
  add->add_option("--link-above", words_.link_above,
                  "Link renamed lines from this chance on that both are one (default: 80). "
                  "Higher: fewer wrong links, more questions")
      ->type_name("PERCENT");
  add->add_option("--ask-above", words_.ask_above,
                  "Ask about pairs from this chance on (default: 60)")
      ->type_name("PERCENT");
  command(*shop, "list", "List the shops and their captures", "shop list",
          [this] { return command_shop_list(book()); });
  CLI::App* index = command(*shop, "index", "The shops side by side: sizes, prices, colours, terms",
                            "shop index --category dresses --format html --out shops.html", [this] {
                              return command_shop_index(book(), category_of(words_), words_.output);
                            });
  add_category(index);
  add_output(index, {"text", "csv", "md", "json", "html", "xlsx"});
}

void CommandLine::add_capture() {
  CLI::App* capture = command(
      app_, "capture", "Take what was seen of a shop into the book",
      "capture dresses.csv pages/ --shop harbour-loft --season AW26 --on 2026-09-01", [this] {
        const auto request = capture_of(words_);
        if (words_.dry_run) return command_preview(book(), request, words_.output);
        return command_capture(book(), request);
      });
  capture->add_option("files", words_.files, "Tables, saved pages, or folders of them")
      ->required()
      ->type_name("FILE");
  capture->add_option("--shop", words_.shop, "The shop's short name")->required();
  capture->add_option("--season", words_.season, "Such as AW26")->required();
  capture->add_option("--on", words_.on, "Date it was seen (default: today)")->type_name("DATE");
  capture
      ->add_option("--scope", words_.scope,
                   "What was looked at: all, picks, or categories "
                   "such as dresses,knitwear")
      ->capture_default_str();
  capture->add_flag("--dry-run", words_.dry_run,
                    "Show what every column is read as, and keep nothing");
  add_output(capture, {"text", "json"});
  add_table_words(*capture, words_.table);
  add_profile(capture);
  capture
      ->add_option("--save-profile", words_.save_profile,
                   "Keep what is said about the tables under this name")
      ->type_name("NAME");
  CLI::App* undo = command(app_, "undo", "Remove the newest capture of a shop", "undo harbour-loft",
                           [this] { return command_undo(book(), words_.shop); });
  undo->add_option("shop", words_.shop, "The shop's short name")->required();
}

void CommandLine::add_compare() {
  const auto add_ends = [this](CLI::App* sub) {
    sub->add_option("shop", words_.shop, "The shop's short name")->required();
    sub->add_option("--from", words_.from,
                    "Earlier capture: season, date or id (default: the season before)");
    sub->add_option("--to", words_.to, "Later capture (default: the latest)");
  };
  CLI::App* changes = command(app_, "changes", "List every change between two captures",
                              "changes harbour-loft --from AW25 --to AW26 --format json", [this] {
                                return command_changes(book(), comparison(), words_.output);
                              });
  add_ends(changes);
  add_output(changes, {"text", "json", "csv", "md", "xlsx"});
  CLI::App* revisit =
      command(app_, "revisit", "Write the brief: what to say about a shop now",
              "revisit harbour-loft --from AW25 --to AW26 --format html "
              "--out brief.html",
              [this] { return command_revisit(book(), comparison(), words_.output); });
  add_ends(revisit);
  add_output(revisit, {"text", "md", "json", "html", "xlsx"});
  CLI::App* prices = command(
      app_, "prices", "Show what lines cost, then and now, like for like",
      "prices harbour-loft --from AW25 --to AW26 --category dresses",
      [this] { return command_prices(book(), comparison(), category_of(words_), words_.output); });
  add_ends(prices);
  add_category(prices);
  add_output(prices, {"text", "csv", "md", "json", "html", "xlsx"});
}

void CommandLine::add_sizes() {
  CLI::App* sizes = command(
      app_, "sizes", "Show which sizes a shop offers, or which shops reach a size",
      "sizes harbour-loft --category dresses\n         rangebook sizes --reaching 24 --system uk",
      [this] { return this->sizes(); });
  sizes->add_option("shop", words_.shop, "The shop's short name");
  sizes->add_option("--capture", words_.capture, "Season, date or id (default: the latest)");
  sizes->add_option("--reaching", words_.reaching, "Which shops offer this size, such as 24")
      ->type_name("SIZE");
  sizes
      ->add_option("--system", words_.system,
                   "What the size number means (default: as in most shops of the book)")
      ->type_name("SYSTEM");
  add_category(sizes);
  add_output(sizes, {"text", "csv", "md", "json", "html", "xlsx"});
}

int CommandLine::sizes() const {
  const std::string category = category_of(words_);
  if (words_.reaching.empty()) {
    if (words_.shop.empty()) {
      throw UsageError{
          "Name a shop, or a size: rangebook sizes harbour-loft, or rangebook sizes "
          "--reaching 24."};
    }
    if (!words_.system.empty()) throw UsageError{"--system goes with --reaching only."};
    return command_sizes(book(), {words_.shop, words_.capture, category}, words_.output);
  }
  if (!words_.shop.empty() || !words_.capture.empty()) {
    throw UsageError{
        "--reaching looks at the latest capture of every shop: leave the shop and "
        "--capture out."};
  }
  std::optional<SizeSystem> system;
  if (!words_.system.empty()) system = system_of("--system", words_.system);
  return command_reaching(book(), words_.reaching, system, category, words_.output);
}

void CommandLine::add_links() {
  CLI::App* links = app_.add_subcommand("links", "Lines that may be the same: say yes or no");
  links->footer("Example: rangebook links harbour-loft");
  links->fallthrough();
  links->add_option("shop", words_.shop, "The shop's short name");
  links->add_option("--from", words_.from, "Only what came up after this season, date or id");
  links->add_option("--to", words_.to, "Only what came up to this season, date or id");
  links->add_flag("--decided", words_.decided, "List what you decided instead of what waits");
  add_output(links, {"text", "json", "csv"});
  add_links_verbs(*links);
  links->parse_complete_callback([this, links] {
    if (!links->get_subcommands().empty()) return;
    action_ = [this] {
      if (words_.shop.empty()) throw UsageError{"Say whose links: rangebook links SHOP."};
      return command_links(book(), comparison(), words_.decided, words_.output);
    };
  });
}

void CommandLine::add_history() {
  CLI::App* history =
      command(app_, "history", "Everything known of one line, capture by capture",
              "history \"Maya Dress\" --shop harbour-loft --format html --out maya.html",
              [this] { return command_history(book(), words_.shop, words_.line, words_.output); });
  history->add_option("line", words_.line, "Code, name or reference of the line")->required();
  history->add_option("--shop", words_.shop, "The shop's short name (default: every shop)");
  add_output(history, {"text", "md", "json", "csv", "html", "xlsx"});
}

void CommandLine::add_links_verbs(CLI::App& links) {
  const auto shop_option = [this](CLI::App* sub, bool needed) {
    sub->add_option("--shop", words_.shop, "The shop's short name")->required(needed);
  };
  for (const bool same : {true, false}) {
    CLI::App* settle =
        command(links, same ? "yes" : "no",
                same ? "Yes, the two are the same line" : "No, the two are different lines",
                same ? "links yes k3f9a 7mz2q" : "links no k3f9a", [this, same] {
                  return command_settle_links(book(), words_.shop, words_.references, same);
                });
    settle->add_option("references", words_.references, "References of pairs, as links lists them")
        ->required()
        ->type_name("REF");
    shop_option(settle, false);
  }
  for (const bool same : {true, false}) {
    CLI::App* lines = command(
        links, same ? "same" : "apart",
        same ? "Say that two lines are the same, asked or not"
             : "Say that two lines are different, asked or not",
        same ? "links same AB1 \"Maya Midi Dress\" --shop harbour-loft"
             : "links apart AB1 XY9 --shop harbour-loft",
        [this, same] {
          return command_settle_lines(book(), {words_.shop, words_.line, words_.other_line}, same);
        });
    lines->add_option("line", words_.line, "Code, name or reference of a line")->required();
    lines->add_option("other", words_.other_line, "The other line")->required();
    shop_option(lines, true);
  }
  CLI::App* undo = command(
      links, "undo", "Take back a decision: the last one, or that of a pair", "links undo k3f9a",
      [this] { return command_unsettle_link(book(), words_.shop, words_.reference); });
  undo->add_option("reference", words_.reference, "Reference of the pair (default: the last)")
      ->type_name("REF");
  shop_option(undo, false);
}

void CommandLine::add_lists() {
  CLI::App* captures =
      command(app_, "captures", "List the captures of a shop", "captures harbour-loft",
              [this] { return command_captures(book(), words_.shop); });
  captures->add_option("shop", words_.shop, "The shop's short name")->required();
  add_rejections();
  CLI::App* out = command(
      app_, "export", "Write a capture as a table in the CSV contract",
      "export --shop harbour-loft --capture AW26 --format csv --out aw26.csv",
      [this] { return command_export(book(), words_.shop, words_.capture, words_.output); });
  out->add_option("--shop", words_.shop, "The shop's short name")->required();
  out->add_option("--capture", words_.capture, "Season, date or id (default: the latest)");
  words_.output.format = "csv";
  add_output(out, {"csv"});
  words_.output.format = "text";
}

void CommandLine::add_rejections() {
  CLI::App* rejections =
      command(app_, "rejections", "List what could not be taken, or read it again another way",
              "rejections harbour-loft --capture AW26 --retry --column \"Preis=price\"",
              [this] { return rejections_or_retry(); });
  rejections->add_option("shop", words_.shop, "The shop's short name")->required();
  rejections->add_option("--capture", words_.capture, "Season, date or id (default: the latest)");
  add_output(rejections, {"text", "csv", "json"});
  rejections->add_flag("--retry", words_.retry,
                       "Read the documents of the capture again, as they are kept in the book");
  rejections->add_flag("--dry-run", words_.dry_run, "With --retry: show it, change nothing");
  add_table_words(*rejections, words_.table);
  add_profile(rejections);
}

int CommandLine::rejections_or_retry() const {
  const MappingRequest mapping = mapping_of(words_);
  if (words_.retry) {
    return command_retry(book(), {words_.shop, words_.capture, mapping}, words_.dry_run);
  }
  if (mapping.empty() && !words_.dry_run) {
    return command_rejections(book(), words_.shop, words_.capture, words_.output);
  }
  throw UsageError{"To read the capture again in another way, add --retry."};
}

void CommandLine::add_profiles() {
  CLI::App* profile = app_.add_subcommand("profile", "How the tables of a shop are to be read");
  profile->require_subcommand(1);
  profile->fallthrough();
  const auto add_shop_and_name = [this](CLI::App* sub) {
    sub->add_option("shop", words_.shop, "The shop's short name")->required();
    sub->add_option("name", words_.name, "Name of the profile")->required();
  };
  CLI::App* list =
      command(*profile, "list", "List the profiles of a shop", "profile list harbour-loft",
              [this] { return command_profile_list(book(), words_.shop); });
  list->add_option("shop", words_.shop, "The shop's short name")->required();
  add_shop_and_name(command(
      *profile, "show", "Show what a profile says", "profile show harbour-loft supplier-sheet",
      [this] { return command_profile_show(book(), words_.shop, words_.name); }));
  CLI::App* save =
      command(*profile, "save", "Keep a profile, or change it",
              "profile save harbour-loft supplier-sheet --column \"Preis=price\" --decimal comma",
              [this] { return command_profile_save(book(), words_.shop, profile_of(words_)); });
  add_shop_and_name(save);
  save->add_flag(
      "--default", words_.is_default,
      "Use it without being asked, where its columns fit (the first one is the default)");
  add_table_words(*save, words_.table);
  add_shop_and_name(
      command(*profile, "remove", "Forget a profile", "profile remove harbour-loft supplier-sheet",
              [this] { return command_profile_remove(book(), words_.shop, words_.name); }));
}

void CommandLine::add_upkeep() {
  CLI::App* desk =
      command(app_, "desk", "Open the desk: your book as pages in your own browser", "desk",
              [this] { return command_desk(book(), words_.port, words_.feeds); });
  desk->add_option("--port", words_.port, "Port on this machine (default: any that is free)")
      ->check(CLI::Range(0, 65535))
      ->type_name("PORT");
  desk->add_option("--feeds", words_.feeds, "Folder of the feeds of the demo")
      ->capture_default_str();
  CLI::App* check = command(app_, "check", "Prove that the book is sound", "check",
                            [this] { return command_check(book(), words_.check_sizes); });
  check->add_flag("--sizes", words_.check_sizes, "Also say how many bytes each part takes");
  CLI::App* backup = command(app_, "backup", "Copy the book to a new file",
                             "backup ~/backups/2026-09-01.rangebook",
                             [this] { return command_backup(book(), words_.backup); });
  backup->add_option("file", words_.backup, "The new file")->required()->type_name("FILE");
  CLI::App* demo = command(app_, "demo", "Try it with an invented scenario",
                           "demo --feeds demo-feeds --out demo-feeds/out",
                           [this] { return command_demo(words_.feeds, words_.out); });
  demo->add_option("--feeds", words_.feeds, "Folder of the feeds")->capture_default_str();
  demo->add_option("--out", words_.out, "Folder for the book and the briefs")
      ->capture_default_str();
}

std::vector<std::string> CommandLine::known_words(const CLI::App* app) const {
  std::vector<std::string> known;
  for (const auto* sub : app->get_subcommands(nullptr)) known.push_back(sub->get_name());
  for (const auto* option : app->get_options()) {
    for (const auto& name : option->get_lnames()) known.push_back("--" + name);
  }
  if (app != &app_) {
    for (const auto* option : app_.get_options()) {
      for (const auto& name : option->get_lnames()) known.push_back("--" + name);
    }
  }
  return known;
}

const CLI::App* CommandLine::deepest() const {
  const CLI::App* app = &app_;
  while (!app->get_subcommands().empty()) app = app->get_subcommands().front();
  return app;
}

std::string CommandLine::path_of_deepest() const {
  std::string path = "rangebook";
  for (const CLI::App* app = &app_; !app->get_subcommands().empty();) {
    app = app->get_subcommands().front();
    path += " " + app->get_name();
  }
  return path;
}

int CommandLine::usage_error(const std::string& message, const std::string& word) const {
  std::cerr << "rangebook: " << message;
  if (!word.empty()) std::cerr << did_you_mean(word, known_words(deepest()));
  std::cerr << "\nSee \"" << path_of_deepest() << " --help\".\n";
  return kUsage;
}

/// No verb, or a word that is none.
int CommandLine::no_such_command(const std::vector<std::string>& args) const {
  std::vector<std::string> verbs;
  for (const auto* sub : deepest()->get_subcommands(nullptr)) verbs.push_back(sub->get_name());
  const auto is_path = [&](const std::string& word) {
    return word.starts_with("-") || path_of_deepest().find(" " + word) != std::string::npos;
  };
  for (std::size_t i = 0; i < args.size(); ++i) {
    if (args[i] == "--book") ++i;
    if (i >= args.size() || is_path(args[i])) continue;
    return usage_error("There is no command \"" + args[i] + "\"." + did_you_mean(args[i], verbs) +
                           " There are: " + joined(verbs) + ".",
                       "");
  }
  return usage_error("Say what to do: " + joined(verbs) + ".", "");
}

int CommandLine::run(std::vector<std::string> args) {
  const auto in_order = args;
  std::reverse(args.begin(), args.end());
  try {
    app_.parse(args);
    return action_();
  } catch (const CLI::CallForHelp&) {
    const std::string path = path_of_deepest();
    const auto last = path.rfind(' ');
    std::cout << deepest()->help(last == std::string::npos ? "" : path.substr(0, last));
    return kDone;
  } catch (const CLI::CallForVersion& version) {
    std::cout << version.what() << "\n";
    return kDone;
  } catch (const CLI::ExtrasError&) {
    const auto extras = app_.remaining(true);
    const std::string word = extras.empty() ? "" : extras.front();
    return usage_error("\"" + word + "\" is not understood here.", word);
  } catch (const CLI::RequiredError& error) {
    if (!deepest()->get_subcommands(nullptr).empty()) return no_such_command(in_order);
    return usage_error(std::string("Something is missing: ") + error.what() + ".", "");
  } catch (const CLI::ParseError& error) {
    return usage_error(error.what(), "");
  } catch (const UsageError& error) {
    return usage_error(error.message, "");
  }
}

}  // namespace

std::string default_book_path() {
  const auto variable = [](const char* name) -> std::string {
    const char* value = std::getenv(name);  // NOLINT(concurrency-mt-unsafe)
    return value ? value : "";
  };
  if (auto book = variable("RANGEBOOK"); !book.empty()) return book;
  const std::string file = "/rangebook/my.rangebook";
  if (const auto data = variable("XDG_DATA_HOME"); !data.empty()) return data + file;
  if (const auto home = variable("HOME"); !home.empty()) return home + "/.local/share" + file;
  throw Error("No place for the book: neither RANGEBOOK nor HOME is set. Name it with --book.");
}

int run_command_line(const std::vector<std::string>& words) { return CommandLine().run(words); }

}  // namespace rangebook
