#include "catch.hpp"
#include "checks/checked.hpp"

#include "mechanics/given/net_section.hpp"
#include "piece/let_ins/joined_solid.hpp"
#include "piece/solid/solid.hpp"

using namespace jointwright;

namespace {

double volume_of(const JoinedSolid& solid)
{
    double sum = 0;
    for (const kernel::Cell& cell : solid.cells) sum += kernel::volume(cell);
    return sum;
}

double overlap_of(const JoinedSolid& a, const JoinedSolid& b)
{
    double sum = 0;
    for (const kernel::Cell& one : a.cells)
        for (const kernel::Cell& other : b.cells) {
            const kernel::Cell both = kernel::clip(one, other.sides);
            if (!both.empty()) sum += kernel::volume(both);
        }
    return sum;
}

} // namespace

TEST_CASE("No design leaves two copies in the same space, and cut volumes agree with the weights", "[joined]")
{
    for (const char* name : {"boot-bench", "breadboard-glued-middle", "cabinet-door-damp-coast", "drawer-bottom-glued-all-round",
                             "mirror-frame-wide-flat-sawn", "wide-shelf-bookcase", "window-seat-metric"}) {
        CAPTURE(name);
        const auto bench = checked::bench_of(checked::built_in_design(name));
        const Piece& piece = bench->piece;
        const auto solids = joined_solids(piece, bench->layout.contacts);
        REQUIRE(solids.size() == piece.copies.size());
        for (const Contact& c : bench->layout.contacts) {
            CAPTURE(piece.label(c.first), piece.label(c.second));
            CHECK(overlap_of(solids[c.first], solids[c.second]) < 1e-9);
        }
        const auto lost = joint_volumes(piece, bench->layout.contacts);
        for (std::size_t i = 0; i < solids.size(); ++i) {
            CAPTURE(piece.label(i));
            const Solid drawn = solid_of(piece.part_of(i), piece.copies[i]);
            const double whole = drawn.volume() + drawn.round_over_loss;
            CHECK_THAT(volume_of(solids[i]), WithinAbs(whole - lost[i], 0.002 * whole));
        }
    }
}
