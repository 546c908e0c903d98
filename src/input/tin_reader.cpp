#include "tackfree/input/tin_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/input/calendar_reader.hpp"
#include "tackfree/syntax/measure.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

std::optional<Volume> volume_in(JsonCursor& at, const JsonNode& node, const std::string& path) {
  const Reading<Volume> reading = read_volume(node.text);
  if (!reading.value) at.report(node, path, reading.wanted);
  return reading.value;
}

std::optional<ShelfTin> read_shelf_tin(JsonCursor& object) {
  ShelfTin tin;
  const auto volume = volume_under(object, "volume");
  if (volume) tin.volume = *volume;
  tin.opened_on = opened_on_in(object);
  object.refuse_unknown();
  return volume ? std::optional(tin) : std::nullopt;
}

/// Each a volume in quotes or, where age counts, an object with the day of opening beside it.
std::vector<ShelfTin> read_shelf(JsonCursor& object, bool age_counts) {
  std::vector<ShelfTin> on_shelf;
  const JsonNode* shelf = object.value("on_shelf");
  if (shelf == nullptr) return on_shelf;
  if (shelf->kind != JsonNode::Kind::array) {
    object.report("on_shelf", R"(wanted a list of volumes, [ "...", ... ])");
    return on_shelf;
  }
  for (std::size_t i = 0; i < shelf->items.size(); ++i) {
    const JsonNode& item = shelf->items[i];
    const std::string path = fmt::format("{}[{}]", object.path_of("on_shelf"), i);
    if (item.kind == JsonNode::Kind::string) {
      if (const auto volume = volume_in(object, item, path)) on_shelf.push_back({*volume, {}});
    } else if (item.kind == JsonNode::Kind::object && age_counts) {
      JsonCursor tin(item, path, object.file(), object.problems());
      if (const auto read = read_shelf_tin(tin)) on_shelf.push_back(*read);
    } else {
      object.report(item, path,
                    age_counts
                        ? R"(wanted a volume in quotes, or { "volume": ..., "opened_on": ... })"
                        : "wanted a volume in quotes");
    }
  }
  return on_shelf;
}

}  // namespace

std::optional<Volume> volume_under(JsonCursor& object, std::string_view key) {
  if (!object.text(needed(key))) return std::nullopt;
  return volume_in(object, *object.value(key), object.path_of(key));
}

std::optional<Date> opened_on_in(JsonCursor& object) {
  const auto day = object.text("opened_on");
  const auto date = day ? parse_planning_date(*day) : std::nullopt;
  if (day && !date)
    object.report("opened_on", R"(wanted a date from 1970 to 2037, such as "2027-01-31")");
  return date;
}

std::vector<TinSize> read_tins(JsonCursor& object) {
  std::vector<TinSize> tins;
  for (JsonCursor& tin : object.objects("tins")) {
    const auto size = tin.text(needed("size"));
    const auto price = tin.number("price", {0, 1e6});
    std::optional<Volume> volume;
    if (tin.has("volume"))
      volume = volume_under(tin, "volume");
    else if (size)
      volume = volume_under(tin, "size");
    if (size && volume) tins.push_back({*size, *volume, price});
    tin.refuse_unknown();
  }
  return tins;
}

std::vector<ShelfTin> read_shelf(JsonCursor& object) { return read_shelf(object, true); }

std::vector<Thinner> read_thinners(JsonCursor& job, const std::vector<Coating>& coatings) {
  const std::vector<std::string> known = liquids_of(coatings);
  std::vector<Thinner> thinners;
  for (JsonCursor& object : job.objects("thinners")) {
    Thinner thinner;
    thinner.line = object.line();
    thinner.name = object.text(needed("name")).value_or("");
    const auto same = [&](const Thinner& other) { return other.name == thinner.name; };
    if (object.has("name") && std::find(known.begin(), known.end(), thinner.name) == known.end())
      object.report("name", "wanted what one of this job's coatings is thinned or cleaned with",
                    name_hint(thinner.name, known));
    else if (std::any_of(thinners.begin(), thinners.end(), same))
      object.report("name", "stands in the list already; wanted it once, with all of its tins");
    thinner.tins = read_tins(object);
    thinner.on_shelf = read_shelf(object, false);
    object.refuse_unknown();
    thinners.push_back(std::move(thinner));
  }
  return thinners;
}

}  // namespace tackfree
