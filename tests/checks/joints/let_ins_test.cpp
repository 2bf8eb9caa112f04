// let-ins: what meets inside a part, and what wood is left round it.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "piece/vary/editable_design.hpp"

using namespace checked;

namespace {

std::string tenon(double length, double width, double thickness, const std::string& more = "")
{
    return fmt::format("tenon = {{ length = {}, width = {}, thickness = {}{} }}", length, width, thickness, more);
}

/// A leg 40 x 50 mm and two unlike rails: the long one with a tenon 30 x 50 x 8, the end one with one 33 x 40 x 6, off the middle.
struct Corner {
    std::string long_joint = tenon(30, 50, 8), end_joint = tenon(33, 40, 6);
    std::string kind = "tenon", more = "";
    double long_front = 8, end_bottom = 290;

    std::string text() const
    {
        return design({head_text({}), wood_text("white oak"), part_text("leg", {400, 40, 50}, "z", "y", "[0, 0, 0]"),
                       part_text("long rail", {500, 70, 20}, "x", "y", fmt::format("[40, {}, 300]", long_front)),
                       part_text("end rail", {300, 60, 18}, "y", "x", fmt::format("[6, 50, {}]", end_bottom)),
                       joint_text("long rail", "leg", kind, "PVA", long_joint),
                       joint_text("end rail", "leg", kind, "PVA", end_joint), more});
    }
    Finding of(const std::string& subject) const
    {
        return finding_of(run_check("let-ins", bench_of(text())->prepared), "let-ins", subject);
    }
};

/// One rail in a leg 40 x 50 mm, its tenon 8 thick that far from the front.
Finding wall_case(double from_front, double length)
{
    const std::string text =
        design({head_text({}), wood_text("white oak"), part_text("leg", {400, 40, 50}, "z", "y", "[0, 0, 0]"),
                part_text("rail", {500, 70, 20}, "x", "y", fmt::format("[40, {}, 300]", from_front - 6)),
                joint_text("rail", "leg", "tenon", "PVA", tenon(length, 50, 8))});
    const auto bench = bench_of(text);
    const auto findings = run_check("let-ins", bench->prepared);
    for (const Finding& f : findings)
        if (f.subject == "rail / leg") return f;
    return finding_of(findings, "let-ins", "leg");
}

} // namespace

TEST_CASE("Tenons that meet in a leg fail, with the ways out in a maker's order", "[let-ins]")
{
    // The sums stand in tests/piece/let_ins/let_ins_test.cpp: 5 mm shared; 22 of 30 and 28 of 33 mm are clear.
    const Finding f = Corner().of("leg");
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline, ContainsSubstring("The tenons of long rail and end rail meet inside leg by 5 mm"));
    CHECK_THAT(value_of(f, "depth_shared"), WithinAbs(0.005, 1e-9));
    REQUIRE(f.remedy);
    const std::size_t mitre = f.remedy.words().find("mitre their ends"),
                      shorten = f.remedy.words().find("shorten the tenon of end rail to 28 mm"),
                      higher = f.remedy.words().find("set one 30 mm higher or lower");
    CHECK(mitre == 0);
    CHECK(shorten != std::string::npos);
    CHECK(higher != std::string::npos);
    CHECK(shorten < higher);
}

TEST_CASE("Each of the ways out passes", "[let-ins]")
{
    Corner mitred, shorter, higher;
    mitred.long_joint = tenon(30, 50, 8, ", mitred = true");
    mitred.end_joint = tenon(33, 40, 6, ", mitred = true");
    shorter.end_joint = tenon(28, 40, 6);
    higher.end_bottom = 320; // 30 up: its tenon starts at 330, the long one ends at 360: not yet
    CHECK(mitred.of("leg").verdict == Verdict::pass);
    CHECK_THAT(mitred.of("leg").headline, ContainsSubstring("mitred"));
    CHECK(shorter.of("leg").verdict == Verdict::pass);
    CHECK(higher.of("leg").verdict == Verdict::fail);
    higher.end_bottom = 350;
    CHECK(higher.of("leg").verdict == Verdict::pass);
    mitred.end_joint = tenon(33, 40, 6);
    const Finding half = mitred.of("leg");
    CHECK(half.verdict == Verdict::fail);
    CHECK_THAT(half.remedy.words(), ContainsSubstring("mitre the end of the tenon of end rail too"));
}

