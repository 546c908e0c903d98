// Coating: one product in a tin: what is in it, how far it goes, how it dries and what it needs.
#pragma once

#include "tackfree/base/sourced.hpp"
#include "tackfree/base/temperature.hpp"
#include "tackfree/base/units.hpp"
#include "tackfree/model/solvent.hpp"
#include "tackfree/model/tin.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// What a coat has reached. The first five are drying stages (ASTM D1640, ISO 9117); the others
/// say what the finished piece may be asked to bear.
enum class Stage { dust_free, touch, handle, recoat, sand, light_use, hardware, stack, full_cure };
inline constexpr std::size_t stage_count = 9;
constexpr std::size_t index_of(Stage s) { return static_cast<std::size_t>(s); }

/// How drying time grows with film thickness: t ~ (h / h_ref) ^ p, one p for each depth of drying.
enum class Depth { touch, recoat, through };
/// dust-free and touch follow "touch"; handle, recoat and sand "recoat"; the others "through".
constexpr Depth depth_of(Stage s) {
  if (s == Stage::dust_free || s == Stage::touch) return Depth::touch;
  if (s == Stage::handle || s == Stage::recoat || s == Stage::sand) return Depth::recoat;
  return Depth::through;
}

/// The law by which a class dries; the rate itself is computed in air/drying.
struct DryingLaw {
  /// arrhenius: warmth; vapour_deficit: what the air can still take up (waterborne);
  /// vapour_pressure: warmth and the water in the air (moisture cure).
  enum class Driver { arrhenius, vapour_deficit, vapour_pressure };
  std::string name;
  Driver driver = Driver::arrhenius;
  Sourced<MolarEnergy> activation_energy;         ///< not of vapour_deficit, nor with q10
  std::optional<Sourced<double>> q10;             ///< in its place: so much faster for 10 K more
  bool slowed_by_humidity = false;                ///< oxidative: slower above 60 % RH
  Sourced<double> air_exponent;                   ///< n of the air-speed factor
  std::array<Sourced<double>, 3> film_exponents;  ///< by Depth
  Sourced<Temperature> stops_below;
};

/// One row of a label that gives its hours at several temperatures.
struct LabelPoint {
  Temperature at;
  Duration after;
};

/// Conditions for putting a coat on, and until it is touch-dry.
struct CoatingLimits {
  Sourced<Temperature> put_on_min, put_on_max;
  Sourced<Humidity> humidity_max;                     ///< at the start and while coating
  std::optional<Sourced<Humidity>> humidity_caution;  ///< above it a caution is printed
  Sourced<Temperature> hold_min;                      ///< not below this until touch-dry
  std::optional<Sourced<Duration>> hold_put_on_min;   ///< stay above put_on_min this long as well
  Sourced<TemperatureDifference> dew_point_margin;    ///< surface over dew point until touch-dry
};

/// A grit of coated abrasive by the P-scale of FEPA 43-1 / ISO 6344: 80 for P80.
struct Grit {
  int p = 0;
  friend auto operator<=>(const Grit&, const Grit&) = default;
};
/// The grades of the P-scale, coarse to fine. Source: FEPA 43-1 / ISO 6344.
inline constexpr std::array p_grades{12,  16,  20,  24,   30,   36,   40,   50,  60,  80,
                                     100, 120, 150, 180,  220,  240,  280,  320, 360, 400,
                                     500, 600, 800, 1000, 1200, 1500, 2000, 2500};

/// Which grits this class wants.
struct GritAdvice {
  Sourced<std::vector<Grit>> bare;         ///< coarse to fine
  Sourced<std::vector<Grit>> bare_veneer;  ///< plywood and veneer faces
  /// Nothing: not sanded there, the next coat goes on as it is.
  std::optional<Sourced<Grit>> after_first, between, before_last;

  /// The figure for the sanding between coat `coat` (1 for the first) of `coats` and the next one;
  /// nothing when the class needs none there or it is the last coat.
  const std::optional<Sourced<Grit>>& after_coat(int coat, int coats) const {
    static const std::optional<Sourced<Grit>> none;
    if (coat >= coats) return none;
    if (coat == 1) return after_first;
    return coat == coats - 1 ? before_last : between;
  }
};

/// What the coats of earlier jobs have taught: a factor, and how many of them it rests on.
struct Taught {
  double factor = 1.0;
  int coats = 0;
};

/// What the shop and the tin are called in words, for advice and cautions.
struct CoatingWords {
  std::string thinner;                ///< what it is thinned with
  std::string cleaner;                ///< what the tools are cleaned with
  std::string wipe_with;              ///< what takes the sanding dust off before a coat
  std::string solvents;               ///< main solvents
  std::string how_as;                 ///< class whose how-to lines serve where it has none
  std::vector<std::string> cautions;  ///< keys into the caution texts
  std::vector<std::string> advice;    ///< keys into the advice texts, printed once in the plan
  std::vector<std::string> disposal;  ///< keys into the disposal texts
};

