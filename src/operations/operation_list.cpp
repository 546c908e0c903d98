#include "tackfree/operations/operation_list.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/operations/finishing_touch.hpp"
#include "tackfree/operations/how_to.hpp"
#include "tackfree/operations/pots.hpp"
#include "tackfree/operations/sanding.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Paste filler is sanded off the surface with this. Source: practice.
constexpr Grit filler_grit{320};

/// Lists the operations of one batch, in order, into `list`.
class BatchOperations {
 public:
  BatchOperations(const Job& job, const SurfaceTakeoff& takeoff, const JobVolumes& volumes,
                  const KeyedCoats& keyed, std::optional<Temperature> warmest, std::size_t batch,
                  OperationList& list)
      : job_(job),
        takeoff_(takeoff),
        volumes_(volumes),
        keyed_(keyed),
        warmest_(warmest),
        batch_(batch),
        list_(list) {
    system_ = find_named(job.systems, job.batches[batch].system);
    area_ = area_where(takeoff, [&](const Surface& s) { return in_batch(s); });
  }

  void add() {
    if (system_ == nullptr || area_ <= Area()) return;
    sand_bare();
    for (std::size_t step = 0; step < system_->steps.size(); ++step) coats_of(step);
    finish();
  }

 private:
  bool in_batch(const Surface& s) const {
    return job_.parts[s.part].batch == job_.batches[batch_].name;
  }

  std::size_t coating_index(std::size_t step) const {
    const Coating* coating = find_named(job_.coatings, system_->steps[step].coating);
    return static_cast<std::size_t>(coating - job_.coatings.data());
  }
  const Coating& coating(std::size_t step) const { return job_.coatings[coating_index(step)]; }

  std::string key(std::size_t step, int coat, Side side, std::string_view what) const {
    return fmt::format("{}/{}/{}/{}/{}", slug(job_.batches[batch_].name),
                       slug(system_->steps[step].name),
                       coat == 0 ? "bare" : fmt::format("coat-{}", coat), word_for(side), what);
  }

  Operation blank(OperationKind kind, std::size_t step, int coat, Side side,
                  std::string_view what) const {
    Operation op;
    op.key = key(step, coat, side, what);
    op.kind = kind;
    op.batch = batch_;
    op.step = step;
    op.coat = coat;
    op.side = side;
    op.area = area_;
    return op;
  }

  std::size_t push(Operation op) {
    op.waits.insert(op.waits.end(), next_waits_.begin(), next_waits_.end());
    next_waits_.clear();
    op.how = how_to(job_.data.texts, op, coating(op.step));
    list_.operations.push_back(std::move(op));
    return list_.operations.size() - 1;
  }

  void then_wait(std::size_t operation, std::optional<Stage> stage = {}, Duration delay = {}) {
    next_waits_.push_back({operation, stage, delay});
  }

  void sand_bare() {
    std::set<Grit> grits;
    for (const Part& part : job_.parts)
      if (part.batch == job_.batches[batch_].name)
        for (const Grit grit : bare_grits(coating(0), part.material)) grits.insert(grit);
    const bool machine = job_.data.labour.bare_tool == SandingTool::machine;
    const WorkRate rate =
        (machine ? job_.data.labour.sand_bare_machine : job_.data.labour.sand_bare_hand).value;
    for (const Grit grit : grits) {
      Operation op =
          blank(OperationKind::sand_bare, 0, 0, Side::both, fmt::format("sand-p{}", grit.p));
      op.area = area_sanded_with(grit);
      op.grit = grit;
      op.power_sanding = machine;
      op.work = op.area / rate;
      op.sheets = op.area / job_.data.labour.abrasive_bare.value;
      const std::size_t at = push(std::move(op));
      then_wait(at);
      last_sanding_ = at;
    }
    if (coating(0).raises_grain && !grits.empty()) raise_grain(*grits.rbegin());
  }

  /// Rule 6: damp the wood, let it dry and take off what has risen, before a waterborne coat.
  void raise_grain(Grit finest) {
    Operation damp = blank(OperationKind::raise_grain, 0, 0, Side::both, "damp");
    damp.work = area_ / job_.data.labour.dust_off.value;
    then_wait(push(std::move(damp)), std::nullopt, job_.data.labour.raised_grain_dries.value);
    Operation sand = blank(OperationKind::sand_raised, 0, 0, Side::both,
                           fmt::format("sand-raised-p{}", finest.p));
    sand.grit = finest;
    sand.work = area_ / job_.data.labour.sand_between.value;
    sand.sheets = area_ / job_.data.labour.abrasive_between.value;
    last_sanding_ = push(std::move(sand));
    then_wait(*last_sanding_);
  }

