// Tenons, bridles, laps and dowels: joints whose strength is the shear of glued faces with crossed grains.

#include "bond/joint_forms.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace jointwright {

namespace {

constexpr double kCrossedGrain = std::numbers::pi / 2;
constexpr double kSameSize = 1e-5; // m

std::string mm(Length v) { return write_number(in_millimetres(v), 4); }

/// Moment when the tenon is drawn out about an edge of the rail that presses on the post.
Moment pulled_out(const JointGround& g, Force withdrawal, Length to_pressed_edge)
{
    return newton_metres(withdrawal.value() * g.facts.number("tenon_lever_share").value * in_metres(to_pressed_edge));
}

bool within(Length v, double least, double most) { return in_metres(v) >= least - kSameSize && in_metres(v) <= most + kSameSize; }

void say_twist(const JointGround& g, const JointCapacity& c)
{
    g.say({"The glued faces in twisting, the same stress all over", "T_u = f ∫ρ dA", "", c.twist.value(), "N m", "mechanics"});
    g.say({"The same, elastic, when the stress in a corner reaches the strength (shown only)", "T = f J_p/ρ", "",
           c.corner.value(), "N m", "Smardzewski, Furniture Design (2015), ch. 6 (retrieved); mechanics"});
}

/// A half lap drawn lengthwise: how far the stress at its ends stands above the mean. Shown, not multiplied onto the strength.
void say_end_peak(const JointGround& g)
{
    const WoodState &rail = *g.woods.rail, &post = *g.woods.post;
    if (!rail.modulus_along || !rail.shear_modulus_lt || !post.modulus_tangential || !post.shear_modulus_rt) return;
    const Length half = g.sizes.rail_thickness / 2.0;
    const double peak = lap_end_peak(g.facts, g.sizes.length, {rail.modulus_along->value, rail.shear_modulus_lt->value, half},
                                     {post.modulus_tangential->value, post.shear_modulus_rt->value, half});
    g.say({"Stress at the ends of the lap over its mean when it is drawn lengthwise (shown only)", "(βl/2) coth(βl/2)",
           fmt::format("each half {} mm thick, the post's grain crossed", mm(half)), peak, "1",
           g.facts.source("volkersen-1938")});
}

/// Beside the tenon's own pull-out: the published expression, and what of it lies outside what was tested.
void add_tenon_expression(const JointGround& g, bool loose, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    const double fit = fit_share(g.facts, s.clearance, g.woods.glue && g.woods.glue->gap_filling);
    if (!g.woods.glue) return;
    c.published = newton_metres(fit * tenon_expression(g.facts, s.rail_depth, s.width, s.length, g.weaker_shear()).value());
    const double least = g.facts.number("tenon_expression_least").value, most = g.facts.number("tenon_expression_most").value;
    if (!within(s.width, least, most) || !within(s.length, least, most))
        c.range.push_back(fmt::format("the tenon is {} × {} mm (width × length): the tests known here cover {} to {} mm, so the "
                                      "published expression is stretched beyond them",
                                      mm(s.width), mm(s.length), mm(metres(least)), mm(metres(most))));
    if (loose) c.range.push_back("the published expression was fitted to tenons cut on the rail, not to loose ones");
    g.say({"Published expression for rectangular tenons (mean)", "M = a b (0.25 W + 0.78 d) L^0.8 S, in and psi, a b = 0.8",
           fmt::format("W = {} mm, d = {} mm, L = {} mm, S = {}", mm(s.rail_depth), mm(s.width), mm(s.length),
                       write_stress(g.weaker_shear())),
           c.published->value(), "N m", g.facts.number("tenon_expression_rail").cite.text()});
}

} // namespace

Stress JointGround::glue_strength_at(double grain_angle, bool say_so) const
{
    if (!woods.glue) return pascals(0);
    const auto strength = glue_strength(facts, *woods.rail, woods.rail_name, *woods.post, woods.post_name, woods.glue,
                                        GlueFace::side_grain, grain_angle, say_so ? working : nullptr);
    const double share = fit_share(facts, sizes.clearance, woods.glue->gap_filling);
    if (say_so && share < 1)
        say({"Share of the strength that the fit leaves", "straight down from what the glue bridges",
             fmt::format("clearance {} mm each side", mm(sizes.clearance)), share, "1",
             facts.number(woods.glue->gap_filling ? "lost_glue_line_filling" : "lost_glue_line").cite.text()});
    return pascals(strength->mean.value() * share);
}

Stress JointGround::weaker_shear() const { return std::min(woods.rail->shear->value, woods.post->shear->value); }

