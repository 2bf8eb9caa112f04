// tip: one governing ratio, held against hand sums.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "mechanics/loads/footing.hpp"

#include <algorithm>
#include <vector>

using namespace checked;

namespace {

constexpr double kG = 9.80665;

/// A case 600 wide, 450 deep, 900 high, open in front, on its two sides, with a shelf, and a top 40 mm in from the back.
std::string carcass(std::string_view use)
{
    const std::string dowels = "dowels = { diameter = 8, length = 40, count = 3 }";
    return design({head_text({.name = "Case", .use = std::string(use), .carries = {"top"}}), wood_text("white oak"),
                   part_text("side", {900, 450, 20}, "z", "x", "[0, 0, 0]", "copies = [ { at = [580, 0, 0] } ]"),
                   part_text("shelf", {560, 450, 20}, "x", "z", "[20, 0, 400]"),
                   part_text("top", {560, 410, 20}, "x", "z", "[20, 0, 880]"),
                   joint_text("shelf", "side", "dowel", "PVA", dowels), joint_text("top", "side", "dowel", "PVA", dowels)});
}

/// A drawer without its bottom, 556 × 420 × 150: front, two sides, back.
std::string drawer(int bottom)
{
    const auto at = [&](int x, int y) { return fmt::format("[{}, {}, {}]", x, y, bottom); };
    return design(
        {part_text("drawer front", {556, 150, 20}, "x", "y", at(22, 0)),
         part_text("drawer side", {400, 150, 12}, "y", "x", at(22, 20), fmt::format("copies = [ {{ at = {} }} ]", at(566, 20))),
         part_text("drawer back", {532, 150, 12}, "x", "y", at(34, 408)),
         joint_text("drawer side", "drawer front", "dowel", "PVA", "dowels = { diameter = 6, length = 30, count = 3 }"),
         joint_text("drawer back", "drawer side", "dowel", "PVA", "dowels = { diameter = 6, length = 30, count = 3 }")});
}

/// What turns the case about its front feet, y = 0: weights with their places from the front and their heights, the piece leaning.
struct HandSum {
    double lean = 0, over = 0, back = 0;
    void add(double newtons, double y, double z)
    {
        const double out = lean * z - y;
        (out > 0 ? over : back) += newtons * std::abs(out);
    }
    double ratio() const { return over / back; }
};

struct Weights {
    double side, shelf, top, front, drawer_side, drawer_back;
};
Weights weights_of(const Bench& bench)
{
    const auto n = [&](std::string_view name) { return bench.prepared.masses[bench.copy(name)] * kG; };
    return {n("side #1"), n("shelf"), n("top"), n("drawer front"), n("drawer side #1"), n("drawer back")};
}

void add_carcass(HandSum& sum, const Weights& w)
{
    sum.add(2 * w.side, 0.225, 0.450);
    sum.add(w.shelf, 0.225, 0.410);
    sum.add(w.top, 0.205, 0.890);
}

} // namespace

TEST_CASE("The utilisation of tip is its ratio over what is let pass, and so is the verdict", "[tip]")
{
    // A bench on two slabs; the farther its ends stand out the nearer it is to tipping.
    const auto bench_with = [](int in) {
        return finding_of(
            content_of(design({head_text({.name = "Bench", .use = "seat", .carries = {"seat"}}), wood_text("white oak"),
                               part_text("slab", {420, 300, 30}, "z", "x", fmt::format("[{}, 0, 0]", in),
                                         fmt::format("copies = [ {{ at = [{}, 0, 0] }} ]", 1370 - in)),
                               part_text("seat", {1400, 300, 40}, "x", "z", "[0, 0, 420]"),
                               joint_text("slab", "seat", "dowel", "PVA", "dowels = { diameter = 8, length = 40, count = 3 }")}))
                .findings,
            "tip");
    };
    bool passed = false, warned = false, failed = false;
    for (int in = 60; in <= 240; in += 10) {
        const Finding f = bench_with(in);
        const double ratio = value_of(f, "overturning_ratio");
        CHECK_THAT(*f.utilisation, WithinRel(ratio / 0.8, 1e-5)); // told to six digits
        CHECK(f.verdict == (ratio <= 0.8 ? Verdict::pass : ratio <= 1 ? Verdict::warn : Verdict::fail));
        CHECK_THAT(f.headline, ContainsSubstring(fmt::format("{:.0f} % of what it takes", ratio * 100)));
        passed = passed || f.verdict == Verdict::pass;
        warned = warned || f.verdict == Verdict::warn;
        failed = failed || f.verdict == Verdict::fail;
    }
    CHECK((passed && warned && failed));
}

