// Features: what holes, grooves, rebates, mouldings and masks add to a shape or take off it.
#pragma once

#include "tackfree/base/units.hpp"
#include "tackfree/model/part.hpp"
#include "tackfree/takeoff/shapes.hpp"

#include <vector>

namespace tackfree {

/// Whether a feature of this length reaches over the whole run and so runs out at both sides (to
/// 1 um). A shorter one is stopped at both ends.
bool runs_out(Length length, Length run);

/// What the features of a board add, and with a minus sign take off. Source of all: geometry.
///
/// Cut-out: off top and bottom length x width; rim 2 x length x thickness along the grain, 2 x
/// width x thickness across. Hole: off top and bottom pi/4 x diameter^2; its wall pi x diameter x
/// thickness, half of it end grain. Groove: 2 x length x depth beside its run and, where stopped,
/// 2 x width x depth at its ends; one that runs out takes width x depth off each side there. Its
/// floor is as large as its mouth. Rebate: floor and wall are as large as what it takes off its
/// face and its edge; where stopped two walls of width x depth, else it takes those off the two
/// sides it runs out at. Moulding: length x (girth - thickness). Masked: the mouth of a groove,
/// floor and wall of a rebate, length x width of a mask come off, and nothing else: the few square
/// centimetres of their outlets stay in, on the ample side.
std::vector<Patch> feature_patches(const Feature& feature, const Board& board);

/// A mask all round a round: pi x diameter x length off its side.
std::vector<Patch> mask_patches(const Mask& mask, Length diameter);

/// Tape for one piece: round the mouth of a masked groove, the floor and wall of a masked rebate
/// and a mask, without the ends where they run out; nothing on sides that are not coated.
Length tape_on_board(const Feature& feature, const Board& board, const FaceSet& coated);

/// Tape at the one end of a mask round a leg: pi x diameter each.
Length tape_on_round(const Mask& mask, Length diameter, const FaceSet& coated);

}  // namespace tackfree
