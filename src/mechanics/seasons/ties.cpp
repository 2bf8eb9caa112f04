#include "mechanics/seasons/ties.hpp"

#include "piece/model/turn.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace jointwright {

namespace {

/// Sets that grow together.
class Unions {
public:
    explicit Unions(std::size_t count) : parent_(count) { std::iota(parent_.begin(), parent_.end(), std::size_t{0}); }
    std::size_t find(std::size_t i)
    {
        while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
        return i;
    }
    void join(std::size_t a, std::size_t b)
    {
        const std::size_t ra = find(a), rb = find(b);
        parent_[std::max(ra, rb)] = std::min(ra, rb); // the lowest copy stands for the set
    }

private:
    std::vector<std::size_t> parent_;
};

/// Glued over the whole of a side-grain face, with the grains alike: the two move as one board.
bool moves_as_one(const Piece& piece, const Contact& contact)
{
    if (!contact.joint) return false;
    const Joint& joint = piece.joints[*contact.joint];
    const bool faces = joint.kind == JointKind::edge || joint.kind == JointKind::face || joint.kind == JointKind::butt;
    if (!faces || !joint.glue || joint.glued || contact.patches.empty()) return false;
    return piece.part_of(contact.first).grain == piece.part_of(contact.second).grain && !contact.patches.front().end_grain_first;
}

void widen(Box& box, const Box& other)
{
    for (std::size_t i = 0; i < 3; ++i) {
        box.lo[i] = std::min(box.lo[i], other.lo[i]);
        box.hi[i] = std::max(box.hi[i], other.hi[i]);
    }
}

/// True when a joint ties its parts together, so that they move as parts of one piece: all do but hinges.
bool ties_parts(const Piece& piece, const Contact& contact)
{
    return contact.joint && piece.joints[*contact.joint].kind != JointKind::hinge;
}

bool is_tongue(JointKind kind) { return kind == JointKind::tenon || kind == JointKind::bridle; }

/// The box around the faces that a joint holds by: for a tenon its cheeks, else all.
Box holding_box(const Contact& contact, JointKind kind)
{
    std::optional<Box> box;
    for (const Patch& p : contact.patches) {
        if (is_tongue(kind) && p.role != Patch::Role::cheek) continue;
        if (box)
            widen(*box, p.bounds);
        else
            box = p.bounds;
    }
    if (box) return *box;
    Box all = contact.patches.front().bounds;
    for (const Patch& p : contact.patches) widen(all, p.bounds);
    return all;
}

Axis main_axis(const Point& normal)
{
    std::size_t best = 0;
    for (std::size_t i = 1; i < 3; ++i)
        if (std::abs(normal[i]) > std::abs(normal[best])) best = i;
    return static_cast<Axis>(best);
}

/// The direction in which fasteners go: square to the cheeks, through the thickness of a panel, else square to the largest face.
Axis through_axis(const Piece& piece, const Contact& contact, JointKind kind)
{
    if (kind == JointKind::groove) return main_axis(axes_of(piece.part_of(contact.first), piece.copies[contact.first]).face);
    for (const Patch& p : contact.patches)
        if (is_tongue(kind) && p.role == Patch::Role::cheek) return main_axis(p.normal);
    return main_axis(contact.patches.front().normal);
}

Axis longer_side(const Box& box, Axis through)
{
    const Axis u = through == Axis::x ? Axis::y : Axis::x, v = third_axis(through, u);
    return box.size(v) > box.size(u) ? v : u;
}

/// What is glued of a box: all of it, or `glued` of its longest side.
Box glued_box(Box box, const GluedShare& glued)
{
    Axis axis = Axis::x;
    for (const Axis a : {Axis::y, Axis::z})
        if (box.size(a) > box.size(axis)) axis = a;
    const std::size_t i = index_of(axis);
    const double length = std::min(in_metres(glued.length), box.size(axis));
    switch (glued.at) {
    case GluedAt::middle: {
        const double middle = box.middle(axis);
        box.lo[i] = middle - length / 2;
        box.hi[i] = middle + length / 2;
        break;
    }
    case GluedAt::left:
    case GluedAt::front:
    case GluedAt::bottom: box.hi[i] = box.lo[i] + length; break;
    case GluedAt::right:
    case GluedAt::back:
    case GluedAt::top: box.lo[i] = box.hi[i] - length; break;
    }
    return box;
}

/// The box of the glue at a contact; nothing where it is dry.
std::optional<Box> glue_at(const Piece& piece, const Contact& contact)
{
    if (!contact.joint || !piece.joints[*contact.joint].glue) return std::nullopt;
    const Joint& joint = piece.joints[*contact.joint];
    if (!joint.glued) return holding_box(contact, joint.kind);
    Box all = contact.patches.front().bounds;
    for (const Patch& p : contact.patches) widen(all, p.bounds);
    return glued_box(all, *joint.glued);
}

/// True when a joint without glue, whose fasteners are not stated, makes its parts go together along an axis.
bool holds_dry(const Piece& piece, const Contact& contact, const Joint& joint, Axis axis)
{
    using enum JointKind;
    switch (joint.kind) {
    case tenon:
    case bridle:
    case dovetail:
    case dowel:
    case lap:
    case mitre:
    case screws: return true;
    case buttons: return axis == through_axis(piece, contact, joint.kind);
    case housing:
    case sliding_dovetail: { // free along its run
        const Box& box = contact.shared ? *contact.shared : contact.patches.front().bounds;
        return box.size(axis) < std::max({box.size(Axis::x), box.size(Axis::y), box.size(Axis::z)});
    }
    default: return false;
    }
}

struct Sizes {
    int count = 0;
    double diameter = 0;
    std::optional<Length> slot, inset;
};

std::optional<Sizes> sizes_of(const Joint& joint)
{
    if (joint.kind == JointKind::screws && joint.screws)
        return Sizes{joint.screws->count, in_metres(joint.screws->diameter), joint.screws->slot, joint.screws->inset};
    if (joint.kind == JointKind::buttons && joint.buttons)
        return Sizes{joint.buttons->count, 0, joint.buttons->slot, joint.buttons->inset};
    if (joint.kind == JointKind::dowel && joint.dowels && !joint.glue)
        return Sizes{joint.dowels->count, in_metres(joint.dowels->diameter), std::nullopt, joint.dowels->inset};
    if (joint.pegs) return Sizes{joint.pegs->count, in_metres(joint.pegs->diameter), joint.pegs->slot, joint.pegs->inset};
    return std::nullopt;
}

/// Where the i-th of a row stands along a side.
double place_in_row(double from, double length, int i, int count, std::optional<Length> inset)
{
    if (!inset || count < 2) return from + (i + 0.5) / count * length;
    const double edge = std::min(in_metres(*inset), length / 2);
    return from + edge + (length - 2 * edge) * i / (count - 1);
}

} // namespace

