#pragma once
// Moisture, humidity and temperature: strong types, because a content and a change of content are easily mistaken.

#include <compare>
#include <ostream>

namespace jointwright {

/// Moisture content of wood: mass of water per mass of oven-dry wood, in percent.
class MoistureContent {
public:
    constexpr MoistureContent() = default;
    static constexpr MoistureContent percent(double p) { return MoistureContent{p}; }
    constexpr double percent() const { return percent_; }
    friend constexpr auto operator<=>(MoistureContent, MoistureContent) = default;
    friend std::ostream& operator<<(std::ostream& out, MoistureContent m) { return out << m.percent() << " %"; }

private:
    explicit constexpr MoistureContent(double p) : percent_(p) {}
    double percent_ = 0;
};

/// Difference of two moisture contents in percentage points: 8 % to 12 % is +4 points.
class MoistureChange {
public:
    static constexpr MoistureChange points(double p) { return MoistureChange{p}; }
    constexpr double points() const { return points_; }
    friend constexpr auto operator<=>(MoistureChange, MoistureChange) = default;
    friend std::ostream& operator<<(std::ostream& out, MoistureChange m) { return out << m.points() << " points"; }

private:
    explicit constexpr MoistureChange(double p) : points_(p) {}
    double points_;
};

constexpr MoistureChange operator-(MoistureContent to, MoistureContent from)
{
    return MoistureChange::points(to.percent() - from.percent());
}

static_assert((MoistureContent::percent(12) - MoistureContent::percent(8)).points() == 4);

/// Strain of wood across its grain per percentage point of moisture content, for example 0.00369 for flat-sawn red oak.
class MovementCoefficient {
public:
    constexpr MovementCoefficient() = default;
    static constexpr MovementCoefficient per_point(double c) { return MovementCoefficient{c}; }
    constexpr double per_point() const { return per_point_; }
    friend constexpr auto operator<=>(MovementCoefficient, MovementCoefficient) = default;

private:
    explicit constexpr MovementCoefficient(double c) : per_point_(c) {}
    double per_point_ = 0;
};

/// Relative humidity of air, in percent from 0 to 100.
class RelativeHumidity {
public:
    static constexpr RelativeHumidity percent(double p) { return RelativeHumidity{p}; }
    constexpr double percent() const { return percent_; }
    constexpr double fraction() const { return percent_ / 100; }
    friend constexpr auto operator<=>(RelativeHumidity, RelativeHumidity) = default;

private:
    explicit constexpr RelativeHumidity(double p) : percent_(p) {}
    double percent_;
};

/// Temperature of air or of the shop.
class Temperature {
public:
    static constexpr Temperature celsius(double c) { return Temperature{c}; }
    static constexpr Temperature fahrenheit(double f) { return Temperature{(f - 32) / 1.8}; }
    constexpr double celsius() const { return celsius_; }
    constexpr double fahrenheit() const { return celsius_ * 1.8 + 32; }
    friend constexpr auto operator<=>(Temperature, Temperature) = default;

private:
    explicit constexpr Temperature(double c) : celsius_(c) {}
    double celsius_;
};

} // namespace jointwright
