#include "tackfree/words/respirator_words.hpp"

#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

using Kind = Respirator::Kind;

/// Why no cartridge does, as a sentence that begins with a blank.
std::string why_supplied(const Respirator& respirator, const Job& job) {
  if (respirator.against_sprayed_isocyanates)
    return " No filter mask will do: isocyanates have no smell that warns of a leak.";
  if (respirator.against_isocyanates)
    return " Isocyanates have no smell that warns of a spent cartridge.";
  std::vector<std::string_view> names;
  for (const std::size_t solvent : respirator.no_cartridges)
    names.push_back(job.data.solvents.at(solvent).title);
  if (names.empty()) return {};
  return fmt::format(" No cartridge is listed for {}, or nothing is known of it.",
                     fmt::join(names, ", "));
}

}  // namespace

std::string_view name_of(const Respirator& respirator) {
  switch (respirator.kind) {
    case Kind::as_data_sheet:
      break;
    case Kind::organic_vapour:
      return "organic-vapour respirator";
    case Kind::organic_vapour_and_particles:
      return "organic-vapour respirator with a particle filter";
    case Kind::formaldehyde:
      return respirator.with_particle_filter
                 ? "respirator with cartridges for formaldehyde and a particle filter"
                 : "respirator with cartridges for formaldehyde";
    case Kind::supplied_air:
      return "supplied-air respirator";
  }
  return "respirator that the safety data sheet names";
}

std::string_view when_worn(const Respirator& respirator) {
  if (respirator.with_particle_filter) return "whenever you spray";
  return respirator.worn_always ? "whenever you coat" : "only where you cannot air enough";
}

std::string respirator_sentences(const Respirator& respirator, const Job& job) {
  const std::string_view name = name_of(respirator);
  const std::string_view article =
      respirator.kind == Kind::as_data_sheet
          ? "the"
          : (respirator.kind <= Kind::organic_vapour_and_particles ? "an" : "a");
  const std::string worn =
      respirator.worn_always
          ? fmt::format(" Wear {} {} that fits {}.", article, name, when_worn(respirator))
          : fmt::format(" Where you cannot air enough, {}wear {} {}.",
                        respirator.kind == Kind::supplied_air ? "do not coat, or " : "", article,
                        name);
  return worn + why_supplied(respirator, job) + " The safety data sheet may ask for more.";
}

std::string_view spraying_condition(const Coating& coating, const Method& method) {
  return sprays_isocyanates(coating, method) ? "only in a booth, on supplied air" : "";
}

}  // namespace tackfree
