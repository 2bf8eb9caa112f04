#include "piece/joined_solid.hpp"

#include "piece/contact_patches.hpp"
#include "piece/solid.hpp"
#include "piece/turn.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using kernel::Cell;
using kernel::HalfSpace;
using kernel::Vec;

/// A convex part of space; no half-space: all of it.
using Region = std::vector<HalfSpace>;
using Cells = std::vector<Cell>;

Vec as_vec(const Point& p) { return {p[0], p[1], p[2]}; }

bool boxes_apart(const Cell& a, const Cell& b)
{
    Vec alo, ahi, blo, bhi;
    kernel::bounds(a, alo, ahi);
    kernel::bounds(b, blo, bhi);
    return ((ahi - blo).array() < kTouch / 2).any() || ((bhi - alo).array() < kTouch / 2).any();
}

void take_away(Cells& cells, const Cell& body)
{
    Cells left;
    for (Cell& cell : cells) {
        if (boxes_apart(cell, body)) {
            left.push_back(std::move(cell));
            continue;
        }
        for (Cell& piece : kernel::subtract(cell, body.sides)) left.push_back(std::move(piece));
    }
    cells = std::move(left);
}

/// What two bodies are both drawn in, in convex pieces.
Cells shared_cells(const Cells& first, const Cells& second)
{
    Cells shared;
    for (const Cell& a : first)
        for (const Cell& b : second) {
            if (boxes_apart(a, b)) continue;
            Cell both = kernel::clip(a, b.sides);
            if (!both.empty()) shared.push_back(std::move(both));
        }
    return shared;
}

/// Box round the cheeks and edges of a tenon.
std::optional<Box> tenon_box(const Contact& contact)
{
    std::optional<Box> box;
    for (const Patch& p : contact.patches) {
        if (p.role != Patch::Role::cheek) continue;
        if (!box) box = p.bounds;
        for (std::size_t i = 0; i < 3; ++i) {
            box->lo[i] = std::min(box->lo[i], p.bounds.lo[i]);
            box->hi[i] = std::max(box->hi[i], p.bounds.hi[i]);
        }
    }
    return box;
}

Region between_cheeks(const Contact& contact)
{
    Region region;
    for (const Patch& p : contact.patches) {
        if (p.role != Patch::Role::cheek) continue;
        const Vec n = as_vec(p.normal);
        region.push_back({n, n.dot(as_vec(p.outline[0]))});
    }
    return region;
}

/// Behind the face of a lap or mitre, seen from the second part.
Region behind_face(const Contact& contact)
{
    const auto face =
        std::find_if(contact.patches.begin(), contact.patches.end(), [](const Patch& p) { return p.role == Patch::Role::face; });
    if (face == contact.patches.end()) return {};
    const Vec n = as_vec(face->normal);
    return {{n, n.dot(as_vec(face->outline[0]))}};
}

/// The tails of a dovetail, each half a pitch wide on average and wider towards the end of the first part.
std::vector<Region> tails_of(const Piece& piece, const Contact& contact, const Joint& joint)
{
    const Part& first = piece.part_of(contact.first);
    const Part& second = piece.part_of(contact.second);
    if (first.grain == second.grain || !joint.dovetail || !contact.shared) return {Region{}};
    const Box& space = *contact.shared;
    const Axis across = third_axis(first.grain, second.grain), out = first.grain;
    const bool upwards = piece.copies[contact.first].box.middle(out) < space.middle(out);
    const double pitch = space.size(across) / joint.dovetail->tails, flare = 1 / joint.dovetail->slope;
    const double length = std::sqrt(1 + flare * flare);
    std::vector<Region> tails;
    for (int i = 0; i < joint.dovetail->tails; ++i) {
        const double middle = space.lo[index_of(across)] + (i + 0.5) * pitch;
        Region tail;
        for (const double side : {-1.0, 1.0}) {
            Vec n = Vec::Zero(), on = Vec::Zero();
            n[static_cast<int>(index_of(across))] = side / length;
            n[static_cast<int>(index_of(out))] = (upwards ? -flare : flare) / length;
            on[static_cast<int>(index_of(across))] = middle + side * pitch / 4;
            on[static_cast<int>(index_of(out))] = space.middle(out);
            tail.push_back({n, n.dot(on)});
        }
        tails.push_back(std::move(tail));
    }
    return tails;
}

/// Which parts of the shared space stay with the first part; an empty list: none.
std::vector<Region> kept_by_first(const Piece& piece, const Contact& contact, const Joint& joint)
{
    switch (joint.kind) {
    case JointKind::edge:
    case JointKind::face:
    case JointKind::butt: return {};
    case JointKind::lap:
    case JointKind::mitre: return {behind_face(contact)};
    case JointKind::bridle: return {between_cheeks(contact)};
    case JointKind::dovetail: return tails_of(piece, contact, joint);
    case JointKind::tenon:
        if (const auto box = tenon_box(contact)) return {kernel::box_sides(as_vec(box->lo), as_vec(box->hi))};
        return {Region{}};
    default: return {Region{}};
    }
}

/// The space that both are drawn in, dealt out to the two.
void deal_out(const Piece& piece, const Contact& contact, const Joint& joint, const std::vector<Cells>& drawn,
              std::vector<JoinedSolid>& solids)
{
    const std::vector<Region> kept = kept_by_first(piece, contact, joint);
    for (const Cell& space : shared_cells(drawn[contact.first], drawn[contact.second])) {
        Cells lost{space};
        for (const Region& region : kept) {
            const Cell of_first = kernel::clip(space, region);
            if (of_first.empty()) continue;
            take_away(solids[contact.second].cells, of_first);
            take_away(lost, of_first);
        }
        for (const Cell& of_second : lost) take_away(solids[contact.first].cells, of_second);
    }
}

/// A tenon that comes on top of the drawn length. Turned parts have theirs left out: it lies hidden in the mortise.
void add_tenon(const Piece& piece, const Contact& contact, std::vector<JoinedSolid>& solids)
{
    if (piece.part_of(contact.first).turn || piece.part_of(contact.second).turn) return;
    const auto box = tenon_box(contact);
    if (!box) return;
    const Cell tenon = kernel::box_cell(as_vec(box->lo), as_vec(box->hi));
    take_away(solids[contact.second].cells, tenon);
    solids[contact.first].cells.push_back(tenon);
}

} // namespace

std::vector<JoinedSolid> joined_solids(const Piece& piece, const std::vector<Contact>& contacts)
{
    std::vector<Cells> drawn(piece.copies.size());
    std::vector<JoinedSolid> solids(piece.copies.size());
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        drawn[i] = solid_of(piece.part_of(i), piece.copies[i]).cells;
        solids[i].cells = drawn[i];
        solids[i].grain = as_vec(axes_of(piece.part_of(i), piece.copies[i]).grain);
    }
    for (const Contact& contact : contacts) {
        if (!contact.joint) continue;
        const Joint& joint = piece.joints[*contact.joint];
        if (contact.shared)
            deal_out(piece, contact, joint, drawn, solids);
        else if (joint.kind == JointKind::tenon)
            add_tenon(piece, contact, solids);
    }
    return solids;
}

} // namespace jointwright
