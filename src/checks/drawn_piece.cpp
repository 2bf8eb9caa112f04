#include "checks/drawn_piece.hpp"

#include "piece/turn.hpp"
#include "wood/distortion.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kSamePlace = 0.002;    // m: marks nearer than this are one
constexpr double kLeastStrain = 1e-6;   // movement that is none
constexpr std::size_t kMostJoints = 12; // taken apart: the worst of them; more would bury the page

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

/// True when a text names a copy: "slat #1" is not in "slat #12".
bool names_copy(const std::string& text, const std::string& label)
{
    for (std::size_t at = text.find(label); at != std::string::npos; at = text.find(label, at + 1)) {
        const std::size_t end = at + label.size();
        if (end == text.size() || text[end] < '0' || text[end] > '9') return true;
    }
    return false;
}

/// How well a copy fits the place that a finding names: 1 when it is named, 0 when not.
int named_in(const Prepared& prepared, const Finding& finding, std::size_t copy)
{
    return finding.where && names_copy(*finding.where, prepared.piece->label(copy)) ? 1 : 0;
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
        const int fit = named_in(prepared, finding, contact.first) + named_in(prepared, finding, contact.second);
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
        const int fit = named_in(prepared, finding, i);
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
    drawn.marks.push_back({at, {finding}});
}

/// Free strain of a copy along a direction of space.
double strain_in(const Prepared& prepared, std::size_t copy, const Point& direction, bool driest)
{
    const PartState& state = prepared.state_of(copy);
    const BoardStrain& s = driest ? state.dry : state.damp;
    const PartAxes axes = axes_of(prepared.piece->part_of(copy), prepared.piece->copies[copy]);
    const double g = dot_product(direction, axes.grain), w = dot_product(direction, axes.width),
                 t = dot_product(direction, axes.face);
    return s.along * g * g + s.width * w * w + s.thickness * t * t + s.shear * w * t;
}

/// A panel in a groove: its whole width against the groove's part, at the edge that sits in it.
std::vector<DrawnMove> groove_moves(const Prepared& prepared, const Contact& contact)
{
    DrawnMove move;
    const Point way = way_apart(*prepared.piece, contact);
    for (std::size_t i = 0; i < 3; ++i) {
        move.direction[i] = -way[i];
        move.length += std::abs(way[i]) *
                       (prepared.piece->copies[contact.first].box.hi[i] - prepared.piece->copies[contact.first].box.lo[i]);
    }
    const double dry = strain_in(prepared, contact.first, way, true), damp = strain_in(prepared, contact.first, way, false);
    move.driest = std::abs(dry) >= std::abs(damp);
    move.of_first = move.length * (move.driest ? dry : damp);
    move.at_edge = true;
    if (std::abs(move.of_first) < kLeastStrain * move.length) return {};
    return {move};
}

/// Movement along the axes that lie in the joint's main face, in the season in which the two differ more.
std::vector<DrawnMove> moves_of(const Prepared& prepared, const Contact& contact)
{
    const PartState& first = prepared.state_of(contact.first);
    const PartState& second = prepared.state_of(contact.second);
    if (!first.moves() || !second.moves()) return {};
    if (prepared.piece->joints[*contact.joint].kind == JointKind::groove && contact.shared)
        return groove_moves(prepared, contact);
    const auto cheek =
        std::find_if(contact.patches.begin(), contact.patches.end(), [](const Patch& p) { return p.role == Patch::Role::cheek; });
    const Patch& face = cheek != contact.patches.end() ? *cheek : contact.patches.front();
    std::vector<DrawnMove> moves;
    for (std::size_t i = 0; i < 3; ++i) {
        if (std::abs(face.normal[i]) > 0.7) continue;
        DrawnMove move;
        move.direction[i] = 1;
        move.length = face.bounds.hi[i] - face.bounds.lo[i];
        const auto differ = [&](bool driest) {
            return strain_in(prepared, contact.first, move.direction, driest) -
                   strain_in(prepared, contact.second, move.direction, driest);
        };
        move.driest = std::abs(differ(true)) >= std::abs(differ(false));
        if (std::abs(differ(move.driest)) < kLeastStrain) continue;
        move.of_first = move.length * strain_in(prepared, contact.first, move.direction, move.driest);
        move.of_second = move.length * strain_in(prepared, contact.second, move.direction, move.driest);
        moves.push_back(move);
    }
    std::sort(moves.begin(), moves.end(), [](const DrawnMove& a, const DrawnMove& b) {
        return std::abs(a.of_first - a.of_second) > std::abs(b.of_first - b.of_second);
    });
    return moves;
}

/// A long groove is shown over a short stretch of it: nothing happens at its ends.
void shorten(Box& contact)
{
    constexpr double kStretch = 0.12;
    for (std::size_t i = 0; i < 3; ++i) {
        if (contact.hi[i] - contact.lo[i] <= kStretch) continue;
        const double middle = (contact.lo[i] + contact.hi[i]) / 2;
        contact.lo[i] = middle - kStretch / 2;
        contact.hi[i] = middle + kStretch / 2;
    }
}

void add_joint(const Prepared& prepared, DrawnPiece& drawn, std::size_t index, std::size_t finding)
{
    const Contact& contact = prepared.layout->contacts[index];
    for (DrawnJoint& joint : drawn.joints) {
        const bool same = prepared.piece->copies[joint.first].part == prepared.piece->copies[contact.first].part &&
                          prepared.piece->copies[joint.second].part == prepared.piece->copies[contact.second].part;
        if (!same) continue;
        joint.findings.push_back(finding);
        return;
    }
    if (drawn.joints.size() >= kMostJoints) return;
    DrawnJoint joint;
    joint.findings = {finding};
    joint.first = contact.first;
    joint.second = contact.second;
    joint.kind = std::string(name_of(prepared.piece->joints[*contact.joint].kind));
    joint.apart = way_apart(*prepared.piece, contact);
    joint.contact = box_of(contact);
    joint.moves = moves_of(prepared, contact);
    if (!joint.moves.empty() && joint.moves.front().at_edge) shorten(joint.contact);
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
    if (!cup && !square) return;
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
