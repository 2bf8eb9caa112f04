#pragma once
// The values of options, read into quantities; what is wrong with any of them is gathered and told in one go.

#include "app/answer.hpp"
#include "measure/read.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// Longer things are not made of one piece of wood, nor meant.
const Length kLongest = metres(20);

/// Reads option values. A value that cannot be taken leaves a fault behind and comes back as zero: look at faults() before using any.
class ValueReader {
public:
    /// A required size: from 0.01 mm to `most`.
    Length length(const std::string& option, const std::optional<std::string>& text, Length most = kLongest);
    /// Sizes with x between them, `least` to `most` of them; nothing when they cannot be taken.
    std::vector<Length> sizes(const std::string& option, const std::string& text, std::size_t least, std::size_t most,
                              std::string_view example);
    /// A place along something: any sign, at most 20 m.
    Length place(const std::string& option, const std::string& text);
    /// A length from 0 on, at most 20 m.
    Length length_or_none(const std::string& option, const std::string& text);
    /// Lengths parted by x: exactly `count` of them, each a size. `example` is what to write.
    std::vector<Length> sizes(const std::string& option, const std::optional<std::string>& text, std::size_t count,
                              std::string_view example, Length most = kLongest);
    /// Lengths parted by x and a whole number at the end: `3/8in x 2in x 2`.
    std::pair<std::vector<Length>, int> sizes_and_count(const std::string& option, const std::optional<std::string>& text,
                                                        std::size_t count, std::string_view example, Length most = kLongest);
    Force force(const std::string& option, const std::string& text);
    LineLoad line_load(const std::string& option, const std::string& text);
    Stress stress(const std::string& option, const std::string& text);
    /// FORCE:LENGTH.
    std::pair<Force, Length> patch(const std::string& option, const std::string& text);
    /// A moisture content from 0 to kWettest percent.
    MoistureContent moisture(const std::string& option, const std::optional<std::string>& text);
    RelativeHumidity humidity(const std::string& option, const std::optional<std::string>& text);
    /// A temperature within the range of the moisture equation.
    Temperature temperature(const std::string& option, const std::optional<std::string>& text);
    /// Angle between rings and wide face: flat, rift, quarter or degrees from 0 to 90.
    Angle rings(const std::string& option, const std::string& text);
    /// Angle between two grains: degrees from 0 to 90.
    Angle grain_angle(const std::string& option, const std::string& text);
    /// One word of a few, in the spelling of the list; the first one when it is none of them.
    std::string one_of(const std::string& option, const std::string& text, const std::vector<std::string>& words);

    /// A required option that is absent.
    void missing(const std::string& option, std::string_view example);
    void add(Fault fault) { faults_.push_back(std::move(fault)); }
    const Faults& faults() const { return faults_; }

private:
    template <class T>
    std::optional<T> taken(const std::string& option, const Outcome<T>& outcome);
    bool is_size(const std::string& option, const std::string& text, Length length, Length most = kLongest);
    void out_of_range(const std::string& option, const std::string& text, std::string_view wanted, std::string note = {});
    double percent(const std::string& option, const std::optional<std::string>& text, double most, std::string_view example,
                   std::string_view wanted);

    Faults faults_;
};

/// Wettest wood that is believed; green balsa or cottonwood sap reaches about 200 %.
constexpr double kWettest = 300;

/// Inches when the text is written with inches or feet, else millimetres: the unit a maker wants the answer in.
LengthUnit unit_written(std::string_view text);

} // namespace jointwright