double FastenerRow::slack(const Fastener& fastener, Axis axis) const
{
    if (fastener.in_glue) return 0;
    if (button) return slot ? *slot / 2 : std::numeric_limits<double>::infinity();
    if (!slot || (fastener.mid_of_odd && axis == along)) return 0;
    return *slot / 2;
}

std::optional<FastenerRow> fastener_row(const Given& given, std::size_t index)
{
    const Piece& piece = *given.piece;
    const Contact& contact = given.layout->contacts[index];
    if (!contact.joint) return std::nullopt;
    const Joint& joint = piece.joints[*contact.joint];
    const auto sizes = sizes_of(joint);
    if (!sizes) return std::nullopt;
    FastenerRow row;
    row.contact = index;
    row.through = through_axis(piece, contact, joint.kind);
    row.diameter = sizes->diameter;
    row.button = joint.kind == JointKind::buttons;
    if (sizes->slot) row.slot = in_metres(*sizes->slot);
    const Box box = holding_box(contact, joint.kind);
    row.along = longer_side(box, row.through);
    const auto glue = glue_at(piece, contact);
    for (int i = 0; i < sizes->count; ++i) {
        Fastener fastener;
        for (const Axis axis : {Axis::x, Axis::y, Axis::z}) fastener.at[index_of(axis)] = box.middle(axis);
        double& place = fastener.at[index_of(row.along)];
        place = place_in_row(box.lo[index_of(row.along)], box.size(row.along), i, sizes->count, sizes->inset);
        fastener.in_glue =
            glue && place >= glue->lo[index_of(row.along)] - kTouch && place <= glue->hi[index_of(row.along)] + kTouch;
        fastener.mid_of_odd = sizes->count % 2 == 1 && i == sizes->count / 2;
        row.fasteners.push_back(fastener);
    }
    return row;
}

double strain_in_space(const Piece& piece, std::size_t copy, const BoardStrain& strain, Axis axis)
{
    const PartAxes axes = axes_of(piece.part_of(copy), piece.copies[copy]);
    const std::size_t i = index_of(axis);
    return axes.grain[i] * axes.grain[i] * strain.along + axes.width[i] * axes.width[i] * strain.width +
           axes.face[i] * axes.face[i] * strain.thickness;
}

