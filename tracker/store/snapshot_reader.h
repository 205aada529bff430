// Reading a capture back as a value.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "schema/snapshot.h"
#include "tracker/store/book.h"

namespace rangebook {

enum class SnapshotDetail : std::uint8_t {
  without,  ///< descriptions and pictures stay empty: comparing by exact evidence needs none
  with,
};

/// The whole capture. Throws Error when there is no such capture or it is damaged.
Snapshot read_snapshot(const Book& book, std::int64_t capture, SnapshotDetail detail);

/// Descriptions and pictures of some lines of a capture, given by their place in its snapshot, in
/// the order asked. Cheaper than a snapshot with all of them. Throws Error like read_snapshot.
std::vector<LineDetail> read_details(const Book& book, std::int64_t capture,
                                     const std::vector<std::size_t>& lines);

/// Some lines of a capture, given by their place in its snapshot, in the order asked, without
/// details. Throws Error like read_snapshot.
std::vector<LineState> read_lines(const Book& book, std::int64_t capture,
                                  const std::vector<std::size_t>& lines);

/// The content hashes of the cards of some lines, in the order asked. Nothing is unpacked.
std::vector<std::uint64_t> read_card_hashes(const Book& book, std::int64_t capture,
                                            const std::vector<std::size_t>& lines);

/// Everything wrong with the book, in sentences; empty when it is sound: SQLite's own check, every
/// hash of every version and document, every reference, every capture's counts.
std::vector<std::string> check_book(const Book& book);

}  // namespace rangebook
