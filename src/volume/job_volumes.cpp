#include "tackfree/volume/job_volumes.hpp"

#include "tackfree/volume/coat_volume.hpp"
#include "tackfree/volume/nine_in_ten.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <stdexcept>

namespace tackfree {
namespace {

/// Areas of one batch by grain, for each of the two sides.
struct BatchAreas {
  std::array<Area, grain_count> back, show;

  Area of(Side side, Grain grain) const {
    const auto index = static_cast<std::size_t>(grain);
    if (side == Side::back) return back.at(index);
    if (side == Side::show) return show.at(index);
    return back.at(index) + show.at(index);
  }
  Area of(Side side) const {
    Area sum;
    for (std::size_t grain = 0; grain < grain_count; ++grain)
      sum += of(side, static_cast<Grain>(grain));
    return sum;
  }
};

std::vector<BatchAreas> areas_by_batch(const Job& job, const SurfaceTakeoff& takeoff) {
  std::map<std::string, std::size_t> index;
  for (std::size_t batch = 0; batch < job.batches.size(); ++batch)
    index.emplace(job.batches[batch].name, batch);
  std::vector<BatchAreas> areas(job.batches.size());
  for (const Surface& surface : takeoff.surfaces) {
    BatchAreas& batch = areas.at(index.at(job.parts.at(surface.part).batch));
    auto& side = surface.side == Side::back ? batch.back : batch.show;
    side.at(static_cast<std::size_t>(surface.grain)) += surface.area;
  }
  return areas;
}

/// The sides that are coated one after the other.
std::vector<Side> sides_in_order(const Batch& batch, const BatchAreas& areas) {
  const bool back = areas.of(Side::back) > Area{};
  const bool show = areas.of(Side::show) > Area{};
  if (!back && !show) return {};
  if (back && show && batch.sides == Sides::turn_over) return {Side::back, Side::show};
  return {Side::both};
}

/// One step of a system with the figures it is reckoned with.
struct StepFigures {
  std::size_t index = 0;
  int coats_before = 0;    ///< coats of earlier steps: 0 on bare wood
  int sealing_before = 0;  ///< those of them that seal the wood
  SameClass beneath;       ///< the steps right before of the same class
  std::size_t coating_index = 0;
  const Coating* coating = nullptr;
  const Method* method = nullptr;
  Thinning thinning;
  int coats = 0;
  double thirst = 1.0;
};

std::size_t coating_index(const Job& job, const std::string& name) {
  const auto found = std::ranges::find(job.coatings, name, &Coating::name);
  if (found == job.coatings.end()) throw std::out_of_range("no coating is called " + name);
  return static_cast<std::size_t>(found - job.coatings.begin());
}

const Method& method_called(const Job& job, const std::string& key) {
  const auto found = std::ranges::find(job.data.methods, key, &Method::key);
  if (found == job.data.methods.end()) throw std::out_of_range("no method is called " + key);
  return *found;
}

/// The first coat: what the step says, else what the class says for bare wood: over an earlier
/// step's coats the class's thinning has no purpose. Sprayed coats are thinned for the gun.
Thinning thinning_of(const SystemStep& step, const StepFigures& figures) {
  const Coating& coating = *figures.coating;
  const Fraction for_gun = figures.method->sprayed && coating.spray_thinner_of_mix
                               ? thinner_per_coating(coating.spray_thinner_of_mix->value)
                               : Fraction{};
  if (step.first_coat_thinner) return {step.first_coat_thinner->value, for_gun};
  const Fraction first = figures.coats_before == 0 ? coating.first_coat_thinner.value : Fraction{};
  return {std::max(first, for_gun), for_gun};
}

SpreadRate spread_of(const Coating& coating, int coat_on_wood) {
  return coat_on_wood > 1 && coating.spread_later ? coating.spread_later->value
                                                  : coating.spread.value;
}

/// On sealed wood the whole first coat builds film.
NeedSpread film_figures(const NeedSpread& figures, int sealing_before) {
  NeedSpread here = figures;
  if (sealing_before > 0) here.first_coat_film_share.value = 1.0;
  return here;
}

StepFilm::Verdict verdict(const StepFilm& film) {
  const FilmThickness all = film.beneath + film.build.counted_dry;
  if (is_thin(all, film.aim)) return StepFilm::Verdict::thin;
  const bool capped = film.cap > FilmThickness{};
  return capped && all > film.cap ? StepFilm::Verdict::thick : StepFilm::Verdict::good;
}

class VolumeSum {
 public:
  VolumeSum(const Job& job, const std::vector<double>& thirst) : job_(job), thirst_(thirst) {
    tallies_.resize(job.coatings.size());
  }

