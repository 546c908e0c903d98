#include "tackfree/words/note_words.hpp"

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::string_view may_peel =
    "The coat may peel. Score it in a hidden place, press tape on and pull it off before you rely "
    "on it; if it lifts, sand back to what holds.";

/// The subject of each kind of note.
struct Subject {
  std::string_view operator()(const FilmNote&) const { return "film"; }
  std::string_view operator()(const DampAirNote&) const { return "damp air"; }
  std::string_view operator()(const OneFaceNote&) const { return "one face only"; }
  std::string_view operator()(const AllowanceNote&) const { return "estimating allowance"; }
  std::string_view operator()(const PairNote& note) const {
    return note.trust == PairNote::Trust::holds ? "pair" : "test board";
  }
  std::string_view operator()(const SheenNote&) const { return "sheen"; }
  std::string_view operator()(const MissedWindowNote&) const { return "recoat window"; }
  std::string_view operator()(const PutOffNote&) const { return "recoat window"; }
  std::string_view operator()(const LittleToSpareNote&) const { return "recoat window"; }
  std::string_view operator()(const FillerNote&) const { return "paste filler"; }
  std::string_view operator()(const LateWorkNote&) const { return "late work"; }
  std::string_view operator()(const LeftOutNote&) const { return "log"; }
  std::string_view operator()(const MoreLeftOutNote&) const { return "log"; }
  std::string_view operator()(const LotsNote&) const { return "lots"; }
  std::string_view operator()(const LostPinNote&) const { return "pin"; }
  std::string_view operator()(const EarlyCoatNote&) const { return "early coat"; }
  std::string_view operator()(const AdhesionNote&) const { return "adhesion"; }
  std::string_view operator()(PlainNote note) const {
    switch (note) {
      case PlainNote::too_cold_as_aired:
        return "airing";
      case PlainNote::faster_than_label:
        return "label";
      case PlainNote::several_people_tried:
        break;
    }
    return "people";
  }
};

std::string_view fault_words(FilmNote::Fault fault) {
  switch (fault) {
    case FilmNote::Fault::thick:
      return "build more dry film than this class bears; plan fewer, or it may stay soft and "
             "crack.";
    case FilmNote::Fault::thin:
      return "leave less dry film than this wear asks for; plan another coat, or expect less.";
    case FilmNote::Fault::thin_at_most:
      break;
  }
  return "leave less dry film than this wear asks for, and the class bears no more coats; choose "
         "one that builds more, or expect less.";
}

/// What each note says of one plan.
class Text {
 public:
  Text(const Job& job, const OperationList& list, const Figures& figures)
      : job_(job), list_(list), figures_(figures) {}

  std::string operator()(const FilmNote& note) const {
    return fmt::format("\"{}\": {} coats {}", batch(note.batch).name, note.coats,
                       fault_words(note.fault));
  }

  std::string operator()(const DampAirNote& note) const {
    return fmt::format(
        "{} of the coats of {} go on above {}, where it may turn milky. Wait for drier air, warm "
        "the room, or ask for a retarder.",
        note.coats, job_.coatings.at(note.coating).name, humidity_text(note.above));
  }

  std::string operator()(const OneFaceNote& note) const {
    return fmt::format(
        "\"{}\" is a wide solid board coated on one face only: it takes up and gives off moisture "
        "on the other and cups. Coat both faces alike.",
        job_.parts.at(note.part).name);
  }

  std::string operator()(const AllowanceNote& note) const {
    const Sourced<double>& allowance = note.of_flat_face;
    return fmt::format(
        "\"{}\" counts {:.4g} times its flat face on each side ({}{}{}). That is an allowance of "
        "estimators, not geometry: give its true sizes for true litres.",
        job_.parts.at(note.part).name, allowance.value, word_for(allowance.origin),
        allowance.source.empty() ? "" : ": ", allowance.source);
  }

