#include "tackfree/document/material_sections.hpp"

#include "tackfree/document/day_sections.hpp"
#include "tackfree/document/left_over_section.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/sundry_words.hpp"
#include "tackfree/words/tins_words.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

std::string_view word_for(StepFilm::Verdict verdict) {
  switch (verdict) {
    case StepFilm::Verdict::good:
      return "good";
    case StepFilm::Verdict::thin:
      return "thin";
    case StepFilm::Verdict::thick:
      return "thick";
  }
  return "good";
}

/// `clear: sealer (brush), then oil varnish (brush); for normal wear`
std::string system_words(const Job& job, const FinishSystem& system) {
  constexpr std::array<std::string_view, 3> wears{"light", "normal", "hard"};
  std::vector<std::string> steps;
  for (const SystemStep& step : system.steps) {
    const auto method = std::find_if(job.data.methods.begin(), job.data.methods.end(),
                                     [&](const Method& m) { return m.key == step.method; });
    steps.push_back(fmt::format("{} ({})", cut_to(longest_name, step.coating),
                                method == job.data.methods.end() ? step.method : method->title));
  }
  return fmt::format("{}: {}; for {} wear", cut_to(longest_name, system.name),
                     fmt::join(steps, ", then "), wears.at(static_cast<std::size_t>(system.wear)));
}

std::string with_unit(std::string_view word, const Figure& figure) {
  return fmt::format("{} ({})", word, figure.unit);
}

/// What all batches together take for one coat of one coating.
struct CoatSum {
  Area area;
  Volume mixed, coating, thinner;
};

/// The coats of one coating in the order they go on, named by coat, and by system step where the
/// coating serves in several.
std::vector<std::pair<std::string, CoatSum>> coat_sums(const Plan& plan, std::size_t coating) {
  std::vector<std::pair<std::string, int>> places;
  std::vector<CoatSum> sums;
  std::set<std::string> names;
  for (const CoatNeed& need : plan.to_come.coats) {
    if (coating_of(plan.job, plan.job.batches.at(need.batch), need.step) !=
        &plan.job.coatings.at(coating))
      continue;
    const std::string name = step_name(plan.job, plan.job.batches.at(need.batch), need.step);
    const auto place = std::find(places.begin(), places.end(), std::pair(name, need.coat));
    const auto index = static_cast<std::size_t>(place - places.begin());
    if (place == places.end()) {
      places.emplace_back(name, need.coat);
      sums.emplace_back();
      names.insert(name);
    }
    sums.at(index).area += need.area;
    sums.at(index).mixed += need.mixed;
    sums.at(index).coating += need.coating;
    sums.at(index).thinner += need.thinner;
  }
  std::vector<std::pair<std::string, CoatSum>> named;
  for (std::size_t i = 0; i < sums.size(); ++i)
    named.emplace_back(
        fmt::format("{}coat {}", names.size() > 1 ? places[i].first + " " : "", places[i].second),
        sums[i]);
  return named;
}

/// Coat by coat and what the tools keep, down to what is expected from the tins.
void write_coat_table(Page& page, const Plan& plan, const Figures& figures,
                      const CoatingPurchase& purchase, const CoatingNeed& need) {
  const auto sums = coat_sums(plan, purchase.coating);
  Volume largest = purchase.kept_by_tools;
  for (const auto& [name, sum] : sums) largest = std::max(largest, sum.mixed);
  const VolumeUnit unit = figures.volume_unit(largest);
  const auto volume = [&](Volume v) { return figures.volume(v, unit).number; };
  Table table{.head = {"from the tins", with_unit("area", figures.area(Area())),
                       with_unit("mixed", figures.volume(largest, unit)), "finish", "thinner"}};
  for (const auto& [name, sum] : sums)
    table.rows.push_back({name, figures.area(sum.area).number, volume(sum.mixed),
                          volume(sum.coating), volume(sum.thinner)});
  table.rows.push_back(
      {"left in brush and pot, " + count_text(purchase.cleanings, "cleaning", "cleanings"), "-",
       volume(purchase.kept_by_tools), volume(purchase.kept_by_tools), "-"});
  table.total = {"total", "", volume(purchase.expected + need.thinner), volume(purchase.expected),
                 volume(need.thinner)};
  page.table(table);
}

