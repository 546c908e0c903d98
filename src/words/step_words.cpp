#include "tackfree/words/step_words.hpp"

#include "tackfree/operations/sanding.hpp"
#include "tackfree/schedule/tool_rests.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/how_lines.hpp"
#include "tackfree/words/respirator_words.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

std::string side_words(Side side, const Batch& batch) {
  if (side == Side::back) return ", back";
  if (side == Side::show) return ", show side";
  return batch.sides == Sides::on_points ? ", both sides" : "";
}

std::string coat_words(const Operation& op) {
  return op.coats > 1 ? fmt::format("coat {} of {}", op.coat, op.coats)
                      : fmt::format("coat {}", op.coat);
}

std::string_view parts_words(SandedParts parts) {
  if (parts == SandedParts::all) return "";
  return parts == SandedParts::solid ? " (solid parts only)" : " (sheets only)";
}

std::string grit_words(const Operation& op) {
  return op.grit ? fmt::format(", P{}", op.grit->p) : "";
}

std::string_view told_by(Origin origin) {
  switch (origin) {
    case Origin::label:
      return "on the label";
    case Origin::measured:
      return "as you measured";
    case Origin::published:
      return "as published";
    case Origin::practice:
      return "usual for its kind";
    case Origin::assumed:
      break;
  }
  return "assumed";
}

/// What may be done with a coat that has reached a stage.
std::string may_be(Stage stage) {
  switch (stage) {
    case Stage::handle:
      return "can be handled";
    case Stage::recoat:
      return "can be coated again";
    case Stage::sand:
      return "can be sanded";
    case Stage::hardware:
      return "bears hardware";
    case Stage::stack:
      return "can be stacked";
    default:
      return "is " + reached_words(stage);
  }
}

}  // namespace

std::string_view word_for(Stage stage) {
  switch (stage) {
    case Stage::dust_free:
      return "dust-free";
    case Stage::touch:
      return "touch-dry";
    case Stage::handle:
      return "dry to handle";
    case Stage::recoat:
      return "dry to recoat";
    case Stage::sand:
      return "dry to sand";
    case Stage::light_use:
      return "light use";
    case Stage::hardware:
      return "hardware";
    case Stage::stack:
      return "stacking";
    case Stage::full_cure:
      return "full cure";
  }
  return "dry";
}

std::string_view words_for(Fault fault) {
  switch (fault) {
    case Fault::runs:
      return "runs or sags";
    case Fault::wrinkling:
      return "wrinkles";
    case Fault::fisheyes:
      return "fisheyes";
    case Fault::blush:
      return "blush, a milky haze";
    case Fault::tacky:
      return "still tacky";
    case Fault::sand_through:
      return "sanded through";
  }
  return "";
}

std::string reached_words(Stage stage) {
  if (stage == Stage::full_cure) return "fully cured";
  return depth_of(stage) == Depth::through ? fmt::format("ready for {}", word_for(stage))
                                           : std::string(word_for(stage));
}

const SystemStep* system_step(const Job& job, const Batch& batch, std::size_t step) {
  const FinishSystem* system = find_named(job.systems, batch.system);
  return system == nullptr || step >= system->steps.size() ? nullptr : &system->steps[step];
}

const Coating* coating_of(const Job& job, const Batch& batch, std::size_t step) {
  const SystemStep* found = system_step(job, batch, step);
  return found == nullptr ? nullptr : find_named(job.coatings, found->coating);
}

std::string step_name(const Job& job, const Batch& batch, std::size_t step) {
  const SystemStep* found = system_step(job, batch, step);
  return found == nullptr ? "" : found->name;
}

std::string WorkWords::named_step(const Operation& op) const {
  const Batch& batch = job_.batches.at(op.batch);
  const FinishSystem* system = find_named(job_.systems, batch.system);
  const bool several = system != nullptr && system->steps.size() > 1;
  return several ? step_name(job_, batch, op.step) + " " : "";
}

