#include "judging/joints/joint_use.hpp"

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

/// Parts let in: what turns them in their own plane slides along the walls, and is asked of their glue where it counts.
bool counts_flat(const DrawnJoint& joint, const JointCapacity& capacity) { return joint.turns_flat || capacity.flat.value() > 0; }

/// From means to what is allowed, the joint's own lower strength put in place of that of tenons.
double allowed_share(const Prepared& prepared, JointForm form, const JointCapacity& capacity, WoodKind kind,
                     const JointDemand& demand)
{
    const Facts& facts = *prepared.facts;
    const double factor = joint_factor(facts, form, demand.kind, demand.duration, kind, name_of(prepared.piece->limits.level));
    return factor * capacity.lower_share / facts.number("joint_lower_share").value;
}

/// The six components of a demand, as the joint sees them.
void take_apart_demand(const DrawnJoint& joint, const JointDemand& demand, JointUse& u)
{
    const double along = part_along(demand.force, joint.into);
    // What presses the parts together needs no glue.
    u.pull = joint.directed ? std::max(0.0, along) : std::abs(along);
    u.shear = std::sqrt(std::max(0.0, part_along(demand.force, demand.force) - along * along));
    u.moment = std::abs(part_along(demand.moment, joint.main));
    u.flat = std::abs(part_along(demand.moment, joint.flat));
    u.torsion = std::abs(part_along(demand.moment, joint.into));
}

/// Twist that the friction of a pressed shoulder takes: what the moment and the thrust press, half of the rail's depth from its middle.
double held_by_shoulder(const Facts& facts, const DrawnJoint& joint, const JointCapacity& capacity, const JointDemand& demand,
                        const JointUse& u)
{
    if (!capacity.pressed_shoulder || capacity.tongue.value() <= 0) return 0;
    const double half = in_metres(joint.sizes.rail_depth) / 2, thrust = std::max(0.0, -part_along(demand.force, joint.into)),
                 couple = u.moment / (facts.number("tenon_lever_share").value * half);
    // The thrust is spread over the shoulder, half way out on the mean; the couple presses at its edge.
    return facts.number("shoulder_friction").value * (couple * half + (joint.directed ? thrust * half / 2 : 0));
}

/// What each component uses of what resists it.
struct Shares {
    double moment = 0, flat = 0, pull = 0, torsion = 0;
    double pressed = 0, broken = 0; ///< shear: on the wall of a recess, and by the section or the glue
    double shear() const { return std::max(pressed, broken); }
};

Shares shares_of(const JointUse& u, const DrawnJoint& joint, const JointCapacity& c, bool dry, double twist)
{
    // Where nothing is reckoned against a small moment a dry joint takes it by its fit.
    const auto by_fit = [&](double moment, Moment resisted) { return dry && resisted.value() <= 0 && moment <= kTakenByFit; };
    Shares s;
    if (!by_fit(u.moment, c.mean)) s.moment = used(u.moment, c.mean.value() * u.turn_factor);
    if (u.turn_factor == u.crushed && c.shape_breaks.value() > 0)
        s.moment = std::max(s.moment, used(u.moment, c.shape_breaks.value() * u.factor));
    if (!by_fit(u.flat, c.flat) && counts_flat(joint, c))
        s.flat = used(u.flat, c.flat.value() * (c.flat_by_shape ? u.crushed : u.factor));
    if (!by_fit(twist, c.torsion)) s.torsion = used(twist, c.torsion.value() * u.factor);
    if (c.torsion_pressed.value() > 0) s.torsion = std::max(s.torsion, used(twist, c.torsion_pressed.value() * u.crushed));
    if (!u.unheld) s.pull = used(u.pull, c.withdrawal.value() * u.factor);
    if (c.pressed.value() > 0) s.pressed = used(u.shear, c.pressed.value() * u.crushed);
    // Shape hands down the shear where there is a section to do it, or shoulders; else the glue must.
    const Force section = c.section_shear.value() > 0 ? c.section_shear : c.face_shear.value() > 0 ? c.face_shear : c.withdrawal;
    if (!dry || c.section_shear.value() > 0) s.broken = used(u.shear, section.value() * u.factor);
    return s;
}

} // namespace

JointUse use_of_joint(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, const JointCapacity& capacity,
                      const JointDemand& demand)
{
    const Facts& facts = *prepared.facts;
    const WoodState &a = prepared.state_of(contact.first).loaded, &b = prepared.state_of(contact.second).loaded;
    const WoodKind kind = a.shear->value <= b.shear->value ? a.kind : b.kind;
    JointUse u;
    u.factor = allowed_share(prepared, joint.form, capacity, kind, demand);
    u.crushed = demand.proof ? 1 : 1 / facts.number("bearing_pass_divisor").value; // as bearing has it
    const bool by_walls = capacity.shape.value() > 0 && capacity.mean == capacity.shape;
    u.turn_factor = by_walls ? u.crushed : u.factor;
    u.warns_to = warn_limit(facts, demand.kind, StrengthKind::shear, kind);
    u.unheld = capacity.withdrawal.value() <= 0;
    take_apart_demand(joint, demand, u);
    const double twist = std::max(0.0, u.torsion - held_by_shoulder(facts, joint, capacity, demand, u));
    const Shares s = shares_of(u, joint, capacity, !prepared.piece->joints[*contact.joint].glue, twist);
    u.drawn = s.moment + s.flat + s.pull + (by_walls ? s.pressed : 0);
    u.twisted = s.torsion;
    u.slid = by_walls ? s.broken : s.shear();
    u.use = std::hypot(u.drawn, u.twisted, u.slid);
    u.sheared =
        capacity.section_shear.value() > 0 && s.broken >= s.pressed && s.broken > std::max({s.moment, s.flat, s.pull, s.torsion});
    u.turned = s.moment + s.flat + s.torsion > std::hypot(s.pull, s.shear());
    u.twists = u.twisted > std::max(u.drawn, u.slid);
    u.works_loose = !joint.turns_flat && by_walls && u.use > 1 && std::hypot(s.pull, s.shear()) <= u.warns_to;
    return u;
}

} // namespace jointwright
