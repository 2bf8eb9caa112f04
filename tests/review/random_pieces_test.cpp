// Random pieces, without symmetry of sizes and woods: every copy is in balance in every case, and nothing that is made worse is judged better.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "judging/finding_tools.hpp"
#include "mechanics/structure/structure.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <set>

using namespace checked;

namespace {

/// A bench with slats across two rails that are tenoned into four legs, of two woods. Whole or half millimetres throughout.
struct RandomBench {
    double span = 900, deep = 340, leg = 45, rail_deep = 70, rail_thick = 24, end_deep = 60, slat_wide = 60, slat_thick = 20,
           tenon = 28, sitter = 100;
    int slats = 7;
    std::string frame_wood = "white oak", slat_wood = "black cherry", joint_of_slats = "screws";

    std::string text() const
    {
        const double length = span + 2 * leg, top = 430, inset = (leg - rail_thick) / 2;
        std::string slat_joint =
            joint_of_slats == "screws"
                ? joint_text("slat", "rail", "screws", "",
                             fmt::format("screws = {{ diameter = 4, length = {}, count = 1 }}", slat_thick + 26))
                : joint_text("slat", "rail", "face", "PVA");
        std::string slat = part_text("slat", {deep + 2 * leg, slat_wide, slat_thick}, "y", "z", "[10, 0, 430]",
                                     fmt::format("repeat = {{ count = {}, along = \"x\", to = {} }}", slats, length - 10));
        slat.replace(slat.find("\"stock\""), 7, "\"other\"");
        return design({
            head_text({.name = "Bench",
                       .use = "seat",
                       .carries = {"slat"},
                       .more = fmt::format("size = [{}, {}, {}]", length, deep + 2 * leg, top + slat_thick)}),
            wood_text(frame_wood),
            fmt::format("[[wood]]\nid = \"other\"\nspecies = \"{}\"\nrings = \"flat\"\n", slat_wood),
            part_text("leg", {top, leg, leg}, "z", "y", "[0, 0, 0]", "mirror = [\"x\", \"y\"]"),
            part_text("rail", {span, rail_deep, rail_thick}, "x", "y",
                      fmt::format("{{ left = {}, front = {}, top = {} }}", leg, inset, top), "mirror = [\"y\"]"),
            part_text("end rail", {deep, end_deep, rail_thick}, "y", "x",
                      fmt::format("{{ left = {}, front = {}, top = {} }}", inset, leg, top - 8), "mirror = [\"x\"]"),
            slat,
            joint_text("rail", "leg", "tenon", "PVA",
                       fmt::format("tenon = {{ length = {}, width = {}, thickness = 8, mitred = true }}", tenon, rail_deep - 20)),
            joint_text("end rail", "leg", "tenon", "PVA",
                       fmt::format("tenon = {{ length = {}, width = {}, thickness = 8, mitred = true }}", tenon, end_deep - 20)),
            slat_joint,
            fmt::format("[limits]\nsitter = \"{} kg\"\n", sitter),
        });
    }
};

RandomBench bench_number(unsigned seed)
{
    std::mt19937 random(seed);
    const auto between = [&](int lo, int hi) { return std::uniform_int_distribution<int>(lo, hi)(random); };
    const char* woods[] = {"white oak", "red oak", "black cherry", "sugar maple", "Norway spruce", "European beech"};
    RandomBench b;
    b.span = between(500, 1300);
    b.deep = between(240, 380);
    b.leg = between(42, 60);
    b.rail_deep = between(55, 95);
    b.rail_thick = between(20, 28);
    b.end_deep = between(50, 80);
    b.slat_wide = between(45, 70);
    b.slat_thick = between(14, 24);
    b.slats = between(4, 8);
    b.tenon = between(18, 24);
    b.frame_wood = woods[between(0, 5)];
    b.slat_wood = woods[between(0, 5)];
    b.joint_of_slats = between(0, 1) == 0 ? "screws" : "face";
    return b;
}

const std::set<std::string> kMechanics{"sag",  "bending", "shear", "joint-capacity", "glue-line", "fastener",
                                       "rack", "stands",  "leg",   "bearing",        "notch"};

struct Judged {
    Verdict worst = Verdict::pass;
    std::map<std::string, double> use; ///< by check and subject, and by check
};

Judged judged(const std::string& text)
{
    Judged all;
    for (const Finding& f : content_of(text).findings) {
        if (kMechanics.count(f.check) == 0) continue;
        if (severity(f.verdict) > severity(all.worst)) all.worst = f.verdict;
        if (!f.utilisation) continue;
        all.use[f.check + " of " + f.subject] = *f.utilisation;
        double& of_check = all.use[f.check]; // of the worst subject
        of_check = std::max(of_check, *f.utilisation);
    }
    return all;
}

/// A change for the worse, and the uses that it must not lessen.
struct Worse {
    const char* what;
    void (*make)(RandomBench&);
    std::vector<const char*> of;
};

const Worse kWorse[] = {
    {"a heavier sitter", [](RandomBench& b) { b.sitter = 140; }, {"sag of rail", "sag of slat"}},
    {"a thinner slat", [](RandomBench& b) { b.slat_thick *= 0.8; }, {"bending of slat", "sag of slat"}},
    {"a shallower rail", [](RandomBench& b) { b.rail_deep *= 0.85; }, {"bending of rail", "sag of rail"}},
    {"a longer span", [](RandomBench& b) { b.span *= 1.15; }, {"sag of rail"}},
    {"a weaker wood of the slats",
     [](RandomBench& b) { b.slat_wood = "eastern white pine"; },
     {"bending of slat", "sag of slat"}},
    {"shorter tenons", [](RandomBench& b) { b.tenon *= 0.7; }, {"joint-capacity"}},
};

} // namespace

