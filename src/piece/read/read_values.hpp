#pragma once
// Typed values out of what the maker wrote. A reader that returns nothing has reported why.

#include "measure/quantity.hpp"
#include "piece/model/space.hpp"
#include "piece/text/reading.hpp"

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// One table of the design while it is read: hands out values by key, remembers which keys there are, reports those that are none.
class DesignTable {
public:
    /// @param name  for messages: "[piece]", "[[part]] \"slat\"", "taper"
    DesignTable(Reading& reading, const DesignValue& table, std::string name)
        : reading_(reading), table_(table), name_(std::move(name))
    {
    }

    /// The value under an optional key; nullptr when it is absent.
    const DesignValue* may(std::string_view key);
    /// The value under a required key; reports "missing-key" with the example as the fix when it is absent.
    const DesignValue* must(std::string_view key, std::string_view example);
    /// A key that is part of the format but cannot be used yet: reports "not-yet" when it is there.
    void not_yet(std::string_view key, std::string_view what);
    /// Reports every key that was not asked for. Call it last.
    void finish();

    bool has(std::string_view key) const { return table_.find(key) != nullptr; }
    Spot spot() const { return table_.spot; }
    /// A line to paste that adds a key to this table.
    std::string with_key(std::string_view key, std::string_view example) const;
    /// Place of a key that is there.
    Spot key_spot(std::string_view key) const;
    Reading& reading() { return reading_; }
    const std::string& name() const { return name_; }
    void rename(std::string name) { name_ = std::move(name); }

private:
    Reading& reading_;
    const DesignValue& table_;
    std::string name_;
    std::set<std::string, std::less<>> known_;
};

/// What a length must be.
enum class LengthRule {
    size,       ///< above 0, at most 20 m
    space,      ///< 0 or above, at most 20 m
    coordinate, ///< any sign, at most 100 m from the origin
};
constexpr double kLargestSize = 20;         ///< m
constexpr double kLeastSize = 1e-5;         ///< m
constexpr double kFarthestCoordinate = 100; ///< m
constexpr int kMostCopies = 10000;

/// NumberRange of a plain number.
struct NumberRange {
    double lo, hi;
    bool lo_itself = false; ///< whether `lo` may be reached; `hi` always may
    std::string_view unit = {};
    std::string_view note = {}; ///< where the limit comes from
};

// Each of these reports "wrong-type", "wrong-unit" or "out-of-range" and returns nothing when the value does not fit.
std::optional<Length> as_length(Reading& reading, const DesignValue& value, std::string_view what, LengthRule rule);
std::optional<double> as_number(Reading& reading, const DesignValue& value, std::string_view what, const NumberRange& range);
std::optional<int> as_count(Reading& reading, const DesignValue& value, std::string_view what, int most = kMostCopies);
std::optional<std::string> as_text(Reading& reading, const DesignValue& value, std::string_view what);
std::optional<bool> as_truth(Reading& reading, const DesignValue& value, std::string_view what);
std::optional<Side> as_side(Reading& reading, const DesignValue& value, std::string_view what);
std::optional<Axis> as_axis(Reading& reading, const DesignValue& value, std::string_view what);
/// A list of so many lengths [m]; `shape` shows it in a fix: "[42, 14, 17.5]".
std::optional<std::vector<double>> as_lengths(Reading& reading, const DesignValue& value, std::string_view what,
                                              std::size_t count, LengthRule rule, std::string_view shape);
std::optional<std::vector<Side>> as_sides(Reading& reading, const DesignValue& value, std::string_view what);
std::optional<std::vector<Axis>> as_axes(Reading& reading, const DesignValue& value, std::string_view what);
/// One of a few words, as its place in the list. @param noun  what the words name: "use", "side", "ring cut"
std::optional<std::size_t> as_choice(Reading& reading, const DesignValue& value, std::string_view what, std::string_view noun,
                                     const std::vector<std::string>& choices);

// Measures that always bring their unit; above 0 and at most `most`.
std::optional<Force> as_force(Reading& reading, const DesignValue& value, std::string_view what);
std::optional<LineLoad> as_line_load(Reading& reading, const DesignValue& value, std::string_view what);
std::optional<Mass> as_mass(Reading& reading, const DesignValue& value, std::string_view what);
std::optional<Density> as_density(Reading& reading, const DesignValue& value, std::string_view what);
std::optional<Stress> as_stress(Reading& reading, const DesignValue& value, std::string_view what, Stress most);
/// From −1.1 °C, where the table of equilibrium moisture starts; air in frost is read by `as_air_temperature`.
std::optional<Temperature> as_temperature(Reading& reading, const DesignValue& value, std::string_view what);
/// From −60 to 60 °C.
std::optional<Temperature> as_air_temperature(Reading& reading, const DesignValue& value, std::string_view what);

/// Reports "wrong-type" unless the value is of that kind.
bool is_kind(Reading& reading, const DesignValue& value, std::string_view what, DesignValue::Kind wanted,
             std::string_view example = {});
/// The items of a list, or the value itself alone.
std::vector<const DesignValue*> one_or_more(const DesignValue& value);

} // namespace jointwright
