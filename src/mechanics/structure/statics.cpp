#include "mechanics/structure/statics.hpp"

#include "mechanics/structure/read_member.hpp"
#include "mechanics/structure/structure.hpp"
#include "mechanics/structure/wall_screws.hpp"

#include <algorithm>
#include <cmath>
#include <deque>
#include <map>
#include <set>
#include <tuple>

namespace jointwright {

namespace {

using kernel::FrameSolution;
using kernel::Vec3;

constexpr double kSofter = 1.0 / 3, kStiffer = 3; // times the estimated stiffness of joints
constexpr double kSlickFloor = 1e-6;
constexpr double kFloorFriction = 0.25; // felt or wood on a finished floor (estimated)
constexpr std::size_t kTogether = 64;   // cases solved at once

class Solving {
public:
    Solving(const Given& given, Statics& statics) : given_(given), piece_(*given.piece), statics_(statics) {}

    void run()
    {
        auto frame = std::make_shared<Structure>(given_, statics_.cases);
        if (!frame->loose().empty() && piece_.wall.empty()) {
            // Blocks and slabs that stand for themselves stand by the breadth of their soles.
            auto broad = std::make_shared<Structure>(given_, statics_.cases, true);
            if (broad->loose().empty()) frame = std::move(broad);
        }
        const auto& cases = statics_.cases.cases;
        std::vector<std::vector<CopyLoad>> loads;
        for (std::size_t k = 0; k < cases.size(); ++k) {
            loads.push_back(loads_of(k));
            statics_.floors.push_back(floor_of(*frame, k));
            // A piece that its load would push along is held against stops: on a rougher floor it tips instead of sliding.
            if (pushes_along(loads.back())) statics_.floors.back().slides = false;
        }
        hold_what_comes_away(*frame, loads);
        statics_.loose = frame->loose();
        statics_.drawn_out = frame->drawn_out();
        statics_.frame = frame;
        if (!statics_.loose.empty()) { // what a mechanism does means nothing
            statics_.settled.assign(cases.size(), false);
            statics_.sways.assign(cases.size(), {});
            return;
        }
        for (std::size_t i = 0; i < piece_.copies.size(); ++i)
            statics_.is_beam[i] =
                frame->member(i).built && frame->lines()[i].lies && frame->stiffness()[i].known &&
                (!given_.layout->path.bearings[i].empty() || (!piece_.wall.empty() && given_.layout->path.on_floor[i]));
        lasting_on_ = by_copy(statics_.cases.lasting);
        for (std::size_t i = 0; i < piece_.copies.size(); ++i) lasting_elements_.push_back(elements_of(i, lasting_on_[i]));
        reserve_for(cases.size());
        in_turn(loads, [&](std::size_t k, const FrameSolution& solution) {
            read_members(*frame, k, solution);
            read_forces(*frame, k, solution);
            statics_.sways.push_back(sway_of(*frame, solution));
            statics_.settled.push_back(solution.settled);
            if (solution.settled && !piece_.wall.empty()) note_wall_screws(statics_.on_wall, piece_, *frame, k, solution);
        });
        members_from_.push_back(statics_.members.size());
        add_lasting_sag();
        add_bounds(loads);
    }

private:
    /// Solves all cases, a few at a time: the movements of all cases of a large piece would fill the memory. Tests that would lift the piece off its
    /// feet hold it down.
    template <class Reader>
    void in_turn(const std::vector<std::vector<CopyLoad>>& loads, const Reader& read)
    {
        const Structure& frame = *statics_.frame;
        for (std::size_t first = 0; first < loads.size(); first += kTogether) {
            const std::size_t last = std::min(loads.size(), first + kTogether);
            const auto from = static_cast<std::ptrdiff_t>(first), to = static_cast<std::ptrdiff_t>(last);
            std::vector<FrameSolution> solved = frame.solve({loads.begin() + from, loads.begin() + to},
                                                            {statics_.floors.begin() + from, statics_.floors.begin() + to});
            for (std::size_t k = first; k < last; ++k) {
                FrameSolution& s = solved[k - first];
                if (!s.settled && is_held_down(k)) {
                    statics_.floors[k].holds_down = true;
                    s = std::move(frame.solve({loads[k]}, {statics_.floors[k]}).front());
                }
                read(k, s);
            }
        }
    }

