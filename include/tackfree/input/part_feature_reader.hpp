// Part feature reader: one row of the parts list that is a hole, groove or the like in a part.
#pragma once

#include "tackfree/input/parts_row.hpp"
#include "tackfree/model/part.hpp"

#include <array>
#include <string>
#include <string_view>

namespace tackfree {

/// The kinds of feature, as the column `kind` names them.
inline constexpr std::array<std::string_view, 6> feature_kinds{"cut-out", "hole",     "groove",
                                                               "rebate",  "moulding", "mask"};

/// A feature row before it is known to fit its part.
struct PartFeature {
  std::size_t kind = 0;  ///< index into feature_kinds
  Feature feature;
  bool full_length = false;  ///< it runs from side to side
  bool side_named = false;   ///< a mask says which side it is on
  std::string part;
};

PartFeature read_feature(PartsRow& row, std::size_t kind);

/// Adds the feature to the part it is in, or reports what does not fit.
void fit_feature(PartsRow& row, PartFeature feature, Part& part);

/// Reports sides of a board that hold less area than the features in them, and edges that are
/// moulded over more than their length.
void check_features(const Part& part, const std::string& file, Problems& problems);

}  // namespace tackfree
