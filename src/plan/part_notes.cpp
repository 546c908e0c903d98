#include "tackfree/plan/part_notes.hpp"

#include <fmt/format.h>

namespace tackfree {

namespace {

/// A solid board this wide moves enough to cup when only one face is sealed. Common practice, no
/// source for the figure.
constexpr Length wide_board = millimetres(200);

void cupping_note(const Part& part, std::vector<Note>& notes) {
  const Board* board = std::get_if<Board>(&part.shape);
  if (board == nullptr || part.material != Material::solid_wood || board->width < wide_board)
    return;
  if (part.coated.contains(Face::top) == part.coated.contains(Face::bottom)) return;
  notes.push_back(
      {"one face only",
       fmt::format("\"{}\" is a wide solid board coated on one face only: it takes up "
                   "and gives off moisture on the other and cups. Coat both faces alike.",
                   part.name)});
}

void allowance_note(const Part& part, const EstimatingAllowances& allowances,
                    std::vector<Note>& notes) {
  const auto* frame = std::get_if<EstimatedFrame>(&part.shape);
  if (frame == nullptr) return;
  const Sourced<double>& allowance = frame->louvred ? allowances.louvred : allowances.framed;
  notes.push_back(
      {"estimating allowance",
       fmt::format("\"{}\" counts {:.4g} times its flat face on each side ({}{}{}). That is an "
                   "allowance of estimators, not geometry: give its true sizes for true litres.",
                   part.name, allowance.value, word_for(allowance.origin),
                   allowance.source.empty() ? "" : ": ", allowance.source)});
}

}  // namespace

std::vector<Note> part_notes(const Job& job) {
  std::vector<Note> notes;
  for (const Part& part : job.parts) cupping_note(part, notes);
  for (const Part& part : job.parts) allowance_note(part, job.data.allowances, notes);
  return notes;
}

}  // namespace tackfree
