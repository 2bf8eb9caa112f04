#include "mechanics/given/net_section.hpp"

#include "piece/model/turn.hpp"
#include "piece/solid/solid.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace jointwright {

namespace {

constexpr double kWholeBreadth = 0.9; // share of the breadth from which a recess is a notch
constexpr int kTaperSteps = 12;       // stretches that stand for a straight taper

/// Where a recess lies, seen along an axis across the grain.
Cut::Place place_of(const Box& cut, const Box& copy, Axis depth)
{
    const std::size_t d = index_of(depth);
    const bool top = cut.hi[d] > copy.hi[d] - kTouch, bottom = cut.lo[d] < copy.lo[d] + kTouch;
    if (top && bottom) return Cut::Place::through;
    if (top) return Cut::Place::top;
    return bottom ? Cut::Place::bottom : Cut::Place::inside;
}

/// The recess as it lies in the drawn part, before any turn.
Box as_drawn(const Piece& piece, std::size_t copy, const Box& box, const Contact& contact)
{
    auto turn = turn_of(piece.part_of(copy), piece.copies[copy]);
    if (!turn) return box;
    turn->angle = -turn->angle;
    Box drawn;
    bool first = true;
    // Of a tenon the mortise, without the shoulder.
    const bool tenoned =
        std::any_of(contact.patches.begin(), contact.patches.end(), [](const Patch& p) { return p.role == Patch::Role::cheek; });
    for (const Patch& patch : contact.patches)
        for (const Point& corner : patch.outline) {
            if (tenoned && patch.role != Patch::Role::cheek) continue;
            const Point p = turn->place(corner);
            for (std::size_t i = 0; i < 3; ++i) {
                drawn.lo[i] = first ? p[i] : std::min(drawn.lo[i], p[i]);
                drawn.hi[i] = first ? p[i] : std::max(drawn.hi[i], p[i]);
            }
            first = false;
        }
    return drawn;
}

void add_cut(std::vector<std::vector<Cut>>& cuts, const Piece& piece, std::size_t copy, const Box& box, std::size_t other,
             const Contact& contact)
{
    const Box drawn = as_drawn(piece, copy, box, contact);
    cuts[copy].push_back({place_of(drawn, piece.copies[copy].box, Axis::z), drawn, other, true});
}

/// Box round the cheeks of a tenon: the mortise.
std::optional<Box> mortise_of(const Contact& contact)
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

/// Splits the shared space of a lap at its face: what the first loses and what the second loses.
std::pair<Box, Box> lap_halves(const Contact& contact)
{
    Box first = *contact.shared, second = *contact.shared;
    // In deep parts a shoulder may be the largest face: the lap's own face is asked for.
    const auto own =
        std::find_if(contact.patches.begin(), contact.patches.end(), [](const Patch& p) { return p.role == Patch::Role::face; });
    const Patch& face = own != contact.patches.end() ? *own : contact.patches.front();
    for (std::size_t i = 0; i < 3; ++i) {
        if (std::abs(face.normal[i]) < 0.9) continue;
        // The normal looks out of the first: the first keeps what lies behind the face and loses what lies before it.
        const double plane = face.bounds.lo[i];
        (face.normal[i] > 0 ? first.lo : first.hi)[i] = plane;
        (face.normal[i] > 0 ? second.hi : second.lo)[i] = plane;
    }
    return {first, second};
}

double volume_of(const Box& box) { return box.size(Axis::x) * box.size(Axis::y) * box.size(Axis::z); }

struct Losses {
    double top = 0, bottom = 0, breadth = 0;
    double inner_breadth = 0, inner_lo = 0, inner_hi = 0; ///< a mortise within the section, heights in space
};

/// What rounding four long edges takes off a section b × d.
struct RoundedOff {
    double area, inertia;
};
RoundedOff rounded_off(const Part& part, double depth)
{
    if (!part.round_over) return {0, 0};
    const double r = in_metres(*part.round_over), corner = (1 - std::numbers::pi / 4) * r * r;
    const double lever = depth / 2 - 0.223 * r; // to the middle of the sliver
    return {4 * corner, 4 * corner * lever * lever};
}

/// Kinds in which the second part is cut within its length to take the first.
bool cuts_the_second(JointKind kind)
{
    return kind == JointKind::housing || kind == JointKind::groove || kind == JointKind::sliding_dovetail;
}

/// A cut, or a row of them whose teeth are too short to carry, along the grain.
struct CutRow {
    double from, to;
    Losses losses;
};

Losses losses_of(const Part& part, const Copy& copy, const Cut& cut, Axis depth)
{
    const Axis breadth = third_axis(part.grain, depth);
    const std::size_t b = index_of(breadth), d = index_of(depth);
    const double height = std::max(0.0, std::min(cut.box.hi[d], copy.box.hi[d]) - std::max(cut.box.lo[d], copy.box.lo[d]));
    const Cut::Place place = place_of(cut.box, copy.box, depth);
    const double across = std::min(cut.box.hi[b], copy.box.hi[b]) - std::max(cut.box.lo[b], copy.box.lo[b]);
    // A groove or mortise narrower than the part leaves wood beside it: it lessens the section where it lies, but is no notch.
    const bool narrow = across < kWholeBreadth * copy.box.size(breadth);
    Losses losses;
    switch (narrow && place != Cut::Place::through ? Cut::Place::inside : place) {
    case Cut::Place::top: losses.top = height; break;
    case Cut::Place::bottom: losses.bottom = height; break;
    case Cut::Place::through: losses.breadth = across; break;
    case Cut::Place::inside:
        losses.inner_breadth = across;
        losses.inner_lo = std::max(cut.box.lo[d], copy.box.lo[d]);
        losses.inner_hi = std::min(cut.box.hi[d], copy.box.hi[d]);
        break;
    }
    return losses;
}

/// True when a cut on the same side lies so near behind a row that the tooth between them carries nothing.
bool joins(const CutRow& row, const Losses& losses, double from, double tooth_over_depth)
{
    const bool same_side = (losses.top > 0 && row.losses.top > 0) || (losses.bottom > 0 && row.losses.bottom > 0);
    const double depth = std::max({losses.top, losses.bottom, row.losses.top, row.losses.bottom});
    return same_side && from - row.to <= tooth_over_depth * depth;
}

/// Cuts of one row grow together where the teeth between them are short.
std::vector<CutRow> rows_of(const Part& part, const Copy& copy, std::vector<Cut> cuts, double tooth_over_depth, Axis depth)
{
    const std::size_t g = index_of(part.grain);
    std::sort(cuts.begin(), cuts.end(), [g](const Cut& a, const Cut& b) { return a.box.lo[g] < b.box.lo[g]; });
    std::vector<CutRow> rows;
    for (const Cut& cut : cuts) {
        const Losses losses = losses_of(part, copy, cut, depth);
        const double from = std::max(copy.box.lo[g], cut.box.lo[g]), to = std::min(copy.box.hi[g], cut.box.hi[g]);
        const auto row =
            std::find_if(rows.begin(), rows.end(), [&](const CutRow& r) { return joins(r, losses, from, tooth_over_depth); });
        if (row == rows.end()) {
            rows.push_back({from, to, losses});
            continue;
        }
        row->to = std::max(row->to, to);
        row->losses.top = std::max(row->losses.top, losses.top);
        row->losses.bottom = std::max(row->losses.bottom, losses.bottom);
    }
    return rows;
}

/// Section left at a place along the grain, in space; from and to are left to the caller.
NetStretch net_section(const Part& part, const Copy& copy, const std::vector<CutRow>& rows, double place, Axis depth)
{
    const bool width_upright = part.width_axis() == depth;
    const std::size_t d = index_of(depth);
    const Section section = section_at(part, copy, place - copy.box.lo[index_of(part.grain)]);
    NetStretch s{};
    s.breadth = width_upright ? section.thickness : section.width;
    s.depth = width_upright ? section.width : section.thickness;
    std::vector<Losses> mortises;
    for (const CutRow& row : rows) {
        if (place < row.from || place > row.to) continue;
        s.top_loss = std::max(s.top_loss, row.losses.top);
        s.bottom_loss = std::max(s.bottom_loss, row.losses.bottom);
        s.breadth -= row.losses.breadth;
        if (row.losses.inner_breadth > 0) mortises.push_back(row.losses);
    }
    s.depth = std::max(s.depth - s.top_loss - s.bottom_loss, 1e-5);
    s.breadth = std::max(s.breadth, 1e-5);
    const double middle_height = (copy.box.lo[d] + s.bottom_loss + copy.box.hi[d] - s.top_loss) / 2;
    const RoundedOff rounded = rounded_off(part, s.depth);
    s.area = s.breadth * s.depth - rounded.area;
    s.inertia = s.breadth * s.depth * s.depth * s.depth / 12 - rounded.inertia;
    for (const Losses& m : mortises) {
        const double height = m.inner_hi - m.inner_lo, offset = (m.inner_hi + m.inner_lo) / 2 - middle_height;
        s.area -= m.inner_breadth * height;
        s.inertia -= m.inner_breadth * height * (height * height / 12 + offset * offset);
    }
    s.area = std::max(s.area, 1e-9);
    s.inertia = std::max(s.inertia, 1e-16);
    s.outer = s.depth / 2;
    return s;
}

} // namespace