  void add_batch(std::size_t batch, const BatchAreas& areas) {
    const std::vector<Side> sides = sides_in_order(job_.batches[batch], areas);
    const FinishSystem* system = find_named(job_.systems, job_.batches[batch].system);
    if (sides.empty() || system == nullptr) return;
    int coats_before = 0;
    int sealing_before = 0;
    SameClass beneath;
    for (std::size_t step = 0; step < system->steps.size(); ++step) {
      const Coating& coating = coating_of(*system, step);
      if (step > 0 && coating_of(*system, step - 1).class_key != coating.class_key) beneath = {};
      const StepFigures figures = step_figures({.index = step,
                                                .coats_before = coats_before,
                                                .sealing_before = sealing_before,
                                                .beneath = beneath},
                                               *system);
      volumes_.films.push_back(film_of(batch, *system, figures));
      for (int coat = 1; coat <= figures.coats; ++coat)
        for (const Side side : sides) add_coat(batch, figures, coat, side, areas);
      coats_before += figures.coats;
      if (coating.seals_wood) sealing_before += figures.coats;
      beneath.coats += figures.coats;
      beneath.film += volumes_.films.back().build.counted_dry - lost_over(coating);
    }
  }

  JobVolumes result() {
    for (std::size_t coating = 0; coating < tallies_.size(); ++coating) {
      const Tally& tally = tallies_[coating];
      if (!tally.used) continue;
      const double bare_share = tally.coating > Volume{} ? tally.on_bare_wood / tally.coating : 0.0;
      volumes_.coatings.push_back(
          {.coating = coating,
           .expected = tally.coating,
           .thinner = tally.thinner,
           .nine_in_ten = nine_in_ten_factor(
               tally.sigma, job_.data.need_spread.absorption_sigma.value, bare_share)});
    }
    return std::move(volumes_);
  }

 private:
  struct Tally {
    bool used = false;
    Volume coating, thinner, on_bare_wood;
    double sigma = 0.0;
  };

  /// Fills in a step of which only the place in its system is known.
  StepFigures step_figures(StepFigures figures, const FinishSystem& system) const {
    const SystemStep& step = system.steps[figures.index];
    figures.coating_index = coating_index(job_, step.coating);
    figures.coating = &job_.coatings[figures.coating_index];
    figures.method = &method_called(job_, step.method);
    figures.thinning = thinning_of(step, figures);
    figures.coats = step.coats ? *step.coats : coats_by_film(figures, system);
    if (figures.coating_index < thirst_.size()) figures.thirst = thirst_[figures.coating_index];
    return figures;
  }

  const Coating& coating_of(const FinishSystem& system, std::size_t step) const {
    return job_.coatings[coating_index(job_, system.steps[step].coating)];
  }

  /// What the sanding before the next step takes off.
  static FilmThickness lost_over(const Coating& coating) {
    return coating.builds_film && coating.needs_sanding_between ? coating.lost_to_sanding.value
                                                                : FilmThickness{};
  }

