#include "review/pictures/drawn_months.hpp"

#include "checks/registry.hpp"
#include "review/cut_list/cut_list.hpp"

#include <cmath>
#include <iterator>
#include <set>

namespace jointwright {

namespace {

constexpr std::size_t kMostCopies = 1000;
constexpr double kAsMade = 1e-9; // m: another copy was the worst in that month

/// The parts as they would be with two months in place of the driest and the dampest state.
void put_months_into(Prepared& prepared, double first_pct, double second_pct)
{
    for (PartState& state : prepared.parts) {
        state.driest = MoistureContent::percent(first_pct);
        state.dampest = MoistureContent::percent(second_pct);
        const MovementLaw* law = std::get_if<MovementLaw>(&state.movement);
        if (!law) continue;
        state.dry = board_strain(*law, state.rings, state.made, state.driest);
        state.damp = board_strain(*law, state.rings, state.made, state.dampest);
    }
}

std::vector<Finding> sizes_and_gaps(const Prepared& prepared)
{
    std::vector<Finding> all = run_check("seasonal-size", prepared);
    for (const char* check : {"slat-gap", "groove-room", "bind"}) {
        std::vector<Finding> more = run_check(check, prepared);
        all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
    }
    return all;
}

struct ThreeStates {
    double made = 0, first = 0, second = 0;
};

std::optional<ThreeStates> states_of(const Finding& finding)
{
    const std::string what = finding.check == "seasonal-size" ? "size" : "gap";
    const auto made = finding_value(finding, what + "_made"), first = finding_value(finding, what + "_driest"),
               second = finding_value(finding, what + "_dampest");
    if (!made || !first || !second) return std::nullopt;
    return ThreeStates{*made, *first, *second};
}

const Finding* alike(const std::vector<Finding>& findings, const MonthRow& row)
{
    for (const Finding& f : findings)
        if (f.check == row.check && f.subject == row.subject) return &f;
    return nullptr;
}

} // namespace

std::optional<DrawnMonths> drawn_months(const Prepared& prepared)
{
    if (prepared.piece->copies.size() > kMostCopies) return std::nullopt;
    const std::optional<RoomYear>& year = prepared.piece->room.year;
    if (!year) return std::nullopt;
    MonthlyMoisture moisture{};
    for (std::size_t m = 0; m < moisture.size(); ++m) moisture[m] = year->months[m].moisture.percent();
    DrawnMonths drawn{moisture, year->source, prepared.combination.words, {}};
    for (const Finding& f : sizes_and_gaps(prepared))
        if (const auto states = states_of(f)) drawn.rows.push_back({f.check, f.subject, states->made, {}});
    Prepared other = prepared;
    std::set<std::size_t> broken;
    for (std::size_t m = 0; m < 6; ++m) {
        put_months_into(other, drawn.moisture[m], drawn.moisture[m + 6]);
        const std::vector<Finding> findings = sizes_and_gaps(other);
        for (std::size_t r = 0; r < drawn.rows.size(); ++r) {
            MonthRow& row = drawn.rows[r];
            const Finding* f = alike(findings, row);
            const auto states = f ? states_of(*f) : std::nullopt;
            if (!states || std::abs(states->made - row.made) > kAsMade) {
                broken.insert(r);
                continue;
            }
            row.months[m] = states->first;
            row.months[m + 6] = states->second;
        }
    }
    for (auto r = broken.rbegin(); r != broken.rend(); ++r)
        drawn.rows.erase(drawn.rows.begin() + static_cast<std::ptrdiff_t>(*r));
    return drawn;
}

} // namespace jointwright