  Area area_sanded_with(Grit grit) const {
    return area_where(takeoff_, [&](const Surface& s) {
      if (!in_batch(s)) return false;
      const auto grits = bare_grits(coating(0), job_.parts[s.part].material);
      return std::find(grits.begin(), grits.end(), grit) != grits.end();
    });
  }

  void coats_of(std::size_t step) {
    const int coats = coats_in(step);
    for (int coat = 1; coat <= coats; ++coat) {
      const bool first = step == 0 && coat == 1;
      const bool fill = coat == 1 && system_->steps[step].fill_pores;
      if (!first) between(step, coat, fill);
      if (fill) fill_pores(step);
      coat_sides(step, coat, coats);
    }
  }

  int coats_in(std::size_t step) const {
    int coats = 0;
    for (const CoatNeed& need : volumes_.coats)
      if (need.batch == batch_ && need.step == step) coats = std::max(coats, need.coat);
    return coats;
  }

  /// Sanding before coat `coat` of `step`, on the coat under it; without sanding the next coat
  /// waits until the last one may be recoated. Under paste filler nothing is sanded.
  void between(std::size_t step, int coat, bool filled) {
    const std::size_t under = coat == 1 ? step - 1 : step;
    const int under_coats = coats_in(under);
    // Over the last coat of the step below, one more of that step would have been sanded for.
    std::optional<Grit> grit = coat > 1
                                   ? between_grit(coating(under), coat - 1, under_coats)
                                   : between_grit(coating(under), under_coats, under_coats + 1);
    if (!grit && keyed_.contains({batch_, step, coat})) grit = key_grit(coating(under));
    if (filled) grit.reset();
    next_waits_.clear();
    for (const std::size_t side : last_coats_)
      wait_for_film(side, grit ? Stage::sand : Stage::recoat);
    if (coat == 1) wait_for_pair(under, step);
    last_sanding_.reset();
    if (!grit) return;
    const bool scuffed = lies_thin_over_colour(step, coat);
    if (scuffed) grit = finest_grit(coating(under));
    Operation op = blank(OperationKind::sand_between, step, coat, Side::both,
                         fmt::format("sand-p{}", grit->p));
    op.scuffed = scuffed;
    op.coats = coats_in(step);
    op.grit = *grit;
    op.work = area_ / job_.data.labour.sand_between.value;
    op.sheets = area_ / job_.data.labour.abrasive_between.value;
    last_sanding_ = push(std::move(op));
    then_wait(*last_sanding_);
  }

  /// A single coat over what only colours the wood, such as stain: sanded flat it would be cut
  /// through into the colour. Source: practice.
  bool lies_thin_over_colour(std::size_t step, int coat) const {
    int sealing = coat - 1;
    bool coloured = false;
    for (std::size_t below = 0; below < step; ++below) {
      coloured = coloured || !coating(below).seals_wood;
      if (coating(below).seals_wood) sealing += coats_in(below);
    }
    return coloured && sealing == 1;
  }

  /// Rule 4: coats that melt together dry as one, so the last two of them, the last three, and so
  /// on have to reach the stage as well, each from its own first coat on. What went on long ago no
  /// longer counts by itself: its time is over.
  void wait_for_film(std::size_t coat, Stage stage) {
    then_wait(coat, stage);
    const Operation& last = list_.operations[coat];
    const auto& most = job_.coatings[*last.coating].coats_a_day_max;
    const std::vector<std::size_t>& melted = melted_[last.side];
    if (!most || melted.empty() || melted.back() != coat) return;
    for (int films = 2; films <= most->value; ++films) {
      const auto back = static_cast<std::size_t>(films);
      if (back > melted.size()) return;
      next_waits_.push_back(
          {.operation = melted[melted.size() - back], .stage = stage, .films = films});
    }
  }

  /// Rule 5: some pairs of classes wait longer, by the clock of the coat below.
  void wait_for_pair(std::size_t under, std::size_t over) {
    const auto wait = pair_wait(job_.data, coating(under), coating(over));
    if (!wait) return;
    for (const std::size_t side : last_coats_)
      next_waits_.push_back({.operation = side, .dry_for = wait->value});
  }