/// What it takes, what is at hand, what to buy, what it costs and what is left: for coatings and
/// thinners alike.
void write_tins(Page& page, const Figures& figures, const TinPurchase& purchase) {
  constexpr std::size_t label_columns = 16;
  const auto say = [&](std::string_view name, const std::string& value) {
    page.paragraph(Lead::labelled(name, label_columns, 2), value);
  };
  page.paragraph(Lead::plain(2),
                 fmt::format("You will likely use {}. Buy for {}, enough in nine jobs out of ten.",
                             held_together(figures.volume_both_ways(purchase.expected)),
                             held_together(figures.volume_both_ways(purchase.nine_in_ten))));
  if (purchase.on_shelf > Volume())
    say("On the shelf", figures.volume_both_ways(purchase.on_shelf));
  for (const ShelfTin& tin : purchase.too_old)
    say("Not counted", fmt::format("{} opened on {}: open for too long",
                                   figures.volume_both_ways(tin.volume), iso_date(*tin.opened_on)));
  say("Buy", tins_text(purchase) + (purchase.usual_sizes && purchase.tins.bought > Volume()
                                        ? " (usual sizes; the job names none)"
                                        : ""));
  if (purchase.tins.priced && purchase.tins.bought > Volume())
    say("Cost", money_text(purchase.tins.cost));
}

/// `0.3 L to thin, 0.5 L for 5 cleanings of the tools`
std::string uses_text(const ThinnerPurchase& thinner, const Figures& figures) {
  std::vector<std::string> uses;
  if (thinner.to_thin > Volume())
    uses.push_back(fmt::format("{} to thin", figures.volume(thinner.to_thin).text()));
  if (thinner.to_clean > Volume())
    uses.push_back(fmt::format("{} for {} of the tools", figures.volume(thinner.to_clean).text(),
                               count_text(thinner.cleanings, "cleaning", "cleanings")));
  return fmt::format("{}", fmt::join(uses, ", "));
}

/// `4 um`, or `1 um (wiping varnish), 4 um (top coat)` where the coatings differ; empty without
/// film.
std::string sanding_losses(const Plan& plan, const Figures& figures) {
  std::vector<std::string> losses, named;
  for (const CoatingNeed& need : plan.volumes.coatings) {
    const Coating& coating = plan.job.coatings.at(need.coating);
    if (!coating.builds_film) continue;
    const std::string loss = figures.film(coating.lost_to_sanding.value).text();
    if (std::find(losses.begin(), losses.end(), loss) == losses.end()) losses.push_back(loss);
    named.push_back(fmt::format("{} ({})", loss, cut_to(longest_name, coating.name)));
  }
  return losses.size() == 1 ? losses.front() : fmt::format("{}", fmt::join(named, ", "));
}

}  // namespace

void write_films(Page& page, const Plan& plan, const Figures& figures) {
  const auto& films = plan.volumes.films;
  if (films.empty()) return;
  page.heading("Coats and film");
  std::set<std::string> used;
  for (const StepFilm& film : films) used.insert(plan.job.batches.at(film.batch).system);
  for (const FinishSystem& system : plan.job.systems)
    if (used.contains(system.name)) page.paragraph(Lead::plain(2), system_words(plan.job, system));
  const std::string unit = figures.film(FilmThickness()).unit;
  Table table{.head = {fmt::format("film in {}", unit), "coats", "wet", "dry 1st", "dry later",
                       "counts", "aim", "cap", "verdict"}};
  bool fixed = false, computed = false;
  for (const StepFilm& film : films) {
    const bool builds = film.cap > FilmThickness();
    const auto number = [&](FilmThickness f, bool there = true) {
      return there ? figures.film(f).number : "-";
    };
    const bool several = std::any_of(films.begin(), films.end(), [&](const StepFilm& other) {
      return other.batch == film.batch && other.step != film.step;
    });
    const std::string step =
        several ? ", " + step_name(plan.job, plan.job.batches.at(film.batch), film.step) : "";
    (film.coats_fixed ? fixed : computed) = true;
    table.rows.push_back({plan.job.batches.at(film.batch).name + step,
                          fmt::format("{}{}", film.build.coats, film.coats_fixed ? "*" : ""),
                          number(film.build.wet), number(film.build.first_dry, builds),
                          number(film.build.later_dry, builds),
                          number(film.beneath + film.build.counted_dry, builds),
                          number(film.aim, film.aim > FilmThickness()), number(film.cap, builds),
                          builds ? std::string(word_for(film.verdict)) : "goes in"});
  }
  page.table(table);
  const auto& figures_used = plan.job.data.need_spread;
  const std::string losses = sanding_losses(plan, figures);
  std::string counts;
  if (!losses.empty())
    counts = fmt::format(
        "What counts is {} of the first coat on bare wood, all of the later ones, less {} for each "
        "sanding between.",
        percent_text(fraction(figures_used.first_coat_film_share.value)), losses);
  page.paragraph(Lead::plain(2),
                 fmt::format("{}{}{}",
                             computed ? "Coats are the fewest that come near the aim, or "
                                        "that the class has. "
                                      : "",
                             fixed ? "* as you fixed them. " : "", counts));
}

