#include "tackfree/export/csv.hpp"

#include "tackfree/words/display_text.hpp"
#include "tackfree/words/sundry_words.hpp"
#include "tackfree/words/tins_words.hpp"
#include "tackfree/words/work_entries.hpp"

#include <algorithm>
#include <array>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// A table under way; texts are escaped, numbers go in as they are.
class Csv {
 public:
  explicit Csv(std::string_view head) : text_(head) { text_ += line_end; }

  Csv& text(std::string_view field) { return put(csv_text(field)); }
  Csv& number(double value, int decimals) {
    return put(fmt::format("{:.{}f}", rounded(value, decimals), decimals));
  }
  Csv& none() { return put(""); }
  void end_row() {
    text_ += line_end;
    row_begun_ = false;
  }
  std::string whole() && { return std::move(text_); }

 private:
  static constexpr std::string_view line_end = "\r\n";  // RFC 4180, 2.1

  Csv& put(std::string_view field) {
    text_.append(row_begun_ ? "," : "").append(field);
    row_begun_ = true;
    return *this;
  }

  std::string text_;
  bool row_begun_ = false;
};

std::string local_text(Instant at, const Zone& zone) {
  const LocalTime local = zone.local(at);
  return fmt::format("{} {}", iso_date(local.on), iso_clock(local.minute_of_day));
}

void add_volumes(Csv& csv, const Operation& op) {
  for (const Volume volume : {op.mixed, op.liquid, op.thinner})
    csv.number(volume.in(millilitres), 0);
}

void add_entry(Csv& csv, const Plan& plan, const StepWords& words, const WorkEntry& entry) {
  const Zone& zone = plan.job.calendar.zone;
  csv.text(local_text(entry.time.begin, zone)).text(local_text(entry.time.end, zone));
  csv.number(static_cast<double>(entry.time.length().count()), 0);
  if (entry.step == nullptr) {
    csv.none().text(entry.what);
    for (int i = 0; i < 8; ++i) csv.none();
    csv.end_row();
    return;
  }
  const Operation& op = plan.list.operations.at(entry.step->operation);
  csv.text(plan.job.batches.at(op.batch).name).text(words.title(op));
  op.coat > 0 ? csv.number(op.coat, 0) : csv.none();
  csv.text(word_for(op.side));
  op.grit ? csv.number(op.grit->p, 0) : csv.none();
  op.coating ? csv.text(plan.job.coatings.at(*op.coating).name) : csv.none();
  if (op.coating && entry.first_piece)
    add_volumes(csv, op);
  else
    csv.none().none().none();
  csv.text(entry.first_piece ? words.why(*entry.step) : "").end_row();
}

void add_tins(Csv& csv, std::string_view name, const TinPurchase& purchase) {
  csv.text(name).text(tins_text(purchase)).text("tins");
  for (const Volume volume : {purchase.expected, purchase.nine_in_ten, purchase.on_shelf,
                              purchase.tins.bought, purchase.left_over})
    csv.number(volume.in(millilitres), 0).number(volume.in(us_fluid_ounces), 1);
  purchase.tins.priced ? csv.number(purchase.tins.cost, 2) : csv.none();
  csv.none().end_row();
}

bool looks_like_formula(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return false;
  const std::string_view rest = text.substr(first);
  constexpr std::array<std::string_view, 8> begins{"=",      "+",      "-",      "@",
                                                   "\uFF1D", "\uFF0B", "\uFF0D", "\uFF20"};
  return std::ranges::any_of(begins, [&](auto begin) { return rest.starts_with(begin); });
}

}  // namespace

std::string csv_text(std::string_view text) {
  std::string cleaned = clean(text);
  if (looks_like_formula(cleaned)) cleaned.insert(0, "'");
  if (cleaned.find_first_of(",;\" ") == std::string::npos) return cleaned;
  std::string quoted = "\"";
  for (const char c : cleaned) quoted.append(c == '"' ? 2 : 1, c);
  return quoted + "\"";
}

std::string steps_csv(const Plan& plan) {
  Csv csv(
      "begin_local,end_local,work_min,batch,step,coat,side,grit_p,coating,mixed_ml,coating_ml,"
      "thinner_ml,why");
  const StepWords words(plan);
  for (const WorkEntry& entry : work_entries(plan, words)) add_entry(csv, plan, words, entry);
  return std::move(csv).whole();
}

std::string areas_csv(const Plan& plan) {
  Csv csv("part,quantity,batch,face,side,grain,area_m2,area_ft2");
  constexpr std::array<std::string_view, all_faces.size()> faces{
      "top", "bottom", "front", "back", "left", "right", "side", "inside"};
  for (const Surface& surface : plan.takeoff.surfaces) {
    const Part& part = plan.job.parts.at(surface.part);
    csv.text(part.name).number(part.quantity, 0).text(part.batch);
    csv.text(faces.at(static_cast<std::size_t>(surface.face))).text(word_for(surface.side));
    csv.text(grain_titles.at(static_cast<std::size_t>(surface.grain)));
    csv.number(surface.area.in(square_metres), 4).number(surface.area.in(square_feet), 3);
    csv.end_row();
  }
  return std::move(csv).whole();
}

std::string shopping_csv(const Plan& plan) {
  Csv csv(
      "what,amount,unit,expected_ml,expected_fl_oz,nine_in_ten_ml,nine_in_ten_fl_oz,on_shelf_ml,"
      "on_shelf_fl_oz,bought_ml,bought_fl_oz,left_over_ml,left_over_fl_oz,cost,why");
  constexpr std::array<std::string_view, 3> units{"sheet", "piece", "m"};
  for (const CoatingPurchase& purchase : plan.shopping.coatings)
    add_tins(csv, plan.job.coatings.at(purchase.coating).name, purchase);
  for (const ThinnerPurchase& purchase : plan.shopping.thinners)
    add_tins(csv, purchase.liquid, purchase);
  const Figures figures(plan.job);
  for (const Sundry& sundry : plan.shopping.sundries) {
    const SundryText text = sundry_text(sundry, plan.job, figures);
    csv.text(text.what).number(text.amount, sundry.unit() == Sundry::Unit::metre ? 1 : 0);
    csv.text(units.at(static_cast<std::size_t>(sundry.unit())));
    for (int i = 0; i < 11; ++i) csv.none();
    csv.text(text.why).end_row();
  }
  return std::move(csv).whole();
}

}  // namespace tackfree