  /// Paste filler for open pores: rubbed in, left until hard, sanded off the surface.
  void fill_pores(std::size_t step) {
    const Labour& labour = job_.data.labour;
    Operation fill = blank(OperationKind::fill_pores, step, 1, Side::both, "fill-pores");
    fill.work = area_ / labour.fill_pores.value;
    next_waits_.push_back({.operation = push(std::move(fill)), .delay = labour.filler_dries.value});
    Operation sand = blank(OperationKind::sand_filler, step, 1, Side::both, "sand-filler");
    sand.grit = filler_grit;
    sand.work = area_ / labour.sand_between.value;
    sand.sheets = area_ / labour.abrasive_between.value;
    last_sanding_ = push(std::move(sand));
    then_wait(*last_sanding_);
  }

  /// Rule 12: a test board, or the first of many, is looked at before the rest is coated. Of a
  /// batch that goes through in lots every lot counts.
  void wait_for_batch(Operation& op) const {
    const std::string& after = job_.batches[batch_].after;
    if (after.empty()) return;
    for (const Outcome& outcome : list_.outcomes)
      if (const Batch& first = job_.batches[outcome.batch];
          outcome.stage == Stage::handle && (first.name == after || first.rules.lot_of == after))
        for (const std::size_t coat : outcome.coats)
          op.waits.push_back({.operation = coat, .stage = Stage::handle});
  }

  /// Right before a side is coated: what lay on it since it was sanded, while the other side dried,
  /// or since another coating came on it, comes off.
  void dust_off(const CoatNeed& need) {
    Operation op = blank(OperationKind::dust_off, need.step, need.coat, need.side, "dust-off");
    op.area = need.area;
    op.work = need.area / job_.data.labour.dust_off.value;
    const bool sanded = last_sanding_ && last_coats_.empty();
    then_wait(push(std::move(op)));
    if (sanded) then_wait(*last_sanding_, std::nullopt, job_.data.labour.dust_settles.value);
  }

  void coat_sides(std::size_t step, int coat, int coats) {
    const std::vector<std::size_t> below = std::exchange(last_coats_, {});
    for (const CoatNeed& need : volumes_.coats) {
      if (need.batch != batch_ || need.step != step || need.coat != coat) continue;
      if (!last_coats_.empty()) turn_over(step, coat);
      if (last_coats_.empty() && need.side == Side::back && !below.empty())
        turn_back(step, coat, below.back());
      if (last_sanding_ || !last_coats_.empty() || coat == 1) dust_off(need);
      Operation op = coat_operation(need, coats);
      const auto& before = list_.operations;
      if (!before.empty() && before.back().kind == OperationKind::dust_off)
        op.right_after = Duration();
      wait_for_day(op);
      if (step == 0 && coat == 1) wait_for_batch(op);
      const std::size_t put_on = push(std::move(op));
      last_coats_.push_back(put_on);
      if (list_.operations[put_on].portions > 0) wipe_off(put_on);
    }
  }

  /// Rule 4: of coats that melt together there are only so many in a day.
  void wait_for_day(Operation& op) {
    const auto most = [&](std::size_t c) { return job_.coatings[c].coats_a_day_max; };
    if (!most(*op.coating)) return;
    std::vector<std::size_t>& melted = melted_[op.side];
    const auto day = static_cast<std::size_t>(most(*op.coating)->value);
    if (melted.size() >= day)
      op.waits.push_back({.operation = melted[melted.size() - day], .next_day = true});
    melted.push_back(list_.operations.size());
  }

  /// What has not gone in comes off again, in the same stretch of work.
  void wipe_off(std::size_t put_on) {
    const Operation& coat = list_.operations[put_on];
    Operation op = blank(OperationKind::wipe_off, coat.step, coat.coat, coat.side, "wipe-off");
    op.area = coat.area / coat.portions;
    op.work = op.area / job_.data.labour.wipe_off.value;
    op.right_after = job_.coatings[*coat.coating].wipe_off_after->value;
    push(std::move(op));
  }

