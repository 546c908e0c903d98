#include "tackfree/plan/sanding_choice.hpp"

#include "tackfree/plan/due_dates.hpp"
#include "tackfree/plan/listed_work.hpp"
#include "tackfree/plan/recoat_slack.hpp"
#include "tackfree/schedule/make_schedule.hpp"
#include "tackfree/schedule/missed_windows.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

namespace tackfree {

namespace {

constexpr int most_mixtures = 12;

KeyedCoats missed_in(const DatedWork& work) {
  return missed_windows(work.job, work.list, work.air, work.schedule);
}

std::size_t dates_missed(const DatedWork& work) {
  std::size_t missed = 0;
  for (const DueDate& date : due_dates(work))
    if (!date.ready_in_time()) ++missed;
  return missed;
}

/// Less is better; what is sanded for or held to a window in addition never makes it less.
auto rank(const DatedWork& work) {
  return std::tuple(dates_missed(work), work.schedule.ready_at.value_or(work.schedule.span.end),
                    work.schedule.sessions.size(), work.keyed.size());
}

/// Dates the work once more with what it sands for and holds to windows now.
FewerSessions dated_again(DatedWork& work, const Job& rules, const Dating& how) {
  work.list = listed_work(work);
  FewerSessions answer = schedule_in_sessions(rules, work.list, work.air, how.clocks, how.span,
                                              how.most_sessions, how.effort);
  if (answer.schedule) work.schedule = *answer.schedule;
  return answer;
}

/// Depth first: the first coat that misses its window is held to it, or sanded for. Ends because
/// `left_` falls with each mixture that is dated.
class Mixtures {
 public:
  Mixtures(const DatedWork& relaxed, std::optional<DatedWork> best, const Dating& how)
      : relaxed_(relaxed),
        best_(std::move(best)),
        how_(how),
        rules_(without_missed_dates(relaxed)) {}

  std::optional<DatedWork> best() {
    proved_ = sessions_proved_ = relaxed_.schedule.proof.has_value();
    branch(relaxed_);
    if (best_) best_->schedule.proof = proof();
    return std::move(best_);
  }

 private:
  void branch(const DatedWork& work) {
    const KeyedCoats missed = missed_in(work);
    if (missed.empty()) {
      if (!best_ || rank(work) < rank(*best_)) best_ = work;
      return;
    }
    DatedWork held = work;
    held.in_window[*missed.begin()] = Duration();
    descend(std::move(held));
    DatedWork sanded = work;
    sanded.keyed.insert(*missed.begin());
    descend(std::move(sanded));
  }

  void descend(DatedWork work) {
    if (left_ == 0) proved_ = false;
    if (left_ == 0) return;
    --left_;
    const FewerSessions answer = dated_again(work, rules_, how_);
    if (!answer.schedule) {
      proved_ = proved_ && answer.none;
      return;
    }
    const auto& proof = work.schedule.proof;
    proved_ = proved_ && proof && proof->earliest_ready;
    sessions_proved_ = sessions_proved_ && proof && proof->fewest_sessions;
    if (!best_ || rank(work) < rank(*best_)) branch(work);
  }

  /// Of all mixtures together: what is proved of the relaxed schedule holds for each of them.
  std::optional<Proof> proof() const {
    std::optional<Proof> proof = relaxed_.schedule.proof;
    if (!proof) return proof;
    const Schedule& found = best_->schedule;
    const bool as_soon = proof->earliest_ready && found.ready_at == relaxed_.schedule.ready_at;
    const bool as_few =
        proof->fewest_sessions && found.sessions.size() == relaxed_.schedule.sessions.size();
    proof->earliest_ready = as_soon || proved_;
    proof->fewest_sessions =
        proof->earliest_ready && ((as_soon && as_few) || (proved_ && sessions_proved_));
    if (proof->earliest_ready && found.proof)
      proof->ready_no_sooner_than =
          std::max(proof->ready_no_sooner_than, found.proof->ready_no_sooner_than);
    return proof;
  }

  const DatedWork& relaxed_;
  std::optional<DatedWork> best_;
  const Dating& how_;
  Job rules_;
  int left_ = most_mixtures;
  bool proved_ = true, sessions_proved_ = true;
};

/// A coat that goes on unsanded with less to spare than is wanted.
struct TightCoat {
  CoatPlace place;
  Minutes spare;
};

std::vector<TightCoat> tight_coats(const DatedWork& work, Duration wanted) {
  std::vector<TightCoat> tight;
  for (const RecoatSlack& slack : recoat_slacks(work)) {
    const DatedStep& step = work.schedule.steps[slack.dated_step];
    const Operation& op = work.list.operations[step.operation];
    const Minutes spare = slack.until - step.begin();
    if (to_duration(spare) < wanted) tight.push_back({place_of(op), spare});
  }
  std::ranges::stable_sort(tight, {}, &TightCoat::spare);
  return tight;
}

/// Takes the work with these coats well before the end of their windows if it is ready on the same
/// local day, in no more sessions.
bool takes(DatedWork& work, const std::vector<TightCoat>& coats, const Dating& how) {
  DatedWork roomy = work;
  for (const TightCoat& coat : coats) roomy.in_window[coat.place] = work.job.recoat_to_spare;
  if (!dated_again(roomy, without_missed_dates(work), how).schedule) return false;
  const Zone& zone = work.job.calendar.zone;
  const Schedule& before = work.schedule;
  const Schedule& after = roomy.schedule;
  if (!before.ready_at || !after.ready_at || !missed_in(roomy).empty() ||
      dates_missed(roomy) > dates_missed(work) || after.sessions.size() > before.sessions.size() ||
      zone.local(*after.ready_at).on != zone.local(*before.ready_at).on)
    return false;
  roomy.schedule.proof = before.proof;
  if (roomy.schedule.proof && *after.ready_at > *before.ready_at)
    roomy.schedule.proof->earliest_ready = roomy.schedule.proof->fewest_sessions = false;
  work = std::move(roomy);
  return true;
}

}  // namespace

std::optional<DatedWork> best_by_sanding(const DatedWork& relaxed, std::optional<DatedWork> sanded,
                                         const Dating& how) {
  return Mixtures(relaxed, std::move(sanded), how).best();
}

void leave_room(DatedWork& work, const Dating& how) {
  const Duration wanted = work.job.recoat_to_spare;
  if (wanted <= Duration() || !work.schedule.unplaced.empty()) return;
  const std::vector<TightCoat> tight = tight_coats(work, wanted);
  if (tight.empty() || takes(work, tight, how) || tight.size() == 1) return;
  for (const TightCoat& coat : tight) takes(work, {coat}, how);
}

}  // namespace tackfree
