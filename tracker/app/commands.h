// What each command does, once the command line was understood. Every function returns the exit
// code, writes its result to stdout (or the file named) and its messages to stderr.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "reports/report_page.h"
#include "schema/capture.h"
#include "schema/profile.h"
#include "tracker/app/link_desk.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/request.h"

namespace rangebook {

struct OutputChoice {
  std::string format = "text";
  std::string file;         ///< empty: stdout
  std::string locale = {};  ///< of figures in text, Markdown and pages; empty: the plain form
  std::string words = {};   ///< a table of translations for the same; empty: English
  bool bom = false;         ///< a byte order mark before CSV, for spreadsheets that ask for one
};

/// Adds a shop; of one the book has, changes what `given` states and keeps the rest.
/// With `stated`, also keeps the sizes the shop states.
int command_shop_add(const std::string& book, const Shop& given,
                     const std::optional<StatedSizes>& stated);
int command_shop_list(const std::string& book);
/// The shops side by side. `category`: a slug; empty for all.
int command_shop_index(const std::string& book, const std::string& category,
                       const OutputChoice& output);
int command_capture(const std::string& book, const CaptureRequest& request);
/// What a capture would come to, and what every document is understood as; keeps nothing.
int command_preview(const std::string& book, const CaptureRequest& request,
                    const OutputChoice& output);
int command_captures(const std::string& book, const std::string& shop);
int command_undo(const std::string& book, const std::string& shop);
int command_rejections(const std::string& book, const std::string& shop, const std::string& capture,
                       const OutputChoice& output);
/// Reads the documents of a capture again with the profile now in force and what is said.
int command_retry(const std::string& book, const RetryRequest& request, bool dry_run);
int command_profile_list(const std::string& book, const std::string& shop);
int command_profile_show(const std::string& book, const std::string& shop, const std::string& name);
/// Without options, `profile.is_default` makes one that is there the default.
int command_profile_save(const std::string& book, const std::string& shop, const Profile& profile);
int command_profile_remove(const std::string& book, const std::string& shop,
                           const std::string& name);
int command_changes(const std::string& book, const CompareRequest& request,
                    const OutputChoice& output);
int command_revisit(const std::string& book, const CompareRequest& request,
                    const OutputChoice& output);
/// What waits for a yes or no, or what was decided.
int command_links(const std::string& book, const CompareRequest& request, bool decided,
                  const OutputChoice& output);
int command_settle_links(const std::string& book, const std::string& shop,
                         const std::vector<std::string>& references, bool same);
int command_settle_lines(const std::string& book, const TwoLines& lines, bool same);
int command_unsettle_link(const std::string& book, const std::string& shop,
                          const std::string& reference);
/// `category`: a slug; empty for all.
int command_prices(const std::string& book, const CompareRequest& request,
                   const std::string& category, const OutputChoice& output);
int command_sizes(const std::string& book, const SizesRequest& request, const OutputChoice& output);
/// `label` in `system`; without a system, in the one most shops of the book use.
int command_reaching(const std::string& book, const std::string& label,
                     std::optional<SizeSystem> system, const std::string& category,
                     const OutputChoice& output);
/// Everything known of one line; `shop` may be empty.
int command_history(const std::string& book, const std::string& shop, const std::string& line,
                    const OutputChoice& output);
int command_export(const std::string& book, const std::string& shop, const std::string& capture,
                   const OutputChoice& output);
int command_check(const std::string& book, bool sizes);
int command_backup(const std::string& book, const std::string& file);
/// Imports the invented feeds into a new book in `out` and writes the briefs there.
int command_demo(const std::string& feeds, const std::string& out);

/// Takes the invented scenario into a new book; `taken` is told of each capture.
void take_demo(Book& book, const std::string& feeds,
               const std::function<void(const Shop&, const CaptureReport&)>& taken);

/// Opens the desk until it is stopped. Port 0: any that is free.
int command_desk(const std::string& book, int port, const std::string& feeds);

/// A report as `text`, `md`, `html` or `xlsx`, figures by the locale.
std::string page_in(ReportPage page, const OutputChoice& output);

/// Says on stderr what is not there, and which words there are.
int not_there(const NotThere& missing);

/// Writes to the file, or to stdout. A file is replaced only when its new text is complete.
void write_output(const std::string& text, const OutputChoice& output);

}  // namespace rangebook
