#include "piece/solid/solid.hpp"

#include "piece/model/turn.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace jointwright {

namespace {

using kernel::Cell;
using kernel::HalfSpace;
using kernel::Polygon;
using kernel::Vec;

Vec vec(const Point& p) { return {p[0], p[1], p[2]}; }

Side other_side(Side side)
{
    switch (side) {
    case Side::left: return Side::right;
    case Side::right: return Side::left;
    case Side::front: return Side::back;
    case Side::back: return Side::front;
    case Side::bottom: return Side::top;
    case Side::top: return Side::bottom;
    }
    return side;
}

/// A side of the part as written, seen on this copy.
Side side_on(const Copy& copy, Side side) { return copy.mirrored[index_of(axis_of(side))] ? other_side(side) : side; }

bool is_flat(const Taper& taper, Side side) { return std::find(taper.flat.begin(), taper.flat.end(), side) != taper.flat.end(); }

Side side_of(Axis axis, bool far)
{
    switch (axis) {
    case Axis::x: return far ? Side::right : Side::left;
    case Axis::y: return far ? Side::back : Side::front;
    case Axis::z: return far ? Side::top : Side::bottom;
    }
    return Side::left;
}

/// Limits of the section at the tapered end along one cross axis, on this copy.
void taper_limits(const Taper& taper, const Copy& copy, Axis axis, double size_at_end, double& lo, double& hi)
{
    const std::size_t i = index_of(axis);
    lo = copy.box.lo[i];
    hi = copy.box.hi[i];
    const double loss = (hi - lo) - size_at_end;
    bool flat_near = is_flat(taper, side_of(axis, false)), flat_far = is_flat(taper, side_of(axis, true));
    if (copy.mirrored[i]) std::swap(flat_near, flat_far);
    if (flat_near && flat_far) return;
    if (flat_near) {
        hi -= loss;
    } else if (flat_far) {
        lo += loss;
    } else {
        lo += loss / 2;
        hi -= loss / 2;
    }
}

/// Corners of the section at a place along the grain: four points round the axis.
std::vector<Vec> ring_at(Axis grain, double along, Axis u, Axis v, const std::array<double, 4>& limits)
{
    std::vector<Vec> ring;
    for (int k = 0; k < 4; ++k) {
        Vec p = Vec::Zero();
        p[static_cast<int>(index_of(grain))] = along;
        p[static_cast<int>(index_of(u))] = (k == 1 || k == 2) ? limits[1] : limits[0];
        p[static_cast<int>(index_of(v))] = k >= 2 ? limits[3] : limits[2];
        ring.push_back(p);
    }
    return ring;
}

Cell prism_between(const std::vector<Vec>& a, const std::vector<Vec>& b)
{
    std::vector<Polygon> faces;
    faces.push_back({a, Vec::UnitZ()}); // normals are made by cell_from_faces
    faces.push_back({b, Vec::UnitZ()});
    for (std::size_t k = 0; k < 4; ++k) faces.push_back({{a[k], a[(k + 1) % 4], b[(k + 1) % 4], b[k]}, Vec::UnitZ()});
    return kernel::cell_from_faces(std::move(faces));
}

/// Cells before notching, from the near to the far end of the grain; neighbours share a whole face.
std::vector<Cell> blank_cells(const Part& part, const Copy& copy)
{
    if (!part.taper) return {kernel::box_cell(vec(copy.box.lo), vec(copy.box.hi))};
    const Taper& taper = *part.taper;
    const Axis u = part.width_axis(), v = part.face;
    const std::size_t g = index_of(part.grain);
    const double lo = copy.box.lo[g], hi = copy.box.hi[g];
    const bool far = is_far(side_on(copy, taper.end));
    const double over = std::min(in_metres(taper.over), hi - lo);
    std::array<double, 4> full{copy.box.lo[index_of(u)], copy.box.hi[index_of(u)], copy.box.lo[index_of(v)],
                               copy.box.hi[index_of(v)]};
    std::array<double, 4> end{};
    taper_limits(taper, copy, u, in_metres(taper.width), end[0], end[1]);
    taper_limits(taper, copy, v, in_metres(taper.thickness), end[2], end[3]);
    const auto ring = [&](double along, const std::array<double, 4>& limits) { return ring_at(part.grain, along, u, v, limits); };
    std::vector<Cell> cells;
    const double bend = far ? hi - over : lo + over;
    if (!far) cells.push_back(prism_between(ring(lo, end), ring(bend, full)));
    if (hi - lo - over > kTouch)
        cells.push_back(far ? prism_between(ring(lo, full), ring(bend, full)) : prism_between(ring(bend, full), ring(hi, full)));
    if (far) cells.push_back(prism_between(ring(bend, full), ring(hi, end)));
    return cells;
}

bool is_end_face(const Polygon& face, Axis grain) { return std::abs(face.normal[static_cast<int>(index_of(grain))]) > 0.999; }

/// A long face with its two long edges moved in by the radius of the round-over.
Polygon lessened(const Polygon& face, Axis grain, double radius)
{
    Polygon result = face;
    const int g = static_cast<int>(index_of(grain));
    for (std::size_t i = 0; i < face.corners.size(); ++i) {
        const Vec& a = face.corners[i];
        const Vec& b = face.corners[(i + 1) % face.corners.size()];
        if (std::abs((b - a).normalized()[g]) > 0.7 && !result.empty()) result = kernel::inset_edge(result, a, b, radius);
    }
    return result;
}

std::vector<Polygon> blank_skin(const Part& part, const std::vector<Cell>& cells)
{
    std::vector<Polygon> skin;
    const double radius = part.round_over ? in_metres(*part.round_over) : 0;
    for (std::size_t i = 0; i < cells.size(); ++i)
        for (const Polygon& face : cells[i].faces) {
            if (is_end_face(face, part.grain)) {
                const bool far = face.normal[static_cast<int>(index_of(part.grain))] > 0;
                const bool inner = far ? i + 1 < cells.size() : i > 0;
                if (!inner) skin.push_back(face);
                continue;
            }
            Polygon kept = radius > 0 ? lessened(face, part.grain, radius) : face;
            if (!kept.empty()) skin.push_back(std::move(kept));
        }
    return skin;
}

void turn_polygon(Polygon& polygon, const CopyTurn& turn)
{
    for (Vec& p : polygon.corners) p = vec(turn.place({p.x(), p.y(), p.z()}));
    polygon.normal = vec(turn.direct({polygon.normal.x(), polygon.normal.y(), polygon.normal.z()}));
}

void turn_solid(Solid& solid, const CopyTurn& turn)
{
    for (Polygon& face : solid.skin) turn_polygon(face, turn);
    for (Cell& cell : solid.cells) {
        for (Polygon& face : cell.faces) turn_polygon(face, turn);
        for (HalfSpace& side : cell.sides) {
            const Vec on_side =
                vec(turn.place({side.normal.x() * side.offset, side.normal.y() * side.offset, side.normal.z() * side.offset}));
            side.normal = vec(turn.direct({side.normal.x(), side.normal.y(), side.normal.z()}));
            side.offset = side.normal.dot(on_side);
        }
    }
}

/// A cell or a face with its bounds.
template <class Body>
struct Bounded {
    Body body;
    Vec lo, hi;
    explicit Bounded(Body of) : body(std::move(of)) { kernel::bounds(body, lo, hi); }
    bool reaches_into(const Box& box) const
    {
        for (std::size_t i = 0; i < 3; ++i) {
            const int k = static_cast<int>(i);
            if (hi[k] < box.lo[i] - kTouch || lo[k] > box.hi[i] + kTouch) return false;
        }
        return true;
    }
};

/// Takes boxes out of bodies. What a box does not reach is left whole: cut by the planes of a box that it does not touch it would fall into pieces,
/// and a row of notches would take a time that grows with the cube of their number.
template <class Body>
void take_out(std::vector<Body>& bodies, const std::vector<Box>& boxes)
{
    std::vector<Bounded<Body>> whole;
    for (Body& body : bodies) whole.emplace_back(std::move(body));
    for (const Box& box : boxes) {
        const std::vector<HalfSpace> sides = kernel::box_sides(vec(box.lo), vec(box.hi));
        std::vector<Bounded<Body>> left;
        left.reserve(whole.size() + 4);
        for (Bounded<Body>& one : whole) {
            if (!one.reaches_into(box)) {
                left.push_back(std::move(one));
                continue;
            }
            for (Body& piece : kernel::subtract(one.body, sides)) left.emplace_back(std::move(piece));
        }
        whole = std::move(left);
    }
    bodies.clear();
    for (Bounded<Body>& one : whole) bodies.push_back(std::move(one.body));
}

void cut_notches(Solid& solid, const std::vector<Cell>& blank, const std::vector<Box>& notches)
{
    take_out(solid.cells, notches);
    take_out(solid.skin, notches);
    // The walls and bottoms that the notches lay open: faces of the notch that lie inside the blank, looking into the notch.
    for (std::size_t i = 0; i < notches.size(); ++i) {
        const Cell notch = kernel::box_cell(vec(notches[i].lo), vec(notches[i].hi));
        for (const Polygon& wall : notch.faces)
            for (const Cell& cell : blank) {
                Polygon inside = wall;
                inside.normal = -wall.normal;
                bool on_surface = false;
                for (const HalfSpace& side : cell.sides)
                    on_surface = on_surface || (side.normal.dot(wall.normal) > 0.999 && side.outside(wall.corners[0]) > -kTouch);
                if (on_surface) continue;
                inside = kernel::clip(inside, cell.sides);
                if (!inside.empty()) solid.skin.push_back(std::move(inside));
            }
    }
}

} // namespace

