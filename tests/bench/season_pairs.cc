// Writes two invented exports of one shop's range, a season apart, in the manual CSV contract. The
// same options give the same bytes on every machine. Rows are made one at a time from the seed, so
// memory stays small however long the files are.
#include <cerrno>
#include <charconv>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "tests/bench/invented_line.h"
#include "tests/bench/random.h"

namespace rangebook::bench {
namespace {

constexpr std::string_view kUsage =
    "usage: season_pairs --out FOLDER [--variants N] [--seed N] [--layout variants|lines]\n"
    "                    [--interleave] [--changed N] [--new N] [--dropped N] [--renamed N]\n"
    "                    [--recoded N]\n"
    "Writes FOLDER/before.csv and FOLDER/after.csv. --changed is in variants, the others in "
    "lines,\n"
    "all per thousand. --interleave scatters the rows of a line over the file.\n";

constexpr std::string_view kHeader =
    "line_code,name,category,colour,size,price,full_price,currency,in_stock,composition,"
    "description,url,image,gtin\n";

constexpr std::uint64_t kMostLines = 1'000'000'000;

struct Options {
  std::string folder;
  std::uint64_t variants = 30'000;
  std::uint64_t seed = 1;
  std::uint32_t changed = 30;  // per thousand, as are the rest
  std::uint32_t added = 0;
  std::uint32_t dropped = 0;
  std::uint32_t renamed = 0;
  std::uint32_t recoded = 0;
  bool one_row_a_line = false;
  bool interleave = false;
};

enum Decision : std::uint64_t { kChanged = 100, kDropped, kRenamed, kRecoded };

// The rows of one file, as numbers: line * kMostVariants + variant.
using Rows = std::vector<std::uint64_t>;

class Output {
 public:
  explicit Output(const std::string& path) : file_(std::fopen(path.c_str(), "wb")) {
    if (file_ == nullptr) fail(path);
    buffer_.reserve(kFlushAt + 4096);
  }
  Output(const Output&) = delete;
  Output& operator=(const Output&) = delete;
  ~Output() {
    flush();
    if (std::fclose(file_) != 0) fail("the end of a file");
  }

  Output& operator<<(std::string_view text) {
    buffer_.append(text);
    return *this;
  }
  Output& operator<<(std::uint64_t number) {
    char digits[20];
    const auto end = std::to_chars(digits, digits + sizeof digits, number);
    buffer_.append(digits, static_cast<std::size_t>(end.ptr - digits));
    return *this;
  }
  void end_row() {
    buffer_ += '\n';
    if (buffer_.size() >= kFlushAt) flush();
  }

 private:
  static constexpr std::size_t kFlushAt = 1U << 18U;

  [[noreturn]] static void fail(const std::string& what) {
    std::fprintf(stderr, "season_pairs: cannot write %s: %s\n", what.c_str(), std::strerror(errno));
    std::exit(3);
  }
  void flush() {
    if (std::fwrite(buffer_.data(), 1, buffer_.size(), file_) != buffer_.size()) fail("a file");
    buffer_.clear();
  }

  std::FILE* file_;
  std::string buffer_;
};

void write_money(Output& out, std::uint32_t minor) {
  out << std::uint64_t{minor / 100} << "." << std::uint64_t{minor / 10 % 10}
      << std::uint64_t{minor % 10};
}

void write_cells_before_colour(Output& out, const InventedLine& line) {
  out << line.code << "," << line.name << "," << line.category << ",";
}

void write_offer(Output& out, const InventedOffer& offer) {
  out << ",";
  write_money(out, offer.price);
  out << ",";
  write_money(out, offer.full_price);
  out << ",GBP," << (offer.in_stock ? "yes" : "no");
}

void write_address_word(Output& out, std::string_view colour) {
  for (const char c : colour) out << (c == ' ' ? "-" : std::string_view(&c, 1));
}

void write_texts(Output& out, const InventedLine& line, std::string_view colour) {
  out << "," << line.composition << "," << line.description << ",https://www.harbour-row.example/"
      << line.slug << "-" << line.code << "?colour=";
  write_address_word(out, colour);
  out << ",https://img.harbour-row.example/w1200/" << line.code << "-";
  write_address_word(out, colour);
  out << "-front.jpg,";
}

class Writer {
 public:
  Writer(const Options& options, bool after, const std::string& path)
      : options_(options), after_(after), out_(path) {
    out_ << kHeader;
  }

  void write_variant(std::uint64_t row) {
    const std::uint64_t index = row / kMostVariants;
    const auto variant = static_cast<std::uint32_t>(row % kMostVariants);
    const InventedLine& line = line_of(index);
    const std::string_view colour = line.colours[variant / line.size_count];
    write_cells_before_colour(out_, line);
    out_ << colour << "," << std::uint64_t{line.first_size + 2 * (variant % line.size_count)};
    write_offer(out_, offer_of(line, variant));
    write_texts(out_, line, colour);
    out_ << gtin_of(index, variant);
    out_.end_row();
  }

  void write_line(std::uint64_t index) {
    const InventedLine& line = line_of(index);
    write_cells_before_colour(out_, line);
    for (std::size_t i = 0; i < line.colours.size(); ++i) {
      out_ << (i == 0 ? "" : "|") << line.colours[i];
    }
    out_ << "," << std::uint64_t{line.first_size} << "-"
         << std::uint64_t{line.first_size + 2 * (line.size_count - 1)};
    write_offer(out_, offer_of(line, 0));
    write_texts(out_, line, line.colours.front());
    out_.end_row();
  }

