// The only file that includes the SQLite header.
#include "tracker/store/sqlite.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <mutex>
#include <unordered_map>
#include <vector>

#include "schema/error.h"

namespace rangebook {
namespace {

/// How long to wait for another program that is writing to the book, in milliseconds.
constexpr int kBusyWait = 10'000;

[[noreturn]] void fail(sqlite3* database, int code, const std::string& path) {
  const int primary = code & 0xFF;
  const std::string file = path.empty() ? "the book" : path;
  if (primary == SQLITE_BUSY || primary == SQLITE_LOCKED) {
    throw Error(
        fmt::format("{} is busy: another rangebook is writing to it. Try again when it is "
                    "done.",
                    file));
  }
  if (primary == SQLITE_NOTADB || primary == SQLITE_CORRUPT) {
    throw Error(fmt::format("{} is damaged or no rangebook file ({}). Restore it from a backup.",
                            file, database ? sqlite3_errmsg(database) : "unreadable"));
  }
  if (primary == SQLITE_FULL) {
    throw Error(
        fmt::format("No room left on the disk of {}. Nothing was changed; free some space "
                    "and try again.",
                    file));
  }
  throw Error(
      fmt::format("{}: {}.", file, database ? sqlite3_errmsg(database) : sqlite3_errstr(code)));
}

int open_flags(Database::Mode mode) {
  switch (mode) {
    case Database::Mode::read_write:
      return SQLITE_OPEN_READWRITE;
    case Database::Mode::create:
      return SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
    case Database::Mode::read_only:
      return SQLITE_OPEN_READONLY;
  }
  return 0;
}

/// SQLite takes a null pointer as NULL; an empty text is not NULL.
const char* data_of(std::string_view bytes) { return bytes.data() ? bytes.data() : ""; }

}  // namespace

class StatementShelf {
 public:
  StatementShelf() = default;
  ~StatementShelf() { clear(); }
  StatementShelf(const StatementShelf&) = delete;
  StatementShelf& operator=(const StatementShelf&) = delete;

  /// Nothing when there is none with these words.
  sqlite3_stmt* take(std::string_view sql) {
    const std::lock_guard lock(mutex_);
    const auto found = statements_.find(std::string(sql));
    if (found == statements_.end()) return nullptr;
    sqlite3_stmt* statement = found->second;
    statements_.erase(found);
    return statement;
  }

  void put_back(sqlite3_stmt* statement) {
    // A statement that is not reset would keep its transaction open, and its parameters their
    // bytes.
    sqlite3_reset(statement);
    sqlite3_clear_bindings(statement);
    const std::lock_guard lock(mutex_);
    if (closed_ || statements_.size() >= kRoom) {
      sqlite3_finalize(statement);
    } else {
      statements_.emplace(sqlite3_sql(statement), statement);
    }
  }

  /// From now on what is put back is thrown away: the database is being closed.
  void close() {
    const std::lock_guard lock(mutex_);
    closed_ = true;
    clear();
  }

 private:
  static constexpr std::size_t kRoom = 128;

  void clear() {
    for (const auto& [sql, statement] : statements_) sqlite3_finalize(statement);
    statements_.clear();
  }