std::string WorkWords::deed(const Operation& op) const {
  const std::string coating = named_step(op);
  switch (op.kind) {
    case OperationKind::sand_bare:
      return fmt::format("sand bare wood{}{}", grit_words(op), parts_words(parts_sanded(job_, op)));
    case OperationKind::raise_grain:
      return "damp the wood to raise the grain";
    case OperationKind::sand_raised:
      return "sand off the raised grain" + grit_words(op);
    case OperationKind::fill_pores:
      return "fill the pores";
    case OperationKind::sand_filler:
      return "sand the filler" + grit_words(op);
    case OperationKind::dust_off:
      return fmt::format("dust off before {}coat {}", coating, op.coat);
    case OperationKind::coat:
      return coating + coat_words(op);
    case OperationKind::wipe_off:
      return fmt::format("wipe off {}coat {}", coating, op.coat);
    case OperationKind::turn_over:
      return op.side == Side::back ? "turn over, back up" : "turn over";
    case OperationKind::sand_between:
      return fmt::format("{} before {}coat {}{}", op.scuffed ? "scuff by hand" : "sand", coating,
                         op.coat, grit_words(op));
    case OperationKind::fit_hardware:
      return "fit the hardware";
    case OperationKind::finishing_touch:
      return job_.data.touches.at(op.touch.value()).title;
    case OperationKind::repair:
      return fmt::format("repair {}coat {}", coating, op.coat);
  }
  return std::string(word_for(op.kind));
}

std::string WorkWords::place(const Operation& op) const {
  const Batch& batch = job_.batches.at(op.batch);
  const bool coated = op.kind == OperationKind::coat || op.kind == OperationKind::wipe_off;
  std::string_view side;
  if (coated && op.side == Side::back) side = "back";
  if (coated && op.side == Side::show) side = "show side";
  std::string name = job_.batches.size() < 2 ? "" : cut_inside(longest_name, batch.name);
  if (side.empty()) return name;
  return name.empty() ? std::string(side) : fmt::format("{} ({})", name, side);
}

std::string WorkWords::title(const Operation& op) const {
  const Batch& batch = job_.batches.at(op.batch);
  switch (op.kind) {
    case OperationKind::coat:
      return deed(op) + side_words(op.side, batch) + (op.again ? ", once more" : "");
    case OperationKind::dust_off:
    case OperationKind::wipe_off:
      return deed(op) + side_words(op.side, batch);
    case OperationKind::repair:
      return fmt::format("{}{}: {}", deed(op), side_words(op.side, batch),
                         words_for(op.fault.value_or(Fault::runs)));
    default:
      return deed(op);
  }
}

std::string WorkWords::full_title(const Operation& op) const {
  if (job_.batches.size() < 2) return title(op);
  return cut_to(longest_name, job_.batches.at(op.batch).name) + ": " + title(op);
}

std::string_view WorkWords::condition(const Operation& op) const {
  if (op.kind != OperationKind::coat || !op.coating || !op.method) return {};
  return spraying_condition(job_.coatings.at(*op.coating), job_.data.methods.at(*op.method));
}

std::string WorkWords::coat_name(const Operation& op) const {
  return fmt::format("{}coat {}{}", named_step(op), op.coat, op.again ? ", once more" : "");
}

std::string WorkWords::pour(const Operation& op) const {
  if (op.kind != OperationKind::coat || !op.coating) return {};
  const Coating& coating = job_.coatings.at(*op.coating);
  std::string all = figures_.volume_both_ways(op.mixed);
  if (op.thinner <= Volume()) return all;
  const VolumeUnit unit = figures_.volume_unit(op.mixed);
  return fmt::format("{}: {} {} + {} {}", all,
                     figures_.volume_beside(op.thinner, op.mixed, unit).number,
                     cut_to(longest_name, coating.name), figures_.volume(op.thinner, unit).number,
                     coating.words.thinner);
}