    bool is_held_down(std::size_t index) const
    {
        const LoadCase& c = statics_.cases.cases[index];
        return c.proof && !c.lift && !statics_.floors[index].holds_down && piece_.wall.empty();
    }

    /// Where contacts part so that a part comes away, joints that were let turn are held after all.
    void hold_what_comes_away(Structure& frame, const std::vector<std::vector<CopyLoad>>& loads)
    {
        constexpr int most = 4;
        for (int round = 0; round < most && frame.loose().empty(); ++round) {
            std::optional<kernel::FreeMotion> motion;
            for (std::size_t first = 0; first < loads.size() && !motion; first += kTogether) {
                const auto from = static_cast<std::ptrdiff_t>(first),
                           to = static_cast<std::ptrdiff_t>(std::min(loads.size(), first + kTogether));
                const auto solved = frame.solve({loads.begin() + from, loads.begin() + to},
                                                {statics_.floors.begin() + from, statics_.floors.begin() + to});
                for (std::size_t k = 0; k < solved.size() && !motion; ++k)
                    if (!solved[k].settled && !statics_.cases.cases[first + k].lift && !is_held_down(first + k))
                        motion = kernel::free_motion_of(solved[k]);
            }
            if (!motion || !frame.hold_what_moves(*motion)) return;
        }
    }

    /// The floor takes sideways force as far as what presses on it allows; stops, where a test has them, and a wall take all.
    kernel::FloorState floor_of(const Structure& frame, std::size_t index) const
    {
        const LoadCase& c = statics_.cases.cases[index];
        kernel::FloorState floor;
        floor.slides = piece_.wall.empty() && !c.feet_stopped && !c.push && !c.lift;
        floor.share = kFloorFriction;
        if (!c.feet_free || !piece_.wall.empty()) return floor;
        const auto axis = static_cast<int>(index_of(axis_of(*c.feet_free)));
        double lo = 1e30, hi = -1e30;
        for (const Foot& foot : frame.feet()) {
            lo = std::min(lo, foot.at(axis));
            hi = std::max(hi, foot.at(axis));
        }
        for (const Foot& foot : frame.feet())
            if ((foot.at(axis) > (lo + hi) / 2) == is_far(*c.feet_free)) floor.free.push_back(foot.grip);
        return floor;
    }

    /// True when all feet together cannot hold what the loads push sideways.
    static bool pushes_along(const std::vector<CopyLoad>& loads)
    {
        Vec3 sum = Vec3::Zero();
        for (const CopyLoad& load : loads) sum += load.force * Vec3(load.direction[0], load.direction[1], load.direction[2]);
        return sum.head<2>().norm() > kFloorFriction * std::max(0.0, -sum.z());
    }

    void reserve_for(std::size_t cases)
    {
        const auto beams = static_cast<std::size_t>(std::count(statics_.is_beam.begin(), statics_.is_beam.end(), true));
        std::size_t bearings = 0, joints = 0;
        for (const auto& b : given_.layout->path.bearings) bearings += b.size();
        for (const Contact& c : given_.layout->contacts) joints += c.joint ? 1 : 0;
        statics_.members.reserve(cases * beams);
        statics_.forces.reserve(cases * bearings);
        statics_.joints.reserve(cases * joints);
        statics_.sways.reserve(cases);
    }

    std::vector<CopyLoad> loads_of(std::size_t index) const
    {
        std::vector<CopyLoad> loads = statics_.cases.lasting;
        const auto& own = statics_.cases.cases[index].loads;
        loads.insert(loads.end(), own.begin(), own.end());
        return loads;
    }

