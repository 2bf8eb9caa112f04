// The tongue of wood that stands in a joint: it breaks in bending, it is twisted about its length, and tests know it in some sizes only.

#include "bond/joints/joint_forms.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kSameSize = 1e-5; // m

std::string mm(Length v) { return write_number(in_millimetres(v), 4); }

/// Z f_m (rail/tongue)^0.8 of a section bent over its side `over`.
Moment broken(const Facts& facts, double side, double over, double rail, Stress bending)
{
    const double help = std::pow(std::max(1.0, rail / over), facts.number("tongue_exponent").value);
    return newton_metres(side * over * over / 6 * bending.value() * help);
}

Length limit_of(const Facts& facts, const char* key) { return metres(facts.number(key).value); }

} // namespace

Moment tongue_bending(const Facts& facts, const Tongue& t, Stress bending)
{
    return broken(facts, in_metres(t.thickness), in_metres(t.width), in_metres(t.rail_depth), bending);
}

Moment tongue_bending_flat(const Facts& facts, const Tongue& t, Stress bending)
{
    return broken(facts, in_metres(t.width), in_metres(t.thickness), in_metres(t.rail_thickness), bending);
}

Moment section_twist(Length one_side, Length other_side, Stress shear)
{
    const double t = std::min(in_metres(one_side), in_metres(other_side)),
                 w = std::max(in_metres(one_side), in_metres(other_side));
    return newton_metres(shear.value() * t * t * (3 * w - t) / 6);
}

void tongue_strength(const JointGround& g, const Tongue& t, JointCapacity& c)
{
    const Property<Stress>& bending = *g.woods.rail->bending_strength;
    c.tongue = tongue_bending(g.facts, t, bending.value);
    const Moment flat = tongue_bending_flat(g.facts, t, bending.value);
    g.say({fmt::format("Bending strength of the {}'s wood (mean)", t.name), "f_m", bending.note, bending.value.value(), "Pa",
           bending.source});
    g.say({fmt::format("The {} breaks itself, bent over its width", t.name), "M = Z f_m (W/w)^0.8",
           fmt::format("Z = t w²/6, t = {} mm, w = {} mm, W = {} mm", mm(t.thickness), mm(t.width), mm(t.rail_depth)),
           c.tongue.value(), "N m", g.facts.number("tongue_exponent").cite.text()});
    if (c.flat > flat) c.flat = flat;
    g.say({"The same over its thickness", "M = Z f_m (T/t)^0.8", "Z = w t²/6", flat.value(), "N m",
           g.facts.number("tongue_exponent").cite.text()});
    c.torsion = section_twist(t.thickness, t.width, g.woods.rail->shear->value);
    const Stress pressed = g.pressed_stress(true);
    const double w = in_metres(t.width);
    c.torsion_pressed = newton_metres(pressed.value() * in_metres(t.length) * w * w / 6);
    g.say({fmt::format("The {} twisted about its length, the same stress all over its section", t.name), "T = f_v t² (3 w − t)/6",
           "", c.torsion.value(), "N m", "mechanics"});
    if (pressed.value() > 0)
        g.say({"The same pressing its cheeks into their walls", "T = f_90 L w²/6", write_stress(pressed),
               c.torsion_pressed.value(), "N m", "mechanics"});
}

void look_at_tested_sizes(const JointGround& g, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    const UntestedSize sizes[] = {
        {"long", s.length, limit_of(g.facts, "tenon_length_tested_least"), limit_of(g.facts, "tenon_length_tested_most")},
        {"thick", s.thickness, limit_of(g.facts, "tenon_thickness_tested_least"),
         limit_of(g.facts, "tenon_thickness_tested_most")}};
    for (const UntestedSize& size : sizes) {
        if (size.size >= size.least - metres(kSameSize) && size.size <= size.most + metres(kSameSize)) continue;
        c.untested.push_back(size);
        c.range.push_back(
            fmt::format("a tenon {} mm {}: the published tests cover {} to {} mm, and the figures are stretched beyond them",
                        mm(size.size), size.what, mm(size.least), mm(size.most)));
    }
}

double sure_share(const JointCapacity& capacity)
{
    double share = 1;
    for (const UntestedSize& size : capacity.untested) share *= std::min(1.0, in_metres(size.size) / in_metres(size.least));
    return share;
}

JointSizes within_tested(const Facts& facts, JointSizes sizes)
{
    sizes.length = std::min(sizes.length, limit_of(facts, "tenon_length_tested_most"));
    sizes.thickness = std::min(sizes.thickness, limit_of(facts, "tenon_thickness_tested_most"));
    return sizes;
}

} // namespace jointwright
