#include "tackfree/export/shelf_json.hpp"

#include "tackfree/words/display_text.hpp"

#include <cmath>
#include <string_view>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

std::string in_json(std::string_view text) {
  return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

/// `0.643 L` or, from one on, `21.7 fl oz`. The trifle keeps what has been rounded from being
/// rounded again.
std::string amount_text(Volume volume, UnitSystem units, bool up) {
  constexpr double trifle = 1e-6;
  const bool us = units == UnitSystem::us && volume >= us_fluid_ounces(1);
  const double steps = us ? volume.in(us_fluid_ounces)*10 : volume.in(millilitres);
  const double whole = up ? std::ceil(steps - trifle) : std::floor(steps + trifle);
  return us ? fmt::format("{:.1f} fl oz", whole / 10) : fmt::format("{:.3f} L", whole / 1000);
}

class TinLine {
 public:
  explicit TinLine(UnitSystem units) : units_(units) {}

  void put(std::string_view key, std::string_view text) { put_raw(key, in_json(text)); }
  void put_raw(std::string_view key, const std::string& value) {
    members_.push_back(fmt::format("{}: {}", in_json(key), value));
  }
  void put_amount(std::string_view key, const WrittenVolume& amount, bool up) {
    put(key, amount.text.empty() ? amount_text(amount.volume, units_, up) : amount.text);
  }
  void put_day(const std::optional<Date>& day) {
    if (day) put("opened_on", iso_date(*day));
  }
  std::string text() const { return fmt::format("{{ {} }}", fmt::join(members_, ", ")); }

 private:
  UnitSystem units_;
  std::vector<std::string> members_;
};

std::string takings_text(const std::vector<TinTaking>& takings, UnitSystem units) {
  TinLine all(units);
  for (const TinTaking& taking : takings) {
    TinLine one(units);
    if (taking.amount.volume > Volume()) one.put_amount("volume", taking.amount, true);
    one.put_day(taking.opened_on);
    all.put_raw(taking.job, one.text());
  }
  return all.text();
}

std::string tin_text(const SharedTin& tin, UnitSystem units) {
  TinLine line(units);
  line.put(tin.class_key.empty() ? "thinner" : "coating", tin.product);
  if (!tin.class_key.empty()) line.put("class", tin.class_key);
  if (tin.two_parts) {
    line.put("part_a", tin.two_parts->part_a);
    line.put("part_b", tin.two_parts->part_b);
    line.put_raw("a_to_b", tin.two_parts->a_to_b);
  } else {
    line.put_amount("volume", tin.volume, false);
  }
  line.put_day(tin.opened_on);
  if (!tin.note.empty()) line.put("note", tin.note);
  if (!tin.left_by.empty()) {
    line.put("left_by", tin.left_by);
    line.put_raw("tin", fmt::format("{}", tin.number));
  }
  if (!tin.takings.empty()) line.put_raw("taken_by", takings_text(tin.takings, units));
  return "    " + line.text();
}

}  // namespace

std::string shelf_json(const Shelf& shelf, UnitSystem units) {
  std::vector<std::string> tins;
  for (const SharedTin& tin : shelf.tins) tins.push_back(tin_text(tin, units));
  const std::string list = tins.empty() ? "[]" : fmt::format("[\n{}\n  ]", fmt::join(tins, ",\n"));
  const std::string schema =
      shelf.schema.empty() ? "" : fmt::format("  \"$schema\": {},\n", in_json(shelf.schema));
  return unseen_escaped(
      fmt::format("{{\n{}  \"tackfree_shelf\": 1,\n  \"tins\": {}\n}}\n", schema, list));
}

}  // namespace tackfree
