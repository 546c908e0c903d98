#include "tackfree/words/figure_sources.hpp"

#include "tackfree/words/display_text.hpp"
#include "tackfree/words/step_words.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Collects figures and puts those of one origin and source together.
class Group {
 public:
  explicit Group(std::string title) { group_.title = std::move(title); }

  template <class T>
  void add(std::string_view name, const Sourced<T>& figure, const std::string& text) {
    auto& origins = group_.origins;
    auto place = std::find_if(origins.begin(), origins.end(), [&](const FiguresFrom& from) {
      return from.origin == figure.origin && from.source == figure.source;
    });
    if (place == origins.end()) place = origins.insert(place, {figure.origin, figure.source, {}});
    place->figures.push_back(fmt::format("{} {}", name, text));
  }

  FigureGroup sorted() && {
    std::stable_sort(
        group_.origins.begin(), group_.origins.end(),
        [](const FiguresFrom& a, const FiguresFrom& b) { return a.origin < b.origin; });
    return std::move(group_);
  }

 private:
  FigureGroup group_;
};

std::string grits_text(const std::vector<Grit>& grits) {
  std::string text;
  for (const Grit grit : grits) text += fmt::format("{}P{}", text.empty() ? "" : " ", grit.p);
  return text;
}

void add_film(Group& group, const Coating& coating, const std::set<Wear>& wears,
              const Figures& figures) {
  constexpr std::array<std::string_view, 3> names{"light", "normal", "hard"};
  group.add("spread", coating.spread, figures.spread(coating.spread.value).text());
  group.add("solids", coating.solids, percent_text(coating.solids.value));
  group.add("first coat on bare wood x", coating.bare_factor,
            factor_text(coating.bare_factor.value));
  group.add("first coat thinned by", coating.first_coat_thinner,
            percent_text(coating.first_coat_thinner.value));
  if (coating.spread_later)
    group.add("spread of later coats", *coating.spread_later,
              figures.spread(coating.spread_later->value).text());
  if (coating.spray_thinner_of_mix)
    group.add("thinner in a sprayed mix", *coating.spray_thinner_of_mix,
              percent_text(coating.spray_thinner_of_mix->value));
  for (const Wear wear : wears) {
    if (!coating.builds_film) break;
    const auto& aim = coating.film_aim.at(static_cast<std::size_t>(wear));
    group.add(fmt::format("film aim for {} wear", names.at(static_cast<std::size_t>(wear))), aim,
              figures.film(aim.value).text());
  }
  if (coating.builds_film)
    group.add("film cap", coating.film_cap, figures.film(coating.film_cap.value).text());
  if (coating.builds_film)
    group.add("sanding takes off", coating.lost_to_sanding,
              figures.film(coating.lost_to_sanding.value).text());
  group.add("at least", coating.coats_min, fmt::format("{} coats", coating.coats_min.value));
  group.add("at most", coating.coats_max, fmt::format("{} coats", coating.coats_max.value));
  group.add("solvent given off", coating.volatiles,
            figures.density(coating.volatiles.value).text());
  group.add("thinner gives off", coating.thinner_volatiles,
            figures.density(coating.thinner_volatiles.value).text());
  if (coating.flash_point)
    group.add("flash point", *coating.flash_point,
              figures.temperature(coating.flash_point->value).text());
}

void add_drying(Group& group, const Coating& coating) {
  for (std::size_t stage = 0; stage < stage_count; ++stage)
    if (const auto& hours = coating.label_after.at(stage))
      group.add(word_for(static_cast<Stage>(stage)), *hours, "after " + wait_text(hours->value));
  if (coating.recoat_unsanded_within)
    group.add("recoat without sanding within", *coating.recoat_unsanded_within,
              wait_text(coating.recoat_unsanded_within->value));
  const DryingLaw& law = coating.law;
  if (law.driver != DryingLaw::Driver::vapour_deficit && !law.q10)
    group.add("drying speeds up with warmth at", law.activation_energy,
              fmt::format("{:g} kJ/mol",
                          rounded(law.activation_energy.value.in(kilojoules_per_mole), 1)));
  if (law.q10) group.add("drying speeds up for 10 K by", *law.q10, factor_text(law.q10->value));
  group.add("air exponent", law.air_exponent, factor_text(law.air_exponent.value));
  constexpr std::array<std::string_view, 3> depths{"touch", "recoat", "through"};
  for (std::size_t depth = 0; depth < depths.size(); ++depth)
    group.add(fmt::format("film exponent, {},", depths.at(depth)), law.film_exponents.at(depth),
              factor_text(law.film_exponents.at(depth).value));
}

