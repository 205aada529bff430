// SQLite behind three value-like types. The C header stays in sqlite.cc; a transaction is an
// object: constructing begins it, `commit` ends it, destruction without commit rolls it back.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace rangebook {

/// Prepared statements between two uses: parsing SQL takes longer than most of ours run.
class StatementShelf;

/// A prepared statement. Parameters are numbered from 1, columns from 0, as in SQLite.
/// Text and blobs are copied on bind; views of columns are valid until the next step.
/// When it goes, it is put back on the shelf it came from, ready for whoever asks for its words.
class Statement {
 public:
  Statement(sqlite3* database, const std::shared_ptr<StatementShelf>& shelf, std::string_view sql);

  Statement& bind(int parameter, std::int64_t value);
  Statement& bind(int parameter, double value);
  Statement& bind(int parameter, std::string_view text);
  Statement& bind(int parameter, std::optional<std::int64_t> value);
  Statement& bind_blob(int parameter, std::string_view bytes);
  Statement& bind_null(int parameter);

  /// True when there is a row. Throws Error on failure.
  bool step();
  /// Runs to the end and makes the statement ready for the next use.
  void run();
  void reset();

  std::int64_t integer(int column) const;
  double real(int column) const;
  std::string_view text(int column) const;
  std::string_view blob(int column) const;
  bool is_null(int column) const;

 private:
  struct PutBack {
    std::shared_ptr<StatementShelf> shelf;
    void operator()(sqlite3_stmt* statement) const;
  };
  void check(int code) const;

  sqlite3* database_;
  std::unique_ptr<sqlite3_stmt, PutBack> statement_;
};

/// An open database file.
class Database {
 public:
  enum class Mode : std::uint8_t { read_write, create, read_only };

  /// Throws Error with the path and the reason when the file cannot be opened or is no database.
  Database(const std::string& path, Mode mode);

  ~Database();
  Database(const Database&) = delete;
  Database& operator=(const Database&) = delete;

  /// May be asked from several threads.
  Statement prepare(std::string_view sql) const { return Statement(handle_.get(), shelf_, sql); }
  /// Runs one or more statements without parameters.
  void execute(const std::string& sql) const;
  std::int64_t last_row_id() const;
  const std::string& path() const { return path_; }

  /// Copies the whole database into a new file, also while it is in use (online backup).
  void copy_to(const std::string& path) const;

 private:
  struct Close {
    void operator()(sqlite3* database) const;
  };

  std::string path_;
  std::unique_ptr<sqlite3, Close> handle_;
  std::shared_ptr<StatementShelf> shelf_;
};

class Transaction {
 public:
  /// Takes the write lock at once, so that a busy book is noticed before any work is done.
  explicit Transaction(const Database& database);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;

  void commit();

 private:
  const Database& database_;
  bool open_ = true;
};

}  // namespace rangebook
