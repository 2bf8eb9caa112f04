#include "piece/let_ins/let_in_bores.hpp"

#include "piece/let_ins/bore_rows.hpp"
#include "piece/model/turn.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace jointwright {

namespace {

using kernel::Vec;

constexpr int kBoreSides = 12;           // of the prism that stands for a bore
constexpr double kCrossDowelShare = 0.8; // of the thickness of its part: how long a cross dowel is

Vec as_vec(const Point& p) { return {p[0], p[1], p[2]}; }

/// Extent of a copy's own box along a direction, by the side of the box that runs that way.
double size_along(const Part& part, const Copy& copy, const Vec& direction)
{
    const PartAxes axes = axes_of(part, copy);
    const double g = std::abs(as_vec(axes.grain).dot(direction)), w = std::abs(as_vec(axes.width).dot(direction)),
                 f = std::abs(as_vec(axes.face).dot(direction));
    if (g >= w && g >= f) return in_metres(part.length);
    return in_metres(w >= f ? part.width : part.thickness);
}

class BoreMaker {
public:
    BoreMaker(const Piece& piece, const Contact& contact, std::size_t index, std::vector<LetIn>& all)
        : piece_(piece), contact_(contact), index_(index), all_(all)
    {
    }

    void dowels(const Joint::Dowels& dowels)
    {
        const RowOnFace row = row_on(contact_.patches.front(), dowels.count, dowels.inset);
        for (const Vec& at : row.places)
            for (const bool in_second : {true, false})
                add(LetIn::Kind::dowel, in_second, at, in_second ? row.normal : Vec(-row.normal), row.along,
                    in_metres(dowels.diameter), in_metres(dowels.length) / 2);
    }

    void screws(const Joint::Screws& screws)
    {
        if (screws.kind == ScrewKind::pocket_screw) return;
        const bool bolt = screws.kind == ScrewKind::bolt;
        const RowOnFace row = row_on(contact_.patches.front(), screws.count, screws.inset);
        const double through = std::min(size_of(contact_.first, row.normal), in_metres(screws.length));
        const double ahead = std::min(in_metres(screws.length) - through, size_of(contact_.second, row.normal));
        const LetIn::Kind kind = bolt ? LetIn::Kind::bolt : LetIn::Kind::screw;
        for (const Vec& at : row.places) {
            add(kind, false, at, -row.normal, row.along, in_metres(screws.diameter), through);
            if (ahead <= kTouch) continue;
            add(kind, true, at, row.normal, row.along, in_metres(screws.diameter), ahead);
            if (screws.cross_dowel) cross_dowel(at + row.normal * ahead, row, in_metres(*screws.cross_dowel));
        }
    }

private:
    double size_of(std::size_t copy, const Vec& direction) const
    {
        return size_along(piece_.part_of(copy), piece_.copies[copy], direction);
    }

    void add(LetIn::Kind kind, bool in_second, const Vec& at, const Vec& along, const Vec& aside, double diameter, double length)
    {
        if (diameter <= kTouch || length <= kTouch) return;
        LetIn in;
        in.kind = kind;
        in.into = in_second ? contact_.second : contact_.first;
        in.other = in_second ? contact_.first : contact_.second;
        in.contact = index_;
        in.along = along;
        in.thin = aside;
        in.from = along.dot(at);
        in.to = in.from + length;
        in.thickness = in.width = diameter;
        in.at = at;
        const Vec tip = at + along * length;
        for (int i = 0; i < 3; ++i) {
            const double beside = diameter / 2 * std::sqrt(std::max(0.0, 1 - along[i] * along[i]));
            in.lo[i] = std::min(at[i], tip[i]) - beside;
            in.hi[i] = std::max(at[i], tip[i]) + beside;
        }
        all_.push_back(std::move(in));
    }

    /// Bored from the side, through the thickness of the second part, about the end of the bolt.
    void cross_dowel(const Vec& at, const RowOnFace& row, double diameter)
    {
        const Part& part = piece_.part_of(contact_.second);
        const PartAxes axes = axes_of(part, piece_.copies[contact_.second]);
        const bool blocked = std::abs(as_vec(axes.face).dot(row.normal)) > 0.7;
        const Vec raw = as_vec(blocked ? axes.width : axes.face);
        const Vec side = (raw - row.normal * raw.dot(row.normal)).normalized();
        const double length = kCrossDowelShare * std::min(in_metres(part.thickness), in_metres(part.width));
        add(LetIn::Kind::cross_dowel, true, at - side * length / 2, side, row.normal, diameter, length);
    }

    const Piece& piece_;
    const Contact& contact_;
    std::size_t index_;
    std::vector<LetIn>& all_;
};

} // namespace

kernel::Cell body_of_bore(const LetIn& in)
{
    const Vec room = Vec::Constant(in.length() + in.thickness), other = in.along.cross(in.thin);
    std::vector<kernel::HalfSpace> sides{{-in.along, -in.from}, {in.along, in.to}};
    // Half way between the circles that touch the sides and the corners.
    const double reach = in.thickness / 2 * std::sqrt(std::cos(std::numbers::pi / kBoreSides));
    for (int i = 0; i < kBoreSides; ++i) {
        const double angle = 2 * std::numbers::pi * i / kBoreSides;
        const Vec n = std::cos(angle) * in.thin + std::sin(angle) * other;
        sides.push_back({n, n.dot(in.at) + reach});
    }
    return kernel::clip(kernel::box_cell(in.at - room, in.at + room), sides);
}

void add_bores(const Piece& piece, const Contact& contact, std::size_t index, std::vector<LetIn>& all)
{
    if (!contact.joint || contact.patches.empty()) return;
    const Joint& joint = piece.joints[*contact.joint];
    BoreMaker maker(piece, contact, index, all);
    if (joint.dowels) maker.dowels(*joint.dowels);
    if (joint.screws) maker.screws(*joint.screws);
}

} // namespace jointwright