    bool edges_count(std::size_t index) const { return statics_.cases.cases[index].duration != LoadDuration::short_term; }

    std::vector<std::vector<CopyLoad>> by_copy(const std::vector<CopyLoad>& loads) const
    {
        std::vector<std::vector<CopyLoad>> sorted(piece_.copies.size());
        for (const CopyLoad& load : loads) sorted[load.copy].push_back(load);
        return sorted;
    }

    std::vector<ElementLoad> elements_of(std::size_t copy, const std::vector<CopyLoad>& loads) const
    {
        const Structure& frame = *statics_.frame;
        if (!frame.member(copy).built || frame.lines()[copy].plate) return {};
        return frame.element_loads(copy, loads);
    }

    /// What loads do to the elements of each copy: most copies bear no more than what lasts, and share that.
    struct OnElements {
        std::vector<const std::vector<ElementLoad>*> of; ///< by copy
        std::deque<std::vector<ElementLoad>> own;
        const std::vector<ElementLoad>& operator[](std::size_t copy) const { return *of[copy]; }
    };
    OnElements by_element(std::size_t index) const
    {
        OnElements all;
        for (const auto& lasting : lasting_elements_) all.of.push_back(&lasting);
        std::vector<std::size_t> loaded;
        for (const CopyLoad& load : statics_.cases.cases[index].loads) loaded.push_back(load.copy);
        std::sort(loaded.begin(), loaded.end());
        loaded.erase(std::unique(loaded.begin(), loaded.end()), loaded.end());
        for (const std::size_t copy : loaded) {
            std::vector<CopyLoad> on = lasting_on_[copy];
            for (const CopyLoad& load : statics_.cases.cases[index].loads)
                if (load.copy == copy) on.push_back(load);
            all.own.push_back(elements_of(copy, on));
            all.of[copy] = &all.own.back();
        }
        return all;
    }

    void read_members(const Structure& frame, std::size_t index, const FrameSolution& solution)
    {
        const OnElements on = by_element(index);
        members_from_.push_back(statics_.members.size());
        for (std::size_t i = 0; i < piece_.copies.size(); ++i) {
            if (statics_.is_beam[i]) {
                MemberResult r = read_with_play(frame, i, on[i], index, solution);
                r.load_case = index;
                statics_.members.push_back(r);
            } else if (frame.member(i).built && !frame.lines()[i].lies) {
                PostResult r = read_post(frame, i, on[i], solution);
                r.load_case = index;
                statics_.posts.push_back(r);
            }
        }
    }

    MemberResult read_with_play(const Structure& frame, std::size_t copy, const std::vector<ElementLoad>& on, std::size_t index,
                                const FrameSolution& solution) const
    {
        MemberResult r = read_member(frame, given_, copy, on, edges_count(index), solution);
        if (!frame.play().empty())
            take_sag(r, read_member(frame, given_, copy, on, edges_count(index), leaning(frame, solution)));
        return r;
    }

    /// The same with the piece leaning as its play lets it, the way that the loads push it.
    static FrameSolution leaning(const Structure& frame, const FrameSolution& solution)
    {
        FrameSolution leans = solution;
        for (const Eigen::VectorXd& play : frame.play()) leans.movement += (solution.movement.dot(play) < 0 ? -1 : 1) * play;
        return leans;
    }

    static void take_sag(MemberResult& r, const MemberResult& from)
    {
        r.sag = from.sag;
        r.sag_span = from.sag_span;
        r.sag_overhangs = from.sag_overhangs;
        r.most_sag = from.most_sag;
        r.most_sag_span = from.most_sag_span;
        r.most_sag_overhangs = from.most_sag_overhangs;
    }

