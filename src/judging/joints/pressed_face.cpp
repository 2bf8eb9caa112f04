#include "judging/joints/pressed_face.hpp"

#include "judging/finding_tools.hpp"
#include "judging/joints/glue_demand.hpp"
#include "piece/model/turn.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

std::string across_words(const Point& normal)
{
    switch (main_axis_of(normal)) {
    case Axis::x: return "from left to right";
    case Axis::y: return "from front to back";
    case Axis::z: return "from top to bottom";
    }
    return {};
}

/// The faces that a clamp presses: shoulders, bottoms of housings, the face itself.
bool is_pressed(const Joint& joint, const Patch& patch)
{
    switch (joint.kind) {
    case JointKind::tenon: return patch.role == Patch::Role::shoulder;
    case JointKind::housing:
    case JointKind::groove: return patch.role == Patch::Role::bottom || patch.role == Patch::Role::face;
    case JointKind::bridle: return patch.role == Patch::Role::cheek;
    default: return true;
    }
}

/// Wood behind a face, along its normal, on the thinner side.
double thinner_side(const Prepared& prepared, const Contact& contact, const Point& normal)
{
    double thinnest = 1e9;
    for (const std::size_t copy : {contact.first, contact.second}) {
        const Box box = bounds_of(prepared.piece->part_of(copy), prepared.piece->copies[copy]);
        double through = 0;
        for (std::size_t i = 0; i < 3; ++i) through += std::abs(normal[i]) * (box.hi[i] - box.lo[i]);
        thinnest = std::min(thinnest, through);
    }
    return thinnest;
}

void take_wood(PressedFace& pressed, const PartState& state)
{
    const auto& density = state.usual.density;
    if (density && density->value > pressed.density) {
        pressed.density = density->value;
        pressed.denser = state.species;
    }
    const auto& crushed = state.usual.compression_across;
    if (crushed && (!pressed.face.crushed_from || crushed->value < *pressed.face.crushed_from))
        pressed.face.crushed_from = crushed->value;
}

void set_sides(ClampFace& face, const Patch& patch)
{
    // Sides of the face in its own plane: the two larger extents of its box.
    double sizes[3] = {patch.bounds.size(Axis::x), patch.bounds.size(Axis::y), patch.bounds.size(Axis::z)};
    std::sort(sizes, sizes + 3);
    face.length = metres(std::max(sizes[2], 1e-4));
    face.breadth = metres(std::max(sizes[1], 1e-4));
}

} // namespace

double spread_area(const Contact& contact, const Joint& joint)
{
    const GluedArea glued = glued_area(contact, joint);
    double area = 0;
    for (const Patch& p : contact.patches) area += p.area;
    return area * glued.glued_share;
}

std::optional<PressedFace> pressed_face(const Prepared& prepared, const Contact& contact, std::string* missing)
{
    const Joint& joint = prepared.piece->joints[*contact.joint];
    PressedFace pressed;
    pressed.wedges_itself = joint.kind == JointKind::dovetail || joint.kind == JointKind::sliding_dovetail;
    pressed.pulls_shoulders = joint.kind == JointKind::tenon || joint.kind == JointKind::dowel;
    pressed.fitted = joint.kind == JointKind::dowel ? "the dowels hold" : "the cheeks press";
    take_wood(pressed, prepared.state_of(contact.first));
    take_wood(pressed, prepared.state_of(contact.second));
    if (!(pressed.density.value() > 0)) {
        if (missing) *missing = "the density of " + prepared.state_of(contact.first).species;
        return std::nullopt;
    }
    const Patch* main = nullptr;
    for (const Patch& p : contact.patches)
        if (is_pressed(joint, p) && (!main || p.area > main->area)) main = &p;
    if (!main) main = &contact.patches.front();
    double area = 0;
    for (const Patch& p : contact.patches) {
        const double along = p.normal[0] * main->normal[0] + p.normal[1] * main->normal[1] + p.normal[2] * main->normal[2];
        if (is_pressed(joint, p) && along > 0.9) area += p.area;
    }
    set_sides(pressed.face, *main);
    const double share = pressed.pulls_shoulders ? 1 : glued_area(contact, joint).glued_share;
    pressed.face.area = square_metres(area * share);
    pressed.face.length = metres(in_metres(pressed.face.length) * share);
    pressed.face.reach = metres(thinner_side(prepared, contact, main->normal));
    pressed.across = joint.kind == JointKind::mitre
                         ? "square to the mitre: a band round the frame, or blocks stuck on beside the corner"
                         : across_words(main->normal);
    return pressed;
}

std::optional<PressedFace> pressed_edges(const Prepared& prepared, std::size_t p, std::string* missing)
{
    const Part& part = prepared.piece->parts[p];
    PressedFace pressed;
    take_wood(pressed, prepared.parts[p]);
    if (!(pressed.density.value() > 0)) {
        if (missing) *missing = "the density of " + prepared.parts[p].species;
        return std::nullopt;
    }
    pressed.face.length = part.length;
    pressed.face.breadth = part.thickness;
    pressed.face.area = square_metres(in_metres(part.length) * in_metres(part.thickness));
    pressed.face.reach = metres(in_metres(part.width) / std::max(2, part.glued_up ? part.glued_up->boards : 2));
    pressed.across = "across its boards";
    return pressed;
}

} // namespace jointwright
