#include "mechanics/statics.hpp"

#include "mechanics/member_results.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/structure.hpp"

#include <algorithm>
#include <cmath>
#include <deque>
#include <map>
#include <set>

namespace jointwright {

namespace {

using kernel::FrameSolution;
using kernel::Vec3;

constexpr double kFreeTurning = 1e-6,
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
            statics_.is_beam[i] = frame->member(i).built && frame->lines()[i].lies && frame->stiffness()[i].known &&
                                  (!statics_.path.bearings[i].empty() || (!piece_.wall.empty() && statics_.path.on_floor[i]));
        const auto& cases = statics_.cases.cases;
        std::vector<std::vector<CopyLoad>> loads;
        for (std::size_t k = 0; k < cases.size(); ++k) loads.push_back(loads_of(k));
        lasting_on_ = by_copy(statics_.cases.lasting);
        for (std::size_t i = 0; i < piece_.copies.size(); ++i) lasting_elements_.push_back(elements_of(i, lasting_on_[i]));
        reserve_for(cases.size());
        // A few at a time: the movements of all cases of a large piece would fill the memory.
        for (std::size_t first = 0; first < cases.size(); first += kTogether) {
            const std::size_t last = std::min(cases.size(), first + kTogether);
            const std::vector<FrameSolution> solved = frame->solve(
                {loads.begin() + static_cast<std::ptrdiff_t>(first), loads.begin() + static_cast<std::ptrdiff_t>(last)});
            for (std::size_t k = first; k < last; ++k) {
                read_members(*frame, k, solved[k - first]);
                read_forces(*frame, k, solved[k - first]);
                statics_.sways.push_back(sway_of(*frame, solved[k - first]));
                statics_.settled.push_back(solved[k - first].settled &&
                                           (statics_.cases.cases[k].proof || !topples(*frame, solved[k - first])));
            }
        }
        members_from_.push_back(statics_.members.size());
        add_lasting_sag();
        add_bounds(loads);
    }

private:
    void reserve_for(std::size_t cases)
    {
        const auto beams = static_cast<std::size_t>(std::count(statics_.is_beam.begin(), statics_.is_beam.end(), true));
        std::size_t bearings = 0, joints = 0;
        for (const auto& b : statics_.path.bearings) bearings += b.size();
        for (const Contact& c : prepared_.layout->contacts) joints += c.joint ? 1 : 0;
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
        for (const Foot& foot : frame.feet())
            if (foot.on_wall()) borne[foot.copy] -= frame.frame().tie_force(foot.tie, solution.movement).z();
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

    /// Cases that may govern a part, and which: the largest stress and sag among those alike in kind; and every push, for its sway.
    std::map<std::size_t, std::set<std::size_t>> governing_cases() const
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
        std::map<std::size_t, std::set<std::size_t>> parts; // by case
        for (const auto& [key, l] : largest) {
            parts[l.by_stress].insert(key.first);
            parts[l.by_sag].insert(key.first);
        }
        for (std::size_t k = 0; k < statics_.cases.cases.size(); ++k)
            if (statics_.cases.cases[k].push) parts[k];
        return parts;
    }

    void add_bounds(const std::vector<std::vector<CopyLoad>>& loads)
    {
        const auto chosen = governing_cases();
        if (chosen.empty()) return;
        std::vector<std::vector<CopyLoad>> some;
        for (const auto& [k, parts] : chosen) some.push_back(loads[k]);
        const Structure free = statics_.frame->with_turning(kFreeTurning), stiff = statics_.frame->with_turning(kStiffTurning);
        const auto with_free = free.solve(some), with_stiff = stiff.solve(some);
        std::size_t n = 0;
        for (const auto& [k, parts] : chosen) {
            SwayResult& sway = statics_.sways[k];
            const SwayResult swings = sway_of(free, with_free[n]);
            sway.free = swings.sway;
            sway.stiff = sway_of(stiff, with_stiff[n]).sway;
            sway.folds = !with_free[n].settled || swings.sway > kFolds * swings.height;
            if (!parts.empty()) {
                const OnElements on = by_element(k);
                for (std::size_t m = members_from_[k]; m < members_from_[k + 1]; ++m) {
                    MemberResult& r = statics_.members[m];
                    if (parts.count(piece_.copies[r.copy].part) == 0) continue;
                    const MemberResult f = read_member(free, piece_, statics_, r.copy, on[r.copy], edges_count(k), with_free[n]),
                                       s = read_member(stiff, piece_, statics_, r.copy, on[r.copy], edges_count(k),
                                                       with_stiff[n]);
                    const bool folds = sway.folds || f.most_sag > kFolds * f.most_sag_span || f.sag > kFolds * f.sag_span;
                    r.bounds = MemberResult::Bounds{f.stress, s.stress, f.sag, s.sag, folds};
                }
            }
            ++n;
        }
    }

    const Prepared& prepared_;
    const Piece& piece_;
    Statics& statics_;
    std::vector<std::vector<CopyLoad>> lasting_on_;          ///< by copy
    std::vector<std::vector<ElementLoad>> lasting_elements_; ///< by copy
    std::vector<std::size_t> members_from_;                  ///< by case: its first result among the members
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