void add_limits(Group& group, const Coating& coating, const Figures& figures) {
  const CoatingLimits& limits = coating.limits;
  const auto degrees = [&](const Sourced<Temperature>& t) {
    return figures.temperature(t.value).text();
  };
  group.add("coat from", limits.put_on_min, degrees(limits.put_on_min));
  group.add("coat up to", limits.put_on_max, degrees(limits.put_on_max));
  group.add("coat up to", limits.humidity_max, humidity_text(limits.humidity_max.value));
  if (limits.humidity_caution)
    group.add("care from", *limits.humidity_caution, humidity_text(limits.humidity_caution->value));
  group.add("until touch-dry not under", limits.hold_min, degrees(limits.hold_min));
  if (limits.hold_put_on_min)
    group.add("stay as warm as for coating for", *limits.hold_put_on_min,
              wait_text(limits.hold_put_on_min->value));
  group.add("above the dew point by", limits.dew_point_margin,
            figures.temperature_difference(limits.dew_point_margin.value).text());
  group.add("stops drying under", coating.law.stops_below, degrees(coating.law.stops_below));
}

void add_care(Group& group, const Coating& coating) {
  const GritAdvice& grits = coating.grits;
  group.add("bare wood", grits.bare, grits_text(grits.bare.value));
  group.add("veneer and plywood", grits.bare_veneer, grits_text(grits.bare_veneer.value));
  const auto one = [&](const char* what, const std::optional<Sourced<Grit>>& grit) {
    if (grit) group.add(what, *grit, grits_text({grit->value}));
  };
  one("after the first coat", grits.after_first);
  one("between coats", grits.between);
  one("before the last coat", grits.before_last);
  const auto time = [&](const char* what, const std::optional<Sourced<Duration>>& length) {
    if (length) group.add(what, *length, duration_text(length->value));
  };
  if (coating.coats_a_day_max)
    group.add("at most", *coating.coats_a_day_max,
              fmt::format("{} coats a day", coating.coats_a_day_max->value));
  time("pot life", coating.pot_life);
  time("left to soak", coating.wipe_off_after);
  time("wiped off within", coating.wipe_off_within);
  group.add("clean-up", coating.clean_up, duration_text(coating.clean_up.value));
  group.add("opened tin keeps", coating.tin_keeps, duration_text(coating.tin_keeps.value));
}

FigureGroup coating_group(const Plan& plan, std::size_t index, const Figures& figures) {
  const Coating& coating = plan.job.coatings.at(index);
  std::set<Wear> wears;
  for (const FinishSystem& system : plan.job.systems)
    for (const SystemStep& step : system.steps)
      if (step.coating == coating.name) wears.insert(system.wear);
  Group group(fmt::format("{} ({}), hours at {} and {}", coating.name, coating.class_title,
                          figures.temperature(coating.label_temperature).text(),
                          humidity_text(coating.label_humidity)));
  add_film(group, coating, wears, figures);
  for (const FinishSystem& system : plan.job.systems)
    for (const SystemStep& step : system.steps)
      if (step.coating == coating.name && step.first_coat_thinner)
        group.add(fmt::format("first coat of {} thinned by", cut_to(longest_name, system.name)),
                  *step.first_coat_thinner, percent_text(step.first_coat_thinner->value));
  add_drying(group, coating);
  add_limits(group, coating, figures);
  add_care(group, coating);
  return std::move(group).sorted();
}

FigureGroup method_group(const Method& method, const Figures& figures) {
  Group group(method.title);
  group.add("stays on the work:", method.transfer, percent_text(method.transfer.value));
  group.add("kept by the tool:", method.kept_by_tool,
            figures.volume(method.kept_by_tool.value).text() + " a session");
  group.add("pace", method.rate, figures.work_rate(method.rate.value).text());
  group.add("spread of the need, log-normal,", method.need_sigma,
            factor_text(method.need_sigma.value));
  group.add("solvent that leaves on the way:", method.flashed_off,
            percent_text(method.flashed_off.value));
  return std::move(group).sorted();
}

void add_labour(Group& group, const Labour& labour, const Figures& figures) {
  const auto rate = [&](std::string_view name, const Sourced<WorkRate>& r) {
    group.add(name, r, figures.work_rate(r.value).text());
  };
  const auto time = [&](std::string_view name, const Sourced<Duration>& d) {
    group.add(name, d, duration_text(d.value));
  };
  if (labour.bare_tool == SandingTool::machine)
    rate("sanding bare, by machine, each grit,", labour.sand_bare_machine);
  else
    rate("sanding bare, by hand, each grit,", labour.sand_bare_hand);
  rate("sanding between coats", labour.sand_between);
  rate("dusting off", labour.dust_off);
  time("set-up", labour.set_up);
  time("turning over", labour.turn_over);
  time("fitting hardware", labour.fit_hardware);
  time("dust settles in", labour.dust_settles);
  group.add("a sheet sands bare", labour.abrasive_bare,
            figures.area(labour.abrasive_bare.value).text());
  group.add("a sheet sands between coats", labour.abrasive_between,
            figures.area(labour.abrasive_between.value).text());
}