TEST_CASE("Tenons from two sides of one post share its depth", "[let-ins]")
{
    // 30 and 25 mm into 45: 10 too much; each to (30 + 25 - 10)/2 = 22.5, down to a whole millimetre.
    const auto text = [](double second) {
        return design({head_text({}), wood_text("white oak"), part_text("post", {400, 45, 50}, "z", "y", "[0, 0, 0]"),
                       part_text("right rail", {500, 70, 20}, "x", "y", "[45, 8, 300]"),
                       part_text("left rail", {300, 60, 18}, "x", "y", "[-300, 8, 290]"),
                       joint_text("right rail", "post", "tenon", "PVA", tenon(30, 50, 8)),
                       joint_text("left rail", "post", "tenon", "PVA", tenon(second, 40, 6))});
    };
    const Finding f = finding_of(content_of(text(25)).findings, "let-ins", "post");
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(value_of(f, "depth_shared"), WithinAbs(0.010, 1e-9));
    CHECK(f.remedy.words().find("shorten both to 22 mm") == 0); // nothing to mitre
    // Two that meet end to end are one mortise bored through: common practice.
    CHECK(finding_of(content_of(text(15)).findings, "let-ins", "post").verdict == Verdict::pass);
}

TEST_CASE("Dowels that cross in a leg fail, shorter ones clear", "[let-ins]")
{
    // Rows at z = 310 and 345 against 300 to 360: dowels of 10 at y = 18, 30 deep to x = 10; of 8 at x = 15, 35 deep to y = 15.
    Corner c;
    c.kind = "dowel";
    c.long_joint = "dowels = { diameter = 10, length = 60, count = 2 }"; // z = 317.5 and 352.5
    c.end_joint = "dowels = { diameter = 8, length = 70, count = 2 }";   // z = 305 and 335 from 290
    CHECK(c.of("leg").verdict == Verdict::pass);                         // 12.5 mm apart, radii 5 and 4
    c.end_bottom = 305;                                                  // z = 320 and 350: 2.5 mm apart
    const Finding f = c.of("leg");
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline, ContainsSubstring("Dowels of long rail and end rail meet inside leg"));
    c.end_joint = "dowels = { diameter = 8, length = 50, count = 2 }"; // 25 deep, to y = 25: the others reach 23
    CHECK(c.of("leg").verdict == Verdict::pass);
}

TEST_CASE("Screws may go through a tenon, a bolt may not, and screws that meet warn", "[let-ins]")
{
    // A block on top of the leg, 60 x 40 and 20 thick: one screw of 8 at x = 20, y = 25 down to z = 340; the tenon has y to 22, z to 360.
    const auto fastened = [](const std::string& kind, double length) {
        Corner c;
        c.end_joint = tenon(20, 40, 6);
        c.more = part_text("block", {60, 40, 20}, "y", "z", "[0, -5, 400]") +
                 joint_text("block", "leg", "screws", "",
                            fmt::format("screws = {{ kind = \"{}\", diameter = 8, length = {}, count = 1 }}", kind, length));
        return c.of("leg");
    };
    CHECK(fastened("wood screw", 80).verdict == Verdict::pass);
    CHECK(fastened("bolt", 80).verdict == Verdict::fail);
    CHECK(fastened("bolt", 59).verdict == Verdict::pass); // to z = 361: short of the tenon

    // Two screws through the sides of a block that cross at its middle.
    const auto crossing = [](double up) {
        return finding_of(
            content_of(design({head_text({}), wood_text("white oak"), part_text("post", {400, 40, 50}, "z", "y", "[0, 0, 0]"),
                               part_text("cleat", {60, 40, 15}, "z", "x", "[40, 5, 300]"),
                               part_text("batten", {60, 30, 15}, "z", "y", fmt::format("[5, 50, {}]", 300 + up)),
                               joint_text("cleat", "post", "screws", "", "screws = { diameter = 5, length = 50, count = 1 }"),
                               joint_text("batten", "post", "screws", "", "screws = { diameter = 5, length = 50, count = 1 }")}))
                .findings,
            "let-ins");
    };
    CHECK(crossing(0).verdict == Verdict::warn);
    CHECK_THROWS(crossing(10)); // nothing to tell of screws that clear each other
}

TEST_CASE("The wall beside a mortise fails under 3 mm and warns under half its tenon", "[let-ins]")
{
    const Finding thin = wall_case(1, 30);
    CHECK(thin.verdict == Verdict::fail);
    CHECK_THAT(value_of(thin, "wall_left"), WithinAbs(0.001, 1e-9));
    CHECK_THAT(thin.headline, ContainsSubstring("leaves only 1 mm of leg at the front"));
    CHECK_THAT(thin.remedy.words(), ContainsSubstring("move it 2 mm away"));
    CHECK(wall_case(2.9, 30).verdict == Verdict::fail);
    CHECK(wall_case(3, 30).verdict == Verdict::warn); // half of 8 is 4
    CHECK(wall_case(3.9, 30).verdict == Verdict::warn);
    CHECK(wall_case(4, 30).verdict == Verdict::pass);
    CHECK(wall_case(0, 30).verdict == Verdict::pass); // open to the front
    CHECK(wall_case(-2, 30).verdict == Verdict::fail);
    CHECK_THAT(wall_case(-2, 30).headline, ContainsSubstring("comes out of leg at the front by 2 mm"));
    // 50 - 47 = 3 at the back.
    CHECK(wall_case(39.5, 30).verdict == Verdict::fail);
    CHECK(wall_case(38, 30).verdict == Verdict::pass);
}

