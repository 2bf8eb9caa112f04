#include "bond/glue/glue_patch.hpp"

#include "bond/glue/glue_line.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace jointwright {

namespace {

/// Demand over capacity; without capacity any demand is too much.
double share_of(double demand, double capacity)
{
    if (demand == 0) return 0;
    return capacity > 0 ? demand / capacity : std::numeric_limits<double>::infinity();
}

std::string patch_words(const GluePatch& patch)
{
    return fmt::format("{} face{} of {} × {} mm", patch.faces, patch.faces == 1 ? "" : "s",
                       write_number(in_millimetres(patch.a), 4), write_number(in_millimetres(patch.b), 4));
}

} // namespace

PatchUse patch_use(const GluePatch& patch, const PatchForces& forces, Stress shear_strength, Stress tension_strength,
                   Working* working)
{
    const double a = in_metres(patch.a), b = in_metres(patch.b), n = patch.faces, area = patch.area().value();
    const double force = std::hypot(forces.along_a.value(), forces.along_b.value()), twist = std::abs(forces.twist.value());
    const double turning = n * twisting_capacity(patch.a, patch.b).value();
    PatchUse u;
    u.direct = pascals(force / area);
    u.twisting = pascals(twist / turning);
    u.shear = pascals(std::hypot(u.direct.value(), u.twisting.value()));
    u.corner = pascals(6 * twist / (n * a * b * std::hypot(a, b)));
    const double bending =
        6 * std::abs(forces.bend_a.value()) / (n * a * b * b) + 6 * std::abs(forces.bend_b.value()) / (n * b * a * a);
    u.tension = pascals(std::max(0.0, forces.normal.value() / area + bending));
    const double direct = share_of(force, shear_strength.value() * area),
                 twisting = share_of(twist, shear_strength.value() * turning),
                 tension = share_of(u.tension.value(), tension_strength.value());
    u.use = std::sqrt(direct * direct + twisting * twisting + tension * tension);
    if (!working) return u;
    working->push_back({"Direct shear stress", "τ₁ = F/A",
                        fmt::format("F = {} N, {}", write_number(force, 4), patch_words(patch)), u.direct.value(), "Pa",
                        "mechanics"});
    working->push_back({"Stress that balances the twist, alike all over the face", "τ₂ = T/∫ρ dA",
                        fmt::format("T = {} N m, ∫ρ dA = {} mm³", write_number(twist, 4), write_number(turning * 1e9, 5)),
                        u.twisting.value(), "Pa", "mechanics"});
    working->push_back({"Elastic stress in the corners, shown only", "τ = T ρ/J_p", "", u.corner.value(), "Pa", "mechanics"});
    working->push_back({"Largest tension across the face", "σ = N/A + 6 M/(a b²)",
                        fmt::format("N = {} N", write_number(forces.normal.value(), 4)), u.tension.value(), "Pa", "mechanics"});
    working->push_back({"Together", "u = √((F/(f_v A))² + (T/T_u)² + (σ/f_t)²)",
                        fmt::format("f_v = {}, f_t = {}", write_stress(shear_strength), write_stress(tension_strength)), u.use,
                        "1", "interaction of strengths (engineering estimate)"});
    return u;
}

Moment twist_capacity(const GluePatch& patch, Stress shear_strength)
{
    return newton_metres(shear_strength.value() * patch.faces * twisting_capacity(patch.a, patch.b).value());
}

Moment elastic_corner_twist(const GluePatch& patch, Stress shear_strength)
{
    const double a = in_metres(patch.a), b = in_metres(patch.b);
    return newton_metres(shear_strength.value() * patch.faces * a * b * std::hypot(a, b) / 6);
}

Stress peel_stress(const GluePatch& patch, Force lift, Length arm)
{
    const double a = in_metres(patch.a), area = patch.area().value();
    return pascals(lift.value() / area * (1 + 6 * std::abs(in_metres(arm)) / a));
}

double coth_peak(double u) { return std::abs(u) < 1e-6 ? 1 : u / std::tanh(u); }

double lap_end_peak(const Facts& facts, Length length, const LapLayer& first, const LapLayer& second)
{
    const double t1 = in_metres(first.thickness), t2 = in_metres(second.thickness);
    const double give = t1 / (3 * first.shear_modulus.value()) + t2 / (3 * second.shear_modulus.value()) +
                        facts.number("glue_line_thickness").value / facts.number("glue_shear_modulus").value;
    const double beta = std::sqrt((1 / (first.modulus.value() * t1) + 1 / (second.modulus.value() * t2)) / give);
    return coth_peak(beta * in_metres(length) / 2);
}

double fit_share(const Facts& facts, Length clearance, bool gap_filling)
{
    const std::string kind = gap_filling ? "_filling" : "";
    const double full = facts.number("thin_glue_line" + kind).value, none = facts.number("lost_glue_line" + kind).value;
    return std::clamp((none - in_metres(clearance)) / (none - full), 0.0, 1.0);
}

} // namespace jointwright