    void read_forces(const Structure& frame, std::size_t index, const FrameSolution& solution)
    {
        std::vector<double> borne(piece_.copies.size(), 0.0);
        const auto& contacts = given_.layout->contacts;
        for (std::size_t i = 0; i < piece_.copies.size(); ++i)
            for (const Bearing& b : given_.layout->path.bearings[i]) {
                const Vec3 f = frame.contact_force(b.contact, solution).force;
                const double down = contacts[b.contact].first == i ? -f.z() : f.z();
                statics_.forces.push_back({b.contact, i, b.below, index, down});
                borne[i] += down;
            }
        for (const Foot& foot : frame.feet())
            if (foot.on_wall()) borne[foot.copy] -= frame.foot_force(foot, solution).z();
        for (auto r = statics_.members.rbegin(); r != statics_.members.rend() && r->load_case == index; ++r)
            r->load = borne[r->copy];
        for (std::size_t c = 0; c < contacts.size(); ++c) {
            if (!contacts[c].joint) continue;
            const ContactForce f = frame.contact_force(c, solution);
            const Vec3& at = frame.contact_middle(c);
            statics_.joints.push_back({c,
                                       index,
                                       {f.force.x(), f.force.y(), f.force.z()},
                                       {f.moment.x(), f.moment.y(), f.moment.z()},
                                       {at.x(), at.y(), at.z()}});
        }
        for (const Foot& foot : frame.feet())
            statics_.on_floor[index] -= frame.foot_force(foot, solution, statics_.floors[index].holds_down).z();
    }

    SwayResult sway_of(const Structure& frame, const FrameSolution& solution) const
    {
        SwayResult sway;
        double floor = 1e30, most = 0;
        for (const Foot& foot : frame.feet()) floor = std::min(floor, foot.at.z());
        for (std::size_t i = 0; i < piece_.copies.size(); ++i) {
            const StructureMember& m = frame.member(i);
            if (!m.built) continue;
            const std::size_t nodes = m.along.size() * std::max<std::size_t>(1, m.across.size());
            for (std::size_t k = 0; k < nodes; ++k) {
                const int node = m.first_node + static_cast<int>(k);
                double leans = 0;
                for (const Eigen::VectorXd& play : frame.play()) leans += play.segment<2>(6 * node).norm();
                const double aside = solution.movement.segment<2>(6 * node).norm() + leans;
                if (aside <= most) continue;
                most = aside;
                sway.play = leans;
                sway.height = frame.frame().place(node).z() - floor;
                sway.copy = i;
            }
        }
        sway.sway = most;
        return sway;
    }

    void add_lasting_sag()
    {
        std::vector<double> lasting(piece_.copies.size(), 0.0);
        for (const MemberResult& r : statics_.members)
            if (r.load_case == 0) lasting[r.copy] = r.most_sag;
        for (MemberResult& r : statics_.members) r.lasting_sag = std::min(lasting[r.copy], r.most_sag);
    }

    /// Cases that may govern a copy, and which: the largest stress and the largest sag, by itself and for its span, among those alike in kind; and
    /// every push, for its sway.
    std::map<std::size_t, std::set<std::size_t>> governing_cases() const
    {
        struct Largest {
            double measure = 0;
            std::size_t load_case = 0;
            void take(double other, std::size_t k)
            {
                if (other > measure * (1 + 1e-9)) *this = {other, k}; // of mirrored cases the first, as the checks take them
            }
        };
        struct Governing {
            Largest stress, across, sag, most_sag, slope, most_slope;
        };
        std::map<std::tuple<std::size_t, DemandKind, LoadDuration>, Governing> largest;
        for (const MemberResult& r : statics_.members) {
            if (!statics_.settled[r.load_case]) continue;
            const LoadCase& c = statics_.cases.cases[r.load_case];
            Governing& g = largest[{r.copy, c.kind, c.duration}];
            g.stress.take(r.stress, r.load_case);
            g.across.take(r.across_stress, r.load_case);
            if (!c.counts_for_sag || c.proof) continue;
            g.sag.take(r.sag, r.load_case);
            g.most_sag.take(r.most_sag, r.load_case);
            if (r.sag_span > 0) g.slope.take(r.sag / r.sag_span, r.load_case);
            if (r.most_sag_span > 0) g.most_slope.take(r.most_sag / r.most_sag_span, r.load_case);
        }
        std::map<std::size_t, std::set<std::size_t>> chosen; // copies by case
        for (const auto& [key, g] : largest)
            for (const Largest* l : {&g.stress, &g.across, &g.sag, &g.most_sag, &g.slope, &g.most_slope})
                if (l->measure > 0) chosen[l->load_case].insert(std::get<0>(key));
        for (std::size_t k = 0; k < statics_.cases.cases.size(); ++k)
            if (statics_.cases.cases[k].push) chosen[k];
        return chosen;
    }

