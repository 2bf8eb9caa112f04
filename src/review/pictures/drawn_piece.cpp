#include "review/pictures/drawn_piece.hpp"

#include "piece/model/turn.hpp"
#include "review/pictures/drawn_moves.hpp"
#include "wood/distortion.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kSamePlace = 0.002;    // m: marks nearer than this are one
constexpr std::size_t kMostJoints = 12; // taken apart: the worst of them; more would bury the page
constexpr std::size_t kMostMarks = 24;  // on the drawing of the piece, alike
constexpr std::size_t kMostEnds = 24;   // boards seen from their end, alike

Point middle_point(const Box& box) { return {box.middle(Axis::x), box.middle(Axis::y), box.middle(Axis::z)}; }

double dot_product(const Point& a, const Point& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

Box joined_box(Box a, const Box& b)
{
    for (std::size_t i = 0; i < 3; ++i) {
        a.lo[i] = std::min(a.lo[i], b.lo[i]);
        a.hi[i] = std::max(a.hi[i], b.hi[i]);
    }
    return a;
}

double ring_radius_of(const Prepared& prepared, const Part& part)
{
    return part.ring_radius ? in_metres(*part.ring_radius) : prepared.facts->number("ring_radius_default").value;
}

/// A point of the pith's axis: off the middle of the copy by the radius of its rings, away from the bark.
Point pith_of(const Prepared& prepared, std::size_t copy)
{
    const Part& part = prepared.piece->part_of(copy);
    const PartAxes axes = axes_of(part, prepared.piece->copies[copy]);
    const double radius = ring_radius_of(prepared, part), rings = prepared.state_of(copy).rings.value();
    double towards_pith = -1;
    if (part.bark_side) {
        const bool far = is_far(*part.bark_side) != prepared.piece->copies[copy].mirrored[index_of(axis_of(*part.bark_side))];
        towards_pith = far ? -1 : 1;
    }
    Point pith = middle_point(bounds_of(part, prepared.piece->copies[copy]));
    for (std::size_t i = 0; i < 3; ++i)
        pith[i] += towards_pith * radius * (std::cos(rings) * axes.face[i] + std::sin(rings) * axes.width[i]);
    return pith;
}

/// How well a copy fits the place of a finding: 1 when it is named there, 0 when not.
int named_in(const Finding& finding, std::size_t copy)
{
    const auto& copies = finding.about.copies;
    return std::find(copies.begin(), copies.end(), copy) != copies.end() ? 1 : 0;
}

/// The contact of a joint that a finding speaks of: the copies named in it, else the first.
std::optional<std::size_t> contact_of(const Prepared& prepared, const Finding& finding)
{
    std::optional<std::size_t> best;
    int best_fit = -1;
    for (std::size_t c = 0; c < prepared.layout->contacts.size(); ++c) {
        const Contact& contact = prepared.layout->contacts[c];
        if (!contact.joint) continue;
        const std::string& a = prepared.piece->part_of(contact.first).id;
        const std::string& b = prepared.piece->part_of(contact.second).id;
        if (finding.subject != a + " / " + b && finding.subject != b + " / " + a) continue;
        const int fit = named_in(finding, contact.first) + named_in(finding, contact.second);
        if (fit > best_fit) {
            best = c;
            best_fit = fit;
        }
    }
    return best;
}

std::optional<std::size_t> copy_of(const Prepared& prepared, const Finding& finding)
{
    std::optional<std::size_t> best;
    int best_fit = -1;
    for (std::size_t i = 0; i < prepared.piece->copies.size(); ++i) {
        if (prepared.piece->part_of(i).id != finding.subject) continue;
        const int fit = named_in(finding, i);
        if (fit > best_fit) {
            best = i;
            best_fit = fit;
        }
    }
    return best;
}

Box box_of(const Contact& contact)
{
    Box box = contact.patches.front().bounds;
    for (const Patch& p : contact.patches) box = joined_box(box, p.bounds);
    return box;
}

void add_mark(DrawnPiece& drawn, const Point& at, std::size_t finding)
{
    for (DrawnMark& mark : drawn.marks) {
        const Point d{mark.at[0] - at[0], mark.at[1] - at[1], mark.at[2] - at[2]};
        if (dot_product(d, d) > kSamePlace * kSamePlace) continue;
        mark.findings.push_back(finding);
        return;
    }
    if (drawn.marks.size() < kMostMarks)
        drawn.marks.push_back({at, {finding}});
    else
        ++drawn.unmarked;
}

void add_joint(const Prepared& prepared, DrawnPiece& drawn, std::size_t index, std::size_t finding)
{
    const Contact& contact = prepared.layout->contacts[index];
    for (ExplodedJoint& joint : drawn.joints) {
        const bool same = prepared.piece->copies[joint.first].part == prepared.piece->copies[contact.first].part &&
                          prepared.piece->copies[joint.second].part == prepared.piece->copies[contact.second].part;
        if (!same) continue;
        joint.findings.push_back(finding);
        return;
    }
    if (drawn.joints.size() >= kMostJoints) return;
    ExplodedJoint joint;
    joint.findings = {finding};
    joint.first = contact.first;
    joint.second = contact.second;
    joint.kind = std::string(name_of(prepared.piece->joints[*contact.joint].kind));
    joint.apart = way_apart(*prepared.piece, contact);
    joint.contact = box_of(contact);
    add_moves(prepared, contact, joint);
    drawn.joints.push_back(std::move(joint));
}

double named_value(const Finding& finding, std::string_view name)
{
    for (const NamedValue& v : finding.values)
        if (v.name == name) return v.value;
    return 0;
}

void add_end(const Prepared& prepared, DrawnPiece& drawn, const Finding& finding, std::size_t index)
{
    const bool cup = finding.check == "cup", square = finding.check == "out-of-square";
    if ((!cup && !square) || drawn.ends.size() >= kMostEnds) return;
    for (std::size_t p = 0; p < prepared.piece->parts.size(); ++p) {
        const Part& part = prepared.piece->parts[p];
        const PartState& state = prepared.parts[p];
        if (part.id != finding.subject || !state.moves()) continue;
        DrawnEnd end;
        end.finding = index;
        const double width = in_metres(part.width) / (part.glued_up ? part.glued_up->boards : 1);
        const bool on_edge = width < in_metres(part.thickness);
        end.width = std::max(width, in_metres(part.thickness));
        end.thickness = std::min(width, in_metres(part.thickness));
        end.rings = on_edge ? kRadiansPerDegree * 90 - state.rings.value() : state.rings.value();
        const double stated = named_value(finding, "ring_radius");
        end.ring_radius = stated > 0 ? stated : ring_radius_of(prepared, part);
        const char* const driest = cup ? "cup_driest" : "shear_driest";
        const char* const dampest = cup ? "cup_dampest" : "shear_dampest";
        end.driest = std::abs(named_value(finding, driest)) >= std::abs(named_value(finding, dampest));
        const RingStrain strain =
            ring_strain(std::get<MovementLaw>(state.movement), state.made, end.driest ? state.driest : state.dampest);
        end.tangential = strain.tangential;
        end.radial = strain.radial;
        drawn.ends.push_back(end);
        return;
    }
}

} // namespace

