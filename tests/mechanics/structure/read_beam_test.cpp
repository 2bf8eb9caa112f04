// What is read along a part at few places, against the same read at very many.

#include "mechanics/structure/read_beam.hpp"

#include "catch.hpp"
#include "checks/checked.hpp"
#include "mechanics/structure/read_member.hpp"
#include "mechanics/structure/structure.hpp"

#include <cmath>

using namespace checked;
using kernel::Vec3;

namespace {

/// Largest bending stress and sag of a lying line in a solution, by cutting it at very many places.
struct ReadClosely {
    double weight = 0, drop = 0;
};

ReadClosely read_closely(const Structure& frame, std::size_t copy, const std::vector<CopyLoad>& loads,
                         const kernel::FrameSolution& solution)
{
    constexpr int cuts = 160; // of each beam
    const MemberLine& line = frame.lines()[copy];
    const StructureMember& m = frame.member(copy);
    const auto acting = frame.element_loads(copy, loads);
    ReadClosely most;
    for (std::size_t i = 0; i + 1 < m.along.size(); ++i) {
        const int e = m.first_element + static_cast<int>(i);
        const kernel::BeamElement& beam = frame.frame().beam(e);
        kernel::Vec12 ends = beam.end_forces(frame.frame().beam_movement(e, solution.movement));
        for (const ElementLoad& load : acting)
            if (load.element == e)
                for (int k = 0; k < 4; ++k) ends.segment<3>(3 * k) -= beam.axes() * load.on_ends.segment<3>(3 * k);
        for (int c = 1; c < cuts; ++c) {
            const double x = beam.length() * c / cuts, s = m.along[i] + x;
            if (s < 0 || s > line.length) continue;
            double my = -ends(5) + ends(1) * x, mz = ends(4) + ends(2) * x, pull = -ends(0);
            for (const ElementLoad& load : acting) {
                if (load.element != e) continue;
                const double from = load.from * beam.length(), to = load.to * beam.length();
                const Vec3 f = beam.axes() * load.force;
                const double share = x <= from ? 0
                                     : x >= to ? 1
                                               : (x - from) / (to - from),
                             arm = x - (from + std::min(to, x)) / 2;
                my += share * f.y() * arm;
                mz += share * f.z() * arm;
                pull -= share * f.x();
            }
            const NetStretch &w = line.width_section(s), &t = line.face_section(s);
            // Pressed wood counts double where the governing place is sought.
            const double bent = std::abs(my) * w.outer / w.inertia + std::abs(mz) * t.outer / t.inertia,
                         axial = pull / std::min(w.area, t.area);
            most.weight = std::max(most.weight, bent + (axial < 0 ? -2 * axial : axial));
            most.drop = std::max(most.drop, -frame.movement(copy, s, 0, solution).z());
        }
    }
    return most;
}

} // namespace

TEST_CASE("The largest stress of a line is found at its few places as at very many", "[structure]")
{
    const auto* const name = GENERATE("designs/boot-bench.toml", "patterns/garden-bench.toml", "designs/window-seat-metric.toml");
    CAPTURE(name);
    const auto bench = bench_of(*testing::shared_facts().text(name));
    const Statics& statics = bench->prepared.statics;
    const Structure& frame = *statics.frame;
    int read = 0;
    for (std::size_t k = 0; k < statics.cases.cases.size(); k += 5) {
        std::vector<CopyLoad> loads = statics.cases.lasting;
        loads.insert(loads.end(), statics.cases.cases[k].loads.begin(), statics.cases.cases[k].loads.end());
        const auto solution = frame.solve({loads}).front();
        for (std::size_t copy = 0; copy < statics.is_beam.size(); ++copy) {
            if (!statics.is_beam[copy] || frame.lines()[copy].plate) continue;
            std::vector<CopyLoad> on;
            for (const CopyLoad& l : loads)
                if (l.copy == copy) on.push_back(l);
            const MemberResult m = read_member(frame, bench->prepared, copy, frame.element_loads(copy, on), true, solution);
            const ReadClosely closely = read_closely(frame, m.copy, on, solution);
            CAPTURE(statics.cases.cases[k].name, bench->piece.label(m.copy));
            // Bent both ways at once the peak of the sum may lie beside those of either: a thousandth, or 0.01 MPa where next to nothing
            // bends it.
            const double weight = m.stress + std::max(0.0, -m.axial_stress);
            CHECK(weight > closely.weight * (1 - 1e-3) - 1e4);
            CHECK(weight < closely.weight * 1.02 + 2e4);
            CHECK(m.most_sag < closely.drop + 1e-3);
            ++read;
        }
    }
    CHECK(read > 50);
}
