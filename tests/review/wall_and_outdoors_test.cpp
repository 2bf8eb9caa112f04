// Planks on a wall, seats outdoors, pieces that fall, legs of woods known by own values.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "mechanics/structure/structure.hpp"

#include <cmath>

using namespace checked;

namespace {

/// A plank with its back edge to the wall, loaded along its front edge.
std::string wall_plank()
{
    return design({
        head_text({.name = "Wall plank", .use = "shelf", .carries = {"plank"}, .wall = {"plank"}}),
        wood_text("red oak"),
        part_text("plank", {900, 250, 25}, "x", "z", "[0, 0, 1000]"),
        load_text("row", "plank", 300, "[450, 10]", "patch = [900, 20]\nlasting = true"),
        "[limits]\nshelf_load = \"1 N/m\"\n",
    });
}

} // namespace

TEST_CASE("A plank screwed to the wall by its edge is a cantilever across its grain", "[sag][bending][wall]")
{
    const auto bench = bench_of(wall_plank());
    const Statics& statics = bench->prepared.statics;
    REQUIRE(statics.is_beam[bench->copy("plank")]);
    const MemberResult* lasting = nullptr;
    for (const MemberResult& m : statics.members)
        if (m.load_case == 0) lasting = &m;
    REQUIRE(lasting);
    // 300 N over 0.9 m, 240 mm out, and its own weight at 125 mm; across the grain E is some 1 GPa.
    const MemberStiffness& wood = statics.frame->stiffness()[bench->copy("plank")];
    const double weight = bench->prepared.masses[0] * kStandardGravity, out = 0.250, arm = 0.240;
    const double inertia = 0.900 * std::pow(0.025, 3) / 12, ei = wood.across * inertia;
    const double by_hand = 300 * arm * arm * (3 * out - arm) / (6 * ei) + weight * std::pow(out, 3) / (8 * ei) +
                           (300 * arm + weight * out / 2) / (wood.rolling * 5 / 6 * 0.900 * 0.025);
    // Held at places it gives more between them than at a built-in edge.
    CHECK(lasting->most_sag > 0.95 * by_hand);
    CHECK(lasting->most_sag < 1.6 * by_hand);
    CHECK_THAT(lasting->most_sag_span, WithinAbs(2 * out, 0.03));
    // 6 M/(b t²) at the wall.
    const double stress = 6 * (300 * arm + weight * out / 2) / (0.900 * 0.025 * 0.025);
    CHECK(lasting->across_stress > 0.6 * stress);
    CHECK(lasting->across_stress < 2.5 * stress);
    CHECK_THAT(lasting->load, WithinRel(300 + weight, 1e-6));
    const auto findings = content_of(wall_plank()).findings;
    CHECK(finding_of(findings, "sag", "plank").utilisation.has_value());
    CHECK(finding_of(findings, "bending", "plank").verdict !=
          Verdict::pass); // it leans for good on its strength across the grain
}

TEST_CASE("Seats outdoors take the loads of the outdoor test, one of them for half an hour", "[load-cases][outdoors]")
{
    const auto proof_of = [](const std::string& shelter, const std::string& limits = "") {
        std::string text = *testing::shared_facts().text("patterns/garden-bench.toml");
        const std::string old = "shelter = \"outdoors\"";
        const std::size_t at = text.find(old);
        REQUIRE(at != std::string::npos);
        text.replace(at, old.size(), "shelter = \"" + shelter + "\"");
        const std::size_t limits_at = text.find("[limits]\n");
        text.replace(limits_at, 9, "[limits]\n" + limits);
        const auto bench = bench_of(text);
        struct Found {
            double place = 0, stays = 0, share = 1;
            int seats = 0;
        } found;
        found.seats = seats_of(bench->piece, testing::shared_facts());
        for (const LoadCase& c : bench->prepared.statics.cases.cases) {
            if (c.name.find("standing on") != std::string::npos) found.place = std::max(found.place, c.total);
            if (c.name.find("30 minutes") == std::string::npos) continue;
            found.stays = c.total;
            found.share = c.strength_share;
        }
        return found;
    };
    const auto outdoors = proof_of("outdoors"), indoors = proof_of("not heated"),
               contract = proof_of("outdoors", "level = \"contract\"\n");
    CHECK_THAT(outdoors.place, WithinRel(1600.0, 1e-9));
    CHECK_THAT(outdoors.stays, WithinRel(1600.0 * outdoors.seats, 1e-9));
    CHECK_THAT(contract.place, WithinRel(2000.0, 1e-9));
    CHECK_THAT(indoors.place, WithinRel(1300.0, 1e-9));
    CHECK(indoors.stays == 0);
    // Madison curve, 18.3 + 108.4 t^−0.04635: half an hour over five minutes.
    const auto madison = [](double t) { return 18.3 + 108.4 * std::pow(t, -0.04635); };
    CHECK_THAT(outdoors.share, WithinAbs(madison(1800) / madison(300), 0.0005));
}

