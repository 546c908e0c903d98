// What the shipped data calls published, held to what its sources print.
#include "tackfree/base/text_file.hpp"

#include <cmath>
#include <filesystem>
#include <map>
#include <optional>
#include <regex>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "shipped_data.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

using Json = nlohmann::ordered_json;
namespace fs = std::filesystem;

struct Row {
  std::string path, key, value, unit, source;
};

/// A figure of the data, `[value, origin, key]`.
struct Figure {
  std::string path, key;
  Json value;
};

std::string file_text(const fs::path& path) {
  Problems problems;
  const auto text = read_text_file(path, problems);
  if (!text) throw std::runtime_error(to_text(problems.front()));
  return *text;
}

std::vector<Row> published_rows() {
  std::vector<Row> rows;
  std::istringstream lines(file_text(TACKFREE_ROOT "/tests/published/figures.csv"));
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with("#")) continue;
    std::istringstream cells(line);
    Row row;
    for (std::string* cell : {&row.path, &row.key, &row.value, &row.unit})
      std::getline(cells, *cell, ';');
    std::getline(cells, row.source);
    rows.push_back(row);
  }
  return rows;
}

std::map<std::string, Json> shipped_files() {
  const fs::path folder = other_data_folder().value_or(fs::path(TACKFREE_ROOT) / "data");
  std::map<std::string, Json> files;
  for (const auto& entry : fs::directory_iterator(folder))
    if (entry.path().extension() == ".json")
      files[entry.path().filename().string()] = Json::parse(file_text(entry.path()));
  return files;
}

void collect(const std::string& path, const Json& node, const char* origin,
             std::vector<Figure>& figures) {
  if (node.is_array() && node.size() > 1 && !node[0].is_string() && node[1] == origin)
    figures.push_back({path, node.size() > 2 ? node[2].get<std::string>() : "", node[0]});
  else if (node.is_structured())
    for (const auto& [key, inner] : node.items()) collect(path + "/" + key, inner, origin, figures);
}

bool covers(const Row& row, const Figure& figure) {
  if (row.key != figure.key) return false;
  if (row.path.find('*') == std::string::npos) return row.path == figure.path;
  static const std::regex star(R"(\*)");
  const std::regex pattern(std::regex_replace(row.path, star, "[^/]+"));
  return std::regex_match(figure.path, pattern);
}

/// g/mol, from the abridged standard atomic weights (CIAAW 2021).
double molar_mass(const std::string& formula) {
  static const std::map<char, double> weights = {{'C', 12.011}, {'H', 1.008}, {'O', 15.999}};
  static const std::regex element(R"(([CHO])(\d*))");
  double sum = 0;
  for (std::sregex_iterator match(formula.begin(), formula.end(), element), end; match != end;
       ++match)
    sum += weights.at((*match)[1].str()[0]) *
           ((*match)[2].length() > 0 ? std::stod((*match)[2]) : 1.0);
  return sum;
}

/// The source's value in the unit of the data's key.
double in_unit_of_data(const Row& row, const std::string& value) {
  if (row.unit == "formula") return molar_mass(value);
  if (row.unit == "F") return (std::stod(value) - 32) / 1.8;
  if (row.unit == "kg/L") return 1000 * std::stod(value);
  return std::stod(value);
}

/// Half of the last digit that the figure is written with; a source rounds no better. Molar masses
/// are given to a hundredth by some and to a tenth by others.
double rounding(const Row& row, const Json& figure) {
  if (row.unit == "formula") return 0.05;
  const std::string text = figure.dump();
  const std::size_t point = text.find('.');
  const auto decimals = point == std::string::npos ? 0 : static_cast<int>(text.size() - point - 1);
  return 0.5 * std::pow(10.0, -decimals) + 1e-9;
}

