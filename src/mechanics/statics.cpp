#include "mechanics/statics.hpp"

#include "mechanics/member_results.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/structure.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace jointwright {

namespace {

using kernel::FrameSolution;
using kernel::Vec3;

constexpr double kFreeTurning = 1e-3,
                 kStiffTurning = 1e3; // shares of the estimated stiffness: as good as a hinge, as good as one piece
constexpr std::size_t kTogether = 64; // cases solved at once

class Solving {
public:
    Solving(const Prepared& prepared, Statics& statics) : prepared_(prepared), piece_(*prepared.piece), statics_(statics) {}

    void run()
    {
        auto frame = std::make_shared<Structure>(prepared_);
        statics_.loose = frame->loose();
        statics_.frame = frame;
        for (std::size_t i = 0; i < piece_.copies.size(); ++i)
            statics_.is_beam[i] = frame->member(i).built && frame->lines()[i].lies && !statics_.path.bearings[i].empty() &&
                                  frame->stiffness()[i].known;
        const auto& cases = statics_.cases.cases;
        std::vector<std::vector<CopyLoad>> loads;
        for (std::size_t k = 0; k < cases.size(); ++k) loads.push_back(loads_of(k));
        lasting_on_ = by_copy(statics_.cases.lasting);
        for (std::size_t i = 0; i < piece_.copies.size(); ++i) lasting_elements_.push_back(elements_of(i, lasting_on_[i]));
        // A few at a time: the movements of all cases of a large piece would fill the memory.
        for (std::size_t first = 0; first < cases.size(); first += kTogether) {
            const std::size_t last = std::min(cases.size(), first + kTogether);
            const std::vector<FrameSolution> solved = frame->solve(
                {loads.begin() + static_cast<std::ptrdiff_t>(first), loads.begin() + static_cast<std::ptrdiff_t>(last)});
            for (std::size_t k = first; k < last; ++k) {
                read_members(*frame, k, loads[k], solved[k - first]);
                read_forces(*frame, k, solved[k - first]);
                statics_.sways.push_back(sway_of(*frame, solved[k - first]));
                statics_.settled.push_back(solved[k - first].settled &&
                                           (statics_.cases.cases[k].proof || !topples(*frame, solved[k - first])));
            }
        }
        add_lasting_sag();
        add_bounds(loads);
    }

private:
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

    /// What loads do to the elements of each copy; most copies bear no more than what lasts.
    std::vector<std::vector<ElementLoad>> by_element(const std::vector<CopyLoad>& loads) const
    {
        const auto on = by_copy(loads);
        std::vector<std::vector<ElementLoad>> all;
        for (std::size_t i = 0; i < on.size(); ++i)
            all.push_back(on[i] == lasting_on_[i] ? lasting_elements_[i] : elements_of(i, on[i]));
        return all;
    }

    void read_members(const Structure& frame, std::size_t index, const std::vector<CopyLoad>& loads,
                      const FrameSolution& solution)
    {
        const auto on = by_element(loads);
        for (std::size_t i = 0; i < piece_.copies.size(); ++i) {
            if (statics_.is_beam[i]) {
                MemberResult r = read_member(frame, piece_, statics_, i, on[i], edges_count(index), solution);
                r.load_case = index;
                statics_.members.push_back(r);
            } else if (frame.member(i).built && !frame.lines()[i].lies) {
                PostResult r = read_post(frame, i, on[i], solution);
                r.load_case = index;
                statics_.posts.push_back(r);
            }
        }
    }