 private:
  const InventedLine& line_of(std::uint64_t index) {
    if (line_.index == index && !line_.code.empty()) return line_;
    line_ = invented_line(options_.seed, index);
    if (after_ && decided(index, kRenamed, options_.renamed)) rename(line_, options_.seed);
    if (after_ && decided(index, kRecoded, options_.recoded)) recode(line_, options_.seed);
    return line_;
  }
  bool decided(std::uint64_t index, Decision decision, std::uint32_t parts) const {
    return Random(options_.seed, index, decision).in_a_thousand(parts);
  }
  InventedOffer offer_of(const InventedLine& line, std::uint32_t variant) const {
    InventedOffer offer = invented_offer(line, options_.seed, variant);
    if (after_ && decided(line.index * kMostVariants + variant, kChanged, options_.changed)) {
      change_offer(offer, options_.seed, line.index, variant);
    }
    return offer;
  }
  // A recoded range gets new barcodes as well: nothing exact is left to link by.
  std::uint64_t gtin_of(std::uint64_t index, std::uint32_t variant) const {
    const bool recoded = after_ && decided(index, kRecoded, options_.recoded);
    return invented_gtin(recoded ? ~options_.seed : options_.seed, index, variant);
  }

  const Options& options_;
  bool after_;
  Output out_;
  InventedLine line_;
};

struct Range {
  Rows rows;
  std::uint64_t next_line = 0;
};

// As many lines from `first` on as it takes for `wanted` variants; the last line may be cut short.
Range rows_from(const Options& options, std::uint64_t first, std::uint64_t wanted) {
  Range range{{}, first};
  range.rows.reserve(wanted);
  while (range.rows.size() < wanted) {
    const std::uint32_t count = invented_variant_count(options.seed, range.next_line);
    for (std::uint32_t v = 0; v < count && range.rows.size() < wanted; ++v) {
      range.rows.push_back(range.next_line * kMostVariants + v);
    }
    ++range.next_line;
  }
  return range;
}

Rows rows_after(const Options& options, const Range& before) {
  Rows rows;
  for (const std::uint64_t row : before.rows) {
    const std::uint64_t line = row / kMostVariants;
    if (!Random(options.seed, line, kDropped).in_a_thousand(options.dropped)) rows.push_back(row);
  }
  const Range added =
      rows_from(options, before.next_line, before.rows.size() * options.added / 1000);
  rows.insert(rows.end(), added.rows.begin(), added.rows.end());
  return rows;
}

void scatter(Rows& rows, std::uint64_t seed) {
  Random random(seed, rows.size(), 0);
  for (std::size_t i = rows.size(); i > 1; --i) {
    std::swap(rows[i - 1], rows[random.below(static_cast<std::uint32_t>(i))]);
  }
}

void write_file(const Options& options, bool after, Rows rows) {
  const auto path = std::filesystem::path(options.folder) / (after ? "after.csv" : "before.csv");
  Writer writer(options, after, path.string());
  if (options.interleave) scatter(rows, options.seed);
  for (const std::uint64_t row : rows) {
    if (!options.one_row_a_line) {
      writer.write_variant(row);
    } else if (row % kMostVariants == 0) {
      writer.write_line(row / kMostVariants);
    }
  }
}

template <class Number>
bool read_number(std::string_view text, std::uint64_t most, Number& number) {
  std::uint64_t value = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), value);
  if (end.ec != std::errc{} || end.ptr != text.data() + text.size() || value > most) return false;
  number = static_cast<Number>(value);
  return true;
}

bool read_value(Options& options, std::string_view name, std::string_view value) {
  if (name == "--out") return options.folder = value, true;
  if (name == "--variants") return read_number(value, kMostLines, options.variants);
  if (name == "--seed") return read_number(value, UINT64_MAX, options.seed);
  if (name == "--changed") return read_number(value, 1000, options.changed);
  if (name == "--new") return read_number(value, 1000, options.added);
  if (name == "--dropped") return read_number(value, 1000, options.dropped);
  if (name == "--renamed") return read_number(value, 1000, options.renamed);
  if (name == "--recoded") return read_number(value, 1000, options.recoded);
  options.one_row_a_line = value == "lines";
  return name == "--layout" && (value == "lines" || value == "variants");
}

std::optional<Options> read_options(const std::vector<std::string_view>& arguments) {
  Options options;
  for (std::size_t i = 0; i < arguments.size(); ++i) {
    if (arguments[i] == "--interleave") {
      options.interleave = true;
    } else if (i + 1 == arguments.size() || !read_value(options, arguments[i], arguments[i + 1])) {
      return std::nullopt;
    } else {
      ++i;
    }
  }
  if (options.folder.empty()) return std::nullopt;
  return options;
}

int run(const std::vector<std::string_view>& arguments) {
  const std::optional<Options> options = read_options(arguments);
  if (!options) {
    std::fputs(kUsage.data(), stderr);
    return 2;
  }
  std::error_code error;
  std::filesystem::create_directories(options->folder, error);
  Range before = rows_from(*options, 0, options->variants);
  Rows after = rows_after(*options, before);
  write_file(*options, false, std::move(before.rows));
  write_file(*options, true, std::move(after));
  return 0;
}

}  // namespace
}  // namespace rangebook::bench

int main(int argc, char** argv) { return rangebook::bench::run({argv + 1, argv + argc}); }