std::string StepWords::pour(const Operation& op) const {
  std::string all = WorkWords::pour(op);
  const bool clean = !all.empty() && takes_up_clean_tool(plan_.list, plan_.schedule, op);
  const Volume kept =
      clean && op.method ? job_.data.methods.at(*op.method).kept_by_tool.value : Volume();
  if (kept > Volume()) all += fmt::format(", + {} in the tool", figures_.volume(kept).text());
  return all;
}

std::string WorkWords::rule(Gate gate, const Coating& coating) const {
  return gate_words(gate, coating.limits, figures_);
}

std::string WorkWords::rule_with_origin(Gate gate, const Coating& coating) const {
  return fmt::format("{} [{}]", rule(gate, coating),
                     word_for(origin_of(coating.limits, gate).origin));
}

const DatedStep* StepWords::step_of(std::size_t operation) const {
  const auto& steps = plan_.schedule.steps;
  const auto found = std::find_if(steps.begin(), steps.end(), [operation](const DatedStep& step) {
    return step.operation == operation;
  });
  return found == steps.end() ? nullptr : &*found;
}

std::string StepWords::when(Instant at, const DatedStep& seen_from) const {
  return figures_.local_date(at) == figures_.local_date(seen_from.begin()) ? figures_.clock(at)
                                                                           : figures_.moment(at);
}

std::string StepWords::dried(const Held& held, const DatedStep& step, Reasons reasons) const {
  if (!held.operation || (!held.stage && !held.dry_for)) return {};
  const Operation& coat = plan_.list.operations.at(*held.operation);
  const Operation& own = plan_.list.operations.at(step.operation);
  const std::string whose = coat.batch == own.batch
                                ? ""
                                : " of " + cut_to(longest_name, job_.batches.at(coat.batch).name);
  const std::string side = coat.side == Side::back ? " on the back" : "";
  const std::string name =
      capitalized(fmt::format("{}coat {}{}{}", named_step(coat), coat.coat, side, whose));
  const std::string from = when(held.until, step);
  if (!held.stage)
    return fmt::format("{} has to harden as much as in {} at room temperature: until {}.", name,
                       wait_text(*held.dry_for), from);
  // Coats that melt together dry as one film: the last ones of it, counted from this coat on.
  if (held.films > 1 && own.kind == OperationKind::repair)
    return fmt::format("Where it is twice as thick it {} from {}.", may_be(*held.stage), from);
  if (held.films > 1)
    return fmt::format("The last {} coats{} dry as one film, which {} from {}.", held.films, whose,
                       may_be(*held.stage), from);
  const std::string text = fmt::format("{} {} from {}", name, may_be(*held.stage), from);
  const DatedStep* dried = step_of(*held.operation);
  const auto& label = job_.coatings.at(coat.coating.value_or(0)).label_after;
  const auto& labelled = label.at(index_of(*held.stage));
  if (dried == nullptr || !labelled) return text + ".";
  if (coat.done && coat.done->not_dry_before)
    return text + ": it failed its test, and gets more time.";
  const std::string here =
      wait_text(to_duration(held.until - dried->dries_from.value_or(dried->end())));
  const std::string there = wait_text(labelled->value);
  if (here == there) return fmt::format("{}, after {}.", text, there);
  return fmt::format(
      "{}: {} {} become {} in this air.", text, there,
      reasons == Reasons::binding ? "at room temperature" : told_by(labelled->origin), here);
}

