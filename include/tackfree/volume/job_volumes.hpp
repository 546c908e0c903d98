// Job volumes: litres on and lost from the surfaces, coat by coat, before any schedule.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/takeoff/surface_takeoff.hpp"
#include "tackfree/volume/film.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// What one coat of one side of one batch takes from the tins.
struct CoatNeed {
  std::size_t batch = 0;   ///< index into Job::batches
  std::size_t step = 0;    ///< index into the system's steps
  int coat = 1;            ///< from 1 within the step
  Side side = Side::show;  ///< `both` when the batch is coated in one go or has one side only
  Area area;
  Volume mixed;  ///< coating and thinner together
  Volume coating;
  Volume thinner;
};

/// The film of one step of one batch's system.
struct StepFilm {
  std::size_t batch = 0;
  std::size_t step = 0;
  FilmBuild build;
  FilmThickness beneath;     ///< of the same class in the steps right before: one film with it
  FilmThickness aim;         ///< 0 where another film comes on top, or the class builds none
  FilmThickness cap;         ///< 0 where the class builds no film
  bool coats_fixed = false;  ///< the person gave the number
  enum class Verdict { good, thin, thick } verdict = Verdict::good;
};

/// Litres of one coating over the whole job, without what the tools keep.
struct CoatingNeed {
  std::size_t coating = 0;  ///< index into Job::coatings
  Volume expected;          ///< coating, no thinner
  Volume thinner;
  double nine_in_ten = 1.0;  ///< factor on `expected` that suffices in nine jobs of ten
};

struct JobVolumes {
  std::vector<CoatNeed> coats;  ///< in the order they are put on, batch by batch
  std::vector<StepFilm> films;
  std::vector<CoatingNeed> coatings;  ///< one for each coating that is used
};

/// Litres by the formula of coat_volume. Grain factors count coats over the whole system. The first
/// coat is thinned as the step says; where it says nothing, as the class does, on bare wood only.
/// Where it is sprayed, every other coat has the class's thinner for the gun.
/// `thirst` by coating index multiplies the need: 1, or what the log has taught.
/// Throws std::out_of_range for a name that the job does not hold: the readers see to it.
JobVolumes job_volumes(const Job& job, const SurfaceTakeoff& takeoff,
                       const std::vector<double>& thirst);

}  // namespace tackfree