bool is_what_the_row_says(const Row& row, const Figure& figure) {
  if (!figure.value.is_number()) return false;
  const double found = figure.value.get<double>();
  const std::size_t range = row.value.find("..");
  if (range != std::string::npos && row.value.ends_with(" within"))
    return found >= std::stod(row.value) && found <= std::stod(row.value.substr(range + 2));
  const std::string planned = range == std::string::npos ? row.value : row.value.substr(range + 2);
  return std::abs(found - in_unit_of_data(row, planned)) <= rounding(row, figure.value);
}

/// What is wrong between the data and the rows, one sentence each.
std::vector<std::string> faults(const std::map<std::string, Json>& files,
                                const std::vector<Row>& rows) {
  std::vector<Figure> figures;
  for (const auto& [name, tree] : files) collect(name, tree, "published", figures);
  std::vector<std::string> found;
  std::vector<int> used(rows.size());
  for (const Figure& figure : figures) {
    int covered = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (!covers(rows[i], figure)) continue;
      ++covered;
      ++used[i];
      if (!is_what_the_row_says(rows[i], figure))
        found.push_back(figure.path + " is " + figure.value.dump() + ", its source has " +
                        rows[i].value + " " + rows[i].unit);
    }
    if (covered != 1)
      found.push_back(figure.path + " has " + std::to_string(covered) + " rows by " + figure.key);
  }
  for (std::size_t i = 0; i < rows.size(); ++i)
    if (used[i] == 0) found.push_back("no published figure for " + rows[i].path);
  for (const Row& row : rows)
    if (row.source.empty()) found.push_back("no source for " + row.path);
  return found;
}

}  // namespace

TEST_CASE("every published figure of the shipped data is what its source prints") {
  const auto found = faults(shipped_files(), published_rows());
  for (const std::string& fault : found) FAIL_CHECK(fault);
}

TEST_CASE("a published figure that differs, has no row, or is gone is found") {
  const auto files = shipped_files();
  const auto rows = published_rows();
  REQUIRE(rows.size() > 70);
  struct Planted {
    const char *file, *pointer;
    Json value;
    const char* said;
  };
  const std::vector<Planted> plants = {
      {"solvents.json", "/mineral_spirits/figures/limit_8h_mg_per_m3/0", 3500, "has 350 mg/m3"},
      {"solvents.json", "/toluene/figures/flash_point_c/0", 74, "has 4 C"},
      {"solvents.json", "/turpentine/figures/flash_point_c/0", 36, "has 95 F"},
      {"solvents.json", "/xylene/figures/molar_mass_g_per_mol/0", 107.17, "has C8H10 formula"},
      {"drying_laws.json", "/two_component/activation_energy_kj_per_mol/0", 90, "44..55 within"},
      {"drying_laws.json", "/shellac/activation_energy_kj_per_mol/0", 22, "has 42.3 kJ/mol"},
      {"coatings.json", "/shellac/figures/recoat_after_h/0", 2, "has 2..3 h"},
      {"coatings.json", "/hardwax_oil/figures/dew_point_margin_k/0", 2, "has 3 K"},
      {"coatings.json", "/shellac/figures/sand_after_h",
       Json::array({3, "published", "tm_43_0139"}), "sand_after_h has 0 rows"},
      {"solvents.json", "/ethanol/figures/limit_8h_ppm/1", "practice", "no published figure for"}};
  for (const Planted& plant : plants) {
    CAPTURE(plant.pointer);
    auto spoilt = files;
    spoilt.at(plant.file).at(Json::json_pointer(plant.pointer)) = plant.value;
    const auto found = faults(spoilt, rows);
    REQUIRE(found.size() == 1);
    CHECK(found[0].find(plant.said) != std::string::npos);
  }
}

TEST_CASE("no shipped figure claims a tin or a reading: those are the person's") {
  std::vector<Figure> claimed;
  for (const auto& [name, tree] : shipped_files())
    for (const char* origin : {"label", "measured"}) collect(name, tree, origin, claimed);
  for (const Figure& figure : claimed) FAIL_CHECK(figure.path);
}
