#pragma once
// Parts that carry each other along: how far apart two places of a piece get as its wood swells, found from the whole chain of joints between
// them. SI doubles: metres.

#include "mechanics/seasons/ties.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace jointwright {

/// The piece along one axis: every board a bar that would take its free strain, tied to others where joints hold it along that axis.
///
/// A board has a shift and a strain; another strain than the free one costs E V (s − ε)²/2, with the modulus of its direction, so that a rail along
/// its grain decides over a panel across its own where both go the same way. Along a single chain nothing is strained and the movements just add up.
/// Laws: places of one board move apart by its strain; adding up along a chain, forwards and back again gives nothing; a chain through parts that
/// swell alike moves as one board would. Leaves out: parts that bend aside, the give of joints, slots that reach their ends.
class CarriedParts {
public:
    /// `without`: a body that is left out, as though it were not there.
    CarriedParts(const Given& given, const Ties& ties, Axis axis, const TiedBody* without = nullptr);

    /// True when joints tie two copies to each other along the axis, over whatever others.
    bool tied(std::size_t a, std::size_t b) const;
    /// How much farther apart, made to driest and made to dampest, a place of copy `b` and one of copy `a` get: positive when b goes the way of the
    /// axis from a [m]. Places are along the axis. Of copies that are not tied it says nothing.
    SeasonalStrains apart(std::size_t a, double at_a, std::size_t b, double at_b) const;

private:
    struct Bar {
        double middle = 0, stiffness = 0; ///< E V [J]
        SeasonalStrains free, shift, strain;
        std::size_t group = 0;
    };
    struct Tie {
        std::size_t a = 0, b = 0; ///< bars
        double at = 0;
    };
    void make_bars(const Given& given, const Ties& ties, Axis axis, const TiedBody* without);
    std::vector<Tie> ties_between(const Given& given, const Ties& ties, Axis axis) const;
    void group_bars(const std::vector<Tie>& all);
    void solve(const std::vector<Tie>& all);

    static constexpr std::size_t kNone = static_cast<std::size_t>(-1);
    std::vector<Bar> bars_;
    std::vector<std::size_t> bar_of_; ///< by copy
};

} // namespace jointwright