double Solid::volume() const
{
    double sum = -round_over_loss;
    for (const Cell& cell : cells) sum += kernel::volume(cell);
    return sum;
}

Point Solid::first_moment() const
{
    Vec sum = Vec::Zero();
    double whole = 0;
    for (const Cell& cell : cells) {
        sum += kernel::first_moment(cell);
        whole += kernel::volume(cell);
    }
    // The round-over runs along all four edges: it takes as much on every side of the centre.
    if (whole > 0) sum *= 1 - round_over_loss / whole;
    return {sum.x(), sum.y(), sum.z()};
}

std::vector<Box> notch_boxes(const Part& part, const Copy& copy)
{
    std::vector<Box> boxes;
    const std::size_t g = index_of(part.grain);
    for (const Notches& row : part.notches) {
        const Side from = side_on(copy, row.from);
        const std::size_t d = index_of(axis_of(from));
        for (int i = 0; i < row.count; ++i) {
            Box box = copy.box;
            const double first = in_metres(row.first) + i * in_metres(row.step);
            box.lo[g] = copy.box.lo[g] + first;
            box.hi[g] = box.lo[g] + in_metres(row.width);
            if (copy.mirrored[g]) {
                const double hi = copy.box.hi[g] - first;
                box.hi[g] = hi;
                box.lo[g] = hi - in_metres(row.width);
            }
            if (is_far(from))
                box.lo[d] = box.hi[d] - in_metres(row.depth);
            else
                box.hi[d] = box.lo[d] + in_metres(row.depth);
            boxes.push_back(box);
        }
    }
    return boxes;
}

