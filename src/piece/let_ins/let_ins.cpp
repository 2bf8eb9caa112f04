#include "piece/let_ins/let_ins.hpp"

#include "piece/let_ins/joined_solid.hpp"
#include "piece/let_ins/let_in_bores.hpp"
#include "piece/model/turn.hpp"
#include "piece/solid/solid.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <map>

namespace jointwright {

namespace {

using kernel::Cell;
using kernel::HalfSpace;
using kernel::Vec;

Vec as_vec(const Point& p) { return {p[0], p[1], p[2]}; }

void take_bounds(LetIn& in)
{
    bool first = true;
    for (const Cell& cell : in.bodies) {
        Vec lo, hi;
        kernel::bounds(cell, lo, hi);
        in.lo = first ? lo : Vec(in.lo.cwiseMin(lo));
        in.hi = first ? hi : Vec(in.hi.cwiseMax(hi));
        first = false;
    }
}

/// Extent of bodies along a direction.
void extent_along(const std::vector<Cell>& bodies, const Vec& direction, double& lo, double& hi)
{
    lo = 1e30;
    hi = -1e30;
    for (const Cell& cell : bodies)
        for (const kernel::Polygon& face : cell.faces)
            for (const Vec& p : face.corners) {
                lo = std::min(lo, direction.dot(p));
                hi = std::max(hi, direction.dot(p));
            }
}

double size_along(const std::vector<Cell>& bodies, const Vec& direction)
{
    double lo, hi;
    extent_along(bodies, direction, lo, hi);
    return hi - lo;
}

/// Gathers the let-ins of a piece, contact by contact.
class Gatherer {
public:
    Gatherer(const Piece& piece, const std::vector<Contact>& contacts) : piece_(piece), contacts_(contacts) {}

    std::vector<LetIn> gather(bool& whole)
    {
        for (std::size_t c = 0; c < contacts_.size(); ++c) {
            if (!contacts_[c].joint) continue;
            if (all_.size() > kMostLetIns) {
                whole = false;
                break;
            }
            switch (piece_.joints[*contacts_[c].joint].kind) {
            case JointKind::tenon: add_tenon(c); break;
            case JointKind::bridle: add_tongue(c); break;
            case JointKind::housing:
            case JointKind::sliding_dovetail: add_recess(c, LetIn::Kind::housing); break;
            case JointKind::groove: add_recess(c, LetIn::Kind::groove); break;
            case JointKind::dowel:
            case JointKind::screws: add_bores(piece_, contacts_[c], c, all_); break;
            default: break;
            }
        }
        return std::move(all_);
    }

private:
    const std::vector<Cell>& drawn(std::size_t copy)
    {
        const auto known = drawn_.find(copy);
        if (known != drawn_.end()) return known->second;
        return drawn_.emplace(copy, solid_of(piece_.part_of(copy), piece_.copies[copy]).cells).first->second;
    }

    std::vector<Cell> shared(const Contact& contact)
    {
        std::vector<Cell> space;
        for (const Cell& a : drawn(contact.first))
            for (const Cell& b : drawn(contact.second)) {
                Cell both = kernel::clip(a, b.sides);
                if (!both.empty()) space.push_back(std::move(both));
            }
        return space;
    }

    LetIn begun(std::size_t c, LetIn::Kind kind) const
    {
        LetIn in;
        in.kind = kind;
        in.contact = c;
        in.into = contacts_[c].second;
        in.other = contacts_[c].first;
        return in;
    }

    /// The block between two cheeks and two edges, from the shoulder on.
    void add_tenon(std::size_t c)
    {
        const Contact& contact = contacts_[c];
        const Joint& joint = piece_.joints[*contact.joint];
        std::vector<HalfSpace> sides;
        std::optional<Vec> thin, wide;
        Vec lo = Vec::Constant(1e30), hi = Vec::Constant(-1e30), out = Vec::Zero();
        for (const Patch& p : contact.patches) {
            const Vec n = as_vec(p.normal);
            if (p.role == Patch::Role::shoulder && out.isZero()) out = n;
            if (p.role != Patch::Role::cheek && p.role != Patch::Role::edge) continue;
            (p.role == Patch::Role::cheek ? thin : wide) = n;
            sides.push_back({n, n.dot(as_vec(p.outline.front()))});
            for (const Point& corner : p.outline) {
                lo = lo.cwiseMin(as_vec(corner));
                hi = hi.cwiseMax(as_vec(corner));
            }
        }
        if (!joint.tenon || sides.size() != 4 || !thin || !wide || out.isZero()) return;
        LetIn in = begun(c, LetIn::Kind::tenon);
        in.along = thin->cross(*wide).normalized();
        if (in.along.dot(out) < 0) in.along = -in.along;
        in.thin = *thin;
        in.thickness = in_metres(joint.tenon->thickness);
        in.width = in_metres(joint.tenon->width);
        in.mitred = joint.tenon->mitred;
        in.from = 1e30;
        in.to = -1e30;
        for (const Patch& p : contact.patches)
            if (p.role == Patch::Role::cheek)
                for (const Point& corner : p.outline) {
                    in.from = std::min(in.from, in.along.dot(as_vec(corner)));
                    in.to = std::max(in.to, in.along.dot(as_vec(corner)));
                }
        const Vec room = Vec::Constant(2 * (in.to - in.from) + in.width);
        const Cell prism = kernel::clip(kernel::box_cell(lo - room, hi + room), sides);
        add_stretch(in, prism);
        if (!joint.tenon->loose) return;
        // A slip of its own goes as deep into the first part.
        std::swap(in.into, in.other);
        in.along = -in.along;
        const double length = in.length(), mouth = -in.from;
        in.from = mouth;
        in.to = mouth + length;
        add_stretch(in, prism);
    }