TEST_CASE("A case with a drawer tips by the worst of child, drawer, carpet and pull", "[tip]")
{
    const std::string text = carcass("cabinet") + drawer(420);
    const auto bench = bench_of(text);
    const Weights w = weights_of(*bench);
    const double open = 0.667 * 0.420, lean = 0.0109 / 0.450;
    const double wood = 0.556 * 0.150 * 0.020 + 2 * 0.400 * 0.150 * 0.012 + 0.532 * 0.150 * 0.012;
    const double goods = 136 * (0.556 * 0.420 * 0.150 - wood) * kG;
    const double box = w.front + 2 * w.drawer_side + w.drawer_back;
    const double box_y = (w.front * 0.010 + 2 * w.drawer_side * 0.220 + w.drawer_back * 0.414) / box, box_z = 0.420 + 0.075;
    std::vector<double> ratios;
    for (const bool filled : {false, true}) {
        HandSum child{lean};
        add_carcass(child, w);
        child.add(box, box_y - open, box_z);
        if (filled) child.add(goods, 0.210 - open, 0.495);
        child.add(27.2 * kG, -open, 0.570);
        ratios.push_back(child.ratio());
    }
    for (const bool all_open : {false, true}) {
        HandSum pull;
        add_carcass(pull, w);
        pull.add(box, box_y - (all_open ? open : 0), box_z);
        if (all_open) pull.add(goods, 0.210 - open, 0.495);
        pull.over += 44.5 * 0.900;
        ratios.push_back(pull.ratio());
    }
    const double worst = *std::max_element(ratios.begin(), ratios.end());
    const Finding f = finding_of(content_of(text).findings, "tip");
    // The own weight of a group is one weight at its centre, and so are the two halves of the carcass here: all of it within the feet.
    CHECK_THAT(value_of(f, "overturning_ratio"), WithinRel(worst, 1e-6));
    CHECK(f.verdict == (worst > 1 ? Verdict::fail : Verdict::warn));
    CHECK_THAT(f.remedy.words(), ContainsSubstring("anchor"));
    // With the drawer shut for good the child would find nothing to stand on but the pull remains.
    CHECK(worst > ratios[2]);
}

TEST_CASE("A case without drawers and doors warns at most, and asks for an anchor", "[tip]")
{
    const Finding shelf = finding_of(content_of(carcass("shelf")).findings, "tip");
    CHECK(value_of(shelf, "overturning_ratio") > 0.8);
    CHECK(shelf.verdict == Verdict::warn);
    CHECK_FALSE(shelf.fails_from);
    CHECK_THAT(shelf.remedy.words(), ContainsSubstring("anchor it to the wall"));
    const Finding cabinet = finding_of(content_of(carcass("cabinet")).findings, "tip");
    CHECK(value_of(cabinet, "overturning_ratio") > value_of(shelf, "overturning_ratio"));
    CHECK(cabinet.verdict == Verdict::fail);
}

TEST_CASE("A drawer that hangs on nothing is asked about and holds nothing down", "[tip][stands]")
{
    const auto borne = bench_of(carcass("cabinet") + drawer(420)), floating = bench_of(carcass("cabinet") + drawer(423));
    const double drawn = floating->prepared.whole_mass() * kG;
    const Weights w = weights_of(*floating);
    const double box = w.front + 2 * w.drawer_side + w.drawer_back;
    const Footing footing = footing_of(floating->prepared);
    CHECK_THAT(footing.weight, WithinRel(drawn - box, 1e-9));
    CHECK_THAT(footing.unborne.down, WithinRel(box, 1e-9));
    CHECK_THAT(footing_of(borne->prepared).weight, WithinRel(drawn, 1e-9));
    const auto findings = content_of(floating->piece).findings;
    const Finding& asked = finding_of(findings, "stands", "drawer front");
    CHECK(asked.verdict == Verdict::cannot_tell);
    CHECK_THAT(asked.headline, ContainsSubstring("drawer front, drawer side and drawer back hold together, but hang on nothing"));
    CHECK_THAT(asked.remedy.words(), ContainsSubstring("hinge"));
    // Open, with what is in it, it lies before the feet and overturns either way.
    CHECK(value_of(finding_of(findings, "tip"), "overturning_ratio") >=
          (1 - 1e-9) * value_of(finding_of(content_of(borne->piece).findings, "tip"), "overturning_ratio"));
}

TEST_CASE("A door that is drawn standing before a case is no foot of it", "[tip][stands]")
{
    const std::string door =
        design({part_text("stile", {880, 60, 20}, "z", "y", "[0, -20, 0]", "copies = [ { at = [540, -20, 0] } ]"),
                part_text("rail", {480, 60, 20}, "x", "y", "[60, -20, 0]", "copies = [ { at = [60, -20, 820] } ]"),
                joint_text("rail", "stile", "tenon", "PVA", "tenon = { length = 30, width = 40, thickness = 7 }")});
    const auto bench = bench_of(carcass("cabinet") + door);
    const Footing footing = footing_of(bench->prepared);
    for (const PlanPoint& p : footing.line) CHECK(p[1] > -1e-9);
    const Finding f = finding_of(content_of(bench->piece).findings, "stands", "stile");
    CHECK(f.verdict == Verdict::cannot_tell);
    CHECK_THAT(f.headline, ContainsSubstring("How is it hung?"));
    // Hung, it is none of the floor's, and it opens.
    const auto hung = bench_of(carcass("shelf") + door + "[[joint]]\nbetween = [\"stile #1\", \"side #1\"]\nkind = \"hinge\"\n" +
                               "screws = { diameter = 4, length = 18, count = 3 }\n");
    CHECK(hung->piece.hangs(hung->copy("stile #2")));
    CHECK(count_of(content_of(hung->piece).findings, "stands") == 1);
    CHECK(finding_of(content_of(hung->piece).findings, "tip").verdict == Verdict::fail);
    // Its child stands 600 mm before the hinge, on a leaf that leans with the piece; the door itself swings out by half of that.
    const Finding tip = finding_of(content_of(hung->piece).findings, "tip");
    CHECK_THAT(*tip.where, ContainsSubstring("a child on stile"));
    CHECK_THAT(value_of(tip, "outside"), WithinAbs(0.600 - 0.010 + 0.020 + 0.0109 / 0.450 * 0.880, 1e-6));
}
