#include "mechanics/beam/simple_beam.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

struct Part {
    double bending = 0, shear = 0;         // deflections [m]
    double middle = 0, end = 0, force = 0; // moments at mid-span and at a built-in end [N m], shear at a support [N]
};

Part patch_part(double load, double c, double span, double stiffness, double shear_stiffness, bool fixed)
{
    Part part;
    const double free_moment = load * (2 * span - c) / 8;
    part.bending = load * (8 * span * span * span - 4 * span * c * c + c * c * c) / (384 * stiffness);
    part.shear = free_moment / shear_stiffness;
    part.middle = free_moment;
    part.force = load / 2;
    if (!fixed) return part;
    part.end = load * (3 * span * span - c * c) / (24 * span);
    part.bending -= part.end * span * span / (8 * stiffness);
    part.middle -= part.end;
    return part;
}

std::string sizes(const SimpleBeam& beam)
{
    return fmt::format("L = {} mm, b = {} mm, d = {} mm", write_number(in_millimetres(beam.span), 5),
                       write_number(in_millimetres(beam.width), 4), write_number(in_millimetres(beam.depth), 4));
}

} // namespace

BeamAnswer beam_answer(const SimpleBeam& beam, const BeamLoads& loads, const Facts& facts, Working* working)
{
    const double span = in_metres(beam.span), b = in_metres(beam.width), d = in_metres(beam.depth);
    const double inertia = b * d * d * d / 12, shear_area = 5.0 / 6 * b * d;
    const double stiffness = beam.modulus_along.value() * inertia, shear_stiffness = beam.shear_modulus.value() * shear_area;

    Part sum;
    const auto add = [&](double load, double length) {
        if (load == 0) return;
        const Part part = patch_part(load, length, span, stiffness, shear_stiffness, beam.fixed_ends);
        sum.bending += part.bending;
        sum.shear += part.shear;
        sum.middle += part.middle;
        sum.end += part.end;
        sum.force += part.force;
    };
    add(loads.point.value(), 0);
    add(loads.uniform.value() * span, span);
    add(loads.patch.value(), std::min(in_metres(beam.span), in_metres(loads.patch_length)));

    BeamAnswer answer;
    answer.deflection = metres(sum.bending + sum.shear);
    const double moment = std::max(std::abs(sum.middle), std::abs(sum.end));
    answer.moment = newton_metres(moment);
    answer.shear = newtons(sum.force);
    answer.bending_stress = pascals(6 * moment / (b * d * d));
    answer.shear_stress = pascals(1.5 * std::abs(sum.force) / (b * d));
    answer.span_ratio = answer.deflection.value() != 0 ? span / answer.deflection.value() : 0;
    if (!working) return answer;

    const std::string source = facts.cite("wood-handbook-2010", "eq. 9-2 and table 9-1 (from memory; derived again)");
    working->push_back(
        {"Bending part of the deflection at mid-span",
         beam.fixed_ends ? "δ = kb W L³/(E I), ends built in" : "δ = kb W L³/(E I), ends free to turn",
         fmt::format("{}, E = {} GPa, I = b d³/12 = {} mm⁴, point {} N, uniform {} N/m, patch {} N over {} mm", sizes(beam),
                     write_number(beam.modulus_along.value() * 1e-9, 4), write_number(inertia * 1e12, 6),
                     write_number(loads.point.value(), 4), write_number(loads.uniform.value(), 4),
                     write_number(loads.patch.value(), 4), write_number(in_millimetres(loads.patch_length), 4)),
         sum.bending, "m", source});
    working->push_back({"Shear part of the deflection", "δ = ks W L/(G A'), A' = 5/6 b d",
                        fmt::format("G = {} GPa, A' = {} mm²", write_number(beam.shear_modulus.value() * 1e-9, 4),
                                    write_number(shear_area * 1e6, 5)),
                        sum.shear, "m", source});
    working->push_back({"Largest bending moment", beam.fixed_ends ? "mid-span or built-in end, the larger" : "mid-span",
                        fmt::format("mid-span {} N m, ends {} N m", write_number(sum.middle, 4), write_number(sum.end, 4)),
                        moment, "N m", "mechanics"});
    working->push_back({"Bending stress", "σ = 6 M/(b d²)", fmt::format("M = {} N m, {}", write_number(moment, 4), sizes(beam)),
                        answer.bending_stress.value(), "Pa", "mechanics"});
    working->push_back({"Shear stress", "τ = 3 V/(2 b d)", fmt::format("V = {} N", write_number(sum.force, 4)),
                        answer.shear_stress.value(), "Pa", "mechanics"});
    return answer;
}

} // namespace jointwright
