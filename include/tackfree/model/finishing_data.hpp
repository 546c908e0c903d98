// Finishing data: what the trade knows about coatings, methods, grain, labour and care.
#pragma once

#include "tackfree/base/sourced.hpp"
#include "tackfree/base/units.hpp"
#include "tackfree/model/airing.hpp"
#include "tackfree/model/coating.hpp"
#include "tackfree/model/finish_system.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
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
  Sourced<Duration> mix_pot;                      ///< per pot of a two-part coating
  Sourced<WorkRate> wipe_off, fill_pores;
  Sourced<Duration> filler_dries;  ///< paste filler, until it is sanded
  SandingTool bare_tool = SandingTool::machine;
};

/// Kinds of surface that drink differently. An open-pored face is one of ring-porous wood.
enum class Grain {
  face,
  long_edge,
  end,
  plywood_edge,
  fibreboard_edge,
  open_pored_face,
  rough_face
};
inline constexpr std::size_t grain_count = 7;
/// The word of each grain in files, by Grain.
inline constexpr std::array<std::string_view, grain_count> grain_keys{
    "face", "long_edge", "end", "plywood_edge", "fibreboard_edge", "open_pored_face", "rough_face"};
/// The same for people.
inline constexpr std::array<std::string_view, grain_count> grain_titles{
    "face", "long edge", "end grain", "ply edge", "MDF edge", "open-pored", "rough"};

/// How the first coats drink on one grain, beyond a smooth face.
struct GrainFactor {
  Sourced<double> first, second;
};

/// What estimators put on the flat area of each face where true sizes are not known. They hold
/// labour as well as area.
struct EstimatingAllowances {
  Sourced<double> framed, louvred;
};

/// What may go over what (rule 5): the first rule that fits a pair of neighbours counts.
struct FollowRule {
  enum class Verdict { allow, warn, refuse };
  std::string key;
  std::vector<std::string> under, over;  ///< class keys; empty for any
  bool under_has_wax = false;            ///< fits only where the coating under it contains wax
  Verdict verdict = Verdict::warn;
  std::optional<Sourced<Duration>> dry_for;  ///< hours at label conditions, on the clock of `under`
  std::string say;                           ///< the reason; may be empty where it is allowed
  std::string remedy;                        ///< what to do instead
};

/// Spread of the first coat's absorption from job to job, and its share in the film.
struct NeedSpread {
  Sourced<double> absorption_sigma;
  Sourced<double> first_coat_film_share;  ///< of the first coat on bare wood, what builds film
};

/// What shops and shops' customers do: usual sizes, and the small things of a session.
struct ShopFigures {
  Sourced<std::vector<TinSize>> tins_metric, tins_us;        ///< of coatings
  Sourced<std::vector<TinSize>> thinner_metric, thinner_us;  ///< of thinner and cleaner
  Sourced<Volume> cleaner_per_session;                       ///< where water does not clean
  Sourced<MassPerVolume> cleaner_volatiles;                  ///< all of it evaporates
  Sourced<int> rags_per_session;
  Sourced<int> sessions_per_cloth;  ///< of the cloths that take the dust off
  Sourced<Duration> dust_mask_lasts;
};

/// What may be done to a finish after its last coat, such as rubbing out or waxing.
struct FinishingTouch {
  std::string key;    ///< `rub_out`
  std::string title;  ///< `rub out`
  Stage waits_for = Stage::full_cure;
  bool on_films_only = false;  ///< nothing to do on what goes into the wood
  Sourced<WorkRate> rate;
  std::string with;  ///< what to have at hand
  std::vector<std::string> how;
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
  bool comes_first = false;   ///< belongs above everything else that is said
  std::string in_short = {};  ///< the danger and what to do, in one line
};

/// How to get rid of something that is left after the work.
struct Disposal {
  std::string key;
  std::string what;  ///< `Brush wash with solvent`
  std::string act;
  Origin origin = Origin::practice;
  std::string source;
};

/// Trade texts of the finishing data that the plan prints.
struct TradeTexts {
  std::vector<Advice> how;     ///< by operation, `coat` or `coat/<class>`; the longer key wins
  std::vector<Advice> advice;  ///< by key
  std::vector<Caution> cautions;
  std::vector<Disposal> disposal;
  std::string deference;  ///< the closing line of every output
};

/// Everything in data/, as read. Coatings are the classes, with the class title for a name.
struct FinishingData {
  std::vector<Coating> classes;
  std::vector<Method> methods;
  Labour labour;
  std::array<GrainFactor, grain_count> grain_factors;  ///< by Grain
  EstimatingAllowances allowances;
  NeedSpread need_spread;
  ShopFigures shop;
  std::vector<FollowRule> follows;
  std::vector<FinishingTouch> touches;
  std::vector<Solvent> solvents;
  AirChanges air_changes;  ///< with the person's own figures in place
  TradeTexts texts;
};

/// The rule for `over` on top of `under`; nothing for a pair that nobody vouches for. Coatings of
/// one class follow each other.
inline const FollowRule* follow_rule(const FinishingData& data, const Coating& under,
                                     const Coating& over) {
  const auto names = [](const std::vector<std::string>& keys, const std::string& key) {
    return keys.empty() || std::find(keys.begin(), keys.end(), key) != keys.end();
  };
  for (const FollowRule& rule : data.follows)
    if (names(rule.under, under.class_key) && names(rule.over, over.class_key) &&
        (!rule.under_has_wax || under.contains_wax))
      return &rule;
  return nullptr;
}

/// How long a coat of `over` waits on top of `under` beyond the recoat time, in hours at label
/// conditions on the clock of `under`: what the rule says; where no rule knows the pair, as long as
/// `under` takes to harden (its stack stage). Source of that: assumed.
inline std::optional<Sourced<Duration>> pair_wait(const FinishingData& data, const Coating& under,
                                                  const Coating& over) {
  if (const FollowRule* rule = follow_rule(data, under, over)) return rule->dry_for;
  const auto& hard = under.label_after.at(index_of(Stage::stack));
  if (under.class_key == over.class_key || !hard) return std::nullopt;
  return sourced(hard->value, Origin::assumed, "as long as the coat below takes to harden");
}

}  // namespace tackfree