DrawnPiece drawn_piece(const Prepared& prepared, const std::vector<Finding>& findings)
{
    const Piece& piece = *prepared.piece;
    DrawnPiece drawn;
    std::vector<JoinedSolid> solids = joined_solids(piece, prepared.layout->contacts);
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        drawn.bodies.push_back(
            {piece.label(i, true), piece.copies[i].part, piece.part_of(i).wood, std::move(solids[i]), pith_of(prepared, i)});
        const Box bounds = bounds_of(piece.part_of(i), piece.copies[i]);
        drawn.bounds = i == 0 ? bounds : joined_box(drawn.bounds, bounds);
    }
    for (std::size_t f = 0; f < findings.size(); ++f) {
        const Finding& finding = findings[f];
        add_end(prepared, drawn, finding, f);
        if (finding.verdict == Verdict::pass) continue;
        if (const auto contact = contact_of(prepared, finding)) {
            add_mark(drawn, middle_point(box_of(prepared.layout->contacts[*contact])), f);
            add_joint(prepared, drawn, *contact, f);
        } else if (const auto copy = copy_of(prepared, finding)) {
            add_mark(drawn, middle_point(bounds_of(piece.part_of(*copy), piece.copies[*copy])), f);
        }
    }
    return drawn;
}

} // namespace jointwright
