// Dovetails, finger joints, and the proportions that the trade keeps to.

#include "bond/joints/joint_forms.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace jointwright {

namespace {

constexpr double kCrossedTails = std::numbers::pi / 2;

std::string mm_of(Length v) { return write_number(in_millimetres(v), 4); }

} // namespace

void dovetail_strength(const JointGround& g, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    const Stress f = g.glue_strength_at(kCrossedTails);
    const GluePatch cheeks{s.thickness, s.length, 2.0 * s.count};
    c.glued = cheeks.area();
    c.twist = twist_capacity(cheeks, f);
    c.corner = elastic_corner_twist(cheeks, f);
    c.glue_line = c.twist;
    c.withdrawal = newtons(f.value() * c.glued.value());
    g.say({"Both cheeks of every tail", "A = 2 n t1 t2",
           fmt::format("{} tails, {} × {} mm", s.count, mm_of(s.thickness), mm_of(s.length)), c.glued.value(), "m2", "geometry"});
    g.say({"The cheeks in twisting, the same stress all over", "T_u = f ∫ρ dA", "", c.twist.value(), "N m", "mechanics"});
    // Over the width of the board the tails are so many dowels, drawn about its pressed edge; twisted, their cheeks slide by a quarter of it.
    c.flat = pulled_out(g, c.withdrawal, s.rail_thickness / 2.0);
    c.torsion = c.withdrawal * s.rail_thickness / 4.0;
    g.say({"Bent over the width of the board, drawn out about its pressed edge", "M = N 0.9 w/2", "", c.flat.value(), "N m",
           "mechanics (engineering estimate)"});
    if (s.slope > 0 && g.woods.rail->compression_across && g.woods.post->compression_across) {
        const double pressed = std::min(g.woods.rail->compression_across->value, g.woods.post->compression_across->value).value();
        const double flanks = 2.0 * s.count * in_metres(s.thickness) * in_metres(s.length);
        c.wedge =
            newtons(std::min(pressed * flanks * std::sin(std::atan(1 / s.slope)), g.woods.rail->shear->value.value() * flanks));
        g.say({"The tails by their slopes alone, without glue and friction", "N = 2 n f_c t1 t2 sin α",
               fmt::format("slope 1 in {}, f_c = {}", write_number(s.slope, 2), write_stress(pascals(pressed))), c.wedge.value(),
               "N", "mechanics (engineering estimate)"});
    }
    c.range.push_back("dovetails were tested in diagonal compression only, with sizes that were not given: no published "
                      "expression; glue and the wedge of the tails are not added up");
}

std::string_view finger_strength(const JointGround& g, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    const Stress f = g.glue_strength_at(0);
    const double section = in_metres(s.rail_thickness) * in_metres(s.rail_depth), depth = in_metres(s.rail_depth);
    const double bending = std::min(g.woods.rail->bending_strength->value.value(),
                                    g.woods.post->bending_strength ? g.woods.post->bending_strength->value.value()
                                                                   : g.woods.rail->bending_strength->value.value());
    const double by_flanks = std::min(bending, f.value() * 2 * in_metres(s.length) / in_metres(s.width));
    const double low = g.facts.number("finger_share_low").value * bending * (g.woods.glue ? 1 : 0) *
                       fit_share(g.facts, s.clearance, g.woods.glue && g.woods.glue->gap_filling);
    c.glued = square_metres(section * 2 * in_metres(s.length) / in_metres(s.width));
    c.glue_line = newton_metres(by_flanks * section * depth / 6);
    c.flat = newton_metres(std::min(by_flanks, low) * section * in_metres(s.rail_thickness) / 6);
    c.published = newton_metres(low * section * depth / 6);
    c.withdrawal = newtons(std::min(by_flanks, low) * section);
    g.say({"Bending strength of the solid wood (mean)", "f_m", "", bending, "Pa", g.woods.rail->bending_strength->source});
    g.say({"Shear on the flanks of the fingers, as a stress of the whole section", "σ = 2 f L/p",
           fmt::format("fingers {} mm long, {} mm from finger to finger", mm_of(s.length), mm_of(s.width)), by_flanks, "Pa",
           "mechanics"});
    g.say({"Lowest published mean of glued finger joints", "0.41 f_m",
           fmt::format("well made and of 10 to 15 mm they reach {}", write_number(g.facts.number("finger_share_best").value, 2)),
           low, "Pa", g.facts.number("finger_share_low").cite.text()});
    if (in_millimetres(s.length) < 4 - 1e-6 || in_millimetres(s.length) > 15 + 1e-6)
        c.range.push_back(fmt::format("fingers of {} mm: the published tests have 4 to 15 mm", mm_of(s.length)));
    return "the lowest published mean of finger joints (Vassiliou and others)";
}

