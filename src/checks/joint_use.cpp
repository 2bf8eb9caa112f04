#include "checks/joint_use.hpp"

#include "wood/resistance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace jointwright {

namespace {

double part_along(const Point& v, const Point& direction)
{
    return v[0] * direction[0] + v[1] * direction[1] + v[2] * direction[2];
}

/// Demand over resistance; what a joint has no strength for cannot be asked of it.
double used(double demand, double resistance)
{
    if (std::abs(demand) < 1e-9) return 0;
    return resistance > 0 ? std::abs(demand) / resistance : std::numeric_limits<double>::infinity();
}

} // namespace

JointUse use_of_joint(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, const JointCapacity& capacity,
                      const JointDemand& demand)
{
    const Facts& facts = *prepared.facts;
    const WoodState &a = prepared.state_of(contact.first).loaded, &b = prepared.state_of(contact.second).loaded;
    const WoodKind kind = a.shear->value <= b.shear->value ? a.kind : b.kind;
    JointUse u;
    u.factor = joint_factor(facts, joint.form, demand.kind, demand.duration, kind, name_of(prepared.piece->limits.level));
    u.crushed = demand.proof ? 1 : 1 / facts.number("bearing_pass_divisor").value; // as bearing has it
    u.turn_factor = capacity.shape.value() > 0 && capacity.mean == capacity.shape ? u.crushed : u.factor;
    u.warns_to = warn_limit(facts, demand.kind, StrengthKind::shear, kind);
    u.moment = std::abs(part_along(demand.moment, joint.main));
    u.flat = joint.turns_flat ? std::abs(part_along(demand.moment, joint.flat)) : 0;
    const double along = part_along(demand.force, joint.into);
    // What presses the parts together needs no glue.
    u.pull = joint.directed ? std::max(0.0, along) : std::abs(along);
    u.shear = std::sqrt(std::max(0.0, part_along(demand.force, demand.force) - along * along));
    // Shape hands down the shear where there is a section to do it; else the glue must.
    const double shear_mean = capacity.section_shear.value() > 0 ? capacity.section_shear.value() : capacity.withdrawal.value();
    const double flat_mean = capacity.flat.value() > 0 ? capacity.flat.value() : capacity.mean.value();
    u.unheld = capacity.withdrawal.value() <= 0;
    const bool dry = !prepared.piece->joints[*contact.joint].glue;
    const auto turning = [&](double moment, double mean) {
        return dry && moment <= kTakenByFit ? 0 : used(moment, mean * u.turn_factor);
    };
    const double m = turning(u.moment, capacity.mean.value()), f = turning(u.flat, flat_mean),
                 p = u.unheld ? 0 : used(u.pull, capacity.withdrawal.value() * u.factor),
                 pressed = capacity.pressed.value() > 0 ? used(u.shear, capacity.pressed.value() * u.crushed) : 0,
                 broken =
                     dry && capacity.section_shear.value() <= 0 ? 0 : used(u.shear, shear_mean * u.factor), // its shoulders do it
        v = std::max(pressed, broken);
    u.use = std::sqrt(m * m + f * f + p * p + v * v);
    u.sheared = capacity.section_shear.value() > 0 && broken >= pressed && broken > std::max({m, f, p});
    u.turned = std::hypot(m, f) > std::hypot(p, v);
    u.works_loose = !joint.turns_flat && u.turn_factor == u.crushed && u.use > 1 && std::hypot(p, v) <= u.warns_to;
    return u;
}

} // namespace jointwright
