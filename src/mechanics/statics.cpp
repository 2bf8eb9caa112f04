#include "mechanics/statics.hpp"

#include "mechanics/beam_kernel.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace jointwright {

namespace {

constexpr double kSameStation = 0.005;  // m: bearings nearer than this along a part are one support
constexpr double kLongBearing = 0.3;    // share of the part's length from which a bearing is more than one support
constexpr int kLongBearingPoints = 5;

/// Bearings at one place along a part.
struct Station {
    double at = 0;
    std::vector<std::pair<std::size_t, double>> bearings; ///< index into the part's bearings, share of a long one
};

/// A lying part between its supports.
struct Member {
    std::size_t copy = 0;
    std::vector<Station> stations;
    std::optional<kernel::Beam> beam;
};

std::vector<Station> stations_of(const std::vector<Bearing>& bearings, double length)
{
    std::vector<Station> stations;
    const auto put = [&](double at, std::size_t i, double share) {
        for (Station& s : stations)
            if (std::abs(s.at - at) < kSameStation) {
                s.bearings.emplace_back(i, share);
                return;
            }
        stations.push_back({at, {{i, share}}});
    };
    for (std::size_t i = 0; i < bearings.size(); ++i) {
        const Bearing& b = bearings[i];
        if (b.to - b.from < kLongBearing * length) {
            put((b.from + b.to) / 2, i, 1);
            continue;
        }
        for (int k = 0; k < kLongBearingPoints; ++k) put(b.from + (b.to - b.from) * k / (kLongBearingPoints - 1), i, 1.0 / kLongBearingPoints);
    }
    std::sort(stations.begin(), stations.end(), [](const Station& a, const Station& b) { return a.at < b.at; });
    return stations;
}

/// Shares of a reaction among the bearings of a station: by the lever between those on either side of the load, else evenly.
std::vector<double> shares_at(const Station& station, const std::vector<Bearing>& bearings, double load_across)
{
    const std::size_t n = station.bearings.size();
    std::vector<double> shares(n, 1.0 / static_cast<double>(n));
    if (n < 2) return shares;
    std::size_t below = n, above = n;
    for (std::size_t k = 0; k < n; ++k) {
        const double at = bearings[station.bearings[k].first].across;
        if (at <= load_across && (below == n || at > bearings[station.bearings[below].first].across)) below = k;
        if (at > load_across && (above == n || at < bearings[station.bearings[above].first].across)) above = k;
    }
    std::fill(shares.begin(), shares.end(), 0.0);
    if (below == n || above == n) {
        // The load lies outside all bearings: the nearest takes it; the lift of the far one is left to the whole-frame solution.
        shares[below == n ? above : below] = 1;
        return shares;
    }
    const double a = bearings[station.bearings[below].first].across, b = bearings[station.bearings[above].first].across;
    const double t = (load_across - a) / (b - a);
    shares[below] = 1 - t;
    shares[above] = t;
    return shares;
}

const NetStretch& stretch_at(const std::vector<NetStretch>& stretches, double at)
{
    for (const NetStretch& s : stretches)
        if (at <= s.to) return s;
    return stretches.back();
}

/// Span about a place: the distance between its neighbouring supports, twice the overhang beyond the outer ones.
double span_about(const std::vector<double>& supports, double at)
{
    if (at <= supports.front()) return 2 * (supports.front() - at);
    if (at >= supports.back()) return 2 * (at - supports.back());
    for (std::size_t i = 0; i + 1 < supports.size(); ++i)
        if (at <= supports[i + 1]) return supports[i + 1] - supports[i];
    return 0;
}

class Solver {
public:
    Solver(const Piece& piece, const std::vector<Contact>& contacts, Statics& statics, const std::vector<BendingStiffness>& stiffness)
        : piece_(piece), contacts_(contacts), statics_(statics), stiffness_(stiffness)
    {
        members_.resize(piece.copies.size());
        for (std::size_t i = 0; i < piece.copies.size(); ++i) prepare(i);
    }