std::vector<std::vector<Cut>> cuts_of(const Piece& piece, const std::vector<Contact>& contacts)
{
    std::vector<std::vector<Cut>> cuts(piece.copies.size());
    for (std::size_t i = 0; i < piece.copies.size(); ++i)
        for (const Box& box : notch_boxes(piece.part_of(i), piece.copies[i]))
            cuts[i].push_back({place_of(box, piece.copies[i].box, Axis::z), box, i, false});
    for (const Contact& contact : contacts) {
        if (!contact.joint) continue;
        const Joint& joint = piece.joints[*contact.joint];
        if (joint.kind == JointKind::tenon) {
            if (const auto box = mortise_of(contact)) add_cut(cuts, piece, contact.second, *box, contact.first, contact);
        } else if (contact.shared && joint.kind == JointKind::lap) {
            const auto [first, second] = lap_halves(contact);
            add_cut(cuts, piece, contact.first, first, contact.second, contact);
            add_cut(cuts, piece, contact.second, second, contact.first, contact);
        } else if (joint.kind == JointKind::bridle) {
            if (const auto box = mortise_of(contact)) add_cut(cuts, piece, contact.second, *box, contact.first, contact);
        } else if (contact.shared && cuts_the_second(joint.kind)) {
            // Mitres and dovetails join ends: what they take lies beyond the bearing.
            add_cut(cuts, piece, contact.second, *contact.shared, contact.first, contact);
        }
    }
    return cuts;
}

