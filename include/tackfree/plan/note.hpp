// Note: something the person should know about a plan, by its kind and with its quantities.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/base/sourced.hpp"
#include "tackfree/base/time.hpp"
#include "tackfree/base/units.hpp"
#include "tackfree/operations/operation_list.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <variant>

namespace tackfree {

/// A film that does not fit its wear or its class.
struct FilmNote {
  enum class Fault {
    thick,         ///< over what the class bears
    thin,          ///< another coat would help
    thin_at_most,  ///< and the class bears no more coats
  };
  std::size_t batch = 0;
  int coats = 0;
  Fault fault = Fault::thin;
};

/// Coats of one coating go on in air that it bears, but not gladly.
struct DampAirNote {
  std::size_t coating = 0;
  int coats = 0;
  Humidity above;
};

/// A wide solid board coated on one face only cups.
struct OneFaceNote {
  std::size_t part = 0;
};

/// An area that is an estimating allowance, not geometry.
struct AllowanceNote {
  std::size_t part = 0;
  Sourced<double> of_flat_face;  ///< area on each side over the flat face
};

/// One class over another of the same system.
struct PairNote {
  enum class Trust { unknown, holds, doubtful };
  std::size_t system = 0;
  std::size_t step = 0;  ///< of the coating that goes over the one before it
  Trust trust = Trust::unknown;
  std::string say;                ///< of the finishing data
  std::optional<Duration> waits;  ///< of an unknown pair, at label conditions: assumed
};

/// A finish that is to be clear and is built with a dull sheen.
struct SheenNote {
  std::size_t batch = 0;
  std::size_t step = 0;
  int gloss = 0;  ///< coats that gloss would serve better
  int coats = 0;
};

/// A coat that misses the window of the one below and is sanded for.
struct MissedWindowNote {
  CoatPlace coat;
  std::size_t under = 0;  ///< index into Job::coatings
};

/// A coat that is held to a window for which the work before it is put off.
struct PutOffNote {
  CoatPlace coat;
};

/// A coat with less to spare before a window shuts than the job wants.
struct LittleToSpareNote {
  CoatPlace coat;
  Duration spare, wanted;
};

/// Advice of the finishing data that belongs to filled pores.
struct FillerNote {
  std::string advice;
};

/// Sessions that run past the hour after which work is late.
struct LateWorkNote {
  int after = 0;  ///< minute of the day
};

/// A mistake in a line of the log, which is left out.
struct LeftOutNote {
  Problem mistake;
};

/// Mistakes in lines of the log beyond those that are told one by one.
struct MoreLeftOutNote {
  std::size_t mistakes = 0;
};

/// A batch that does not fit its room at once and goes through in lots.
struct LotsNote {
  std::size_t batch = 0;      ///< the first lot
  double takes = 0, has = 0;  ///< the whole batch, the room: square metres, or places
  bool in_places = false;
};

/// A date set for a coat that its batch does not have.
struct LostPinNote {
  std::size_t batch = 0;
  std::size_t pin = 0;
};

/// A coat of the log that went on before what is below was dry.
struct EarlyCoatNote {
  std::size_t operation = 0;
};

/// A coat that may not hold on what is below it.
struct AdhesionNote {
  enum class Cause {
    left_out,    ///< by the log the sanding before it was left out
    window_shut  ///< the coat below took no other unsanded any more, and the log has no sanding
  };
  std::size_t operation = 0;
  Cause cause = Cause::left_out;
};

/// What is known by its kind alone.
enum class PlainNote {
  too_cold_as_aired,    ///< work finds no time in the room as it is aired
  faster_than_label,    ///< by the person's wish waits may be shorter than the label's
  several_people_tried  ///< no plan for several people is proved the best
};

/// A warning or a remark, not a mistake.
using Note = std::variant<FilmNote, DampAirNote, OneFaceNote, AllowanceNote, PairNote, SheenNote,
                          MissedWindowNote, PutOffNote, LittleToSpareNote, FillerNote, LateWorkNote,
                          LeftOutNote, MoreLeftOutNote, LotsNote, LostPinNote, EarlyCoatNote,
                          AdhesionNote, PlainNote>;

}  // namespace tackfree