    void run(std::size_t index, bool lasting_only, std::vector<double>* lasting_sag)
    {
        const LoadCase& load_case = statics_.cases.cases[index];
        std::vector<std::vector<CopyLoad>> on(piece_.copies.size());
        for (const CopyLoad& load : statics_.cases.lasting) on[load.copy].push_back(load);
        if (!lasting_only)
            for (const CopyLoad& load : load_case.loads) on[load.copy].push_back(load);
        double floor = 0;
        for (const std::size_t copy : statics_.path.order) {
            if (on[copy].empty()) continue;
            if (statics_.path.bearings[copy].empty()) {
                for (const CopyLoad& load : on[copy]) floor += load.force;
                continue;
            }
            if (members_[copy].beam)
                bend(copy, index, on, lasting_sag);
            else
                pass_down(copy, index, on);
        }
        statics_.on_floor[index] = floor;
    }

private:
    void prepare(std::size_t i)
    {
        const Part& part = piece_.part_of(i);
        const Copy& copy = piece_.copies[i];
        if (part.grain == Axis::z || statics_.path.bearings[i].empty() || stiffness_[i].modulus <= 0) return;
        const double lo = copy.box.lo[index_of(part.grain)], hi = copy.box.hi[index_of(part.grain)];
        Member& member = members_[i];
        member.copy = i;
        member.stations = stations_of(statics_.path.bearings[i], hi - lo);
        std::vector<kernel::BeamCell> cells;
        for (const NetStretch& s : statics_.stretches[i])
            cells.push_back({s.from, s.to, stiffness_[i].modulus * s.inertia, stiffness_[i].shear_modulus * 5.0 / 6 * s.breadth * s.depth});
        std::vector<double> supports;
        for (const Station& s : member.stations) supports.push_back(s.at);
        member.beam.emplace(cells, supports);
        statics_.is_beam[i] = true;
    }

    /// A load on a bearing part: over what the two parts share along the lower one's grain.
    CopyLoad handed(const Bearing& bearing, double force) const
    {
        const Contact& contact = contacts_[bearing.contact];
        const Part& below = piece_.part_of(bearing.below);
        const std::size_t g = index_of(below.grain), a = below.grain == Axis::x ? 1 : 0;
        Box box = contact.patches.front().bounds;
        for (const Patch& p : contact.patches) {
            if (p.role == Patch::Role::cheek || p.role == Patch::Role::edge) continue;
            for (std::size_t k = 0; k < 3; ++k) {
                box.lo[k] = std::min(box.lo[k], p.bounds.lo[k]);
                box.hi[k] = std::max(box.hi[k], p.bounds.hi[k]);
            }
        }
        return {bearing.below, box.lo[g], box.hi[g], force, (box.lo[a] + box.hi[a]) / 2};
    }

    void hand_down(std::size_t copy, std::size_t index, const Bearing& bearing, double force, std::vector<std::vector<CopyLoad>>& on)
    {
        statics_.forces.push_back({bearing.contact, copy, bearing.below, index, force});
        on[bearing.below].push_back(handed(bearing, force));
    }

    void pass_down(std::size_t copy, std::size_t index, std::vector<std::vector<CopyLoad>>& on)
    {
        double force = 0;
        for (const CopyLoad& load : on[copy]) force += load.force;
        const auto& bearings = statics_.path.bearings[copy];
        for (const Bearing& b : bearings) hand_down(copy, index, b, force / static_cast<double>(bearings.size()), on);
    }

    void bend(std::size_t copy, std::size_t index, std::vector<std::vector<CopyLoad>>& on, std::vector<double>* lasting_sag)
    {
        const Member& member = members_[copy];
        std::vector<kernel::BeamLoad> loads;
        double total = 0, lever = 0;
        for (const CopyLoad& load : on[copy]) {
            loads.push_back({load.from, load.to, load.force});
            total += load.force;
            lever += load.force * load.across;
        }
        const kernel::BeamResponse response = member.beam->solve(loads);
        const double across = total != 0 ? lever / total : 0;
        const auto& bearings = statics_.path.bearings[copy];
        for (std::size_t s = 0; s < member.stations.size(); ++s) {
            const std::vector<double> shares = shares_at(member.stations[s], bearings, across);
            for (std::size_t k = 0; k < shares.size(); ++k)
                if (shares[k] != 0) hand_down(copy, index, bearings[member.stations[s].bearings[k].first], response.reactions[s] * shares[k], on);
        }
        const double sag = record(copy, index, total, response, lasting_sag ? 0 : lasting_[copy]);
        if (lasting_sag) (*lasting_sag)[copy] = sag;
    }

