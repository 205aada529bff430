// Everything that rewriting a list of lines would otherwise lose or break.
#include "tracker/store/former_capture.h"

namespace rangebook {
namespace {

std::string origins_of(const Database& database, std::int64_t capture) {
  auto row = database.prepare("SELECT origins FROM capture WHERE id = ?1");
  row.bind(1, capture).step();
  return std::string(row.blob(0));
}

}  // namespace

FormerCapture read_former_capture(const Book& book, const CaptureInfo& capture) {
  const Database& database = book.database();
  FormerCapture former;
  former.info = capture;
  former.manifest = read_manifest(database, capture.id);
  former.origins = origins_of(database, capture.id);
  former.rejections = book.rejections(capture.id);
  auto dependents = database.prepare("SELECT id FROM capture WHERE base_id = ?1 ORDER BY id");
  dependents.bind(1, capture.id);
  while (dependents.step()) {
    const std::int64_t id = dependents.integer(0);
    former.dependents.push_back({id, read_manifest(database, id)});
  }
  return former;
}

bool same_as_former(const Book& book, const FormerCapture& former, const CaptureInfo& info,
                    const Manifest& manifest) {
  return manifest == former.manifest && info.documents == former.info.documents &&
         origins_of(book.database(), info.id) == former.origins &&
         book.rejections(info.id) == former.rejections;
}

}  // namespace rangebook