TEST_CASE("In random benches nothing that is made worse is judged better", "[random][property]")
{
    const unsigned seed = GENERATE(range(1u, 13u));
    const RandomBench drawn = bench_number(seed);
    CAPTURE(seed, drawn.text());
    const Judged before = judged(drawn.text());
    REQUIRE(before.use.count("bending of slat") == 1);
    for (const Worse& worse : kWorse) {
        CAPTURE(worse.what);
        RandomBench other = drawn;
        worse.make(other);
        const Judged after = judged(other.text());
        CHECK(severity(after.worst) >= severity(before.worst));
        for (const char* of : worse.of) {
            CAPTURE(of);
            if (before.use.count(of) == 0) continue;
            REQUIRE(after.use.count(of) == 1);
            // What is weaker is softer too, and hands a little to its neighbours.
            CHECK(after.use.at(of) >= before.use.at(of) * (1 - 5e-3));
        }
    }
}

TEST_CASE("In random benches every copy is in balance in every case", "[random][property][identity]")
{
    const unsigned seed = GENERATE(range(20u, 32u));
    CAPTURE(seed);
    const auto bench = bench_of(bench_number(seed).text());
    const Statics& statics = bench->prepared.statics;
    REQUIRE(statics.frame);
    REQUIRE(statics.loose.empty());
    const Structure& frame = *statics.frame;
    std::vector<std::vector<CopyLoad>> cases;
    for (const LoadCase& c : statics.cases.cases) {
        cases.push_back(statics.cases.lasting);
        cases.back().insert(cases.back().end(), c.loads.begin(), c.loads.end());
    }
    const auto solved = frame.solve(cases);
    for (std::size_t k = 0; k < cases.size(); ++k) {
        if (!solved[k].settled) continue;
        CAPTURE(statics.cases.cases[k].name);
        std::vector<kernel::Vec3> rest(bench->piece.copies.size(), kernel::Vec3::Zero());
        double size = 0;
        for (const CopyLoad& load : cases[k]) {
            rest[load.copy] += load.force * kernel::Vec3(load.direction[0], load.direction[1], load.direction[2]);
            size += std::abs(load.force);
        }
        for (std::size_t c = 0; c < frame.contacts().size(); ++c) {
            const kernel::Vec3 force = frame.contact_force(c, solved[k]).force; // from the first to the second
            rest[frame.contacts()[c].first] -= force;
            rest[frame.contacts()[c].second] += force;
        }
        for (const Foot& foot : frame.feet())
            rest[foot.copy] -= frame.foot_force(foot, solved[k]) + frame.frame().grip_force(foot.grip, solved[k].movement);
        for (const kernel::Vec3& r : rest) CHECK(r.norm() < 1e-6 * size);
    }
}

TEST_CASE("In random bookcases more play, longer shelves and more books are never judged better", "[random][property]")
{
    struct Case {
        double wide, deep, tall, thick, clearance, books;
        std::string text() const
        {
            std::string shelves =
                part_text("shelf", {wide - 28, deep, thick}, "x", "z", "{ left = 14, front = 0, bottom = 90 }",
                          fmt::format("copies = [{{ at = {{ left = 14, front = 0, bottom = {} }} }}]", tall - 40 - thick));
            shelves.replace(shelves.find("\"stock\""), 7, "\"other\"");
            return design({
                head_text({.name = "Case", .use = "shelf", .carries = {"shelf"}}),
                wood_text("red oak"),
                "[[wood]]\nid = \"other\"\nspecies = \"eastern white pine\"\nrings = \"flat\"\n",
                part_text("side", {tall, deep, 22}, "z", "x", "[0, 0, 0]",
                          fmt::format("copies = [{{ at = {{ right = {}, front = 0, bottom = 0 }} }}]", wide)),
                shelves,
                joint_text("shelf", "side", "housing", "", fmt::format("clearance = {}", clearance)),
                fmt::format("[limits]\nshelf_load = \"{} N/m\"\n", books),
            });
        }
    };
    const unsigned seed = GENERATE(range(40u, 48u));
    std::mt19937 random(seed);
    const auto between = [&](int lo, int hi) { return std::uniform_int_distribution<int>(lo, hi)(random); };
    Case drawn{};
    drawn.wide = between(500, 1000);
    drawn.deep = between(200, 320);
    drawn.tall = between(600, 1200);
    drawn.thick = between(16, 24);
    drawn.clearance = 0.05 * between(0, 4);
    drawn.books = between(150, 400);
    CAPTURE(seed, drawn.text());
    const Judged before = judged(drawn.text());
    const auto changed = [&](auto&& make) {
        Case other = drawn;
        make(other);
        return judged(other.text());
    };
    const Judged loose = changed([](Case&c) { c.clearance += 0.3; }), longer = changed([](Case&c) { c.wide *= 1.1; }),
                 heavy = changed([](Case&c) { c.books *= 1.3; }), thin = changed([](Case&c) { c.thick *= 0.85; });
    for (const Judged* after : {&loose, &longer, &heavy, &thin}) CHECK(severity(after->worst) >= severity(before.worst));
    REQUIRE(before.use.count("rack") == 1);
    if (loose.use.count("rack") == 1) CHECK(loose.use.at("rack") > before.use.at("rack"));
    for (const Judged* after : {&longer, &heavy, &thin}) CHECK(after->use.at("sag of shelf") > before.use.at("sag of shelf"));
}
