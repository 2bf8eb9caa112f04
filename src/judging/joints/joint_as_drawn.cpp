#include "judging/joints/joint_as_drawn.hpp"

#include "judging/finding_tools.hpp"
#include "piece/let_ins/joined_solid.hpp"
#include "piece/model/turn.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace jointwright {

namespace {

Point axis_point(Axis axis)
{
    Point p{};
    p[index_of(axis)] = 1;
    return p;
}

/// The largest patch of a role; nullptr where there is none.
const Patch* largest_of(const Contact& contact, Patch::Role role)
{
    for (const Patch& p : contact.patches) // largest first
        if (p.role == role) return &p;
    return nullptr;
}

/// Sides of a patch along two axes, for parts along the axes of the piece.
Length side_of(const Patch& patch, Axis axis)
{
    return metres(patch.bounds.hi[index_of(axis)] - patch.bounds.lo[index_of(axis)]);
}

/// A tenon or dowels stand on a shoulder; the rail is the first part.
void take_section(const Prepared& prepared, const Contact& contact, Axis into, DrawnJoint& j)
{
    const Part& part = prepared.piece->part_of(contact.first);
    const Box& box = prepared.piece->copies[contact.first].box;
    Axis wide = part.width_axis(), thin = part.face;
    if (into == wide) wide = part.grain;
    if (into == thin) thin = part.grain;
    if (j.form == JointForm::dowels && box.size(wide) < box.size(thin)) std::swap(wide, thin);
    j.sizes.rail_depth = metres(box.size(wide));
    j.sizes.rail_thickness = metres(box.size(thin));
    j.into = axis_point(into);
    j.main = axis_point(thin);
    j.flat = axis_point(wide);
}

/// The axis that the joint's shoulder looks along, by the drawn axes of the first part where it is turned.
Axis entry_of(const Prepared& prepared, const Contact& contact)
{
    const Part& part = prepared.piece->part_of(contact.first);
    const Patch* shoulder = largest_of(contact, Patch::Role::shoulder);
    if (part.turn || !shoulder) return part.grain;
    return main_axis_of(shoulder->normal);
}

/// Directions of a turned part as it stands.
void turn_directions(const Prepared& prepared, std::size_t copy, DrawnJoint& j)
{
    const auto turn = turn_of(prepared.piece->part_of(copy), prepared.piece->copies[copy]);
    if (!turn) return;
    for (Point* p : {&j.into, &j.main, &j.flat}) *p = turn->direct(*p);
}

/// Points the entry out of the first part into the second, as the face of the joint does.
void direct_entry(const Patch& face, DrawnJoint& j)
{
    double along = 0;
    for (std::size_t i = 0; i < 3; ++i) along += face.normal[i] * j.into[i];
    if (along < 0)
        for (double& v : j.into) v = -v;
    j.directed = std::abs(along) > 0.7;
}

/// Wood of the second part on either side of a tenon, the thinner one.
Length cheek_of(const Prepared& prepared, const Contact& contact, const Point& thin, Length thickness)
{
    const Axis axis = main_axis_of(thin);
    const Box &post = prepared.piece->copies[contact.second].box, &rail = prepared.piece->copies[contact.first].box;
    const double middle = rail.middle(axis), half = in_metres(thickness) / 2;
    return metres(std::max(0.0, std::min(middle - half - post.lo[index_of(axis)], post.hi[index_of(axis)] - middle - half)));
}

void draw_pegs(const Prepared& prepared, const Contact& contact, const Joint& joint, const Point& thin, DrawnJoint& j)
{
    if (!joint.pegs) return;
    j.sizes.pegs = {joint.pegs->diameter, joint.pegs->count, cheek_of(prepared, contact, thin, j.sizes.thickness)};
}

void draw_tenon(const Prepared& prepared, const Contact& contact, const Joint& joint, DrawnJoint& j)
{
    j.form = joint.tenon && joint.tenon->loose ? JointForm::loose_tenon : JointForm::tenon;
    if (!joint.tenon) {
        j.missing = "tenon = { length = ..., width = ..., thickness = ... }";
        return;
    }
    j.sizes.thickness = joint.tenon->thickness;
    j.sizes.width = joint.tenon->width;
    j.sizes.length = joint.tenon->length;
    // Drawn into the post: the shared depth is the tenon's length, but for the wedge that a tilted end shares with what it only meets.
    if (contact.shared && !prepared.piece->part_of(contact.first).turn && !prepared.piece->part_of(contact.second).turn)
        j.sizes.length = metres(contact.shared->size(entry_of(prepared, contact)));
    j.sizes.length = j.sizes.length * kept_share(prepared.layout->let_ins, prepared.layout->contacts, contact);
    take_section(prepared, contact, entry_of(prepared, contact), j);
    draw_pegs(prepared, contact, joint, j.main, j);
    turn_directions(prepared, contact.first, j);
    if (const Patch* shoulder = largest_of(contact, Patch::Role::shoulder)) direct_entry(*shoulder, j);
}

void draw_dowels(const Prepared& prepared, const Contact& contact, const Joint& joint, DrawnJoint& j)
{
    j.form = JointForm::dowels;
    if (!joint.dowels) {
        j.missing = "dowels = { diameter = ..., length = ..., count = ... }";
        return;
    }
    j.sizes.diameter = joint.dowels->diameter;
    j.sizes.length = joint.dowels->length * kept_share(prepared.layout->let_ins, prepared.layout->contacts, contact);
    j.sizes.count = joint.dowels->count;
    const Patch& face = contact.patches.front();
    const Axis into = main_axis_of(face.normal);
    Axis wide = into == Axis::x ? Axis::y : Axis::x, thin = third_axis(into, wide);
    if (side_of(face, wide) < side_of(face, thin)) std::swap(wide, thin);
    j.sizes.rail_depth = side_of(face, wide);
    j.sizes.rail_thickness = side_of(face, thin);
    j.into = axis_point(into);
    j.main = axis_point(thin);
    j.flat = axis_point(wide);
    direct_entry(face, j);
}

/// Faces that lie on each other with crossed grains: bridles, laps, dovetails.
void draw_faces(const Prepared& prepared, const Contact& contact, const Joint& joint, DrawnJoint& j)
{
    const Part& first = prepared.piece->part_of(contact.first);
    const Patch* face = largest_of(contact, joint.kind == JointKind::lap ? Patch::Role::face : Patch::Role::cheek);
    if (!face) face = &contact.patches.front();
    const Axis normal = main_axis_of(face->normal), along = first.grain == normal ? first.width_axis() : first.grain,
               across = third_axis(normal, along);
    j.sizes.length = side_of(*face, along);
    j.sizes.width = side_of(*face, across);
    j.sizes.rail_depth = metres(prepared.piece->copies[contact.first].box.size(across));
    j.sizes.rail_thickness = metres(prepared.piece->copies[contact.first].box.size(normal));
    j.sizes.thickness = joint.bridle_thickness ? *joint.bridle_thickness : j.sizes.rail_thickness / 3.0;
    j.into = axis_point(along);
    j.main = axis_point(normal);
    j.flat = axis_point(across);
    if (joint.kind == JointKind::bridle) draw_pegs(prepared, contact, joint, j.main, j);
    if (joint.kind != JointKind::dovetail) return;
    j.sizes.count = joint.dovetail ? joint.dovetail->tails : 1;
    j.sizes.slope = joint.dovetail ? joint.dovetail->slope : 8;
    j.sizes.thickness = j.sizes.width;
}

/// A part let in: the recess as it is drawn, along which axis it runs, and the wood of the second part beside it.
bool draw_let_in(const Prepared& prepared, const Contact& contact, JointKind kind, DrawnJoint& j)
{
    const Piece& piece = *prepared.piece;
    const Part &first = piece.part_of(contact.first), &second = piece.part_of(contact.second);
    if (!contact.shared || first.turn || second.turn) return false;
    // A slat that lies in a notch on long grain is a face joint with walls: its glue line is judged as such.
    const Patch* bottom = largest_of(contact, Patch::Role::bottom);
    if (kind == JointKind::housing && bottom && !bottom->end_grain_first && !bottom->end_grain_second) return false;
    const Axis into = main_axis_of(way_apart(piece, contact)), a = into == Axis::x ? Axis::y : Axis::x, b = third_axis(into, a);
    const Box &space = *contact.shared, &post = piece.copies[contact.second].box;
    const auto through = [&](Axis k) { return post.size(k) - space.size(k) < kTouch; };
    const Axis run = through(a) != through(b) ? (through(a) ? a : b) : (space.size(a) >= space.size(b) ? a : b),
               thick = run == a ? b : a;
    j.form = kind == JointKind::groove    ? JointForm::groove
             : kind == JointKind::housing ? JointForm::housing
                                          : JointForm::sliding_dovetail;
    j.sizes.width = metres(space.size(run));
    j.sizes.length = metres(space.size(into));
    j.sizes.thickness = metres(space.size(thick));
    j.sizes.rail_depth = j.sizes.rail_thickness = metres(piece.copies[contact.first].box.size(thick));
    j.sizes.along_post = run == second.grain;
    j.sizes.post_depth = metres(post.size(into));
    j.sizes.grain_enters = into == first.grain;
    for (const double left :
         {space.lo[index_of(thick)] - post.lo[index_of(thick)], post.hi[index_of(thick)] - space.hi[index_of(thick)]})
        if (left > kTouch && (j.sizes.lip.value() == 0 || left < in_metres(j.sizes.lip))) j.sizes.lip = metres(left);
    j.into = axis_point(into);
    j.main = axis_point(run);
    j.flat = axis_point(thick);
    j.turns_flat = false;
    if (piece.copies[contact.first].box.middle(into) > space.middle(into))
        for (double& v : j.into) v = -v;
    j.directed = piece.copies[contact.first].box.size(into) > space.size(into) + kTouch;
    return true;
}

/// A mitre: its face, and what crosses it.
bool draw_mitre(const Prepared& prepared, const Contact& contact, const Joint& joint, DrawnJoint& j)
{
    const Part &first = prepared.piece->part_of(contact.first), &second = prepared.piece->part_of(contact.second);
    if (first.turn || second.turn || first.grain == second.grain) return false;
    const Patch& face = contact.patches.front();
    const Axis out = third_axis(first.grain, second.grain);
    const double cut = std::hypot(face.bounds.size(first.grain), face.bounds.size(second.grain)), thick = face.bounds.size(out);
    j.into = face.normal;
    j.directed = true;
    j.main = axis_point(out);
    j.flat = {j.main[1] * j.into[2] - j.main[2] * j.into[1], j.main[2] * j.into[0] - j.main[0] * j.into[2],
              j.main[0] * j.into[1] - j.main[1] * j.into[0]};
    j.form = JointForm::mitre;
    j.sizes.rail_thickness = metres(thick);
    j.sizes.rail_depth = metres(cut / std::numbers::sqrt2); // of members of one width with that cut
    j.sizes.tilt = std::acos(std::min(1.0, std::abs(face.normal[index_of(first.grain)])));
    if (joint.keys) {
        j.form = JointForm::keyed_mitre;
        j.sizes.thickness = joint.keys->thickness;
        j.sizes.length = joint.keys->depth;
        j.sizes.count = joint.keys->count;
    } else if (joint.spline) {
        j.form = JointForm::splined_mitre;
        j.sizes.thickness = joint.spline->thickness;
        j.sizes.length = joint.spline->depth;
    } else if (joint.dowels) {
        j.form = JointForm::dowels;
        j.sizes.rail_depth = metres(cut);
        j.sizes.diameter = joint.dowels->diameter;
        j.sizes.length = joint.dowels->length;
        j.sizes.count = joint.dowels->count;
    }
    return true;
}

} // namespace

