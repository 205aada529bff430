# Which Debian packages the project needs, and how to get them. Sourced by demo-feeds/try and
# tests/run; plain POSIX sh, since it also has to speak on systems where nothing is known.
# shellcheck shell=sh disable=SC2034

# To build the program.
build_packages="g++ cmake ninja-build pkg-config libsqlite3-dev libcurl4-openssl-dev libgumbo-dev
  libfmt-dev libhowardhinnant-date-dev nlohmann-json3-dev libcli11-dev libicu-dev libzstd-dev
  libxxhash-dev libssl-dev libarchive-dev libexpat1-dev libxlsxwriter-dev libgmime-3.0-dev
  libcpp-httplib-dev"
# To run the tests: a second build or a case that reads a book from outside.
test_packages="libgtest-dev libgmock-dev ccache sqlite3"
# For the checks that only `tests/run --all` does.
check_packages="clang lld clang-tidy clang-format libclang-rt-14-dev codespell shellcheck mandoc libbenchmark-dev"

# The same in words for systems whose package names we do not know.
generic_names="a C++20 compiler (g++ 12 or clang 14 and later), CMake 3.25, Ninja, pkg-config, and the
development files of SQLite 3, libcurl, gumbo-parser, fmt 9, Howard Hinnant's date, nlohmann-json,
CLI11, ICU, zstd, xxHash, OpenSSL, libarchive, expat, GMime 3, cpp-httplib 0.11
and libxlsxwriter; for the tests GoogleTest and GoogleMock, sqlite3, and for every
check clang, lld, clang-tidy, clang-format, compiler-rt, codespell, shellcheck, mandoc and Google Benchmark"

say() { printf '%s\n' "$*" >&2; }

# missing_packages NAME...: those of them that dpkg does not have.
missing_packages() {
  for package in "$@"; do
    dpkg-query -W -f '${db:Status-Status}\n' "$package" 2>/dev/null | grep -qx installed ||
      printf '%s ' "$package"
  done
}

is_debian_12() {
  [ -r /etc/os-release ] || return 1
  # In a subshell: the file sets many names.
  (. /etc/os-release && [ "${ID:-}" = debian ] && [ "${VERSION_ID:-}" = 12 ])
}

# need_packages NAME...: installs what is missing, or says what is needed and ends the script with 3.
# RANGEBOOK_PACKAGES=mine skips the question: for other systems that have it all.
need_packages() {
  [ "${RANGEBOOK_PACKAGES:-}" = mine ] && return 0
  if ! is_debian_12; then
    say "This script installs packages on Debian 12 only. Elsewhere please install:"
    say "$generic_names"
    say "and run it again with RANGEBOOK_PACKAGES=mine in the environment."
    exit 3
  fi
  wanted=$(missing_packages "$@")
  [ -n "$wanted" ] || return 0
  as_root=
  if [ "$(id -u)" != 0 ]; then
    if ! command -v sudo >/dev/null 2>&1; then
      say "These packages are missing, and installing them needs root or sudo:"
      say "  $wanted"
      say "As root: apt-get update && apt-get install $wanted"
      exit 3
    fi
    as_root="sudo"
  fi
  if ! { mkdir -p build/logs && : >build/logs/packages.log; }; then
    say "$(pwd)/build cannot be written: run this as the owner of the folder, or in a clone of your own."
    exit 3
  fi
  say "Installing: $wanted"
  # shellcheck disable=SC2086  # a list of words
  if ! { $as_root apt-get -o Acquire::Retries=3 -qq update &&
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get -o Acquire::Retries=3 \
      -o Dpkg::Use-Pty=0 -qq -y --no-install-recommends install $wanted; } \
    >build/logs/packages.log 2>&1 </dev/null; then
    tail -n 30 build/logs/packages.log >&2
    say "apt-get could not install the packages; its message is above."
    exit 3
  fi
}
