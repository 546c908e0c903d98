// Finishing data: what the trade knows about coatings, methods, grain, labour and care.
#pragma once

#include "tackfree/base/sourced.hpp"
#include "tackfree/base/units.hpp"
#include "tackfree/model/airing.hpp"
#include "tackfree/model/coating.hpp"
#include "tackfree/model/finish_system.hpp"

#include <array>
#include <string>
#include <vector>

namespace tackfree {

/// How wood is sanded bare.
enum class SandingTool { machine, hand };

/// Labour rates and shop figures; the person's own override them.
struct Labour {
  Sourced<WorkRate> sand_bare_machine, sand_bare_hand, sand_between, dust_off;
  Sourced<Duration> set_up;                       ///< per session
  Sourced<Duration> turn_over;                    ///< per batch
  Sourced<Duration> fit_hardware;                 ///< per batch
  Sourced<Duration> dust_settles;                 ///< no coat for this long after sanding
  Sourced<Area> abrasive_bare, abrasive_between;  ///< what one sheet or disc serves
  Sourced<Duration> raised_grain_dries;           ///< after damping the bare wood
  SandingTool bare_tool = SandingTool::machine;
};

/// How the first coats drink on each grain, beyond a smooth face.
enum class Grain { face, long_edge, end, plywood_edge };
struct GrainFactor {
  Sourced<double> first, second;
};
inline constexpr std::size_t grain_count = 4;

/// Spread of the first coat's absorption from job to job, and other figures of the litre formula.
struct NeedSpread {
  Sourced<double> absorption_sigma;
  Sourced<FilmThickness> lost_to_sanding;  ///< off the dry film by each sanding between coats
  Sourced<double> first_coat_film_share;   ///< of the first coat on bare wood, what builds film
};

/// A text with its key: how-to lines, advice and cautions.
struct Advice {
  std::string key;
  std::vector<std::string> lines;
};
struct Caution {
  std::string key;
  std::string word;  ///< WARNING, CAUTION or NOTICE, by the meaning they have in ANSI Z535.4
  std::string hazard, consequence, avoid;
  Origin origin = Origin::practice;
  std::string source;
};

/// Trade texts of the finishing data that the plan prints.
struct TradeTexts {
  std::vector<Advice> how;     ///< by operation, `coat` or `coat/<class>`; the longer key wins
  std::vector<Advice> advice;  ///< by key
  std::vector<Caution> cautions;
  std::string deference;  ///< the closing line of every output
};

/// Everything in data/, as read. Coatings are the classes, with the class title for a name.
struct FinishingData {
  std::vector<Coating> classes;
  std::vector<Method> methods;
  Labour labour;
  std::array<GrainFactor, grain_count> grain_factors;  ///< by Grain
  NeedSpread need_spread;
  std::vector<Solvent> solvents;
  AirChanges air_changes;  ///< with the person's own figures in place
  TradeTexts texts;
};

}  // namespace tackfree
