#include "tackfree/fumes/signal_word.hpp"

#include <algorithm>
#include <array>

namespace tackfree {

std::ptrdiff_t gravity(std::string_view word) {
  constexpr std::array<std::string_view, 4> words{"DANGER", "WARNING", "CAUTION", "NOTICE"};
  return std::ranges::find(words, word) - words.begin();
}

std::optional<std::string_view> signal_word(const RoomJudgement& room) {
  if (room.stops()) return "DANGER";
  const double exposure = std::max(room.limit(VapourLimit::fifteen_minutes).share,
                                   room.limit(VapourLimit::eight_hours).share);
  const bool rises = std::ranges::any_of(room.stretches, &StretchJudgement::rises_again);
  if (room.limit(VapourLimit::tenth_explosive).share >= 1 || exposure > 1 || rises)
    return "WARNING";
  if (exposure > 0.5) return "CAUTION";
  return std::nullopt;
}

}  // namespace tackfree
