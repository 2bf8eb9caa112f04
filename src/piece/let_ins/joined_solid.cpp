#include "piece/let_ins/joined_solid.hpp"

#include "piece/contacts/contact_patches.hpp"
#include "piece/let_ins/let_ins.hpp"
#include "piece/model/turn.hpp"
#include "piece/solid/solid.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace jointwright {

namespace {

using kernel::Cell;
using kernel::HalfSpace;
using kernel::Vec;

/// A convex part of space; no half-space: all of it.
using Region = std::vector<HalfSpace>;
using Cells = std::vector<Cell>;

Vec as_vec(const Point& p) { return {p[0], p[1], p[2]}; }

struct Extent {
    Vec lo, hi;
    explicit Extent(const Cell& cell) { kernel::bounds(cell, lo, hi); }
    bool apart_from(const Extent& other) const
    {
        return ((hi - other.lo).array() < kTouch / 2).any() || ((other.hi - lo).array() < kTouch / 2).any();
    }
};

/// Every cut adds a side to all that it leaves: those without a face bound nothing.
void drop_idle_sides(Cell& cell)
{
    std::vector<HalfSpace> kept;
    for (const HalfSpace& side : cell.sides) {
        const auto bounded = [&](const kernel::Polygon& face) {
            return face.normal.dot(side.normal) > 1 - 1e-12 && std::abs(side.outside(face.corners[0])) < 1e-8;
        };
        if (std::any_of(cell.faces.begin(), cell.faces.end(), bounded)) kept.push_back(side);
    }
    cell.sides = std::move(kept);
}

/// Cells with the boxes round them at hand: a rail may be cut hundreds of times.
class CutBody {
public:
    explicit CutBody(Cells cells) : cells_(std::move(cells))
    {
        for (const Cell& cell : cells_) extents_.emplace_back(cell);
    }
    void add(Cell cell)
    {
        drop_idle_sides(cell);
        extents_.emplace_back(cell);
        cells_.push_back(std::move(cell));
    }
    void take_away(const Cell& body)
    {
        const Extent extent(body);
        // New pieces come behind the old cells and are apart from the body: they need no look.
        for (std::size_t i = cells_.size(); i-- > 0;) {
            if (extents_[i].apart_from(extent)) continue;
            const Cell cell = std::move(cells_[i]);
            remove(i);
            for (Cell& piece : kernel::subtract(cell, body.sides)) add(std::move(piece));
        }
    }
    const Cells& cells() const { return cells_; }
    Cells take() { return std::move(cells_); }

private:
    void remove(std::size_t i)
    {
        if (i + 1 != cells_.size()) {
            cells_[i] = std::move(cells_.back());
            extents_[i] = extents_.back();
        }
        cells_.pop_back();
        extents_.pop_back();
    }
    Cells cells_;
    std::vector<Extent> extents_;
};

/// What two bodies are both drawn in, in convex pieces.
Cells shared_cells(const Cells& first, const Cells& second)
{
    Cells shared;
    for (const Cell& a : first)
        for (const Cell& b : second) {
            if (Extent(a).apart_from(Extent(b))) continue;
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
    const double pitch = space.size(across) / joint.dovetail->tails,
                 flare = joint.dovetail->slope > 0 ? 1 / joint.dovetail->slope : 0;
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
              std::vector<CutBody>& bodies)
{
    const std::vector<Region> kept = kept_by_first(piece, contact, joint);
    for (const Cell& space : shared_cells(drawn[contact.first], drawn[contact.second])) {
        CutBody lost({space});
        for (const Region& region : kept) {
            const Cell of_first = kernel::clip(space, region);
            if (of_first.empty()) continue;
            bodies[contact.second].take_away(of_first);
            lost.take_away(of_first);
        }
        for (const Cell& of_second : lost.cells()) bodies[contact.first].take_away(of_second);
    }
}

/// Tenons that come on top of the drawn length.
class AddedTenons {
public:
    AddedTenons(const Piece& piece, const std::vector<Contact>& contacts) : piece_(piece), in_(piece.copies.size())
    {
        const auto is_mitred = [](const Joint& joint) { return joint.tenon && joint.tenon->mitred; };
        if (std::any_of(piece.joints.begin(), piece.joints.end(), is_mitred)) let_ins_ = meet_let_ins(piece, contacts).all;
    }

    /// Turned parts have theirs left out: it lies hidden in the mortise.
    void add(std::size_t index, const Contact& contact, std::vector<CutBody>& bodies)
    {
        if (piece_.part_of(contact.first).turn || piece_.part_of(contact.second).turn) return;
        CutBody tenon(cells_of(index, contact));
        // Of two that meet, which the let-ins check fails, the earlier one is drawn whole.
        for (const Cell& earlier : in_[contact.second]) tenon.take_away(earlier);
        for (const Cell& cell : tenon.cells()) {
            bodies[contact.second].take_away(cell);
            bodies[contact.first].add(cell);
            in_[contact.second].push_back(cell);
        }
    }

private:
    Cells cells_of(std::size_t index, const Contact& contact) const
    {
        const bool mitred = piece_.joints[*contact.joint].tenon && piece_.joints[*contact.joint].tenon->mitred;
        for (const LetIn& in : let_ins_)
            if (mitred && in.contact == index && in.into == contact.second) return in.bodies;
        const auto box = tenon_box(contact);
        return box ? Cells{kernel::box_cell(as_vec(box->lo), as_vec(box->hi))} : Cells{};
    }

    const Piece& piece_;
    std::vector<LetIn> let_ins_; ///< only where some tenon is mitred
    std::vector<Cells> in_;      ///< by copy: tenons that it has taken
};

} // namespace

std::vector<JoinedSolid> joined_solids(const Piece& piece, const std::vector<Contact>& contacts)
{
    std::vector<Cells> drawn;
    std::vector<CutBody> bodies;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        drawn.push_back(solid_of(piece.part_of(i), piece.copies[i]).cells);
        bodies.emplace_back(drawn[i]);
    }
    AddedTenons tenons(piece, contacts);
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const Contact& contact = contacts[c];
        if (!contact.joint) continue;
        const Joint& joint = piece.joints[*contact.joint];
        if (contact.shared)
            deal_out(piece, contact, joint, drawn, bodies);
        else if (joint.kind == JointKind::tenon)
            tenons.add(c, contact, bodies);
    }
    std::vector<JoinedSolid> solids;
    for (std::size_t i = 0; i < piece.copies.size(); ++i)
        solids.push_back({bodies[i].take(), as_vec(axes_of(piece.part_of(i), piece.copies[i]).grain)});
    return solids;
}

Point way_apart(const Piece& piece, const Contact& contact)
{
    const bool mitre = piece.joints[*contact.joint].kind == JointKind::mitre;
    if (!contact.shared || mitre) {
        const auto shoulder = std::find_if(contact.patches.begin(), contact.patches.end(),
                                           [](const Patch& p) { return p.role == Patch::Role::shoulder; });
        const Point& n = shoulder != contact.patches.end() ? shoulder->normal : contact.patches.front().normal;
        return {-n[0], -n[1], -n[2]};
    }
    const Box first = bounds_of(piece.part_of(contact.first), piece.copies[contact.first]);
    const Box second = bounds_of(piece.part_of(contact.second), piece.copies[contact.second]);
    Point way{};
    double shortest = std::numeric_limits<double>::infinity();
    // Upwards first: of ways alike, lifting off is what a maker would do.
    for (const std::size_t i : {std::size_t{2}, std::size_t{1}, std::size_t{0}})
        for (const double sign : {1.0, -1.0}) {
            const double far = sign > 0 ? second.hi[i] - first.lo[i] : first.hi[i] - second.lo[i];
            if (far >= shortest - kTouch) continue;
            shortest = far;
            way = {};
            way[i] = sign;
        }
    return way;
}

} // namespace jointwright