TEST_CASE("The bottom of a mortise fails under 3 mm; a through tenon has none", "[let-ins]")
{
    CHECK(wall_case(10, 38).verdict == Verdict::fail);
    CHECK_THAT(wall_case(10, 38).remedy.words(), ContainsSubstring("let it only 37 mm into leg"));
    CHECK(wall_case(10, 37).verdict == Verdict::pass);
    CHECK(wall_case(10, 40).verdict == Verdict::pass);
}

TEST_CASE("A tenon that stands out of a tapered leg says by how much", "[let-ins]")
{
    // The left side is at x = 17 where the tenon is lowest, 15 where it is highest (tests/piece/let_ins/let_ins_test.cpp).
    const auto stretcher = [](double length) {
        const auto findings =
            content_of(
                design({head_text({}), wood_text("white oak"),
                        part_text("leg", {400, 40, 50}, "z", "y", "[0, 0, 0]",
                                  "taper = { end = \"bottom\", width = 20, thickness = 50, over = 400, flat = [\"right\"] }"),
                        part_text("stretcher", {500, 60, 20}, "x", "y", "[40, 8, 50]"),
                        joint_text("stretcher", "leg", "tenon", "PVA", tenon(length, 40, 8))}))
                .findings;
        for (const Finding& f : findings)
            if (f.check == "let-ins" && f.subject == "stretcher / leg") return f.verdict;
        return Verdict::pass;
    };
    CHECK(stretcher(19) == Verdict::pass); // 4 mm left
    CHECK(stretcher(21) == Verdict::fail); // 2 mm left
    CHECK(stretcher(25) == Verdict::pass); // out by 2: trimmed flush
    CHECK(stretcher(30) == Verdict::warn); // out by 7
}

TEST_CASE("Housings leave a bottom, and warn where they stop just short of an edge", "[let-ins]")
{
    // A side 18 thick and 250 deep, a shelf 20 thick let in `deep`, from the back to `short_of` the front.
    const auto housed = [](double deep, double short_of) {
        const auto findings = content_of(design({head_text({}), wood_text("eastern white pine"),
                                                 part_text("side", {800, 250, 18}, "z", "x", "[0, 0, 0]"),
                                                 part_text("shelf", {600, 250 - short_of, 20}, "x", "z",
                                                           fmt::format("[{}, {}, 300]", 18 - deep, short_of)),
                                                 joint_text("shelf", "side", "housing", "PVA")}))
                                  .findings;
        for (const Finding& f : findings)
            if (f.check == "let-ins" && f.subject == "shelf / side") return f.verdict;
        return finding_of(findings, "let-ins", "side").verdict;
    };
    CHECK(housed(8, 0) == Verdict::pass);
    CHECK(housed(16, 0) == Verdict::fail);
    CHECK(housed(15, 0) == Verdict::pass);
    CHECK(housed(8, 2) == Verdict::warn);
    CHECK(housed(8, 10) == Verdict::pass);
}

TEST_CASE("Tenons without sizes cannot be told", "[let-ins]")
{
    Corner c;
    c.end_joint = "";
    CHECK(c.of("end rail / leg").verdict == Verdict::cannot_tell);
}

TEST_CASE("No sound example has anything that meets in it", "[let-ins]")
{
    for (const auto& [path, text] : embedded_data()) {
        if (path.rfind("designs/", 0) != 0 && path.rfind("patterns/", 0) != 0) continue;
        CAPTURE(path);
        for (const Finding& f : run_check("let-ins", bench_of(std::string(text))->prepared)) {
            CAPTURE(f.subject, f.headline);
            CHECK(f.verdict == Verdict::pass);
        }
    }
}

TEST_CASE("What mends tenons that meet was tried, in a maker's order, and each change passes", "[let-ins][remedies]")
{
    const std::string text = Corner().text();
    const Piece piece = piece_of(text);
    CheckOptions options;
    options.text = text;
    options.remedies_tried = true;
    const auto findings = check_piece(piece, testing::shared_facts(), options).findings;
    const Finding& f = finding_of(findings, "let-ins", "leg");
    REQUIRE(f.tried.size() == 3);
    CHECK_THAT(f.tried[0].says, ContainsSubstring("mitre the ends of the tenons of long rail and end rail"));
    CHECK_THAT(f.tried[1].says, ContainsSubstring("make the tenon of end rail 28 mm long, 33 mm now"));
    CHECK_THAT(f.tried[2].says, ContainsSubstring("make the tenon of long rail 22 mm long, 30 mm now"));
    const EditableDesign design(text, piece, testing::shared_facts());
    for (const TriedRemedy& remedy : f.tried) {
        CAPTURE(remedy.says);
        const std::string changed = design.text_with(remedy.edit);
        CHECK(finding_of(content_of(changed).findings, "let-ins", "leg").verdict == Verdict::pass);
    }
    CHECK_THAT(design.text_with(f.tried[0].edit), ContainsSubstring("mitred = true"));
}