  std::string operator()(const PairNote& note) const {
    const FinishSystem& system = job_.systems.at(note.system);
    const auto title = [&](std::size_t step) {
      return find_named(job_.coatings, system.steps.at(step).coating)->class_title;
    };
    const std::string pair = fmt::format("System \"{}\" puts {} over {}", system.name,
                                         title(note.step), title(note.step - 1));
    switch (note.trust) {
      case PairNote::Trust::unknown:
        break;
      case PairNote::Trust::holds:
        return fmt::format("{}: {}.", pair, note.say);
      case PairNote::Trust::doubtful:
        return fmt::format("{}: {}. Try the pair on a test board first.", pair, note.say);
    }
    return pair + ": try the pair on a test board first and ask the makers; not every pair holds." +
           (note.waits ? fmt::format(" No rule for the pair is known, so the plan lets the lower "
                                     "coat harden first: {} in the label's air, assumed.",
                                     wait_text(*note.waits))
                       : "");
  }

  std::string operator()(const SheenNote& note) const {
    return fmt::format(
        "Batch \"{}\" is to be clear: put gloss of the same make in place of \"{}\" in {} of {} "
        "coats, as a step of its own before it. That means two tins.",
        batch(note.batch).name, step(note.batch, note.step).coating, note.gloss, note.coats);
  }

  std::string operator()(const MissedWindowNote& note) const {
    const Coating& under = job_.coatings.at(note.under);
    return fmt::format(
        "{}: your hours miss the {} within which {} takes another coat unsanded, so it is "
        "sanded first, when it is dry to sand.",
        named(note.coat), hours_as_given(under.recoat_unsanded_within->value), under.name);
  }

  std::string operator()(const PutOffNote& note) const {
    return named(note.coat) +
           ": the work before it is put off so that it comes while the coat below takes it "
           "unsanded; sanding first would serve the plan's aim less.";
  }

  std::string operator()(const LittleToSpareNote& note) const {
    return fmt::format(
        "{} has {:.1f} h to spare before the coat below takes it unsanded no more; {} would "
        "make the plan ready on a later day or take more sessions.",
        named(note.coat), note.spare.in(hours), hours_as_given(note.wanted));
  }

  std::string operator()(const FillerNote& note) const { return note.advice; }

  std::string operator()(const LateWorkNote& note) const {
    return fmt::format(
        "Some sessions run past {}: working hours allow it, but a tired hand leaves runs.",
        figures_.clock_of_day(note.after));
  }

  std::string operator()(const LeftOutNote& note) const {
    return fmt::format("A line of the log is left out: {}", to_text(note.mistake));
  }

  std::string operator()(const MoreLeftOutNote& note) const {
    return fmt::format(
        "There are {} more mistakes in lines of the log that are left out; tackfree check lists "
        "them all.",
        note.mistakes);
  }

  std::string operator()(const LotsNote& note) const {
    const BatchRules& rules = batch(note.batch).rules;
    const auto space = [&](double amount) {
      return note.in_places ? fmt::format("{:.3g} places", amount)
                            : figures_.area(square_metres(amount)).text();
    };
    return fmt::format(
        "Batch \"{}\" takes {} to dry and \"{}\" has {}: it goes through in {} lots. Parts count "
        "as lying flat; give the batch its own \"space_m2\" where they stand or hang.",
        rules.lot_of, space(note.takes), job_.rooms.at(*rules.room).name, space(note.has),
        rules.lots);
  }

  std::string operator()(const LostPinNote& note) const {
    const Pin& pin = batch(note.batch).rules.pins.at(note.pin);
    return fmt::format(
        "Coat {} of \"{}\" is set for {}, but batch \"{}\" has no such coat: the date holds "
        "nothing.",
        pin.coat, pin.step, figures_.day_of(pin.on), batch(note.batch).name);
  }

