#include "tackfree/input/air_rows_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/syntax/csv_document.hpp"

#include <algorithm>
#include <charconv>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Rounding of stations that keep temperature and dew point in different units.
constexpr TemperatureDifference dew_point_slack = kelvins(0.1);

/// Reads one rows file.
class RowsReader {
 public:
  RowsReader(const CsvDocument& document, std::string file, const AirRowsFormat& format,
             const Zone& zone, Problems& problems)
      : document_(document),
        file_(std::move(file)),
        format_(format),
        zone_(zone),
        problems_(problems) {}

  AirRows rows() {
    AirRows result;
    std::vector<AirRow>& rows = result.rows;
    if (!find_columns()) return result;
    const std::size_t before = problems_.size();
    for (const CsvRow& fields : document_.rows) {
      if (problems_.size() - before > most_listed_mistakes) {
        problems_.push_back({.file = file_,
                             .line = fields.line,
                             .wanted = "has too many mistakes; mend these first"});
        break;
      }
      const auto row = read(fields);
      if (!row) continue;
      if (!rows.empty() && row->at <= rows.back().at)
        refuse_order(fields, row->at, rows.back().at);
      else
        rows.push_back(*row);
    }
    if (document_.rows.empty())
      problems_.push_back({.file = file_, .wanted = "has no rows; wanted at least one"});
    check_percent(rows);
    fill_leap_day(rows);
    result.recorded_in = recorded_in_;
    return result;
  }

 private:
  /// Replayed rows of a year without 29 February go on through one that has it: the 28th is
  /// repeated.
  void fill_leap_day(std::vector<AirRow>& rows) const {
    if (!format_.replay_in_year || rows.empty()) return;
    const auto first = static_cast<int>(utc_.local(rows.front().at).on.year());
    const auto last = static_cast<int>(utc_.local(rows.back().at).on.year());
    for (int year = first; year <= last; ++year) {
      if (!date::year(year).is_leap()) continue;
      const Instant day_before = utc_.instant({date::year(year) / date::month(2) / 28, 0});
      const auto from = [&](Instant at) {
        return std::ranges::lower_bound(rows, at, {}, &AirRow::at);
      };
      const auto leap_day = from(day_before + one_day);
      const std::vector<AirRow> repeated(from(day_before), leap_day);
      const bool lacks =
          repeated.empty() || leap_day == rows.end() || leap_day->at < day_before + 2 * one_day;
      if (lacks) continue;
      for (auto place = rows.insert(leap_day, repeated.begin(), repeated.end());
           const AirRow& row : repeated)
        (place++)->at = row.at + one_day;
    }
  }

  void refuse_order(const CsvRow& fields, Instant at, Instant last) {
    const auto clock = parse_instant(fields.fields[*time_] + "Z");
    const bool twice = format_.time_is_local && clock &&
                       zone_.locate(utc_.local(*clock)).fate == LocalFate::repeated;
    if (twice) {
      problems_.push_back(
          {.file = file_,
           .line = fields.line,
           .key = document_.head[*time_],
           .found = fields.fields[*time_],
           .wanted = fmt::format("is in the hour that comes twice when the clocks of {} go back",
                                 zone_.name()),
           .hint = "leave one of the two rows out, or give all times in UTC"});
      return;
    }
    report(fields, *time_,
           at == last ? "wanted each time once; this one repeats the row before"
                      : "wanted rows in order of time; this one is before the last");
  }

  /// Humidities that are all shares of 1 were meant as such, not as 1 % and less.
  void check_percent(const std::vector<AirRow>& rows) {
    const auto driest = [](const AirRow& row) {
      return !row.humidity || *row.humidity <= humidity_percent(1);
    };
    if (!humidity_ || rows.empty() || !rows.front().humidity ||
        !std::all_of(rows.begin(), rows.end(), driest))
      return;
    problems_.push_back({.file = file_,
                         .line = rows.front().line,
                         .key = document_.head[*humidity_],
                         .found = fmt::format("{:g}", rows.front().humidity->in(humidity_percent)),
                         .wanted = "wanted percent, 0 to 100; no row is over 1",
                         .hint = "multiply the column by 100"});
  }

  std::optional<std::size_t> needed_column(const std::string& name) {
    const auto found = document_.column(name);
    if (!found)
      problems_.push_back({.file = file_,
                           .line = 1,
                           .key = name,
                           .wanted = "is missing; the job names this column",
                           .hint = name_hint(name, document_.head)});
    return found;
  }