bool runs_along(const Piece& piece, std::size_t copy, Axis axis)
{
    constexpr double within = 0.72; // cosine: no grain runs along two axes
    return std::abs(axes_of(piece.part_of(copy), piece.copies[copy]).grain[index_of(axis)]) > within;
}

bool runs_across(const Piece& piece, std::size_t copy, Axis axis)
{
    constexpr double square = 0.02; // cosine: a degree off
    return std::abs(axes_of(piece.part_of(copy), piece.copies[copy]).grain[index_of(axis)]) < square;
}

Angle rings_along(const Given& given, std::size_t copy, Axis axis)
{
    const PartAxes axes = axes_of(given.piece->part_of(copy), given.piece->copies[copy]);
    const Angle rings = given.state_of(copy).rings;
    return std::abs(axes.face[index_of(axis)]) > std::abs(axes.width[index_of(axis)]) ? degrees(90 - in_degrees(rings)) : rings;
}

Ties::Ties(const Given& given) : given_(given)
{
    const Piece& piece = *given.piece;
    const auto& contacts = given.layout->contacts;
    Unions boards(piece.copies.size()), joined(piece.copies.size());
    contacts_of_.resize(piece.copies.size());
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        contacts_of_[contacts[c].first].push_back(c);
        contacts_of_[contacts[c].second].push_back(c);
        if (moves_as_one(piece, contacts[c])) boards.join(contacts[c].first, contacts[c].second);
        if (ties_parts(piece, contacts[c])) joined.join(contacts[c].first, contacts[c].second);
    }
    for (const Copy& copy : piece.copies) boxes_.push_back(bounds_of(piece.parts[copy.part], copy));
    body_index_.resize(piece.copies.size());
    assembly_.resize(piece.copies.size());
    crowd_.assign(piece.copies.size(), 0);
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const std::size_t board = boards.find(i);
        assembly_[i] = joined.find(i);
        ++crowd_[assembly_[i]];
        if (board == i) {
            body_index_[i] = bodies_.size();
            bodies_.push_back({{i}, boxes_[i]});
            continue;
        }
        body_index_[i] = body_index_[board];
        bodies_[body_index_[i]].copies.push_back(i);
        widen(bodies_[body_index_[i]].box, boxes_[i]);
    }
    strains_.resize(bodies_.size());
}

SeasonalStrains Ties::body_strain(std::size_t copy, Axis axis) const
{
    std::optional<SeasonalStrains>& known = strains_[body_index_[copy]][index_of(axis)];
    if (!known) known = mean_strain(body_of(copy), axis);
    return *known;
}

SeasonalStrains Ties::mean_strain(const TiedBody& body, Axis axis) const
{
    const std::size_t k = index_of(axis);
    std::vector<double> cuts;
    for (const std::size_t member : body.copies) {
        cuts.push_back(boxes_[member].lo[k]);
        cuts.push_back(boxes_[member].hi[k]);
    }
    std::sort(cuts.begin(), cuts.end());
    SeasonalStrains sum;
    double size = 0;
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        const double step = cuts[i + 1] - cuts[i], middle = (cuts[i] + cuts[i + 1]) / 2;
        if (step <= 0) continue;
        double longest = 0, count = 0;
        SeasonalStrains here;
        for (const std::size_t member : body.copies) {
            const Box& box = boxes_[member];
            if (middle < box.lo[k] || middle > box.hi[k] || box.size(axis) < 0.99 * longest) continue;
            if (box.size(axis) > 1.01 * longest) {
                here = {};
                count = 0;
                longest = box.size(axis);
            }
            here.dry += strain_in_space(*given_.piece, member, given_.state_of(member).dry, axis);
            here.damp += strain_in_space(*given_.piece, member, given_.state_of(member).damp, axis);
            ++count;
        }
        if (count == 0) continue; // a gap between boards
        sum.dry += step * here.dry / count;
        sum.damp += step * here.damp / count;
        size += step;
    }
    return {sum.dry / size, sum.damp / size};
}