    double record(std::size_t copy, std::size_t index, double total, const kernel::BeamResponse& response, double lasting)
    {
        const auto& stretches = statics_.stretches[copy];
        const auto& supports = members_[copy].beam->supports();
        const double lo = piece_.copies[copy].box.lo[index_of(piece_.part_of(copy).grain)];
        MemberResult r;
        r.copy = copy;
        r.load_case = index;
        r.load = total;
        double worst_sag = -1, worst_notch = 0;
        for (std::size_t k = 0; k < response.at.size(); ++k) {
            // The two ends of an element look into it, so that the section on its own side of a notch's corner counts.
            const double inwards = k % 2 == 0 ? 1e-5 : -1e-5;
            const NetStretch& s = stretch_at(stretches, response.at[k] + inwards);
            const double stress = std::abs(response.moment[k]) * (s.depth / 2) / s.inertia;
            if (stress > r.stress) {
                r.stress = stress;
                r.moment = response.moment[k];
                r.stress_at = response.at[k] - lo;
                r.span = span_about(supports, response.at[k]);
                r.depth = s.depth;
                r.breadth = s.breadth;
                r.tension_at_notch = response.moment[k] > 0 ? s.bottom_loss > 0 : s.top_loss > 0;
            }
            r.shear = std::max(r.shear, std::abs(response.shear[k]));
            r.shear_stress = std::max(r.shear_stress, 1.5 * std::abs(response.shear[k]) / (s.breadth * s.depth));
            const double span = span_about(supports, response.at[k]);
            if (span > 0 && std::abs(response.sag[k]) / span > worst_sag) {
                worst_sag = std::abs(response.sag[k]) / span;
                r.sag = std::abs(response.sag[k]);
                r.sag_span = span;
            }
            note_notch(r, s, response, k, supports, worst_notch);
        }
        r.lasting_sag = std::min(lasting, r.sag);
        statics_.members.push_back(r);
        return r.sag;
    }

    void note_notch(MemberResult& r, const NetStretch& s, const kernel::BeamResponse& response, std::size_t k, const std::vector<double>& supports, double& worst) const
    {
        const double moment = response.moment[k], loss = moment > 0 ? s.bottom_loss : s.top_loss;
        if (loss <= 0) return;
        const double weight = std::abs(moment) * 6 / (s.breadth * s.depth * s.depth) + std::abs(response.shear[k]) * 1.5 / (s.breadth * s.depth);
        if (weight <= worst) return;
        worst = weight;
        r.notch_moment = std::abs(moment);
        r.notch_shear = std::abs(response.shear[k]);
        r.notch_left = s.depth;
        r.notch_whole = s.depth + loss;
        r.notch_breadth = s.breadth;
        r.notch_at = response.at[k];
        const double span = supports.back() - supports.front(), from = response.at[k] - supports.front();
        r.notch_near_end = span <= 0 || from < r.notch_whole || span - from < r.notch_whole;
        r.notch_in_middle_third = span > 0 && from > span / 3 && from < 2 * span / 3;
    }

    const Piece& piece_;
    const std::vector<Contact>& contacts_;
    Statics& statics_;
    const std::vector<BendingStiffness>& stiffness_;
    std::vector<Member> members_;

public:
    std::vector<double> lasting_; ///< sag of each copy under what stays
};

} // namespace

Statics solve_statics(const Piece& piece, const Facts& facts, const std::vector<Contact>& contacts, const std::vector<std::vector<Cut>>& cuts, const std::vector<double>& masses, const std::vector<BendingStiffness>& stiffness)
{
    Statics statics;
    statics.path = load_path_of(piece, contacts);
    statics.cases = load_cases_of(piece, facts, masses);
    statics.is_beam.assign(piece.copies.size(), false);
    statics.stretches.resize(piece.copies.size());
    statics.on_floor.assign(statics.cases.cases.size(), 0.0);
    for (std::size_t i = 0; i < piece.copies.size(); ++i)
        if (piece.part_of(i).grain != Axis::z) statics.stretches[i] = net_stretches(facts, piece.part_of(i), piece.copies[i], cuts[i]);
    if (statics.cases.cases.empty()) return statics;
    Solver solver(piece, contacts, statics, stiffness);
    solver.lasting_.assign(piece.copies.size(), 0.0);
    std::vector<double> lasting(piece.copies.size(), 0.0);
    solver.run(0, true, &lasting); // the first case is the own weight; its sag is what stays of every other
    solver.lasting_ = lasting;
    for (MemberResult& r : statics.members) r.lasting_sag = r.sag;
    for (std::size_t i = 1; i < statics.cases.cases.size(); ++i) solver.run(i, false, nullptr);
    return statics;
}

} // namespace jointwright
