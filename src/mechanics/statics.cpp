#include "mechanics/statics.hpp"

#include "mechanics/beam_kernel.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace jointwright {

namespace {

constexpr double kSameStation = 0.005; // m: bearings nearer than this, or than the part is deep, are one support
constexpr double kLongBearing = 0.3;   // share of the part's length from which a bearing is more than one support
constexpr int kLongBearingPoints = 5;

/// One bearing, or a stretch of a long one, along a part.
struct Rest {
    std::size_t bearing = 0; ///< index into the part's bearings
    double from = 0, to = 0;
};

/// Rests at one place along a part: one support.
struct Station {
    double at = 0;
    std::vector<Rest> rests;
};

/// A lying part between its supports.
struct Member {
    std::size_t copy = 0;
    std::vector<Station> stations;
    std::optional<kernel::Beam> beam;
};

/// Rests that stand together are one support at their middle; a long row of them is two, at its ends.
void add_group(std::vector<Station>& stations, const std::vector<std::pair<double, Rest>>& rests, std::size_t first,
               std::size_t last, double same)
{
    const double from = rests[first].first, to = rests[last].first, middle = (from + to) / 2;
    Station low{middle, {}}, high{to, {}};
    const bool row = to - from > 2 * same + kTouch;
    if (row) low.at = from;
    for (std::size_t i = first; i <= last; ++i) {
        const double at = rests[i].first;
        if (!row || at < middle + kSameStation) low.rests.push_back(rests[i].second);
        if (row && at > middle - kSameStation) high.rests.push_back(rests[i].second);
    }
    stations.push_back(std::move(low));
    if (row) stations.push_back(std::move(high));
}

/// Supports of a part. Two rests nearer than the part is deep would lever against each other where wood only gives: they are one.
/// @param without_long  long bearings do not hold the part: they run under one edge only
std::vector<Station> stations_of(const std::vector<Bearing>& bearings, double length, double depth, bool without_long)
{
    std::vector<std::pair<double, Rest>> rests;
    const double same = std::max(kSameStation, depth);
    const auto put = [&](double at, Rest rest) { rests.emplace_back(at, rest); };
    for (std::size_t i = 0; i < bearings.size(); ++i) {
        const Bearing& b = bearings[i];
        if (b.to - b.from < kLongBearing * length - kTouch) {
            put((b.from + b.to) / 2, {i, b.from, b.to});
            continue;
        }
        if (without_long) continue;
        const int points = std::clamp(static_cast<int>((b.to - b.from + kTouch) / same) + 1, 2, kLongBearingPoints);
        const double step = (b.to - b.from) / (points - 1);
        for (int k = 0; k < points; ++k) {
            const double at = b.from + step * k;
            put(at, {i, std::max(b.from, at - step / 2), std::min(b.to, at + step / 2)});
        }
    }
    std::stable_sort(rests.begin(), rests.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    // Rests with less than `same` between them stand together, from whichever end they are counted.
    std::vector<Station> stations;
    for (std::size_t first = 0; first < rests.size();) {
        std::size_t last = first;
        while (last + 1 < rests.size() && rests[last + 1].first - rests[last].first < same + kTouch) ++last;
        add_group(stations, rests, first, last, same);
        first = last + 1;
    }
    return stations;
}

/// Shares of a reaction among the bearings of a station: by the lever between those on either side of the load, else evenly.
std::vector<double> shares_at(const Station& station, const std::vector<Bearing>& bearings, double load_across)
{
    const std::size_t n = station.rests.size();
    std::vector<double> shares(n, 1.0 / static_cast<double>(n));
    if (n < 2) return shares;
    std::size_t below = n, above = n;
    for (std::size_t k = 0; k < n; ++k) {
        const double at = bearings[station.rests[k].bearing].across;
        if (at <= load_across + kTouch && (below == n || at > bearings[station.rests[below].bearing].across)) below = k;
        if (at > load_across + kTouch && (above == n || at < bearings[station.rests[above].bearing].across)) above = k;
    }
    std::fill(shares.begin(), shares.end(), 0.0);
    // Bearings side by side at one place across share alike.
    const auto give = [&](std::size_t to, double share) {
        const double at = bearings[station.rests[to].bearing].across;
        std::vector<std::size_t> alike;
        for (std::size_t k = 0; k < n; ++k)
            if (std::abs(bearings[station.rests[k].bearing].across - at) < kSameStation) alike.push_back(k);
        for (const std::size_t k : alike) shares[k] += share / static_cast<double>(alike.size());
    };
    // Where the load lies outside all bearings the nearest takes it; the lift of the far one is left to the whole-frame solution.
    const bool outside = below == n || above == n;
    const double a = outside ? 0 : bearings[station.rests[below].bearing].across,
                 b = outside ? 0 : bearings[station.rests[above].bearing].across;
    const double t = outside ? (below == n ? 1 : 0) : std::clamp((load_across - a) / (b - a), 0.0, 1.0);
    if (t < 1) give(below, 1 - t);
    if (t > 0) give(above, t);
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
    constexpr double on_support = 1e-6;
    if (at < supports.front() - on_support) return 2 * (supports.front() - at);
    if (at > supports.back() + on_support) return 2 * (at - supports.back());
    for (std::size_t i = 0; i + 1 < supports.size(); ++i)
        if (at <= supports[i + 1] + on_support) return supports[i + 1] - supports[i];
    return 0;
}

bool beyond(const std::vector<double>& supports, double at) { return at < supports.front() || at > supports.back(); }

class Solver {
public:
    Solver(const Piece& piece, const std::vector<Contact>& contacts, Statics& statics,
           const std::vector<BendingStiffness>& stiffness)
        : piece_(piece), contacts_(contacts), statics_(statics), stiffness_(stiffness)
    {
        members_.resize(piece.copies.size());
        lasting_.resize(piece.copies.size());
        lasting_load_.assign(piece.copies.size(), 0.0);
        lasting_sag_.assign(piece.copies.size(), 0.0);
        lasting_force_.assign(contacts.size(), 0.0);
        for (std::size_t i = 0; i < piece.copies.size(); ++i) prepare(i);
    }

    /// The loads that stay: the first case, and part of every other.
    void run_lasting()
    {
        statics_.on_floor[0] = run(0, statics_.cases.lasting);
        for (const BearingForce& force : statics_.forces) lasting_force_[force.contact] += force.force;
        for (MemberResult& r : statics_.members) {
            r.lasting_sag = r.most_sag;
            lasting_sag_[r.copy] = r.most_sag;
        }
    }

    /// Another case: only its own loads are worked out; what stays is laid on top, since all is linear.
    void run_case(std::size_t index)
    {
        statics_.on_floor[index] = statics_.on_floor[0] + run(index, statics_.cases.cases[index].loads);
    }

private:
    /// Hands loads down from part to part; returns what reaches the floor [N].
    double run(std::size_t index, const std::vector<CopyLoad>& loads)
    {
        std::vector<std::vector<CopyLoad>> on(piece_.copies.size());
        for (const CopyLoad& load : loads) on[load.copy].push_back(load);
        double floor = 0;
        for (const std::size_t copy : statics_.path.order) {
            if (on[copy].empty()) continue;
            if (statics_.path.bearings[copy].empty()) {
                for (const CopyLoad& load : on[copy]) floor += load.force;
                continue;
            }
            if (members_[copy].beam)
                bend(copy, index, on);
            else
                pass_down(copy, index, on);
        }
        return floor;
    }

    void prepare(std::size_t i)
    {
        const Part& part = piece_.part_of(i);
        const Copy& copy = piece_.copies[i];
        if (part.grain == Axis::z || statics_.path.bearings[i].empty() || stiffness_[i].modulus <= 0) return;
        const double lo = copy.box.lo[index_of(part.grain)], hi = copy.box.hi[index_of(part.grain)];
        Member& member = members_[i];
        member.copy = i;
        member.stations = stations_of(statics_.path.bearings[i], hi - lo, copy.box.size(Axis::z), one_edge_only(i, hi - lo));
        std::vector<kernel::BeamCell> cells;
        for (const NetStretch& s : statics_.stretches[i])
            cells.push_back({s.from, s.to, stiffness_[i].modulus * s.inertia, stiffness_[i].shear_modulus * 5.0 / 6 * s.area});
        std::vector<double> supports;
        for (const Station& s : member.stations) supports.push_back(s.at);
        member.beam.emplace(cells, supports);
        statics_.is_beam[i] = true;
    }

    /// True when long bearings run under one edge of a part only and others hold it at its ends: the free edge bends as if they were not there.
    bool one_edge_only(std::size_t i, double length) const
    {
        const auto& bearings = statics_.path.bearings[i];
        const Part& part = piece_.part_of(i);
        const Axis across = part.grain == Axis::x ? Axis::y : Axis::x;
        const Box& box = piece_.copies[i].box;
        bool before = false, beyond = false, any = false;
        std::vector<double> ends;
        for (const Bearing& b : bearings) {
            if (b.to - b.from < kLongBearing * length - kTouch) {
                ends.push_back((b.from + b.to) / 2);
                continue;
            }
            any = true;
            before = before || b.across < box.middle(across) + 0.1 * box.size(across);
            beyond = beyond || b.across > box.middle(across) - 0.1 * box.size(across);
        }
        if (!any || (before && beyond)) return false;
        if (ends.size() >= 2) {
            const auto [lowest, highest] = std::minmax_element(ends.begin(), ends.end());
            if (*highest - *lowest > 0.5 * length) return true;
        }
        // Nothing but the one edge holds it: it stands out across its grain, which these sums do not see.
        if (box.size(across) > 2 * box.size(Axis::z)) statics_.held_by_one_edge[i] = true;
        return false;
    }

    /// A load on a bearing part: over what the two parts share along the lower one's grain, and no more than the stretch that hands it down.
    CopyLoad handed(std::size_t upper, const Bearing& bearing, double force, double from, double to) const
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
        const std::size_t along = index_of(piece_.part_of(upper).grain);
        box.lo[along] = std::max(box.lo[along], from);
        box.hi[along] = std::max(box.lo[along], std::min(box.hi[along], to));
        return {bearing.below, box.lo[g], box.hi[g], force, (box.lo[a] + box.hi[a]) / 2};
    }

    void hand_down(std::size_t copy, std::size_t index, const Bearing& bearing, double force, double from, double to,
                   std::vector<std::vector<CopyLoad>>& on)
    {
        BearingForce* sum = nullptr; // stretches of one long bearing add up
        for (auto it = statics_.forces.rbegin(); it != statics_.forces.rend() && it->load_case == index && it->upper == copy;
             ++it)
            if (it->contact == bearing.contact) sum = &*it;
        if (sum)
            sum->force += force;
        else
            statics_.forces.push_back(
                {bearing.contact, copy, bearing.below, index, force + (index > 0 ? lasting_force_[bearing.contact] : 0.0)});
        on[bearing.below].push_back(handed(copy, bearing, force, from, to));
    }

    void pass_down(std::size_t copy, std::size_t index, std::vector<std::vector<CopyLoad>>& on)
    {
        double force = 0;
        for (const CopyLoad& load : on[copy]) force += load.force;
        const auto& bearings = statics_.path.bearings[copy];
        for (const Bearing& b : bearings)
            hand_down(copy, index, b, force / static_cast<double>(bearings.size()), b.from, b.to, on);
    }

    void bend(std::size_t copy, std::size_t index, std::vector<std::vector<CopyLoad>>& on)
    {
        const Member& member = members_[copy];
        std::vector<kernel::BeamLoad> loads;
        double total = 0, lever = 0;
        for (const CopyLoad& load : on[copy]) {
            loads.push_back({load.from, load.to, load.force});
            total += load.force;
            lever += load.force * load.across;
        }
        kernel::BeamResponse response = member.beam->solve(loads);
        const double across = total != 0 ? lever / total : 0;
        const auto& bearings = statics_.path.bearings[copy];
        for (std::size_t s = 0; s < member.stations.size(); ++s) {
            const std::vector<double> shares = shares_at(member.stations[s], bearings, across);
            for (std::size_t k = 0; k < shares.size(); ++k)
                if (const Rest& rest = member.stations[s].rests[k]; shares[k] != 0)
                    hand_down(copy, index, bearings[rest.bearing], response.reactions[s] * shares[k], rest.from, rest.to, on);
        }
        if (index == 0) {
            lasting_[copy] = response;
            lasting_load_[copy] = total;
        } else if (lasting_[copy]) {
            add(response, *lasting_[copy]);
            total += lasting_load_[copy];
        }
        record(copy, index, total, response);
    }

    static void add(kernel::BeamResponse& sum, const kernel::BeamResponse& other)
    {
        for (std::size_t k = 0; k < sum.at.size(); ++k) {
            sum.sag[k] += other.sag[k];
            sum.moment[k] += other.moment[k];
            sum.shear[k] += other.shear[k];
        }
    }

    void record(std::size_t copy, std::size_t index, double total, const kernel::BeamResponse& response)
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
            note_stress(r, s, response.moment[k], response.at[k], lo, supports);
            if (k % 2 == 0)
                if (const auto peak = peak_within(response, k)) note_stress(r, s, peak->second, peak->first, lo, supports);
            r.shear = std::max(r.shear, std::abs(response.shear[k]));
            r.shear_stress = std::max(r.shear_stress, 1.5 * std::abs(response.shear[k]) / s.area);
            // A free end that lifts while the span beside it sags is no sag of its own.
            const double span = span_about(supports, response.at[k]),
                         sag = beyond(supports, response.at[k]) ? response.sag[k] : std::abs(response.sag[k]);
            if (span > 0 && sag / span > worst_sag) {
                worst_sag = sag / span;
                r.sag = sag;
                r.sag_span = span;
            }
            if (sag > r.most_sag) {
                r.most_sag = sag;
                r.most_sag_span = span;
            }
            note_notch(r, s, response, k, supports, worst_notch);
        }
        r.lasting_sag = std::min(lasting_sag_[copy], r.most_sag);
        statics_.members.push_back(r);
    }

    static void note_stress(MemberResult& r, const NetStretch& s, double moment, double at, double lo,
                            const std::vector<double>& supports)
    {
        const double stress = std::abs(moment) * s.outer / s.inertia;
        if (stress <= r.stress) return;
        r.stress = stress;
        r.moment = moment;
        r.stress_at = at - lo;
        r.span = span_about(supports, at);
        r.depth = s.depth;
        r.breadth = s.breadth;
        r.tension_at_notch = moment > 0 ? s.bottom_loss > 0 : s.top_loss > 0;
    }

    /// Place and size of the largest moment within an element, where the shear changes sign there: where the tangents at its ends cross.
    /// Exact under a point load, a few parts in a thousand high under a spread one.
    static std::optional<std::pair<double, double>> peak_within(const kernel::BeamResponse& response, std::size_t k)
    {
        const double v0 = response.shear[k], v1 = response.shear[k + 1], m0 = response.moment[k], m1 = response.moment[k + 1];
        if (v0 * v1 >= 0) return std::nullopt;
        const double into = (m1 - m0 - v1 * (response.at[k + 1] - response.at[k])) / (v0 - v1);
        if (into <= 0 || into >= response.at[k + 1] - response.at[k]) return std::nullopt;
        return std::pair{response.at[k] + into, m0 + v0 * into};
    }

    void note_notch(MemberResult& r, const NetStretch& s, const kernel::BeamResponse& response, std::size_t k,
                    const std::vector<double>& supports, double& worst) const
    {
        const double moment = response.moment[k], loss = moment > 0 ? s.bottom_loss : s.top_loss;
        if (loss <= 0) return;
        const double weight =
            std::abs(moment) * 6 / (s.breadth * s.depth * s.depth) + std::abs(response.shear[k]) * 1.5 / (s.breadth * s.depth);
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
    // Under what stays: responses, loads and sags of each copy, forces of each contact.
    std::vector<std::optional<kernel::BeamResponse>> lasting_;
    std::vector<double> lasting_load_, lasting_sag_, lasting_force_;
};

} // namespace

Statics solve_statics(const Piece& piece, const Facts& facts, const std::vector<Contact>& contacts,
                      const std::vector<std::vector<Cut>>& cuts, const std::vector<double>& masses,
                      const std::vector<BendingStiffness>& stiffness)
{
    Statics statics;
    statics.path = load_path_of(piece, contacts);
    statics.cases = load_cases_of(piece, facts, masses);
    statics.is_beam.assign(piece.copies.size(), false);
    statics.held_by_one_edge.assign(piece.copies.size(), false);
    statics.stretches.resize(piece.copies.size());
    statics.on_floor.assign(statics.cases.cases.size(), 0.0);
    for (std::size_t i = 0; i < piece.copies.size(); ++i)
        if (piece.part_of(i).grain != Axis::z)
            statics.stretches[i] = net_stretches(facts, piece.part_of(i), piece.copies[i], cuts[i]);
    if (statics.cases.cases.empty()) return statics;
    Solver solver(piece, contacts, statics, stiffness);
    solver.run_lasting(); // the first case is the own weight and what else stays
    for (std::size_t i = 1; i < statics.cases.cases.size(); ++i) solver.run_case(i);
    return statics;
}

} // namespace jointwright