std::optional<DrawnJoint> drawn_joint(const Prepared& prepared, const Contact& contact)
{
    if (!contact.joint || contact.patches.empty()) return std::nullopt;
    const Joint& joint = prepared.piece->joints[*contact.joint];
    DrawnJoint j;
    switch (joint.kind) {
    case JointKind::tenon: draw_tenon(prepared, contact, joint, j); break;
    case JointKind::dowel: draw_dowels(prepared, contact, joint, j); break;
    case JointKind::bridle:
        j.form = JointForm::bridle;
        draw_faces(prepared, contact, joint, j);
        break;
    case JointKind::lap:
        j.form = JointForm::lap;
        draw_faces(prepared, contact, joint, j);
        break;
    case JointKind::dovetail:
        j.form = JointForm::dovetail;
        draw_faces(prepared, contact, joint, j);
        break;
    case JointKind::housing:
    case JointKind::groove:
    case JointKind::sliding_dovetail:
        if (!draw_let_in(prepared, contact, joint.kind, j)) return std::nullopt;
        break;
    case JointKind::mitre:
        if (!draw_mitre(prepared, contact, joint, j)) return std::nullopt;
        break;
    default: return std::nullopt;
    }
    j.sizes.clearance = joint.clearance;
    return j;
}

} // namespace jointwright
