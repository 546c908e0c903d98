// Finish system: the coatings in order, how each is put on, and how hard the piece will be used.
#pragma once

#include "tackfree/model/coating.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// A way of putting coats on.
struct Method {
  std::string key;                ///< `brush`
  std::string title;              ///< `brush`
  Sourced<Fraction> transfer;     ///< share of what leaves the tin that stays on the work
  Sourced<Volume> kept_by_tool;   ///< per session
  Sourced<WorkRate> rate;         ///< flat work, one coat
  Sourced<double> need_sigma;     ///< spread of the need from job to job, log-normal
  Sourced<Fraction> flashed_off;  ///< share of the solvent that leaves on the way to the work
  bool sprayed = false;
  std::string applicator;                ///< what to have at hand for it: `foam roller sleeves`
  bool applicator_each_session = false;  ///< a new one each session; else one for the job
  std::vector<std::string> cautions;     ///< keys into the caution texts
};

/// One coating of a system with its run of coats.
struct SystemStep {
  std::string name;          ///< `varnish`; part of each step's identity
  std::string coating;       ///< name of a Coating
  std::string method;        ///< key of a Method
  std::optional<int> coats;  ///< fixed number; nothing: from the film aim
  std::optional<Sourced<Fraction>> first_coat_thinner;  ///< overrides the coating's
  int line = 0;
  bool fill_pores = false;  ///< the pores are filled with paste before its first coat
};

struct FinishSystem {
  std::string name;
  Wear wear = Wear::normal;
  std::vector<SystemStep> steps;
  int line = 0;
  bool clear_build = false;  ///< satin or matt in the last coat only
  std::string after;         ///< key of the FinishingTouch after the last coat; empty for none
};

}  // namespace tackfree
