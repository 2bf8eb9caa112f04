#include "mechanics/loads/load_cases.hpp"

#include "measure/quantity.hpp"
#include "measure/write.hpp"
#include "mechanics/loads/hung_cases.hpp"
#include "mechanics/loads/placing.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace jointwright {

namespace {

void add_table_cases(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const Plan plan = joint_plan(piece, carried);
    const double patch = facts.number("table_patch").value;
    const Datum<double>& lean = facts.number("table_lean");
    const Datum<double>& proof = facts.number("table_proof");
    const Datum<double>& goods = facts.number("table_goods");
    if (piece.room.outdoors)
        cases.assumed.push_back("outdoors the table loads are those of EN 1730; the levels of EN 581-3 are not known here");
    add_case(cases, "goods spread over the top", DemandKind::service, LoadDuration::lasting, true,
             spread(piece, carried, plan, goods.value * kStandardGravity), goods.cite);
    const double mx = (plan.x0 + plan.x1) / 2, my = (plan.y0 + plan.y1) / 2, e = patch / 2;
    const std::tuple<double, double, const char*> places[] = {{mx, plan.y0 + e, "the middle of the front edge"},
                                                              {mx, plan.y1 - e, "the middle of the back edge"},
                                                              {plan.x0 + e, my, "the middle of the left edge"},
                                                              {plan.x1 - e, my, "the middle of the right edge"},
                                                              {mx, my, "the middle of the top"},
                                                              {plan.x0 + e, plan.y0 + e, "the front left corner"},
                                                              {plan.x1 - e, plan.y0 + e, "the front right corner"},
                                                              {plan.x0 + e, plan.y1 - e, "the back left corner"},
                                                              {plan.x1 - e, plan.y1 - e, "the back right corner"}};
    for (const auto& [x, y, words] : places) {
        const Plan at = patch_at(x, y, patch, patch);
        add_case(cases, fmt::format("a person leaning on {}", words), DemandKind::service, LoadDuration::short_term, true,
                 spread(piece, carried, at, lean.value), lean.cite);
        add_case(cases, fmt::format("proof load on {}", words), DemandKind::proof, LoadDuration::short_term, false,
                 spread(piece, carried, at, proof.value), proof.cite);
    }
}

void add_shelf_cases(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const Datum<double>& books = facts.number("shelf_load");
    const double per_length = piece.limits.shelf_load ? piece.limits.shelf_load->value() : books.value;
    Citation cite = books.cite;
    if (piece.limits.shelf_load) cite = {"the design's [limits] shelf_load", "", Provenance::retrieved, ""};
    std::vector<CopyLoad> all;
    for (const std::size_t i : carried) {
        const Lying lying(piece.part_of(i), piece.copies[i]);
        all.push_back(load_on_all(lying, i, per_length * (lying.to() - lying.from())));
    }
    add_case(cases, piece.use == Use::shelf ? "every shelf loaded" : "everything that carries loaded", DemandKind::service,
             LoadDuration::lasting, true, std::move(all), cite);
}

/// A stated load on the copies under it.
std::vector<CopyLoad> stated_loads(const Piece& piece, const StatedLoad& load)
{
    std::vector<CopyLoad> loads;
    for (std::size_t k = 0; k < load.copies.size(); ++k) {
        const std::size_t i = load.copies[k];
        const Lying lying(piece.part_of(i), piece.copies[i]);
        CopyLoad on{i, 0, 0, load.force.value() * load.shares[k], 0, 0, load.direction};
        if (load.patch) { // what of the patch lies on this copy
            const auto under = lying.under(patch_at(load.at[0], load.at[1], (*load.patch)[0], (*load.patch)[1]));
            if (!under) continue;
            on.from = under->from;
            on.to = under->to;
            on.across = under->across;
            on.breadth = under->breadth;
        } else {
            const Point drawn = lying.drawn(load.at);
            on.from = on.to = drawn[index_of(lying.grain())];
            on.across = drawn[index_of(lying.across())];
        }
        loads.push_back(on);
    }
    return loads;
}

/// Stated loads that stay act in every case.
void add_stated_lasting(LoadCases& cases, const Piece& piece)
{
    for (const StatedLoad& load : piece.loads) {
        if (!load.lasting) continue;
        const std::vector<CopyLoad> loads = stated_loads(piece, load);
        cases.lasting.insert(cases.lasting.end(), loads.begin(), loads.end());
        cases.cases.front().name = "its own weight and what stays on it";
        cases.cases.front().source = "mass of the parts; the design's [[load]]";
    }
}

void add_stated_cases(LoadCases& cases, const Piece& piece)
{
    std::vector<CopyLoad> together; // loads that come and go may all be there at once
    int passing = 0;
    for (const StatedLoad& load : piece.loads) {
        if (load.lasting) continue;
        std::vector<CopyLoad> loads = stated_loads(piece, load);
        together.insert(together.end(), loads.begin(), loads.end());
        ++passing;
        add_case(cases, load.name, DemandKind::service, LoadDuration::sitting, true, std::move(loads),
                 {"the design's [[load]]", load.name, Provenance::retrieved, ""});
    }
    if (passing > 1)
        add_case(cases, "all stated loads together", DemandKind::service, LoadDuration::sitting, true, std::move(together),
                 {"the design's [[load]]", "all of them", Provenance::retrieved, ""});
}

} // namespace

