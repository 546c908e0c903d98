#include "tackfree/base/files_on_disk.hpp"
#include "tackfree/syntax/json_document.hpp"

#include <map>
#include <set>

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

const std::filesystem::path project_root = TACKFREE_ROOT;

JsonNode tree_of(const std::filesystem::path& path) {
  Problems problems;
  auto tree = parse_json(FilesOnDisk().text(project_root / path, problems).value(), path.string(),
                         problems);
  REQUIRE(tree);
  return std::move(*tree);
}

/// The key paths of a job file, list places left out: `coatings.label.solids_pct`.
void collect_keys(const JsonNode& node, const std::string& path, std::set<std::string>& keys) {
  for (const JsonNode& item : node.items) {
    const std::string inner = item.key.empty() ? path
                              : path.empty()   ? item.key
                                               : path + "." + item.key;
    if (!item.key.empty()) keys.insert(inner);
    collect_keys(item, inner, keys);
  }
}

/// The key paths that a schema describes, its `$ref`s followed.
void collect_properties(const JsonNode& whole, const JsonNode& schema, const std::string& path,
                        std::set<std::string>& keys) {
  if (const JsonNode* reference = schema.member("$ref")) {
    const std::string name = reference->text.substr(std::string("#/$defs/").size());
    const JsonNode* definition = whole.member("$defs")->member(name);
    REQUIRE_MESSAGE(definition != nullptr, name);
    collect_properties(whole, *definition, path, keys);
  }
  if (const JsonNode* items = schema.member("items")) collect_properties(whole, *items, path, keys);
  if (const JsonNode* choices = schema.member("anyOf"))
    for (const JsonNode& choice : choices->items)
      if (choice.member("$ref")) collect_properties(whole, choice, path, keys);
  const JsonNode* properties = schema.member("properties");
  if (properties == nullptr) return;
  INFO(path);
  REQUIRE(schema.member("additionalProperties") != nullptr);
  CHECK_FALSE(schema.member("additionalProperties")->boolean);
  for (const JsonNode& property : properties->items) {
    const std::string inner = path.empty() ? property.key : path + "." + property.key;
    keys.insert(inner);
    collect_properties(whole, property, inner, keys);
  }
}

}  // namespace

TEST_CASE("the schema of the job file describes exactly the keys that jobs use") {
  std::set<std::string> used;
  for (const char* job :
       {"tests/input/every_key/job.json", "tests/input/every_key/warm_room.json",
        "data/starter/job.json", "data/demo/hall_bench/hall_bench.json",
        "data/demo/wall_shelves/wall_shelves.json", "data/demo/cabinet_fronts/cabinet_fronts.json",
        "data/demo/table_order/table_order.json"})
    collect_keys(tree_of(job), "", used);
  std::set<std::string> described;
  const JsonNode schema = tree_of("docs/job.schema.json");
  collect_properties(schema, schema, "", described);
  for (const std::string& key : used) CHECK_MESSAGE(described.contains(key), key);
  // What a tin's label may say can also be measured, but for the air its hours hold in.
  for (const std::string& key : described) {
    std::string as_label = key;
    if (const std::size_t at = key.find(".measured."); at != std::string::npos)
      as_label.replace(at, 10, ".label.");
    // A person's week is written as the calendar's.
    if (as_label.starts_with("people.weekly.")) as_label.replace(0, 6, "calendar");
    // Every method has the same four keys.
    for (const char* method : {"methods.foam_roller.", "methods.wipe.", "methods.hvlp."})
      if (as_label.starts_with(method))
        as_label = "methods.brush." + as_label.substr(std::string(method).size());
    CHECK_MESSAGE(used.contains(as_label), key);
  }
}

TEST_CASE(
    "the page on file formats names every key of the job file and every column of the parts") {
  Problems problems;
  const std::string page =
      FilesOnDisk().text(project_root / "docs/file_formats.md", problems).value();
  std::set<std::string> described;
  const JsonNode schema = tree_of("docs/job.schema.json");
  collect_properties(schema, schema, "", described);
  for (const std::string& path : described) {
    const std::string key = path.substr(path.rfind('.') + 1);
    CHECK_MESSAGE(holds(page, "`" + key + "`"), key);
  }
  for (const char* column : {"kind",
                             "part",
                             "quantity",
                             "length",
                             "width",
                             "thickness",
                             "diameter",
                             "inner",
                             "depth",
                             "girth",
                             "area",
                             "material",
                             "wood",
                             "surface",
                             "coat",
                             "batch",
                             "stile_width",
                             "rail_width",
                             "panels",
                             "slats",
                             "slat_width",
                             "slat_thickness",
                             "set_back_top",
                             "set_back_bottom",
                             "profile_factor",
                             "grain",
                             "estimate",
                             "masked",
                             "face",
                             "along",
                             "run",
                             "rim",
                             "note"})
    CHECK_MESSAGE(holds(page, std::string("`") + column + "`"), column);
}