std::string_view tenon_strength(const JointGround& g, bool loose, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    const Stress f = g.glue_strength_at(kCrossedGrain);
    const GluePatch cheeks{s.width, s.length, 2};
    c.glued = cheeks.area();
    c.withdrawal = newtons(f.value() * c.glued.value());
    c.section_shear = newtons(2.0 / 3 * g.woods.rail->shear->value.value() * in_metres(s.thickness) * in_metres(s.width));
    c.twist = twist_capacity(cheeks, f);
    c.corner = elastic_corner_twist(cheeks, f);
    c.pressed_shoulder = s.width < s.rail_depth - metres(kSameSize) || s.thickness < s.rail_thickness - metres(kSameSize);
    g.say({"Both cheeks; shoulders and narrow edges count as nothing", "A = 2 w L",
           fmt::format("{} × {} mm", mm(s.width), mm(s.length)), c.glued.value(), "m2", "geometry"});
    if (c.pressed_shoulder) {
        const Length lever = s.rail_depth / 2.0;
        c.glue_line = pulled_out(g, c.withdrawal, lever);
        c.flat = pulled_out(g, c.withdrawal, s.rail_thickness / 2.0);
        g.say({"Drawn out about the edge of the rail whose shoulder presses on the post", "M = f A × 0.9 z",
               fmt::format("z = {} mm from the tenon's middle to that edge", mm(lever)), c.glue_line.value(), "N m",
               g.facts.number("tenon_lever_share").cite.text()});
    } else {
        c.glue_line = c.twist;
        c.range.push_back("no shoulder presses on the post, so only the twisting of the glued faces counts");
    }
    say_twist(g, c);
    if (g.woods.rail->compression_across && g.woods.post->compression_along) {
        const double pressed = std::min(g.woods.rail->compression_across->value, g.woods.post->compression_along->value).value();
        c.shape = newton_metres(pressed * in_metres(s.thickness) * in_metres(s.length) * in_metres(s.length) / 4);
        g.say({"Without glue: the tenon's edges press on the ends of its mortise", "M = f_c t L²/4",
               write_stress(pascals(pressed)), c.shape.value(), "N m", "mechanics (engineering estimate)"});
    }
    add_tenon_expression(g, loose, c);
    if (!c.pressed_shoulder) c.range.push_back("the published expression was fitted to tenons with shoulders");
    return "the published expression (Erdil and others, 2005)";
}

void twisted_faces_strength(const JointGround& g, JointForm form, JointCapacity& c)
{
    const Stress f = g.glue_strength_at(kCrossedGrain);
    const GluePatch faces{g.sizes.width, g.sizes.length, form == JointForm::bridle ? 2.0 : 1.0};
    c.glued = faces.area();
    c.twist = twist_capacity(faces, f);
    c.corner = elastic_corner_twist(faces, f);
    c.glue_line = c.twist;
    c.withdrawal = newtons(f.value() * c.glued.value());
    if (form == JointForm::bridle)
        c.section_shear =
            newtons(2.0 / 3 * g.woods.rail->shear->value.value() * in_metres(g.sizes.thickness) * in_metres(g.sizes.width));
    g.say({"Glued side grain", form == JointForm::bridle ? "A = 2 w L" : "A = w L",
           fmt::format("{} × {} mm", mm(g.sizes.width), mm(g.sizes.length)), c.glued.value(), "m2", "geometry"});
    say_twist(g, c);
    if (form == JointForm::lap) say_end_peak(g);
    c.range.push_back(form == JointForm::bridle ? "no published strength of a single bridle with its sizes was found"
                                                : "no published strength of a half lap with its sizes was found");
}

std::string_view dowels_strength(const JointGround& g, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    const Length depth = s.length / 2.0;
    const double n = s.count, high = in_metres(s.rail_depth), d = in_metres(s.diameter);
    const Stress f = g.glue_strength_at(kCrossedGrain);
    const double surface = std::numbers::pi * d * in_metres(depth);
    const double fit = fit_share(g.facts, s.clearance, g.woods.glue && g.woods.glue->gap_filling);
    const double by_expression =
        g.woods.glue ? fit * dowel_expression(g.facts, s.diameter, depth, g.weaker_shear(), g.weaker_shear()).value() : 0;
    const double by_glue = f.value() * surface, one = std::min(by_glue, by_expression);
    c.glued = square_metres(n * surface);
    c.withdrawal = newtons(n * one);
    c.section_shear = newtons(n * 0.75 * g.weaker_shear().value() * std::numbers::pi * d * d / 4);
    c.pressed_shoulder = true;
    g.say({"One dowel pulled from the post by the published expression (mean)", "F = 0.834 D L^0.89 (0.95 S1 + S2), in and psi",
           fmt::format("D = {} mm, L = {} mm in each part, S1 = S2 = {}", mm(s.diameter), mm(depth),
                       write_stress(g.weaker_shear())),
           by_expression, "N", g.facts.number("dowel_expression").cite.text()});
    g.say({"The same by the glue line round it, grains crossed in the post", "F = f π D L", "", by_glue, "N",
           g.facts.number("crossed_grain_share").cite.text()});
    g.say({"Measured shear on the surface of dowels, for comparison", "low; typical 5 MPa", "",
           g.facts.number("dowel_surface_low").value, "Pa", g.facts.number("dowel_surface_low").cite.text()});
    // Dowels stand at (i - 1/2)/n of the depth. Turned about the pressed edge, each is drawn by its distance from it.
    double levers = 0;
    const double farthest = (n - 0.5) / n * high;
    for (int i = 0; i < s.count; ++i) {
        const double at = (i + 0.5) / n * high;
        levers += at * at / farthest;
    }
    const double lever_share = g.facts.number("tenon_lever_share").value;
    c.glue_line = newton_metres(lever_share * one * levers);
    c.flat = newton_metres(lever_share * c.withdrawal.value() * in_metres(s.rail_thickness) / 2);
    g.say({"Dowels drawn out about the pressed edge of the rail, each by its distance from it", "M = 0.9 F Σ z²/z_max",
           fmt::format("{} dowel{} evenly over {} mm", s.count, s.count == 1 ? "" : "s", mm(s.rail_depth)), c.glue_line.value(),
           "N m", g.facts.number("tenon_lever_share").cite.text()});
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
