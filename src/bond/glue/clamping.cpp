#include "bond/glue/clamping.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

/// Straight between three points, level outside them.
double between_three(double x, const double (&at)[3], const double (&value)[3])
{
    if (x <= at[0]) return value[0];
    if (x >= at[2]) return value[2];
    const int i = x < at[1] ? 0 : 1;
    return value[i] + (value[i + 1] - value[i]) * (x - at[i]) / (at[i + 1] - at[i]);
}

int whole_up(double number) { return std::max(1, static_cast<int>(std::ceil(number - 1e-9))); }

} // namespace

Stress clamping_pressure(const Facts& facts, Density density, const GlueRecord* glue, Working* working)
{
    if (glue && glue->pressure) {
        if (working)
            working->push_back({fmt::format("Pressure that {} asks for", glue->name), "p", "", glue->pressure->value.value(),
                                "Pa", glue->pressure->cite.text()});
        return glue->pressure->value;
    }
    const double at[3] = {facts.number("density_light").value, facts.number("density_medium").value,
                          facts.number("density_dense").value};
    const Datum<double>& light = facts.number("clamp_pressure_light");
    const double pressure[3] = {light.value, facts.number("clamp_pressure_medium").value,
                                facts.number("clamp_pressure_dense").value};
    const double p = between_three(density.value(), at, pressure);
    if (working)
        working->push_back({"Clamping pressure by the density of the denser wood, 0.7 MPa light to 1.7 MPa dense", "p(ρ)",
                            fmt::format("ρ = {} kg/m3", write_number(density.value(), 3)), p, "Pa", light.cite.text()});
    return pascals(p);
}

ClampPlan clamp_plan(const Facts& facts, const ClampFace& face, Density density, const GlueRecord* glue, Working* working)
{
    ClampPlan plan;
    plan.pressure = clamping_pressure(facts, density, glue, working);
    plan.force = newtons(plan.pressure.value() * face.area.value());
    const Datum<double>& one = facts.number("clamp_force");
    const Datum<double>& cone = facts.number("clamp_pressure_cone");
    const Datum<double>& nearest = facts.number("clamp_nearest");
    const double reach = in_metres(face.reach), usual = facts.number("caul_thickness").value, length = in_metres(face.length);
    const double widest = cone.value * (reach + usual);
    plan.rows = in_metres(face.breadth) > widest ? 2 : 1;
    const int most = plan.rows * whole_up(length / nearest.value);
    const int by_force = whole_up(plan.force.value() / one.value), by_spacing = plan.rows * whole_up(length / widest);
    plan.clamps = std::min(std::max(by_force, by_spacing), most);
    if (plan.rows > 1) plan.clamps += plan.clamps % 2;
    plan.per_clamp = newtons(std::min(plan.force.value() / plan.clamps, one.value));
    plan.reached = pascals(plan.per_clamp.value() * plan.clamps / face.area.value());
    plan.enough = plan.reached.value() >= facts.number("clamp_pressure_least_share").value * plan.pressure.value() * (1 - 1e-9);
    plan.spacing = metres(length / std::ceil(static_cast<double>(plan.clamps) / plan.rows));
    const double depth = in_metres(plan.spacing) / cone.value - reach;
    if (depth > usual + 1e-9) plan.board = metres(depth);
    if (face.crushed_from && face.crushed_from->value() > 0)
        plan.caul =
            metres(std::sqrt(plan.per_clamp.value() / (facts.number("caul_stress_share").value * face.crushed_from->value())));
    if (!working) return plan;
    working->push_back({"Force to press the face", "F = p A", fmt::format("A = {} cm2", write_number(face.area.value() * 1e4, 3)),
                        plan.force.value(), "N", "mechanics"});
    working->push_back({"Clamps by force", "n = F/F_clamp", fmt::format("F_clamp = {} N", write_number(one.value, 3)),
                        static_cast<double>(by_force), "1", one.cite.text()});
    working->push_back({"Clamps by spacing under usual cauls", "n = L/s rounded up, s = 2 (wood + caul)",
                        fmt::format("L = {} mm, s = {} mm{}", write_number(length * 1e3, 3), write_number(widest * 1e3, 3),
                                    plan.rows == 1 ? "" : ", boards across, a clamp at either end"),
                        static_cast<double>(by_spacing), "1", cone.cite.text()});
    working->push_back(
        {"Most clamps of sense", "n = L/s rounded up",
         fmt::format("s = {} mm{}", write_number(nearest.value * 1e3, 3), plan.rows == 1 ? "" : ", at either side"),
         static_cast<double>(most), "1", nearest.cite.text()});
    working->push_back({"Force of each clamp", "F/n, at most what a hand gives", fmt::format("n = {}", plan.clamps),
                        plan.per_clamp.value(), "N", "mechanics"});
    return plan;
}

std::optional<Mass> glue_quantity(const Facts& facts, const GlueRecord& glue, Area area, Working* working)
{
    if (!glue.spread) return std::nullopt;
    const Datum<double>& ready = facts.number("glue_squeezed_out");
    const double mass = glue.spread->value * area.value() * ready.value;
    if (working)
        working->push_back(
            {fmt::format("Glue to have ready, {}", glue.name), "m = spread × area × 1.2",
             fmt::format("{} g/m2 on {} cm2", write_number(glue.spread->value * 1e3, 3), write_number(area.value() * 1e4, 3)),
             mass, "kg", glue.spread->cite.text()});
    return kilograms(mass);
}

} // namespace jointwright