    void add_stretch(LetIn in, const Cell& prism)
    {
        const Cell body = kernel::clip(kernel::clip(prism, {-in.along, -in.from}), HalfSpace{in.along, in.to});
        if (!body.empty()) add({body}, std::move(in));
    }

    void add_tongue(std::size_t c)
    {
        const Contact& contact = contacts_[c];
        std::vector<HalfSpace> cheeks;
        for (const Patch& p : contact.patches)
            if (p.role == Patch::Role::cheek) cheeks.push_back({as_vec(p.normal), as_vec(p.normal).dot(as_vec(p.outline[0]))});
        if (cheeks.size() != 2) return;
        std::vector<Cell> bodies;
        for (const Cell& cell : shared(contact))
            if (Cell tongue = kernel::clip(cell, cheeks); !tongue.empty()) bodies.push_back(std::move(tongue));
        LetIn in = begun(c, LetIn::Kind::bridle);
        in.thin = cheeks.front().normal;
        set_way(in, bodies, as_vec(axes_of(piece_.part_of(contact.first), piece_.copies[contact.first]).grain), contact);
        in.thickness = size_along(bodies, in.thin);
        in.width = size_along(bodies, in.wide());
        add(std::move(bodies), std::move(in));
    }

    /// What of the first part is drawn inside the second.
    void add_recess(std::size_t c, LetIn::Kind kind)
    {
        const Contact& contact = contacts_[c];
        if (!contact.shared) return;
        std::vector<Cell> bodies = shared(contact);
        if (bodies.empty()) return;
        LetIn in = begun(c, kind);
        set_way(in, bodies, -as_vec(way_apart(piece_, contact)), contact);
        // Of the two sides square to the way in, it runs along the one in which it goes through or is longer.
        const PartAxes axes = axes_of(piece_.part_of(contact.second), piece_.copies[contact.second]);
        std::vector<Vec> aside;
        for (const Point& axis : {axes.grain, axes.width, axes.face})
            if (std::abs(as_vec(axis).dot(in.along)) < 0.7) aside.push_back(as_vec(axis));
        if (aside.size() != 2) return;
        const auto left = [&](const Vec& a) { return size_along(drawn(contact.second), a) - size_along(bodies, a); };
        const bool through_a = left(aside[0]) < kTouch, through_b = left(aside[1]) < kTouch;
        const bool runs_a = through_a != through_b ? through_a : size_along(bodies, aside[0]) >= size_along(bodies, aside[1]);
        in.thin = (aside[runs_a ? 1 : 0] - in.along * in.along.dot(aside[runs_a ? 1 : 0])).normalized();
        in.thickness = size_along(bodies, in.thin);
        in.width = size_along(bodies, in.wide());
        const Joint& joint = piece_.joints[*contact.joint];
        if (kind == LetIn::Kind::groove && joint.groove_depth)
            in.deeper = std::max(0.0, in_metres(*joint.groove_depth) - in.length());
        add(std::move(bodies), std::move(in));
    }

    /// Points the way in from the middle of the first part to what is shared.
    void set_way(LetIn& in, const std::vector<Cell>& bodies, const Vec& way, const Contact& contact) const
    {
        if (bodies.empty()) return;
        in.along = way;
        extent_along(bodies, way, in.from, in.to);
        const Box box = bounds_of(piece_.part_of(contact.first), piece_.copies[contact.first]);
        const double middle = way.dot((as_vec(box.lo) + as_vec(box.hi)) / 2);
        if (middle <= (in.from + in.to) / 2) return;
        in.along = -way;
        std::swap(in.from, in.to);
        in.from = -in.from;
        in.to = -in.to;
    }

    void add(std::vector<Cell> bodies, LetIn in)
    {
        if (bodies.empty()) return;
        in.bodies = std::move(bodies);
        take_bounds(in);
        all_.push_back(std::move(in));
    }

    const Piece& piece_;
    const std::vector<Contact>& contacts_;
    std::map<std::size_t, std::vector<Cell>> drawn_;
    std::vector<LetIn> all_;
};

} // namespace

kernel::Vec LetIn::wide() const { return along.cross(thin); }

std::string_view name_of(LetIn::Kind kind)
{
    switch (kind) {
    case LetIn::Kind::tenon: return "tenon";
    case LetIn::Kind::bridle: return "bridle tongue";
    case LetIn::Kind::housing: return "housed part";
    case LetIn::Kind::groove: return "part in its groove";
    case LetIn::Kind::dowel: return "dowel";
    case LetIn::Kind::screw: return "screw";
    case LetIn::Kind::bolt: return "bolt";
    case LetIn::Kind::cross_dowel: return "cross dowel";
    }
    return {};
}

std::vector<LetIn> let_ins_of(const Piece& piece, const std::vector<Contact>& contacts, bool& whole)
{
    return Gatherer(piece, contacts).gather(whole);
}

} // namespace jointwright