int seats_of(const Piece& piece, const Facts& facts)
{
    if (piece.limits.seats) return *piece.limits.seats;
    const auto carried = piece.carried_copies();
    if (carried.empty()) return 1;
    const Plan plan = joint_plan(piece, carried);
    const double length = std::max(plan.size(0), plan.size(1));
    return std::max(1, static_cast<int>(std::floor(length / facts.number("place_width").value + 1e-9)));
}

LoadCases load_cases_of(const Piece& piece, const Facts& facts, const std::vector<double>& masses)
{
    LoadCases cases;
    if (piece.use == Use::none && piece.loads.empty()) return cases;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const Lying lying(piece.part_of(i), piece.copies[i]);
        cases.lasting.push_back(load_on_all(lying, i, masses[i] * kStandardGravity));
    }
    LoadCase own;
    own.name = "its own weight";
    own.duration = LoadDuration::lasting;
    own.source = "mass of the parts";
    cases.cases.push_back(own);
    add_stated_lasting(cases, piece);
    const auto carried = piece.carried_copies();
    if (!carried.empty()) {
        if (piece.use == Use::seat) {
            add_seat_cases(cases, piece, facts, carried);
            add_seat_pushes(cases, piece, facts, carried);
            add_back_loads(cases, piece, facts, carried);
            add_lifts(cases, piece, facts, carried);
        }
        if (piece.use == Use::table) {
            add_table_cases(cases, piece, facts, carried);
            add_table_pushes(cases, piece, facts, carried);
            add_lifts(cases, piece, facts, carried);
        }
        if (piece.use == Use::shelf || piece.use == Use::cabinet) {
            add_shelf_cases(cases, piece, facts, carried);
            add_case_pushes(cases, piece, facts);
        }
    }
    add_hung_cases(cases, piece, facts);
    if (piece.use == Use::seat)
        cases.assumed.push_back(
            "people sit and stand on what `carries` names and lean on a back: nobody stands on a stretcher or "
            "leans on an arm; name such parts in `carries`, or state a [[load]] on them");
    if (piece.use == Use::seat && !piece.limits.seats) {
        const int n = seats_of(piece, facts);
        cases.assumed.push_back(
            fmt::format("{} sitting place{}: the carried length over 600 mm, rounded down, at least one", n, n == 1 ? "" : "s"));
    }
    add_stated_cases(cases, piece);
    return cases;
}

} // namespace jointwright
