#pragma once
// What depends on the geometry of a piece alone: where its parts meet, what is cut from them and let into them, which of them bears which.

#include "mechanics/given/load_path.hpp"
#include "mechanics/given/net_section.hpp"
#include "piece/contacts/contact.hpp"
#include "piece/let_ins/let_ins.hpp"
#include "piece/model/piece.hpp"

#include <memory>
#include <vector>

namespace jointwright {

struct Layout {
    std::vector<Contact> contacts;
    std::vector<std::vector<Cut>> cuts; ///< by copy
    std::vector<double> volumes;        ///< by copy, let-ins taken off [m³]
    LetIns let_ins;                     ///< what is let into each copy, and where that meets
    std::vector<Point> centres;         ///< by copy: of that volume, where its weight acts [m]
    LoadPath path;                      ///< which copy bears which
};
Layout layout_of(const Piece& piece);

/// A piece and its layout, kept alive by whatever is worked out from them.
struct LaidOut {
    std::shared_ptr<const Piece> piece;
    std::shared_ptr<const Layout> layout;
};
LaidOut lay_out(Piece piece);

} // namespace jointwright
