// Mitres: plain, with a spline along them, with keys across their corner.

#include "bond/joint_forms.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace jointwright {

namespace {

constexpr double kHalfRight = std::numbers::pi / 4; // the slip's grain crosses the mitre squarely

std::string size_in_mm(double v) { return write_number(v * 1e3, 4); }

} // namespace

void mitre_strength(const JointGround& g, JointCapacity& c)
{
    const double cut = std::numbers::sqrt2 * in_metres(g.sizes.rail_depth), t = in_metres(g.sizes.rail_thickness), area = cut * t;
    const Datum<double>& half = g.facts.number("mitre_share");
    const Stress weaker = std::min(g.woods.rail->tension_across->value, g.woods.post->tension_across->value);
    const double fit = g.woods.glue ? fit_share(g.facts, g.sizes.clearance, g.woods.glue->gap_filling) : 0;
    const double pulled = half.value * fit * weaker.value(), sheared = half.value * g.glue_strength_at(0, false).value();
    c.glued = square_metres(area);
    c.glue_line = newton_metres(pulled * t * cut * cut / 6);
    c.flat = newton_metres(pulled * cut * t * t / 6);
    // Drawn along one member the face is sheared and pulled alike.
    c.withdrawal =
        pulled > 0 && sheared > 0 ? newtons(std::numbers::sqrt2 * area / std::hypot(1 / pulled, 1 / sheared)) : newtons(0);
    g.say({"Face of the mitre", "A = √2 w t", fmt::format("{} × {} mm", size_in_mm(cut), size_in_mm(t)), area, "m2", "geometry"});
    g.say(
        {"Tension across a mitre: half of that across the grain", "f_t/2", write_stress(weaker), pulled, "Pa", half.cite.text()});
    g.say({"The corner opened or closed: bending over the face", "M = f_t/2 t c²/6", fmt::format("c = {} mm", size_in_mm(cut)),
           c.glue_line.value(), "N m", "mechanics"});
    c.range.push_back("no published strength of a plain mitre with its sizes was found; half of the side-grain strengths is an "
                      "estimate");
}

void splined_mitre_strength(const JointGround& g, JointCapacity& c)
{
    mitre_strength(g, c);
    const Moment plain = c.glue_line;
    const Force drawn = c.withdrawal;
    const Stress f = g.glue_strength_at(kHalfRight);
    const GluePatch faces{g.sizes.rail_depth * std::numbers::sqrt2, g.sizes.length, 2};
    c.glued = faces.area();
    c.twist = twist_capacity(faces, f);
    c.corner = elastic_corner_twist(faces, f);
    c.glue_line = std::max(plain, c.twist);
    c.withdrawal = std::max(drawn, newtons(f.value() * c.glued.value()));
    g.say({"Faces of the spline in one member", "A = 2 c d",
           fmt::format("{} mm long, {} mm deep", size_in_mm(in_metres(faces.a)), size_in_mm(in_metres(faces.b))), c.glued.value(),
           "m2", "geometry"});
    g.say({"The spline's faces in twisting, the same stress all over; the mitre's own glue is not added", "T_u = f ∫ρ dA", "",
           c.twist.value(), "N m", "mechanics"});
    c.range.back() = "no published strength of a splined mitre with its sizes was found";
}

void keyed_mitre_strength(const JointGround& g, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    Moment plain{};
    Force drawn{};
    if (g.woods.rail->tension_across && g.woods.post->tension_across) {
        mitre_strength(g, c);
        plain = c.glue_line;
        drawn = c.withdrawal;
        c.range.clear();
    }
    const Stress f = g.glue_strength_at(kHalfRight);
    const double h = in_metres(s.length), cut = std::numbers::sqrt2 * in_metres(s.rail_depth);
    // The key is the right-angled corner of that depth; half of each of its two faces is glued to either member.
    const double area = 2 * s.count * h * h / 2;
    const double centre = 2 * h / 3; // from the outer corner along the mitre
    const double lever = std::max(0.0, std::min(cut - centre, centre));
    c.glued = square_metres(area);
    const double keys = f.value() * area;
    c.withdrawal = std::max(drawn, newtons(keys));
    const double moment = keys * g.facts.number("tenon_lever_share").value * lever;
    c.glue_line = std::max(plain, newton_metres(moment));
    g.say({"Faces of the keys in one member", "A = n h²", fmt::format("{} × {} mm deep", s.count, size_in_mm(h)), area, "m2",
           "geometry"});
    g.say({"Keys drawn out about the pressed corner, the worse of opening and closing", "M = f A × 0.9 z",
           fmt::format("z = {} mm", size_in_mm(lever)), moment, "N m", g.facts.number("tenon_lever_share").cite.text()});
    c.range.push_back(
        "no published strength of a keyed mitre with its sizes was found (keyed ones were stronger than butted ones "
        "in tests); keys and the mitre's own glue are not added up, the stronger counts");
}

} // namespace jointwright
