#include "tackfree/fumes/cautions.hpp"

#include "tackfree/fumes/ignition.hpp"
#include "tackfree/fumes/vapour_words.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <map>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {
namespace {

/// Signal words of ANSI Z535.4, the gravest first.
constexpr std::array<std::string_view, 4> words{"DANGER", "WARNING", "CAUTION", "NOTICE"};

std::ptrdiff_t gravity(std::string_view word) {
  return std::ranges::find(words, word) - words.begin();
}

/// The word becomes `word` unless it is graver already.
void raise_to(Caution& caution, std::string_view word) {
  if (gravity(caution.word) > gravity(word)) caution.word = word;
}

bool about_vapour(const std::string& key) { return key.ends_with("_vapour"); }

class CautionList {
 public:
  CautionList(const Job& job, const JobVolumes& volumes) : job_(job), volumes_(volumes) {
    for (const CoatingNeed& need : volumes.coatings)
      coatings_.push_back(&job.coatings.at(need.coating));
  }

  /// `undated` is the part of the day's solvent that no room air could be reckoned for.
  std::vector<Caution> result(const OperationList& list, Mass in_a_day, Mass undated,
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
    for (Caution& caution : cautions_)
      caution.comes_first = caution.word == "DANGER" || caution.key == "isocyanates";
    std::ranges::stable_sort(cautions_, {}, [](const Caution& c) { return gravity(c.word); });
    return std::move(cautions_);
  }

 private:
  Caution* chosen(const std::string& key) {
    const auto found = std::ranges::find(cautions_, key, &Caution::key);
    return found == cautions_.end() ? nullptr : &*found;
  }

  void add(const std::string& key) {
    if (chosen(key) != nullptr) return;
    const auto& texts = job_.data.texts.cautions;
    const auto text = std::ranges::find(texts, key, &Caution::key);
    if (text != texts.end()) cautions_.push_back(*text);
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

  Caution* first_about_vapour() {
    const auto found = std::ranges::find_if(cautions_, about_vapour, &Caution::key);
    return found == cautions_.end() ? nullptr : &*found;
  }

  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): called once, with its names
  void vapour_figures(Mass in_a_day, Mass undated, const std::optional<RoomJudgement>& judged) {
    if (in_a_day <= Mass{}) return;
    const std::optional<Volume> room = job_.room.volume;
    const double share = room ? still_room_bound(undated, *room) / assumed_explosive_limit : 0.0;
    const bool alarming = share >= warning_share || (judged && signal_word(*judged));
    if (alarming && first_about_vapour() == nullptr) add("solvent_vapour");
    Caution* caution = first_about_vapour();
    if (caution == nullptr) return;

    caution->hazard +=
        fmt::format(" Up to {:.0f} g evaporate in the heaviest 24 hours.", in_a_day.in(grams));
    if (std::ranges::any_of(coatings_, [](const Coating* c) {
          return c->flash_point && c->flash_point->value < fire_code_class_1;
        }))
      raise_to(*caution, "WARNING");
    if (!room) {
      raise_to(*caution, "WARNING");  // nothing is known that would allow a lesser word
      caution->avoid += " Give the room's volume in the job and the vapour is estimated.";
    }
    if (!room || undated <= Mass{}) return;
    caution->hazard += fmt::format(
        " What has no date, all of it in the still, closed room, would be {:.1f} g/m3, {:.0f} % of "
        "the lower explosive limit ({:.0f} g/m3 assumed).",
        still_room_bound(undated, *room).in(grams_per_cubic_metre), 100 * share,
        assumed_explosive_limit.in(grams_per_cubic_metre));
    judge(*caution, share);
  }

  void judge_room(const std::optional<RoomJudgement>& judged) {
    Caution* caution = first_about_vapour();
    if (!judged || caution == nullptr) return;
    caution->hazard += vapour_estimate(*judged);
    if (const auto word = signal_word(*judged)) raise_to(*caution, *word);
    caution->avoid = vapour_remedy(*judged) + caution->avoid;
    if (caution->key != "ethanol_vapour") caution->avoid += cartridge_sentence(job_, *judged);
  }

