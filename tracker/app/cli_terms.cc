// `terms` and its verbs, with an example for each.
#include "tracker/app/cli_terms.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>

#include "schema/nearest_word.h"
#include "schema/terms_names.h"
#include "schema/terms_values.h"
#include "tracker/app/cli_output.h"
#include "tracker/app/cli_words.h"
#include "tracker/app/commands_terms.h"
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
  std::vector<std::string> keep;
  std::vector<std::string> back;
  std::string currency;
  std::string discount;
  std::string region;
  std::string bought;
  std::string delivered;
  std::string return_by;
  std::string delivery = "home";
  std::string holidays;
  int parcels = 1;
  int grams = 0;
};

template <typename Enum, std::size_t N>
std::vector<std::string> names_in(const NameTable<Enum, N>& table) {
  std::vector<std::string> names;
  for (const auto& [value, name] : table) names.emplace_back(name);
  return names;
}

std::optional<Day> day_in(const std::string& word, std::string_view option) {
  if (word.empty()) return std::nullopt;
  const auto day = parse_day(word);
  if (!day)
    throw UsageError{fmt::format("{}: \"{}\" is no date; write it as 2026-09-01.", option, word)};
  return day;
}

template <typename Enum, std::size_t N>
Enum word_in(const NameTable<Enum, N>& table, const std::string& word, std::string_view option) {
  if (const auto value = value_of(table, word)) return *value;
  const auto names = names_in(table);
  throw UsageError{fmt::format("{}: \"{}\" is not known.{} There are: {}.", option, word,
                               did_you_mean(word, names), joined(names))};
}

constexpr NameTable<DeliveryWish, 3> kWishes{{{DeliveryWish::cheapest_home, "home"},
                                              {DeliveryWish::express, "express"},
                                              {DeliveryWish::collection, "collection"}}};

MinorUnits amount_in(const std::string& word, Currency currency, std::string_view option) {
  const auto money = read_money(word, currency);
  if (money && money->currency == currency && money->minor <= kMaxOrderValue) return money->minor;
  throw UsageError{
      fmt::format("{}: \"{}\" is no amount in {}; write it as 79.90, with at most 10 million "
                  "in all.",
                  option, word, currency.code())};
}

/// `79.90`, or `swimwear:30.00`.
OrderItem item_in(const std::string& word, bool sent_back, Currency currency) {
  const std::string_view option = sent_back ? "--back" : "--keep";
  OrderItem item;
  item.sent_back = sent_back;
  const auto colon = word.find(':');
  if (colon != word.npos) item.kind = word_in(kReturnItems, word.substr(0, colon), option);
  item.price = amount_in(colon == word.npos ? word : word.substr(colon + 1), currency, option);
  return item;
}

Order order_of(const Said& said) {
  const auto currency = Currency::from_code(said.currency);
  if (!currency) {
    throw UsageError{"--currency: \"" + said.currency +
                     "\" is no currency of ISO 4217, such as EUR."};
  }
  Order order{*currency, {}, 0, said.parcels, {}, said.region, {}, {}, {}, {}};
  MinorUnits total = 0;
  for (const auto& word : said.keep) order.items.push_back(item_in(word, false, *currency));
  for (const auto& word : said.back) order.items.push_back(item_in(word, true, *currency));
  for (const OrderItem& item : order.items) total += item.price;
  if (order.items.empty()) {
    throw UsageError{
        "An order has something in it: --keep 79.90 for what stays, --back 45 for what goes "
        "back; as often as needed."};
  }
  if (total > kMaxOrderValue) throw UsageError{"The order is worth more than 10 million."};
  if (!said.discount.empty()) order.discount = amount_in(said.discount, *currency, "--discount");
  if (order.discount > total) throw UsageError{"--discount is more than the order is worth."};
  if (said.parcels < 1 || said.parcels > 1000) throw UsageError{"--parcels: from 1 to 1000."};
  for (char& sign : order.region) sign = static_cast<char>(std::toupper(sign));
  if (!order.region.empty() && order.region.size() != 2) {
    throw UsageError{"--to takes a two-letter code of ISO 3166, such as GB or IE."};
  }
  if (said.grams > 0) order.grams = said.grams;
  if (!said.return_by.empty()) {
    order.method = word_in(kReturnMethodNames, said.return_by, "--return-by");
  }
  order.delivery = word_in(kWishes, said.delivery, "--delivery");
  order.bought = day_in(said.bought, "--bought").value_or(today());
  order.delivered = day_in(said.delivered, "--delivered");
  if (order.delivered && *order.delivered < order.bought) {
    throw UsageError{"--delivered is before --bought."};
  }
  return order;
}

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
    sub->add_option("--format", said_->output.format, "Form of the output: " + joined(forms))
        ->check([forms](const std::string& word) -> std::string {
          if (std::find(forms.begin(), forms.end(), word) != forms.end()) return {};
          return "\"" + word + "\" is no format here." + did_you_mean(word, forms) +
                 " There are: " + joined(forms) + ".";
        })
        ->type_name("FORM")
        ->capture_default_str();
    sub->add_option("--out", said_->output.file, "Write to this file")->type_name("FILE");
    add_output_style(*sub, forms, said_->output);
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
                   book, {said.shops, order_of(said), day_in(said.on, "--on"), said.holidays},
                   said.output);
             });
    sub->add_option("shops", said_->shops, "Shops (default: all that have terms)");
    sub->add_option("--currency", said_->currency, "Of the order: ISO 4217 code")
        ->required()
        ->type_name("CCC");
    sub->add_option("--keep", said_->keep, "Price of a piece that is kept")->type_name("AMOUNT");
    sub->add_option("--back", said_->back,
                    "Price of a piece that goes back; sale:20 where a rule may differ: " +
                        joined(names_in(kReturnItems)))
        ->type_name("[KIND:]AMOUNT");
    sub->add_option("--discount", said_->discount, "Code on the whole order")->type_name("AMOUNT");
    sub->add_option("--parcels", said_->parcels, "Parcels it comes in")->capture_default_str();
    sub->add_option("--grams", said_->grams, "Weight, where fees depend on it")->type_name("G");
    sub->add_option("--to", said_->region, "Country it goes to (default: the shop's own)")
        ->type_name("CC");
    sub->add_option("--bought", said_->bought, "Day of purchase (default: today)")
        ->type_name("DATE");
    sub->add_option("--delivered", said_->delivered, "Day of delivery, where known")
        ->type_name("DATE");
    sub->add_option("--return-by", said_->return_by, joined(names_in(kReturnMethodNames)))
        ->type_name("WAY");
    sub->add_option("--delivery", said_->delivery, joined(names_in(kWishes)))
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