    void add_bounds(const std::vector<std::vector<CopyLoad>>& loads)
    {
        const auto chosen = governing_cases();
        if (chosen.empty()) return;
        std::vector<std::vector<CopyLoad>> some;
        for (const auto& [k, copies] : chosen) some.push_back(loads[k]);
        std::vector<kernel::FloorState> floors, slick;
        for (const auto& [k, copies] : chosen) {
            floors.push_back(statics_.floors[k]);
            slick.push_back(statics_.floors[k]);
            slick.back().share = kSlickFloor;
        }
        const Structure &frame = *statics_.frame, soft = frame.with_stiffness(kSofter), stiff = frame.with_stiffness(kStiffer);
        const auto with_soft = soft.solve(some, floors), with_stiff = stiff.solve(some, floors),
                   with_slick = frame.solve(some, slick);
        std::size_t n = 0;
        for (const auto& [k, copies] : chosen) {
            SwayResult& sway = statics_.sways[k];
            sway.soft = sway_of(soft, with_soft[n]).sway;
            sway.stiff = sway_of(stiff, with_stiff[n]).sway;
            if (!copies.empty()) {
                const OnElements on = by_element(k);
                for (std::size_t m = members_from_[k]; m < members_from_[k + 1]; ++m) {
                    MemberResult& r = statics_.members[m];
                    if (copies.count(r.copy) == 0) continue;
                    const auto bound = [&](const Structure& as, const FrameSolution& solution) {
                        const MemberResult read = read_with_play(as, r.copy, on[r.copy], r.load_case, solution);
                        return MemberResult::Bound{read.stress, read.across_stress, read.sag, read.most_sag};
                    };
                    r.bounds =
                        MemberResult::Bounds{bound(soft, with_soft[n]), bound(stiff, with_stiff[n]), bound(frame, with_slick[n])};
                }
            }
            ++n;
        }
    }

    const Given& given_;
    const Piece& piece_;
    Statics& statics_;
    std::vector<std::vector<CopyLoad>> lasting_on_;          ///< by copy
    std::vector<std::vector<ElementLoad>> lasting_elements_; ///< by copy
    std::vector<std::size_t> members_from_;                  ///< by case: its first result among the members
};

} // namespace

Statics statics_of(const Given& given)
{
    const Piece& piece = *given.piece;
    Statics statics;
    statics.cases = load_cases_of(piece, *given.facts, given.masses);
    statics.is_beam.assign(piece.copies.size(), false);
    statics.stretches.resize(piece.copies.size());
    statics.on_floor.assign(statics.cases.cases.size(), 0.0);
    for (std::size_t i = 0; i < piece.copies.size(); ++i)
        if (piece.part_of(i).grain != Axis::z)
            statics.stretches[i] = net_stretches(*given.facts, piece.part_of(i), piece.copies[i], given.layout->cuts[i]);
    if (!statics.cases.cases.empty()) Solving(given, statics).run();
    return statics;
}

} // namespace jointwright