std::vector<Grip> Ties::grips(std::size_t copy, Axis axis) const
{
    std::vector<Grip> all;
    const Piece& piece = *given_.piece;
    const std::size_t a = index_of(axis);
    for (const std::size_t member : body_of(copy).copies)
        for (const std::size_t c : contacts_of_[member]) {
            const Contact& contact = given_.layout->contacts[c];
            const std::size_t partner = contact.first == member ? contact.second : contact.first;
            if (same_body(member, partner)) continue;
            if (const auto glue = glue_at(piece, contact)) all.push_back({c, partner, glue->lo[a], glue->hi[a], 0, true});
            const auto row = fastener_row(given_, c);
            if (!row || row->through == axis) continue;
            for (const Fastener& f : row->fasteners) {
                const double slack = row->slack(f, axis);
                if (std::isfinite(slack) && !f.in_glue) all.push_back({c, partner, f.at[a], f.at[a], slack, false});
            }
        }
    return all;
}

std::vector<double> Ties::held_places(std::size_t index, Axis axis) const
{
    const Piece& piece = *given_.piece;
    const Contact& contact = given_.layout->contacts[index];
    if (!contact.joint) return {};
    const Joint& joint = piece.joints[*contact.joint];
    const auto middle_of = [&](const Box& box) {
        const std::size_t k = index_of(axis);
        if (!is_tongue(joint.kind) || !runs_along(piece, contact.first, axis)) return box.middle(axis);
        // The end nearer to the middle of the part that has the tenon: its shoulder.
        const double middle = boxes_[contact.first].middle(axis);
        return std::abs(box.lo[k] - middle) < std::abs(box.hi[k] - middle) ? box.lo[k] : box.hi[k];
    };
    if (const auto glue = glue_at(piece, contact)) return {middle_of(*glue)};
    const Box box = holding_box(contact, joint.kind);
    if (const auto row = fastener_row(given_, index)) {
        if (row->through == axis) return {middle_of(box)};
        std::vector<double> places;
        for (const Fastener& f : row->fasteners)
            if (row->slack(f, axis) == 0) places.push_back(f.at[index_of(axis)]);
        return places;
    }
    return holds_dry(piece, contact, joint, axis) ? std::vector<double>{middle_of(box)} : std::vector<double>{};
}

std::vector<bool> Ties::tied_without(const TiedBody& body, std::size_t copy) const
{
    std::vector<bool> barred(contacts_of_.size(), false), tied(contacts_of_.size(), false);
    for (const std::size_t member : body.copies) barred[member] = true;
    std::vector<std::size_t> open{copy};
    tied[copy] = true;
    while (!open.empty()) {
        const std::size_t now = open.back();
        open.pop_back();
        for (const std::size_t c : contacts_of_[now]) {
            const Contact& contact = given_.layout->contacts[c];
            if (!ties_parts(*given_.piece, contact)) continue;
            const std::size_t next = contact.first == now ? contact.second : contact.first;
            if (barred[next] || tied[next]) continue;
            tied[next] = true;
            open.push_back(next);
        }
    }
    return tied;
}

bool Ties::hinged(std::size_t a, std::size_t b) const
{
    return std::any_of(contacts_of_[a].begin(), contacts_of_[a].end(), [&](std::size_t c) {
        const Contact& contact = given_.layout->contacts[c];
        return (contact.first == b || contact.second == b) && contact.joint && !ties_parts(*given_.piece, contact);
    });
}

std::optional<std::size_t> Ties::spanning(std::size_t a, std::size_t b, Axis axis, const TiedBody& but) const
{
    const Piece& piece = *given_.piece;
    const auto touches_b = [&](std::size_t copy) {
        return std::any_of(contacts_of_[copy].begin(), contacts_of_[copy].end(), [&](std::size_t c) {
            const Contact& contact = given_.layout->contacts[c];
            return contact.joint && (contact.first == b || contact.second == b);
        });
    };
    const std::size_t k = index_of(axis);
    const double from = std::min(boxes_[a].hi[k], boxes_[b].hi[k]), to = std::max(boxes_[a].lo[k], boxes_[b].lo[k]);
    std::optional<std::size_t> found;
    for (const std::size_t c : contacts_of_[a]) {
        const Contact& contact = given_.layout->contacts[c];
        if (!contact.joint) continue;
        const std::size_t copy = contact.first == a ? contact.second : contact.first;
        if (copy == b || std::find(but.copies.begin(), but.copies.end(), copy) != but.copies.end() || !touches_b(copy)) continue;
        const Box& box = boxes_[copy];
        if (box.lo[k] > from + kTouch || box.hi[k] < to - kTouch) continue;
        if (runs_along(piece, copy, axis)) return copy;
        if (!found) found = copy;
    }
    return found;
}

} // namespace jointwright
