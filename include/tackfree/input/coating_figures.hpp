// Coating figures: the one list of keys that a class and a person's own tin are described with.
#pragma once

#include "tackfree/input/figure_reader.hpp"
#include "tackfree/model/coating.hpp"
#include "tackfree/model/finishing_data.hpp"

#include <array>
#include <string_view>

namespace tackfree {

/// The key under which a stage's time stands, and its unit.
struct StageKey {
  Stage stage;
  std::string_view key;
  bool in_days = false;
};
inline constexpr std::array stage_keys{StageKey{Stage::dust_free, "dust_free_after_h"},
                                       StageKey{Stage::touch, "touch_after_h"},
                                       StageKey{Stage::handle, "handle_after_h"},
                                       StageKey{Stage::recoat, "recoat_after_h"},
                                       StageKey{Stage::sand, "sand_after_h"},
                                       StageKey{Stage::light_use, "light_use_after_h"},
                                       StageKey{Stage::hardware, "hardware_after_d", true},
                                       StageKey{Stage::stack, "stack_after_d", true},
                                       StageKey{Stage::full_cure, "full_cure_after_d", true}};

/// Which stages' times a person gave for a coating.
using StagesGiven = std::array<bool, stage_count>;

/// Reads every figure of a coating into `coating`; the stages that were there are marked in
/// `given`. A coating's own figures are read over those of its class.
void read_coating_figures(FigureReader& figures, Coating& coating, StagesGiven& given);

/// Reports figures that contradict each other: times given out of order, limits crossed, fewest
/// coats over most. A class's time that contradicts a given one moves to it: a tin that may be
/// recoated after 4 h is dry to touch by then.
void settle_coating_figures(JsonCursor& at, Coating& coating, const StagesGiven& given);

void read_method_figures(FigureReader& figures, Method& method);
void read_labour_figures(FigureReader& figures, Labour& labour);

}  // namespace tackfree