Section section_at(const Part& part, const Copy& copy, double along)
{
    Section section{in_metres(part.width), in_metres(part.thickness)};
    if (!part.taper) return section;
    const Taper& taper = *part.taper;
    const double length = copy.box.size(part.grain);
    const double from_end = is_far(side_on(copy, taper.end)) ? length - along : along;
    const double over = std::min(in_metres(taper.over), length);
    if (from_end >= over || over <= 0) return section;
    const double t = std::clamp(from_end / over, 0.0, 1.0);
    section.width = in_metres(taper.width) + t * (section.width - in_metres(taper.width));
    section.thickness = in_metres(taper.thickness) + t * (section.thickness - in_metres(taper.thickness));
    return section;
}

Solid solid_of(const Part& part, const Copy& copy)
{
    Solid solid;
    const std::vector<Cell> blank = blank_cells(part, copy);
    solid.cells = blank;
    solid.skin = blank_skin(part, blank);
    const std::vector<Box> notches = notch_boxes(part, copy);
    if (!notches.empty()) cut_notches(solid, blank, notches);
    if (const auto turn = turn_of(part, copy)) turn_solid(solid, *turn);
    if (part.round_over) {
        const double r = in_metres(*part.round_over);
        solid.round_over_loss = (4 - std::numbers::pi) * r * r * copy.box.size(part.grain);
    }
    return solid;
}

} // namespace jointwright
