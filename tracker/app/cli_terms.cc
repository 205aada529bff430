// `terms` and its verbs, with an example for each.
#include "tracker/app/cli_terms.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>

#include "tracker/app/cli_output.h"
#include "tracker/app/cli_words.h"
#include "tracker/app/commands_terms.h"
#include "tracker/app/order_words.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/scope_words.h"

namespace rangebook {
namespace {

/// Everything that can be said of terms.
struct Said {
  std::string shop;
  std::vector<std::string> words;  ///< files or fields
  std::vector<std::int64_t> doubts;
  std::string on;
  bool dry_run = false;
  OutputChoice output;
  std::vector<std::string> shops;
  OrderWords order;
  std::string holidays;
};

TermsRequest request_of(const Said& said, bool files) {
  TermsRequest request;
  request.shop = said.shop;
  (files ? request.files : request.fields) = said.words;
  request.on = day_in(said.on, "--on");
  request.dry_run = said.dry_run;
  return request;
}

class TermsCommands {
 public:
  TermsCommands(CLI::App& app, const CliContext& context)
      : context_(context), said_(std::make_shared<Said>()) {
    terms_ = app.add_subcommand("terms", "Delivery and returns: read, set, compare");
    terms_->require_subcommand(1);
    terms_->fallthrough();
  }

  void add_all() {
    add_show();
    add_read();
    add_set();
    add_doubts();
    add_timeline();
    add_compare();
  }

 private:
  using Run = std::function<int(const std::string& book, const Said& said)>;

  CLI::App* verb(const std::string& name, const std::string& what, const std::string& example,
                 Run run) {
    CLI::App* sub = terms_->add_subcommand(name, what);
    sub->footer("Example: rangebook terms " + example);
    sub->fallthrough();
    sub->parse_complete_callback([context = context_, said = said_, run = std::move(run)] {
      context.act([context, said, run] { return run(context.book(), *said); });
    });
    return sub;
  }
  void shop(CLI::App* sub) {
    sub->add_option("shop", said_->shop, "The shop's short name")->required();
  }
  void on(CLI::App* sub, const std::string& what) {
    sub->add_option("--on", said_->on, what + " (default: today)")->type_name("DATE");
  }
  void output(CLI::App* sub, const std::vector<std::string>& forms) {
    add_output(*sub, forms, said_->output);
  }

  void add_show() {
    CLI::App* sub =
        verb("show", "What holds on a day, with the sentences it was read from",
             "show harbour-loft --on 2026-09-01", [](const auto& book, const Said& said) {
               return command_terms_show(book, request_of(said, false), said.output);
             });
    shop(sub);
    on(sub, "The day");
    output(sub, {"text", "json"});
  }
  void add_read() {
    CLI::App* sub =
        verb("read",
             "Read saved policy pages (HTML, MHTML), texts, a CSV of field and value, or the "
             "text form of `terms show`",
             "read delivery.html returns.txt --shop harbour-loft --on 2026-09-01",
             [](const auto& book, const Said& said) {
               return command_terms_read(book, request_of(said, true));
             });
    sub->add_option("files", said_->words, "Policies")->required()->type_name("FILE");
    sub->add_option("--shop", said_->shop, "The shop's short name")->required();
    on(sub, "Date they were seen");
    sub->add_flag("--dry-run", said_->dry_run, "Show what was understood, keep nothing");
  }
  void add_set() {
    CLI::App* sub = verb("set", "Type terms, field by field; an empty value takes one out",
                         "set harbour-loft \"delivery.standard.fee=3.95 EUR\" "
                         "\"return.window=28 days from delivery\"",
                         [](const auto& book, const Said& said) {
                           return command_terms_set(book, request_of(said, false));
                         });
    shop(sub);
    sub->add_option("fields", said_->words, "As `terms show` writes them")
        ->required()
        ->type_name("FIELD=VALUE");
    on(sub, "Date they were seen");
  }
  void add_doubts() {
    shop(verb(
        "doubts", "List readings that wait for a yes", "doubts harbour-loft",
        [](const auto& book, const Said& said) { return command_terms_doubts(book, said.shop); }));
    for (const bool yes : {true, false}) {
      const std::string name = yes ? "yes" : "no";
      CLI::App* sub = verb(name, yes ? "Take readings that wait" : "Leave readings out",
                           name + " harbour-loft 3 4", [yes](const auto& book, const Said& said) {
                             return command_terms_answer(book, said.shop, said.doubts, yes);
                           });
      shop(sub);
      sub->add_option("numbers", said_->doubts, "As `terms doubts` lists them")->required();
    }
  }
  void add_timeline() {
    CLI::App* sub = verb("timeline", "What changed in a shop's terms, day by day",
                         "timeline harbour-loft", [](const auto& book, const Said& said) {
                           return command_terms_timeline(book, said.shop, said.output);
                         });
    shop(sub);
    output(sub, {"text", "json"});
  }
  void add_compare() {
    CLI::App* sub =
        verb("compare", "What an order would cost to get and to send back, shop by shop",
             "compare --currency GBP --keep 79.90 --back 45 --back swimwear:30 --bought 2026-11-20",
             [](const auto& book, const Said& said) {
               return command_terms_compare(
                   book, {said.shops, order_of(said.order), day_in(said.on, "--on"), said.holidays},
                   said.output);
             });
    sub->add_option("shops", said_->shops, "Shops (default: all that have terms)");
    sub->add_option("--currency", said_->order.currency, "Of the order: ISO 4217 code")
        ->required()
        ->type_name("CCC");
    sub->add_option("--keep", said_->order.keep, "Price of a piece that is kept")
        ->type_name("AMOUNT");
    sub->add_option("--back", said_->order.back,
                    "Price of a piece that goes back; sale:20 where a rule may differ: " +
                        joined(return_item_names()))
        ->type_name("[KIND:]AMOUNT");
    sub->add_option("--discount", said_->order.discount, "Code on the whole order")
        ->type_name("AMOUNT");
    sub->add_option("--parcels", said_->order.parcels, "Parcels it comes in")
        ->capture_default_str();
    sub->add_option("--grams", said_->order.grams, "Weight, where fees depend on it")
        ->type_name("G");
    sub->add_option("--to", said_->order.region, "Country it goes to (default: the shop's own)")
        ->type_name("CC");
    sub->add_option("--bought", said_->order.bought, "Day of purchase (default: today)")
        ->type_name("DATE");
    sub->add_option("--delivered", said_->order.delivered, "Day of delivery, where known")
        ->type_name("DATE");
    sub->add_option("--return-by", said_->order.return_by, joined(return_method_names()))
        ->type_name("WAY");
    sub->add_option("--delivery", said_->order.delivery, joined(delivery_wish_names()))
        ->capture_default_str();
    sub->add_option("--holidays", said_->holidays, "Dates without work, one a line")
        ->type_name("FILE");
    on(sub, "Terms as of this day");
    output(sub, {"text", "md", "csv", "json", "html", "xlsx"});
  }

  CliContext context_;
  std::shared_ptr<Said> said_;
  CLI::App* terms_ = nullptr;
};

}  // namespace

void add_terms_commands(CLI::App& app, const CliContext& context) {
  TermsCommands(app, context).add_all();
}

}  // namespace rangebook