std::string StepWords::reason(const Held& held, const DatedStep& step, Reasons reasons) const {
  const Operation& op = plan_.list.operations.at(step.operation);
  // Rules of the air hold in working hours only: on an earlier day the hour says nothing.
  const bool today = figures_.local_date(held.until) == figures_.local_date(step.begin());
  const std::string until =
      today ? "until " + figures_.clock(held.until) : "through " + figures_.day(held.until);
  switch (held.by) {
    case HeldBy::drying:
      return dried(held, step, reasons);
    case HeldBy::air: {
      if (!held.gate || !op.coating) return {};
      const CoatingLimits& limits = job_.coatings.at(*op.coating).limits;
      return gate_sentence(*held.gate, limits, until, figures_) +
             (reasons == Reasons::binding
                  ? "."
                  : fmt::format(" [{}].", word_for(origin_of(limits, *held.gate).origin)));
    }
    case HeldBy::quiet_hours:
      return fmt::format("Quiet hours: no power sanding {}.", until);
    case HeldBy::coats_a_day:
      return fmt::format("Its coats melt together: no more of them {}.", until);
    case HeldBy::dust:
      if (op.grit) return fmt::format("Wet coats would catch the sanding dust {}.", until);
      return today ? fmt::format("The sanding dust needs {} to settle.", until)
                   : fmt::format("Sanding dust was settling {}.", until);
    case HeldBy::last_plan:
      return "It stays where the last plan had it.";
    case HeldBy::order:
      return "It is put off so that the whole is ready sooner or takes fewer sessions.";
    case HeldBy::pin:
      return fmt::format("You set it for {}.", figures_.day(step.begin()));
    case HeldBy::no_coating_day:
      return fmt::format("You allow no coating {}.", until);
    case HeldBy::not_before:
      return fmt::format(
          "You begin it no sooner than {}.",
          figures_.moment(job_.batches.at(op.batch).rules.not_before.value_or(held.until)));
    case HeldBy::space:
      return fmt::format("There is no space to dry it {}.", until);
    case HeldBy::due:
    case HeldBy::now:
    case HeldBy::previous_step:
    case HeldBy::person:
    case HeldBy::calendar:
      break;
  }
  return {};
}

std::string StepWords::why(const DatedStep& step, Reasons told) const {
  std::vector<std::string> reasons;
  Instant told_until;
  bool graver = false;
  std::optional<HeldBy> slight_told;
  // From the binding reason back: dust and quiet hours are not worth telling before a graver one,
  // nor twice.
  for (auto held = step.held.rbegin(); held != step.held.rend(); ++held) {
    const bool slight = held->by == HeldBy::dust || held->by == HeldBy::quiet_hours;
    if (slight && (graver || slight_told == held->by)) continue;
    if (told == Reasons::binding && !reasons.empty()) break;
    std::string text = reason(*held, step, told);
    if (text.empty()) continue;
    if (slight) slight_told = held->by;
    graver = graver || !slight;
    if (reasons.empty()) told_until = held->until;
    if (std::find(reasons.begin(), reasons.end(), text) == reasons.end())
      reasons.push_back(std::move(text));
  }
  std::reverse(reasons.begin(), reasons.end());
  if (!reasons.empty() && step.held.back().by == HeldBy::calendar &&
      step.held.back().until - told_until >= Minutes(24 * 60))
    reasons.emplace_back("These are your next working hours.");
  return fmt::format("{}", fmt::join(reasons, " "));
}

HowTo::HowTo(const Plan& plan) : numbers_(plan.list.operations.size(), 0) {
  for (const DatedStep& step : plan.schedule.steps) add(plan, step.operation);
  for (const Unplaced& unplaced : plan.schedule.unplaced) add(plan, unplaced.operation);
}

void HowTo::add(const Plan& plan, std::size_t index) {
  const Operation& op = plan.list.operations.at(index);
  std::vector<std::string> lines = how_lines(plan, op);
  if (lines.empty()) return;
  const auto found = std::ranges::find(entries_, lines, &Entry::lines);
  numbers_.at(index) = static_cast<std::size_t>(found - entries_.begin()) + 1;
  Entry& entry = found == entries_.end()
                     ? entries_.emplace_back(Entry{op.kind, {}, std::move(lines)})
                     : *found;
  if (op.kind == OperationKind::coat) entry.coats.insert(op.coat);
}

std::string HowTo::Entry::title() const {
  return coats.empty() ? std::string(word_for(kind))
                       : fmt::format("{} {}", word_for(kind), fmt::join(coats, ", "));
}

std::optional<std::size_t> HowTo::number_of(std::size_t operation) const {
  const std::size_t number = numbers_.at(operation);
  return number == 0 ? std::nullopt : std::optional(number);
}

}  // namespace tackfree
