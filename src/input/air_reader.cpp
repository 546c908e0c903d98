#include "tackfree/input/air_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/base/text_file.hpp"
#include "tackfree/input/csv_document.hpp"
#include "tackfree/input/figure_reader.hpp"

#include <array>
#include <charconv>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr NumberRange air_temperature{-60, 60, "C"};
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
        report(fields, *time_,
               row->at == rows.back().at
                   ? "wanted each time once; this one repeats the row before"
                   : "wanted rows in order of time; this one is before the last");
      else
        rows.push_back(*row);
    }
    if (document_.rows.empty())
      problems_.push_back({.file = file_, .wanted = "has no rows; wanted at least one"});
    result.recorded_in = recorded_in_;
    return result;
  }

 private:
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

  /// The same clock time in the year of replay; the first row decides by how many years.
  std::optional<Instant> replayed(const CsvRow& fields, Instant at) {
    if (!format_.replay_in_year) return at;
    const LocalTime recorded = utc_.local(at);
    if (!recorded_in_) recorded_in_ = static_cast<int>(recorded.on.year());
    const Date moved = recorded.on + date::years(*format_.replay_in_year - *recorded_in_);
    if (moved.ok()) return utc_.instant({moved, recorded.minute_of_day});
    report(fields, *time_,
           fmt::format("wanted a day that {} has too: leave the rows of 29 February out",
                       static_cast<int>(moved.year())));
    return std::nullopt;
  }

  std::optional<AirRow> read(const CsvRow& fields) {
    const std::size_t before = problems_.size();
    const auto recorded = time(fields);
    const auto at = recorded ? replayed(fields, *recorded) : std::nullopt;
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
    if (problems_.size() > before || !air || (!row.dew_point && !row.humidity)) return std::nullopt;
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

AirRowsFormat read_format(JsonCursor& rows) {
  constexpr std::array<std::string_view, 2> clocks{"utc", "local"};
  constexpr std::array<std::string_view, 2> units{"C", "F"};
  AirRowsFormat format;
  format.time_column = rows.text(needed("time_column")).value_or("");
  format.time_is_local = rows.word(needed("time_is"), clocks).value_or(0) == 1;
  format.temperature_column = rows.text(needed("temperature_column")).value_or("");
  format.in_fahrenheit = rows.word(needed("temperature_unit"), units).value_or(0) == 1;
  format.dew_point_column = rows.text("dew_point_column").value_or("");
  format.humidity_column = rows.text("humidity_column").value_or("");
  if (!rows.has("dew_point_column") && !rows.has("humidity_column"))
    rows.report("dew_point_column", "is missing; this or humidity_column is needed");
  format.replay_in_year = rows.whole("replay_in_year", {1970, 2037, "years"});
  return format;
}

AirRows read_rows(JsonCursor& rows, const std::filesystem::path& folder, const Zone& zone) {
  AirRows air;
  const std::size_t before = rows.problems().size();
  air.file = rows.text(needed("file")).value_or("");
  const AirRowsFormat format = read_format(rows);
  air.origin = rows.text(needed("origin")).value_or("");
  rows.refuse_unknown();
  if (rows.problems().size() > before) return air;
  const std::filesystem::path path = folder / air.file;
  const auto text = read_text_file(path, rows.problems());
  if (!text) return air;
  AirRows found = parse_air_rows(*text, path.string(), format, zone, rows.problems());
  air.rows = std::move(found.rows);
  air.recorded_in = found.recorded_in;
  return air;
}

ConstantAir read_constant(JsonCursor& constant) {
  ConstantAir air;
  air.temperature =
      read_temperature(constant, needed("temperature"), air_temperature).value_or(celsius(20));
  air.humidity =
      humidity_percent(constant.number(needed("humidity_pct"), {0, 100, "% RH"}).value_or(50));
  constant.refuse_unknown();
  return air;
}

}  // namespace

AirRows parse_air_rows(std::string_view text, const std::string& file, const AirRowsFormat& format,
                       const Zone& zone, Problems& problems) {
  const auto document = parse_csv(text, file, problems);
  if (!document) return {};
  return RowsReader(*document, file, format, zone, problems).rows();
}

AirRecord read_air(JsonCursor& air, const std::filesystem::path& folder, const Zone& zone) {
  AirRecord record = ConstantAir{celsius(20), humidity_percent(50)};
  auto constant = air.object("constant");
  auto rows = air.object("rows");
  if (air.has("constant") == air.has("rows"))
    air.report("constant", "wanted either constant or rows, one of them");
  else if (constant)
    record = read_constant(*constant);
  else if (rows)
    record = read_rows(*rows, folder, zone);
  air.refuse_unknown();
  return record;
}

}  // namespace tackfree
