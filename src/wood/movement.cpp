#include "wood/movement.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kNarrowFrom = 6, kNarrowTo = 14; // percent: range of the printed coefficients
constexpr double kCoefficientBase = 10;           // percent: moisture content that the coefficients refer to

bool within_narrow_range(MoistureContent m) { return m.percent() >= kNarrowFrom && m.percent() <= kNarrowTo; }

/// C = 1/(100 F/S − F + 10).
MovementCoefficient from_shrinkage(double shrinkage_pct, MoistureContent saturation)
{
    const double f = saturation.percent();
    return MovementCoefficient::per_point(1 / (100 * f / shrinkage_pct - f + kCoefficientBase));
}

/// Own value, printed coefficient, or one from shrinkage; false when there is none.
bool choose(const Facts& facts, const std::optional<MovementCoefficient>& own,
            const std::optional<Datum<MovementCoefficient>>& printed, const std::optional<Datum<double>>& shrinkage,
            MoistureContent saturation, MovementCoefficient& coefficient, Citation& cite)
{
    if (own) {
        coefficient = *own;
        cite = {"the design's own test value", "", Provenance::retrieved, ""};
        return true;
    }
    if (printed) {
        coefficient = printed->value;
        cite = printed->cite;
        return true;
    }
    if (!shrinkage) return false;
    coefficient = from_shrinkage(shrinkage->value, saturation);
    cite = {
        facts.source("wood-handbook-2010"),
        fmt::format("eq. 13-3 at 10 % from the shrinkage {} % of {}", write_number(shrinkage->value, 3), shrinkage->cite.text()),
        Provenance::computed, shrinkage->cite.note};
    return true;
}

/// What a maker can go by where a wood's own figures are missing.
std::string nearest_words(const WoodRecord& wood)
{
    if (wood.nearest.empty()) return {};
    return fmt::format(" ({}the nearest listed relative is {}: {})", wood.has_figures() ? "" : "no figures of it are held; ",
                       wood.nearest, wood.nearest_why);
}

} // namespace

std::string nearest_sentence(const WoodRecord& wood)
{
    return fmt::format("Of {} {} held; the nearest listed relative is {}: {}.", wood.name,
                       wood.has_figures() ? "not all figures are" : "no figures are", wood.nearest, wood.nearest_why);
}

std::variant<MovementLaw, std::string> movement_law(const Facts& facts, const WoodRecord* wood, const OwnMovement& own)
{
    MovementLaw law;
    const Datum<double>& saturation = facts.number("fibre_saturation");
    law.fibre_saturation =
        wood && wood->fibre_saturation ? wood->fibre_saturation->value : MoistureContent::percent(saturation.value * 100);
    const Datum<double>& along = facts.number("movement_along");
    law.along = MovementCoefficient::per_point(along.value);
    law.along_cite = along.cite;
    static const WoodRecord nothing;
    const WoodRecord& record = wood ? *wood : nothing;
    const std::string name = wood ? wood->name + nearest_words(*wood) : "a wood described by its own values";
    if (!choose(facts, own.tangential, record.tangential, record.shrinkage_tangential, law.fibre_saturation, law.tangential,
                law.tangential_cite))
        return fmt::format("tangential movement coefficient or shrinkage of {}", name);
    if (!choose(facts, own.radial, record.radial, record.shrinkage_radial, law.fibre_saturation, law.radial, law.radial_cite))
        return fmt::format("radial movement coefficient or shrinkage of {}", name);
    return law;
}

double movement_strain(MovementCoefficient coefficient, MoistureContent fibre_saturation, MoistureContent from,
                       MoistureContent to)
{
    const double c = coefficient.per_point();
    if (c == 0 || from == to) return 0;
    if (within_narrow_range(from) && within_narrow_range(to)) return c * (to - from).points();
    const double f = fibre_saturation.percent();
    const double m0 = std::clamp(from.percent(), 0.0, f), m1 = std::clamp(to.percent(), 0.0, f);
    // 100 F/S' − F + M0 with S' = 100 F/(1/C + F − 10): the two laws meet at a start of 10 %.
    return (m1 - m0) / (1 / c - kCoefficientBase + m0);
}

BoardStrain board_strain(const MovementLaw& law, Angle rings, MoistureContent from, MoistureContent to)
{
    BoardStrain strain;
    strain.tangential = movement_strain(law.tangential, law.fibre_saturation, from, to);
    strain.radial = movement_strain(law.radial, law.fibre_saturation, from, to);
    const double f = law.fibre_saturation.percent();
    strain.along = law.along.per_point() * (std::clamp(to.percent(), 0.0, f) - std::clamp(from.percent(), 0.0, f));
    const double c = std::cos(rings.value()), s = std::sin(rings.value());
    strain.width = strain.tangential * c * c + strain.radial * s * s;
    strain.thickness = strain.tangential * s * s + strain.radial * c * c;
    strain.shear = 2 * (strain.tangential - strain.radial) * s * c;
    return strain;
}

Working movement_working(const Facts& facts, const MovementLaw& law, Angle rings, Length width, MoistureContent from,
                         MoistureContent to)
{
    Working w;
    const double c = std::cos(rings.value()), s = std::sin(rings.value());
    const double ct = law.tangential.per_point(), cr = law.radial.per_point(), both = ct * c * c + cr * s * s;
    const bool tangential_only = s * s < 1e-9, radial_only = c * c < 1e-9;
    if (!radial_only)
        w.push_back(
            {"Movement tangentially, per 1 % of moisture", "C_T", law.tangential_cite.note, ct, "1", law.tangential_cite.text()});
    if (!tangential_only)
        w.push_back({"Movement radially, per 1 % of moisture", "C_R", law.radial_cite.note, cr, "1", law.radial_cite.text()});
    if (!tangential_only && !radial_only)
        w.push_back({"Movement across the width at this ring angle, per 1 %", "C = C_T cos²φ + C_R sin²φ",
                     fmt::format("φ = {}", write_angle(rings)), both, "1", "plane strain transformation"});
    const BoardStrain strain = board_strain(law, rings, from, to);
    const double change = strain.width * in_metres(width);
    const std::string numbers =
        fmt::format("D = {} mm, {} to {}", write_number(in_millimetres(width), 4), write_moisture(from), write_moisture(to));
    if (within_narrow_range(from) && within_narrow_range(to))
        w.push_back({fmt::format("Change of width from {} to {}", write_moisture(from), write_moisture(to)), "ΔD = D C (M1 − M0)",
                     numbers, change, "m", facts.cite("wood-handbook-2010", "eq. 13-2")});
    else
        w.push_back({fmt::format("Change of width from {} to {}, beyond 6 to 14 %", write_moisture(from), write_moisture(to)),
                     "ΔD = D (M1 − M0)/(1/C − 10 + M0), each M at most fibre saturation",
                     numbers + fmt::format(", fibre saturation {}", write_moisture(law.fibre_saturation)), change, "m",
                     facts.cite("wood-handbook-2010", "eq. 13-3 (from memory), with the shrinkage that fits C")});
    return w;
}

} // namespace jointwright