std::vector<JointLoss> joint_losses(const Piece& piece, const std::vector<Contact>& contacts)
{
    std::vector<JointLoss> lost(piece.copies.size());
    const auto take = [&](std::size_t copy, double volume, const Box& where) {
        lost[copy].volume += volume;
        for (const Axis axis : {Axis::x, Axis::y, Axis::z}) lost[copy].moment[index_of(axis)] += volume * where.middle(axis);
    };
    for (const Contact& contact : contacts) {
        if (!contact.joint || contact.patches.empty()) continue;
        const Joint& joint = piece.joints[*contact.joint];
        const double shared = contact.shared_volume;
        const Box space = contact.shared.value_or(contact.patches.front().bounds);
        switch (joint.kind) {
        case JointKind::tenon: {
            const Box mortise = mortise_of(contact).value_or(space);
            const auto cheek = std::find_if(contact.patches.begin(), contact.patches.end(),
                                            [](const Patch& p) { return p.role == Patch::Role::cheek; });
            double tenon = mortise_of(contact) ? volume_of(mortise) : 0;
            if (joint.tenon && cheek != contact.patches.end()) tenon = cheek->area * in_metres(joint.tenon->thickness);
            take(contact.second, tenon, mortise);
            take(contact.first, shared, space);
            take(contact.first, -tenon, mortise); // drawn touching, the tenon is wood on top of the drawn length
            break;
        }
        case JointKind::lap:
            if (contact.shared) {
                const auto [first, second] = lap_halves(contact);
                take(contact.first, volume_of(first), first);
                take(contact.second, volume_of(second), second);
            }
            break;
        case JointKind::mitre:
        case JointKind::bridle:
        case JointKind::dovetail:
            take(contact.first, shared / 2, space);
            take(contact.second, shared / 2, space);
            break;
        case JointKind::edge:
        case JointKind::face:
        case JointKind::butt: take(contact.first, shared, space); break; // a turned part, cut to fit the other
        default: take(contact.second, shared, space);
        }
    }
    return lost;
}

std::vector<double> joint_volumes(const Piece& piece, const std::vector<Contact>& contacts)
{
    std::vector<double> volumes;
    for (const JointLoss& loss : joint_losses(piece, contacts)) volumes.push_back(loss.volume);
    return volumes;
}

std::vector<NetStretch> net_stretches(const Facts& facts, const Part& part, const Copy& copy, const std::vector<Cut>& cuts,
                                      Axis depth)
{
    const std::size_t g = index_of(part.grain);
    const double lo = copy.box.lo[g], hi = copy.box.hi[g];
    const std::vector<CutRow> rows = rows_of(part, copy, cuts, facts.number("tooth_over_depth").value, depth);
    std::vector<double> breaks{lo, hi};
    for (const CutRow& row : rows) breaks.insert(breaks.end(), {row.from, row.to});
    if (part.taper)
        for (int k = 1; k < kTaperSteps; ++k) breaks.push_back(lo + (hi - lo) * k / kTaperSteps);
    std::sort(breaks.begin(), breaks.end());

    std::vector<NetStretch> stretches;
    for (std::size_t i = 0; i + 1 < breaks.size(); ++i) {
        if (breaks[i + 1] - breaks[i] < 1e-6) continue;
        NetStretch s = net_section(part, copy, rows, (breaks[i] + breaks[i + 1]) / 2, depth);
        s.from = stretches.empty() ? lo : stretches.back().to;
        s.to = breaks[i + 1];
        stretches.push_back(s);
    }
    return stretches;
}

} // namespace jointwright
