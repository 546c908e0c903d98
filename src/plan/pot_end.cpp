#include "tackfree/plan/pot_end.hpp"

#include "tackfree/operations/pots.hpp"

namespace tackfree {

std::optional<Instant> pot_end(const Plan& plan, std::size_t operation, Instant begun) {
  const Operation& coat = plan.list.operations.at(operation);
  if (coat.kind != OperationKind::coat || !coat.coating) return std::nullopt;
  const Coating& coating = plan.job.coatings.at(*coat.coating);
  const auto life = pot_life_in(coating, plan.air.at(begun).temperature);
  if (!life) return std::nullopt;
  return begun + whole_minutes_up(*life);
}

}  // namespace tackfree