    void read_forces(const Structure& frame, std::size_t index, const FrameSolution& solution)
    {
        std::vector<double> borne(piece_.copies.size(), 0.0);
        const auto& contacts = prepared_.layout->contacts;
        for (std::size_t i = 0; i < piece_.copies.size(); ++i)
            for (const Bearing& b : statics_.path.bearings[i]) {
                const Vec3 f = frame.contact_force(b.contact, solution).force;
                const double down = contacts[b.contact].first == i ? -f.z() : f.z();
                statics_.forces.push_back({b.contact, i, b.below, index, down});
                borne[i] += down;
            }
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
        for (const Foot& foot : frame.feet()) {
            statics_.on_floor[index] -= frame.frame().tie_force(foot.tie, solution.movement).z();
            if (foot.press >= 0) statics_.on_floor[index] -= frame.frame().press_force(foot.press, solution.movement).z();
        }
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
                const double aside = solution.movement.segment<2>(6 * node).squaredNorm();
                if (aside <= most) continue;
                most = aside;
                sway.height = frame.frame().place(node).z() - floor;
                sway.copy = i;
            }
        }
        sway.sway = std::sqrt(most);
        return sway;
    }

    /// True when feet have left the floor and those left standing are turned farther than their breadth holds: the piece goes over, though the
    /// little that a foot is worth against turning would stop it in the sums. Asked of service loads: proof loads try the strength, `tip` the edges.
    static bool topples(const Structure& frame, const FrameSolution& solution)
    {
        constexpr double too_far = 0.05; // rad: a piece that stands leans far less
        const auto& feet = frame.feet();
        const auto lifted = [&](const Foot& foot) {
            return foot.press >= 0 && std::find(solution.open.begin(), solution.open.end(), foot.press) != solution.open.end();
        };
        if (std::none_of(feet.begin(), feet.end(), lifted)) return false;
        return std::any_of(feet.begin(), feet.end(), [&](const Foot& foot) {
            return foot.press >= 0 && !lifted(foot) && frame.foot_turn(foot, solution).head<2>().norm() > too_far;
        });
    }

    void add_lasting_sag()
    {
        std::vector<double> lasting(piece_.copies.size(), 0.0);
        for (const MemberResult& r : statics_.members)
            if (r.load_case == 0) lasting[r.copy] = r.most_sag;
        for (MemberResult& r : statics_.members) r.lasting_sag = std::min(lasting[r.copy], r.most_sag);
    }

    /// Cases that may govern a part: the largest stress and sag among those alike in kind; and every push.
    std::set<std::size_t> governing_cases() const
    {
        struct Largest {
            double stress = 0, sag = 0;
            std::size_t by_stress = 0, by_sag = 0;
        };
        std::map<std::pair<std::size_t, int>, Largest> largest;
        for (const MemberResult& r : statics_.members) {
            const LoadCase& c = statics_.cases.cases[r.load_case];
            Largest& l = largest[{piece_.copies[r.copy].part, c.proof ? 3 : static_cast<int>(c.duration)}];
            if (r.stress > l.stress) {
                l.stress = r.stress;
                l.by_stress = r.load_case;
            }
            if (c.counts_for_sag && !c.proof && r.sag > l.sag) {
                l.sag = r.sag;
                l.by_sag = r.load_case;
            }
        }
        std::set<std::size_t> cases;
        for (const auto& [key, l] : largest) cases.insert({l.by_stress, l.by_sag});
        for (std::size_t k = 0; k < statics_.cases.cases.size(); ++k)
            if (statics_.cases.cases[k].push) cases.insert(k);
        return cases;
    }

    void add_bounds(const std::vector<std::vector<CopyLoad>>& loads)
    {
        const std::set<std::size_t> chosen = governing_cases();
        if (chosen.empty()) return;
        const std::vector<std::size_t> indices(chosen.begin(), chosen.end());
        std::vector<std::vector<CopyLoad>> some;
        for (const std::size_t k : indices) some.push_back(loads[k]);
        const Structure free = statics_.frame->with_turning(kFreeTurning), stiff = statics_.frame->with_turning(kStiffTurning);
        const auto with_free = free.solve(some), with_stiff = stiff.solve(some);
        for (std::size_t n = 0; n < indices.size(); ++n) {
            const auto on = by_element(some[n]);
            for (MemberResult& r : statics_.members) {
                if (r.load_case != indices[n]) continue;
                const MemberResult f = read_member(free, piece_, statics_, r.copy, on[r.copy], edges_count(indices[n]),
                                                   with_free[n]),
                                   s = read_member(stiff, piece_, statics_, r.copy, on[r.copy], edges_count(indices[n]),
                                                   with_stiff[n]);
                r.bounds = MemberResult::Bounds{f.stress, s.stress, f.sag, s.sag};
            }
            SwayResult& sway = statics_.sways[indices[n]];
            sway.free = sway_of(free, with_free[n]).sway;
            sway.stiff = sway_of(stiff, with_stiff[n]).sway;
        }
    }

    const Prepared& prepared_;
    const Piece& piece_;
    Statics& statics_;
    std::vector<std::vector<CopyLoad>> lasting_on_;          ///< by copy
    std::vector<std::vector<ElementLoad>> lasting_elements_; ///< by copy
};

} // namespace

Statics statics_of(const Piece& piece, const Facts& facts, const std::vector<Contact>& contacts,
                   const std::vector<std::vector<Cut>>& cuts, const std::vector<double>& masses)
{
    Statics statics;
    statics.path = load_path_of(piece, contacts);
    statics.cases = load_cases_of(piece, facts, masses);
    statics.is_beam.assign(piece.copies.size(), false);
    statics.stretches.resize(piece.copies.size());
    statics.on_floor.assign(statics.cases.cases.size(), 0.0);
    for (std::size_t i = 0; i < piece.copies.size(); ++i)
        if (piece.part_of(i).grain != Axis::z)
            statics.stretches[i] = net_stretches(facts, piece.part_of(i), piece.copies[i], cuts[i]);
    return statics;
}

void solve_statics(const Prepared& prepared, Statics& statics)
{
    if (statics.cases.cases.empty()) return;
    Solving(prepared, statics).run();
}

} // namespace jointwright
