#include "tackfree/input/epw_reader.hpp"

#include "tackfree/input/air_rows_reader.hpp"
#include "tackfree/syntax/csv_document.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>
#include <tuple>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::size_t fields_in_row = 35;
constexpr int header_lines = 8;
constexpr double missing_temperature = 99.9;
constexpr double missing_humidity = 999;

std::vector<std::string_view> split(std::string_view line) {
  std::vector<std::string_view> fields;
  while (true) {
    const std::size_t comma = line.find(',');
    std::string_view field = line.substr(0, comma);
    while (field.starts_with(' ')) field.remove_prefix(1);
    while (field.ends_with(' ')) field.remove_suffix(1);
    fields.push_back(field);
    if (comma == std::string_view::npos) return fields;
    line.remove_prefix(comma + 1);
  }
}

std::optional<double> number_of(std::string_view text) {
  double value = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  // "nan" and "inf" are read as numbers too, and no limit keeps a nan out.
  if (fault != std::errc{} || end != text.data() + text.size() || !std::isfinite(value))
    return std::nullopt;
  return value;
}

/// A whole number from `least` to `most`; 0, which none of them may be, for anything else.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the lower limit comes first
int whole_of(std::string_view text, int least, int most) {
  const double value = number_of(text).value_or(0);
  return value >= least && value <= most && value == std::floor(value) ? static_cast<int>(value)
                                                                       : 0;
}

/// One hour of the file, in its own clock.
struct EpwHour {
  unsigned month = 1, day = 1;
  int hour = 1;  ///< that ends at this hour
  AirRow row;
};

class EpwFile {
 public:
  EpwFile(std::string_view text, std::string file, Problems& problems)
      : text_(text), file_(std::move(file)), problems_(problems) {}

  std::vector<AirRow> rows(int year) {
    if (!read_header()) return {};
    const std::size_t before = problems_.size();
    while (const auto line = next_line())
      if (!line->empty()) {
        if (problems_.size() - before > most_listed_mistakes) {
          report("", "", "has too many mistakes; mend these first");
          break;
        }
        read_hour(*line);
      }
    if (hours_.empty() && problems_.size() == before)
      report("", "", "has no hours after its header");
    if (problems_.size() > before) return {};
    std::vector<AirRow> result;
    append_year(year, result);
    // A whole year has another one after it.
    if (hours_.front().month == 1 && hours_.back().month == 12 && hours_.back().day == 31)
      append_year(year + 1, result);
    return result;
  }

 private:
  std::optional<std::string_view> next_line() {
    if (text_.empty()) return std::nullopt;
    const std::size_t end = text_.find('\n');
    std::string_view line = text_.substr(0, end);
    text_.remove_prefix(end == std::string_view::npos ? text_.size() : end + 1);
    if (line.ends_with('\r')) line.remove_suffix(1);
    ++line_;
    return line;
  }

  void report(std::string_view key, std::string_view found, std::string wanted,
              std::string hint = {}) {
    problems_.push_back({.file = file_,
                         .line = line_,
                         .key = std::string(key),
                         .found = std::string(found.substr(0, 40)),
                         .wanted = std::move(wanted),
                         .hint = std::move(hint)});
  }

  bool read_header() {
    const auto first = next_line();
    const auto fields = split(first.value_or(""));
    if (fields.size() < 10 || fields[0] != "LOCATION") {
      report("LOCATION", first.value_or(""),
             "wanted the LOCATION line of a weather file (EPW) first");
      return false;
    }
    const auto zone = number_of(fields[8]);
    if (!zone || std::abs(*zone) > 15) {
      report("time zone", fields[8], "wanted hours from UTC, such as -5.0, in field 9 of LOCATION");
      return false;
    }
    offset_ = Minutes(std::llround(*zone * 60));
    for (int i = 1; i < header_lines; ++i) {
      const auto line = next_line();
      if (i + 1 < header_lines || (line && line->starts_with("DATA PERIODS"))) continue;
      report("DATA PERIODS", line.value_or(""),
             "wanted eight header lines, of which this is the last");
      return false;
    }
    return true;
  }

