// Dowels: each drawn out of the post by itself.

#include "bond/joints/joint_forms.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace jointwright {

namespace {

std::string mm(Length v) { return write_number(in_millimetres(v), 4); }

/// Shear on their surface that dowels of every wood were measured to bear [Pa].
double least_on_surface(const Facts& facts, Stress shear, MoistureContent moisture, const GlueRecord* glue)
{
    constexpr double usual = 0.12;
    const double typical = facts.number("dowel_surface_typical").value, low = facts.number("dowel_surface_low").value,
                 damp = facts.number("dowel_surface_damp").value;
    const double wet = std::max(0.0, (moisture.percent() / 100 - usual) / (damp - usual));
    double least = std::min(std::max(0.0, typical - (typical - low) * wet), shear.value());
    if (glue && glue->shear) least = std::min(least, glue->shear->value.value());
    return least;
}

/// One dowel drawn from the post, by both opinions and the least that was measured.
Force one_dowel(const JointGround& g)
{
    const JointSizes& s = g.sizes;
    const Length depth = s.length / 2.0;
    const Stress f = g.glue_strength_at(kCrossedGrains), shear = g.weaker_shear();
    const double surface = std::numbers::pi * in_metres(s.diameter) * in_metres(depth);
    const double fit = g.woods.glue ? fit_share(g.facts, s.clearance, g.woods.glue->gap_filling) : 0;
    // `f` has the fit in it already.
    const Force by_glue = newtons(fit > 0 ? f.value() / fit * surface : 0),
                one = dowel_withdrawal(g.facts, s.diameter, depth, by_glue, shear, g.woods.post->moisture, g.woods.glue) * fit;
    g.say({"One dowel pulled from the post by the published expression (mean)", "F = 0.834 D L^0.89 (0.95 S1 + S2), in and psi",
           fmt::format("D = {} mm, L = {} mm in each part, S1 = S2 = {}", mm(s.diameter), mm(depth), write_stress(shear)),
           dowel_expression(g.facts, s.diameter, depth, shear, shear).value(), "N",
           g.facts.number("dowel_expression").cite.text()});
    g.say({"The same by the glue line round it, grains crossed in the post", "F = f π D L", "", by_glue.value(), "N",
           g.facts.number("crossed_grain_share").cite.text()});
    g.say({"The lower of both, but not less than dowels were measured to bear on their surface, and lessened by the fit",
           "5 MPa at 12 %, 3 MPa at 18 %", fmt::format("share of the fit {}", write_number(fit, 3)), one.value(), "N",
           g.facts.number("dowel_surface_typical").cite.text()});
    return one;
}

/// What slides and twists them: their own sections, each by its distance from the middle.
void across_dowels(const JointGround& g, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    const double n = s.count, d = in_metres(s.diameter), high = in_metres(s.rail_depth);
    const double one = 0.75 * g.weaker_shear().value() * std::numbers::pi * d * d / 4;
    c.section_shear = newtons(n * one);
    double radii = 0;
    for (int i = 0; i < s.count; ++i) {
        const double r = ((i + 0.5) / n - 0.5) * high;
        radii += r * r;
    }
    const double outermost = (n - 1) / (2 * n) * high;
    // One alone turns in its hole: its section twisted, the same stress all over.
    c.torsion =
        newton_metres(s.count > 1 ? one * radii / outermost : g.weaker_shear().value() * std::numbers::pi * d * d * d / 12);
    g.say({"Dowels twisted about their middle, each sheared by its distance from it", "T = V Σ r²/r_max", "", c.torsion.value(),
           "N m", "mechanics"});
}

} // namespace

Force dowel_withdrawal(const Facts& facts, Length diameter, Length depth, Force by_glue, Stress shear, MoistureContent moisture,
                       const GlueRecord* glue)
{
    const double surface = std::numbers::pi * in_metres(diameter) * in_metres(depth);
    const Force by_expression = dowel_expression(facts, diameter, depth, shear, shear);
    return std::max(std::min(by_glue, by_expression), newtons(least_on_surface(facts, shear, moisture, glue) * surface));
}

std::string_view dowels_strength(const JointGround& g, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    const double n = s.count, high = in_metres(s.rail_depth), one = one_dowel(g).value();
    c.glued = square_metres(n * std::numbers::pi * in_metres(s.diameter) * in_metres(s.length) / 2);
    c.withdrawal = newtons(n * one);
    c.pressed_shoulder = true;
    // Dowels stand at (i - 1/2)/n of the depth. Turned about the pressed edge, each is drawn by its distance from it.
    double levers = 0;
    const double farthest = (n - 0.5) / n * high;
    for (int i = 0; i < s.count; ++i) {
        const double at = (i + 0.5) / n * high;
        levers += at * at / farthest;
    }
    c.glue_line = newton_metres(g.facts.number("tenon_lever_share").value * one * levers);
    c.flat = pulled_out(g, c.withdrawal, s.rail_thickness / 2.0);
    g.say({"Dowels drawn out about the pressed edge of the rail, each by its distance from it", "M = 0.9 F Σ z²/z_max",
           fmt::format("{} dowel{} evenly over {} mm", s.count, s.count == 1 ? "" : "s", mm(s.rail_depth)), c.glue_line.value(),
           "N m", g.facts.number("tenon_lever_share").cite.text()});
    across_dowels(g, c);
    if (s.count == 2) {
        c.published = newton_metres(one * (high / 2 + high / 4 / 2));
        g.say({"Two dowels by the published expression", "M = F (d1 + d2/2)",
               fmt::format("d1 = {} mm, d2 = {} mm", mm(s.rail_depth / 2.0), mm(s.rail_depth / 4.0)), c.published->value(), "N m",
               g.facts.cite("eckelman-dowels", "two dowels in the plane of the rail (from memory)")});
    } else {
        c.range.push_back(
            fmt::format("the published moment expression is for two dowels, here {}: the glue line alone is reckoned", s.count));
    }
    if (2 * g.weaker_shear().value() < g.facts.number("dowel_expression_least_shear").value)
        c.range.push_back(
            "the two shear strengths add up to less than 25 MPa: the published withdrawal expression reads too low there "
            "(Chen and others, 2019)");
    return "the published expression (Eckelman)";
}

} // namespace jointwright
