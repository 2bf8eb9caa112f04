#pragma once
// From the bodies that a report carries to those of the drawing engine.

#include "report/drawings/scene.hpp"
#include "review/pictures/drawn_piece.hpp"

#include <vector>

namespace jointwright::drawing {

/// They look at the cells of the report's bodies and must not outlive them.
WoodBody wood_body(const DrawnBody& body);
std::vector<WoodBody> wood_bodies(const DrawnPiece& piece);

/// Extent of all bodies on the paper.
void paper_extent(const DrawnPiece& piece, const View& view, Dot& lo, Dot& hi);

} // namespace jointwright::drawing
