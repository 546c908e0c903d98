// Solvent reader: solvents with their limits, and which of them a coating or thinner gives off.
#pragma once

#include "tackfree/input/figure_reader.hpp"
#include "tackfree/model/finishing_data.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// Molar volume of the convention by which industrial hygiene turns ppm into mg/m3: 24.45 L/mol, at
/// 25 C. Source: the convention is from memory; the exact figure is 24.465.
MassPerVolume from_ppm(double ppm, MolarMass molar_mass);

/// Everything in solvents.json. Limits stand in mg/m3 or ppm, as their source gives them. The
/// solvent `unnamed` must be there: it stands for what no text names.
std::vector<Solvent> read_solvents(JsonCursor& file, const SourceNames& sources);

/// How air changes stand in air_changes.json, and in a job as the person's own.
void read_air_changes(FigureReader& figures, AirChanges& changes);

/// The list `solvent_mix` of a class or a tin, when it is there; its shares add up to 100 %.
/// `sources` is nothing in a job, where shares are bare numbers from the label.
std::vector<SolventShare> read_solvent_mix(JsonCursor& object, const std::vector<Solvent>& solvents,
                                           const SourceNames* sources);

/// Solvents that a text such as `toluene, n-butyl acetate` names, in equal shares; the unnamed one
/// when it names none. Source: assumption of this project.
std::vector<SolventShare> mix_by_text(const std::string& text,
                                      const std::vector<Solvent>& solvents);

}  // namespace tackfree
