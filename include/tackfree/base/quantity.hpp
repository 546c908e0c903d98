// Quantities: one type for each kind, made and read only through a unit.
#pragma once

#include <compare>

namespace tackfree {

template <class Kind>
class Unit;

/// An amount of one kind (length, area, ...). It holds SI inside; only a Unit reads or makes it.
template <class Kind>
class Quantity {
 public:
  constexpr Quantity() = default;

  /// The number that stands before `unit` when this amount is written in it.
  constexpr double in(const Unit<Kind>& unit) const;

  constexpr Quantity& operator+=(Quantity other) {
    si_ += other.si_;
    return *this;
  }
  constexpr Quantity& operator-=(Quantity other) {
    si_ -= other.si_;
    return *this;
  }
  friend constexpr auto operator<=>(Quantity, Quantity) = default;
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return a += b; }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return a -= b; }
  friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.si_); }
  friend constexpr Quantity operator*(Quantity a, double factor) {
    return Quantity(a.si_ * factor);
  }
  friend constexpr Quantity operator*(double factor, Quantity a) { return a * factor; }
  friend constexpr Quantity operator/(Quantity a, double divisor) {
    return Quantity(a.si_ / divisor);
  }
  /// The ratio of two amounts of the same kind.
  friend constexpr double operator/(Quantity a, Quantity b) { return a.si_ / b.si_; }

 private:
  friend class Unit<Kind>;
  explicit constexpr Quantity(double si) : si_(si) {}
  double si_ = 0.0;
};

/// A unit of one kind: call it to make an amount, pass it to `in` to read one.
template <class Kind>
class Unit {
 public:
  explicit constexpr Unit(double si_per_unit) : si_per_unit_(si_per_unit) {}
  constexpr Quantity<Kind> operator()(double number) const {
    return Quantity<Kind>(number * si_per_unit_);
  }
  constexpr double si_per_unit() const { return si_per_unit_; }
  constexpr double number_of(Quantity<Kind> amount) const { return amount.si_ / si_per_unit_; }

 private:
  double si_per_unit_;
};

template <class Kind>
constexpr double Quantity<Kind>::in(const Unit<Kind>& unit) const {
  return unit.number_of(*this);
}

}  // namespace tackfree
