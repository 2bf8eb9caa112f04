// Mitres: plain, with a spline along them, with keys across their corner.

#include "bond/joints/joint_forms.hpp"

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

void mitre_face_strength(const JointGround& g, JointCapacity& c)
{
    const double cut = std::numbers::sqrt2 * in_metres(g.sizes.rail_depth), t = in_metres(g.sizes.rail_thickness), area = cut * t;
    const MitreStrength wood =
        *mitre_strength(g.facts, *g.woods.rail, *g.woods.post, g.sizes.tilt, std::numbers::pi / 2 - g.sizes.tilt);
    const double fit = g.woods.glue ? fit_share(g.facts, g.sizes.clearance, g.woods.glue->gap_filling) : 0;
    const auto glued = [&](Stress of_wood) {
        const auto* own = g.woods.glue && g.woods.glue->shear ? &g.woods.glue->shear->value : nullptr;
        return fit * (own ? std::min(*own, of_wood) : of_wood).value();
    };
    const double pulled = glued(wood.tension), sheared = glued(wood.shear);
    const GluePatch face{metres(cut), metres(t), 1};
    c.glued = square_metres(area);
    c.glue_line = newton_metres(pulled * t * cut * cut / 6);
    c.flat = newton_metres(pulled * cut * t * t / 6);
    c.torsion = twist_capacity(face, pascals(sheared));
    c.face_shear = newtons(sheared * area);
    // Drawn along one member the face is sheared and pulled alike.
    c.withdrawal =
        pulled > 0 && sheared > 0 ? newtons(std::numbers::sqrt2 * area / std::hypot(1 / pulled, 1 / sheared)) : newtons(0);
    const std::string angles = fmt::format("grain of {} at {}° to the normal of the cut, of {} at {}°", g.woods.rail_name,
                                           write_number(g.sizes.tilt * 180 / std::numbers::pi, 3), g.woods.post_name,
                                           write_number(90 - g.sizes.tilt * 180 / std::numbers::pi, 3));
    const std::string rule = g.facts.cite("wood-handbook-2010", "eq. 5-2, Hankinson; exponent 2 (from memory)");
    g.say({"Face of the mitre", "A = √2 w t", fmt::format("{} × {} mm", size_in_mm(cut), size_in_mm(t)), area, "m2", "geometry"});
    g.say({"Tension square to the cut, the weaker wood, but not more than the glue's own shear strength",
           "f = f_m f_t90/(f_m sin²θ + f_t90 cos²θ)", angles, pulled, "Pa", rule});
    g.say({"Shear along the cut, the same way", "f = f0 f90/(f0 sin²θ + f90 cos²θ), f90 = f0/3", "", sheared, "Pa", rule});
    g.say({"The corner opened or closed: bending over the face", "M = f_t t c²/6", fmt::format("c = {} mm", size_in_mm(cut)),
           c.glue_line.value(), "N m", "mechanics"});
    c.range.push_back("a plain mitre of unstated size bore 0.95 of a tenon in a published test; its strength by the angle of the "
                      "grain is lower");
}

void splined_mitre_strength(const JointGround& g, JointCapacity& c)
{
    mitre_face_strength(g, c);
    const Moment plain = c.glue_line, plain_flat = c.flat;
    const Force drawn = c.withdrawal;
    const Stress f = g.glue_strength_at(kHalfRight);
    const JointSizes& s = g.sizes;
    const Length cut = s.rail_depth * std::numbers::sqrt2;
    const GluePatch faces{cut, s.length, 2};
    c.glued = faces.area();
    c.twist = twist_capacity(faces, f);
    c.corner = elastic_corner_twist(faces, f);
    const Force slip = newtons(f.value() * c.glued.value());
    const Tongue spline{s.thickness, cut, s.length, s.rail_thickness, cut, "spline"};
    const Stress bending = std::min(g.woods.rail->bending_strength->value, g.woods.post->bending_strength->value);
    const Moment breaks = tongue_bending(g.facts, spline, bending);
    c.glue_line = std::max(plain, std::min(c.twist, breaks));
    if (breaks < c.twist && breaks > plain) c.governs = "the spline's own section";
    c.flat = std::max(plain_flat,
                      std::min(pulled_out(g, slip, s.rail_thickness / 2.0), tongue_bending_flat(g.facts, spline, bending)));
    c.withdrawal = std::max(drawn, slip);
    c.face_shear = std::max(c.face_shear, slip);
    g.say({"Faces of the spline in one member", "A = 2 c d",
           fmt::format("{} mm long, {} mm deep", size_in_mm(in_metres(faces.a)), size_in_mm(in_metres(faces.b))), c.glued.value(),
           "m2", "geometry"});
    g.say({"The spline's faces in twisting, the same stress all over; the mitre's own glue is not added", "T_u = f ∫ρ dA", "",
           c.twist.value(), "N m", "mechanics"});
    g.say({"The spline breaks itself, its grain across the mitre, of the weaker of the two woods", "M = d_s c²/6 f_m",
           write_stress(bending), breaks.value(), "N m", g.facts.number("tongue_exponent").cite.text()});
    c.range.back() = "no published strength of a splined mitre with its sizes was found";
}

void keyed_mitre_strength(const JointGround& g, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    mitre_face_strength(g, c);
    const Moment plain = c.glue_line;
    const Force drawn = c.withdrawal;
    c.range.clear();
    const Stress f = g.glue_strength_at(kHalfRight);
    const double h = in_metres(s.length), cut = std::numbers::sqrt2 * in_metres(s.rail_depth);
    // The key is the right-angled corner of that depth; half of each of its two faces is glued to either member.
    const double area = 2 * s.count * h * h / 2;
    const double centre = 2 * h / 3; // from the outer corner along the mitre
    const double lever = std::max(0.0, std::min(cut - centre, centre));
    c.glued = square_metres(area);
    const double keys = f.value() * area;
    c.withdrawal = std::max(drawn, newtons(keys));
    c.face_shear = std::max(c.face_shear, newtons(keys));
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
