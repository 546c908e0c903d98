#include "tackfree/words/sundry_words.hpp"

#include "tackfree/words/respirator_words.hpp"

#include <cmath>

#include <fmt/format.h>

namespace tackfree {

namespace {

using Item = Sundry::Item;

std::string sessions_text(int sessions) { return count_text(sessions, "session", "sessions"); }

const Method& method_of(const Sundry& sundry, const Job& job) {
  return job.data.methods.at(sundry.method.value());
}

const std::string& coating_name(const Sundry& sundry, const Job& job) {
  return job.coatings.at(sundry.coating.value()).name;
}

std::string what_it_is(const Sundry& sundry, const Job& job) {
  const auto named = [&](const char* one, const char* more) {
    return std::string(sundry.amount == 1 ? one : more);
  };
  switch (sundry.item) {
    case Item::applicator:
      return fmt::format("{}, for {}", method_of(sundry, job).applicator,
                         coating_name(sundry, job));
    case Item::wrap:
      return named("airtight bag or wrap", "airtight bags or wraps");
    case Item::abrasive:
      return fmt::format("{}, P{}", named("abrasive sheet or disc", "abrasive sheets or discs"),
                         sundry.grit.value().p);
    case Item::dusting_cloth:
      return named("cloth", "cloths") + " to take the dust off";
    case Item::for_touch:
      return job.data.touches.at(sundry.touch.value()).with;
    case Item::masking_tape:
      return "masking tape";
    case Item::gloves:
      return named("pair of nitrile gloves", "pairs of nitrile gloves");
    case Item::eye_protection:
      return "eye protection, splash-proof";
    case Item::respirator:
      return std::string(name_of(sundry.respirator.value_or(Respirator{})));
    case Item::suit:
      return "spray suit with a hood";
    case Item::dust_mask:
      return named("dust mask", "dust masks") + ", FFP2 or N95, or better";
    case Item::rag:
      return named("rag", "rags");
    case Item::lidded_can:
      return "metal can with a tight lid, water in it, for oily rags";
    case Item::stirring_stick:
      return named("stirring stick", "stirring sticks");
    case Item::hardener:
      return fmt::format("hardener for {}, as much as its label asks for",
                         coating_name(sundry, job));
    case Item::measuring_cup:
      return "measuring cup or scale";
    case Item::strainer:
      break;
  }
  return named("strainer", "strainers");
}

std::string applicator_use(const Sundry& sundry, const Job& job) {
  const std::string sessions = sessions_text(sundry.sessions);
  if (!method_of(sundry, job).applicator_each_session)
    return fmt::format(
        "cleaned after each of {}{}", sessions,
        sundry.cleanings > 0
            ? fmt::format(", and {} in a pause", count_text(sundry.cleanings, "time", "times"))
            : "");
  return fmt::format(
      "one a session, for {}{}", sessions,
      sundry.cleanings > 0 ? fmt::format(", and {} for after a pause", sundry.cleanings) : "");
}

std::string what_for(const Sundry& sundry, const Job& job, const Figures& figures) {
  switch (sundry.item) {
    case Item::applicator:
      return applicator_use(sundry, job);
    case Item::wrap:
      return "to keep a tool wet between two coats";
    case Item::abrasive:
      return "for " + figures.area(sundry.area).text();
    case Item::dusting_cloth:
      return fmt::format("{}, before {}", job.coatings.at(sundry.coating.value()).words.wipe_with,
                         coating_name(sundry, job));
    case Item::for_touch:
      return fmt::format("to {}", job.data.touches.at(sundry.touch.value()).title);
    case Item::masking_tape:
      return "around what is masked, anew for each coat";
    case Item::gloves:
      return "one pair a session";
    case Item::eye_protection:
      return "for each who mixes, coats or cleans";
    case Item::respirator:
      return fmt::format("for each who coats; worn {}",
                         when_worn(sundry.respirator.value_or(Respirator{})));
    case Item::suit:
      return "for each who sprays";
    case Item::dust_mask:
      return fmt::format("for {:.1f} h of sanding", rounded(sundry.work.in(hours), 1));
    case Item::rag:
      return fmt::format("{} a session, for {}", sundry.each_session,
                         sessions_text(sundry.sessions));
    case Item::lidded_can:
      return "rags with oil finish heat themselves";
    case Item::hardener:
      return "the litres above count it in, ready mixed";
    case Item::measuring_cup:
      return "to mix by the label's ratio";
    case Item::stirring_stick:
    case Item::strainer:
      break;
  }
  return "one a session";
}

/// Up to whole metres, or to whole feet where those are printed.
Length whole_units(Length length, UnitSystem units) {
  const auto up = [](double amount) { return std::ceil(amount - 1e-6); };
  return units == UnitSystem::us ? feet(up(length.in(feet))) : metres(up(length.in(metres)));
}

}  // namespace

SundryText sundry_text(const Sundry& sundry, const Job& job, const Figures& figures) {
  SundryText text{.what = what_it_is(sundry, job),
                  .amount = sundry.amount,
                  .shown = count_text(sundry.amount),
                  .why = what_for(sundry, job, figures)};
  if (sundry.unit() == Sundry::Unit::metre) {
    const Length tape = whole_units(metres(sundry.amount), job.units);
    text.amount = tape.in(metres);
    text.shown = figures.length(tape).text();
  }
  return text;
}

}  // namespace tackfree
