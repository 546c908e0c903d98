// Step words: what a step is called, what it takes and why it waited, for people to read.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"
#include "tackfree/words/gate_words.hpp"

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// Names of batches and coatings are cut to so many columns inside a line.
inline constexpr std::size_t longest_name = 24;

/// `dry to sand`, `light use`: what a coat or a batch has reached.
std::string_view word_for(Stage stage);
/// `still tacky`, `sanded through`: a fault as it is said.
std::string_view words_for(Fault fault);
/// What it then is: `dry to sand`, `ready for light use`, `fully cured`.
std::string reached_words(Stage stage);

/// The words of the work on one job. They may hold words as the person wrote them: they are not
/// clean yet.
class WorkWords {
 public:
  /// `job` must outlive this.
  explicit WorkWords(const Job& job) : job_(job), figures_(job) {}

  const Figures& figures() const { return figures_; }

  /// What is done, without the side: `coat 2 of 3`, `sand bare wood, P120`.
  std::string deed(const Operation& op) const;
  /// `seat`, of a coat `seat (back)`; without the batch where there is only one.
  std::string place(const Operation& op) const;
  /// `coat 2 of 3, back`, `sand bare wood, P120`, `sand before coat 2, P240`.
  std::string title(const Operation& op) const;
  /// The title after the batch's name, where there is more than one batch.
  std::string full_title(const Operation& op) const;
  /// What a coat is bound to: `only in a booth, on supplied air`; empty for other steps.
  std::string_view condition(const Operation& op) const;
  /// `coat 2`, `stain coat 1` where the system has several steps.
  std::string coat_name(const Operation& op) const;
  /// What to pour: `160 ml: 145 varnish + 15 mineral spirits`; empty for other steps.
  std::string pour(const Operation& op) const;
  /// The rule of the air as gate_words has it.
  std::string rule(Gate gate, const Coating& coating) const;
  /// The same, with the word for where its figure comes from; the sources are told once in a plan.
  std::string rule_with_origin(Gate gate, const Coating& coating) const;

 protected:
  /// The name of the operation's step and a blank, where its system has several steps.
  std::string named_step(const Operation& op) const;

  const Job& job_;
  Figures figures_;
};

/// How much is told of why a step waited: the reason that binds, or all of them with the words for
/// where their figures come from.
enum class Reasons { binding, all_with_origins };

/// The same with the reasons of one plan.
class StepWords : public WorkWords {
 public:
  /// `plan` must outlive this.
  explicit StepWords(const Plan& plan) : WorkWords(plan.job), plan_(plan) {}

  /// What held the step back, in sentences, the binding one last; empty when nothing worth telling
  /// did.
  std::string why(const DatedStep& step, Reasons reasons = Reasons::binding) const;
  /// The same as of any work, with what the tool keeps where it is taken up clean for this coat:
  /// `120 ml, + 90 ml in the tool`.
  std::string pour(const Operation& op) const;

 private:
  const DatedStep* step_of(std::size_t operation) const;
  std::string reason(const Held& held, const DatedStep& step, Reasons reasons) const;
  std::string dried(const Held& held, const DatedStep& step, Reasons reasons) const;
  std::string when(Instant at, const DatedStep& seen_from) const;

  const Plan& plan_;
};

/// The step of the batch's system, and what it puts on; nothing when a name leads nowhere.
const SystemStep* system_step(const Job& job, const Batch& batch, std::size_t step);
const Coating* coating_of(const Job& job, const Batch& batch, std::size_t step);
/// The name of the step; empty when a name leads nowhere.
std::string step_name(const Job& job, const Batch& batch, std::size_t step);

/// The how-to texts of a plan, each distinct one once, numbered from 1 in the order of the steps.
class HowTo {
 public:
  struct Entry {
    OperationKind kind = OperationKind::coat;
    std::set<int> coats;  ///< coats that it tells of; empty for other work
    std::vector<std::string> lines;
    std::string title() const;  ///< `coat 2, 3`
  };

  explicit HowTo(const Plan& plan);

  const std::vector<Entry>& entries() const { return entries_; }
  /// The number of the operation's text; nothing when it has none.
  std::optional<std::size_t> number_of(std::size_t operation) const;

 private:
  void add(const Plan& plan, std::size_t index);

  std::vector<Entry> entries_;
  std::vector<std::size_t> numbers_;  ///< by operation; 0 for none
};

}  // namespace tackfree