  std::optional<double> field(const std::vector<std::string_view>& fields, std::size_t number,
                              std::string_view name, const NumberRange& range, double missing) {
    const auto value = number_of(fields[number - 1]);
    if (value && *value == missing) return std::nullopt;
    if (value && *value >= range.least && *value <= range.most) return value;
    report(name, fields[number - 1],
           fmt::format("{}, or {:g} where it is missing", wanted_number(range), missing));
    return std::nullopt;
  }

  void read_hour(std::string_view line) {
    const auto fields = split(line);
    if (fields.size() < fields_in_row) {
      report("", fmt::format("{} fields", fields.size()),
             fmt::format("wanted {} in each row of a weather file (EPW)", fields_in_row),
             "fetch the file again: the row is cut off, or this is another format");
      return;
    }
    EpwHour hour{.month = static_cast<unsigned>(whole_of(fields[1], 1, 12)),
                 .day = static_cast<unsigned>(whole_of(fields[2], 1, 31)),
                 .hour = whole_of(fields[3], 1, 24),
                 .row = {}};
    const Date on = date::year(2000) / date::month(hour.month) / date::day(hour.day);
    if (!on.ok() || hour.hour == 0) {
      report("", fmt::format("{}-{} hour {}", fields[1], fields[2], fields[3]),
             "wanted a month, a day and an hour from 1 to 24 in fields 2, 3 and 4");
      return;
    }
    if (!hours_.empty() && !comes_after(hours_.back(), hour)) {
      report("", fmt::format("{}-{} hour {}", fields[1], fields[2], fields[3]),
             "wanted hours in order, each once");
      return;
    }
    const std::size_t before = problems_.size();
    const auto t = field(fields, 7, "dry bulb", air_temperature, missing_temperature);
    const auto dew = field(fields, 8, "dew point", air_temperature, missing_temperature);
    const auto humidity = field(fields, 9, "humidity", {0, 110, "% RH"}, missing_humidity);
    hour.row.line = line_;
    hour.row.temperature = celsius(t.value_or(0));
    if (dew) hour.row.dew_point = celsius(std::min(*dew, t.value_or(*dew)));
    if (humidity) hour.row.humidity = humidity_percent(std::min(100.0, *humidity));
    if (t && dew && *dew > *t + 0.1)
      report("dew point", fields[7], "wanted a dew point no higher than the dry bulb");
    if (problems_.size() > before) return;
    // A gap is kept out, but its place in the order counts.
    known_.push_back(t && (dew || humidity));
    hours_.push_back(hour);
  }

  static bool comes_after(const EpwHour& a, const EpwHour& b) {
    return std::tuple(a.month, a.day, a.hour) < std::tuple(b.month, b.day, b.hour);
  }

  void append_year(int year, std::vector<AirRow>& rows) const {
    const auto add = [&](const EpwHour& hour, const Date& on) {
      AirRow row = hour.row;
      row.at = Zone::utc().instant({on, 0}) + Minutes(60 * hour.hour) - offset_;
      if (rows.empty() || row.at > rows.back().at) rows.push_back(row);
    };
    const bool has_leap_day = std::any_of(hours_.begin(), hours_.end(), [](const EpwHour& hour) {
      return hour.month == 2 && hour.day == 29;
    });
    const auto day_end = [&](std::size_t i) {
      return i + 1 == hours_.size() || hours_[i + 1].day != hours_[i].day;
    };
    for (std::size_t i = 0; i < hours_.size(); ++i) {
      const EpwHour& hour = hours_[i];
      const Date on = date::year(year) / date::month(hour.month) / date::day(hour.day);
      if (!on.ok()) continue;
      if (known_[i]) add(hour, on);
      if (hour.month != 2 || hour.day != 28 || !day_end(i) || has_leap_day ||
          !date::year(year).is_leap())
        continue;
      for (std::size_t j = 0; j <= i; ++j)
        if (known_[j] && hours_[j].month == 2 && hours_[j].day == 28)
          add(hours_[j], date::year(year) / date::month(2) / date::day(29));
    }
  }

  std::string_view text_;
  std::string file_;
  Problems& problems_;
  int line_ = 0;
  Minutes offset_{0};
  std::vector<EpwHour> hours_;
  std::vector<bool> known_;  ///< by hour: has a temperature, and a dew point or humidity
};

}  // namespace

std::vector<AirRow> parse_epw(std::string_view text, const std::string& file, int year,
                              Problems& problems) {
  return EpwFile(text, file, problems).rows(year);
}

}  // namespace tackfree