  Operation coat_operation(const CoatNeed& need, int coats) const {
    Operation op = blank(OperationKind::coat, need.step, need.coat, need.side, "coat");
    const std::string& method = system_->steps[need.step].method;
    const auto& methods = job_.data.methods;
    const auto found = std::ranges::find(methods, method, &Method::key);
    op.coats = coats;
    op.area = need.area;
    op.method = static_cast<std::size_t>(found - methods.begin());
    op.coating = coating_index(need.step);
    op.work = need.area / found->rate.value;
    const Coating& coating = job_.coatings[*op.coating];
    if (coating.wipe_off_after) add_portions(op, coating, job_.data.labour.wipe_off.value);
    if (coating.pot_life) add_pots(op, coating, job_.data.labour.mix_pot.value, warmest_);
    op.mixed = need.mixed;
    op.liquid = need.coating;
    op.thinner = need.thinner;
    return op;
  }

  void turn_over(std::size_t step, int coat) {
    next_waits_.clear();
    then_wait(last_coats_.back(), Stage::handle);
    Operation op = blank(OperationKind::turn_over, step, coat, Side::both, "turn-over");
    op.work = job_.data.labour.turn_over.value;
    then_wait(push(std::move(op)));
  }

  /// The show side lies up since it was coated. The back comes up again when all is sanded, else
  /// when the show side bears handling.
  void turn_back(std::size_t step, int coat, std::size_t shown) {
    std::vector<Wait> after = std::exchange(next_waits_, {});
    last_sanding_ ? then_wait(*last_sanding_) : then_wait(shown, Stage::handle);
    Operation op = blank(OperationKind::turn_over, step, coat, Side::back, "turn-back");
    op.work = job_.data.labour.turn_over.value;
    const std::size_t turned = push(std::move(op));
    next_waits_ = std::move(after);
    then_wait(turned);
  }

  /// Rule 4: light use and cure count the whole film of coats that melt together; the class's hours
  /// are those of a film for normal wear.
  void count_whole_film() {
    for (const StepFilm& film : volumes_.films) {
      if (film.batch != batch_ || film.step + 1 != system_->steps.size()) continue;
      const Coating& last = coating(film.step);
      if (!last.coats_a_day_max || !last.builds_film) continue;
      const FilmThickness normal = last.film_aim.at(static_cast<std::size_t>(Wear::normal)).value;
      for (const std::size_t coat : last_coats_)
        list_.operations[coat].whole_film =
            std::max(1.0, (film.beneath + film.build.counted_dry) / normal);
    }
  }

  void finish() {
    if (last_coats_.empty()) return;
    const std::size_t step = system_->steps.size() - 1;
    count_whole_film();
    const bool has_hardware = job_.batches[batch_].hardware;
    if (has_hardware && job_.data.labour.fit_hardware.value > Duration()) {
      next_waits_.clear();
      for (const std::size_t side : last_coats_) then_wait(side, Stage::hardware);
      Operation op =
          blank(OperationKind::fit_hardware, step, coats_in(step), Side::both, "fit-hardware");
      op.work = job_.data.labour.fit_hardware.value;
      push(std::move(op));
    }
    for (const Stage stage :
         {Stage::handle, Stage::light_use, Stage::hardware, Stage::stack, Stage::full_cure})
      if (coating(step).label_after[index_of(stage)] && (has_hardware || stage != Stage::hardware))
        list_.outcomes.push_back({batch_, stage, last_coats_});
    next_waits_.clear();
  }

  const Job& job_;
  const SurfaceTakeoff& takeoff_;
  const JobVolumes& volumes_;
  const KeyedCoats& keyed_;
  std::optional<Temperature> warmest_;
  std::size_t batch_;
  OperationList& list_;
  const FinishSystem* system_ = nullptr;
  Area area_;
  std::vector<Wait> next_waits_;
  std::vector<std::size_t> last_coats_;              ///< the sides of the last coat
  std::map<Side, std::vector<std::size_t>> melted_;  ///< coats that melt together, in order
  std::optional<std::size_t> last_sanding_;
};

}  // namespace

OperationList operation_list(const Job& job, const SurfaceTakeoff& takeoff,
                             const JobVolumes& volumes, const KeyedCoats& keyed,
                             std::optional<Temperature> warmest) {
  OperationList list;
  for (std::size_t batch = 0; batch < job.batches.size(); ++batch) {
    BatchOperations(job, takeoff, volumes, keyed, warmest, batch, list).add();
    add_finishing_touch(job, batch, list);
  }
  return list;
}

}  // namespace tackfree
