// Figure reader: figures with their origin, written beside each one or known for the whole object.
#pragma once

#include "tackfree/base/sourced.hpp"
#include "tackfree/base/temperature.hpp"
#include "tackfree/model/coating.hpp"
#include "tackfree/syntax/json_cursor.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// The full names of published sources, by the short key under which data files cite them.
struct SourceNames {
  struct Source {
    std::string key;
    std::string name;
  };
  std::vector<Source> all;
};

/// `[origin, source key]` from item `first` of `node` on. A published figure needs a source.
struct OriginAndSource {
  Origin origin = Origin::assumed;
  std::string source;
};
std::optional<OriginAndSource> read_origin(JsonCursor& cursor, const JsonNode& node,
                                           std::size_t first, const SourceNames& sources);

/// Reads figures of one object into sourced values. In the finishing data a figure is
/// `[value, origin]` or `[value, origin, source key]` and must be there; in a job it is the bare
/// value, of the origin that its object stands for (`label`, `measured`), and may be missing.
class FigureReader {
 public:
  FigureReader(JsonCursor& object, const SourceNames& sources)
      : object_(object), sources_(&sources) {}
  FigureReader(JsonCursor& object, Origin origin) : object_(object), origin_(origin) {}

  JsonCursor& object() { return object_; }
  bool in_finishing_data() const { return sources_ != nullptr; }
  bool has(std::string_view key) const { return object_.has(key); }
  /// Of every figure of a job's object; in the finishing data each has its own.
  Origin origin() const { return origin_; }

  /// Each sets `target` when the figure is there and right. `unit` makes the quantity.
  template <class Kind>
  bool read(Sourced<Quantity<Kind>>& target, std::string_view key, NumberRange range,
            const Unit<Kind>& unit) {
    const auto found = number(key, range, true);
    if (found) target = {unit(found->value), found->origin, found->source};
    return found.has_value();
  }
  /// A figure that a class may lack.
  template <class Kind>
  bool read(std::optional<Sourced<Quantity<Kind>>>& target, std::string_view key, NumberRange range,
            const Unit<Kind>& unit) {
    const auto found = number(key, range, false);
    if (found) target = {unit(found->value), found->origin, found->source};
    return found.has_value();
  }
  void read(Sourced<double>& target, std::string_view key, NumberRange range);
  void read(Sourced<int>& target, std::string_view key, NumberRange range);
  void read(std::optional<Sourced<int>>& target, std::string_view key, NumberRange range);
  /// `key_c` in degrees Celsius or `key_f` in Fahrenheit, the range in Celsius.
  void read(Sourced<Temperature>& target, std::string_view key, NumberRange celsius_range);
  void read(std::optional<Sourced<Temperature>>& target, std::string_view key,
            NumberRange celsius_range);
  void read(std::optional<Sourced<Grit>>& target, std::string_view key);
  void read(Sourced<std::vector<Grit>>& target, std::string_view key);
  /// Sizes that can be bought, as volumes with their unit.
  void read(Sourced<std::vector<TinSize>>& target, std::string_view key);

 private:
  /// The value itself and its origin, when the figure is there and in the form for it.
  struct Found {
    const JsonNode* value = nullptr;
    OriginAndSource from;
  };
  std::optional<Found> find(std::string_view key, bool must_be_there);
  std::optional<Sourced<double>> number(std::string_view key, NumberRange range,
                                        bool must_be_there);
  std::optional<Sourced<Temperature>> temperature(std::string_view key, NumberRange celsius_range,
                                                  bool must_be_there);

  JsonCursor& object_;
  const SourceNames* sources_ = nullptr;
  Origin origin_ = Origin::assumed;
};

/// `key_c` or `key_f`, whichever is there; both are a Problem. The range is in Celsius.
std::optional<Temperature> read_temperature(JsonCursor& object, JsonKey key,
                                            NumberRange celsius_range);

}  // namespace tackfree
