// Units: the kinds of quantity in use, their units, and the products and quotients between them.
#pragma once

#include "tackfree/base/quantity.hpp"

namespace tackfree {

using Length = Quantity<struct LengthKind>;
using Area = Quantity<struct AreaKind>;
using Volume = Quantity<struct VolumeKind>;
using FilmThickness = Quantity<struct FilmThicknessKind>;
using SpreadRate = Quantity<struct SpreadRateKind>;
using Fraction = Quantity<struct FractionKind>;
using TemperatureDifference = Quantity<struct TemperatureDifferenceKind>;
using Pressure = Quantity<struct PressureKind>;
using Humidity = Quantity<struct HumidityKind>;
using Duration = Quantity<struct DurationKind>;
using Speed = Quantity<struct SpeedKind>;
using Mass = Quantity<struct MassKind>;
using MassPerVolume = Quantity<struct MassPerVolumeKind>;
using MolarEnergy = Quantity<struct MolarEnergyKind>;
using WorkRate = Quantity<struct WorkRateKind>;
using AirFlow = Quantity<struct AirFlowKind>;
/// So many times in a time: air changes of a room, or the share of a wet coat's solvent that
/// leaves.
using ChangeRate = Quantity<struct ChangeRateKind>;
using MolarMass = Quantity<struct MolarMassKind>;
using Power = Quantity<struct PowerKind>;
using Energy = Quantity<struct EnergyKind>;
using HeatLoss = Quantity<struct HeatLossKind>;

inline constexpr Unit<LengthKind> metres{1.0};
inline constexpr Unit<LengthKind> centimetres{0.01};
inline constexpr Unit<LengthKind> millimetres{0.001};
/// Source: NIST SP 811, appendix B.6: 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 yd = 0.9144 m, all exact.
inline constexpr Unit<LengthKind> inches{0.0254};
inline constexpr Unit<LengthKind> feet{0.3048};
inline constexpr Unit<LengthKind> yards{0.9144};

inline constexpr Unit<AreaKind> square_metres{1.0};
inline constexpr Unit<AreaKind> square_feet{0.3048 * 0.3048};

inline constexpr Unit<VolumeKind> cubic_metres{1.0};
inline constexpr Unit<VolumeKind> cubic_feet{0.3048 * 0.3048 * 0.3048};
inline constexpr Unit<VolumeKind> litres{1e-3};
inline constexpr Unit<VolumeKind> millilitres{1e-6};
/// Source: the US gallon is 231 cubic inches, exactly (NIST SP 811, appendix B.6).
inline constexpr Unit<VolumeKind> us_gallons{231.0 * 0.0254 * 0.0254 * 0.0254};
inline constexpr Unit<VolumeKind> us_quarts{us_gallons.si_per_unit() / 4};
inline constexpr Unit<VolumeKind> us_pints{us_gallons.si_per_unit() / 8};
inline constexpr Unit<VolumeKind> us_fluid_ounces{us_gallons.si_per_unit() / 128};

inline constexpr Unit<FilmThicknessKind> micrometres{1e-6};
inline constexpr Unit<FilmThicknessKind> mils{25.4e-6};

inline constexpr Unit<SpreadRateKind> square_metres_per_litre{1.0 / litres.si_per_unit()};
inline constexpr Unit<SpreadRateKind> square_feet_per_us_gallon{square_feet.si_per_unit() /
                                                                us_gallons.si_per_unit()};

inline constexpr Unit<FractionKind> fraction{1.0};
inline constexpr Unit<FractionKind> percent{0.01};

inline constexpr Unit<TemperatureDifferenceKind> kelvins{1.0};
inline constexpr Unit<TemperatureDifferenceKind> fahrenheit_degrees{5.0 / 9.0};

inline constexpr Unit<PressureKind> pascals{1.0};

/// Relative humidity over liquid water, at every temperature (the convention of weather stations).
inline constexpr Unit<HumidityKind> humidity_fraction{1.0};
inline constexpr Unit<HumidityKind> humidity_percent{0.01};

inline constexpr Unit<DurationKind> minutes{60.0};
inline constexpr Unit<DurationKind> hours{3600.0};
inline constexpr Unit<DurationKind> days{86400.0};

inline constexpr Unit<SpeedKind> metres_per_second{1.0};

inline constexpr Unit<MassKind> grams{1e-3};
/// Source: the avoirdupois pound is 0.45359237 kg, exactly (NIST SP 811, appendix B.8).
inline constexpr Unit<MassKind> pounds{0.45359237};
inline constexpr Unit<MassKind> ounces{pounds.si_per_unit() / 16};
inline constexpr Unit<MassPerVolumeKind> grams_per_litre{1.0};
inline constexpr Unit<MassPerVolumeKind> grams_per_cubic_metre{1e-3};
inline constexpr Unit<MassPerVolumeKind> milligrams_per_cubic_metre{1e-6};
inline constexpr Unit<MassPerVolumeKind> ounces_per_1000_cubic_feet{
    ounces.si_per_unit() / (1000 * cubic_feet.si_per_unit())};

inline constexpr Unit<MolarEnergyKind> kilojoules_per_mole{1e3};

inline constexpr Unit<PowerKind> kilowatts{1e3};
inline constexpr Unit<EnergyKind> kilowatt_hours{3.6e6};
inline constexpr Unit<HeatLossKind> watts_per_kelvin{1.0};

inline constexpr Unit<WorkRateKind> square_metres_per_hour{1.0 / hours.si_per_unit()};

inline constexpr Unit<AirFlowKind> cubic_metres_per_hour{1.0 / hours.si_per_unit()};
inline constexpr Unit<AirFlowKind> cubic_feet_per_minute{cubic_feet.si_per_unit() /
                                                         minutes.si_per_unit()};

inline constexpr Unit<ChangeRateKind> per_hour{1.0 / hours.si_per_unit()};

inline constexpr Unit<MolarMassKind> grams_per_mole{1e-3};

constexpr Area operator*(Length a, Length b) { return square_metres(a.in(metres)*b.in(metres)); }
constexpr Power operator*(HeatLoss loss, TemperatureDifference d) {
  return kilowatts(loss.in(watts_per_kelvin)*d.in(kelvins)*1e-3);
}
constexpr Energy operator*(Power p, Duration t) {
  return kilowatt_hours(p.in(kilowatts)*t.in(hours));
}
constexpr TemperatureDifference operator/(Power p, HeatLoss loss) {
  return kelvins(p.in(kilowatts)*1e3 / loss.in(watts_per_kelvin));
}
constexpr Volume operator/(Area a, SpreadRate rate) {
  return litres(a.in(square_metres) / rate.in(square_metres_per_litre));
}
constexpr Duration operator/(Area a, WorkRate rate) {
  return hours(a.in(square_metres) / rate.in(square_metres_per_hour));
}
constexpr Mass operator*(Volume v, MassPerVolume content) {
  return grams(v.in(litres)*content.in(grams_per_litre));
}
constexpr MassPerVolume operator/(Mass m, Volume v) {
  return grams_per_litre(m.in(grams) / v.in(litres));
}
constexpr ChangeRate operator/(AirFlow flow, Volume room) {
  return per_hour(flow.in(cubic_metres_per_hour) / room.in(cubic_metres));
}
constexpr AirFlow operator*(ChangeRate rate, Volume room) {
  return cubic_metres_per_hour(rate.in(per_hour)*room.in(cubic_metres));
}

}  // namespace tackfree
