// let-ins: what one joint sets side by side must fit beside each other.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "judging/joints/bore_row_findings.hpp"

using namespace checked;

namespace {

/// A rail 70 x 22 mm into the side of a post 60 x 45; what joins them is given.
std::vector<Finding> rail_in_post(const std::string& kind, const std::string& more)
{
    const auto bench =
        bench_of(design({head_text({}), wood_text("white oak"), part_text("post", {400, 60, 45}, "z", "y", "[0, 0, 0]"),
                         part_text("rail", {500, 70, 22}, "x", "y", "[60, 9, 250]"),
                         joint_text("rail", "post", kind, kind == "screws" ? "" : "PVA", more)}));
    return run_check("let-ins", bench->prepared);
}

std::string dowels(int count, double diameter)
{
    return fmt::format("dowels = {{ count = {}, diameter = {}, length = 40 }}", count, diameter);
}

Finding of_row(const std::vector<Finding>& findings) { return finding_of(findings, "let-ins", "rail / post"); }

bool told(const std::vector<Finding>& findings)
{
    return std::any_of(findings.begin(), findings.end(), [](const Finding& f) { return f.subject == "rail / post"; });
}

} // namespace

TEST_CASE("Dowels that stand nearer than they are thick fail", "[let-ins]")
{
    // Five share the 70 mm of the rail: 14 mm from middle to middle, and 16 thick: -2 mm. 70 / (16 + 8) = 2 fit.
    const Finding f = of_row(rail_in_post("dowel", dowels(5, 16)));
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(value_of(f, "wood_between"), WithinAbs(-0.002, 1e-9));
    CHECK_THAT(f.headline, ContainsSubstring("do not fit beside each other: 14 mm from middle to middle, 16 mm thick"));
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("at most 2 of them"));
    CHECK(of_row(rail_in_post("dowel", dowels(12, 12))).verdict == Verdict::fail);
    CHECK(of_row(rail_in_post("dowel", dowels(5, 14))).verdict == Verdict::fail); // they just touch
}

TEST_CASE("Dowels with thin wood between them warn; those well apart pass", "[let-ins]")
{
    // Four share 70 mm: 17.5 from middle to middle; 12 thick leaves 5.5 of 6 wanted, 10 thick 7.5 of 5.
    const Finding thin = of_row(rail_in_post("dowel", dowels(4, 12)));
    CHECK(thin.verdict == Verdict::warn);
    CHECK_THAT(value_of(thin, "wood_between"), WithinAbs(0.0055, 1e-9));
    CHECK_THAT(value_of(thin, "wood_wanted"), WithinAbs(0.006, 1e-9));
    CHECK_FALSE(told(rail_in_post("dowel", dowels(4, 10))));
    CHECK_FALSE(told(rail_in_post("dowel", dowels(1, 10))));
}

TEST_CASE("An inset draws a row together", "[let-ins]")
{
    // Three between 28 mm from either edge: 14 / 2 = 7 mm from middle to middle, 10 thick.
    const std::string inset = "dowels = { count = 3, diameter = 10, length = 40, inset = 28 }";
    const Finding f = of_row(rail_in_post("dowel", inset));
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(value_of(f, "pitch"), WithinAbs(0.007, 1e-9));
}

TEST_CASE("Thirty screws in the breadth of one rail fail, three pass", "[let-ins]")
{
    // 70 / 30 = 2.33 mm from middle to middle, 5 thick.
    const auto screws = [](int count) { return fmt::format("screws = {{ count = {}, diameter = 5, length = 60 }}", count); };
    const Finding f = of_row(rail_in_post("screws", screws(30)));
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline, ContainsSubstring("The 30 screws between rail and post do not fit"));
    CHECK_FALSE(told(rail_in_post("screws", screws(3))));
}

TEST_CASE("Pegs share the width of their tenon", "[let-ins]")
{
    // Four of 12 mm across a tenon 50 wide: 12.5 from middle to middle leaves 0.5 of the 6 wanted; two of 10 leave 15.
    const auto pegged = [](int count, double diameter) {
        return fmt::format("tenon = {{ length = 30, width = 50, thickness = 8 }}\npegs = {{ count = {}, diameter = {} }}", count,
                           diameter);
    };
    const Finding thin = of_row(rail_in_post("tenon", pegged(4, 12)));
    CHECK(thin.verdict == Verdict::warn);
    CHECK_THAT(thin.headline, ContainsSubstring("The 4 pegs"));
    CHECK_FALSE(told(rail_in_post("tenon", pegged(2, 10))));
}

TEST_CASE("More in the same row is never better, and thicker is never better", "[let-ins]")
{
    const auto rank = [](int count, double diameter) {
        const auto findings = rail_in_post("dowel", dowels(count, diameter));
        return told(findings) ? static_cast<int>(of_row(findings).verdict) : 0;
    };
    for (const double diameter : {6.0, 9.0, 13.0})
        for (int count = 2; count < 9; ++count) {
            CAPTURE(diameter, count);
            CHECK(rank(count, diameter) <= rank(count + 1, diameter));
            CHECK(rank(count, diameter) <= rank(count, diameter + 1.5));
        }
}
