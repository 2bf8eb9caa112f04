// Pegs through a tenon: a wooden pin in double shear, and what they tear out of the tenon's end.

#include "bond/joints/joint_forms.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace jointwright {

namespace {

/// A way in which a pegged tenon gives, and the force on one peg that does it.
struct PegMode {
    const char* how;
    double force;
};

/// Yield of one peg in pounds-force by the equations for dowel-type fasteners in double shear, main member the tenon.
std::vector<PegMode> yields_of(const Facts& facts, double d, double tenon, double cheek, double rail_gravity, double post_gravity,
                               double peg_bending_psi)
{
    const double fem = facts.number("bearing_along").value * rail_gravity,
                 fes = facts.number("bearing_across").value * std::pow(post_gravity, 1.45) / std::sqrt(d), re = fem / fes;
    std::vector<PegMode> modes = {{"the peg crushes the tenon", d * tenon * fem},
                                  {"the peg crushes the cheeks", 2 * d * cheek * fes}};
    if (peg_bending_psi > 0) {
        const double k3 = -1 + std::sqrt(2 * (1 + re) / re + 2 * peg_bending_psi * (2 + re) * d * d / (3 * fem * cheek * cheek));
        modes.push_back({"the peg bends in the cheeks", 2 * k3 * d * cheek * fem / (2 + re)});
        modes.push_back({"the peg bends", 2 * d * d * std::sqrt(2 * fem * peg_bending_psi / (3 * (1 + re)))});
    }
    const double shear = facts.number("peg_shear").value * rail_gravity * std::pow(std::min(rail_gravity, post_gravity), 0.75);
    modes.push_back({"the peg is sheared across", std::numbers::pi * d * d / 2 * shear});
    return modes;
}

} // namespace

void pegs_strength(const JointGround& g, JointCapacity& c)
{
    const JointSizes::Pegs& pegs = g.sizes.pegs;
    const WoodState &rail = *g.woods.rail, &post = *g.woods.post;
    if (pegs.count < 1 || !rail.specific_gravity || !post.specific_gravity) return;
    const double d = in_metres(pegs.diameter), t = in_metres(g.sizes.thickness), w = in_metres(g.sizes.width), n = pegs.count,
                 bending = rail.bending_strength ? rail.bending_strength->value.value() : 0;
    std::vector<PegMode> modes = yields_of(g.facts, in_inches(pegs.diameter), in_inches(g.sizes.thickness), in_inches(pegs.cheek),
                                           rail.specific_gravity->value, post.specific_gravity->value, bending / kPascalsPerPsi);
    for (PegMode& m : modes) m.force *= kNewtonsPerPoundForce;
    const double relish = std::max(0.0, in_metres(g.sizes.length) / 2 - d / 2);
    modes.push_back({"the end of the tenon shears out behind the peg", 2 * rail.shear->value.value() * relish * t});
    if (bending > 0) modes.push_back({"the tenon tears at the pegs", bending * std::max(0.0, w - n * d) * t / n});
    const PegMode& first =
        *std::min_element(modes.begin(), modes.end(), [](const PegMode& a, const PegMode& b) { return a.force < b.force; });
    c.pegs = newtons(n * first.force);
    c.pegs_give = first.how;
    // Pegs stand at (i - 1/2)/n of the tenon's width and are drawn by their distance from the pressed edge of the rail.
    const double half = in_metres(g.sizes.rail_depth) / 2, farthest = half + (n - 1) / (2 * n) * w;
    const bool shoulder = c.pressed_shoulder || g.sizes.thickness < g.sizes.rail_thickness;
    double levers = 0;
    for (int i = 0; i < pegs.count; ++i) {
        const double z = half + ((i + 0.5) / n - 0.5) * w;
        levers += z * z / farthest;
    }
    c.pegged = newton_metres(shoulder ? g.facts.number("tenon_lever_share").value * first.force * levers : 0.0);
    for (const PegMode& m : modes)
        g.say({fmt::format("One peg, if {}", m.how), "yield of dowel-type fasteners in double shear",
               fmt::format("D = {} mm, tenon {} mm, cheeks {} mm each, {} mm of tenon behind the peg", write_number(d * 1e3, 3),
                           write_number(t * 1e3, 3), write_number(in_millimetres(pegs.cheek), 3), write_number(relish * 1e3, 3)),
               m.force, "N", g.facts.number("peg_shear").cite.text()});
    g.say({fmt::format("The pegs hold the tenon: {} first", c.pegs_give), "N = n F", fmt::format("n = {}", pegs.count),
           c.pegs.value(), "N", g.facts.number("bearing_across").cite.text()});
    if (c.pegged.value() > 0)
        g.say({"The pegs, drawn about the pressed edge of the rail, each by its distance from it", "M = 0.9 F Σ z²/z_max", "",
               c.pegged.value(), "N m", g.facts.number("tenon_lever_share").cite.text()});
    c.range.push_back(
        "pegs are taken to be of the rail's wood, dry, straight-grained and at the middle of the tenon's length: an "
        "estimate by yield equations made for timber frames");
}

} // namespace jointwright
