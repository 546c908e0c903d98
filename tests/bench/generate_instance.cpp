// Generates a random finishing schedule of a home maker over eight weeks on the 5-minute grid, in
// the format of tests/published/scheduling. Weather and jobs are invented.
//   generate_instance --seed N --activities LO-HI --tight 0|1
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <map>
#include <random>
#include <string>
#include <tuple>
#include <vector>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace {

using nlohmann::json;

constexpr int slots_an_hour = 12;
constexpr int slots_a_day = 24 * slots_an_hour;
constexpr int days = 56;
constexpr int horizon = days * slots_a_day;

/// Draws that are the same with every standard library.
class Draw {
 public:
  explicit Draw(std::uint64_t seed) : random_(seed) {}
  int from_to(int least, int most) {
    return least + static_cast<int>(random_() % static_cast<std::uint64_t>(most - least + 1));
  }
  double unit() { return static_cast<double>(random_() >> 11U) * 0x1.0p-53; }
  double normal() {
    constexpr double two_pi = 6.283185307179586;
    const double radius = std::sqrt(-2.0 * std::log(1.0 - unit()));
    return radius * std::cos(two_pi * unit());
  }

 private:
  std::mt19937_64 random_;
};

/// Hours at 23 C and limits of a class of coating: the project's own starting figures.
struct CoatingClass {
  const char* name;
  double dust_free, handle, recoat, sand, use;
  double coldest, warmest, dampest;  ///< C, C, % to put it on
  double stops_under;                ///< C
  double damp_slows;                 ///< share of the pace lost from 50 to 100 % humidity
};
constexpr std::array<CoatingClass, 3> classes{{{"water", 0.5, 2, 2.5, 3, 24, 10, 30, 80, 5, 0.8},
                                               {"oil", 2, 8, 8, 12, 24, 10, 32, 80, 0, 0.4},
                                               {"lacq2k", 1, 5, 4, 6, 48, 10, 30, 75, 5, 0.2}}};

struct Hour {
  double celsius, humidity;
};

struct Batch {
  int kind, coats, sides, area, bare, coat, between;  ///< work in slots
  int recoat_within;                                  ///< slots, -1: sanded between coats
};

int activities_of(const Batch& batch) {
  const int round = batch.sides == 2 ? 3 : 1;
  return 1 + batch.coats * round + (batch.recoat_within < 0 ? batch.coats - 1 : 0) + 1;
}

class Generator {
 public:
  Generator(std::uint64_t seed, bool tight) : draw_(seed), tight_(tight) {}

  json instance(int least, int most) {
    do jobs();
    while (total() < least || total() > most);
    weather();
    windows();
    for (const Batch& batch : batches_) chain(batch);
    int area = 0;
    for (const Batch& batch : batches_) area += batch.area;
    const int cap = std::max(2, static_cast<int>((tight_ ? 0.4 : 0.7) * area));
    return {{"slot_minutes", 5}, {"T", horizon},
            {"crew", 1},         {"cap", cap},
            {"n_products", 3},   {"n_windows", window_count_},
            {"win", win_},       {"start_sets", start_sets_},
            {"tables", tables_}, {"ops", ops_},
            {"arcs", arcs_}};
  }

 private:
  int total() const {
    int sum = 0;
    for (const Batch& batch : batches_) sum += activities_of(batch);
    return sum;
  }

  static int slots(int minutes) { return (minutes + 4) / 5; }

  void jobs() {
    batches_.clear();
    for (int n = draw_.from_to(2, 8); n > 0; --n) {
      Batch b{};
      b.kind = draw_.from_to(0, 2);
      b.coats = draw_.from_to(2, 4);
      b.sides = draw_.from_to(1, 2);
      b.area = draw_.from_to(1, 2);
      b.bare = slots(draw_.from_to(30, 120));
      b.coat = slots(draw_.from_to(15, 60));
      b.between = slots(draw_.from_to(20, 40));
      b.recoat_within =
          tight_ && draw_.from_to(0, 1) == 1 ? draw_.from_to(2 * slots_a_day, 4 * slots_a_day) : -1;
      batches_.push_back(b);
    }
  }