void write_products(Page& page, const Plan& plan, const Figures& figures) {
  page.heading("Finish: how much, which tins");
  for (const CoatingPurchase& purchase : plan.shopping.coatings) {
    const Coating& coating = plan.job.coatings.at(purchase.coating);
    page.blank();
    page.subheading(fmt::format("{} ({})", coating.name, coating.class_title));
    for (const CoatingNeed& need : plan.to_come.coatings)
      if (need.coating == purchase.coating) write_coat_table(page, plan, figures, purchase, need);
    write_tins(page, figures, purchase);
  }
  page.paragraph(
      Lead::plain(),
      "A coat takes area / spread x thirst of the grain / share that stays on the work.");
  if (!plan.shopping.thinners.empty()) page.heading("Thinner and cleaner");
  for (const ThinnerPurchase& thinner : plan.shopping.thinners) {
    page.blank();
    page.subheading(fmt::format("{}: {}", thinner.liquid, uses_text(thinner, figures)));
    write_tins(page, figures, thinner);
  }
}

void write_sundries(Page& page, const Plan& plan, const Figures& figures) {
  if (plan.shopping.sundries.empty()) return;
  page.heading("Also have at hand");
  for (const Sundry& sundry : plan.shopping.sundries) {
    const SundryText text = sundry_text(sundry, plan.job, figures);
    page.paragraph(Lead::to_tick(text.shown, 10), fmt::format("{}: {}", text.what, text.why));
  }
}

void write_shopping(Page& page, const Plan& plan, const Figures& figures) {
  write_products(page, plan, figures);
  write_sundries(page, plan, figures);
}

void write_grits(Page& page, const Plan& plan) {
  std::vector<std::pair<std::string, std::string>> lines;  // grits, batches
  for (std::size_t batch = 0; batch < plan.job.batches.size(); ++batch) {
    std::string bare, between;
    for (const Operation& op : plan.list.operations) {
      if (op.batch != batch || !op.grit) continue;
      if (op.kind == OperationKind::sand_bare) bare += fmt::format(" P{}", op.grit->p);
      if (op.kind == OperationKind::sand_between)
        between += fmt::format("; before coat {} P{}", op.coat, op.grit->p);
    }
    if (bare.empty() && between.empty()) continue;
    const std::string grits =
        fmt::format("bare wood{}{}", bare.empty() ? " as it is" : bare, between);
    const auto same = std::find_if(lines.begin(), lines.end(),
                                   [&](const auto& line) { return line.first == grits; });
    if (same == lines.end())
      lines.emplace_back(grits, plan.job.batches[batch].name);
    else
      same->second.append(", ").append(plan.job.batches[batch].name);
  }
  if (lines.empty()) return;
  page.heading("Grits");
  for (const auto& [grits, batches] : lines)
    page.paragraph(Lead::introduced(cut_to(page.columns() / 3, batches), 2), grits);
}

void write_shopping_list(Page& page, const Plan& plan, const Figures& figures) {
  write_title(page, plan, figures);
  page.blank();
  page.paragraph(Lead::labelled("Buy", first_columns), all_tins_text(plan));
  if (!plan.schedule.unplaced.empty())
    page.paragraph(Lead::labelled("Note", first_columns),
                   "some steps found no time; each of their coats counts here as a session of its "
                   "own. `tackfree plan` tells which, and why.");
  write_shopping(page, plan, figures);
  write_tins_left(page, plan, figures);
  page.blank();
  page.paragraph(Lead::plain(),
                 "`tackfree plan` prints the figures behind this list, each with its source.");
  page.blank();
  page.paragraph(Lead::plain(), plan.job.data.texts.deference);
}

}  // namespace tackfree
