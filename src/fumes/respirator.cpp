#include "tackfree/fumes/respirator.hpp"

#include <algorithm>
#include <set>
#include <string>

namespace tackfree {

namespace {

using Kind = Respirator::Kind;

bool warns_of(const Coating& coating, std::string_view what) {
  return std::ranges::find(coating.words.cautions, what) != coating.words.cautions.end();
}

bool warns_of_vapour(const Coating& coating) {
  return std::ranges::any_of(coating.words.cautions,
                             [](const std::string& key) { return key.ends_with("_vapour"); });
}

void add_solvents(const Job& job, const std::vector<SolventShare>& mix,
                  std::set<std::size_t>& solvents) {
  for (const SolventShare& part : mix) {
    const auto named = std::ranges::find(job.data.solvents, part.solvent, &Solvent::key);
    if (named != job.data.solvents.end())
      solvents.insert(static_cast<std::size_t>(named - job.data.solvents.begin()));
  }
}

}  // namespace

bool sprays_isocyanates(const Coating& coating, const Method& method) {
  return method.sprayed && warns_of(coating, "isocyanates");
}

std::optional<Respirator> respirator(const Job& job, const OperationList& list,
                                     const JobVolumes& volumes) {
  std::optional<Respirator> worn;
  const auto at_least = [&](Kind kind) {
    if (!worn) worn.emplace();
    worn->kind = std::max(worn->kind, kind);
  };
  std::set<std::size_t> solvents;
  for (const CoatingNeed& need : volumes.coatings) {
    const Coating& coating = job.coatings.at(need.coating);
    add_solvents(job, coating.solvent_mix, solvents);
    add_solvents(job, coating.cleaner_mix, solvents);
    if (need.thinner > Volume()) add_solvents(job, coating.thinner_mix, solvents);
    if (warns_of_vapour(coating))
      at_least(warns_of(coating, "waterborne_vapour") ? Kind::as_data_sheet : Kind::organic_vapour);
    if (warns_of(coating, "formaldehyde")) {
      at_least(Kind::formaldehyde);
      worn->worn_always = true;
    }
    if (warns_of(coating, "isocyanates")) {
      at_least(Kind::supplied_air);
      worn->against_isocyanates = true;
    }
  }
  for (const Operation& operation : list.operations) {
    if (!operation.method || operation.done || !job.data.methods.at(*operation.method).sprayed)
      continue;
    at_least(Kind::organic_vapour_and_particles);
    worn->worn_always = true;
    worn->with_particle_filter = true;
    if (operation.coating && sprays_isocyanates(job.coatings.at(*operation.coating),
                                                job.data.methods.at(*operation.method)))
      worn->against_sprayed_isocyanates = true;
  }
  for (const std::size_t solvent : solvents) {
    if (job.data.solvents.at(solvent).cartridges_serve) continue;
    at_least(Kind::supplied_air);
    worn->no_cartridges.push_back(solvent);
  }
  return worn;
}

}  // namespace tackfree