  void weather() {
    double warm = 0, damp = 0;
    for (int h = 0; h < days * 24 + 24; ++h) {
      warm = 0.97 * warm + 0.45 * draw_.normal();
      damp = 0.97 * damp + 1.6 * draw_.normal();
      const double wave = 4.5 * std::cos((h % 24 - 15) * 6.283185307179586 / 24);
      hours_.push_back({17 + wave + warm, std::clamp(58 + damp - 2.5 * wave, 20.0, 99.0)});
    }
    for (const CoatingClass& c : classes) {
      std::vector<std::int64_t>& sums = progress_.emplace_back(1, 0);
      for (int s = 0; s < horizon; ++s) {
        const Hour& hour = hours_[static_cast<std::size_t>(s / slots_an_hour)];
        double pace = hour.celsius < c.stops_under ? 0 : std::pow(2.0, (hour.celsius - 23) / 10);
        if (hour.humidity > 50) pace *= 1 - c.damp_slows * (hour.humidity - 50) / 50;
        sums.push_back(sums.back() + static_cast<std::int64_t>(pace * 1'000'000));
      }
    }
  }

  void windows() {
    win_.assign(horizon, 0);
    quiet_.assign(horizon, false);
    for (int day = 0; day < days; ++day) {
      const int midnight = day * slots_a_day;
      for (int s = 20 * slots_an_hour; s < slots_a_day; ++s)
        quiet_[static_cast<std::size_t>(midnight + s)] = true;
      if (day % 7 < 5) window(midnight + 222, midnight + 258);  // 18:30 to 21:30
      if (day % 7 == 5) {
        window(midnight + 108, midnight + 144);
        window(midnight + 156, midnight + 216);
      }
    }
  }

  void window(int begin, int end) {
    if (draw_.unit() < 0.15) return;
    ++window_count_;
    for (int s = begin; s < end; ++s) win_[static_cast<std::size_t>(s)] = window_count_;
  }

  bool air_is_fit(const CoatingClass& c, int from, int to) const {
    for (int s = from; s < to; s += 1) {
      const Hour& hour = hours_[static_cast<std::size_t>(s / slots_an_hour)];
      if (hour.celsius < c.coldest || hour.celsius > c.warmest || hour.humidity > c.dampest)
        return false;
    }
    return true;
  }

  enum class Work { coat, sand, other };

  int start_set(Work work, int kind, int length) {
    const auto [place, fresh] = sets_.try_emplace({work, work == Work::coat ? kind : 0, length},
                                                  static_cast<int>(start_sets_.size()) + 1);
    if (!fresh) return place->second;
    std::vector<int> starts;
    for (int s = 0; s + length <= horizon; ++s) {
      const auto first = static_cast<std::size_t>(s);
      const auto last = static_cast<std::size_t>(s + length - 1);
      if (win_[first] == 0 || win_[last] != win_[first]) continue;
      if (work == Work::sand && quiet_[last]) continue;
      if (work == Work::coat && !air_is_fit(classes[static_cast<std::size_t>(kind)], s, s + length))
        continue;
      starts.push_back(s);
    }
    start_sets_.push_back(starts);
    return place->second;
  }

  int table(int kind, double CoatingClass::*stage, int length) {
    const double hours = classes[static_cast<std::size_t>(kind)].*stage;
    const auto [place, fresh] =
        made_.try_emplace({kind, hours, length}, static_cast<int>(tables_.size()) + 1);
    if (!fresh) return place->second;
    const std::vector<std::int64_t>& sums = progress_[static_cast<std::size_t>(kind)];
    const auto need = static_cast<std::int64_t>(hours * slots_an_hour * 1'000'000);
    std::vector<int> ready(horizon, horizon);
    std::size_t at = 0;
    for (int s = 0; s + length <= horizon; ++s) {
      const std::int64_t from = sums[static_cast<std::size_t>(s + length)];
      at = std::max(at, static_cast<std::size_t>(s + length));
      while (at < sums.size() && sums[at] - from < need) ++at;
      ready[static_cast<std::size_t>(s)] = std::min(static_cast<int>(at), horizon);
    }
    tables_.push_back(ready);
    return place->second;
  }

