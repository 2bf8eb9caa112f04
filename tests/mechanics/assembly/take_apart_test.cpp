// Which way parts come apart, and the cheapest order to put them together.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "mechanics/assembly/take_apart.hpp"

using namespace checked;

namespace {

constexpr Point kLeft{-1, 0, 0}, kRight{1, 0, 0}, kFront{0, -1, 0}, kBack{0, 1, 0}, kUp{0, 0, 1}, kDown{0, 0, -1};

/// The directions in which the first part of a contact can leave, in the letters l r f b u d.
std::string ways(const checked::Bench& bench, const char* a, const char* b)
{
    const Contact& contact = bench.contact(a, b);
    std::string out;
    const std::pair<char, Point> all[] = {{'l', kLeft}, {'r', kRight}, {'f', kFront}, {'b', kBack}, {'u', kUp}, {'d', kDown}};
    for (const auto& [letter, d] : all)
        if (can_leave(bench.piece, contact, d)) out += letter;
    return out;
}

} // namespace

TEST_CASE("A part leaves by the mouth of its joint and no other way", "[take-apart]")
{
    const auto bench = bench_of(built_in_design("boot-bench"));
    // Legs 1 and 2 stand at the front; a rail's tenon leaves its leg along the rail.
    CHECK(ways(*bench, "long rail #1", "leg #1") == "r");
    CHECK(ways(*bench, "side rail #1", "leg #1") == "b");
    // A glued slat lifts out of its housings; sliding would wipe the glue away.
    CHECK(ways(*bench, "slat #3", "long rail #1") == "u");
}

TEST_CASE("A sliding dovetail leaves lengthwise, whether glued or dry", "[take-apart]")
{
    const auto bench = bench_of(built_in_design("table-batten-glued-front"));
    CHECK(ways(*bench, "batten #1", "top") == "fb");
}

TEST_CASE("A dry panel leaves its groove, not through its walls, nor past the ends that stop it", "[take-apart]")
{
    const auto bench = bench_of(built_in_design("cabinet-door-damp-coast"));
    CHECK(ways(*bench, "panel", "stile #1") == "r");
}

TEST_CASE("A face that is glued lifts off; a dry one slides as well", "[take-apart]")
{
    const auto bench = bench_of(built_in_design("slats-2in-across-rail"));
    CHECK(ways(*bench, "slat #1", "long rail #1") == "u");
    const auto table = bench_of(built_in_design("cherry-top-on-buttons"));
    CHECK(ways(*table, "top", "long apron #1") == "lrfbu");
}

TEST_CASE("Putting together closes every glued joint once, and each group onto one that stands", "[take-apart]")
{
    for (const char* name : {"boot-bench", "window-seat-metric", "cabinet-door-damp-coast", "wide-shelf-bookcase"}) {
        CAPTURE(name);
        const auto bench = bench_of(built_in_design(name));
        std::vector<double> costs;
        double sum = 0;
        for (const Contact& c : bench->layout.contacts) {
            costs.push_back(c.joint && bench->piece.joints[*c.joint].glue ? 1.0 : 0.0);
            sum += costs.back();
        }
        const PutTogether plan = put_together(bench->piece, bench->layout.contacts, costs, 2);
        REQUIRE_FALSE(plan.groups.empty());
        CHECK(plan.groups.back().copies.size() == bench->piece.copies.size());
        CHECK_THAT(plan.groups.back().cost, WithinRel(sum, 1e-12));
        double closed = 0;
        for (std::size_t g = 0; g < plan.groups.size(); ++g) {
            CHECK_FALSE(plan.groups[g].locked);
            for (const ClosingStep& step : plan.groups[g].steps) {
                CHECK(step.group < g);
                CHECK(plan.groups[g].base < g);
                CHECK_THAT(step.cost, WithinAbs(static_cast<double>(step.contacts.size()), 1e-9));
                closed += step.cost;
            }
        }
        CHECK_THAT(closed, WithinRel(sum, 1e-12));
    }
}

TEST_CASE("No step of a table or a bench closes more than the two joints it must", "[take-apart]")
{
    for (const char* name : {"boot-bench", "cherry-top-on-buttons", "slats-2in-across-rail"}) {
        CAPTURE(name);
        const auto bench = bench_of(built_in_design(name));
        std::vector<double> costs;
        for (const Contact& c : bench->layout.contacts)
            costs.push_back(c.joint && bench->piece.joints[*c.joint].glue ? 1.0 : 0.0);
        double dearest = 0;
        for (const AssemblyGroup& group : put_together(bench->piece, bench->layout.contacts, costs, 0).groups)
            for (const ClosingStep& step : group.steps) dearest = std::max(dearest, step.cost);
        CHECK(dearest == 2);
    }
}
