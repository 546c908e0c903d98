// Figure sources: the figures a plan rests on, in words, grouped by where they come from.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// Figures of one origin and source, each as `solids 45 %`.
struct FiguresFrom {
  Origin origin = Origin::assumed;
  std::string source;
  std::vector<std::string> figures;
};

/// The figures of one coating, method or of the work, in the order of Origin, then as they come.
struct FigureGroup {
  std::string title;
  std::vector<FiguresFrom> origins;
};

/// One group for each coating in use, one for each method in use, one for grain, film and labour.
std::vector<FigureGroup> figure_groups(const Plan& plan, const Figures& figures);

}  // namespace tackfree