  int operation(Work work, const Batch& batch, int length) {
    const bool coat = work == Work::coat;
    ops_.push_back({{"batch", batch_},
                    {"dur", length},
                    {"dom", start_set(work, batch.kind, length)},
                    {"product", coat ? batch.kind + 1 : 0},
                    {"dusty", work == Work::sand},
                    {"area", coat ? batch.area : 0},
                    {"tHand", coat ? table(batch.kind, &CoatingClass::handle, length) : 0},
                    {"tDust", coat ? table(batch.kind, &CoatingClass::dust_free, length) : 0}});
    return static_cast<int>(ops_.size());
  }

  void arc(int from, int to, int table, int most = -1) {
    arcs_.push_back({{"frm", from}, {"to", to}, {"tab", table}, {"max", most}});
  }

  void chain(const Batch& batch) {
    ++batch_;
    auto after = [&](double CoatingClass::*stage) { return table(batch.kind, stage, batch.coat); };
    int last = operation(Work::sand, batch, batch.bare);
    int wait = 0;
    std::array<int, 2> before{0, 0};  // the last coat of each side
    for (int coat = 0; coat < batch.coats; ++coat) {
      if (coat > 0 && batch.recoat_within < 0) {
        const int sanding = operation(Work::sand, batch, batch.between);
        arc(last, sanding, after(&CoatingClass::sand));
        last = sanding;
        wait = 0;
      }
      for (int side = 0; side < batch.sides; ++side) {
        if (side > 0) {
          const int turning = operation(Work::other, batch, 2);
          arc(last, turning, after(&CoatingClass::handle));
          last = turning;
          wait = 0;
        }
        const int coating = operation(Work::coat, batch, batch.coat);
        arc(last, coating, wait);
        int& earlier = before[static_cast<std::size_t>(side)];
        if (earlier > 0 && batch.recoat_within >= 0)
          arc(earlier, coating, after(&CoatingClass::recoat), batch.recoat_within);
        earlier = last = coating;
        wait = after(&CoatingClass::recoat);
      }
    }
    const int hardware = operation(Work::other, batch, 6);
    arc(last, hardware, after(&CoatingClass::use));
  }

  Draw draw_;
  bool tight_;
  std::vector<Batch> batches_;
  std::vector<Hour> hours_;
  std::vector<std::vector<std::int64_t>>
      progress_;  ///< by class: label hours so far, in millionths
  std::vector<int> win_;
  std::vector<bool> quiet_;
  int window_count_ = 0;
  int batch_ = 0;
  std::map<std::tuple<Work, int, int>, int> sets_;
  std::map<std::tuple<int, double, int>, int> made_;
  std::vector<std::vector<int>> start_sets_, tables_;
  json ops_ = json::array(), arcs_ = json::array();
};

}  // namespace

int main(int count, char** words) {
  std::uint64_t seed = 1;
  int least = 2, most = 200;
  bool tight = false;
  for (int i = 1; i + 1 < count; i += 2) {
    const std::string option = words[i], value = words[i + 1];
    if (option == "--seed") seed = std::strtoull(value.c_str(), nullptr, 10);
    if (option == "--tight") tight = value == "1";
    if (option == "--activities") {
      least = std::atoi(value.c_str());
      const auto dash = value.find('-');
      most = dash == std::string::npos ? least : std::atoi(value.c_str() + dash + 1);
    }
  }
  if (least > most || most < 6 || least > 130) {
    fmt::print(stderr, "generate_instance --seed N --activities LO-HI --tight 0|1, up to 130\n");
    return 2;
  }
  fmt::print("{}\n", Generator(seed, tight).instance(least, most).dump());
  return 0;
}