TEST_CASE("A piece whose seat hangs on nothing falls", "[stands]")
{
    const auto stool = [](int bottom, int second) {
        return design({
            head_text({.name = "Stool", .use = "seat", .carries = {"board"}}),
            wood_text("white oak", ""),
            part_text("leg", {400, 300, 40}, "z", "x", "[0, 0, 0]", "copies = [ { at = [360, 0, 0] } ]"),
            part_text("board", {400, 100, 40}, "x", "z", fmt::format("[0, 0, {}]", bottom),
                      fmt::format("copies = [ {{ at = [0, 150, {}] }} ]", second)),
        });
    };
    const auto falls = [](const std::string& text) {
        for (const Finding& f : content_of(text).findings)
            if (f.check == "stands" && f.headline.find("The piece falls") == 0) return f.verdict == Verdict::fail;
        return false;
    };
    CHECK(falls(stool(405, 405)));
    CHECK_FALSE(falls(stool(405, 400))); // one board of two floats: a slip, and told as one
    CHECK_FALSE(falls(stool(400, 400)));
}

TEST_CASE("Legs of a wood known by its own values are judged by an estimate that is told", "[leg]")
{
    const auto text = [](const std::string& density) {
        const std::string own = "[[wood]]\nid = \"stock\"\nproperties = { modulus = \"12.5 GPa\", shear_modulus = \"0.78 GPa\", "
                                "bending_strength = \"95 MPa\", shear_strength = \"12 MPa\", tension_across = \"5 MPa\", "
                                "tangential = 0.0035, radial = 0.0017, density = \"";
        return design({
            head_text({.name = "Post"}),
            own + density + "\" }\n",
            part_text("post", {300, 60, 60}, "z", "y", "[0, 0, 0]"),
            load_text("weight", "post", 5000, "[30, 30, 300]", "lasting = true"),
        });
    };
    // Wood Handbook table 5-11, hardwood at 12 % (from memory): bending 171.3 G^1.13, so G = 0.594 for 95 MPa; compression 76.0 G^0.89.
    const auto bench = bench_of(text("680 kg/m3"));
    const WoodState& wood = bench->prepared.parts[0].loaded;
    REQUIRE(wood.compression_along);
    CHECK(wood.compression_along->estimated);
    const double gravity = std::pow(95 / 171.3, 1 / 1.13);
    CHECK_THAT(wood.compression_along->value.value(), WithinRel(76.0e6 * std::pow(gravity, 0.89), 1e-6));
    // A density that says less rules: 448 kg/m³ at 12 % is a specific gravity of 0.4.
    const auto light = bench_of(text("448 kg/m3"));
    CHECK_THAT(light->prepared.parts[0].loaded.compression_along->value.value(), WithinRel(76.0e6 * std::pow(0.4, 0.89), 1e-6));
    const ReportContent content = content_of(text("680 kg/m3"));
    CHECK(finding_of(content.findings, "leg", "post").verdict == Verdict::pass);
    bool told = false;
    for (const std::string& line : content.assumed) told = told || line.find("along its grain is estimated") != std::string::npos;
    CHECK(told);
}
