// Tins: which tins of a product cover an amount at the least cost, or with the least left over.
#pragma once

#include "tackfree/base/units.hpp"
#include "tackfree/model/coating.hpp"

#include <vector>

namespace tackfree {

struct TinChoice {
  std::vector<int> counts;  ///< by index into the sizes offered
  Volume bought;
  double cost = 0;  ///< 0 when not every size has a price
  bool priced = false;
};

/// The tins that hold at least `needed`, exact: of least cost when every size has a price, else of
/// least volume; ties go to less left over, then to fewer tins. Nothing is bought for needed <= 0.
/// Volumes count in whole millilitres, sizes rounded down and the need up;
/// prices count in ten-thousandths. Throws std::invalid_argument when no size holds a millilitre.
TinChoice choose_tins(Volume needed, const std::vector<TinSize>& sizes);

}  // namespace tackfree