/// The dry film a system should have, by wear.
enum class Wear { light, normal, hard };

/// How much it shines, as the tin says.
enum class Sheen { gloss, semi_gloss, satin, matt };

/// A product as the plan uses it: the figures of its class, overridden by the person's own tin.
struct Coating {
  std::string name;         ///< the person's name for it
  std::string class_key;    ///< key in the finishing data
  std::string class_title;  ///< `oil-based polyurethane varnish`

  DryingLaw law;
  Sourced<Fraction> solids;                         ///< by volume
  Sourced<SpreadRate> spread;                       ///< one coat, sealed smooth face, before losses
  std::optional<Sourced<SpreadRate>> spread_later;  ///< of coats after the first, where it differs
  Sourced<double> bare_factor;  ///< more is needed on the first coat on bare wood
  Sourced<int> coats_min, coats_max;
  std::array<Sourced<FilmThickness>, 3> film_aim;  ///< by Wear
  Sourced<FilmThickness> film_cap;
  Sourced<FilmThickness> lost_to_sanding;  ///< off the dry film by each sanding between coats
  Sourced<Fraction> first_coat_thinner;    ///< thinner per volume of coating, first coat
  /// Thinner in the finished mix of every coat that is sprayed.
  std::optional<Sourced<Fraction>> spray_thinner_of_mix;
  Sourced<MassPerVolume> volatiles;  ///< really released
  /// What a litre of the thinner releases: its density, or 0 for water.
  Sourced<MassPerVolume> thinner_volatiles;
  std::vector<SolventShare> solvent_mix;  ///< of what the coating gives off; shares add up to 1
  std::vector<SolventShare> thinner_mix;  ///< of what the thinner gives off
  /// Of what the cleaner of the tools gives off; empty where water cleans them.
  std::vector<SolventShare> cleaner_mix;
  std::optional<Sourced<Temperature>> flash_point;
  std::array<std::optional<Sourced<Duration>>, stage_count> label_after;  ///< by Stage
  /// The lower end where the label gives a range; label_after has the upper one.
  std::array<std::optional<Duration>, stage_count> label_least;
  /// The label's rows at several temperatures, coldest first, by Stage; label_after is then that of
  /// the row nearest to label_temperature.
  std::array<std::vector<LabelPoint>, stage_count> label_points;
  /// How many times the label's drying this tin takes in this person's room, as the log has taught:
  /// lengthens every stage; under 1 it does not shorten what the label has as least.
  double slowness = 1.0;
  /// From earlier jobs with it in the same room: on the need, and on the drying.
  Taught need_taught, drying_taught;
  Temperature label_temperature = celsius(23);
  Humidity label_humidity = humidity_percent(50);
  std::optional<Sourced<Duration>> recoat_unsanded_within;  ///< nothing: no upper limit
  bool needs_sanding_between = true;
  bool builds_film = true;      ///< else it goes into the wood: coats are counted, not micrometres
  bool needs_top_coat = false;  ///< no finish alone: something must follow it
  bool seals_wood = true;       ///< else what goes over it drinks as on bare wood
  bool contains_wax = false;    ///< wax or stearate in it: not everything holds on top
  /// Coats that melt into each other dry as one: no more of them than this in a day, and the last
  /// so many of them together have to dry before the next.
  std::optional<Sourced<int>> coats_a_day_max;
  std::optional<Sourced<Duration>> pot_life;  ///< two-part: how long a mixed pot can be used
  /// Left to soak this long, then wiped off; within that long of being put on. Both or neither.
  std::optional<Sourced<Duration>> wipe_off_after, wipe_off_within;
  std::optional<Sheen> sheen;  ///< as the tin says
  CoatingLimits limits;
  GritAdvice grits;
  Sourced<Duration> clean_up;       ///< per session
  Sourced<Duration> tin_keeps;      ///< opened
  bool dries_by_oxidation = false;  ///< its rags can heat themselves
  bool raises_grain = false;        ///< water in it swells the wood at the first coat
  CoatingWords words;

  std::vector<TinSize> tins;       ///< sizes that can be bought
  std::vector<ShelfTin> on_shelf;  ///< full or part tins at hand
  int line = 0;
};

/// What these are thinned and cleaned with, each once, in their order.
inline std::vector<std::string> liquids_of(const std::vector<Coating>& coatings) {
  std::vector<std::string> liquids;
  for (const Coating& coating : coatings)
    for (const std::string& liquid : {coating.words.thinner, coating.words.cleaner})
      if (!liquid.empty() && std::ranges::find(liquids, liquid) == liquids.end())
        liquids.push_back(liquid);
  return liquids;
}

}  // namespace tackfree
