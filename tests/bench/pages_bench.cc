// Reading the rows of a saved page against building and freeing its tree with gumbo, on invented
// pages of about 300 KB: navigation, tiles, scripts, styles, one JSON-LD block of 30 variants.
#include <benchmark/benchmark.h>
#include <fmt/format.h>
#include <gumbo.h>

#include <string>

#include "importers/html_scan.h"
#include "importers/page_reader.h"

namespace rangebook {
namespace {

std::string json_ld() {
  std::string json =
      R"({"@context":"https://schema.org/","@type":"ProductGroup","name":"Harbour wrap dress",)"
      R"("productGroupID":"HW-100","description":"An invented wrap dress with a tie belt.",)"
      R"("material":"100% Viscose","category":"Dresses","variesBy":["https://schema.org/size",)"
      R"("https://schema.org/color"],"hasVariant":[)";
  for (int i = 0; i < 30; ++i) {
    json += fmt::format(
        R"({}{{"@type":"Product","sku":"HW-100-{}","name":"Harbour wrap dress - {} / {}",)"
        R"("color":"{}","size":"{}","image":["https://shop.example/i/{}.jpg"],"gtin13":"{:013}",)"
        R"("offers":{{"@type":"Offer","url":"https://shop.example/p/harbour?v={}","price":79.90,)"
        R"("priceCurrency":"EUR","availability":"https://schema.org/InStock",)"
        R"("itemCondition":"https://schema.org/NewCondition"}}}})",
        i == 0 ? "" : ",", i, i % 3 == 0 ? "Navy" : "Ecru", 8 + 2 * (i / 3),
        i % 3 == 0   ? "Navy"
        : i % 3 == 1 ? "Ecru"
                     : "Moss",
        8 + 2 * (i / 3), i, 1000 + i, i);
  }
  return json + "]}";
}

std::string invented_page() {
  std::string page =
      "<!doctype html><html lang=en><head><meta charset=\"utf-8\"><title>Harbour wrap dress</title>"
      "<link rel=canonical href=\"https://shop.example/p/harbour\"><style>";
  for (int i = 0; i < 300; ++i) {
    page += fmt::format(".tile-{}>a:hover{{color:#{:06x};margin:0 {}px}}\n", i, i * 4099, i % 40);
  }
  page += "</style><script>window.shop={items:[";
  for (int i = 0; i < 400; ++i) page += fmt::format("{{id:{},ok:a<b&&c>{},t:'x{}'}},", i, i, i);
  page +=
      "]};</script><script type=\"application/ld+json\">" + json_ld() + "</script></head><body>";
  for (int i = 0; page.size() < 300'000; ++i) {
    page += fmt::format(
        "<li class=\"nav-item tile tile-{0}\" data-id='{0}'><a "
        "href=\"/c/section-{0}?sort=new&amp;page=1\" "
        "title=\"Invented section {0}\"><img src=\"/i/{0}.jpg\" alt=\"\" width=120 height=160 "
        "loading=lazy>"
        "<span class=\"label\">Invented section number {0}</span></a><svg viewBox=\"0 0 24 24\">"
        "<path d=\"M12 2l3 7h7l-5.5 4.5L18 21l-6-4-6 4\"/></svg><p>Some words about this invented "
        "part of the range, and a <b>few</b> more.</p></li>\n",
        i);
  }
  return page + "</body></html>";
}

void rows_of_a_page(benchmark::State& state) {
  const std::string page = invented_page();
  for (auto _ : state) {
    const auto reader = open_page(page, 0);
    std::size_t rows = 0;
    for (auto step = reader->next(); step != RowReader::Step::end; step = reader->next()) {
      rows += step == RowReader::Step::row ? 1 : 0;
    }
    if (rows != 30) state.SkipWithError("the page must give 30 rows");
  }
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(page.size()));
}
BENCHMARK(rows_of_a_page);

void token_scan(benchmark::State& state) {
  const std::string page = invented_page();
  for (auto _ : state) benchmark::DoNotOptimize(scan_page(page));
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(page.size()));
}
BENCHMARK(token_scan);

void gumbo_tree(benchmark::State& state) {
  const std::string page = invented_page();
  for (auto _ : state) {
    GumboOutput* parsed = gumbo_parse_with_options(&kGumboDefaultOptions, page.data(), page.size());
    benchmark::DoNotOptimize(parsed);
    gumbo_destroy_output(&kGumboDefaultOptions, parsed);
  }
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(page.size()));
}
BENCHMARK(gumbo_tree);

}  // namespace
}  // namespace rangebook