  std::string operator()(const EarlyCoatNote& note) const {
    const Done& done = list_.operations.at(note.operation).done.value();
    return fmt::format(
        "{} went on before what is below was dry. It may stay soft, wrinkle, or craze later. The "
        "plan takes it as put on at {}, when waiting would have had it on, and as thick as {:.1f} "
        "coats: assumed. Try it with your thumb before you trust those hours.",
        named(note.operation), figures_.moment(done.counts_from.value()), done.films_wet);
  }

  std::string operator()(const AdhesionNote& note) const {
    if (note.cause == AdhesionNote::Cause::left_out)
      return fmt::format("{}: the sanding before it was left out. {}", named(note.operation),
                         may_peel);
    return fmt::format(
        "{} went on after the coat below had stopped taking another one unsanded, and the log has "
        "no sanding between them. {} If you did sand, log that.",
        named(note.operation), may_peel);
  }

  std::string operator()(PlainNote note) const {
    switch (note) {
      case PlainNote::too_cold_as_aired:
        return "Not all of the work finds a time in the room as you air it: outdoor air cools it, "
               "hours after the coats too. Heat more, coat in milder weather, "
               "or choose a coating that bears more cold.";
      case PlainNote::faster_than_label:
        return "By your wish warm or moving air may shorten waits below the label's hours. The "
               "label knows its varnish better than this plan does.";
      case PlainNote::several_people_tried:
        break;
    }
    return "With several people many orders of work were tried and the best one kept. Work in one "
           "go stays within hours in which the same people are there.";
  }

 private:
  const Batch& batch(std::size_t index) const { return job_.batches.at(index); }

  const SystemStep& step(std::size_t of_batch, std::size_t index) const {
    return find_named(job_.systems, batch(of_batch).system)->steps.at(index);
  }

  /// `Batch "top", finish coat 2`, with `once more` of one that a fault has cost.
  std::string named(const CoatPlace& place) const {
    return fmt::format("Batch \"{}\", {} coat {}{}", batch(place.batch).name,
                       step(place.batch, place.step).name, place.coat,
                       place.again > 0 ? " once more" : "");
  }

  /// The coat that the operation is or belongs to, with its side.
  std::string named(std::size_t operation) const {
    const Operation& op = list_.operations.at(operation);
    return fmt::format("Batch \"{}\", {} coat {}{}", batch(op.batch).name,
                       step(op.batch, op.step).name, op.coat,
                       op.side == Side::both ? "" : fmt::format(" ({})", word_for(op.side)));
  }

  const Job& job_;
  const OperationList& list_;
  const Figures& figures_;
};

}  // namespace

std::string_view subject_of(const Note& note) { return std::visit(Subject(), note); }

bool may_ruin(const Note& note) {
  struct Grave {
    bool operator()(const FilmNote&) const { return true; }
    bool operator()(const DampAirNote&) const { return true; }
    bool operator()(const OneFaceNote&) const { return true; }
    bool operator()(const AllowanceNote&) const { return false; }
    bool operator()(const PairNote& pair) const { return pair.trust != PairNote::Trust::holds; }
    bool operator()(const SheenNote&) const { return false; }
    bool operator()(const MissedWindowNote&) const { return false; }
    bool operator()(const PutOffNote&) const { return false; }
    bool operator()(const LittleToSpareNote&) const { return true; }
    bool operator()(const FillerNote&) const { return false; }
    bool operator()(const LateWorkNote&) const { return false; }
    bool operator()(const LeftOutNote&) const { return true; }
    bool operator()(const MoreLeftOutNote&) const { return true; }
    bool operator()(const LotsNote&) const { return false; }
    bool operator()(const LostPinNote&) const { return true; }
    bool operator()(const EarlyCoatNote&) const { return true; }
    bool operator()(const AdhesionNote&) const { return true; }
    bool operator()(PlainNote note) const { return note != PlainNote::several_people_tried; }
  };
  return std::visit(Grave(), note);
}

std::string note_text(const Note& note, const Job& job, const OperationList& list,
                      const Figures& figures) {
  return std::visit(Text(job, list, figures), note);
}

}  // namespace tackfree
