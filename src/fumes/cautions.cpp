#include "tackfree/fumes/cautions.hpp"

#include "tackfree/fumes/ignition.hpp"
#include "tackfree/fumes/signal_word.hpp"

#include <algorithm>
#include <chrono>
#include <map>

namespace tackfree {
namespace {

/// The word becomes `word` unless it is graver already.
void raise_to(RaisedCaution& caution, std::string_view word) {
  if (gravity(caution.text.word) > gravity(word)) caution.text.word = word;
}

const std::string& text_key(const RaisedCaution& caution) { return caution.text.key; }

bool about_vapour(const std::string& key) { return key.ends_with("_vapour"); }

bool about_breath(const std::string& key) {
  return about_vapour(key) || key == "isocyanates" || key == "formaldehyde" || key == "spraying";
}

class CautionList {
 public:
  CautionList(const Job& job, const JobVolumes& volumes) : job_(job), volumes_(volumes) {
    for (const CoatingNeed& need : volumes.coatings)
      coatings_.push_back(&job.coatings.at(need.coating));
  }

  /// `undated` is the part of the day's solvent that no room air could be reckoned for.
  std::vector<RaisedCaution> result(const OperationList& list, Mass in_a_day, Mass undated,
                                    const std::optional<RoomJudgement>& room) {
    for (const Coating* coating : coatings_)
      for (const std::string& key : coating->words.cautions) add(key);
    add_for_thinner_and_cleaner();
    for (const Operation& operation : list.operations)
      if (operation.method)
        for (const std::string& key : job_.data.methods.at(*operation.method).cautions) add(key);
    if (!coatings_.empty()) add("children");
    if (job_.room.attached_to_house && in_a_day > Mass{}) add("attached_house");
    if (std::ranges::any_of(list.operations, [](const Operation& o) { return o.grit.has_value(); }))
      add("wood_dust");
    if (flammable_at_hand(fire_code_class_1) > class_1_permit ||
        flammable_at_hand(combustible) > cabinet)
      add("stored_quantity");
    vapour_figures(in_a_day, undated, room);
    judge_room(room);
    raise_sprayed_isocyanates(list);
    raise_spraying(list);
    name_ignition_sources();
    name_data_sheet_word();
    for (RaisedCaution& caution : cautions_)
      caution.text.comes_first =
          caution.text.word == "DANGER" || text_key(caution) == "isocyanates";
    std::ranges::stable_sort(cautions_, {},
                             [](const RaisedCaution& c) { return gravity(c.text.word); });
    name_respirator(list);
    return std::move(cautions_);
  }

 private:
  RaisedCaution* chosen(const std::string& key) {
    const auto found = std::ranges::find(cautions_, key, text_key);
    return found == cautions_.end() ? nullptr : &*found;
  }

  void add(const std::string& key) {
    if (chosen(key) != nullptr) return;
    const auto& texts = job_.data.texts.cautions;
    const auto text = std::ranges::find(texts, key, &Caution::key);
    if (text != texts.end()) cautions_.push_back({.text = *text});
  }

  /// A coating that hardly burns itself, thinned or cleaned with what does.
  void add_for_thinner_and_cleaner() {
    for (const CoatingNeed& need : volumes_.coatings) {
      const Coating& coating = job_.coatings.at(need.coating);
      if (!gives_flammable_vapour(job_, coating, need.thinner > Volume())) continue;
      if (first_about_vapour() == nullptr) add("solvent_vapour");
      add("ignition");
    }
  }

  RaisedCaution* first_about_vapour() {
    const auto found = std::ranges::find_if(cautions_, about_vapour, text_key);
    return found == cautions_.end() ? nullptr : &*found;
  }

  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): called once, with its names
  void vapour_figures(Mass in_a_day, Mass undated, const std::optional<RoomJudgement>& judged) {
    if (in_a_day <= Mass{}) return;
    const std::optional<Volume> room = job_.room.volume;
    const double share = room ? still_room_bound(undated, *room) / assumed_explosive_limit : 0.0;
    const bool alarming = share >= can_burn_share || (judged && signal_word(*judged));
    if (alarming && first_about_vapour() == nullptr) add("solvent_vapour");
    RaisedCaution* caution = first_about_vapour();
    if (caution == nullptr) return;

    caution->in_a_day = in_a_day;
    if (std::ranges::any_of(coatings_, [](const Coating* c) {
          return c->flash_point && c->flash_point->value < fire_code_class_1;
        }))
      raise_to(*caution, "WARNING");
    if (!room) {
      raise_to(*caution, "WARNING");  // nothing is known that would allow a lesser word
      caution->volume_unknown = true;
    }
    if (!room || undated <= Mass{}) return;
    caution->undated = UndatedVapour{still_room_bound(undated, *room), share};
    if (share >= can_burn_share)
      raise_to(*caution, share >= can_explode_share ? "DANGER" : "WARNING");
  }

