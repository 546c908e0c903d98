// Told notes: the notes of one kind among those of a plan, for tests.
#pragma once

#include "tackfree/plan/note.hpp"

#include <variant>
#include <vector>

namespace tackfree::testing {

template <class Kind>
std::vector<Kind> notes_of(const std::vector<Note>& notes) {
  std::vector<Kind> found;
  for (const Note& note : notes)
    if (const auto* one = std::get_if<Kind>(&note)) found.push_back(*one);
  return found;
}

/// How often a plain note is among them.
inline std::size_t times_told(const std::vector<Note>& notes, PlainNote what) {
  std::size_t times = 0;
  for (const PlainNote note : notes_of<PlainNote>(notes)) times += note == what ? 1 : 0;
  return times;
}

}  // namespace tackfree::testing