/// The allowances that parts of the job are estimated with.
void add_allowances(Group& group, const Job& job) {
  for (const bool louvred : {false, true}) {
    const bool used = std::ranges::any_of(job.parts, [&](const Part& part) {
      const auto* frame = std::get_if<EstimatedFrame>(&part.shape);
      return frame != nullptr && frame->louvred == louvred;
    });
    const auto& allowance = louvred ? job.data.allowances.louvred : job.data.allowances.framed;
    if (used)
      group.add(louvred ? "allowance for louvred work x" : "allowance for framed work x", allowance,
                factor_text(allowance.value));
  }
}

/// Waits between two classes that follow each other in a system (rule 5).
void add_pair_waits(Group& group, const Job& job) {
  for (const FinishSystem& system : job.systems)
    for (std::size_t step = 1; step < system.steps.size(); ++step) {
      const Coating* under = find_named(job.coatings, system.steps[step - 1].coating);
      const Coating* over = find_named(job.coatings, system.steps[step].coating);
      if (const auto wait = pair_wait(job.data, *under, *over))
        group.add(fmt::format("{} under {} dries for", cut_to(longest_name, under->name),
                              cut_to(longest_name, over->name)),
                  *wait, wait_text(wait->value));
    }
}

std::string sizes_text(const std::vector<TinSize>& sizes) {
  std::vector<std::string> labels;
  labels.reserve(sizes.size());
  for (const TinSize& size : sizes) labels.push_back(size.label);
  return fmt::format("{}", fmt::join(labels, ", "));
}

/// What is bought where the job names nothing of its own.
void add_shop(Group& group, const Plan& plan, const Figures& figures) {
  const ShopFigures& shop = plan.job.data.shop;
  const bool us = plan.job.units == UnitSystem::us;
  const auto usual = [](const auto& purchases) {
    return std::ranges::any_of(purchases, [](const TinPurchase& p) { return p.usual_sizes; });
  };
  const auto& tins = us ? shop.tins_us : shop.tins_metric;
  if (usual(plan.shopping.coatings)) group.add("usual tins", tins, sizes_text(tins.value));
  const auto& thinner = us ? shop.thinner_us : shop.thinner_metric;
  if (usual(plan.shopping.thinners))
    group.add("usual tins of thinner", thinner, sizes_text(thinner.value));
  if (!plan.shopping.thinners.empty())
    group.add("cleaner a session", shop.cleaner_per_session,
              figures.volume(shop.cleaner_per_session.value).text());
  const auto cleaned_with_solvent = [&](const CoatingNeed& need) {
    return !plan.job.coatings.at(need.coating).cleaner_mix.empty();
  };
  if (std::ranges::any_of(plan.volumes.coatings, cleaned_with_solvent))
    group.add("cleaner gives off", shop.cleaner_volatiles,
              figures.density(shop.cleaner_volatiles.value).text());
  group.add("rags a session", shop.rags_per_session,
            fmt::format("{}", shop.rags_per_session.value));
  group.add("sessions a dusting cloth", shop.sessions_per_cloth,
            fmt::format("{}", shop.sessions_per_cloth.value));
  group.add("a dust mask lasts", shop.dust_mask_lasts, duration_text(shop.dust_mask_lasts.value));
}