  /// Sprayed, an isocyanate is no work for a home.
  void raise_sprayed_isocyanates(const OperationList& list) {
    Caution* caution = chosen("isocyanates");
    const bool sprayed = std::ranges::any_of(list.operations, [&](const Operation& o) {
      return o.method && o.coating &&
             job_.data.methods.at(*o.method).flashed_off.value > Fraction{} &&
             std::ranges::count(job_.coatings.at(*o.coating).words.cautions, "isocyanates") > 0;
    });
    if (caution == nullptr || !sprayed) return;
    raise_to(*caution, "DANGER");
    caution->avoid =
        "Do not spray this at home: it takes a supplied-air respirator and a professional booth. " +
        caution->avoid;
  }

  /// Mist of what burns, in a closed room or beside a flame.
  void raise_spraying(const OperationList& list) {
    Caution* caution = chosen("spraying");
    const bool flammable = std::ranges::any_of(list.operations, [&](const Operation& o) {
      if (!o.method || !o.coating || !job_.data.methods.at(*o.method).sprayed) return false;
      const auto& flash = job_.coatings.at(*o.coating).flash_point;
      return flash && flash->value < fire_code_class_1;
    });
    if (caution == nullptr || !flammable) return;
    const std::vector<std::string> off = to_switch_off(job_);
    const bool closed = !job_.room.airing || job_.room.airing->while_coating == Opening::closed;
    if (off.empty() && !closed) return;
    raise_to(*caution, "DANGER");
    std::string where = closed ? "in a closed room" : "in this room";
    if (!off.empty()) where += fmt::format(" with {} in it", fmt::join(off, ", "));
    caution->avoid =
        fmt::format("Do not spray this {}: the mist can explode. ", where) + caution->avoid;
  }

  /// The plan's words and those of the data sheet are two scales. Source: flammable liquids of 29
  /// CFR 1910.1200, appendix B.6: Danger under 23 C, Warning up to 93 C (from memory).
  void name_data_sheet_word() {
    constexpr Temperature danger_below = celsius(23), warning_to = celsius(93);
    Caution* caution = chosen("ignition");
    if (caution == nullptr) return;
    std::optional<Temperature> lowest;
    for (const Coating* coating : coatings_)
      if (coating->flash_point && (!lowest || coating->flash_point->value < *lowest))
        lowest = coating->flash_point->value;
    if (!lowest || *lowest > warning_to) return;
    caution->avoid += fmt::format(
        " The safety data sheet has a signal word of its own; for this flash point it is {}.",
        *lowest < danger_below ? "Danger" : "Warning");
  }

  /// Litres of coating with a flash point below `flash` that this job needs or has on the shelf.
  Volume flammable_at_hand(Temperature flash) const {
    Volume sum;
    for (const CoatingNeed& need : volumes_.coatings) {
      const Coating& coating = job_.coatings.at(need.coating);
      if (!coating.flash_point || coating.flash_point->value >= flash) continue;
      Volume shelf;
      for (const ShelfTin& tin : coating.on_shelf) shelf += tin.volume;
      sum += std::max(shelf, need.expected * need.nine_in_ten + need.thinner);
    }
    return sum;
  }

  static void judge(Caution& caution, double share) {
    if (share >= danger_share) {
      raise_to(caution, "DANGER");
      caution.avoid =
          "The vapour can explode: do not put this much on in this room. Coat outdoors, in a "
          "professional booth, or less in a day. No flame, no spark. " +
          caution.avoid;
    } else if (share >= warning_share) {
      raise_to(caution, "WARNING");
      caution.avoid = "The vapour can burn: more air, every flame and spark removed, pilots off. " +
                      caution.avoid;
    }
  }

  void name_ignition_sources() {
    Caution* caution = chosen("ignition");
    const std::vector<std::string> off = to_switch_off(job_);
    if (caution == nullptr || off.empty()) return;
    caution->avoid += fmt::format(" Here: {}.", fmt::join(off, ", "));
  }

  static constexpr double warning_share = 0.10;
  static constexpr double danger_share = 0.25;

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
  std::vector<Caution> cautions_;
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
  Mass undated = heaviest_undated(volumes, by_need, dated);
  if (undated > Mass{}) undated += heaviest_cleaning(job, volumes);
  return {std::max(heaviest_day(std::move(releases)), undated), undated};
}

std::vector<Caution> cautions(const Job& job, const OperationList& list, const JobVolumes& volumes,
                              const std::vector<CoatEmission>& emissions, const Schedule& schedule,
                              const std::optional<RoomJudgement>& room) {
  const SolventInADay day = solvent_in_a_day(job, list, volumes, emissions, schedule);
  return CautionList(job, volumes).result(list, day.heaviest, day.undated, room);
}

}  // namespace tackfree
