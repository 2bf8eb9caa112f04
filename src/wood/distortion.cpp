#include "wood/distortion.hpp"

#include "measure/write.hpp"

#include <boost/math/tools/minima.hpp>
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace jointwright {

namespace {

struct PlanePoint {
    double x, y;
};

/// The wide face in the plane of the end grain, pith at the origin, middle of the width at (0, r).
class FaceLine {
public:
    FaceLine(const EndGrain& grain, const RingStrain& strain)
        : radius_(in_metres(grain.ring_radius)), cos_(std::cos(grain.rings.value())), sin_(std::sin(grain.rings.value())),
          radial_(1 + strain.radial), turn_((1 + strain.tangential) / (1 + strain.radial))
    {
    }

    /// Where the wood at a distance from mid-width along the face comes to lie.
    PlanePoint moved(double along) const
    {
        const double x = along * cos_, y = radius_ + along * sin_;
        const double rho = std::hypot(x, y) * radial_, theta = std::atan2(x, y) * turn_;
        return {rho * std::sin(theta), rho * std::cos(theta)};
    }

private:
    double radius_, cos_, sin_, radial_, turn_;
};

} // namespace

Cup cup_of(const EndGrain& grain, const RingStrain& strain)
{
    const double half = in_metres(grain.width) / 2;
    const FaceLine face(grain, strain);
    const PlanePoint a = face.moved(-half), b = face.moved(half);
    const double chord = std::hypot(b.x - a.x, b.y - a.y);
    // Height of the chord over the face, counted away from the pith.
    const auto below_chord = [&](double along) {
        const PlanePoint p = face.moved(along);
        return ((b.y - a.y) * (p.x - a.x) - (b.x - a.x) * (p.y - a.y)) / chord;
    };
    // The face bends one way only, so its distance from the chord has a single peak: its side is that of the middle.
    const double side = below_chord(0) < 0 ? -1 : 1;
    constexpr int kBits = 26; // half of a double: all that a minimum can be told to
    const auto lowest =
        boost::math::tools::brent_find_minima([&](double along) { return -side * below_chord(along); }, -half, half, kBits);
    Cup cup;
    cup.depth = metres(side * std::max(0.0, -lowest.second));
    cup.width_strain = chord / (2 * half) - 1;
    return cup;
}

Length cup_by_curvature(const EndGrain& grain, const RingStrain& strain)
{
    const double w = in_metres(grain.width), c = std::cos(grain.rings.value());
    return metres((strain.radial - strain.tangential) * w * w * c * c * c / (4 * in_metres(grain.ring_radius)));
}

RingStrain ring_strain(const MovementLaw& law, MoistureContent from, MoistureContent to)
{
    return {movement_strain(law.tangential, law.fibre_saturation, from, to),
            movement_strain(law.radial, law.fibre_saturation, from, to)};
}

Working ring_strain_working(const Facts& facts, const MovementLaw& law, MoistureContent from, MoistureContent to)
{
    const RingStrain strain = ring_strain(law, from, to);
    // Within the range of the printed coefficients the strain is C (M1 - M0) itself.
    const bool narrow = std::abs(strain.tangential - law.tangential.per_point() * (to - from).points()) < 1e-12;
    const std::string formula = narrow ? "ε = C (M1 − M0)" : "ε = (M1 − M0)/(1/C − 10 + M0), each M at most fibre saturation";
    const std::string source =
        facts.cite("wood-handbook-2010", narrow ? "eq. 13-2" : "eq. 13-3 (from memory), with the shrinkage that fits C");
    const std::string seasons = fmt::format("{} to {}", write_moisture(from), write_moisture(to));
    Working w;
    w.push_back({"Movement around the rings, per 1 % of moisture", "C_T", law.tangential_cite.note, law.tangential.per_point(),
                 "1", law.tangential_cite.text()});
    w.push_back({"Movement across the rings, per 1 % of moisture", "C_R", law.radial_cite.note, law.radial.per_point(), "1",
                 law.radial_cite.text()});
    w.push_back({"Strain around the rings from " + seasons, formula, "C = C_T", strain.tangential, "1", source});
    w.push_back({"Strain across the rings from " + seasons, formula, "C = C_R", strain.radial, "1", source});
    return w;
}

Angle shear_of_section(Angle rings, const RingStrain& strain)
{
    return radians((strain.tangential - strain.radial) * std::sin(2 * rings.value()));
}

} // namespace jointwright