FigureGroup common_group(const Plan& plan, const Figures& figures) {
  Group group("Grain, film and work");
  for (std::size_t i = 0; i < grain_count; ++i) {
    const auto is_it = [i](const Surface& s) { return s.grain == static_cast<Grain>(i); };
    if (area_where(plan.takeoff, is_it) <= Area()) continue;
    const GrainFactor& factor = plan.job.data.grain_factors.at(i);
    const std::string first = "x " + factor_text(factor.first.value) + " in coat 1";
    const std::string second = "x " + factor_text(factor.second.value) + " in coat 2";
    const bool alike =
        factor.first.origin == factor.second.origin && factor.first.source == factor.second.source;
    group.add(grain_titles.at(i), factor.first,
              alike ? fmt::format("{}, {}", first, second) : first);
    if (!alike) group.add(grain_titles.at(i), factor.second, second);
  }
  add_allowances(group, plan.job);
  const NeedSpread& need = plan.job.data.need_spread;
  const auto done = [&](OperationKind kind) {
    return std::any_of(plan.list.operations.begin(), plan.list.operations.end(),
                       [&](const Operation& op) { return op.kind == kind; });
  };
  if (done(OperationKind::raise_grain))
    group.add("raised grain dries in", plan.job.data.labour.raised_grain_dries,
              duration_text(plan.job.data.labour.raised_grain_dries.value));
  const Labour& labour = plan.job.data.labour;
  if (done(OperationKind::wipe_off))
    group.add("wiping off", labour.wipe_off, figures.work_rate(labour.wipe_off.value).text());
  if (done(OperationKind::fill_pores)) {
    group.add("filling pores", labour.fill_pores,
              figures.work_rate(labour.fill_pores.value).text());
    group.add("paste filler dries in", labour.filler_dries,
              duration_text(labour.filler_dries.value));
  }
  if (std::any_of(plan.list.operations.begin(), plan.list.operations.end(),
                  [](const Operation& op) { return op.pots > 0; }))
    group.add("mixing a pot", labour.mix_pot, duration_text(labour.mix_pot.value));
  for (const FinishingTouch& touch : plan.job.data.touches)
    if (std::ranges::any_of(plan.job.systems,
                            [&](const FinishSystem& each) { return each.after == touch.key; }))
      group.add("pace to " + touch.title, touch.rate, figures.work_rate(touch.rate.value).text());
  group.add("spread of the first coat's thirst, log-normal,", need.absorption_sigma,
            factor_text(need.absorption_sigma.value));
  group.add("first coat counts", need.first_coat_film_share,
            percent_text(fraction(need.first_coat_film_share.value)));
  add_pair_waits(group, plan.job);
  add_labour(group, plan.job.data.labour, figures);
  add_shop(group, plan, figures);
  return std::move(group).sorted();
}

void add_solvent(Group& group, const Solvent& solvent, const Figures& figures) {
  group.add(solvent.title + " burns from", solvent.explosive_limit,
            fmt::format("{:g} % in air", rounded(solvent.explosive_limit.value.in(percent), 2)));
  group.add(solvent.title + " at work, 8 h,", solvent.limit_8h,
            figures.exposure(solvent.limit_8h.value).text());
  if (solvent.limit_15min)
    group.add(solvent.title + " at work, 15 min,", *solvent.limit_15min,
              figures.exposure(solvent.limit_15min->value).text());
  group.add(solvent.title + " leaves a wet coat at", solvent.release,
            fmt::format("{:g} an hour", rounded(solvent.release.value.in(per_hour), 3)));
}

std::string title_of(const FinishingData& data, const std::string& solvent) {
  const auto found = std::ranges::find(data.solvents, solvent, &Solvent::key);
  return found == data.solvents.end() ? solvent : found->title;
}

/// What the estimate of vapour rests on; nothing where there is none.
FigureGroup vapour_group(const Plan& plan, const Figures& figures) {
  Group group("Vapour and airing");
  const AirChanges& changes = plan.job.data.air_changes;
  const auto rate = [&](std::string_view name, const Sourced<ChangeRate>& r) {
    group.add(name, r, fmt::format("{:g} air changes an hour", rounded(r.value.in(per_hour), 2)));
  };
  rate("closed", changes.closed);
  rate("ajar", changes.ajar);
  rate("open", changes.open);
  rate("without a measured flow at most", changes.most_credited);
  group.add("of a fan's rated flow", changes.fan_delivers,
            percent_text(changes.fan_delivers.value));
  group.add("bad mixing, one opening, /", changes.mixing_one_opening,
            factor_text(changes.mixing_one_opening.value));
  group.add("bad mixing, through draft, /", changes.mixing_through_draft,
            factor_text(changes.mixing_through_draft.value));
  for (const std::size_t solvent : plan.room->solvents)
    add_solvent(group, plan.job.data.solvents.at(solvent), figures);
  for (const CoatingNeed& need : plan.volumes.coatings)
    for (const SolventShare& each : plan.job.coatings.at(need.coating).solvent_mix)
      group.add(fmt::format("{} in what {} gives off", title_of(plan.job.data, each.solvent),
                            cut_to(longest_name, plan.job.coatings.at(need.coating).name)),
                each.share, percent_text(each.share.value));
  return std::move(group).sorted();
}

}  // namespace

std::vector<FigureGroup> figure_groups(const Plan& plan, const Figures& figures) {
  std::vector<FigureGroup> groups;
  for (const CoatingNeed& need : plan.volumes.coatings)
    groups.push_back(coating_group(plan, need.coating, figures));
  std::set<std::size_t> methods;
  for (const Operation& op : plan.list.operations)
    if (op.method && methods.insert(*op.method).second)
      groups.push_back(method_group(plan.job.data.methods.at(*op.method), figures));
  groups.push_back(common_group(plan, figures));
  if (plan.room) groups.push_back(vapour_group(plan, figures));
  return groups;
}

}  // namespace tackfree