  /// A film of another class comes on top: this one need not reach the aim of a whole finish.
  bool is_covered(const FinishSystem& system, std::size_t step) const {
    const std::string& own = coating_of(system, step).class_key;
    for (std::size_t above = step + 1; above < system.steps.size(); ++above)
      if (coating_of(system, above).builds_film && coating_of(system, above).class_key != own)
        return true;
    return false;
  }

  /// The last step of its class before another class or the end.
  bool is_last_of_class(const FinishSystem& system, std::size_t step) const {
    return step + 1 == system.steps.size() ||
           coating_of(system, step + 1).class_key != coating_of(system, step).class_key;
  }

  /// Coats with a fixed number in the steps right after count as well.
  int coats_by_film(const StepFigures& step, const FinishSystem& system) const {
    if (is_covered(system, step.index)) return step.coating->coats_min.value;
    SameClass other = step.beneath;
    for (std::size_t above = step.index; !is_last_of_class(system, above); ++above) {
      const int coats = system.steps[above + 1].coats.value_or(0);
      const Coating& coating = coating_of(system, above + 1);
      const FilmThickness dry =
          dry_film(wet_film(coating.spread.value), coating.solids.value, step.thinning.later);
      other.coats += coats;
      other.film += (dry - lost_over(coating)) * coats;
    }
    return coats_for_aim(*step.coating, step.thinning, system.wear,
                         film_figures(job_.data.need_spread, step.sealing_before), other);
  }

  StepFilm film_of(std::size_t batch, const FinishSystem& system, const StepFigures& step) const {
    StepFilm film;
    film.batch = batch;
    film.step = step.index;
    film.build = film_build(*step.coating, step.thinning, step.coats,
                            film_figures(job_.data.need_spread, step.sealing_before));
    film.beneath = step.beneath.film;
    if (!is_covered(system, step.index) && is_last_of_class(system, step.index))
      film.aim = step.coating->film_aim.at(static_cast<std::size_t>(system.wear)).value;
    film.cap = step.coating->film_cap.value;
    film.coats_fixed = system.steps[step.index].coats.has_value();
    film.verdict = verdict(film);
    return film;
  }

  void add_coat(std::size_t batch, const StepFigures& step, int coat, Side side,
                const BatchAreas& areas) {
    const int coat_on_wood = step.sealing_before + coat;
    Volume mixed;
    for (std::size_t index = 0; index < grain_count; ++index) {
      const auto grain = static_cast<Grain>(index);
      const double factor = grain_factor(job_.data, *step.coating, grain, coat_on_wood);
      mixed += mixed_need(areas.of(side, grain), spread_of(*step.coating, coat_on_wood),
                          factor * step.thirst, step.method->transfer.value);
    }
    const Mixture mix = mixture(mixed, coat == 1 ? step.thinning.first : step.thinning.later);
    volumes_.coats.push_back({.batch = batch,
                              .step = step.index,
                              .coat = coat,
                              .side = side,
                              .area = areas.of(side),
                              .mixed = mix.mixed,
                              .coating = mix.coating,
                              .thinner = mix.thinner});
    Tally& tally = tallies_[step.coating_index];
    tally.used = true;
    tally.coating += mix.coating;
    tally.thinner += mix.thinner;
    if (coat_on_wood == 1) tally.on_bare_wood += mix.coating;
    tally.sigma = std::max(tally.sigma, step.method->need_sigma.value);
  }

  const Job& job_;
  const std::vector<double>& thirst_;
  JobVolumes volumes_;
  std::vector<Tally> tallies_;  ///< by coating
};

}  // namespace

JobVolumes job_volumes(const Job& job, const SurfaceTakeoff& takeoff,
                       const std::vector<double>& thirst) {
  const std::vector<BatchAreas> areas = areas_by_batch(job, takeoff);
  VolumeSum sum(job, thirst);
  for (std::size_t batch = 0; batch < areas.size(); ++batch) sum.add_batch(batch, areas[batch]);
  return sum.result();
}

}  // namespace tackfree
