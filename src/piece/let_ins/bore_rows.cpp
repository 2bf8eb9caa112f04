#include "piece/let_ins/bore_rows.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using kernel::Vec;

Vec as_vec(const Point& p) { return {p[0], p[1], p[2]}; }

std::optional<BoreRow> row_of(BoreRow::Kind kind, const Contact& contact, std::size_t index, int count, Length diameter,
                              std::optional<Length> inset)
{
    if (count < 2 || contact.patches.empty()) return std::nullopt;
    const RowOnFace face = row_on(contact.patches.front(), count, inset);
    BoreRow row;
    row.kind = kind;
    row.contact = index;
    row.count = count;
    row.diameter = in_metres(diameter);
    row.pitch = (face.places[1] - face.places[0]).norm();
    row.length = face.length;
    row.along = face.along;
    return row;
}

/// Pegs share the width of their tenon evenly, unless they are set in from its edges.
std::optional<BoreRow> pegs_of(const Joint& joint, std::size_t index)
{
    if (!joint.pegs || !joint.tenon || joint.pegs->count < 2) return std::nullopt;
    const double width = in_metres(joint.tenon->width), count = joint.pegs->count;
    BoreRow row;
    row.kind = BoreRow::Kind::peg;
    row.contact = index;
    row.count = joint.pegs->count;
    row.diameter = in_metres(joint.pegs->diameter);
    row.length = width;
    row.pitch = joint.pegs->inset ? std::max(0.0, width - 2 * in_metres(*joint.pegs->inset)) / (count - 1) : width / count;
    return row;
}

} // namespace

RowOnFace row_on(const Patch& face, int count, std::optional<Length> inset)
{
    RowOnFace row;
    row.normal = as_vec(face.normal);
    double longest = 0;
    for (std::size_t i = 0; i < face.outline.size(); ++i) {
        const Vec edge = as_vec(face.outline[(i + 1) % face.outline.size()]) - as_vec(face.outline[i]);
        if (edge.norm() <= longest + kTouch) continue;
        longest = edge.norm();
        row.along = edge / longest;
    }
    const Vec aside = row.normal.cross(row.along);
    double lo = 1e30, hi = -1e30, near = 1e30, far = -1e30;
    for (const Point& p : face.outline) {
        lo = std::min(lo, row.along.dot(as_vec(p)));
        hi = std::max(hi, row.along.dot(as_vec(p)));
        near = std::min(near, aside.dot(as_vec(p)));
        far = std::max(far, aside.dot(as_vec(p)));
    }
    const Vec on_face = row.normal * row.normal.dot(as_vec(face.outline.front())) + aside * (near + far) / 2;
    row.length = hi - lo;
    const double edge = inset ? std::min(in_metres(*inset), row.length / 2) : 0;
    for (int i = 0; i < count; ++i) {
        const double at = inset && count > 1 ? edge + (row.length - 2 * edge) * i / (count - 1) : (i + 0.5) / count * row.length;
        row.places.push_back(on_face + row.along * (lo + at));
    }
    return row;
}

int BoreRow::fits(double pitch_wanted) const
{
    return pitch_wanted > 0 ? std::max(1, static_cast<int>(std::floor(length / pitch_wanted + 1e-9))) : count;
}

std::string_view name_of(BoreRow::Kind kind)
{
    switch (kind) {
    case BoreRow::Kind::screw: return "screw";
    case BoreRow::Kind::bolt: return "bolt";
    case BoreRow::Kind::peg: return "peg";
    case BoreRow::Kind::dowel: break;
    }
    return "dowel";
}

std::vector<BoreRow> bore_rows(const Piece& piece, const std::vector<Contact>& contacts)
{
    std::vector<BoreRow> rows;
    const auto keep = [&rows](const std::optional<BoreRow>& row) {
        if (row) rows.push_back(*row);
    };
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        if (!contacts[c].joint) continue;
        const Joint& joint = piece.joints[*contacts[c].joint];
        if (joint.dowels)
            keep(row_of(BoreRow::Kind::dowel, contacts[c], c, joint.dowels->count, joint.dowels->diameter, joint.dowels->inset));
        if (joint.screws)
            keep(row_of(joint.screws->kind == ScrewKind::bolt ? BoreRow::Kind::bolt : BoreRow::Kind::screw, contacts[c], c,
                        joint.screws->count, joint.screws->diameter, joint.screws->inset));
        keep(pegs_of(joint, c));
    }
    return rows;
}

} // namespace jointwright
