// Tenons, bridles and laps: joints whose strength is the shear of glued faces with crossed grains.

#include "bond/joints/joint_forms.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kSameSize = 1e-5; // m

std::string mm(Length v) { return write_number(in_millimetres(v), 4); }

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
    if (loose) c.range.push_back("the published expression was fitted to tenons cut on the rail, not to loose ones");
    g.say({"Published expression for rectangular tenons (mean)", "M = a b (0.25 W + 0.78 d) L^0.8 S, in and psi, a b = 0.8",
           fmt::format("W = {} mm, d = {} mm, L = {} mm, S = {}", mm(s.rail_depth), mm(s.width), mm(s.length),
                       write_stress(g.weaker_shear())),
           c.published->value(), "N m", g.facts.number("tenon_expression_rail").cite.text()});
}

/// Without glue: the tenon turned in its mortise, its edges or its cheeks pressing on the walls from end to end; and its lower edge on the mortise's end.
void tenon_by_shape(const JointGround& g, JointCapacity& c)
{
    const double t = in_metres(g.sizes.thickness), w = in_metres(g.sizes.width), l = in_metres(g.sizes.length);
    const double edges = g.pressed_stress(false).value(), cheeks = g.pressed_stress(true).value();
    c.shape = newton_metres(edges * t * l * l / 6);
    if (edges > 0)
        g.say({"Without glue: the tenon's edges press on the ends of its mortise", "M = f_90 t L²/6",
               write_stress(pascals(edges)), c.shape.value(), "N m", "mechanics"});
    if (const double flat = cheeks * w * l * l / 6; flat > c.flat.value()) {
        c.flat = newton_metres(flat);
        c.flat_by_shape = true;
        g.say({"Without glue, over its thickness: its cheeks press on the sides of the mortise", "M = f_90 w L²/6",
               write_stress(pascals(cheeks)), flat, "N m", "mechanics"});
    }
    if (g.woods.glue || !g.woods.rail->compression_across || !g.woods.post->compression_along) return;
    const double spread = g.facts.number("bearing_spread").value,
                 stress = std::min(spread * g.woods.rail->compression_across->value.value(),
                                   g.woods.post->compression_along->value.value());
    c.pressed = newtons(stress * t * l);
    g.say({"Its edge pressed on the end of the mortise, the wood beside it helping", "V = f_c t L", write_stress(pascals(stress)),
           c.pressed.value(), "N", g.facts.number("bearing_spread").cite.text()});
}

