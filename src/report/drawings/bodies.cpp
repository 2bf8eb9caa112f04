#include "report/drawings/bodies.hpp"

#include <algorithm>

namespace jointwright::drawing {

WoodBody wood_body(const DrawnBody& body)
{
    return {body.solid.cells, body.solid.grain, Vec(body.pith[0], body.pith[1], body.pith[2]), body.wood};
}

std::vector<WoodBody> wood_bodies(const DrawnPiece& piece)
{
    std::vector<WoodBody> bodies;
    bodies.reserve(piece.bodies.size());
    for (const DrawnBody& body : piece.bodies) bodies.push_back(wood_body(body));
    return bodies;
}

void paper_extent(const DrawnPiece& piece, const View& view, Dot& lo, Dot& hi)
{
    bool first = true;
    for (const DrawnBody& body : piece.bodies)
        for (const kernel::Cell& cell : body.solid.cells)
            for (const kernel::Polygon& face : cell.faces)
                for (const Vec& corner : face.corners) {
                    const Vec p = view.place(corner);
                    if (first) lo = hi = {p.x(), p.y()};
                    first = false;
                    lo = {std::min(lo.x, p.x()), std::min(lo.y, p.y())};
                    hi = {std::max(hi.x, p.x()), std::max(hi.y, p.y())};
                }
}

} // namespace jointwright::drawing