  bool find_columns() {
    time_ = needed_column(format_.time_column);
    temperature_ = needed_column(format_.temperature_column);
    bool all = time_ && temperature_;
    if (!format_.dew_point_column.empty())
      all = (dew_point_ = needed_column(format_.dew_point_column)) && all;
    if (!format_.humidity_column.empty())
      all = (humidity_ = needed_column(format_.humidity_column)) && all;
    return all;
  }

  void report(const CsvRow& fields, std::size_t column, std::string wanted) {
    problems_.push_back({.file = file_,
                         .line = fields.line,
                         .key = document_.head[column],
                         .found = fields.fields[column],
                         .wanted = std::move(wanted)});
  }

  /// The number in a field; nothing when it is empty, nothing and a Problem when it is no number.
  std::optional<double> number(const CsvRow& fields, std::optional<std::size_t> column,
                               const NumberRange& range) {
    if (!column || fields.fields[*column].empty()) return std::nullopt;
    const std::string& text = fields.fields[*column];
    double value = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (fault == std::errc{} && end == text.data() + text.size() && value >= range.least &&
        value <= range.most)
      return value;
    report(fields, *column, wanted_number(range) + ", or nothing where there is no reading");
    return std::nullopt;
  }

  std::optional<Temperature> temperature(const CsvRow& fields, std::optional<std::size_t> column) {
    const NumberRange range = format_.in_fahrenheit ? NumberRange{-76, 140, "F"} : air_temperature;
    const auto degrees = number(fields, column, range);
    if (!degrees) return std::nullopt;
    return format_.in_fahrenheit ? fahrenheit(*degrees) : celsius(*degrees);
  }

  std::optional<Instant> time(const CsvRow& fields) {
    const std::string& text = fields.fields[*time_];
    auto as_utc = parse_instant(text + "Z");
    if (!format_.time_is_local) {
      if (const auto with_offset = parse_instant(text)) as_utc = with_offset;
      if (!as_utc) report(fields, *time_, "wanted a time in UTC, such as 2027-04-05T17:00:00Z");
      return as_utc;
    }
    if (!as_utc) {
      report(fields, *time_, "wanted a local time, such as 2027-04-05T17:00");
      return std::nullopt;
    }
    const LocatedTime located = zone_.locate(utc_.local(*as_utc));
    if (located.fate != LocalFate::skipped) return located.at;
    report(fields, *time_,
           fmt::format("wanted a time that exists: the clocks of {} skip it", zone_.name()));
    return std::nullopt;
  }

  /// The same clock time in the year of replay; the first row decides by how many years. Nothing on
  /// 29 February where that year has none.
  std::optional<Instant> replayed(Instant at) {
    if (!format_.replay_in_year) return at;
    const LocalTime recorded = utc_.local(at);
    if (!recorded_in_) recorded_in_ = static_cast<int>(recorded.on.year());
    const Date moved = recorded.on + date::years(*format_.replay_in_year - *recorded_in_);
    if (!moved.ok()) return std::nullopt;
    return utc_.instant({moved, recorded.minute_of_day});
  }

  std::optional<AirRow> read(const CsvRow& fields) {
    const std::size_t before = problems_.size();
    const auto recorded = time(fields);
    const auto at = recorded ? replayed(*recorded) : std::nullopt;
    const auto air = temperature(fields, temperature_);
    AirRow row{.at = at.value_or(Instant{}),
               .temperature = air.value_or(celsius(0)),
               .dew_point = temperature(fields, dew_point_),
               .humidity = std::nullopt,
               .line = fields.line};
    if (const auto percent_humid = number(fields, humidity_, {0, 100, "% RH"}))
      row.humidity = humidity_percent(*percent_humid);
    if (at && *at >= last_zoned_instant())
      report(fields, *time_, "wanted a time before the end of 2037");
    if (air && row.dew_point && *row.dew_point > *air + dew_point_slack)
      report(fields, *dew_point_, "wanted a dew point no higher than the temperature");
    if (problems_.size() > before || !at || !air || (!row.dew_point && !row.humidity))
      return std::nullopt;
    return row;
  }

  const CsvDocument& document_;
  std::string file_;
  const AirRowsFormat& format_;
  const Zone& zone_;
  Problems& problems_;
  std::optional<std::size_t> time_, temperature_, dew_point_, humidity_;
  Zone utc_ = Zone::utc();
  std::optional<int> recorded_in_;  ///< year of the first row, when rows are replayed
};

}  // namespace

AirRows parse_air_rows(std::string_view text, const std::string& file, const AirRowsFormat& format,
                       const Zone& zone, Problems& problems) {
  const auto document = parse_csv(text, file, problems);
  if (!document) return {};
  return RowsReader(*document, file, format, zone, problems).rows();
}

}  // namespace tackfree
