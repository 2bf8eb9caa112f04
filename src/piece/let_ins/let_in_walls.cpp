#include "piece/let_ins/let_in_walls.hpp"

#include "piece/model/turn.hpp"
#include "piece/solid/solid.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using kernel::Cell;
using kernel::HalfSpace;
using kernel::Vec;

constexpr double kFaces = 0.5; // cosine from which a face is the one that something enters by, or its bottom

/// The face between the two cells of a tapered part is no outer one.
bool is_inner(const std::vector<Cell>& cells, std::size_t cell, const HalfSpace& side)
{
    for (std::size_t i = 0; i < cells.size(); ++i)
        if (i != cell)
            for (const HalfSpace& other : cells[i].sides)
                if (other.normal.dot(side.normal) < -0.9999 && std::abs(other.offset + side.offset) < kTouch) return true;
    return false;
}

/// Least distance of a body's corners from a plane, positive inside.
double room_before(const std::vector<Cell>& bodies, const HalfSpace& side)
{
    double least = 1e30;
    for (const Cell& cell : bodies)
        for (const kernel::Polygon& face : cell.faces)
            for (const Vec& p : face.corners) least = std::min(least, -side.outside(p));
    return least;
}

/// What of the bodies lies within the stretch of one cell: within its inner faces.
std::vector<Cell> within(const std::vector<Cell>& bodies, const std::vector<Cell>& cells, std::size_t cell)
{
    std::vector<Cell> left = bodies;
    for (const HalfSpace& side : cells[cell].sides) {
        if (!is_inner(cells, cell, side)) continue;
        std::vector<Cell> kept;
        for (const Cell& body : left)
            if (Cell piece = kernel::clip(body, side); !piece.empty()) kept.push_back(std::move(piece));
        left = std::move(kept);
    }
    return left;
}

Wall::Place place_of(const LetIn& in, const HalfSpace& side)
{
    if (side.normal.dot(in.along) > kFaces) return Wall::Place::bottom;
    const bool recess = in.kind == LetIn::Kind::housing || in.kind == LetIn::Kind::groove;
    return recess && std::abs(side.normal.dot(in.wide())) > 0.7 ? Wall::Place::end_of_run : Wall::Place::beside;
}

} // namespace

std::vector<Wall> walls_of(const Piece& piece, const LetIn& in)
{
    Part blank = piece.part_of(in.into);
    blank.notches.clear();
    const std::vector<Cell> cells = solid_of(blank, piece.copies[in.into]).cells;
    const std::vector<Cell> bodies = in.bore() ? std::vector<Cell>{body_of_bore(in)} : in.bodies;
    std::vector<Wall> walls;
    for (std::size_t c = 0; c < cells.size(); ++c) {
        const std::vector<Cell> here = within(bodies, cells, c);
        if (here.empty()) continue;
        for (const HalfSpace& side : cells[c].sides) {
            if (is_inner(cells, c, side) || side.normal.dot(in.along) < -kFaces) continue;
            Wall wall{place_of(in, side), room_before(here, side), side.normal};
            if (wall.place == Wall::Place::bottom) wall.left -= in.deeper;
            if (std::abs(wall.left) < kTouch) wall.left = 0;
            walls.push_back(wall);
        }
    }
    return walls;
}

} // namespace jointwright
