#include "tackfree/input/solvent_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/input/names_of.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::string_view unnamed = "unnamed";
constexpr NumberRange ppm_range{0.001, 10000, "ppm"};
constexpr NumberRange mg_range{0.01, 20000, "mg/m3"};

/// A limit under `limit_8h_mg_per_m3` or `limit_8h_ppm`.
std::optional<Sourced<MassPerVolume>> read_limit(FigureReader& figures, const std::string& name,
                                                 MolarMass molar_mass) {
  std::optional<Sourced<MassPerVolume>> limit;
  figures.read(limit, name + "_mg_per_m3", mg_range, milligrams_per_cubic_metre);
  std::optional<Sourced<Fraction>> parts;
  figures.read(parts, name + "_ppm", ppm_range, fraction);
  if (limit && parts)
    figures.object().report(name + "_ppm", "wanted the limit in mg/m3 or in ppm, not both");
  if (parts)
    limit = sourced(from_ppm(parts->value.in(fraction), molar_mass), parts->origin, parts->source);
  return limit;
}

Solvent read_solvent(JsonCursor& object, const SourceNames& sources) {
  Solvent solvent;
  solvent.key = object.path();
  solvent.title = object.text(needed("title")).value_or("");
  for (const JsonNode* word : object.texts(needed("known_as")))
    solvent.known_as.push_back(word->text);
  solvent.limits_by = object.text(needed("limits_by")).value_or("");
  solvent.cartridges_serve = object.flag(needed("cartridges_serve")).value_or(false);
  if (auto inner = object.object(needed("figures"))) {
    FigureReader figures(*inner, sources);
    figures.read(solvent.molar_mass, "molar_mass_g_per_mol", {10, 1000, "g/mol"}, grams_per_mole);
    figures.read(solvent.explosive_limit, "explosive_limit_pct", {0.1, 50, "% by volume"}, percent);
    figures.read(solvent.flash_point, "flash_point", {-60, 400, "C"});
    figures.read(solvent.release, "release_per_h", {0.001, 100, "per hour"}, per_hour);
    if (const auto limit = read_limit(figures, "limit_8h", solvent.molar_mass.value))
      solvent.limit_8h = *limit;
    else
      inner->report("limit_8h_mg_per_m3", "is missing; this key is needed, or limit_8h_ppm");
    solvent.limit_15min = read_limit(figures, "limit_15min", solvent.molar_mass.value);
    inner->refuse_unknown();
  }
  object.refuse_unknown();
  return solvent;
}

}  // namespace

MassPerVolume from_ppm(double ppm, MolarMass molar_mass) {
  // Source: as in the header.
  constexpr double litres_per_mole = 24.45;
  return milligrams_per_cubic_metre(ppm * molar_mass.in(grams_per_mole) / litres_per_mole);
}

std::vector<Solvent> read_solvents(JsonCursor& file, const SourceNames& sources) {
  std::vector<Solvent> solvents;
  for (JsonCursor& object : file.named_objects()) solvents.push_back(read_solvent(object, sources));
  if (!file.has(unnamed)) file.report(unnamed, "is missing; it stands for what no text names");
  return solvents;
}

void read_air_changes(FigureReader& figures, AirChanges& changes) {
  constexpr NumberRange per_hour_range{0, 200, "air changes per hour"};
  constexpr NumberRange mixing{1, 10};
  figures.read(changes.closed, "closed_per_h", per_hour_range, per_hour);
  figures.read(changes.ajar, "ajar_per_h", per_hour_range, per_hour);
  figures.read(changes.open, "open_per_h", per_hour_range, per_hour);
  if (figures.in_finishing_data()) {
    figures.read(changes.most_credited, "most_credited_per_h", per_hour_range, per_hour);
    figures.read(changes.fan_delivers, "fan_delivers_pct", {1, 100, "%"}, percent);
    figures.read(changes.mixing_one_opening, "mixing_one_opening", mixing);
    figures.read(changes.mixing_through_draft, "mixing_through_draft", mixing);
  } else if (figures.has("mixing_factor")) {
    figures.read(changes.mixing_one_opening, "mixing_factor", mixing);
    changes.mixing_through_draft = changes.mixing_one_opening;
  }
}

std::vector<SolventShare> read_solvent_mix(JsonCursor& object, const std::vector<Solvent>& solvents,
                                           const SourceNames* sources) {
  const std::vector<std::string> known = names_of(solvents, &Solvent::key);
  std::vector<SolventShare> mix;
  Fraction sum;
  for (JsonCursor& entry : object.objects("solvent_mix")) {
    SolventShare part;
    part.solvent = entry.text(needed("solvent")).value_or("");
    if (!part.solvent.empty() && std::ranges::find(known, part.solvent) == known.end())
      entry.report("solvent", "wanted a solvent of solvents.json", name_hint(part.solvent, known));
    if (!entry.has("share_pct")) entry.report("share_pct", "is missing; this key is needed");
    FigureReader figures =
        sources != nullptr ? FigureReader(entry, *sources) : FigureReader(entry, Origin::label);
    figures.read(part.share, "share_pct", {0.01, 100, "% of what evaporates, by mass"}, percent);
    entry.refuse_unknown();
    sum += part.share.value;
    mix.push_back(std::move(part));
  }
  if (mix.empty()) return mix;
  if (std::abs(sum.in(percent)-100) > 1)
    object.report("solvent_mix",
                  fmt::format("wanted shares that add up to 100 %, not {:g} %", sum.in(percent)));
  for (SolventShare& part : mix) part.share.value = fraction(part.share.value / sum);
  return mix;
}

std::vector<SolventShare> mix_by_text(const std::string& text,
                                      const std::vector<Solvent>& solvents) {
  std::vector<SolventShare> mix;
  for (const Solvent& solvent : solvents)
    if (std::ranges::any_of(solvent.known_as, [&](const std::string& word) {
          return text.find(word) != std::string::npos;
        }))
      mix.push_back({solvent.key, {}});
  if (mix.empty()) mix.push_back({std::string(unnamed), {}});
  for (SolventShare& part : mix)
    part.share = sourced(fraction(1.0 / static_cast<double>(mix.size())), Origin::assumed);
  return mix;
}

}  // namespace tackfree