/// A wedge through the end of a tenon: two strips of wood beyond it shear off along the grain.
void hold_by_wedge(const JointGround& g, JointCapacity& c)
{
    const JointSizes::Wedge& wedge = g.sizes.wedge;
    if (wedge.count < 1) return;
    c.wedge =
        newtons(2 * wedge.count * g.woods.rail->shear->value.value() * in_metres(wedge.beyond) * in_metres(g.sizes.thickness));
    g.say({"Held by the wedge in its end: the wood beyond it shears off", "N = 2 n f_v h t",
           fmt::format("h = {} mm beyond the wedge", mm(wedge.beyond)), c.wedge.value(), "N", "mechanics"});
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

Stress JointGround::pressed_stress(bool post_across) const
{
    const auto& wall = post_across ? woods.post->compression_across : woods.post->compression_along;
    return woods.rail->compression_across && wall ? std::min(woods.rail->compression_across->value, wall->value) : pascals(0);
}

Moment pulled_out(const JointGround& g, Force withdrawal, Length to_pressed_edge)
{
    return newton_metres(withdrawal.value() * g.facts.number("tenon_lever_share").value * in_metres(to_pressed_edge));
}

void say_twist(const JointGround& g, const JointCapacity& c)
{
    g.say({"The glued faces in twisting, the same stress all over", "T_u = f ∫ρ dA", "", c.twist.value(), "N m", "mechanics"});
    g.say({"The same, elastic, when the stress in a corner reaches the strength (shown only)", "T = f J_p/ρ", "",
           c.corner.value(), "N m", "Smardzewski, Furniture Design (2015), ch. 6 (retrieved); mechanics"});
}

Stress JointGround::weaker_shear() const { return std::min(woods.rail->shear->value, woods.post->shear->value); }

std::string_view tenon_strength(const JointGround& g, bool loose, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    const Stress f = g.glue_strength_at(kCrossedGrains);
    const GluePatch cheeks{s.width, s.length, 2};
    c.glued = cheeks.area();
    c.withdrawal = newtons(f.value() * c.glued.value());
    c.section_shear = newtons(2.0 / 3 * g.woods.rail->shear->value.value() * in_metres(s.thickness) * in_metres(s.width));
    c.twist = twist_capacity(cheeks, f);
    c.corner = elastic_corner_twist(cheeks, f);
    c.pressed_shoulder = s.width < s.rail_depth - metres(kSameSize) || s.thickness < s.rail_thickness - metres(kSameSize);
    g.say({"Both cheeks; shoulders and narrow edges count as nothing", "A = 2 w L",
           fmt::format("{} × {} mm", mm(s.width), mm(s.length)), c.glued.value(), "m2", "geometry"});
    const bool flat_shoulder = s.thickness < s.rail_thickness - metres(kSameSize);
    if (flat_shoulder) c.flat = pulled_out(g, c.withdrawal, s.rail_thickness / 2.0);
    if (c.pressed_shoulder) {
        const Length lever = std::max(metres(0), s.rail_depth / 2.0 - s.off_middle);
        c.glue_line = pulled_out(g, c.withdrawal, lever);
        g.say({"Drawn out about the edge of the rail whose shoulder presses on the post", "M = f A × 0.9 z",
               fmt::format("z = {} mm from the tenon's middle to the nearer edge", mm(lever)), c.glue_line.value(), "N m",
               g.facts.number("tenon_lever_share").cite.text()});
    } else {
        c.glue_line = c.twist;
        c.range.push_back("no shoulder presses on the post, so only the twisting of the glued faces counts");
    }
    say_twist(g, c);
    tenon_by_shape(g, c);
    tongue_strength(g, {s.thickness, s.width, s.length, s.rail_thickness, s.rail_depth, "tenon"}, c);
    hold_by_wedge(g, c);
    add_tenon_expression(g, loose, c);
    look_at_tested_sizes(g, c);
    if (!c.pressed_shoulder) c.range.push_back("the published expression was fitted to tenons with shoulders");
    return "the published expression (Erdil and others, 2005)";
}

namespace {

/// A bridle's tongue, and a lap that is peeled open.
void across_the_faces(const JointGround& g, JointForm form, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    if (form == JointForm::bridle) {
        c.section_shear = newtons(2.0 / 3 * g.woods.rail->shear->value.value() * in_metres(s.thickness) * in_metres(s.width));
        if (s.thickness < s.rail_thickness) c.flat = pulled_out(g, c.withdrawal, s.rail_thickness / 2.0);
        tongue_strength(g, {s.thickness, s.width, s.length, s.rail_thickness, s.rail_depth, "tongue"}, c);
        return;
    }
    const double fit = g.woods.glue ? fit_share(g.facts, s.clearance, g.woods.glue->gap_filling) : 0,
                 torn = fit * std::min(g.woods.rail->tension_across->value, g.woods.post->tension_across->value).value(),
                 w = in_metres(s.width), l = in_metres(s.length);
    c.flat = newton_metres(torn * w * l * l / 6);
    c.torsion = newton_metres(torn * l * w * w / 6);
    g.say({"The lap peeled open along the rail, or across it", "M = f_t w L²/6, f_t L w²/6", write_stress(pascals(torn)),
           c.flat.value(), "N m", "mechanics"});
}

} // namespace

void twisted_faces_strength(const JointGround& g, JointForm form, JointCapacity& c)
{
    const Stress f = g.glue_strength_at(kCrossedGrains);
    const GluePatch faces{g.sizes.width, g.sizes.length, form == JointForm::bridle ? 2.0 : 1.0};
    c.glued = faces.area();
    c.twist = twist_capacity(faces, f);
    c.corner = elastic_corner_twist(faces, f);
    c.glue_line = c.twist;
    c.withdrawal = newtons(f.value() * c.glued.value());
    g.say({"Glued side grain", form == JointForm::bridle ? "A = 2 w L" : "A = w L",
           fmt::format("{} × {} mm", mm(g.sizes.width), mm(g.sizes.length)), c.glued.value(), "m2", "geometry"});
    say_twist(g, c);
    if (form == JointForm::lap) say_end_peak(g);
    across_the_faces(g, form, c);
    c.range.push_back(form == JointForm::bridle ? "no published strength of a single bridle with its sizes was found"
                                                : "no published strength of a half lap with its sizes was found");
}

} // namespace jointwright