  void judge_room(const std::optional<RoomJudgement>& judged) {
    RaisedCaution* caution = first_about_vapour();
    if (!judged || caution == nullptr) return;
    caution->of_room = true;
    if (const auto word = signal_word(*judged)) raise_to(*caution, *word);
  }

  /// Once, with the gravest: two answers would leave the choice to who reads one of them.
  void name_respirator(const OperationList& list) {
    const auto first = std::ranges::find_if(cautions_, about_breath, text_key);
    if (first != cautions_.end()) first->respirator = respirator(job_, list, volumes_);
  }

  /// Sprayed, an isocyanate is no work for a home.
  void raise_sprayed_isocyanates(const OperationList& list) {
    RaisedCaution* caution = chosen("isocyanates");
    const bool sprayed = std::ranges::any_of(list.operations, [&](const Operation& o) {
      return o.method && o.coating &&
             sprays_isocyanates(job_.coatings.at(*o.coating), job_.data.methods.at(*o.method));
    });
    if (caution == nullptr || !sprayed) return;
    raise_to(*caution, "DANGER");
    caution->sprayed_isocyanates = true;
  }

  /// Mist of what burns, in a closed room or beside a flame.
  void raise_spraying(const OperationList& list) {
    RaisedCaution* caution = chosen("spraying");
    const bool flammable = std::ranges::any_of(list.operations, [&](const Operation& o) {
      if (!o.method || !o.coating || !job_.data.methods.at(*o.method).sprayed) return false;
      const auto& flash = job_.coatings.at(*o.coating).flash_point;
      return flash && flash->value < fire_code_class_1;
    });
    if (caution == nullptr || !flammable) return;
    const bool beside_source = has_ignition_source(job_);
    const bool closed = !job_.room.airing || job_.room.airing->while_coating == Opening::closed;
    if (!beside_source && !closed) return;
    raise_to(*caution, "DANGER");
    caution->mist = SprayedMist{.room_closed = closed, .beside_source = beside_source};
  }

  /// The plan's words and those of the data sheet are two scales. Source: flammable liquids of 29
  /// CFR 1910.1200, appendix B.6: Danger under 23 C, Warning up to 93 C (from memory).
  void name_data_sheet_word() {
    constexpr Temperature danger_below = celsius(23), warning_to = celsius(93);
    RaisedCaution* caution = chosen("ignition");
    if (caution == nullptr) return;
    std::optional<Temperature> lowest;
    for (const Coating* coating : coatings_)
      if (coating->flash_point && (!lowest || coating->flash_point->value < *lowest))
        lowest = coating->flash_point->value;
    if (!lowest || *lowest > warning_to) return;
    caution->data_sheet_word =
        *lowest < danger_below ? DataSheetWord::danger : DataSheetWord::warning;
  }

  /// Litres of coating with a flash point below `flash` that this job needs or has on the shelf.
  Volume flammable_at_hand(Temperature flash) const {
    Volume sum;
    for (const CoatingNeed& need : volumes_.coatings) {
      const Coating& coating = job_.coatings.at(need.coating);
      if (!coating.flash_point || coating.flash_point->value >= flash) continue;
      Volume shelf;
      for (const ShelfTin& tin : coating.on_shelf) shelf += tin.volume;
      if (job_.shelf)
        for (const ShelfTin& tin : tins_for(*job_.shelf, job_.id, coating.name, coating.class_key))
          shelf += tin.volume;
      sum += std::max(shelf, need.expected * need.nine_in_ten + need.thinner);
    }
    return sum;
  }

  void name_ignition_sources() {
    if (RaisedCaution* caution = chosen("ignition"))
      caution->names_sources = has_ignition_source(job_);
  }

  /// Source: International Fire Code 2018, definition of classes I and II (38 C) and III B (93 C).
  static constexpr Temperature fire_code_class_1 = celsius(38);
  static constexpr Temperature combustible = celsius(93);
  /// Source: International Fire Code 2018, 105.6.16 (5 gal of class I indoors) and 5704.3.4.4 (10
  /// gal, a cabinet), as adopted in Minnesota 2020; other places differ.
  static constexpr Volume class_1_permit = us_gallons(5);
  static constexpr Volume cabinet = us_gallons(10);

