#include "tackfree/plan/part_notes.hpp"

namespace tackfree {

namespace {

/// A solid board this wide moves enough to cup when only one face is sealed. Common practice, no
/// source for the figure.
constexpr Length wide_board = millimetres(200);

bool may_cup(const Part& part) {
  const Board* board = std::get_if<Board>(&part.shape);
  if (board == nullptr || part.material != Material::solid_wood || board->width < wide_board)
    return false;
  return part.coated.contains(Face::top) != part.coated.contains(Face::bottom);
}

}  // namespace

std::vector<Note> part_notes(const Job& job) {
  std::vector<Note> notes;
  for (std::size_t i = 0; i < job.parts.size(); ++i)
    if (may_cup(job.parts[i])) notes.emplace_back(OneFaceNote{i});
  const EstimatingAllowances& allowances = job.data.allowances;
  for (std::size_t i = 0; i < job.parts.size(); ++i)
    if (const auto* frame = std::get_if<EstimatedFrame>(&job.parts[i].shape))
      notes.emplace_back(AllowanceNote{i, frame->louvred ? allowances.louvred : allowances.framed});
  return notes;
}

}  // namespace tackfree
