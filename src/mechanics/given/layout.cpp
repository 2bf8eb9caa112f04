#include "mechanics/given/layout.hpp"

#include "piece/solid/solid.hpp"

#include <algorithm>
#include <utility>

namespace jointwright {

namespace {

/// Where tenons meet in a part neither has the cheeks that it is drawn with.
void lessen_cheeks(Layout& layout)
{
    for (std::size_t c = 0; c < layout.contacts.size(); ++c) {
        const double kept = layout.let_ins.kept[c];
        if (kept >= 1) continue;
        auto& patches = layout.contacts[c].patches;
        for (Patch& p : patches)
            if (p.role == Patch::Role::cheek || p.role == Patch::Role::edge) p.area *= kept;
        std::stable_sort(patches.begin(), patches.end(),
                         [](const Patch& a, const Patch& b) { return a.area > b.area + 1e-12; }); // largest first, as ever
    }
}

} // namespace

Layout layout_of(const Piece& piece)
{
    Layout layout;
    layout.contacts = find_contacts(piece).contacts;
    layout.let_ins = meet_let_ins(piece, layout.contacts);
    lessen_cheeks(layout);
    layout.cuts = cuts_of(piece, layout.contacts);
    const std::vector<JointLoss> lost = joint_losses(piece, layout.contacts);
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const Solid solid = solid_of(piece.part_of(i), piece.copies[i]);
        const double volume = solid.volume() - lost[i].volume;
        Point centre = solid.first_moment();
        for (std::size_t k = 0; k < 3; ++k) centre[k] = (centre[k] - lost[i].moment[k]) / std::max(volume, 1e-12);
        layout.volumes.push_back(volume);
        layout.centres.push_back(centre);
    }
    layout.path = load_path_of(piece, layout.contacts);
    return layout;
}

LaidOut lay_out(Piece piece)
{
    LaidOut laid;
    laid.layout = std::make_shared<const Layout>(layout_of(piece));
    laid.piece = std::make_shared<const Piece>(std::move(piece));
    return laid;
}

} // namespace jointwright
