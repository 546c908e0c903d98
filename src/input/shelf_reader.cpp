#include "tackfree/input/shelf_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/input/names_of.hpp"
#include "tackfree/input/tin_reader.hpp"
#include "tackfree/syntax/json_cursor.hpp"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

const Coating* class_of(const FinishingData& data, const std::string& key) {
  const auto found = std::ranges::find(data.classes, key, &Coating::class_key);
  return found == data.classes.end() ? nullptr : &*found;
}

constexpr const char* wanted_id =
    "wanted the id of a job: small letters, digits and single hyphens";

bool is_id(const std::string& text) { return !text.empty() && slug(text) == text; }

/// A coating with its class, or a thinner.
void read_product(JsonCursor& object, const FinishingData& data, SharedTin& tin) {
  if (object.has("thinner")) {
    tin.product = object.text("thinner").value_or("");
    for (const char* key : {"coating", "class"})
      if (object.value(key) != nullptr)
        object.report(key, "wanted either a thinner, or a coating with its class");
    return;
  }
  tin.product = object.text(needed("coating")).value_or("");
  tin.class_key = object.text(needed("class")).value_or("");
  if (object.has("class") && !tin.class_key.empty() && class_of(data, tin.class_key) == nullptr)
    object.report("class", "wanted a class of coating",
                  name_hint(tin.class_key, names_of(data.classes, &Coating::class_key)));
}

WrittenVolume written_volume(JsonCursor& object, std::string_view key) {
  const auto volume = volume_under(object, key);
  return volume ? WrittenVolume{*volume, object.value(key)->text} : WrittenVolume{};
}

/// Of two parts that are kept apart, what can be mixed of them.
void read_parts(JsonCursor& object, const FinishingData& data, SharedTin& tin) {
  const WrittenVolume a = written_volume(object, "part_a");
  const WrittenVolume b = written_volume(object, "part_b");
  const auto ratio = object.number(needed("a_to_b"), {0.01, 100});
  if (object.value("volume") != nullptr)
    object.report("volume", "wanted either the volume, or part_a, part_b and a_to_b");
  const Coating* kind = class_of(data, tin.class_key);
  if (kind != nullptr && !kind->pot_life)
    object.report("part_a",
                  fmt::format("wanted only of a two-part coating; {} is none", kind->class_title));
  if (!ratio) return;
  tin.volume.volume = std::min(a.volume / *ratio, b.volume) * (*ratio + 1);
  tin.two_parts = TwoParts{a.text, b.text, object.value("a_to_b")->text};
}

std::vector<TinTaking> read_takings(JsonCursor& tin) {
  std::vector<TinTaking> takings;
  auto all = tin.object("taken_by");
  if (!all) return takings;
  const std::size_t before = all->path().size() + 1;
  for (JsonCursor& object : all->named_objects()) {
    TinTaking taking;
    taking.job = object.path().substr(before);
    if (!is_id(taking.job)) all->report(taking.job, wanted_id);
    // Nothing taken, where it was only opened.
    if (object.has("volume")) taking.amount = written_volume(object, "volume");
    taking.opened_on = opened_on_in(object);
    object.refuse_unknown();
    takings.push_back(std::move(taking));
  }
  return takings;
}

SharedTin read_tin(JsonCursor& object, const FinishingData& data) {
  SharedTin tin;
  tin.line = object.line();
  read_product(object, data, tin);
  if (object.has("part_a") || object.has("part_b") || object.has("a_to_b"))
    read_parts(object, data, tin);
  else
    tin.volume = written_volume(object, "volume");
  tin.opened_on = opened_on_in(object);
  if (object.has("left_by") || object.has("tin")) {
    tin.left_by = object.text(needed("left_by")).value_or("");
    if (!tin.left_by.empty() && !is_id(tin.left_by)) object.report("left_by", wanted_id);
    tin.number = object.whole(needed("tin"), {1, 1'000'000}).value_or(0);
  }
  tin.note = object.text("note").value_or("");
  tin.takings = read_takings(object);
  object.refuse_unknown();
  return tin;
}

/// A job that finds two tins under one number would write one of them twice.
void check_numbers(const Shelf& shelf, Problems& problems) {
  std::map<std::tuple<std::string, int, std::string, std::string>, int> lines;
  for (std::size_t i = 0; i < shelf.tins.size(); ++i) {
    const SharedTin& tin = shelf.tins[i];
    if (tin.left_by.empty()) continue;
    const auto [known, is_new] =
        lines.try_emplace({tin.left_by, tin.number, tin.class_key, slug(tin.product)}, tin.line);
    if (!is_new)
      problems.push_back(
          {.file = shelf.file,
           .line = tin.line,
           .key = fmt::format("tins[{}].tin", i),
           .found = fmt::format("{}", tin.number),
           .wanted = fmt::format("wanted another number: line {} has it", known->second),
           .hint = "delete left_by and tin of the one that is yours"});
  }
}

}  // namespace

std::optional<Shelf> parse_shelf(std::string_view text, const std::string& file,
                                 const FinishingData& data, Problems& problems) {
  Shelf shelf{.file = file, .tins = {}};
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) return shelf;
  const std::size_t before = problems.size();
  const auto tree = parse_json(text, file, problems);
  if (!tree) return std::nullopt;
  JsonCursor root(*tree, "", file, problems);
  shelf.schema = root.text("$schema").value_or("");
  root.whole(needed("tackfree_shelf"), {1, 1, "the format, which is"});
  for (JsonCursor& object : root.objects("tins")) shelf.tins.push_back(read_tin(object, data));
  root.refuse_unknown();
  check_numbers(shelf, problems);
  if (problems.size() > before) return std::nullopt;
  return shelf;
}

}  // namespace tackfree