  std::mutex mutex_;
  bool closed_ = false;
  std::unordered_multimap<std::string, sqlite3_stmt*> statements_;
};

void Statement::PutBack::operator()(sqlite3_stmt* statement) const { shelf->put_back(statement); }
void Database::Close::operator()(sqlite3* database) const { sqlite3_close_v2(database); }

Statement::Statement(sqlite3* database, const std::shared_ptr<StatementShelf>& shelf,
                     std::string_view sql)
    : database_(database), statement_(shelf->take(sql), PutBack{shelf}) {
  if (statement_) return;
  sqlite3_stmt* statement = nullptr;
  const int code =
      sqlite3_prepare_v2(database, sql.data(), static_cast<int>(sql.size()), &statement, nullptr);
  statement_.reset(statement);
  check(code);
}

void Statement::check(int code) const {
  if (code == SQLITE_OK || code == SQLITE_ROW || code == SQLITE_DONE) return;
  const char* name = sqlite3_db_filename(database_, "main");
  fail(database_, code, name ? name : "");
}

Statement& Statement::bind(int parameter, std::int64_t value) {
  check(sqlite3_bind_int64(statement_.get(), parameter, value));
  return *this;
}

Statement& Statement::bind(int parameter, double value) {
  check(sqlite3_bind_double(statement_.get(), parameter, value));
  return *this;
}

Statement& Statement::bind(int parameter, std::string_view text) {
  check(sqlite3_bind_text64(statement_.get(), parameter, data_of(text), text.size(),
                            SQLITE_TRANSIENT, SQLITE_UTF8));  // NOLINT
  return *this;
}

Statement& Statement::bind(int parameter, std::optional<std::int64_t> value) {
  return value ? bind(parameter, *value) : bind_null(parameter);
}

Statement& Statement::bind_blob(int parameter, std::string_view bytes) {
  check(sqlite3_bind_blob64(statement_.get(), parameter, data_of(bytes), bytes.size(),
                            SQLITE_TRANSIENT));  // NOLINT
  return *this;
}

Statement& Statement::bind_null(int parameter) {
  check(sqlite3_bind_null(statement_.get(), parameter));
  return *this;
}

bool Statement::step() {
  const int code = sqlite3_step(statement_.get());
  check(code);
  return code == SQLITE_ROW;
}

void Statement::run() {
  while (step()) continue;
  reset();
}

void Statement::reset() { check(sqlite3_reset(statement_.get())); }

std::int64_t Statement::integer(int column) const {
  return sqlite3_column_int64(statement_.get(), column);
}

double Statement::real(int column) const { return sqlite3_column_double(statement_.get(), column); }

std::string_view Statement::text(int column) const {
  const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(statement_.get(), column));
  const auto bytes = static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column));
  return text ? std::string_view(text, bytes) : std::string_view{};
}

std::string_view Statement::blob(int column) const {
  const auto* bytes = static_cast<const char*>(sqlite3_column_blob(statement_.get(), column));
  const auto size = static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column));
  return bytes ? std::string_view(bytes, size) : std::string_view{};
}

bool Statement::is_null(int column) const {
  return sqlite3_column_type(statement_.get(), column) == SQLITE_NULL;
}

Database::Database(const std::string& path, Mode mode)
    : path_(path), shelf_(std::make_shared<StatementShelf>()) {
  sqlite3* handle = nullptr;
  const int code = sqlite3_open_v2(path.c_str(), &handle, open_flags(mode), nullptr);
  handle_.reset(handle);
  if (code != SQLITE_OK) {
    throw Error(fmt::format("Cannot open the book {}: {}.", path, sqlite3_errstr(code)));
  }
  sqlite3_extended_result_codes(handle, 1);
  sqlite3_busy_timeout(handle, kBusyWait);
}

Database::~Database() { shelf_->close(); }

void Database::execute(const std::string& sql) const {
  const int code = sqlite3_exec(handle_.get(), sql.c_str(), nullptr, nullptr, nullptr);
  if (code != SQLITE_OK) fail(handle_.get(), code, path_);
}

std::int64_t Database::last_row_id() const { return sqlite3_last_insert_rowid(handle_.get()); }

void Database::copy_to(const std::string& path) const {
  const Database target(path, Mode::create);
  sqlite3_backup* backup = sqlite3_backup_init(target.handle_.get(), "main", handle_.get(), "main");
  if (!backup) fail(target.handle_.get(), sqlite3_errcode(target.handle_.get()), path);
  const int code = sqlite3_backup_step(backup, -1);
  sqlite3_backup_finish(backup);
  if (code != SQLITE_DONE) fail(target.handle_.get(), code, path);
}

Transaction::Transaction(const Database& database) : database_(database) {
  database_.execute("BEGIN IMMEDIATE");
}

Transaction::~Transaction() {
  if (!open_) return;
  try {
    database_.execute("ROLLBACK");
  } catch (const Error&) {
    // A failed statement may have rolled back already; the next open recovers the rest.
    open_ = false;
  }
}

void Transaction::commit() {
  database_.execute("COMMIT");
  open_ = false;
}

}  // namespace rangebook