  const Job& job_;
  const JobVolumes& volumes_;
  std::vector<const Coating*> coatings_;  ///< that the job uses
  std::vector<RaisedCaution> cautions_;
};

/// The index of the coat that an operation puts on, among the needs.
std::optional<std::size_t> need_of(const Operation& operation, const JobVolumes& volumes) {
  if (operation.kind != OperationKind::coat) return std::nullopt;
  const auto found = std::ranges::find_if(volumes.coats, [&](const CoatNeed& need) {
    return need.batch == operation.batch && need.step == operation.step &&
           need.coat == operation.coat && need.side == operation.side;
  });
  if (found == volumes.coats.end()) return std::nullopt;
  return static_cast<std::size_t>(found - volumes.coats.begin());
}

struct Release {
  Instant at;
  Mass solvent;
};

Mass heaviest_day(std::vector<Release> releases) {
  std::ranges::sort(releases, {}, &Release::at);
  Mass heaviest;
  for (std::size_t first = 0; first < releases.size(); ++first) {
    Mass sum;
    for (std::size_t next = first;
         next < releases.size() && releases[next].at - releases[first].at < std::chrono::hours(24);
         ++next)
      sum += releases[next].solvent;
    heaviest = std::max(heaviest, sum);
  }
  return heaviest;
}

/// The heaviest coat of each batch among those without a date, all its sides, all batches together.
Mass heaviest_undated(const JobVolumes& volumes, const std::vector<Mass>& by_need,
                      const std::vector<bool>& dated) {
  std::map<std::pair<std::size_t, std::pair<std::size_t, int>>, Mass> by_coat;
  for (std::size_t i = 0; i < volumes.coats.size(); ++i)
    if (const CoatNeed& need = volumes.coats[i]; !dated[i])
      by_coat[{need.batch, {need.step, need.coat}}] += by_need[i];
  std::map<std::size_t, Mass> by_batch;
  for (const auto& [coat, solvent] : by_coat)
    by_batch[coat.first] = std::max(by_batch[coat.first], solvent);
  Mass sum;
  for (const auto& [batch, solvent] : by_batch) sum += solvent;
  return sum;
}

Mass given_off_by_cleaning(const Job& job, std::size_t coating) {
  Mass sum;
  for (const SolventMass& part : cleaning_parts(job, coating)) sum += part.mass;
  return sum;
}

Mass heaviest_cleaning(const Job& job, const JobVolumes& volumes) {
  Mass heaviest;
  for (const CoatingNeed& need : volumes.coatings)
    heaviest = std::max(heaviest, given_off_by_cleaning(job, need.coating));
  return heaviest;
}

}  // namespace

SolventInADay solvent_in_a_day(const Job& job, const OperationList& list, const JobVolumes& volumes,
                               const std::vector<CoatEmission>& emissions,
                               const Schedule& schedule) {
  std::vector<Mass> by_need(volumes.coats.size());
  for (const CoatEmission& emission : emissions) by_need.at(emission.need) += emission.solvent;
  std::vector<bool> dated(volumes.coats.size(), false);
  std::vector<Release> releases;
  for (const DatedStep& step : schedule.steps) {
    const auto need = need_of(list.operations.at(step.operation), volumes);
    if (!need) continue;
    dated[*need] = true;
    releases.push_back({.at = step.begin(), .solvent = by_need[*need]});
  }
  for (const Session& session : schedule.sessions)
    releases.push_back(
        {.at = session.clean_up.begin, .solvent = given_off_by_cleaning(job, session.coating)});
  for (const ToolRest& rest : schedule.tool_rests) {
    const auto coating = list.operations.at(schedule.steps.at(rest.dated_step).operation).coating;
    if (!rest.wrapped && coating)
      releases.push_back(
          {.at = rest.cleaning.begin, .solvent = given_off_by_cleaning(job, *coating)});
  }
  Mass undated = heaviest_undated(volumes, by_need, dated);
  if (undated > Mass{}) undated += heaviest_cleaning(job, volumes);
  return {std::max(heaviest_day(std::move(releases)), undated), undated};
}

std::vector<RaisedCaution> cautions(const Job& job, const OperationList& list,
                                    const JobVolumes& volumes,
                                    const std::vector<CoatEmission>& emissions,
                                    const Schedule& schedule,
                                    const std::optional<RoomJudgement>& room) {
  const SolventInADay day = solvent_in_a_day(job, list, volumes, emissions, schedule);
  return CautionList(job, volumes).result(list, day.heaviest, day.undated, room);
}

}  // namespace tackfree
