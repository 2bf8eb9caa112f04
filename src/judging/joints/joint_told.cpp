// The values and the working of a judged joint.

#include "judging/joints/joint_told.hpp"

#include "measure/write.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

std::vector<NamedValue> values_of_joint(const JointCapacity& c, const JointUse& u)
{
    std::vector<NamedValue> values = {
        {"moment", std::max(u.moment, u.flat), "N m"},
        {"moment_resistance", (u.flat > u.moment && c.flat.value() > 0 ? c.flat : c.mean).value() * u.turn_factor, "N m"},
        {"moment_mean", c.mean.value(), "N m"},
        {"flat_moment", u.flat, "N m"},
        {"torsion", u.torsion, "N m"},
        {"torsion_resistance", c.torsion.value() * u.factor, "N m"},
        {"pull", u.pull, "N"},
        {"withdrawal_resistance", c.withdrawal.value() * u.factor, "N"},
        {"shear", u.shear, "N"},
        {"glue_line_moment", c.glue_line.value(), "N m"}};
    if (c.tongue.value() > 0) values.push_back({"own_section_moment", c.tongue.value(), "N m"});
    if (c.published) values.push_back({"published_moment", c.published->value(), "N m"});
    if (c.shape.value() > 0) values.push_back({"moment_by_shape", c.shape.value(), "N m"});
    if (c.wedge.value() > 0) values.push_back({"pull_by_wedge", c.wedge.value(), "N"});
    if (c.pegs.value() > 0) {
        values.push_back({"pull_by_pegs", c.pegs.value(), "N"});
        values.push_back({"moment_by_pegs", c.pegged.value(), "N m"});
    }
    return values;
}

/// "From the mean to what a durability load may ask".
static std::string factor_words(DemandKind kind)
{
    if (kind == DemandKind::service) return "From the mean to what is allowed in service";
    return kind == DemandKind::durability ? "From the mean to what outlasts the repeats of a durability load"
                                          : "From the mean to what a proof load may ask";
}

Working working_of_joint(const Facts& facts, JointForm form, std::string_view level, const JointCapacity& c,
                         const JointDemand& demand, const JointUse& u, Working strength)
{
    Working w = std::move(strength);
    w.push_back({fmt::format("Demand: {}", demand.name), "M", demand.sum, std::max(u.moment, u.flat), "N m", demand.source});
    w.push_back({factor_words(demand.kind), joint_factor_formula(facts, form, demand.kind, level, c.lower_share), "", u.factor,
                 "1", joint_factor_source(facts, form, demand.kind, level)});
    if (u.turn_factor == u.crushed || (c.pressed.value() > 0 && u.shear > 0))
        w.push_back({"The same for wood that is only pressed in, as bearing has it", demand.proof ? "f" : "f/1.67", "", u.crushed,
                     "1", facts.number("bearing_pass_divisor").cite.text()});
    if (c.section_shear.value() > 0 && u.shear > 0)
        w.push_back({"Shear that its own section hands down (mean)",
                     c.pressed_shoulder || c.twist.value() > 0 ? "V = 2/3 f_v t w" : "", "", c.section_shear.value(), "N",
                     "mechanics"});
    if (std::isfinite(u.use))
        w.push_back(
            {"Together: what draws on the same faces added up, torsion and shear joined by squares",
             "u = √((M/M_r + M_f/M_fr + N/N_r)² + (T/T_r)² + (V/V_r)²)",
             fmt::format("M = {} N m, M_f = {} N m, N = {} N, T = {} N m, V = {} N", write_number(u.moment, 3),
                         write_number(u.flat, 3), write_number(u.pull, 3), write_number(u.torsion, 3), write_number(u.shear, 3)),
             u.use, "1", "interaction of strengths (engineering estimate)"});
    for (const std::string& line : c.range)
        w.push_back({"Range: " + line, "", "", c.mean.value(), "N m", "see the strength above"});
    return w;
}

} // namespace jointwright