std::vector<std::string> proportion_advice(JointForm form, const JointSizes& s)
{
    constexpr const char* kPractice = " (common practice, no source)";
    std::vector<std::string> advice;
    const double t = in_metres(s.thickness), whole = in_metres(s.rail_thickness);
    const bool tenon = form == JointForm::tenon || form == JointForm::loose_tenon;
    if ((tenon || form == JointForm::bridle) && whole > 0) {
        if (t < 0.25 * whole || t > 0.5 * whole)
            advice.push_back(fmt::format("a tenon is about a third of the stock thick: {} to {} mm here, not {} mm{}",
                                         write_number(whole * 1e3 / 3.5, 3), write_number(whole * 1e3 / 2.5, 3),
                                         mm_of(s.thickness), kPractice));
    }
    if (form == JointForm::dovetail && s.slope != 0 && (s.slope < 5 || s.slope > 9))
        advice.push_back(fmt::format("tails slope 1 in 6 in softwood and 1 in 8 in hardwood, not 1 in {}{}",
                                     write_number(s.slope, 2), kPractice));
    const bool let_in = form == JointForm::housing || form == JointForm::groove || form == JointForm::sliding_dovetail;
    if (let_in && s.post_depth.value() > 0 && s.length > s.post_depth * 0.5 + metres(1e-6))
        advice.push_back(fmt::format("a recess goes a quarter to a third of the wood deep, {} to {} mm here, not {} mm{}",
                                     write_number(in_millimetres(s.post_depth) / 4, 3),
                                     write_number(in_millimetres(s.post_depth) / 3, 3), mm_of(s.length), kPractice));
    if (form == JointForm::splined_mitre && whole > 0 && (t > 0.4 * whole || t < 0.1 * whole))
        advice.push_back(
            fmt::format("a spline is a fifth to a third of the stock thick, not {} mm{}", mm_of(s.thickness), kPractice));
    if (tenon) {
        if (in_metres(s.rail_depth) - in_metres(s.width) < 0.006 && in_metres(s.width) < in_metres(s.rail_depth))
            advice.push_back(fmt::format("leave a shoulder of at least 3 mm above and below the tenon{}", kPractice));
        if (in_metres(s.length) < 2 * t)
            advice.push_back(fmt::format("a tenon goes in at least twice its own thickness: {} mm here{}",
                                         mm_of(s.thickness * 2.0), kPractice));
    }
    if (form == JointForm::dowels) {
        const double d = in_metres(s.diameter);
        if (whole > 0 && (d < whole / 3 - 1e-4 || d > whole / 2 + 1e-4))
            advice.push_back(fmt::format("a dowel is a third to half of the stock thick: {} to {} mm here{}",
                                         write_number(whole * 1e3 / 3, 3), write_number(whole * 1e3 / 2, 3), kPractice));
        if (in_metres(s.length) < 5 * d)
            advice.push_back(fmt::format("a dowel goes about two and a half diameters into each part: {} mm long here{}",
                                         mm_of(s.diameter * 5.0), kPractice));
        if (s.count < 2) advice.push_back(fmt::format("one dowel alone lets the rail turn: use two{}", kPractice));
    }
    return advice;
}

} // namespace jointwright
